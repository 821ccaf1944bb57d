//! A curing as the record holds it: its salt by what went into the mix, its stages by its deeds, each room by
//! its readings.

use super::process::{Salting, StageKind, StageRun};
use super::salt::salt_of_wet_mix;
use super::says::{MethodSays, StageOnRecordSays};
use crate::grams::Grams;
use crate::measure::{Percent, Temperature};
use crate::refusal::{Refusal, Result};
use crate::says::Says;
use chrono::{DateTime, Utc};
use rust_decimal::Decimal;

/// What went into the cure, by weight.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct MixOnRecord {
    /// Meat and fat.
    pub meat: Grams,
    /// Salt. What a curing salt is made of is not counted: that is the careful side.
    pub salt: Grams,
    /// Salt, curing salt, sugar and the like.
    pub dry: Grams,
    /// Everything, water too.
    pub all: Grams,
}

impl MixOnRecord {
    /// How it was salted: by the tables in a hundred of the wet mix, else in a hundred of the meat.
    ///
    /// # Errors
    /// No meat went in, or weights that cannot be.
    pub fn salting(&self, by_tables: bool) -> Result<Salting> {
        if self.meat.is_none_left() {
            return Err(Refusal::cannot_be("salt", MethodSays::NoMeat));
        }
        let dry = match by_tables {
            true => salt_of_wet_mix(self.salt, self.all, self.dry)?,
            false => Percent::of(
                Decimal::from(self.salt.milligrams()),
                Decimal::from(self.meat.milligrams()),
            ),
        };
        Ok(Salting {
            dry: Some(dry),
            ..Salting::default()
        })
    }
}

/// A stage that a piece went through, with what was read of where it was meanwhile.
#[derive(Debug, Clone, PartialEq)]
pub struct StageOnRecord {
    /// Which.
    pub stage: StageKind,
    /// When it began.
    pub from: DateTime<Utc>,
    /// When the next one did, or now.
    pub until: DateTime<Utc>,
    /// The readings of it.
    pub read: Vec<Temperature>,
}

impl StageOnRecord {
    /// The run of time that counts; none where nobody has read how warm it was.
    pub fn run(&self) -> Option<StageRun> {
        Some(StageRun {
            stage: self.stage,
            lowest: *self.read.iter().min()?,
            highest: self.read.iter().max().copied(),
            held: self.until - self.from,
        })
    }

    /// In a sentence: for how long, how cold it got, by how many readings.
    pub fn says(&self) -> Says {
        let (stage, time) = (self.stage, self.until - self.from);
        match self.run() {
            Some(run) => StageOnRecordSays::Read {
                stage,
                time,
                lowest: run.lowest,
                readings: self.read.len(),
            },
            None => StageOnRecordSays::Unread { stage, time },
        }
        .into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_salt_of_a_mix_is_that_of_the_law_s_own_example() {
        // us-6.3, TR2: 2.93 is 2.9; dry are salt, spice, sugar and nitrite.
        let grams = |text: &str| {
            let milligrams: Decimal = text.parse().unwrap();
            Grams::from_milligrams((milligrams * Decimal::ONE_THOUSAND).try_into().unwrap())
        };
        let mix = MixOnRecord {
            meat: grams("120"),
            salt: grams("3.56"),
            dry: grams("6.372"),
            all: grams("127.872"),
        };
        let of = |by_tables| mix.salting(by_tables).unwrap().dry.unwrap().number();
        assert_eq!(of(true), "2.9".parse().unwrap());
        assert_eq!(of(false).round_dp(2), "2.97".parse().unwrap());
        assert!(MixOnRecord::default().salting(true).is_err());
    }

    #[test]
    fn a_stage_that_nobody_read_does_not_count() {
        let at = |text: &str| -> DateTime<Utc> { text.parse().unwrap() };
        let mut stage = StageOnRecord {
            stage: StageKind::Dry,
            from: at("2026-01-01T08:00:00Z"),
            until: at("2026-01-21T08:00:00Z"),
            read: Vec::new(),
        };
        assert_eq!(stage.run(), None);
        stage.read = vec![Temperature::celsius(14), Temperature::celsius(12)];
        let run = stage.run().unwrap();
        assert_eq!(
            (run.held.num_days(), run.lowest),
            (20, Temperature::celsius(12))
        );
        assert_eq!(run.highest, Some(Temperature::celsius(14)));
    }
}
