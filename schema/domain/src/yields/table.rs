//! Does a published or imported table agree with itself? Many do not; each is summed before use.

use super::YieldRules;
use super::says::TableSays;
use crate::rows::{Bound, Finding, Gravity};
use rust_decimal::Decimal;

/// A sum beside what is printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sum {
    /// What the parts come to.
    pub worked: Decimal,
    /// What is printed.
    pub printed: Decimal,
    /// A warning where the two lie too far apart.
    pub finding: Option<Finding>,
}

/// Do the parts come to the printed total?
pub fn sum_agrees(parts: &[Decimal], printed: Decimal, rules: &YieldRules) -> Sum {
    let worked: Decimal = parts.iter().sum();
    let apart = match printed.is_zero() {
        true => Decimal::ONE_HUNDRED,
        false => (worked - printed).abs() * Decimal::ONE_HUNDRED / printed.abs(),
    };
    let says = TableSays::Sum { worked, printed };
    judged(worked, printed, apart, rules.sum_within.as_ref(), says)
}

/// Do the percents come to a hundred? Rounded ones may miss it by a little.
pub fn sum_of_percents_agrees(percents: &[Decimal], rules: &YieldRules) -> Sum {
    let worked: Decimal = percents.iter().sum();
    let apart = (worked - Decimal::ONE_HUNDRED).abs();
    let says = TableSays::Percents { worked };
    let within = rules.percents_within.as_ref();
    judged(worked, Decimal::ONE_HUNDRED, apart, within, says)
}

/// Is a printed percent what the part is of the whole?
pub fn printed_percent_agrees(
    part: Decimal,
    whole: Decimal,
    printed: Decimal,
    rules: &YieldRules,
) -> Sum {
    let worked = match whole.is_zero() {
        true => Decimal::ZERO,
        false => part * Decimal::ONE_HUNDRED / whole,
    };
    let apart = (worked - printed).abs();
    let says = TableSays::Percent {
        part,
        whole,
        worked: worked.round_dp(1),
        printed,
    };
    judged(worked, printed, apart, rules.percent_within.as_ref(), says)
}

fn judged(
    worked: Decimal,
    printed: Decimal,
    apart: Decimal,
    within: Option<&Bound>,
    says: TableSays,
) -> Sum {
    let finding = within
        .filter(|within| !within.allows(apart))
        .map(|within| Finding::new(Gravity::Warn, says, [within.row.clone()]));
    Sum {
        worked,
        printed,
        finding,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_is_summed_before_it_is_used() {
        let rules = YieldRules {
            sum_within: Some(Bound::at_most("trade-1.2-P-A", Decimal::new(5, 1))),
            percents_within: Some(Bound::at_most("trade-1.2-P-C", 1)),
            percent_within: Some(Bound::at_most("trade-1.4-printed", 1)),
            ..YieldRules::default()
        };
        let parts = |numbers: &[i64]| -> Vec<Decimal> {
            numbers.iter().copied().map(Decimal::from).collect()
        };
        let off = |sum: Sum| sum.finding.is_some();
        assert!(!off(sum_agrees(&parts(&[100, 100]), 201.into(), &rules)));
        assert!(off(sum_agrees(&parts(&[100, 100]), 202.into(), &rules)));
        assert!(off(sum_agrees(&parts(&[100]), 0.into(), &rules)));
        assert!(!off(sum_of_percents_agrees(&parts(&[60, 41]), &rules)));
        assert!(off(sum_of_percents_agrees(&parts(&[60, 42]), &rules)));
        assert!(off(printed_percent_agrees(
            150.into(),
            590.into(),
            6.into(),
            &rules
        )));
        assert!(!off(printed_percent_agrees(
            150.into(),
            590.into(),
            26.into(),
            &rules
        )));
    }
}
