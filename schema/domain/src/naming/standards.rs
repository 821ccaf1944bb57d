//! Foods that have a standard: what the figures on record say against the name, and what is warned of
//! where nobody has measured.

use super::names::is_cooked;
use super::says::NamingSays;
use super::{NameFacts, added, identity, nitrite};
use crate::duties::cured_pork::{self, PffKind, Qualifier, Standards};
use crate::duties::dry_cured::{Claim, DryCured, Piece, check_dry_cured};
use crate::duties::mince::{self, MeatKind, MinceKind, Sample};
use crate::duties::names::{Part, says, words_of};
use crate::law::Law;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity};
use crate::says::Says;
use crate::stability::moisture_to_protein;
use crate::words::{ProductKind, Species};

/// What stands against "country" and "dry cured" on a ham or shoulder of a pig; nothing for another name.
///
/// # Errors
/// A figure that cannot be.
pub fn dry_cured(facts: &NameFacts<'_>, law: &Law) -> Result<Option<Vec<Finding>>> {
    let (Some(standards), Some(name)) = (&law.duties.cured_pork, words(facts)) else {
        return Ok(None);
    };
    let claim = match () {
        () if says(&name, "country") => Claim::Country,
        () if says(&name, "dry cured") => Claim::DryCured,
        () => return Ok(None),
    };
    let piece = match () {
        () if says(&name, "ham") || says(&name, "hams") => Piece::Ham,
        () if says(&name, "shoulder") => Piece::Shoulder,
        () => return Ok(None),
    };
    if !facts.species.contains(&Species::Pig) || !facts.dry {
        return Ok(None);
    }
    let Some((fresh, finished)) = facts.weights else {
        return Ok(Some(Vec::new()));
    };
    let told = &facts.product.standard;
    let asked = DryCured {
        claim,
        piece,
        fresh,
        finished,
        nitrite: facts.nitrite.unwrap_or(false),
        salt: told.salt,
        water: told.water,
        water_activity: facts.water_activity,
        curing_days: None,
        whole_days: None,
        core: None,
    };
    let found = check_dry_cured(standards, &law.rows, &asked)?;
    // What nobody measured is not known to be wrong.
    let known = |finding: Finding| match finding.says.key() {
        "dry-cured-measure-salt" | "dry-cured-unmeasured" => finding.warned(),
        _ => finding,
    };
    Ok(Some(found.into_iter().map(known).collect()))
}

/// What stands against the food as the standard of its name has it.
///
/// # Errors
/// A figure that cannot be.
pub fn check_standard(facts: &NameFacts<'_>, law: &Law) -> Result<Vec<Finding>> {
    let mut found = Vec::new();
    if let (Some(standards), Some(name)) = (&law.duties.cured_pork, words(facts)) {
        found.extend(bacon(facts, standards, &name, law)?);
        found.extend(patty(facts, standards, &name, law)?);
        found.extend(protein(facts, standards, &name, law)?);
    }
    found.extend(added::check(facts, law)?);
    found.extend(minced(facts, law)?);
    found.extend(identity::check(facts, law));
    found.extend(moisture(facts, law)?);
    found.extend(nitrite::check(facts, law)?);
    Ok(found)
}

/// The words of the English name.
fn words(facts: &NameFacts<'_>) -> Option<Vec<String>> {
    facts
        .product
        .label_names()
        .get("en")
        .map(|name| words_of(name))
}

/// Is it made of that part of a pig and of no other?
fn is_all(facts: &NameFacts<'_>, part: Part) -> bool {
    let own = |known: &Option<(Species, Part)>| *known == Some((Species::Pig, part));
    !facts.parts.is_empty() && facts.parts.iter().all(own)
}

fn bacon(
    facts: &NameFacts<'_>,
    standards: &Standards,
    name: &[String],
    law: &Law,
) -> Result<Option<Finding>> {
    // Where nobody told the part, the bare name says that it is the belly.
    let other = |part: &Option<(Species, Part)>| {
        part.is_some_and(|part| part != (Species::Pig, Part::Belly))
    };
    let of_pig = facts.species.iter().eq([&Species::Pig]);
    let belly = of_pig && !facts.parts.iter().any(other);
    match facts.weights.filter(|_| says(name, "bacon") && belly) {
        Some((fresh, ready)) => cured_pork::check_bacon(standards, &law.rows, fresh, ready),
        None => Ok(None),
    }
}

fn patty(
    facts: &NameFacts<'_>,
    standards: &Standards,
    name: &[String],
    law: &Law,
) -> Result<Vec<Finding>> {
    let chopped = ["ham patty", "ham patties", "chopped ham"];
    let told = &facts.product.standard;
    match told.fat.filter(|_| chopped.iter().any(|of| says(name, of))) {
        Some(fat) => {
            let over = told.shank_over.unwrap_or_default();
            cured_pork::check_patty(standards, &law.rows, fat, over)
        }
        None => Ok(Vec::new()),
    }
}

/// The words that have to stand beside the name of cured pork by its protein.
fn protein(
    facts: &NameFacts<'_>,
    standards: &Standards,
    name: &[String],
    law: &Law,
) -> Result<Option<Finding>> {
    let told = &facts.product.standard;
    // A name that stands for the standard is held to what was measured, however the food was made.
    let named = ["ham", "hams", "loin"].iter().any(|word| says(name, word));
    let cured = facts.nitrite == Some(true) || named && told.protein.is_some();
    if !cured || facts.product.raw || !facts.species.contains(&Species::Pig) {
        return Ok(None);
    }
    let cooked = is_cooked(facts) == Some(true);
    let unknown = facts.parts.contains(&None);
    let ham = is_all(facts, Part::HindLeg) || is_all(facts, Part::Loin) || unknown && named;
    let kind = match (cooked, ham, is_all(facts, Part::Shoulder)) {
        _ if says(name, "chopped ham") => PffKind::ChoppedHam,
        (true, true, _) => PffKind::CookedHam,
        (true, _, true) => PffKind::CookedShoulder,
        (false, true, _) if !facts.dry => PffKind::UncookedHam,
        (false, _, true) if !facts.dry => PffKind::UncookedShoulder,
        _ => return Ok(None),
    };
    let Some(least) = standards.pff.iter().find(|least| least.kind == kind) else {
        return Ok(None);
    };
    let (Some(protein), Some(fat)) = (told.protein, told.fat) else {
        let says = NamingSays::ProteinUnknown {
            least: least.plain.value,
        };
        let warned = Finding::new(Gravity::Warn, says, [least.plain.row.clone()]);
        return Ok(facts.water_in.then_some(warned));
    };
    let with = standards.qualifier(kind, cured_pork::pff(protein, fat)?);
    let with = with.filter(|with| *with != Qualifier::Plain);
    let own = facts.product.name("en");
    let Some(with) = with.filter(|with| !standards.is_said(own, *with)) else {
        return Ok(None);
    };
    let says: Says = match standards.full_name(own, with, facts.gained.or(told.added)) {
        Ok(name) => NamingSays::Qualifier { name }.into(),
        // The percentage that the name must state is not told.
        Err(refusal) => refusal.detail,
    };
    Ok(Some(Finding::against(
        &law.rows,
        &standards.wording.row,
        says,
    )))
}

/// Moisture to protein, where the English name is one that is held to it. Where nobody measured, a word of
/// warning.
fn moisture(facts: &NameFacts<'_>, law: &Law) -> Result<Vec<Finding>> {
    let Some(name) = words(facts).filter(|_| !facts.species.is_empty() && !facts.product.raw)
    else {
        return Ok(Vec::new());
    };
    let spoken = |key: &str| key.replace('-', " ");
    let mut rules = law.stability.moisture.iter();
    let rule = rules.find(|rule| says(&name, &spoken(&rule.name)));
    let Some(rule) = rule else {
        return Ok(Vec::new());
    };
    let told = &facts.product.standard;
    let (Some(water), Some(protein)) = (told.water, told.protein) else {
        let says = NamingSays::MoistureUnknown {
            name: spoken(&rule.name),
            most: rule.at_most.value,
        };
        return Ok(vec![Finding::new(
            Gravity::Warn,
            says,
            [rule.at_most.row.clone()],
        )]);
    };
    let ratio = water.number() / protein.number();
    moisture_to_protein(&rule.name, ratio, facts.ph, &law.stability, &law.rows)
}

/// Words that name minced meat, in the languages of the labels. Common practice, no source.
const MINCE: [&str; 8] = [
    "mince",
    "minced",
    "haché",
    "hachée",
    "hachés",
    "hachées",
    "minced meat",
    "lean mince",
];

/// Words that call it lean. Common practice, no source.
const LEAN: [&str; 3] = ["lean", "maigre", "maigres"];

/// The sort of mince that it is sold as, if it is.
pub fn mince_kind(facts: &NameFacts<'_>) -> Option<MinceKind> {
    let (product, told) = (facts.product, facts.product.standard.mince);
    let names = |all: &[&str]| {
        product.label_names().values().any(|name| {
            let words = words_of(name);
            all.iter().any(|word| says(&words, word))
        })
    };
    let is_raw_mix = product.raw && product.kind == ProductKind::Mixed;
    let is_mince = told.is_some() || is_raw_mix && names(&MINCE);
    if !is_mince || facts.species.is_empty() {
        return None;
    }
    // What its name says, it is sold as, whatever was entered; and of what animals it is, the record knows.
    let lean = names(&LEAN) && names(&MINCE);
    Some(match told {
        _ if lean => MinceKind::Lean,
        Some(MinceKind::Lean) => MinceKind::Lean,
        Some(told) if !facts.of_record => told,
        _ => sort(facts),
    })
}

/// The sort that was entered, where the animals on record make it another.
fn other_sort(facts: &NameFacts<'_>, is: MinceKind) -> Option<NamingSays> {
    let told = facts.product.standard.mince?;
    (told != is).then_some(NamingSays::MinceElse { told, is })
}

/// What minced meat tells of its fat and its collagen, in the words of the place (`canada-eu-uk-10.15`): the most
/// that its sort may have.
pub fn composition(facts: &NameFacts<'_>, law: &Law, language: &str) -> Option<String> {
    let (limits, words) = (
        law.duties.mince.as_ref()?,
        law.statements.composition.as_ref()?,
    );
    let kind = mince_kind(facts)?;
    let limit = limits.kinds.iter().find(|limit| limit.kind == kind)?;
    let text = words.in_language(language);
    let figure = |bound: &crate::rows::Bound| bound.value.normalize().to_string();
    let text = text.replacen("{}", &figure(&limit.fat), 1);
    Some(text.replacen("{}", &figure(&limit.collagen), 1))
}

/// What is sold as minced meat: fat and collagen, salt.
fn minced(facts: &NameFacts<'_>, law: &Law) -> Result<Vec<Finding>> {
    let (Some(limits), product) = (&law.duties.mince, facts.product) else {
        return Ok(Vec::new());
    };
    let told = &product.standard;
    let mut found = Vec::new();
    let sample = told.fat.zip(told.collagen);
    let sample = sample.map(|(fat, collagen)| Sample { fat, collagen });
    if let Some(kind) = mince_kind(facts) {
        let row = limits.kinds.iter().find(|limit| limit.kind == kind);
        let row = row.map(|limit| limit.fat.row.clone());
        let other = other_sort(facts, kind);
        found.extend(other.map(|says| Finding::new(Gravity::Warn, says, row)));
        match (sample, limits.kinds.iter().find(|limit| limit.kind == kind)) {
            (Some(sample), _) => {
                found.extend(mince::check_mince(limits, &law.rows, kind, &[sample])?)
            }
            (None, Some(limit)) => {
                let says = NamingSays::MinceUnknown {
                    fat: limit.fat.value,
                    collagen: limit.collagen.value,
                };
                found.push(Finding::new(Gravity::Warn, says, [limit.fat.row.clone()]));
            }
            (None, None) => {}
        }
        // The more of what was weighed and what was measured.
        if let Some(salt) = facts.salt.max(told.salt) {
            found.extend(mince::check_mince_making(
                limits, &law.rows, salt, false, false,
            )?);
        }
    } else if let Some(sample) = sample {
        for kind in meats(facts) {
            found.extend(mince::check_meat(limits, kind, sample)?);
        }
    }
    Ok(found)
}

fn sort(facts: &NameFacts<'_>) -> MinceKind {
    let only = |species| facts.species.len() == 1 && facts.species.contains(&species);
    match () {
        () if only(Species::Cattle) => MinceKind::Beef,
        () if facts.species.contains(&Species::Pig) => MinceKind::WithPork,
        () => MinceKind::Other,
    }
}

fn meats(facts: &NameFacts<'_>) -> Vec<MeatKind> {
    let mut kinds: Vec<MeatKind> = Vec::new();
    for species in &facts.species {
        let kind = match species {
            Species::Pig => MeatKind::Pig,
            Species::Rabbit => MeatKind::BirdOrRabbit,
            bird if bird.is_bird() => MeatKind::BirdOrRabbit,
            _ => MeatKind::Mammal,
        };
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    kinds
}
