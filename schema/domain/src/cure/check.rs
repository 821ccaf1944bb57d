//! What goes in, against what a place allows.

use super::says::{AllowedSays, CountedSays, DoseSays, FoodSays, LimitSays, RangeSays, SetSays};
use super::{
    Alternative, Assessed, Class, Counts, Cure, CureLimit, CureRules, Here, Ingoing, Method, Stage,
    When,
};
use crate::grams::Grams;
use crate::law::Law;
use crate::measure::Percent;
use crate::rows::{Finding, Gravity, RowId, Rows, Sense};
use crate::says::{Arg, Says};
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

/// Every limit that is for this cure; the rows that were asked are added.
pub(super) fn check(
    cure: &Cure,
    done: &Assessed,
    rules: &CureRules,
    rows: &Rows,
    asked: &mut Vec<RowId>,
) -> Vec<Finding> {
    let ingoing = &done.ingoing;
    let any = ingoing.has_nitrite() || ingoing.has_nitrate();
    let here = Here::of(rules, cure.method, cure.class, cure.day, rows);
    let sets = is_pumped_bacon(cure) && !rules.pumped_bacon.is_empty();
    let (mut findings, mut doubts) = (Vec::new(), Vec::new());
    for limit in rules.limits.iter().filter(|limit| {
        limit.stage == Stage::Ingoing && limit.is_for(cure.method, &here, cure.day, rows)
    }) {
        // The sets for pumped bacon have their own nitrite and accelerator.
        if sets && is_of_a_set(limit) {
            continue;
        }
        // A least amount is for what is cured with nitrite at all.
        if limit.bound.sense == Sense::AtLeast && !any {
            continue;
        }
        let Some(weight) = bears(limit.when, cure, ingoing) else {
            continue;
        };
        asked.push(limit.bound.row.clone());
        let measured = limit.measure(ingoing, &rules.masses);
        if limit.allows(measured) {
            continue;
        }
        let mut finding =
            Finding::against(rows, &limit.bound.row, says(limit, measured, cure, done));
        finding.gravity = finding.gravity.min(weight);
        if limit.doubt {
            finding.gravity = finding.gravity.min(Gravity::Warn);
            doubts.push(finding);
        } else {
            findings.push(finding);
        }
    }
    // What is refused is past doubt.
    if !findings.iter().any(Finding::refuses) {
        findings.extend(doubts);
    }
    if sets && ingoing.has_nitrite() {
        findings.extend(check_sets(cure, done, rules, rows, asked));
    }
    findings.extend(note_gaps(cure, ingoing, rules, rows, sets));
    findings
}

/// Has the place an upper limit of its own on nitrite, or on nitrate, for this cure that was read?
pub(super) fn has_own_limit(cure: &Cure, ingoing: &Ingoing, law: &Law, nitrite: bool) -> bool {
    let (rules, rows) = (&law.cures, &law.rows);
    let here = Here::of(rules, cure.method, cure.class, cure.day, rows);
    let sets = is_pumped_bacon(cure);
    let sets = rules.pumped_bacon.iter().filter(|_| sets && nitrite);
    if sets
        .flat_map(|set| &set.nitrite)
        .any(|limit| is_read(limit, rows))
    {
        return true;
    }
    rules.limits.iter().any(|limit| {
        is_upper(limit, nitrite)
            && limit.stage == Stage::Ingoing
            && is_read(limit, rows)
            && limit.is_for(cure.method, &here, cure.day, rows)
            && bears(limit.when, cure, ingoing) == Some(Gravity::Refuse)
    })
}

/// Is it past doubt a most of nitrite, or of nitrate?
pub(super) fn is_upper(limit: &CureLimit, nitrite: bool) -> bool {
    matches!(limit.counts, Counts::Salt(basis) if basis.is_nitrite() == nitrite)
        && limit.bound.sense != Sense::AtLeast
        && !limit.doubt
}

fn is_pumped_bacon(cure: &Cure) -> bool {
    cure.class.kind(cure.method) == Class::Bacon && cure.method == Method::Pumped
}

fn is_read(limit: &CureLimit, rows: &Rows) -> bool {
    rows.get(&limit.bound.row)
        .is_some_and(|row| row.is_confirmed())
}

/// Nitrite or nitrate for which the place has no upper figure that was read: said, not passed over.
fn note_gaps(
    cure: &Cure,
    ingoing: &Ingoing,
    rules: &CureRules,
    rows: &Rows,
    sets: bool,
) -> Vec<Finding> {
    let here = Here::of(rules, cure.method, cure.class, cure.day, rows);
    let mut findings = Vec::new();
    for (is_in, nitrite, what) in [
        (ingoing.has_nitrite() && !sets, true, CountedSays::Nitrite),
        (ingoing.has_nitrate(), false, CountedSays::Nitrate),
    ] {
        let upper = |stage| {
            rules.limits.iter().any(|limit| {
                is_upper(limit, nitrite)
                    && limit.stage == stage
                    && limit.is_for(cure.method, &here, cure.day, rows)
            })
        };
        if !is_in || upper(Stage::Ingoing) {
            continue;
        }
        let (class, method) = (cure.class, cure.method);
        findings.push(match upper(Stage::Residual) {
            true => Finding::note(LimitSays::OnlyResidual { what, class }, []),
            false => Finding::new(
                Gravity::Warn,
                LimitSays::NoneRead {
                    what,
                    class,
                    method,
                },
                [],
            ),
        });
    }
    findings
}

/// Does a set for pumped bacon stand in this limit's place?
fn is_of_a_set(limit: &CureLimit) -> bool {
    match limit.counts {
        Counts::Salt(basis) => basis.is_nitrite(),
        Counts::Ascorbate => true,
        Counts::Both => false,
    }
}

/// How grave a break of a limit with that condition may be; none where it is not for this cure.
fn bears(when: When, cure: &Cure, ingoing: &Ingoing) -> Option<Gravity> {
    let when = match (when, ingoing.has_nitrite()) {
        (When::NotHeatedWithNitrite, true) | (When::NotHeatedWithoutNitrite, false) => {
            When::NotHeated
        }
        (When::NotHeatedWithNitrite | When::NotHeatedWithoutNitrite, _) => return None,
        (when, _) => when,
    };
    match (when, cure.heated) {
        (When::Always, _) => Some(Gravity::Refuse),
        (When::KeepRefrigerated, _) => cure.keep_refrigerated.then_some(Gravity::Refuse),
        // Only the word is at stake, as long as nobody has printed it.
        (When::CalledCured, _) => Some(match cure.called_cured {
            true => Gravity::Refuse,
            false => Gravity::Note,
        }),
        (When::Heated, Some(heated)) => heated.then_some(Gravity::Refuse),
        (_, Some(heated)) => (!heated).then_some(Gravity::Refuse),
        // Nobody has said whether it is cooked.
        (When::Heated, None) => Some(Gravity::Warn),
        (_, None) => Some(Gravity::Refuse),
    }
}

fn says(limit: &CureLimit, measured: Decimal, cure: &Cure, done: &Assessed) -> LimitSays {
    let (what, value) = (limit.said(), limit.bound.value);
    let over = measured > value;
    let food = food(limit.when, cure);
    let rule = match (limit.bound.sense, over) {
        (_, true) if value.is_zero() => AllowedSays::None { food },
        (Sense::Exactly, _) => AllowedSays::Exactly { ppm: value, food },
        (_, true) => AllowedSays::Most { ppm: value, food },
        (_, false) => AllowedSays::Least { ppm: value, food },
    };
    let ppm = measured.round_dp(2);
    match would_do(limit, measured, done.curing_salt) {
        None => LimitSays::Broken { ppm, what, rule },
        Some(dose) => LimitSays::BrokenWouldDo {
            ppm,
            what,
            rule,
            dose,
        },
    }
}

fn food(when: When, cure: &Cure) -> FoodSays {
    let (class, method) = (cure.class, cure.method);
    match when {
        When::Heated => FoodSays::Heated { class, method },
        When::NotHeated | When::NotHeatedWithNitrite | When::NotHeatedWithoutNitrite => {
            FoodSays::NotHeated { class, method }
        }
        When::KeepRefrigerated => FoodSays::KeepRefrigerated { class, method },
        When::CalledCured => FoodSays::CalledCured { class, method },
        When::Always => FoodSays::Any { class, method },
    }
}

/// How much of the curing salt would keep to the limit, where it is the curing salt's affair.
fn would_do(limit: &CureLimit, measured: Decimal, used: Grams) -> Option<DoseSays> {
    let value = limit.bound.value;
    let over = measured > value;
    if limit.counts == Counts::Ascorbate
        || used.is_none_left()
        || measured.is_zero()
        || value.is_zero()
    {
        return None;
    }
    // Towards the safe side: a most is cut, a least is raised.
    let rounding = match (limit.bound.sense, over) {
        (Sense::Exactly, _) => RoundingStrategy::MidpointNearestEven,
        (_, true) => RoundingStrategy::ToZero,
        (_, false) => RoundingStrategy::AwayFromZero,
    };
    let milligrams = Decimal::from(used.milligrams()) * value / measured;
    let hundredths = (milligrams / Decimal::TEN).round_dp_with_strategy(0, rounding);
    let grams = Grams::from_milligrams(hundredths.to_i64()?.checked_mul(10)?);
    Some(match (limit.bound.sense, over) {
        (Sense::Exactly, _) => DoseSays::Just { grams, used },
        (_, true) => DoseSays::AtMost { grams, used },
        (_, false) => DoseSays::AtLeast { grams, used },
    })
}

/// The sets of figures for pumped bacon: one of them must be met whole.
fn check_sets(
    cure: &Cure,
    done: &Assessed,
    rules: &CureRules,
    rows: &Rows,
    asked: &mut Vec<RowId>,
) -> Option<Finding> {
    asked.extend(rules.pumped_bacon.iter().map(|set| set.row.clone()));
    if rules
        .pumped_bacon
        .iter()
        .any(|set| is_met(set, cure, done, rules))
    {
        return None;
    }
    let first = rules.pumped_bacon.first()?;
    let sets = rules.pumped_bacon.iter().filter_map(shown);
    let nitrite = first.nitrite.first()?.measure(&done.ingoing, &rules.masses);
    let says = LimitSays::Sets {
        nitrite: nitrite.round_dp(2),
        ascorbate: done.ingoing.ascorbate.round_dp(2),
        sets: Arg::Series(sets.map(Says::from).collect()),
    };
    Some(Finding::against(rows, &first.row, says))
}

fn is_met(set: &Alternative, cure: &Cure, done: &Assessed, rules: &CureRules) -> bool {
    let allows =
        |limit: &CureLimit, ingoing: &Ingoing| limit.allows(limit.measure(ingoing, &rules.masses));
    set.nitrite
        .iter()
        .chain([&set.ascorbate])
        .all(|limit| allows(limit, &done.ingoing))
        && set
            .sugar
            .as_ref()
            .is_none_or(|least| least.allows(done.sugar_percent.number()))
        && (!set.starter || cure.starter)
}

/// Nothing where a set names no nitrite, which the law's files refuse.
fn shown(set: &Alternative) -> Option<SetSays> {
    let figure = |limit: &CureLimit| limit.bound.value;
    let (first, last) = (set.nitrite.first()?, set.nitrite.last()?);
    let nitrite = match set.nitrite.len() {
        1 => RangeSays::One { ppm: figure(first) },
        _ => RangeSays::From {
            low: figure(first),
            high: figure(last),
        },
    };
    let ascorbate = figure(&set.ascorbate);
    let sugar = set.sugar.as_ref().map(|least| Percent::new(least.value));
    Some(match (sugar, set.starter) {
        (None, false) => SetSays::Plain { nitrite, ascorbate },
        (None, true) => SetSays::Starter { nitrite, ascorbate },
        (Some(sugar), false) => SetSays::Sugar {
            nitrite,
            ascorbate,
            sugar,
        },
        (Some(sugar), true) => SetSays::SugarStarter {
            nitrite,
            ascorbate,
            sugar,
        },
    })
}
