//! The place's rules against trichinae, as data.

use super::drying::SausageDrying;
use super::freezing::FreezingTable;
use super::ham::HamDrying;
use super::heating::HeatingRules;
use super::method::TrichinaeMethod;
use crate::heat::Degrees;
use crate::rows::{Bound, RowId};
use crate::words::{Species, words};

/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct TrichinaeRules {
    /// The row that frees fresh pork and bacon that are normally cooked.
    pub normally_cooked: Option<RowId>,
    /// By heat.
    pub heating: Option<HeatingRules>,
    /// How cold the meat must be before freezing time begins.
    pub chill_first: Option<Degrees>,
    /// By cold.
    pub freezing: Vec<FreezingTable>,
    /// By salt and drying.
    pub methods: Vec<TrichinaeMethod>,
    /// Tables of days for dry sausage.
    pub sausage_drying: Option<SausageDrying>,
    /// The table of days for hams.
    pub ham_drying: Option<HamDrying>,
    /// What may be shown instead of a treatment.
    pub other_ways: Vec<OtherWay>,
    /// The row by which meat of some animals is tested, whatever was done to it.
    pub tested_only: Option<RowId>,
    /// Those animals.
    pub tested_species: Vec<Species>,
}

/// Something that may be shown instead of a treatment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherWay {
    /// What.
    pub way: Way,
    /// Where it stands.
    pub row: RowId,
}

words! {
    /// The ways that are no treatment.
    Way {
        /// The carcass was tested, and nothing was found.
        CarcassTested = "carcass-tested",
        /// The pig is from a herd certified as a negligible risk, or kept under controlled housing.
        NegligibleRiskHerd = "negligible-risk-herd",
        /// A piglet that was never weaned, under five weeks old.
        Unweaned = "unweaned",
    }
}

impl Species {
    /// May its meat carry trichinae? (`us-6`, `canada-eu-uk-13.1`.)
    pub const fn may_carry_trichinae(self) -> bool {
        matches!(self, Species::Pig | Species::Boar | Species::Horse)
    }
}

impl TrichinaeRules {
    /// Every single number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut bounds = Vec::new();
        if let Some(heating) = &mut self.heating {
            bounds.push(&mut heating.come_up_hours);
        }
        bounds.extend(
            self.chill_first
                .as_mut()
                .map(|chill| &mut chill.limit.bound),
        );
        for method in &mut self.methods {
            bounds.extend(&mut method.piece_mm);
            bounds.extend(&mut method.mass_mm);
            bounds.extend(method.salt.iter_mut().flat_map(|way| {
                [
                    &mut way.dry,
                    &mut way.mix,
                    &mut way.brine,
                    &mut way.salometer,
                    &mut way.pickle,
                ]
                .into_iter()
                .flatten()
            }));
            bounds.extend(&mut method.overhauls);
        }
        bounds
    }
}
