//! Running numbers under one source animal, or under the kitchen's day. A number is never used twice.

use crate::code::{HouseCode, LETTERS, LotCode, NUMBERS, day_stem};
use crate::origin::Origin;
use chrono::{Days, NaiveDate};

/// What numbers run under.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Series {
    /// One source animal: its stem and letter, `BRC26159A`.
    Animal(String),
    /// The kitchen's own day: every letter in turn.
    Kitchen {
        /// The kitchen's code.
        house: HouseCode,
        /// The day on which the lots are made, in the kitchen's time zone.
        day: NaiveDate,
    },
}

impl Series {
    /// The series that lots of this origin are coded in: the animal's own only if everything with a
    /// species in it comes from that one animal. The kitchen's always follows, for when numbers run out.
    pub fn for_lots(
        origin: &Origin,
        animal_stem: Option<String>,
        house: &HouseCode,
        day: NaiveDate,
    ) -> Vec<Series> {
        let kitchen = Series::Kitchen {
            house: house.clone(),
            day,
        };
        match (origin, animal_stem) {
            (Origin::One(_), Some(stem)) => vec![Series::Animal(stem), kitchen],
            _ => vec![kitchen],
        }
    }

    /// The key under which the next number is kept.
    pub fn key(&self) -> String {
        match self {
            Series::Animal(stem) => stem.clone(),
            Series::Kitchen { house, day } => day_stem(house, *day),
        }
    }

    /// The series that takes over when this one is full: the kitchen's next day. Nothing is refused
    /// because there was no code.
    pub fn after(&self) -> Option<Series> {
        match self {
            Series::Animal(_) => None,
            Series::Kitchen { house, day } => Some(Series::Kitchen {
                house: house.clone(),
                day: day.checked_add_days(Days::new(1))?,
            }),
        }
    }

    /// The next codes from position `next` on, at most `count`, and the position after them.
    /// Fewer come back when the series is full.
    pub fn take(&self, mut next: u32, count: usize) -> (Vec<LotCode>, u32) {
        let mut codes = Vec::with_capacity(count);
        while codes.len() < count {
            let Some(stem) = self.stem_at(next) else {
                break;
            };
            codes.extend(LotCode::assign(&stem, next % NUMBERS));
            next += 1;
        }
        (codes, next)
    }

    fn stem_at(&self, position: u32) -> Option<String> {
        let letter = (position / NUMBERS) as usize;
        match self {
            Series::Animal(stem) => (letter == 0).then(|| stem.clone()),
            Series::Kitchen { .. } => LETTERS
                .get(letter)
                .map(|letter| format!("{}{}", self.key(), *letter as char)),
        }
    }
}

/// The key under which the next letter of a farm's day is kept.
pub fn letter_key(farm: &HouseCode, killed_on: NaiveDate) -> String {
    format!("{}/", day_stem(farm, killed_on))
}

/// The stem of the `nth` animal of a farm's day, or `None` when the letters have run out.
pub fn animal_stem(farm: &HouseCode, killed_on: NaiveDate, nth: u32) -> Option<String> {
    let letter = LETTERS.get(nth as usize)?;
    Some(format!("{}{}", day_stem(farm, killed_on), *letter as char))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn the_carcass_is_number_00() {
        let farm = HouseCode::parse("BRC").unwrap();
        let stem = animal_stem(&farm, day("2026-06-08"), 0).unwrap();
        let (codes, next) = Series::Animal(stem).take(0, 1);
        assert_eq!((codes[0].shown().as_str(), next), ("BRC-26159-A00-6", 1));
    }

    #[test]
    fn a_whole_series_never_repeats_and_then_ends() {
        let (codes, next) = Series::Animal("BRC26159A".into()).take(0, 2_000);
        assert_eq!(next, NUMBERS);
        assert_eq!(codes.iter().collect::<BTreeSet<_>>().len(), codes.len());
        // 5 of 37 check characters are skipped.
        assert!((870..=895).contains(&codes.len()), "{}", codes.len());
        assert!(
            Series::Animal("BRC26159A".into())
                .take(next, 1)
                .0
                .is_empty()
        );
    }

    #[test]
    fn a_kitchen_day_goes_through_every_letter_and_on_to_the_next_day() {
        let house = HouseCode::parse("CHK").unwrap();
        let today = Series::Kitchen {
            house,
            day: day("2026-12-31"),
        };
        let (codes, next) = today.take(NUMBERS - 1, 3);
        assert!(codes[1].as_str().starts_with("CHK26365B0"), "{codes:?}");
        assert!(today.take(next, 40_000).0.len() > 27_000);
        assert_eq!(today.after().unwrap().key(), "CHK27001");
    }

    #[test]
    fn letters_then_digits_then_none() {
        let farm = HouseCode::parse("MRF").unwrap();
        let stem = |nth| animal_stem(&farm, day("2026-01-02"), nth);
        assert_eq!(stem(21).unwrap(), "MRF26002Z");
        assert_eq!(stem(22).unwrap(), "MRF260020");
        assert_eq!(stem(32), None);
    }
}
