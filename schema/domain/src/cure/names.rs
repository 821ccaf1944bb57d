//! The parts of a cure by the names that a label gives them, heaviest first (`us-I6`).

use super::weighing::grams;
use super::{Alkali, Cure, CureRules};
use crate::refusal::Result;
use crate::rows::RowId;
use crate::words::words;
use rust_decimal::Decimal;

words! {
    /// What a cure is made of.
    Part {
        Water = "water", Salt = "salt", Sugar = "sugar",
        SodiumNitrite = "sodium-nitrite", PotassiumNitrite = "potassium-nitrite",
        SodiumNitrate = "sodium-nitrate", PotassiumNitrate = "potassium-nitrate",
        SodiumAscorbate = "sodium-ascorbate", SodiumErythorbate = "sodium-erythorbate",
        Starter = "starter",
    }
}

/// How a place names a part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NameOf {
    /// Where it stands.
    pub row: RowId,
    /// Which part.
    pub part: Part,
    /// In English.
    pub en: String,
    /// In French.
    pub fr: String,
    /// The number of the additive, where the place has them: `E250`.
    pub number: Option<String>,
    /// The class of additive that stands before it, in English and French.
    pub class: Option<(String, String)>,
}

/// A part that a label must list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ListedPart {
    /// How it is named.
    pub name: NameOf,
    /// How much of it was used, in grams.
    pub grams: Decimal,
}

impl NameOf {
    /// As it stands on a label: `preservative: sodium nitrite (E250)`.
    pub fn shown(&self, french: bool) -> String {
        let name = match french {
            true => &self.fr,
            false => &self.en,
        };
        let class = self.class.as_ref().map(|(en, fr)| match french {
            true => format!("{fr}\u{a0}: "),
            false => format!("{en}: "),
        });
        let number = self.number.as_ref().map(|number| format!(" ({number})"));
        format!(
            "{}{name}{}",
            class.unwrap_or_default(),
            number.unwrap_or_default()
        )
    }
}

/// Every part of a cure that the label must list, heaviest first. A starter has no weight here.
///
/// # Errors
/// A strength that is not given or cannot be.
pub fn names(cure: &Cure, rules: &CureRules) -> Result<Vec<ListedPart>> {
    let mut parts = vec![
        (Part::Water, grams(cure.water)),
        (Part::Sugar, grams(cure.sugar)),
        (Part::SodiumAscorbate, grams(cure.ascorbate)),
        (Part::SodiumErythorbate, grams(cure.erythorbate)),
    ];
    let mut salt = grams(cure.salt);
    for (nth, (strength, weight)) in cure.salts.iter().enumerate() {
        let makeup = strength.makeup(rules, &format!("salts[{nth}]"))?;
        let weight = grams(*weight);
        salt += weight * makeup.salt.fraction();
        let nitrite = match makeup.nitrite_of {
            Alkali::Sodium => Part::SodiumNitrite,
            Alkali::Potassium => Part::PotassiumNitrite,
        };
        let nitrate = match makeup.nitrate_of {
            Alkali::Sodium => Part::SodiumNitrate,
            Alkali::Potassium => Part::PotassiumNitrate,
        };
        parts.push((nitrite, weight * makeup.nitrite.fraction()));
        parts.push((nitrate, weight * makeup.nitrate.fraction()));
    }
    parts.push((Part::Salt, salt));
    let starter = cure.starter.then_some((Part::Starter, Decimal::ZERO));
    let mut named: Vec<ListedPart> = rules
        .names
        .iter()
        .filter_map(|name| {
            let own = || parts.iter().filter(|(part, _)| *part == name.part);
            let weight: Decimal = own().map(|(_, weight)| *weight).sum();
            let is_in =
                weight > Decimal::ZERO || starter.is_some_and(|(part, _)| part == name.part);
            is_in.then(|| ListedPart {
                name: name.clone(),
                grams: weight,
            })
        })
        .collect();
    named.sort_by_key(|part| std::cmp::Reverse(part.grams));
    Ok(named)
}
