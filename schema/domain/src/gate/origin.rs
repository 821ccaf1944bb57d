//! Where the animals of a lot were born, raised and killed, as far as the lists know.

use super::GateSays;
use crate::country;
use crate::duties::origin_words::{BeefLabel, MinceLabel, OriginWording, beef_lines, mince_lines};
use crate::family::{Family, Lists, Relative};
use crate::law::Law;
use crate::naming::NameFacts;
use crate::product::Product;
use crate::rows::{Finding, Gravity};
use crate::statement::origin;
use crate::words::{ProductKind, Species};
use chrono::NaiveDate;
use std::collections::BTreeSet;

/// One source animal of a lot, with its countries.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Raised {
    /// What it was.
    pub species: Species,
    /// Where it was born, where its farm says that its animals are born there.
    pub born: Option<String>,
    /// Where it was raised.
    pub reared: Option<String>,
    /// Where it was killed.
    pub slaughtered: Option<String>,
    /// The abattoir's number.
    pub abattoir: Option<String>,
    /// When it was killed.
    pub killed: NaiveDate,
}

/// Where meat is worked.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct WorkedIn<'a> {
    /// The kitchen's country, by its two letters.
    pub country: Option<&'a str>,
    /// The number that the authority gave it, if it has one.
    pub number: Option<&'a str>,
    /// Is it minced there?
    pub minced: bool,
}

/// The source animals of a lot; `None` stands for meat that was bought without its animal.
pub fn sources(family: &Family, of: &Relative, lists: &Lists) -> Vec<Option<Raised>> {
    let mut all: Vec<Option<Raised>> = Vec::new();
    for of in family.youngest_first(of.lot.id) {
        let Some(source) = of.source.as_ref().filter(|_| of.has_species()) else {
            continue;
        };
        let raised = source.animal.as_ref().map(|animal| {
            let farm = lists.farms.get(&animal.farm);
            let country = farm.and_then(|farm| farm.country.clone());
            let abattoir = animal.abattoir.as_ref();
            let killed_at = abattoir.and_then(|number| lists.abattoirs.get(number));
            Raised {
                species: animal.species,
                born: country
                    .clone()
                    .filter(|_| farm.is_some_and(|farm| farm.born_there)),
                reared: country,
                slaughtered: killed_at.and_then(|abattoir| abattoir.country.clone()),
                abattoir: animal.abattoir.clone(),
                killed: animal.killed_on,
            }
        });
        if !all.contains(&raised) {
            all.push(raised);
        }
    }
    all
}

/// Is it meat and nothing else: cut or minced, raw?
pub(super) fn is_fresh_meat(facts: &NameFacts<'_>) -> bool {
    let product = facts.product;
    let alone = facts.species.len() == 1 && facts.is_meat_alone;
    product.raw
        && match product.kind {
            ProductKind::Cut | ProductKind::Trim => true,
            ProductKind::Mixed => alone,
            _ => false,
        }
}

/// Where the place asks for the countries of fresh meat, and the lists do not know them. The packs of
/// this counter are put up where they are sold, which the duty does not reach (`canada-eu-uk-10.6`); so
/// it is a word of warning.
pub(super) fn check(
    facts: &NameFacts<'_>,
    sources: &[Option<Raised>],
    law: &Law,
) -> Option<Finding> {
    let rule = law.statements.origin.as_ref()?;
    let asked = is_fresh_meat(facts) && facts.species.iter().any(|of| rule.species.contains(of));
    let known = |raised: &Option<Raised>| {
        let both = raised.as_ref();
        both.is_some_and(|raised| raised.reared.is_some() && raised.slaughtered.is_some())
    };
    let all_known = !sources.is_empty() && sources.iter().all(known);
    (asked && !all_known)
        .then(|| Finding::new(Gravity::Warn, GateSays::OriginUnknown, [rule.row.clone()]))
}

/// The lines of a label on where the animals of fresh meat lived and died; none where the place does not
/// ask, or where the lists do not know it of every animal.
pub fn origin_lines(
    product: &Product,
    sources: &[Option<Raised>],
    lot: &str,
    worked: WorkedIn<'_>,
    law: &Law,
    language: &str,
) -> Vec<String> {
    let raised: Option<Vec<&Raised>> = sources.iter().map(Option::as_ref).collect();
    if product.species == Some(Species::Cattle) && product.raw {
        if worked.minced {
            let wording = law.duties.origin.as_ref();
            let lines = wording.map(|wording| {
                let label = minced(sources, lot, worked, language);
                mince_lines(wording, &label, language)
            });
            return lines.unwrap_or_default();
        }
        let wording = law.duties.origin.as_ref();
        let known = raised.unwrap_or_default();
        let lines = wording.map(|wording| beef(&known, lot, worked, wording, language));
        return lines.unwrap_or_default();
    }
    let (Some(raised), true) = (raised.filter(|all| !all.is_empty()), product.raw) else {
        return Vec::new();
    };
    let rule = law.statements.origin.as_ref();
    if !rule.is_some_and(|rule| product.species.is_some_and(|of| rule.species.contains(&of))) {
        return Vec::new();
    }
    let (Some(born), Some(reared), Some(slaughtered)) = (
        countries(
            &raised,
            |of| Some(of.born.as_deref().unwrap_or("")),
            language,
        ),
        countries(&raised, |of| of.reared.as_deref(), language),
        countries(&raised, |of| of.slaughtered.as_deref(), language),
    ) else {
        return Vec::new();
    };
    let one = |all: &[&str]| all.len() == 1 && !all[0].is_empty();
    let born = Some(born).filter(|born| one(born)).map(|born| born[0]);
    let (reared, slaughtered) = (reared.join(", "), slaughtered.join(", "));
    origin(&law.statements, born, &reared, &slaughtered, language)
}

/// The countries of all animals by name, each once; nothing where one is not known.
fn countries<'a>(
    raised: &[&'a Raised],
    of: impl Fn(&'a Raised) -> Option<&'a str>,
    language: &str,
) -> Option<Vec<&'a str>> {
    let named = |raised: &&'a Raised| of(raised).map(|of| country::name(of, language));
    let all: Option<BTreeSet<&str>> = raised.iter().map(named).collect();
    Some(all?.into_iter().collect())
}

/// The lines of a beef label (`canada-eu-uk-10.7`): its number, and what else is known of all its animals and is one
/// country each. What the lists do not know is warned of.
fn beef(
    raised: &[&Raised],
    lot: &str,
    worked: WorkedIn<'_>,
    wording: &OriginWording,
    language: &str,
) -> Vec<String> {
    let one = |of: fn(&Raised) -> Option<&str>| {
        let all = countries(raised, of, language)?;
        (all.len() == 1).then(|| all[0])
    };
    let numbers: Option<BTreeSet<&str>> = raised
        .iter()
        .map(|raised| raised.abattoir.as_deref())
        .collect();
    let numbers: Vec<&str> = numbers.unwrap_or_default().into_iter().collect();
    // A shop that cuts for its own counter has no number as a cutting plant.
    let cut = worked.country.zip(worked.number);
    let cut = cut.map(|(country, number)| (country::name(country, language), number));
    let label = BeefLabel {
        reference: lot,
        born: one(|of| of.born.as_deref()).unwrap_or_default(),
        reared: one(|of| of.reared.as_deref()).unwrap_or_default(),
        slaughtered: (
            one(|of| of.slaughtered.as_deref()).unwrap_or_default(),
            &numbers,
        ),
        cut: cut.as_slice(),
    };
    let lines = beef_lines(wording, &label, language).into_iter();
    lines.filter_map(|(_, line)| line).collect()
}

/// What the label of minced beef says, of what the lists know.
fn minced<'a>(
    sources: &'a [Option<Raised>],
    lot: &'a str,
    worked: WorkedIn<'a>,
    language: &str,
) -> MinceLabel<'a> {
    let raised: Option<Vec<&Raised>> = sources.iter().map(Option::as_ref).collect();
    let slaughtered = raised
        .filter(|all| !all.is_empty())
        .and_then(|all| countries(&all, |of| of.slaughtered.as_deref(), language));
    let known = sources.iter().flatten();
    let involved = known.flat_map(|of| [&of.born, &of.reared, &of.slaughtered]);
    MinceLabel {
        reference: lot,
        slaughtered: slaughtered.unwrap_or_default(),
        prepared: worked.country.map(|of| country::name(of, language)),
        involved: involved
            .flatten()
            .map(|of| country::name(of, language))
            .collect(),
    }
}
