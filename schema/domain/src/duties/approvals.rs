//! Work that needs a variance or a plan on file first.

use super::says::ApprovalSays;
use crate::rows::{Finding, RowId, Rows};
use crate::says::Texts;
use crate::words::words;
use chrono::NaiveDate;

words! {
    /// Work that an authority may want to approve first.
    Work {
        SmokeToKeep = "smoke-to-keep", SmokeForFlavour = "smoke-for-flavour", Cure = "cure",
        AdditiveToKeep = "additive-to-keep", ReducedOxygen = "reduced-oxygen",
        ReducedOxygenListed = "reduced-oxygen-listed", CustomProcessing = "custom-processing",
        ShellfishTank = "shellfish-tank", Sprouting = "sprouting",
        ManufacturedMeat = "manufactured-meat", OtherNamed = "other-named",
    }
}

/// Work that needs a paper first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ApprovalNeed {
    /// Where it stands.
    pub row: RowId,
    /// The work.
    pub work: Work,
    /// What it needs: `a variance from the health authority`.
    pub needs: Texts,
}

impl ApprovalNeed {
    /// What is needed; of a rule of one part of the country, that it is that one's.
    fn says(&self, rows: &Rows) -> ApprovalSays {
        let (work, needs) = (self.work, self.needs.clone());
        let place = rows.get(&self.row).and_then(|row| row.only_in.clone());
        match place {
            Some(place) => ApprovalSays::NeededIn { place, work, needs },
            None => ApprovalSays::Needed { work, needs },
        }
    }
}

/// A paper on file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Approval {
    /// Its number.
    pub number: String,
    /// What it is for.
    pub work: Work,
    /// The last day on which it holds, if it ends.
    pub until: Option<NaiveDate>,
}

impl Approval {
    /// Does it hold on a day?
    pub fn holds_on(&self, day: NaiveDate) -> bool {
        !self.number.trim().is_empty() && self.until.is_none_or(|until| day <= until)
    }
}

/// What that work needs on file here; `None` if nothing.
pub fn needs_approval(rules: &super::DutyRules, work: Work) -> Option<&ApprovalNeed> {
    rules.approvals.iter().find(|need| need.work == work)
}

/// What is missing or has ended among the papers for this work on that day.
pub fn check_approvals(
    rules: &super::DutyRules,
    rows: &Rows,
    work: &[Work],
    on_file: &[Approval],
    day: NaiveDate,
) -> Vec<Finding> {
    let lacks = |need: &&ApprovalNeed| {
        !on_file
            .iter()
            .any(|paper| paper.work == need.work && paper.holds_on(day))
    };
    work.iter()
        .filter_map(|&work| needs_approval(rules, work))
        .filter(lacks)
        .map(|need| {
            let ended = on_file
                .iter()
                .filter(|paper| paper.work == need.work && !paper.number.trim().is_empty())
                .max_by_key(|paper| paper.until);
            let says = match ended {
                Some(Approval {
                    number,
                    until: Some(until),
                    ..
                }) => ApprovalSays::Ended {
                    number: number.clone(),
                    work: need.work,
                    until: *until,
                },
                _ => need.says(rows),
            };
            Finding::against(rows, &need.row, says)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rows::Row;
    use crate::words::Mark;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_paper_that_holds_later_held_before(until in 0u64..500, a in 0u64..600, b in 0u64..600) {
            let day = |n| NaiveDate::MIN + chrono::Days::new(n);
            let paper = Approval { number: "V-DEMO-1".into(), work: Work::Cure, until: Some(day(until)) };
            let (early, late) = (a.min(b), a.max(b));
            prop_assert!(!paper.holds_on(day(late)) || paper.holds_on(day(early)));
        }
    }

    #[test]
    fn a_rule_of_one_province_is_told_as_that_ones() {
        let row = RowId::new("x-1");
        let need = ApprovalNeed {
            row: row.clone(),
            work: Work::Cure,
            needs: Texts::from("a plan"),
        };
        let told = |only_in: Option<Texts>| {
            let mut rows = Rows::default();
            rows.insert(Row {
                id: row.clone(),
                says: Texts::from("A rule."),
                also: Vec::new(),
                cite: None,
                sources: Vec::new(),
                mark: Mark::Read,
                only_in,
                from: None,
                until: None,
            });
            let says = crate::says::Says::from(need.says(&rows));
            (says.to_string(), rows.source(&row).to_string())
        };
        let (says, source) = told(Some(Texts::from("Ontario")));
        assert!(
            says.starts_with("approval-needed-in place=\"Ontario\""),
            "{says}"
        );
        assert_eq!(
            source,
            "source-only-in place=\"Ontario\" source=(source-row row=\"x-1\")"
        );
        let (says, source) = told(None);
        assert!(says.starts_with("approval-needed work="), "{says}");
        assert_eq!(source, "source-row row=\"x-1\"");
    }

    #[test]
    fn a_paper_without_a_number_is_none() {
        let paper = Approval {
            number: " ".into(),
            work: Work::Cure,
            until: None,
        };
        assert!(!paper.holds_on(NaiveDate::MIN));
    }
}
