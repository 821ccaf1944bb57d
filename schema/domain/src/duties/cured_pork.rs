//! Cured pork with a standard: protein in the fat-free part, dry-cured hams and shoulders, bacon.

use super::measured;
use crate::grams::Grams;
use crate::law::{Bound, Finding, RowId, Rows};
use crate::measure::{Percent, Temperature};
use crate::refusal::{Refusal, Result};
use crate::words::words;
use rust_decimal::Decimal;

words! {
    /// The groups that have their own least protein.
    PffKind {
        CookedHam = "cooked-ham", CookedShoulder = "cooked-shoulder",
        UncookedHam = "uncooked-ham", UncookedShoulder = "uncooked-shoulder",
        ChoppedHam = "chopped-ham",
    }
}

words! {
    /// What has to stand beside the name.
    Qualifier {
        Plain = "plain", NaturalJuices = "natural-juices", WaterAdded = "water-added",
        AndWater = "and-water",
    }
}

words! {
    /// What a dry-cured piece calls itself.
    Claim { Country = "country", DryCured = "dry-cured", }
}

words! {
    /// The piece that is dry-cured whole.
    Piece { Ham = "ham", Shoulder = "shoulder", }
}

/// The standards of a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Standards {
    /// Least protein by group.
    pub pff: Vec<Least>,
    /// The words that follow from it.
    pub wording: PffWording,
    /// Most fat in ham patties, in percent.
    pub patty_fat: Bound,
    /// Most shank meat over what is normal in chopped ham, in percent.
    pub shank_over_normal: Bound,
    /// Finished weight of a dry-cured piece, in percent of fresh.
    pub dry_yield: Bound,
    /// Its salt with nitrite or nitrate, in percent.
    pub salt: Bound,
    /// Its brine without, in percent.
    pub brine: Bound,
    /// Or its water activity without.
    pub water_activity: Bound,
    /// Times of the standard that are not enforced: shown as advice.
    pub times: Vec<Time>,
    /// Core while a "country" piece dries or smokes, in degrees Fahrenheit: advice too.
    pub country_core: Bound,
    /// Weight of bacon, in percent of the fresh belly.
    pub bacon_yield: Bound,
}

/// Least protein of a group, in percent of the fat-free part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Least {
    /// The group.
    pub kind: PffKind,
    /// For the bare name.
    pub plain: Bound,
    /// With natural juices.
    pub natural_juices: Option<Bound>,
    /// With water added.
    pub water_added: Option<Bound>,
}

/// Mandated words beside the name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PffWording {
    /// Where they stand.
    pub row: RowId,
    /// After the name.
    pub natural_juices: String,
    /// After the name.
    pub water_added: String,
    /// After the name, with `{}` for the percentage.
    pub and_water: String,
}

/// A time of the standard that is not enforced.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Time {
    /// For which name.
    pub claim: Claim,
    /// Of the whole process, or of curing and equalising?
    pub whole: bool,
    /// Days for a ham.
    pub ham: Bound,
    /// Days for a shoulder.
    pub shoulder: Bound,
}

impl Standards {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut all = vec![
            &mut self.patty_fat,
            &mut self.shank_over_normal,
            &mut self.dry_yield,
            &mut self.salt,
            &mut self.brine,
            &mut self.water_activity,
            &mut self.country_core,
            &mut self.bacon_yield,
        ];
        for least in &mut self.pff {
            all.push(&mut least.plain);
            all.extend(least.natural_juices.as_mut());
            all.extend(least.water_added.as_mut());
        }
        for time in &mut self.times {
            all.extend([&mut time.ham, &mut time.shoulder]);
        }
        all
    }

    /// What has to stand beside the name of this group at that protein; `None` for a group without
    /// a line.
    pub fn qualifier(&self, kind: PffKind, pff: Percent) -> Option<Qualifier> {
        let least = self.pff.iter().find(|least| least.kind == kind)?;
        let meets = |bound: &Option<Bound>| {
            bound
                .as_ref()
                .is_some_and(|bound| bound.allows(pff.number()))
        };
        Some(if least.plain.allows(pff.number()) {
            Qualifier::Plain
        } else if meets(&least.natural_juices) {
            Qualifier::NaturalJuices
        } else if meets(&least.water_added) {
            Qualifier::WaterAdded
        } else {
            Qualifier::AndWater
        })
    }

    /// The name with its qualifier. `added` is the part of the weight that is added ingredients.
    ///
    /// # Errors
    /// The last qualifier needs that part, and it cannot be below 0 or above 100 %.
    pub fn full_name(&self, name: &str, with: Qualifier, added: Option<Percent>) -> Result<String> {
        Ok(match with {
            Qualifier::Plain => name.to_owned(),
            Qualifier::NaturalJuices => format!("{name} {}", self.wording.natural_juices),
            Qualifier::WaterAdded => format!("{name} {}", self.wording.water_added),
            Qualifier::AndWater => {
                let added = added.ok_or_else(|| {
                    Refusal::cannot_be(
                        "added",
                        "This name states the percentage of added ingredients. Enter it.",
                    )
                })?;
                let number = measured("added", added)?;
                let wording = self.wording.and_water.replace("{}", &number.to_string());
                format!("{name} {wording}")
            }
        })
    }
}

/// Meat protein as a percentage of the fat-free part (`us` 4.6).
///
/// # Errors
/// Percentages that cannot be, or that look like parts of one.
pub fn pff(protein: Percent, fat: Percent) -> Result<Percent> {
    let (protein, fat) = (measured("protein", protein)?, measured("fat", fat)?);
    if protein.is_zero() {
        return Err(Refusal::cannot_be(
            "protein",
            "Meat without protein cannot be. Enter what the laboratory found.",
        ));
    }
    if protein + fat > Decimal::ONE_HUNDRED {
        return Err(Refusal::cannot_be(
            "fat",
            format!("{protein} % protein and {fat} % fat are more than the whole. Check both."),
        ));
    }
    Ok(Percent::of(protein, Decimal::ONE_HUNDRED - fat))
}

/// A ham or shoulder cured dry, whole.
#[derive(Debug, Clone, Copy)]
pub struct DryCured {
    /// What it is to be called.
    pub claim: Claim,
    /// What it is.
    pub piece: Piece,
    /// Fresh weight.
    pub fresh: Grams,
    /// Finished weight.
    pub finished: Grams,
    /// Was nitrite or nitrate used?
    pub nitrite: bool,
    /// Salt inside.
    pub salt: Option<Percent>,
    /// Water inside.
    pub water: Option<Percent>,
    /// Water activity.
    pub water_activity: Option<Decimal>,
    /// Days in cure and equalising.
    pub curing_days: Option<u32>,
    /// Days of the whole process.
    pub whole_days: Option<u32>,
    /// The warmest core while it dried or smoked, where the climate was controlled.
    pub core: Option<Temperature>,
}

/// What stands against calling it so (`us-C1` to `us-C8`): weight, salt, brine and water activity
/// are enforced, times and the core temperature are advice.
///
/// # Errors
/// Weights or percentages that cannot be.
pub fn check_dry_cured(
    standards: &Standards,
    rows: &Rows,
    piece: &DryCured,
) -> Result<Vec<Finding>> {
    let part = yield_of(piece.fresh, piece.finished)?;
    let mut found = Vec::new();
    if !standards.dry_yield.allows(part.number()) {
        let most = &standards.dry_yield;
        let says = format!(
            "It weighs {part} of fresh; at most {} % may carry this name. Let it dry on.",
            most.value
        );
        found.push(Finding::against(rows, &most.row, says));
    }
    match piece.nitrite {
        true => found.extend(salt(standards, rows, piece.salt)?),
        false => found.extend(brine(standards, rows, piece)?),
    }
    found.extend(advice(standards, piece));
    Ok(found)
}

fn salt(standards: &Standards, rows: &Rows, salt: Option<Percent>) -> Result<Option<Finding>> {
    let least = &standards.salt;
    let says = match salt {
        Some(salt) if least.allows(percent_of(salt)?) => return Ok(None),
        Some(salt) => format!(
            "Salt inside is {salt}; this name asks for {} % or more.",
            least.value
        ),
        None => format!(
            "Have the salt inside measured: this name asks for {} % or more.",
            least.value
        ),
    };
    Ok(Some(Finding::against(rows, &least.row, says)))
}

fn percent_of(salt: Percent) -> Result<Decimal> {
    measured("salt", salt)
}

/// Brine in percent: salt of salt and water together (`us-U8`).
///
/// # Errors
/// Percentages that cannot be.
pub fn brine_of(salt: Percent, water: Percent) -> Result<Percent> {
    let (salt, water) = (measured("salt", salt)?, measured("water", water)?);
    if salt + water > Decimal::ONE_HUNDRED {
        return Err(Refusal::cannot_be(
            "water",
            format!("{salt} % salt and {water} % water are more than the whole. Check both."),
        ));
    }
    Ok(Percent::of(salt, salt + water))
}

fn brine(standards: &Standards, rows: &Rows, piece: &DryCured) -> Result<Option<Finding>> {
    let (least, most) = (&standards.brine, &standards.water_activity);
    if let Some(aw) = piece.water_activity {
        if aw <= Decimal::ZERO || aw > Decimal::ONE {
            return Err(Refusal::cannot_be(
                "water_activity",
                format!("A water activity of {aw} cannot be. It lies between 0 and 1."),
            ));
        }
        if most.allows(aw) {
            return Ok(None);
        }
    }
    let brine = match (piece.salt, piece.water) {
        (Some(salt), Some(water)) => Some(brine_of(salt, water)?),
        _ => None,
    };
    if brine.is_some_and(|brine| least.allows(brine.number())) {
        return Ok(None);
    }
    let mut rows_behind = Finding::against(
        rows,
        &least.row,
        format!(
            "Without nitrite this name asks for a brine of {} % or more, or a water activity of {} or less; {}.",
            least.value,
            most.value,
            match (brine, piece.water_activity) {
                (None, None) => "neither was measured".to_owned(),
                (Some(brine), None) => format!("the brine is {brine}"),
                (None, Some(aw)) => format!("the water activity is {aw}"),
                (Some(brine), Some(aw)) => format!("they are {brine} and {aw}"),
            }
        ),
    );
    if most.row != least.row {
        rows_behind.rows.push(most.row.clone());
    }
    Ok(Some(rows_behind))
}

/// Times and temperature of the standard that nobody enforces.
fn advice(standards: &Standards, piece: &DryCured) -> Vec<Finding> {
    let mut found = Vec::new();
    for time in standards
        .times
        .iter()
        .filter(|time| time.claim == piece.claim)
    {
        let least = match piece.piece {
            Piece::Ham => &time.ham,
            Piece::Shoulder => &time.shoulder,
        };
        let days = if time.whole {
            piece.whole_days
        } else {
            piece.curing_days
        };
        let Some(days) = days.filter(|&days| !least.allows(days.into())) else {
            continue;
        };
        let of = if time.whole {
            "in all"
        } else {
            "in cure and equalising"
        };
        let says = format!(
            "{days} days {of}; the standard names {} (not enforced, but good practice).",
            least.value
        );
        found.push(Finding::note(says, [least.row.clone()]));
    }
    let most = &standards.country_core;
    if let Some(core) = piece
        .core
        .filter(|core| piece.claim == Claim::Country && !most.allows(core.in_fahrenheit()))
    {
        let says = format!(
            "The core reached {core}; the standard names {} (not enforced).",
            Temperature::fahrenheit(most.value)
        );
        found.push(Finding::note(says, [most.row.clone()]));
    }
    found
}

/// What stands against calling it bacon: no heavier than the fresh belly was (`us` 4.6).
///
/// # Errors
/// Weights that cannot be.
pub fn check_bacon(
    standards: &Standards,
    rows: &Rows,
    fresh: Grams,
    ready: Grams,
) -> Result<Option<Finding>> {
    let part = yield_of(fresh, ready)?;
    let most = &standards.bacon_yield;
    Ok((!most.allows(part.number())).then(|| {
        let says = format!(
            "It weighs {part} of the fresh belly; bacon ready to slice goes to {} %. Let it dry back.",
            most.value
        );
        Finding::against(rows, &most.row, says)
    }))
}

/// What stands against a ham patty or chopped ham.
///
/// # Errors
/// Percentages that cannot be.
pub fn check_patty(
    standards: &Standards,
    rows: &Rows,
    fat: Percent,
    shank_over_normal: Percent,
) -> Result<Vec<Finding>> {
    let mut found = Vec::new();
    for (most, given, what) in [
        (&standards.patty_fat, measured("fat", fat)?, "fat"),
        (
            &standards.shank_over_normal,
            super::percent("shank_over_normal", shank_over_normal)?,
            "shank meat over the normal part",
        ),
    ] {
        if !most.allows(given) {
            let says = format!("{given} % {what}; {} % at most.", most.value);
            found.push(Finding::against(rows, &most.row, says));
        }
    }
    Ok(found)
}

/// One weight as a percentage of another.
fn yield_of(fresh: Grams, finished: Grams) -> Result<Percent> {
    for (field, weight) in [("fresh", fresh), ("finished", finished)] {
        if weight.is_none_left() {
            return Err(Refusal::cannot_be(
                field,
                format!("{weight} cannot be. Weigh the piece and enter it."),
            ));
        }
    }
    Ok(Percent::of(
        finished.milligrams().into(),
        fresh.milligrams().into(),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_derived_check_value_comes_out_exactly() {
        let found = pff(Percent::new(Decimal::new(164, 1)), Percent::new(20)).unwrap();
        assert_eq!(found, Percent::new(Decimal::new(205, 1)));
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let refused =
            |protein: Decimal, fat: Decimal| pff(Percent::new(protein), Percent::new(fat)).is_err();
        assert!(
            refused(Decimal::new(164, 3), Decimal::from(20)),
            "a part of one"
        );
        assert!(
            refused(Decimal::from(60), Decimal::from(60)),
            "more than the whole"
        );
        assert!(refused(Decimal::from(600), Decimal::ZERO), "600 %");
        assert!(refused(Decimal::ZERO, Decimal::from(20)), "no protein");
        assert!(
            refused(Decimal::from(-1), Decimal::from(20)),
            "less than none"
        );
        assert!(yield_of(Grams::ZERO, Grams::whole(1)).is_err());
    }

    proptest! {
        #[test]
        fn more_fat_never_lowers_the_figure(protein in 10u32..30, fat in 1u32..60, more in 0u32..10) {
            let of = |fat: u32| pff(Percent::new(protein), Percent::new(fat)).unwrap();
            prop_assert!(of(fat) <= of(fat + more));
        }
    }
}
