//! Thirteen digits for the till of one shop or country: item number, and price or weight of the pack.
//!
//! How the digits are laid out differs from country to country (`standards` 1.4), so it is not code
//! but one line of the kitchen's own settings, such as `20PPPPPCVVVV price 2`.

use std::str::FromStr;

use super::check_digit::{check_digit, check_digit_is_right, verifier_digit};
use crate::grams::Grams;
use crate::messages;
use crate::says::Arg;
use rust_decimal::Decimal;

/// A layout: twelve places, then the check digit.
///
/// It is written as the prefix in digits, `P` for a digit of the item number, `C` for the verifier
/// of the value (or none), `V` for a digit of the value; then `price` or `weight` and the number of
/// decimals of the value in the currency or in kilograms.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layout {
    places: [Place; PLACES],
    measure: InStoreMeasure,
    decimals: u32,
}

const PLACES: usize = 12;

/// Hundredths of the currency.
const PRICE_DECIMALS: u32 = 2;

/// Thousandths of a kilogram.
const WEIGHT_DECIMALS: u32 = 3;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Place {
    Prefix(char),
    Item,
    Verifier,
    Value,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum InStoreMeasure {
    Price,
    Weight,
}

/// What the till needs to know of one pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Value {
    /// What it costs, in hundredths of the currency.
    PriceMinor(u64),
    /// What it weighs, in whole grams.
    Grams(u64),
}

/// A number as it was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Read {
    /// The item's number in the shop.
    pub item: u64,
    /// Price or weight of the pack.
    pub value: Value,
}

messages! {
    /// Why a text is no layout.
    NotALayout in "till-layout" {
        /// Not of the form `20PPPPPCVVVV price 2`.
        Form "form",
        /// A prefix that belongs to real trade items.
        Prefix "prefix" { prefix: String },
        /// A verifier is defined for values of four and five digits only.
        Verifier "verifier",
        /// More decimals than the value has digits, or than can be filled.
        Decimals "decimals",
    }
}

messages! {
    /// Why there is no number for a pack, or no sense in a number.
    Refusal in "till" {
        /// The item's number has too many digits.
        Item "item" { item: String, digits: usize },
        /// The price has too many digits.
        PriceTooMuch "price-too-much" { price: Arg },
        /// The weight has too many digits.
        WeightTooMuch "weight-too-much" { grams: Grams },
        /// The price has decimals that the layout has no place for.
        PriceTooFine "price-too-fine" { price: Arg },
        /// The weight has decimals that the layout has no place for.
        WeightTooFine "weight-too-fine" { grams: Grams },
        /// Price asked for, weight given, or the other way round.
        OtherMeasure "other-measure",
        /// Nothing costs or weighs nothing.
        Nothing "nothing",
        /// Not thirteen digits with a right check digit.
        Misread "misread",
        /// Another prefix: not a number of this layout.
        Foreign "foreign",
        /// The verifier does not go with the value.
        Verifier "verifier",
    }
}

impl Value {
    fn too_much(self) -> Refusal {
        match self {
            Value::PriceMinor(minor) => Refusal::PriceTooMuch {
                price: money(minor),
            },
            Value::Grams(whole) => Refusal::WeightTooMuch {
                grams: grams(whole),
            },
        }
    }

    fn too_fine(self) -> Refusal {
        match self {
            Value::PriceMinor(minor) => Refusal::PriceTooFine {
                price: money(minor),
            },
            Value::Grams(whole) => Refusal::WeightTooFine {
                grams: grams(whole),
            },
        }
    }
}

fn money(minor: u64) -> Arg {
    Arg::Money(Decimal::from(minor) / Decimal::ONE_HUNDRED)
}

/// A weight above the highest that a code holds is written as that highest weight.
fn grams(whole: u64) -> Grams {
    let milligrams = i64::try_from(whole)
        .ok()
        .and_then(|whole| whole.checked_mul(1_000));
    Grams::from_milligrams(milligrams.unwrap_or(i64::MAX))
}

impl FromStr for Layout {
    type Err = NotALayout;

    fn from_str(text: &str) -> Result<Layout, NotALayout> {
        let words: Vec<&str> = text.split_whitespace().collect();
        let [pattern, measure, decimals] = words[..] else {
            return Err(NotALayout::Form);
        };
        let measure = match measure {
            "price" => InStoreMeasure::Price,
            "weight" => InStoreMeasure::Weight,
            _ => return Err(NotALayout::Form),
        };
        let prefix = pattern.trim_end_matches(|letter: char| !letter.is_ascii_digit());
        let places = pattern.char_indices().map(|(at, letter)| match letter {
            '0'..='9' if at < prefix.len() => Some(Place::Prefix(letter)),
            'P' => Some(Place::Item),
            'C' => Some(Place::Verifier),
            'V' => Some(Place::Value),
            _ => None,
        });
        let places: Option<Vec<Place>> = places.collect();
        let places = places.ok_or(NotALayout::Form)?;
        let places: [Place; PLACES] = places.try_into().map_err(|_| NotALayout::Form)?;
        let decimals = decimals.parse().map_err(|_| NotALayout::Form)?;
        let layout = Layout {
            places,
            measure,
            decimals,
        };
        layout.check(prefix)
    }
}

impl Layout {
    fn check(self, prefix: &str) -> Result<Layout, NotALayout> {
        let (items, verifiers, values) = (
            self.count(Place::Item),
            self.count(Place::Verifier),
            self.count(Place::Value),
        );
        // Digits among the letters would end the prefix late.
        let whole = prefix.len() + items + verifiers + values == PLACES;
        if !whole || prefix.len() < 2 || items == 0 || values == 0 || verifiers > 1 {
            return Err(NotALayout::Form);
        }
        if !matches!(&prefix[..2], "02" | "04") && !prefix.starts_with('2') {
            return Err(NotALayout::Prefix {
                prefix: prefix.to_owned(),
            });
        }
        if verifiers == 1 && !matches!(values, 4 | 5) {
            return Err(NotALayout::Verifier);
        }
        if self.decimals > self.finest() || self.decimals as usize > values {
            return Err(NotALayout::Decimals);
        }
        Ok(self)
    }

    fn count(&self, place: Place) -> usize {
        self.places.iter().filter(|known| **known == place).count()
    }

    fn finest(&self) -> u32 {
        match self.measure {
            InStoreMeasure::Price => PRICE_DECIMALS,
            InStoreMeasure::Weight => WEIGHT_DECIMALS,
        }
    }

    /// Does it hold the price of a pack? Else its weight.
    pub fn wants_price(&self) -> bool {
        matches!(self.measure, InStoreMeasure::Price)
    }

    /// The thirteen digits for one pack.
    ///
    /// # Errors
    /// What does not fit. Nothing is rounded.
    pub fn encode(&self, item: u64, value: Value) -> Result<String, Refusal> {
        let amount = match (self.measure, value) {
            (InStoreMeasure::Price, Value::PriceMinor(amount))
            | (InStoreMeasure::Weight, Value::Grams(amount)) => amount,
            _ => return Err(Refusal::OtherMeasure),
        };
        if amount == 0 {
            return Err(Refusal::Nothing);
        }
        let step = 10_u64.pow(self.finest() - self.decimals);
        if !amount.is_multiple_of(step) {
            return Err(value.too_fine());
        }
        let (items, values) = (self.count(Place::Item), self.count(Place::Value));
        let item_digits = format!("{item:0items$}");
        let value_digits = format!("{:0values$}", amount / step);
        if item_digits.len() > items {
            return Err(Refusal::Item {
                item: item.to_string(),
                digits: items,
            });
        }
        if value_digits.len() > values {
            return Err(value.too_much());
        }
        let verifier = verifier_digit(&value_digits).and_then(|digit| char::from_digit(digit, 10));
        let (mut item, mut value) = (item_digits.chars(), value_digits.chars());
        let digits = self.places.iter().filter_map(|place| match place {
            Place::Prefix(digit) => Some(*digit),
            Place::Item => item.next(),
            Place::Verifier => verifier,
            Place::Value => value.next(),
        });
        let mut digits: String = digits.collect();
        let check = check_digit(&digits).and_then(|digit| char::from_digit(digit, 10));
        digits.extend(check);
        Ok(digits)
    }

    /// Reads thirteen digits of this layout.
    ///
    /// # Errors
    /// [`Refusal::Misread`], [`Refusal::Foreign`] or [`Refusal::Verifier`].
    pub fn decode(&self, digits: &str) -> Result<Read, Refusal> {
        if digits.len() != PLACES + 1 || !check_digit_is_right(digits) {
            return Err(Refusal::Misread);
        }
        let (mut item, mut value, mut verifier) = (String::new(), String::new(), None);
        for (place, digit) in self.places.iter().zip(digits.chars()) {
            match place {
                Place::Prefix(known) if *known != digit => return Err(Refusal::Foreign),
                Place::Prefix(_) => {}
                Place::Item => item.push(digit),
                Place::Verifier => verifier = digit.to_digit(10),
                Place::Value => value.push(digit),
            }
        }
        if verifier.is_some() && verifier != verifier_digit(&value) {
            return Err(Refusal::Verifier);
        }
        let number = |text: &str| text.parse::<u64>().map_err(|_| Refusal::Misread);
        let amount = number(&value)? * 10_u64.pow(self.finest() - self.decimals);
        Ok(Read {
            item: number(&item)?,
            value: match self.measure {
                InStoreMeasure::Price => Value::PriceMinor(amount),
                InStoreMeasure::Weight => Value::Grams(amount),
            },
        })
    }
}

#[cfg(test)]
mod tests;
