//! What goes in, against what a place allows.

use super::{Alternative, Assessed, Counts, Cure, Ingoing, Limit, Rules, Stage, When};
use crate::measure::Percent;
use crate::rows::{Finding, Gravity, RowId, Rows, Sense};
use rust_decimal::{Decimal, RoundingStrategy};

/// Every limit that is for this cure; the rows that were asked are added.
pub(super) fn check(
    cure: &Cure,
    done: &Assessed,
    rules: &Rules,
    rows: &Rows,
    asked: &mut Vec<RowId>,
) -> Vec<Finding> {
    let ingoing = &done.ingoing;
    let any = ingoing.has_nitrite() || ingoing.has_nitrate();
    let sets = cure.class.is_bacon()
        && cure.method == super::Method::Pumped
        && !rules.pumped_bacon.is_empty();
    let mut findings = Vec::new();
    for limit in rules.limits.iter().filter(|limit| {
        limit.stage == Stage::Ingoing && limit.is_for(cure.method, cure.class, cure.day, rows)
    }) {
        // The sets for pumped bacon have their own nitrite and accelerator.
        if sets && is_of_a_set(limit) {
            continue;
        }
        // A least amount is for what is cured with nitrite at all.
        if limit.bound.sense == Sense::AtLeast && !any {
            continue;
        }
        let Some(weight) = bears(limit.when, cure) else {
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
        findings.push(finding);
    }
    if sets && ingoing.has_nitrite() {
        findings.extend(check_sets(cure, done, rules, rows, asked));
    }
    findings.extend(note_gaps(cure, ingoing, rules, rows, sets));
    findings
}

/// Nitrite or nitrate for which the place has no upper figure that was read: said, not passed over.
fn note_gaps(
    cure: &Cure,
    ingoing: &Ingoing,
    rules: &Rules,
    rows: &Rows,
    sets: bool,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (is_in, nitrite, what) in [
        (ingoing.has_nitrite() && !sets, true, "nitrite"),
        (ingoing.has_nitrate(), false, "nitrate"),
    ] {
        let upper = |stage| {
            rules.limits.iter().any(|limit| {
                matches!(limit.counts, Counts::Salt(basis) if basis.is_nitrite() == nitrite)
                    && limit.stage == stage
                    && limit.bound.sense != Sense::AtLeast
                    && limit.is_for(cure.method, cure.class, cure.day, rows)
            })
        };
        if !is_in || upper(Stage::Ingoing) {
            continue;
        }
        let (class, method) = (cure.class, cure.method);
        findings.push(match upper(Stage::Residual) {
            true => Finding::note(
                format!("For {what} in {class} only what is left at the end is limited, not what goes in."),
                [],
            ),
            false => Finding::new(
                Gravity::Warn,
                format!("No limit for {what} in {class} ({method}) has been read for this place. Ask before you use it."),
                [],
            ),
        });
    }
    findings
}

/// Does a set for pumped bacon stand in this limit's place?
fn is_of_a_set(limit: &Limit) -> bool {
    match limit.counts {
        Counts::Salt(basis) => basis.is_nitrite(),
        Counts::Ascorbate => true,
        Counts::Both => false,
    }
}

/// How grave a break of a limit with that condition may be; none where it is not for this cure.
fn bears(when: When, cure: &Cure) -> Option<Gravity> {
    match (when, cure.heated) {
        (When::Always, _) => Some(Gravity::Refuse),
        (When::KeepRefrigerated, _) => cure.keep_refrigerated.then_some(Gravity::Refuse),
        // Only the word is at stake, so long as nobody has printed it.
        (When::CalledCured, _) => Some(match cure.called_cured {
            true => Gravity::Refuse,
            false => Gravity::Note,
        }),
        (When::Heated, Some(heated)) => heated.then_some(Gravity::Refuse),
        (When::NotHeated, Some(heated)) => (!heated).then_some(Gravity::Refuse),
        (When::NotHeated, None) => Some(Gravity::Refuse),
        // Nobody has said whether it is cooked.
        (When::Heated, None) => Some(Gravity::Warn),
    }
}

fn says(limit: &Limit, measured: Decimal, cure: &Cure, done: &Assessed) -> String {
    let (what, value) = (limit.said(), limit.bound.value.normalize());
    let measured_shown = measured.round_dp(2).normalize();
    let of = format!("{} ({})", cure.class, cure.method);
    let over = measured > limit.bound.value;
    let condition = match limit.when {
        When::Heated => " where it is cooked",
        When::NotHeated => " where it is not cooked",
        When::KeepRefrigerated => " for what must be kept refrigerated",
        When::CalledCured => " for what is called cured",
        When::Always => "",
    };
    let is = match (limit.bound.sense, over) {
        (_, true) if value.is_zero() => format!("none is allowed in {of}{condition}"),
        (Sense::Exactly, _) => format!("it must be {value} ppm in {of}{condition}"),
        (_, true) => format!("{value} ppm is the most for {of}{condition}"),
        (_, false) => format!("{value} ppm is the least for {of}{condition}"),
    };
    let salts = done.curing_salt;
    let would_do = match limit.counts {
        Counts::Ascorbate => String::new(),
        _ if salts.is_none_left() || measured.is_zero() || value.is_zero() => String::new(),
        _ => {
            let milligrams = Decimal::from(salts.milligrams()) * limit.bound.value / measured;
            let word = match (limit.bound.sense, over) {
                (Sense::Exactly, _) => "Just",
                (_, true) => "At most",
                (_, false) => "At least",
            };
            // Towards the safe side: a most is cut, a least is raised.
            let rounding = match (limit.bound.sense, over) {
                (Sense::Exactly, _) => RoundingStrategy::MidpointNearestEven,
                (_, true) => RoundingStrategy::ToZero,
                (_, false) => RoundingStrategy::AwayFromZero,
            };
            let grams = (milligrams / Decimal::ONE_THOUSAND)
                .round_dp_with_strategy(2, rounding)
                .normalize();
            format!(" {word} {grams} g of this curing salt would do, not {salts}.")
        }
    };
    format!("{measured_shown} ppm {what} went in; {is}.{would_do}")
}

/// The sets of figures for pumped bacon: one of them must be met whole.
fn check_sets(
    cure: &Cure,
    done: &Assessed,
    rules: &Rules,
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
    let sets: Vec<String> = rules.pumped_bacon.iter().map(shown).collect();
    let nitrite = first
        .nitrite
        .first()?
        .measure(&done.ingoing, &rules.masses)
        .round_dp(2)
        .normalize();
    let ascorbate = done.ingoing.ascorbate.round_dp(2).normalize();
    let says = format!(
        "{nitrite} ppm nitrite and {ascorbate} ppm ascorbate or erythorbate went into pumped bacon; it must be just one of these: {}.",
        sets.join("; or ")
    );
    Some(Finding::against(rows, &first.row, says))
}

fn is_met(set: &Alternative, cure: &Cure, done: &Assessed, rules: &Rules) -> bool {
    let allows =
        |limit: &Limit, ingoing: &Ingoing| limit.allows(limit.measure(ingoing, &rules.masses));
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

fn shown(set: &Alternative) -> String {
    let figure = |limit: &Limit| limit.bound.value.normalize().to_string();
    let nitrite: Vec<String> = set.nitrite.iter().map(figure).collect();
    let sugar = set
        .sugar
        .as_ref()
        .map(|least| format!(" + sugar {} or more", Percent::new(least.value)));
    format!(
        "{} ppm sodium nitrite + {} ppm{}{}",
        nitrite.join(" to "),
        figure(&set.ascorbate),
        sugar.unwrap_or_default(),
        match set.starter {
            true => " + a lactic starter",
            false => "",
        }
    )
}
