//! A place's rules for curing salts, as data.

use super::says::CureSays;
use super::{
    Alternative, AtomicMasses, ClaimRules, CureLimit, Makeup, Method, NameOf, Salometer,
    ScaleClass, Strength,
};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId};
use crate::says::Texts;
use rust_decimal::Decimal;

/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct CureRules {
    /// What the conversions are worked out from.
    pub masses: AtomicMasses,
    /// How much of a rind-on belly is skin and takes no cure, in per cent.
    pub skin: Option<Bound>,
    /// The row by which the limits are in force now, where that is a question of its own.
    pub in_force: Option<RowId>,
    /// The row of the formula that a method is counted by.
    pub formulas: Vec<(Method, RowId)>,
    /// Every single limit.
    pub limits: Vec<CureLimit>,
    /// The sets of figures for pumped bacon; none where the place has none.
    pub pumped_bacon: Vec<Alternative>,
    /// The row that says nitrite alone is not for a ham that ages for months.
    pub long_aged: Option<RowId>,
    /// The strengths that are on sale.
    pub strengths: Vec<KnownStrength>,
    /// What looks like a fraction typed for a percent.
    pub plausible: Plausible,
    /// What a salometer's degrees mean.
    pub salometers: Vec<SalometerScale>,
    /// The most salt that a brine can hold, in per cent of the brine.
    pub saturated: Option<Bound>,
    /// How fine a scale must be.
    pub weighing: ScaleRule,
    /// How the parts of a cure are named on a label.
    pub names: Vec<NameOf>,
    /// When a product may say that it is not cured with nitrite.
    pub claim: ClaimRules,
}

impl CureRules {
    /// Every number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut bounds: Vec<&mut Bound> = Vec::new();
        bounds.extend(self.skin.as_mut());
        bounds.extend(self.limits.iter_mut().map(|limit| &mut limit.bound));
        for set in &mut self.pumped_bacon {
            bounds.extend(set.nitrite.iter_mut().map(|limit| &mut limit.bound));
            bounds.push(&mut set.ascorbate.bound);
            bounds.extend(set.sugar.as_mut());
        }
        bounds.extend(self.saturated.as_mut());
        bounds.extend(self.weighing.small_meat.as_mut());
        bounds.extend(self.weighing.small_division.as_mut());
        bounds.extend(
            self.weighing
                .divisions
                .iter_mut()
                .map(|(_, _, least)| least),
        );
        bounds.extend(self.claim.no_wording.as_mut());
        bounds.extend(
            self.claim
                .words
                .iter_mut()
                .flat_map(|words| &mut words.unless)
                .map(|(_, bound)| bound),
        );
        bounds
    }

    /// A nitrite stronger than any on sale. Nitrate is also sold pure, as saltpetre.
    pub fn stronger_than_sold(&self, strength: &Strength) -> Option<Finding> {
        let strongest = self.strengths.iter().max_by_key(|known| known.nitrite)?;
        let nitrite = strength
            .nitrite
            .filter(|nitrite| *nitrite > strongest.nitrite)?;
        let says = CureSays::StrongerThanSold {
            nitrite,
            most: strongest.nitrite,
        };
        Some(Finding::new(Gravity::Refuse, says, [strongest.row.clone()]))
    }

    /// The strength on sale that this one is, if it is one of them.
    pub fn known_strength(&self, makeup: &Makeup) -> Option<&KnownStrength> {
        self.strengths
            .iter()
            .find(|known| known.nitrite == makeup.nitrite && known.nitrate == makeup.nitrate)
    }
}

/// A strength that is on sale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownStrength {
    /// Where it stands.
    pub row: RowId,
    /// What the trade calls it.
    pub name: Texts,
    /// Nitrite.
    pub nitrite: Percent,
    /// Nitrate.
    pub nitrate: Percent,
    /// Is it a weak one that looks like the strong one?
    pub weak: bool,
}

/// Below what a percent looks like a fraction. No law: it makes the engine ask.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Plausible {
    /// The strength of a curing salt.
    pub strength: Percent,
    /// Salt, in per cent of the meat.
    pub salt: Percent,
    /// Curing salt, in per cent of the meat.
    pub curing_salt: Percent,
    /// Pump and pick-up, in per cent of the meat.
    pub taken: Percent,
}

impl Plausible {
    pub(super) fn strength(&self, percent: Percent, field: &str) -> Result<()> {
        check(percent, self.strength, field)
    }

    pub(super) fn salt(&self, percent: Percent) -> Result<()> {
        check(percent, self.salt, "salt")
    }

    pub(super) fn curing_salt(&self, percent: Percent) -> Result<()> {
        check(percent, self.curing_salt, "curing_salt")
    }

    pub(super) fn taken(&self, percent: Percent, field: &str) -> Result<()> {
        check(percent, self.taken, field)
    }
}

fn check(percent: Percent, least: Percent, field: &str) -> Result<()> {
    let number = percent.number();
    if number < Decimal::ZERO || number > Decimal::ONE_HUNDRED {
        let says = CureSays::PercentCannotBe { percent: number };
        return Err(Refusal::cannot_be(field, says));
    }
    if number > Decimal::ZERO && percent < least {
        let says = CureSays::Fraction {
            percent: number,
            meant: number * Decimal::ONE_HUNDRED,
        };
        return Err(Refusal::cannot_be(field, says));
    }
    Ok(())
}

/// What the degrees of one salometer mean.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SalometerScale {
    /// Where it stands.
    pub row: RowId,
    /// Which one.
    pub scale: Salometer,
    /// Per cent of salt in the brine for one degree, where that is known.
    pub percent_per_degree: Option<Decimal>,
}

/// How fine a scale must be.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ScaleRule {
    /// Up to how many grams of meat a fine scale is needed.
    pub small_meat: Option<Bound>,
    /// How fine it must be then, in grams.
    pub small_division: Option<Bound>,
    /// The smallest sensible load in divisions: the class, the coarsest division in grams that the
    /// line is for (none: any), and the least.
    pub divisions: Vec<(ScaleClass, Option<Decimal>, Bound)>,
}
