//! How many days the law of a place gives some food, and which food that is.

use super::making::Making;
use super::says::{DateSays, FirstDaySays};
use super::{Because, Count, Marked};
use crate::product::Product;
use crate::words::{DeedKind, ProductKind, StepKind};
use chrono::NaiveDate;

/// So many days at most for some food, from the day it is made.
#[derive(Debug, Clone, PartialEq)]
pub struct DayLimit {
    /// Which food.
    pub of: LimitedFood,
    /// How many days.
    pub keeps: Marked,
}

/// Which food a limit is for. What is left out or empty takes any.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LimitedFood {
    /// Is it listed as ready to eat?
    pub ready: Option<bool>,
    /// Does it need time and temperature control, as far as the record shows?
    pub controlled: Option<bool>,
    /// Was it bought in?
    pub bought: Option<bool>,
    /// Did nothing but raw meat go in: no salt, no herbs?
    pub plain: Option<bool>,
    /// Kinds of product.
    pub kinds: Vec<ProductKind>,
    /// Steps that make it.
    pub steps: Vec<StepKind>,
}

impl LimitedFood {
    /// Could it be for that product, whatever was done to it?
    pub(super) fn is_of(&self, product: &Product) -> bool {
        agrees(self.ready, !product.raw)
            && (self.kinds.is_empty() || self.kinds.contains(&product.kind))
    }

    fn takes(&self, made: &Making) -> bool {
        let step = StepKind::parse(made.kind.as_str());
        self.is_of(made.product)
            && agrees(self.controlled, made.is_controlled)
            && agrees(self.plain, made.parts.iter().all(|part| part.is_raw_animal))
            && agrees(self.bought, made.kind == DeedKind::Receive)
            && (self.steps.is_empty() || step.is_some_and(|step| self.steps.contains(&step)))
    }
}

fn agrees(asked: Option<bool>, is: bool) -> bool {
    asked.is_none_or(|asked| asked == is)
}

impl DayLimit {
    /// Is it for what is being made?
    pub(super) fn fits(&self, made: &Making) -> bool {
        self.of.takes(made)
    }

    /// The last day of what is made on this one.
    pub(super) fn last_day(&self, day: NaiveDate) -> NaiveDate {
        self.count().last_day(day)
    }

    /// The days as they are counted.
    pub(super) fn count(&self) -> Count {
        self.keeps.count()
    }

    /// The last day, and why.
    pub(super) fn link(&self, day: NaiveDate) -> (NaiveDate, Because) {
        let date = self.last_day(day);
        let days = self.keeps.days.whole();
        let first = match self.keeps.day_one_counts {
            true => FirstDaySays::Preparation,
            false => FirstDaySays::AfterPreparation,
        };
        let is_held_cold = self.of.ready == Some(true) && self.of.controlled == Some(true);
        let says = match is_held_cold && self.of.steps.is_empty() && self.of.kinds.is_empty() {
            true => DateSays::ReadyToEat {
                day,
                days,
                first,
                date,
            },
            false => DateSays::AtMost {
                day,
                days,
                first,
                date,
            },
        };
        (date, Because::law(says, &self.keeps.days.row))
    }
}
