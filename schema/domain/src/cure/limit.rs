//! One limit of a place: how much, counted as what, when, for what.

use super::says::CountedSays;
use super::{AtomicMasses, Basis, Class, Here, Ingoing, Method, Stage};
use crate::rows::{Bound, Rows};
use crate::says::Says;
use chrono::NaiveDate;
use rust_decimal::Decimal;

/// What a limit counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Counts {
    /// Nitrite, or nitrate, as that basis.
    Salt(Basis),
    /// Nitrite and nitrate together, each by its own weight.
    Both,
    /// Sodium ascorbate or erythorbate.
    Ascorbate,
}

/// How a potassium salt counts against a limit that is given for the sodium salt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Potassium {
    /// By its own weight, as the sodium salt would (`us-H8`).
    SameWeight,
    /// By the two figures that the law prints side by side; they are not worked out from the
    /// masses, because one of the printed figures is cut and another rounded.
    Printed {
        /// For the sodium salt.
        sodium: Decimal,
        /// For the potassium salt.
        potassium: Decimal,
    },
    /// By how much of the basis it holds.
    Converted,
}

/// On what a limit depends beside method and product.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    /// On nothing.
    Always,
    /// It is sold as "Keep Refrigerated", so that nothing but the cure stands between it and harm.
    KeepRefrigerated,
    /// The label calls it cured.
    CalledCured,
    /// It is cooked.
    Heated,
    /// It is not cooked.
    NotHeated,
    /// It is not cooked, and nitrite is added too.
    NotHeatedWithNitrite,
    /// It is not cooked, and no nitrite is added.
    NotHeatedWithoutNitrite,
}

/// A limit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CureLimit {
    /// The number, in ppm, with its row; the row may begin or end on a day.
    pub bound: Bound,
    /// What is counted.
    pub counts: Counts,
    /// What goes in, or what is left.
    pub stage: Stage,
    /// How a potassium salt counts.
    pub potassium: Potassium,
    /// How far off the number still counts as on it (ppm): the figure's own rounding.
    pub tolerance: Decimal,
    /// The methods it is for; none means all.
    pub methods: Vec<Method>,
    /// The products it is for; none means all.
    pub classes: Vec<Class>,
    /// On what else it depends.
    pub when: When,
    /// Is more than that only doubtful, because another way of counting comes out above the limit?
    pub doubt: bool,
}

impl CureLimit {
    /// Is it for that product, as it counts in its place, made that way, on that day?
    pub fn is_for(&self, method: Method, here: &Here, day: NaiveDate, rows: &Rows) -> bool {
        (self.methods.is_empty() || self.methods.contains(&method))
            && (self.classes.is_empty() || self.classes.contains(&here.class(self.counts)))
            && self.holds_on(day, rows)
    }

    /// Is its row in force on that day?
    pub fn holds_on(&self, day: NaiveDate, rows: &Rows) -> bool {
        let row = rows.get(&self.bound.row);
        row.is_none_or(|row| row.holds_on(day))
    }

    /// How much of what it counts there is, as it counts it.
    pub fn measure(&self, ingoing: &Ingoing, masses: &AtomicMasses) -> Decimal {
        let own_weight =
            |nitrite| -> Decimal { ingoing.salts(nitrite).into_iter().map(|(_, ppm)| ppm).sum() };
        match self.counts {
            Counts::Ascorbate => ingoing.ascorbate,
            Counts::Both => own_weight(true) + own_weight(false),
            Counts::Salt(basis) => {
                let [(sodium, sodium_ppm), (potassium, potassium_ppm)] =
                    ingoing.salts(basis.is_nitrite());
                let factor = match self.potassium {
                    Potassium::SameWeight => Decimal::ONE,
                    Potassium::Printed { sodium, potassium } => {
                        sodium.checked_div(potassium).unwrap_or(Decimal::ONE)
                    }
                    Potassium::Converted => masses.factor(potassium, basis),
                };
                sodium_ppm * masses.factor(sodium, basis) + potassium_ppm * factor
            }
        }
    }

    /// Is that much allowed, the figure's own rounding aside?
    pub fn allows(&self, measured: Decimal) -> bool {
        // There and back between a salt and its ion leaves dust in the last digits.
        let measured = measured.round_dp(9);
        self.bound.allows(measured) || (measured - self.bound.value).abs() <= self.tolerance
    }

    /// What it counts, for a cook.
    pub(super) fn said(&self) -> Says {
        match self.counts {
            Counts::Salt(basis) => basis.says(),
            Counts::Both => CountedSays::Both.into(),
            Counts::Ascorbate => CountedSays::Ascorbate.into(),
        }
    }
}
