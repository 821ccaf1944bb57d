//! The date of a lot when it is made, with the chain of reasons.

use super::Rule;
use super::keep::KeepingRule;
use super::says::{DateSays, EventSays, FirstDaySays};
use super::{Because, Count, Later, Marked, earliest};
use crate::law::Law;
use crate::product::Product;
use crate::refusal::Result;
use crate::rows::RowId;
use crate::says::{Says, Texts};
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
    /// The supplier's own date, if it was bought in with one.
    pub supplier: Option<MakersDate>,
    /// Days that the supplier's pack gives once it is opened.
    pub once_opened: Option<u32>,
    /// How it is packed, where air was taken out.
    pub packaging: Option<Packaging>,
    /// Does it need time and temperature control, as far as the record shows?
    pub is_controlled: bool,
    /// What shows that it needs none, if anything does.
    pub stable: Option<Because>,
    /// Do times and temperatures on record prove a kill? Of what is listed as raw they start no days afresh.
    pub is_killed: bool,
    /// The number of the approval for vacuum packs that holds on that day, if one does.
    pub approved: Option<&'a str>,
    /// The law of the place.
    pub law: &'a Law,
    /// Does the house let ready food keep its own day where it is cooked anew with raw food?
    pub ready_keeps_its_day: bool,
    /// Was it made all the same, whatever the law forbids?
    pub as_it_happened: bool,
    /// Is it made of pieces that were released, without anything else being done to them?
    pub is_released: bool,
    /// Is it raw fish that is not frozen, both before it is packed and after?
    pub is_unfrozen_fish: bool,
}

/// The date of something that went in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartDate {
    /// Its name, and how its label shows it.
    pub shown: Says,
    /// Its date, if it has one; of what is frozen, the one that it would have thawed today.
    pub date: Option<NaiveDate>,
    /// The maker's date that caps it for ever, if one does.
    pub cap: Option<NaiveDate>,
    /// Is it raw food of animals, which a proven kill makes anew?
    pub is_raw_animal: bool,
    /// Was it frozen before? Then a second freeze adds no day.
    pub was_frozen: bool,
    /// Is it food that has to be kept cold, and nobody knows its last day?
    pub is_undated: bool,
}

impl PartDate {
    fn earliest(&self) -> Option<NaiveDate> {
        earliest(self.date, self.cap)
    }

    /// Is its day its maker's, and no earlier one? It caps whatever is made of it, for ever; but how long a raw piece
    /// keeps is not what stands on the bag of its curing salt.
    fn is_of_its_maker(&self) -> bool {
        self.cap.is_some() && self.earliest() == self.cap
    }
}

/// The supplier's own date.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MakersDate {
    /// The day on the pack.
    pub day: NaiveDate,
    /// Is it for the frozen food? Then thawed food keeps by its own days, and never longer than this.
    pub is_frozen: bool,
}

/// The date, what can still change it, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dated {
    /// The last day, if there is one.
    pub use_by: Option<NaiveDate>,
    /// What can still change it.
    pub later: Later,
    /// Was anything in it frozen before, and nothing proven since?
    pub was_frozen: bool,
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
        if self.product.is_hung() && !self.is_released {
            chain.because.push(Because::house(
                DateSays::NotBeforeRelease {
                    product: self.name(),
                },
                DateSays::ReleaseRule,
            ));
            return Ok(chain.done(self.later(self.product.keeping.usual, false), false));
        }
        let keep = self.product.keeping.rule(self.stable.is_some());
        self.own(keep, &mut chain);
        self.law_of_days(&mut chain);
        self.parts(&mut chain);
        self.supplier(&mut chain);
        self.vacuum(&mut chain)?;
        let anew = self.starts_anew();
        let was_frozen = !anew && self.parts.iter().any(|part| part.was_frozen);
        let mut later = self.later(keep, anew);
        if chain.is_unknown {
            (later.opened, later.thawed) = (None, None);
        }
        Ok(chain.done(later, was_frozen))
    }

    /// What can still change its date. A maker's date caps it for ever, through whatever is made of it
    /// without a kill.
    fn later(&self, keep: Option<KeepingRule>, anew: bool) -> Later {
        let mut later = Later::of(keep);
        let opened = &self.law.dates.opened;
        let law = opened
            .as_ref()
            .map(Marked::count)
            .filter(|_| self.kind == DeedKind::Receive && self.is_ready_and_controlled());
        let declared = self.once_opened.map(|days| Count {
            days,
            day_one_counts: true,
        });
        later.released = self.is_released && self.product.is_hung();
        later.opened = [later.opened, law, declared]
            .into_iter()
            .flatten()
            .reduce(Count::stricter);
        let caps = self.parts.iter().filter_map(|part| part.cap);
        later.cap = match anew {
            true => None,
            false => caps.chain(self.supplier.map(|date| date.day)).min(),
        };
        later
    }

    pub(super) fn name(&self) -> Texts {
        self.product.named()
    }

    fn is_ready_and_controlled(&self) -> bool {
        !self.product.raw && self.is_controlled
    }

    fn own(&self, keep: Option<KeepingRule>, chain: &mut Chain) {
        chain.because.extend(self.stable.clone());
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

    /// What the law of the place gives it at the most; the house may only give fewer days.
    fn law_of_days(&self, chain: &mut Chain) {
        let rules = &self.law.dates;
        if let (true, Some(raw)) = (self.product.raw && self.is_controlled, &rules.raw) {
            chain.because.push(Because::law(DateSays::RawByHouse, raw));
        }
        let is_made_here = self.kind != DeedKind::Receive && self.is_ready_and_controlled();
        let is_cured = is_made_here && self.product.kind == ProductKind::Cured;
        if let (true, Some(row)) = (is_cured, &rules.house_cured) {
            chain.because.push(Because::law(DateSays::NoExemption, row));
        }
        for limit in rules.limits.iter().filter(|limit| limit.fits(self)) {
            let (date, because) = limit.link(self.day);
            chain.cap(date, because);
        }
    }

    fn parts(&self, chain: &mut Chain) {
        let mut undated = self.parts.iter().filter(|part| part.is_undated);
        if let Some(part) = undated.next().filter(|_| !self.starts_anew()) {
            // It may be over: what is made of it has no days of its own.
            let says = DateSays::PartUndated {
                part: part.shown.clone(),
            };
            let because = self.by(self.law.dates.mix.as_ref(), says, DateSays::EarliestWins);
            chain.warnings.push(because.says.clone());
            chain.because.push(because);
            chain.is_unknown = true;
        }
        let in_cure = self.is_in_its_cure();
        let dated = self.parts.iter();
        let dated =
            dated.filter(|part| !(in_cure && (part.is_raw_animal || part.is_of_its_maker())));
        let dated = dated.filter_map(|part| Some((part.earliest()?, part)));
        let rules = &self.law.dates;
        let resets = rules.resets.as_ref();
        if in_cure {
            let row = resets.map(|resets| &resets.row);
            chain
                .because
                .push(self.by(row, DateSays::InItsCure, DateSays::ReleaseRule));
        }
        let Some((date, part)) = dated.min_by_key(|(date, _)| *date) else {
            return;
        };
        if let Some(resets) = resets.filter(|resets| self.is_one_of(&resets.steps)) {
            let (kind, part) = (self.kind, part.shown.clone());
            let anew = self.starts_anew();
            let says = match anew {
                true => DateSays::StartsAnew { kind, date, part },
                false => DateSays::NotAnew { kind },
            };
            chain.because.push(Because::law(says, &resets.row));
            if anew {
                self.kept_day(chain);
                return;
            }
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

    /// The strict reading that a house may choose: what was ready before keeps its own day.
    fn kept_day(&self, chain: &mut Chain) {
        let ready = self.parts.iter().filter(|part| !part.is_raw_animal);
        let ready = ready.filter_map(|part| Some((part.earliest()?, part)));
        let Some((date, part)) = ready.min_by_key(|(date, _)| *date) else {
            return;
        };
        if self.ready_keeps_its_day {
            let part = part.shown.clone();
            let says = DateSays::ReadyKeepsItsDay { part, date };
            chain.cap(date, Because::house(says, DateSays::HouseChoice));
        }
    }

    /// A raw piece that goes into a cure, in its day, as a product without days of its own: it has none
    /// while it cures. What comes out of the cure is dated by its own rule, or when it is released.
    fn is_in_its_cure(&self) -> bool {
        let in_day = |part: &PartDate| part.earliest().is_none_or(|date| self.day <= date);
        self.kind == DeedKind::Cure
            && self.product.kind == ProductKind::Cured
            && self.product.keeping.usual.is_none()
            && self.parts.iter().any(|part| part.is_raw_animal)
            && self.parts.iter().all(in_day)
    }

    /// Only raw food of animals that is proven killed starts anew. What is ready and goes within its own
    /// day through the same kill is cooked anew with it; what is past its day is not saved.
    fn starts_anew(&self) -> bool {
        let resets = self.law.dates.resets.as_ref();
        let over = |part: &PartDate| part.earliest().is_some_and(|date| date < self.day);
        self.is_killed
            && resets.is_some_and(|resets| self.is_one_of(&resets.steps))
            && self.parts.iter().any(|part| part.is_raw_animal)
            && !self.parts.iter().any(over)
    }

    fn is_one_of(&self, steps: &[StepKind]) -> bool {
        StepKind::parse(self.kind.as_str()).is_some_and(|kind| steps.contains(&kind))
    }

    fn supplier(&self, chain: &mut Chain) {
        let Some(maker) = self.supplier else { return };
        let date = maker.day;
        let row = self
            .law
            .dates
            .supplier
            .as_ref()
            .map(|supplier| &supplier.row);
        if maker.is_frozen {
            let says = DateSays::SupplierFrozen { date };
            let because = self.by(row, says, DateSays::SupplierRule);
            chain.because.push(because);
            return;
        }
        let says = DateSays::Supplier { date };
        chain.cap(date, self.by(row, says, DateSays::SupplierRule));
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

/// The date so far, and what led to it.
#[derive(Default)]
pub(super) struct Chain {
    date: Option<NaiveDate>,
    is_unknown: bool,
    pub(super) because: Vec<Because>,
    pub(super) warnings: Vec<Says>,
    pub(super) failed: Option<Because>,
}

impl Chain {
    pub(super) fn cap(&mut self, date: NaiveDate, because: Because) {
        self.date = earliest(self.date, Some(date));
        self.because.push(because);
    }

    fn done(self, later: Later, was_frozen: bool) -> Dated {
        Dated {
            use_by: self.date.filter(|_| !self.is_unknown),
            later,
            was_frozen,
            because: self.because,
            warnings: self.warnings,
            failed: self.failed,
        }
    }
}
