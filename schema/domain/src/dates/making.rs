//! The date of a lot when it is made, with the chain of reasons.

use super::Rule;
use super::keep::KeepingRule;
use super::says::{DateSays, EventSays, FirstDaySays};
use super::{Because, Later, Vacuum, earliest};
use crate::law::Law;
use crate::product::Product;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, RowId};
use crate::says::{Arg, Says};
use crate::words::{DeedKind, KeepFrom, Packaging, ProductKind, StepKind};
use chrono::NaiveDate;

/// A lot that is being made, with everything that its date follows from.
#[derive(Debug)]
pub struct Making<'a> {
    /// What is made.
    pub product: &'a Product,
    /// By which deed.
    pub kind: DeedKind,
    /// On which of the kitchen's days the deed ended: an overnight cook is dated by the day it came out.
    pub day: NaiveDate,
    /// What went in.
    pub parts: &'a [PartDate],
    /// The supplier's own date, if it was bought in.
    pub supplier: Option<NaiveDate>,
    /// How it is packed, where air was taken out.
    pub packaging: Option<Packaging>,
    /// What shows that it needs no time and temperature control, if anything does.
    pub ready: Option<ReadyBecause>,
    /// The number of the approval for vacuum packs that holds on that day, if one does.
    pub approved: Option<&'a str>,
    /// The law of the place.
    pub law: &'a Law,
    /// Was it made all the same, whatever the law forbids?
    pub as_it_happened: bool,
}

/// The date of something that went in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartDate {
    /// How its label shows it.
    pub shown: String,
    /// Its date, if it has one.
    pub date: Option<NaiveDate>,
}

/// Readings that show that food keeps without time and temperature control.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadyBecause {
    /// The readings, in words.
    pub says: Says,
    /// The row that they meet.
    pub row: RowId,
}

/// The date, what can still change it, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dated {
    /// The last day, if there is one.
    pub use_by: Option<NaiveDate>,
    /// What can still change it.
    pub later: Later,
    /// The chain of reasons.
    pub because: Vec<Because>,
    /// For the one who did it.
    pub warnings: Vec<Says>,
    /// The limit that it broke, where it was made all the same.
    pub failed: Option<Because>,
}

impl Making<'_> {
    /// The date.
    ///
    /// # Errors
    /// A vacuum pack of house-cured or cooked food without an approval on file.
    pub fn date(&self) -> Result<Dated> {
        let mut chain = Chain::default();
        if self.product.release.is_some() {
            chain.because.push(Because::house(
                DateSays::NotBeforeRelease {
                    product: self.name(),
                },
                DateSays::ReleaseRule,
            ));
            return Ok(chain.done(Later::of(self.product.keep)));
        }
        let keep = self.keep();
        self.own(keep, &mut chain);
        self.law_of_ready_food(&mut chain);
        self.parts(&mut chain);
        self.supplier(&mut chain);
        self.vacuum(&mut chain)?;
        let mut later = Later::of(keep);
        if self.kind == DeedKind::Receive
            && self.is_ready_and_controlled()
            && let Some(opened) = &self.law.dates.opened
        {
            let law = opened.count();
            later.opened = Some(later.opened.map_or(law, |own| own.stricter(law)));
        }
        Ok(chain.done(later))
    }

    fn name(&self) -> String {
        self.product.name("en").to_owned()
    }

    /// The product's rule; another where readings show that it needs no control.
    fn keep(&self) -> Option<KeepingRule> {
        match self.ready {
            Some(_) => self.product.keep_if_stable.or(self.product.keep),
            None => self.product.keep,
        }
    }

    fn is_ready_and_controlled(&self) -> bool {
        !self.product.raw && self.product.is_controlled() && self.ready.is_none()
    }

    fn own(&self, keep: Option<KeepingRule>, chain: &mut Chain) {
        if let Some(ready) = &self.ready {
            chain
                .because
                .push(Because::law(ready.says.clone(), &ready.row));
        }
        let product = self.name();
        let Some(keep) = keep else {
            let says = DateSays::NoRule { product };
            chain
                .because
                .push(Because::house(says, DateSays::NoRuleName));
            return;
        };
        let (days, from) = (keep.days, EventSays::from(keep.from));
        let first = match keep.day_one_counts {
            true => FirstDaySays::ThatDay,
            false => FirstDaySays::DayAfter,
        };
        let rule = DateSays::RuleName {
            days,
            from: from.clone(),
        };
        if !keep.counts_from_birth() {
            let says = match keep.from {
                KeepFrom::Thawed => DateSays::KeepsThawed {
                    product,
                    days,
                    first,
                },
                _ => DateSays::KeepsOpened {
                    product,
                    days,
                    first,
                },
            };
            chain.because.push(Because::house(says, rule));
            return;
        }
        let date = keep.last_day(self.day);
        let says = DateSays::Keeps {
            product,
            days,
            from,
            day: self.day,
            first,
            date,
        };
        chain.cap(date, Because::house(says, rule));
    }

    /// What is prepared here, ready to eat and held cold has so many days; the house may only give fewer.
    fn law_of_ready_food(&self, chain: &mut Chain) {
        let rules = &self.law.dates;
        if self.kind == DeedKind::Receive || !self.is_ready_and_controlled() {
            if let (true, Some(raw)) =
                (self.product.raw && self.product.is_controlled(), &rules.raw)
            {
                chain.because.push(Because::law(DateSays::RawByHouse, raw));
            }
            return;
        }
        let Some(marked) = &rules.ready_to_eat else {
            return;
        };
        if let (ProductKind::Cured, Some(row)) = (self.product.kind, &rules.house_cured) {
            chain.because.push(Because::law(DateSays::NoExemption, row));
        }
        let date = marked.count().last_day(self.day);
        let first = match marked.day_one_counts {
            true => FirstDaySays::Preparation,
            false => FirstDaySays::AfterPreparation,
        };
        let says = DateSays::ReadyToEat {
            day: self.day,
            days: marked.days.whole(),
            first,
            date,
        };
        chain.cap(date, Because::law(says, &marked.days.row));
    }

    fn parts(&self, chain: &mut Chain) {
        let dated = self
            .parts
            .iter()
            .filter_map(|part| Some((part.date?, part)));
        let Some((date, part)) = dated.min_by_key(|(date, _)| *date) else {
            return;
        };
        let rules = &self.law.dates;
        if let Some(resets) = rules
            .resets
            .as_ref()
            .filter(|resets| self.is_one_of(&resets.steps))
        {
            let says = DateSays::StartsAnew {
                kind: self.kind,
                date,
                part: part.shown.clone(),
            };
            chain.because.push(Because::law(says, &resets.row));
            return;
        }
        let part = part.shown.clone();
        let says = match self.parts.len() {
            1 => DateSays::MadeFrom { part, date },
            _ => DateSays::EarliestPart { part, date },
        };
        chain.cap(
            date,
            self.by(rules.mix.as_ref(), says, DateSays::EarliestWins),
        );
    }

    fn is_one_of(&self, steps: &[StepKind]) -> bool {
        StepKind::parse(self.kind.as_str()).is_some_and(|kind| steps.contains(&kind))
    }

    fn supplier(&self, chain: &mut Chain) {
        let Some(date) = self.supplier else { return };
        let row = self
            .law
            .dates
            .supplier
            .as_ref()
            .map(|supplier| &supplier.row);
        let says = DateSays::Supplier { date };
        chain.cap(date, self.by(row, says, DateSays::SupplierRule));
    }

    fn vacuum(&self, chain: &mut Chain) -> Result<()> {
        let Some(packaging) = self.packaging else {
            return Ok(());
        };
        let Some(rules) = &self.law.dates.vacuum else {
            chain
                .warnings
                .push(DateSays::NoVacuumRule { packaging }.into());
            return Ok(());
        };
        self.approved_for_vacuum(rules, packaging, chain)?;
        let bound = self.vacuum_days(rules);
        if let Some(bound) = bound {
            let date = crate::dates::Count {
                days: bound.whole(),
                day_one_counts: false,
            }
            .last_day(self.day);
            let says = DateSays::NoAir {
                day: self.day,
                days: bound.whole(),
                date,
            };
            chain.cap(date, Because::law(says, &bound.row));
        }
        if let Some(cold) = &rules.cold {
            let degrees = Arg::from(cold.degrees);
            chain.warnings.push(DateSays::NoAirCold { degrees }.into());
        }
        Ok(())
    }

    fn vacuum_days<'b>(&self, rules: &'b Vacuum) -> Option<&'b Bound> {
        use ProductKind::*;
        let cooked = matches!(self.product.kind, Cooked | Stock) && !self.product.raw;
        let fresh = matches!(self.product.kind, Cut | Carcass) && self.product.raw;
        match (cooked, fresh) {
            (true, _) => rules.cooked.as_ref().or(rules.days.as_ref()),
            (_, true) => rules.fresh.as_ref().or(rules.days.as_ref()),
            _ => rules.days.as_ref(),
        }
    }

    fn approved_for_vacuum(
        &self,
        rules: &Vacuum,
        packaging: Packaging,
        chain: &mut Chain,
    ) -> Result<()> {
        use ProductKind::*;
        let house_made =
            matches!(self.product.kind, Cured | Cooked | Stock | Rendered) && self.ready.is_none();
        if let (true, Some(row), None) = (house_made, &rules.approval, self.approved) {
            let detail = DateSays::NoAirUnapproved {
                product: self.name(),
                packaging,
                source: self.law.rows.source(row),
            };
            let because = Because::law(detail, row);
            if !self.as_it_happened {
                return Err(Refusal::limit("packaging", &because));
            }
            chain.failed = Some(because);
        }
        match (self.approved, &rules.approval, &rules.plan) {
            (Some(number), Some(row), _) => {
                let says = DateSays::NoAirApproved {
                    number: number.to_owned(),
                };
                chain.because.push(Because::law(says, row));
            }
            (None, _, Some(row)) => {
                let source = self.law.rows.source(row);
                chain.warnings.push(DateSays::NoAirPlan { source }.into());
            }
            _ => {}
        }
        Ok(())
    }

    /// By a row of the law where the place has one, else by common practice.
    fn by(&self, row: Option<&RowId>, says: DateSays, rule: DateSays) -> Because {
        match row {
            Some(row) => Because::law(says, row),
            None => Because {
                says: says.into(),
                rule: Rule::Practice(rule.into()),
            },
        }
    }
}

#[derive(Default)]
struct Chain {
    date: Option<NaiveDate>,
    because: Vec<Because>,
    warnings: Vec<Says>,
    failed: Option<Because>,
}

impl Chain {
    fn cap(&mut self, date: NaiveDate, because: Because) {
        self.date = earliest(self.date, Some(date));
        self.because.push(because);
    }

    fn done(self, later: Later) -> Dated {
        Dated {
            use_by: self.date,
            later,
            because: self.because,
            warnings: self.warnings,
            failed: self.failed,
        }
    }
}
