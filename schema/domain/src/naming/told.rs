//! What somebody tells of a product that no record shows: what its name and its standard hang on.

use crate::duties::mince::MinceKind;
use crate::duties::tenderised::CookingTold;
use crate::duties::{measured, percent};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use rust_decimal::Decimal;

use super::NamingSays;

/// What is told of a product for its name. What is left out is not known.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct StandardTold {
    /// A place that the name speaks of: `Parma`.
    pub place: Option<String>,
    /// Is it made where the name says, on a farm, in the country, in that place?
    pub made_there: Option<bool>,
    /// Is it a loaf rather than a cut?
    pub loaf: Option<bool>,
    /// Are both bones of the shank out?
    pub shank_bones_out: Option<bool>,
    /// Do bones remain in it?
    pub bones_remain: Option<bool>,
    /// The liquid that it is packed in: `brine`.
    pub packed_in: Option<String>,
    /// Meat protein in the finished food.
    pub protein: Option<Percent>,
    /// Fat in the finished food.
    pub fat: Option<Percent>,
    /// Collagen in its meat protein.
    pub collagen: Option<Percent>,
    /// Shank meat over what is normal, in chopped ham.
    pub shank_over: Option<Percent>,
    /// The part of the weight that is added ingredients.
    pub added: Option<Percent>,
    /// Salt inside, as measured.
    pub salt: Option<Percent>,
    /// Water inside, as measured.
    pub water: Option<Percent>,
    /// As what sort of mince it is sold.
    pub mince: Option<MinceKind>,
    /// Did blades or needles go through it?
    pub tenderised: Option<bool>,
    /// Is it sold as a steak?
    pub steak: bool,
    /// How its label tells to cook it, where it was tenderised.
    pub cooking: Option<CookingTold>,
}

impl StandardTold {
    /// Looks whether the figures can be: from 0 to 100, and no more than the whole together. Salt, water or
    /// fat may well be under one in a hundred; meat protein is not, and is a part of one by mistake.
    ///
    /// # Errors
    /// The first that cannot be, by its name on the wire.
    pub fn check(&self) -> Result<()> {
        let field = |name: &str| format!("standard.{name}_percent");
        for (name, given) in [
            ("protein", self.protein),
            ("fat", self.fat),
            ("collagen", self.collagen),
            ("shank_over", self.shank_over),
            ("added", self.added),
            ("salt", self.salt),
            ("water", self.water),
        ] {
            let Some(given) = given else {
                continue;
            };
            match name {
                "protein" => measured(&field(name), given)?,
                _ => percent(&field(name), given)?,
            };
        }
        if self
            .protein
            .is_some_and(|protein| protein.number().is_zero())
        {
            return Err(Refusal::cannot_be(field("protein"), NamingSays::NoProtein));
        }
        let together = [self.protein, self.fat, self.salt, self.water];
        let sum: Decimal = together.iter().flatten().map(|part| part.number()).sum();
        match sum > Decimal::ONE_HUNDRED {
            true => Err(Refusal::cannot_be(
                field("water"),
                NamingSays::MoreThanWhole { sum },
            )),
            false => Ok(()),
        }
    }
}
