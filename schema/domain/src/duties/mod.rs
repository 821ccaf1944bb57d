//! What a place asks of a kitchen besides dates and cures: names that have a standard, approvals on
//! file, what may share a batch, what must be written down and how long it is kept.
//!
//! Pure functions over the place's [`DutyRules`] and its rows. Local codes and licensed practice decide.

pub mod approvals;
pub mod banned;
pub mod beef;
pub mod cured_pork;
pub mod deadline;
pub mod dry_cured;
pub mod fields;
pub mod fsma;
pub mod identity;
pub mod keeping;
pub mod meat_protein;
pub mod mince;
pub mod names;
pub mod origin_words;
pub mod sale;
mod says;
mod standards_say;
pub mod step_records;
pub mod sulphites;
pub mod tenderised;

pub use approvals::{check_approvals, needs_approval};
pub use identity::IdentitySays;
pub use names::check_name;
pub use says::{
    AnimalSays, ApprovalSays, BatchSays, ListedSays, PercentSays, RecordSays, SaleSays,
};
pub use standards_say::{DryCuredSays, MinceSays, NameSays, PorkSays};

use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::Bound;
use rust_decimal::Decimal;

/// The rules of a place. What a place has no rule for is empty.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct DutyRules {
    /// Words in a name, and what they may stand for.
    pub names: names::NameRules,
    /// Cured pork that has a standard.
    pub cured_pork: Option<cured_pork::Standards>,
    /// Foods whose name stands for a standard of what is in them.
    pub identities: Vec<identity::Identity>,
    /// Meat protein in solid cuts with water or additives.
    pub meat_protein: Option<meat_protein::LeastMeatProtein>,
    /// The words due on beef that was tenderised by machine.
    pub tenderised: Option<tenderised::TenderisedWording>,
    /// What may not be in food, or not in mince.
    pub banned: Vec<banned::Banned>,
    /// Which raw meat may have sulphites.
    pub sulphites: Option<sulphites::SulphitesInMeat>,
    /// Work that needs a paper first.
    pub approvals: Vec<approvals::ApprovalNeed>,
    /// What beef may share a batch.
    pub beef: Option<beef::Groups>,
    /// What mince may be.
    pub mince: Option<mince::Limits>,
    /// How origin is worded.
    pub origin: Option<origin_words::OriginWording>,
    /// How long each record is kept.
    pub keeping: Vec<keeping::Keeping>,
    /// What each record holds.
    pub fields: Vec<fields::Field>,
    /// Which record a sale or a grind asks for.
    pub step_records: Vec<step_records::Asks>,
    /// The traceability rule for listed foods.
    pub fsma: Option<fsma::FsmaReach>,
    /// Until when something has to be done or answered.
    pub deadlines: Vec<deadline::Deadline>,
    /// The most that is still a retail sale.
    pub sale: Vec<sale::Most>,
}

impl DutyRules {
    /// Every number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut all: Vec<&mut Bound> = Vec::new();
        all.extend(
            self.names
                .words
                .iter_mut()
                .flat_map(names::NameRule::bounds_mut),
        );
        all.extend(self.cured_pork.iter_mut().flat_map(|it| it.bounds_mut()));
        all.extend(self.identities.iter_mut().flat_map(|it| it.bounds_mut()));
        all.extend(self.meat_protein.iter_mut().flat_map(|it| it.bounds_mut()));
        all.extend(self.mince.iter_mut().flat_map(|it| it.bounds_mut()));
        all.extend(
            self.keeping
                .iter_mut()
                .filter_map(|it| it.span.as_mut())
                .map(|span| &mut span.number),
        );
        all.extend(self.fsma.iter_mut().flat_map(|it| it.bounds_mut()));
        all.extend(self.deadlines.iter_mut().map(|it| &mut it.span.number));
        all.extend(self.sale.iter_mut().map(|it| &mut it.pounds));
        all
    }
}

/// A percentage that can be: from 0 to 100.
pub(crate) fn percent(field: &str, percent: Percent) -> Result<Decimal> {
    let number = percent.number();
    if number < Decimal::ZERO || number > Decimal::ONE_HUNDRED {
        let detail = PercentSays::CannotBe { percent };
        return Err(Refusal::cannot_be(field, detail));
    }
    Ok(number)
}

/// A measured percentage that is never below one in a hundred: less is a part of one by mistake.
pub(crate) fn measured(field: &str, given: Percent) -> Result<Decimal> {
    let number = percent(field, given)?;
    if number > Decimal::ZERO && number < Decimal::ONE {
        let detail = PercentSays::PartOfOne {
            percent: number,
            meant: number * Decimal::ONE_HUNDRED,
        };
        return Err(Refusal::cannot_be(field, detail));
    }
    Ok(number)
}
