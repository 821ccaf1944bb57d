//! A pickle as the record weighs it, beside what is said of it: no more of it was there than was drawn, and no
//! less went in than the meat weighs more.

use super::Cure;
use super::says::CureSays;
use crate::grams::Grams;
use crate::measure::Percent;
use crate::rows::{Finding, Gravity};
use rust_decimal::Decimal;

impl Cure {
    /// What is weighed together beside the meat and brings something of its own.
    pub(super) fn parts(&self) -> Grams {
        let salts: Grams = self.salts.iter().map(|(_, weight)| *weight).sum();
        self.water + self.salt + self.sugar + self.accelerator() + salts
    }

    /// Pickle and what the meat took of it, each by what is said and by what was weighed.
    pub(super) fn on_record(&self, said: Grams, taken: Percent) -> (Grams, Percent) {
        let (pickle, taken) = (self.pickle_on_record(said), self.taken_on_record(taken));
        // No more than all of it went in.
        let most = Percent::of(weight(pickle), weight(self.meat));
        match pickle < said {
            true => (pickle, taken.min(most)),
            false => (pickle, taken),
        }
    }

    /// The whole pickle: as it is said, but no more than was drawn, where the water in it is on record. A pickle
    /// that is said larger than it was would make little of the nitrite that went in.
    fn pickle_on_record(&self, said: Grams) -> Grams {
        let drawn = self.parts() + self.other;
        let is_whole = self.water > Grams::ZERO || self.gain() > Grams::ZERO;
        match is_whole && said > drawn {
            true => drawn,
            false => said,
        }
    }

    /// How much of the pickle the meat took, of its weight: as it is said, but no less than it gained.
    fn taken_on_record(&self, said: Percent) -> Percent {
        // What nobody has said is asked first.
        if said.number() <= Decimal::ZERO || !self.method.takes_part_of_a_pickle() {
            return said;
        }
        let gained = Percent::of(weight(self.gain()), weight(self.meat));
        said.max(gained)
    }

    /// What was said and the weights contradict: it is reckoned by the weights.
    pub(super) fn against_the_weights(&self) -> Vec<Finding> {
        let mut says = Vec::new();
        if let Some(pickle) = self.pickle.filter(|_| self.method.has_pickle()) {
            let drawn = self.pickle_on_record(pickle);
            // A gram is a rounding.
            if pickle - drawn > Grams::whole(1) {
                says.push(CureSays::PickleDrawn { pickle, drawn });
            }
        }
        let said = match self.method {
            super::Method::ImmersionPickUp => self.pickup,
            _ => self.pump,
        };
        let said = said.unwrap_or_default();
        let weighed = self.taken_on_record(said);
        if weighed > said {
            let weighed = Percent::new(weighed.number().round_dp(1).normalize());
            says.push(CureSays::TakenMore { said, weighed });
        }
        let found = says.into_iter();
        found
            .map(|says| Finding::new(Gravity::Warn, says, []))
            .collect()
    }

    fn gain(&self) -> Grams {
        self.gained.unwrap_or_default()
    }
}

fn weight(grams: Grams) -> Decimal {
    Decimal::from(grams.milligrams())
}

#[cfg(test)]
mod tests {
    use super::super::{Class, CureRules, Method, Strength};
    use super::*;

    /// Nitrite by weight of the meat, with 10 % said to be pumped or picked up of a pickle of that weight.
    #[track_caller]
    fn check(cure: Cure, ppm: i64, says: &[&str]) {
        let rules = CureRules::default();
        let mix = cure.mix(&rules).unwrap();
        let dose: Decimal = cure.salts.iter().fold(Decimal::ZERO, |sum, (of, weight)| {
            let nitrite = of.nitrite.unwrap_or_default().fraction();
            sum + nitrite * Decimal::new(weight.milligrams(), 3)
        });
        let told = mix.ppm(cure.method, dose).unwrap();
        assert_eq!(told.round_dp(0), Decimal::from(ppm));
        let found = cure.against_the_weights();
        let keys: Vec<&str> = found.iter().map(|finding| finding.says.key()).collect();
        assert_eq!(keys, says);
    }

    /// 10 kg of ham, 18.18 g of curing salt no. 1 and water in so much pickle.
    fn pumped(drawn: i64, said: i64, percent: i64, gained: i64) -> Cure {
        let salt = Grams::from_milligrams(181_760);
        Cure {
            salts: vec![(Strength::nitrite(Decimal::new(625, 2)), salt)],
            water: Grams::whole(drawn) - salt,
            pickle: Some(Grams::whole(said)),
            pump: Some(Percent::new(percent)),
            pickup: Some(Percent::new(percent)),
            gained: Some(Grams::whole(gained)),
            ..Cure::new(
                Method::Pumped,
                Class::WholeMuscle,
                Grams::whole(10_000),
                "2026-06-10".parse().unwrap(),
            )
        }
    }

    #[test]
    fn a_pickle_is_no_larger_than_what_was_drawn() {
        check(pumped(1_000, 1_000, 10, 1_000), 1_136, &[]);
        check(
            pumped(1_000, 11_000, 10, 1_000),
            1_136,
            &["cure-pickle-drawn"],
        );
        check(pumped(11_000, 11_000, 10, 1_000), 103, &[]);
    }

    #[test]
    fn what_the_meat_gained_went_in() {
        check(pumped(3_000, 3_000, 10, 3_000), 1_136, &["cure-taken-more"]);
        let soaked = Cure {
            method: Method::ImmersionPickUp,
            ..pumped(1_000, 1_000, 1, 1_000)
        };
        check(soaked, 1_136, &["cure-taken-more"]);
        // What ran out again is no proof that less went in.
        check(pumped(1_000, 1_000, 10, 400), 1_136, &[]);
    }

    #[test]
    fn where_no_water_is_on_record_the_pickle_is_as_it_is_said() {
        let dry = Cure {
            water: Grams::ZERO,
            ..pumped(1_000, 11_000, 10, 0)
        };
        check(dry, 103, &[]);
        // What was drawn is all in the meat, and no more of it.
        check(pumped(500, 11_000, 10, 500), 1_136, &["cure-pickle-drawn"]);
        // Spices are weighed with it.
        let spiced = Cure {
            other: Grams::whole(100),
            ..pumped(1_000, 1_100, 10, 1_000)
        };
        check(spiced, 1_033, &[]);
    }
}
