//! What the trade expects of a cure room, as data.

use super::says::RoomSays;
use super::{Curve, ReleaseRule, SaltingMethod, Weighings};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId};
use crate::says::Texts;
use rust_decimal::Decimal;

/// What the trade expects of a cure room.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct CureRoomRules {
    /// Drying curves by key.
    pub curves: Vec<(String, Curve)>,
    /// What each product is released at.
    pub targets: Vec<ReleaseTarget>,
    /// Ways of salting.
    pub methods: Vec<SaltingMethod>,
    /// How often a hanging piece is weighed.
    pub weighings: Option<Weighings>,
    /// How far from its curve a piece may be, in points of loss.
    pub band: Option<Bound>,
    /// How much heavier than green a piece can be, in percent: the salt that clings.
    pub gain: Option<Bound>,
    /// How much heavier than last time a piece can be, in percent of green: the scale.
    pub regain: Option<Bound>,
    /// The water in lean meat, in percent of it: more cannot dry out.
    pub water_in_lean: Option<Bound>,
    /// The water in fat, in percent of it.
    pub water_in_fat: Option<Bound>,
    /// The most days in salt for a pound.
    pub days_per_pound: Option<Bound>,
    /// The most days in salt for an inch of thickness.
    pub days_per_inch: Option<Bound>,
    /// The most days in salt.
    pub days_in_salt: Option<Bound>,
    /// How wide a forecast is.
    pub spread: Spread,
}

/// How much wider a forecast is than its two estimates, in percent of the time still to go.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Spread {
    /// With one weighing.
    pub one: Option<Bound>,
    /// With two or three.
    pub few: Option<Bound>,
    /// With four or more.
    pub many: Option<Bound>,
}

/// What a product is released at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReleaseTarget {
    /// Its name in the data: `pancetta`.
    pub key: String,
    /// As a cook calls it.
    pub name: Texts,
    /// At least so much lost, in percent of green.
    pub loss: Option<Bound>,
    /// So far under it may a piece be, in points.
    pub tolerance: Percent,
    /// At least so many days from the first salt.
    pub days: Option<Bound>,
    /// At most this water activity.
    pub water_activity: Option<Bound>,
    /// Does somebody sign?
    pub signature: bool,
    /// The curve that it dries along.
    pub curve: Option<String>,
}

impl ReleaseTarget {
    /// The rule that a piece of this product is released by.
    pub fn rule(&self) -> ReleaseRule {
        let bounds = [&self.loss, &self.days, &self.water_activity];
        ReleaseRule {
            loss: self.loss.as_ref().map(|bound| Percent::new(bound.value)),
            tolerance: self.tolerance,
            days: self.days.as_ref().map(Bound::whole),
            water_activity: self.water_activity.as_ref().map(|bound| bound.value),
            signature: self.signature,
            rows: bounds
                .into_iter()
                .flatten()
                .map(|bound| bound.row.clone())
                .collect(),
        }
    }
}

impl CureRoomRules {
    /// The target of that name.
    pub fn target(&self, key: &str) -> Option<&ReleaseTarget> {
        self.targets.iter().find(|target| target.key == key)
    }

    /// The curve of that name.
    pub fn curve(&self, key: &str) -> Option<&Curve> {
        let named = self.curves.iter().find(|(name, _)| name == key);
        named.map(|(_, curve)| curve)
    }

    /// The way of salting of that name.
    pub fn method(&self, key: &str) -> Option<&SaltingMethod> {
        self.methods.iter().find(|method| method.key == key)
    }

    /// The most that a piece with so much fat can lose: the water of its lean and of its fat. A
    /// target above it is never reached.
    ///
    /// # Errors
    /// A share of fat that cannot be, such as 0.5 typed for 50.
    pub fn loss_ceiling(&self, fat: Percent) -> Result<Option<(Percent, RowId)>> {
        let number = fat.number();
        if number < Decimal::ZERO || number > Decimal::ONE_HUNDRED {
            return Err(Refusal::cannot_be("fat", RoomSays::FatCannotBe { fat }));
        }
        if number > Decimal::ZERO && number < Decimal::ONE {
            return Err(Refusal::cannot_be("fat", RoomSays::FatFraction { fat }));
        }
        let (Some(lean), Some(of_fat)) = (&self.water_in_lean, &self.water_in_fat) else {
            return Ok(None);
        };
        let most = lean.value * (Decimal::ONE - fat.fraction()) + of_fat.value * fat.fraction();
        Ok(Some((Percent::new(most), lean.row.clone())))
    }

    /// A target that a piece with so much fat never reaches.
    ///
    /// # Errors
    /// A share of fat that cannot be.
    pub fn never_reached(&self, rule: &ReleaseRule, fat: Percent) -> Result<Option<Finding>> {
        let ceiling = self.loss_ceiling(fat)?;
        let above = rule
            .loss
            .zip(ceiling)
            .filter(|(loss, (most, _))| loss > most);
        Ok(above.map(|(loss, (most, row))| {
            Finding::new(Gravity::Warn, RoomSays::NeverReached { loss, most }, [row])
        }))
    }

    /// Every single number that a house may tighten. A curve is no number: a house gives its own.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let targets = self.targets.iter_mut().flat_map(|target| {
            [
                &mut target.loss,
                &mut target.days,
                &mut target.water_activity,
            ]
        });
        let singles = [
            &mut self.band,
            &mut self.gain,
            &mut self.regain,
            &mut self.water_in_lean,
            &mut self.water_in_fat,
            &mut self.days_per_pound,
            &mut self.days_per_inch,
            &mut self.days_in_salt,
            &mut self.spread.one,
            &mut self.spread.few,
            &mut self.spread.many,
        ];
        targets.chain(singles).flatten().collect()
    }
}
