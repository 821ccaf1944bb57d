//! How long the content of a paper is kept: as long as any rule of the place asks of the deed it belongs to, and as
//! long as anybody may need it.

use super::PaperSays;
use crate::duties::DutyRules;
use crate::duties::keeping::{Record, keep_until};
use crate::rows::RowId;
use crate::says::Says;
use crate::words::DeedKind;
use chrono::NaiveDate;

/// What is known of a paper, and of what came of its deed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Facts {
    /// The deed that it belongs to.
    pub deed: DeedKind,
    /// The last day on which anything happened to what came of that deed; else the day of the paper.
    pub last: NaiveDate,
    /// The last day of any of that food.
    pub eaten_by: Option<NaiveDate>,
    /// What may still need it.
    pub needed: Option<Needed>,
}

/// Why a paper may still be needed, whatever the rules say.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Needed {
    /// Something that came of its deed is on hand: a ham may hang for years.
    OnHand(String),
    /// Its deed touched no lot, as the reading of a room: something is on hand that was begun before it.
    BegunBefore(String),
    /// An incident is open.
    Incident(String),
}

/// How long a paper is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// The last day that a rule asks for; none where the place has no rule at all: then it is kept.
    pub until: Option<NaiveDate>,
    /// The row behind it.
    pub row: Option<RowId>,
    /// What may still need it.
    pub needed: Option<Needed>,
}

impl Kept {
    /// May its content be thinned on a day?
    pub fn may_go(&self, on: NaiveDate) -> bool {
        self.needed.is_none() && self.until.is_some_and(|until| on > until)
    }

    /// Why it is kept, or that it may go.
    pub fn says(&self, on: NaiveDate) -> Says {
        let Some(until) = self.until else {
            return PaperSays::NoRule.into();
        };
        match &self.needed {
            Some(Needed::Incident(incident)) => PaperSays::NeededIncident {
                incident: incident.clone(),
            },
            Some(Needed::OnHand(lot)) => PaperSays::NeededOnHand {
                lot: lot.clone(),
                until,
            },
            Some(Needed::BegunBefore(lot)) => PaperSays::NeededThen {
                lot: lot.clone(),
                until,
            },
            None if on > until => PaperSays::MayGo { until },
            None => PaperSays::KeptUntil { until },
        }
        .into()
    }
}

/// The records that a paper of a deed may be part of. Where that is open, it is part of it: a paper kept too long
/// harms nobody.
pub const fn records_of(deed: DeedKind) -> &'static [Record] {
    use DeedKind::*;
    use Record as R;
    match deed {
        Receive | Adopt => &[
            R::MeatTransaction,
            R::OneUpOneDown,
            R::ListedFood,
            R::ListedReceiving,
            R::ListedReceivingExempt,
            R::OneOffPurchase,
            R::FarmDirect,
            R::OntarioPurchase,
            R::AnimalProduct,
            R::MeatOrigin,
            R::BeefLabel,
            R::PigReport,
            R::TraceToBusiness,
            R::TraceRetail,
            R::FreezeLog,
        ],
        Sell | Serve | Discard | Ship | Return | TakeBack | Dispose => &[
            R::MeatTransaction,
            R::OneUpOneDown,
            R::ListedShipping,
            R::TraceToBusiness,
            R::TraceRetail,
            R::AnimalProduct,
            R::PigReport,
            R::Complaint,
        ],
        Incident | IncidentScope | IncidentNote | IncidentGuests | IncidentClose | Hold
        | HoldRelease => &[
            R::Recall,
            R::RecallDrill,
            R::Complaint,
            R::MeatTransaction,
            R::TraceRetail,
            R::AnimalProduct,
        ],
        // Whatever is done to food, read, corrected or confirmed on the way.
        _ => &[
            R::GroundBeefLog,
            R::ListedInputs,
            R::ListedOutput,
            R::ReducedOxygenLog,
            R::TrichinaeTreatment,
            R::OntarioMeat,
            R::FreezeLog,
            R::MeatTransaction,
            R::TraceToBusiness,
            R::TraceRetail,
            R::AnimalProduct,
            R::MeatOrigin,
            R::BeefLabel,
        ],
    }
}

/// How long a paper is kept. Of several rules the longest wins; where the place has none for such a deed, its longest
/// rule for anything.
pub fn kept(rules: &DutyRules, facts: &Facts) -> Kept {
    let eaten_by = facts.eaten_by.map_or(facts.last, |day| day.max(facts.last));
    let longest = |records: &[Record]| {
        let found = records.iter().filter_map(|record| {
            // The day by which it is eaten is always told, so that no rule goes without.
            keep_until(rules, *record, facts.last, Some(eaten_by)).ok()?
        });
        found.max_by_key(|kept| kept.until)
    };
    let found = longest(records_of(facts.deed)).or_else(|| longest(Record::ALL));
    Kept {
        until: found.as_ref().map(|kept| kept.until),
        row: found.and_then(|kept| kept.rows.into_iter().next()),
        needed: facts.needed.clone(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::duties::keeping::{Keeping, KeepingSpan, Unit};
    use crate::rows::Bound;
    use proptest::prelude::*;

    fn rule(record: Record, years: Option<u32>) -> Keeping {
        Keeping {
            row: RowId::new("x-1"),
            record,
            span: years.map(|years| KeepingSpan {
                number: Bound::at_least("x-1", years),
                unit: Unit::Years,
            }),
            from: "the day".into(),
            from_year_end: false,
            or_shelf_life: years.is_none(),
        }
    }

    fn rules(keeping: Vec<Keeping>) -> DutyRules {
        DutyRules {
            keeping,
            ..DutyRules::default()
        }
    }

    fn facts(deed: DeedKind) -> Facts {
        Facts {
            deed,
            last: "2026-06-26".parse().unwrap(),
            eaten_by: Some("2027-09-01".parse().unwrap()),
            needed: None,
        }
    }

    #[test]
    fn the_longest_rule_wins_and_none_goes_without() {
        let place = rules(vec![
            rule(Record::MeatTransaction, Some(2)),
            rule(Record::ListedReceiving, Some(1)),
            rule(Record::Recall, Some(5)),
            rule(Record::FarmDirect, None),
        ]);
        let until = |deed| kept(&place, &facts(deed)).until.unwrap().to_string();
        assert_eq!(until(DeedKind::Receive), "2028-06-26");
        assert_eq!(until(DeedKind::Incident), "2031-06-26");
        // Nothing of the place names a deed of that sort alone: then its longest.
        let place = rules(vec![rule(Record::PigReport, Some(5))]);
        assert_eq!(
            kept(&place, &facts(DeedKind::Cook))
                .until
                .unwrap()
                .to_string(),
            "2031-06-26"
        );
        // As long as it may be eaten.
        let place = rules(vec![rule(Record::OneUpOneDown, None)]);
        assert_eq!(
            kept(&place, &facts(DeedKind::Receive))
                .until
                .unwrap()
                .to_string(),
            "2027-09-01"
        );
        let none = kept(&rules(Vec::new()), &facts(DeedKind::Receive));
        assert!(!none.may_go(NaiveDate::MAX), "no rule: kept");
    }

    proptest! {
        #[test]
        fn nothing_needed_ever_goes(days in 0u64..20_000, which in 0usize..3) {
            let place = rules(vec![rule(Record::MeatTransaction, Some(1))]);
            let lot = || "BRC26159A006".to_owned();
            let needed = [Needed::OnHand(lot()), Needed::BegunBefore(lot()), Needed::Incident("X-2026-1".into())];
            let mut of = facts(DeedKind::Receive);
            let on = of.last + chrono::Days::new(days);
            let free = kept(&place, &of);
            prop_assert_eq!(free.may_go(on), on > free.until.unwrap());
            of.needed = Some(needed[which].clone());
            prop_assert!(!kept(&place, &of).may_go(on));
        }
    }
}
