//! What our labels say in GS1's language: element strings that every scanner reads the same way.

use chrono::{Datelike, NaiveDate};

use super::form::form_of;
use super::gtin::Gtin;
use super::in_set_82;
use super::link::DigitalLink;
use super::read::{Elements, read};
use super::says::NotWritten;
use crate::grams::Grams;

/// Most characters of one GS1-128 symbol, separators included (`standards` 1.3).
const LONGEST: usize = 48;

/// Most characters of a lot (`standards` 1.1).
const LONGEST_LOT: usize = 20;

/// Most grams that three decimals of a kilogram in six digits can say.
const MOST_GRAMS: u32 = 999_999;

/// The last day that is printed on the label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LastDay {
    /// Not to be eaten after that day.
    UseBy(NaiveDate),
    /// At its best until that day.
    BestBefore(NaiveDate),
}

/// What one label has to tell a stranger's scanner.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Contents {
    /// The number that GS1 gave the product.
    pub gtin: Gtin,
    /// The lot's code, without hyphens.
    pub lot: String,
    /// The pack's number within the lot.
    pub pack: Option<u32>,
    /// Net weight in whole grams: for goods by weight, and only for them.
    pub net_grams: Option<u32>,
    /// The last day.
    pub last_day: Option<LastDay>,
}

/// An element string that may be printed as one GS1-128 symbol.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Message(Elements);

impl Contents {
    /// All of it in one message: first what has a predefined length, so that a separator stands
    /// only between lot and pack.
    ///
    /// # Errors
    /// What cannot be said, or that it is too much for one symbol.
    pub fn message(&self) -> Result<Message, NotWritten> {
        Message::of(Elements(self.elements()?))
    }

    /// The messages that a label may choose from, the fullest first: without the pack, then without
    /// the last day. GTIN and lot are in each, and so is the weight of goods by weight.
    ///
    /// # Errors
    /// What cannot be said, or that not even the shortest fits one symbol.
    pub fn messages(&self) -> Result<Vec<Message>, NotWritten> {
        let no_pack = Contents {
            pack: None,
            ..self.clone()
        };
        let no_day = Contents {
            last_day: None,
            ..no_pack.clone()
        };
        let (mut messages, mut last) = (Vec::new(), None);
        for contents in [self, &no_pack, &no_day] {
            match contents.message() {
                Ok(message) if !messages.contains(&message) => messages.push(message),
                Ok(_) => {}
                Err(why @ NotWritten::TooLong { .. }) => last = Some(why),
                Err(why) => return Err(why),
            }
        }
        match last {
            Some(why) if messages.is_empty() => Err(why),
            _ => Ok(messages),
        }
    }

    /// The same as an address: GTIN, lot and pack in its path, weight and last day in its query.
    ///
    /// # Errors
    /// What cannot be said.
    pub fn link(&self) -> Result<DigitalLink, NotWritten> {
        DigitalLink::new(Elements(self.elements()?)).map_err(|why| NotWritten::Link { why })
    }

    fn elements(&self) -> Result<Vec<(String, String)>, NotWritten> {
        let mut elements = vec![("01".to_owned(), self.gtin.as_str().to_owned())];
        if let Some(grams) = self.net_grams {
            if !(1..=MOST_GRAMS).contains(&grams) {
                return Err(NotWritten::WeightRange {
                    none: Grams::ZERO,
                    most: Grams::whole(i64::from(MOST_GRAMS) + 1),
                });
            }
            elements.push(("3103".to_owned(), format!("{grams:06}")));
        }
        if let Some(last_day) = self.last_day {
            let (ai, day) = match last_day {
                LastDay::UseBy(day) => ("17", day),
                LastDay::BestBefore(day) => ("15", day),
            };
            if !(2000..=2099).contains(&day.year()) {
                let year = day.year().to_string();
                return Err(NotWritten::Year { year });
            }
            elements.push((ai.to_owned(), day.format("%y%m%d").to_string()));
        }
        // Brackets are allowed by GS1, but then nobody can tell them from those of an identifier.
        let plain = |c: char| in_set_82(c) && !matches!(c, '(' | ')');
        if !(1..=LONGEST_LOT).contains(&self.lot.len()) || !self.lot.chars().all(plain) {
            return Err(NotWritten::Lot {
                lot: self.lot.clone(),
                longest: LONGEST_LOT,
            });
        }
        elements.push(("10".to_owned(), self.lot.clone()));
        if let Some(pack) = self.pack {
            // A serial number is told once for all packs of a GTIN (from memory, not in the facts),
            // and pack numbers begin anew in each lot: so the lot stands in it. Beside a lot so long
            // that both do not go into a serial number, the pack is left out.
            let serial = format!("{}-{pack}", self.lot);
            if serial.len() <= LONGEST_LOT {
                elements.push(("21".to_owned(), serial));
            }
        }
        weight_goes_with_gtin(&self.gtin, self.net_grams.is_some())?;
        Ok(elements)
    }
}

impl Message {
    /// Reads a bracketed or raw element string and checks that it may be printed.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn parse(text: &str) -> Result<Message, NotWritten> {
        let elements = read(text).map_err(|why| NotWritten::Unreadable { why })?;
        Message::of(elements)
    }

    fn of(mut elements: Elements) -> Result<Message, NotWritten> {
        // A stable sort: within each half the order stays.
        elements
            .0
            .sort_by_key(|(ai, _)| form_of(ai).is_none_or(|form| !form.predefined));
        keeps_company(&elements)?;
        if let Some(gtin) = elements.value("01") {
            let gtin = Gtin::parse(gtin)?;
            let weighed = elements.iter().any(|(ai, _)| is_measure(ai));
            weight_goes_with_gtin(&gtin, weighed)?;
        }
        let message = Message(elements);
        match message.raw().chars().count() {
            length if length > LONGEST => Err(NotWritten::TooLong {
                longest: LONGEST,
                length,
            }),
            _ => Ok(message),
        }
    }

    /// The elements in the order of the symbol.
    pub fn elements(&self) -> &Elements {
        &self.0
    }

    /// With the identifiers in brackets, as it is printed for people.
    pub fn bracketed(&self) -> String {
        self.0.bracketed()
    }

    /// What a scanner sends, [`super::GS`] where the symbol has an inner FNC1; without its symbology
    /// identifier `]C1` and without the FNC1 at the start.
    pub fn raw(&self) -> String {
        self.0.raw()
    }
}

/// 310n to 369n: weight, length, area, volume.
fn is_measure(ai: &str) -> bool {
    ai.len() == 4 && matches!(ai.get(..2), Some("31" | "32" | "33" | "34" | "35" | "36"))
}

/// A GTIN that begins with 9 needs a measure, and no other may have one (`standards`, trap 7).
fn weight_goes_with_gtin(gtin: &Gtin, weighed: bool) -> Result<(), NotWritten> {
    match (gtin.is_by_weight(), weighed) {
        (true, false) => Err(NotWritten::WeightMissing),
        (false, true) => Err(NotWritten::WeightNotWanted),
        _ => Ok(()),
    }
}

/// What may stand alone, what needs a GTIN beside it, what excludes what (`standards` 1.1).
fn keeps_company(elements: &Elements) -> Result<(), NotWritten> {
    let has = |ai: &str| elements.value(ai).is_some();
    for (ai, _) in elements.iter() {
        let alone = matches!(ai, "00" | "01" | "400" | "8003" | "8004")
            || ai.starts_with("41")
            || ai.starts_with("42") && matches!(ai, "420" | "421")
            || ai.starts_with('9');
        if !alone && !has("01") {
            return Err(NotWritten::NoGtin { ai: ai.to_owned() });
        }
    }
    let excluded = [
        ("01", "37"),
        ("01", "02"),
        ("422", "426"),
        ("423", "426"),
        ("424", "426"),
        ("425", "426"),
        ("21", "235"),
    ];
    match excluded.iter().find(|(one, other)| has(one) && has(other)) {
        Some((one, other)) => Err(NotWritten::NotTogether {
            one: (*one).to_owned(),
            other: (*other).to_owned(),
        }),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests;
