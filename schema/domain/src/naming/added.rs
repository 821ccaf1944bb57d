//! What was added to meat that looks like a cut: how the name tells it, and how much meat protein is left.

use super::NameFacts;
use super::names::is_cooked;
use super::says::NamingSays;
use crate::duties::meat_protein::{check_meat_protein, is_solid_cut};
use crate::duties::names::Part;
use crate::law::Law;
use crate::measure::Percent;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity};
use crate::statement::{says_water, solution_percent};
use crate::words::ProductKind;
use rust_decimal::Decimal;

/// What stands against the food by what was added to it: as the steps weighed it, else as somebody told.
///
/// # Errors
/// A figure that cannot be.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Result<Vec<Finding>> {
    let mut found = Vec::new();
    found.extend(meat_protein(facts, law)?);
    found.extend(solution(facts, law)?);
    found.extend(told_water(facts, law));
    found.extend(told_else(facts));
    Ok(found)
}

/// Meat protein in a solid cut to which water was added.
fn meat_protein(facts: &NameFacts<'_>, law: &Law) -> Result<Option<Finding>> {
    let product = facts.product;
    let told = product.standard.added.unwrap_or_default();
    let added = facts.water_in || told > Percent::default();
    let Some(least) = law.duties.meat_protein.as_ref().filter(|_| added) else {
        return Ok(None);
    };
    use ProductKind::*;
    let whole = matches!(product.kind, Cut | Cured | Cooked)
        && !facts.species.is_empty()
        && !facts
            .parts
            .iter()
            .flatten()
            .any(|(_, part)| matches!(part, Part::Trim | Part::Other));
    let known = product.kind == Cut || !facts.parts.is_empty();
    if !is_solid_cut(least, whole && known, Percent::default())? {
        return Ok(None);
    }
    let cooked = is_cooked(facts) == Some(true);
    let name = product.name("en");
    let bound = if cooked { &least.cooked } else { &least.raw };
    match product.standard.protein {
        Some(protein) => {
            let found = check_meat_protein(least, &law.rows, name, cooked, protein)?;
            let unsaid = found.is_none() && least.is_for(name) && !says_protein(facts);
            let says = NamingSays::MeatProteinUnsaid { percent: protein };
            let unsaid = unsaid.then(|| Finding::against(&law.rows, &bound.row, says));
            Ok(found.or(unsaid))
        }
        None if least.is_for(name) => {
            let says = NamingSays::MeatProteinUnknown { least: bound.value };
            Ok(Some(Finding::against(&law.rows, &bound.row, says)))
        }
        None => Ok(None),
    }
}

/// Does a name tell how much meat protein is in it?
fn says_protein(facts: &NameFacts<'_>) -> bool {
    let mut names = facts.product.names.values().map(|name| name.to_lowercase());
    names.any(|name| {
        let words = ["meat protein", "protéines de viande", "protéine de viande"];
        name.contains('%') && words.iter().any(|words| name.contains(words))
    })
}

/// Water or brine in raw meat that is sold raw: the name tells how much (`us-F2`), the figure is worked out
/// of what went in (`us-F3`).
fn solution(facts: &NameFacts<'_>, law: &Law) -> Result<Option<Finding>> {
    let Some(row) = &law.statements.solution else {
        return Ok(None);
    };
    let plain = facts.product.raw
        && !facts.species.is_empty()
        && facts.nitrite == Some(false)
        && facts.product.kind != ProductKind::Mixed;
    let weighed = facts.solution.filter(|(solution, meat)| {
        let weighed = !solution.is_none_left() && !meat.is_none_left();
        weighed && facts.water_in
    });
    let percent = match (weighed, facts.product.standard.added) {
        (Some((solution, meat)), _) => solution_percent(solution, meat)?,
        // Nobody poured it here: it is as somebody told, of the whole that is sold.
        (None, Some(added)) if added.number() < Decimal::ONE_HUNDRED => {
            Percent::of(added.number(), Decimal::ONE_HUNDRED - added.number())
        }
        _ => return Ok(None),
    };
    if !plain || percent.number().is_zero() || states(facts.product.name("en"), percent) {
        return Ok(None);
    }
    let says = NamingSays::Solution { percent };
    Ok(Some(Finding::against(&law.rows, row, says)))
}

/// Does a name state at least that percentage, to the whole number?
fn states(name: &str, percent: Percent) -> bool {
    let least = percent.number().round();
    let before_signs = name.split('%').collect::<Vec<_>>();
    let numbers = before_signs
        .split_last()
        .map_or(&[][..], |(_, before)| before);
    numbers.iter().any(|text| {
        let text = text.trim_end();
        let number = text
            .rsplit(|c: char| !c.is_ascii_digit() && c != '.')
            .next();
        let number = number.and_then(|number| number.parse::<Decimal>().ok());
        number.is_some_and(|number| number >= least)
    })
}

/// Water that somebody told of, of which no step knows: above what goes unsaid the name says so.
fn told_water(facts: &NameFacts<'_>, law: &Law) -> Option<Finding> {
    let rule = law.statements.water.as_ref()?;
    let added = facts.product.standard.added.filter(|_| !facts.water_in)?;
    let product = facts.product;
    let looks_whole = product.kind != ProductKind::Mixed && !facts.species.is_empty();
    let mut names = product.label_names().iter();
    let said = names.all(|(language, name)| says_water(name, language));
    if !looks_whole || said || rule.unsaid.passes(added.number()) {
        return None;
    }
    let says = NamingSays::AddedWater {
        percent: added,
        most: Percent::new(rule.unsaid.bound.value),
    };
    Some(Finding::against(&law.rows, &rule.row, says))
}

/// How far what is told may be from what is weighed, in percent. Our own.
const APART: Decimal = Decimal::ONE;

/// What is told of what was added, against what the steps weighed.
fn told_else(facts: &NameFacts<'_>) -> Option<Finding> {
    let told = facts.product.standard.added?;
    let (added, meat) = facts.solution.filter(|_| facts.water_in)?;
    let (added, meat) = (added.milligrams(), meat.milligrams());
    let weighed = Percent::of(added.into(), (added + meat).into());
    let apart = (weighed.number() - told.number()).abs() > APART;
    let says = NamingSays::AddedElse { told, weighed };
    apart.then(|| Finding::new(Gravity::Warn, says, []))
}
