//! Cooking, smoking, rendering, stock: what came out for what went in.

use super::says::StepYieldSays;
use super::{Band, Verdict, YieldRules, YieldShown};
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use crate::says::{Says, Texts};
use rust_decimal::Decimal;

/// How a step's yield is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum YieldMeasure {
    /// Percent of the weight that it is counted from.
    Percent,
    /// Litres for each kilogram; a kilogram of stock is taken as a litre.
    LitresPerKilogram,
}

/// What is usual for one process.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepRule {
    /// Its name in the data: `pulled-pork-bone-in`.
    pub key: String,
    /// As a cook calls it.
    pub name: Texts,
    /// What it is counted from: `raw shoulder with its bone`.
    pub of: Texts,
    /// How it is counted.
    pub measure: YieldMeasure,
    /// The published number, where there is one.
    pub published: Option<Decimal>,
    /// What is usual.
    pub band: Option<Band>,
    /// Where it comes from.
    pub row: RowId,
}

/// A step to be looked at.
#[derive(Debug, Clone, Copy)]
pub struct Cooked<'a> {
    /// The rule's key.
    pub process: &'a str,
    /// The weight that the yield is counted from: the raw meat, the cured slab, the bones.
    pub base: Grams,
    /// What came out.
    pub output: Grams,
    /// What was put on it and came out with it: a glaze, a sauce. It is no yield.
    pub added: Grams,
}

/// The yield of a step against what is usual.
///
/// # Errors
/// The process is not known, a weight is missing, or the addition weighs more than what came out.
pub fn of_step(cooked: &Cooked<'_>, rules: &YieldRules) -> Result<YieldShown> {
    let rule = rules.steps.iter().find(|rule| rule.key == cooked.process);
    let rule = rule.ok_or_else(|| {
        let process = cooked.process.to_owned();
        Refusal::cannot_be("process", StepYieldSays::Unknown { process })
    })?;
    if cooked.base.is_none_left() {
        let says = StepYieldSays::NoBase {
            of: rule.of.clone(),
        };
        return Err(Refusal::cannot_be("base", says));
    }
    if cooked.output.is_none_left() {
        return Err(Refusal::cannot_be("output", StepYieldSays::NoOutput));
    }
    let grams = cooked.output - cooked.added;
    if cooked.added < Grams::ZERO || grams.is_none_left() {
        return Err(Refusal::cannot_be("added", StepYieldSays::Added));
    }
    let ratio = Decimal::from(grams.milligrams()) / Decimal::from(cooked.base.milligrams());
    let amount = match rule.measure {
        YieldMeasure::Percent => ratio * Decimal::ONE_HUNDRED,
        YieldMeasure::LitresPerKilogram => ratio,
    };
    let verdict = Verdict::of(amount, rule.band.as_ref());
    Ok(YieldShown {
        key: rule.key.clone(),
        name: Says::named(&rule.name),
        grams,
        amount,
        expected: rule.published,
        band: rule.band.clone(),
        verdict,
        says: says(rule, amount, verdict).into(),
        row: rule.row.clone(),
    })
}

fn says(rule: &StepRule, amount: Decimal, verdict: Verdict) -> StepYieldSays {
    use StepYieldSays as Says;
    let (name, of, amount) = (rule.name.clone(), rule.of.clone(), amount.round_dp(2));
    let Some(band) = &rule.band else {
        return match rule.measure {
            YieldMeasure::Percent => Says::Percent { name, amount, of },
            YieldMeasure::LitresPerKilogram => Says::Litres { name, amount, of },
        };
    };
    let (low, high) = (band.low, band.high);
    let unusual = matches!(verdict, Verdict::Low | Verdict::High);
    match (rule.measure, unusual) {
        (YieldMeasure::Percent, false) => Says::PercentUsual {
            name,
            amount,
            of,
            low,
            high,
        },
        (YieldMeasure::Percent, true) => Says::PercentUnusual {
            name,
            amount,
            of,
            low,
            high,
        },
        (YieldMeasure::LitresPerKilogram, false) => Says::LitresUsual {
            name,
            amount,
            of,
            low,
            high,
        },
        (YieldMeasure::LitresPerKilogram, true) => Says::LitresUnusual {
            name,
            amount,
            of,
            low,
            high,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(base: i64, output: i64, added: i64, expected: std::result::Result<Verdict, &str>) {
        let rules = YieldRules {
            steps: vec![StepRule {
                key: "ribs".into(),
                name: "ribs".into(),
                of: "raw ribs".into(),
                measure: YieldMeasure::Percent,
                published: Some(Decimal::from(76)),
                band: Some(Band::new("trade-3-usda", 66, 86)),
                row: RowId::new("trade-3-usda"),
            }],
            ..YieldRules::default()
        };
        let cooked = Cooked {
            process: "ribs",
            base: Grams::whole(base),
            output: Grams::whole(output),
            added: Grams::whole(added),
        };
        let verdict = of_step(&cooked, &rules)
            .map(|line| line.verdict)
            .map_err(|refusal| refusal.field.unwrap());
        assert_eq!(verdict, expected.map_err(String::from));
    }

    #[test]
    fn a_step_is_judged_without_its_glaze() {
        check(2190, 1740, 80, Ok(Verdict::Usual));
        check(1000, 860, 0, Ok(Verdict::Usual));
        check(1000, 861, 0, Ok(Verdict::High));
        check(1000, 659, 0, Ok(Verdict::Low));
        check(0, 10, 0, Err("base"));
        check(10, 0, 0, Err("output"));
        check(10, 5, 5, Err("added"));
    }
}
