//! What the labels of a lot have in common: its names, its date, its code.

use super::phrases::Phrases;
use super::{codes, curing, kitchen, mark, receiving, retail};
use crate::app::App;
use crate::error::Result;
use crate::lists::kitchen::Kitchen;
use crate::wire::answers::{LotRead, PackRead};
use chrono::NaiveDate;
use domain::cure_room::Piece;
use domain::law::Law;
use domain::product::Product;
use domain::words::{ProductKind, State};
use labels::{Facts, Field, Purpose, Readiness};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use store::Conn;
use store::lots::LotRow;
use store::sources::SourceRow;

/// How long a date may lie ahead and still go without its year on a small label, in days.
const THIS_SEASON: i64 = 180;

/// Turns a lot into what its labels say.
pub struct Writer<'a> {
    pub app: &'a App,
    pub lot: &'a LotRead,
    pub product: &'a Product,
    pub kitchen: &'a Kitchen,
    /// The words of the first language.
    pub first: Phrases,
    /// Those of the second, where the kitchen has one.
    pub second: Option<Phrases>,
    source: Option<Option<SourceRow>>,
    piece: Option<Option<Piece>>,
    states: Option<Vec<(u32, State, NaiveDate)>>,
    /// What a purpose says of every pack alike; made for the first of them.
    shared: Option<(Purpose, Said)>,
}

/// The texts of a label as they are gathered.
#[derive(Debug, Clone, Default)]
pub struct Said(pub BTreeMap<Field, String>);

impl Said {
    /// Adds a text; one that says nothing is left out.
    pub fn say(&mut self, field: Field, text: impl Into<String>) {
        let text = text.into();
        if !text.trim().is_empty() {
            self.0.insert(field, text);
        }
    }
}

impl<'a> Writer<'a> {
    /// A writer for one lot.
    pub fn new(
        app: &'a App,
        lot: &'a LotRead,
        product: &'a Product,
        kitchen: &'a Kitchen,
    ) -> Writer<'a> {
        let languages: Vec<&str> = kitchen
            .entry
            .languages
            .iter()
            .map(|language| language.0.as_str())
            .collect();
        Writer {
            app,
            lot,
            product,
            kitchen,
            first: Phrases::of(languages.first().copied().unwrap_or("en")),
            second: languages.get(1).map(|language| Phrases::of(language)),
            source: None,
            piece: None,
            states: None,
            shared: None,
        }
    }

    /// The law of the kitchen's place.
    pub fn law(&self) -> &'a Law {
        self.app.law.laws.of(self.kitchen.entry.profile.0)
    }

    /// The pack of that number; the caller has looked that there is one.
    pub fn pack(&self, number: u32) -> &'a PackRead {
        &self.lot.packs[number as usize - 1]
    }

    /// Where it was received from, if it was.
    pub fn source(&mut self, conn: &mut Conn, row: &LotRow) -> Result<Option<&SourceRow>> {
        if self.source.is_none() {
            self.source = Some(store::sources::current(conn, &[row.id])?.pop());
        }
        Ok(self.source.as_ref().and_then(Option::as_ref))
    }

    /// Is it a cured piece that is not released yet?
    pub fn waits_for_release(&self, conn: &mut Conn, row: &LotRow) -> Result<bool> {
        Ok(self.product.release.is_some() && !store::record::is_released(conn, row.id)?)
    }

    /// The piece in the cure room that it is, if it is one and not released yet.
    pub fn piece(&mut self, conn: &mut Conn, row: &LotRow) -> Result<Option<&Piece>> {
        if self.piece.is_none() {
            let piece = match self.waits_for_release(conn, row)? {
                true => crate::read::piece::read(self.app, conn, row)?,
                false => None,
            };
            self.piece = Some(piece);
        }
        Ok(self.piece.as_ref().and_then(Option::as_ref))
    }

    /// How each pack came to be kept, the oldest first: pack, state, day.
    pub fn states(&mut self, conn: &mut Conn, row: &LotRow) -> Result<&[(u32, State, NaiveDate)]> {
        if self.states.is_none() {
            self.states = Some(store::packs::states(conn, row.id)?);
        }
        Ok(self.states.as_deref().unwrap_or_default())
    }

    /// The day it was made.
    pub fn made(&self) -> Option<NaiveDate> {
        self.lot.made_at.get(..10).and_then(|day| day.parse().ok())
    }

    /// What a pack's label says for a purpose.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn facts(
        &mut self,
        conn: &mut Conn,
        row: &LotRow,
        number: u32,
        purpose: Purpose,
    ) -> Result<Facts> {
        let known = self.shared.take().filter(|(of, _)| *of == purpose);
        let shared = match known {
            Some((_, said)) => said,
            None => self.shared(conn, row, purpose)?,
        };
        let mut said = shared.clone();
        self.shared = Some((purpose, shared));
        let frozen_on = self.frozen_on(conn, row, number)?;
        match purpose {
            Purpose::Retail | Purpose::DirectSale => {
                retail::of_pack(self, &mut said, number, frozen_on.0, frozen_on.1);
            }
            Purpose::Freezer => kitchen::frozen(self, &mut said, number, frozen_on.0),
            Purpose::Kitchen => kitchen::of_pack(self, &mut said, number),
            Purpose::Receiving => receiving::of_pack(self, &mut said, number),
            Purpose::Curing => {}
            Purpose::Hold => kitchen::held(self, &mut said, number),
        }
        let shown = &self.lot.shown;
        said.say(
            Field::Lot,
            match self.lot.packs.len() {
                1 => shown.clone(),
                _ => format!("{shown} / {number}"),
            },
        );
        let retail = matches!(purpose, Purpose::Retail | Purpose::DirectSale);
        let mut facts = codes::of_pack(self, number, retail);
        if let Some(digits) = &facts.ean13 {
            said.say(Field::Till, digits.clone());
        }
        facts.readiness = self.readiness();
        facts.texts = said.0;
        Ok(facts)
    }

    /// What all packs of the lot have in common.
    fn shared(&mut self, conn: &mut Conn, row: &LotRow, purpose: Purpose) -> Result<Said> {
        let mut said = Said::default();
        said.say(Field::Name, self.product.name(self.first.language));
        if let Some(second) = &self.second {
            let name = self.product.name(second.language);
            if name != self.product.name(self.first.language) {
                said.say(Field::SecondName, name);
            }
        }
        let words = |phrases: &Phrases| match self.readiness() {
            Some(Readiness::Raw) => phrases.raw,
            Some(Readiness::ReadyToEat) => phrases.ready_to_eat,
            None => "",
        };
        said.say(Field::Kind, words(&self.first));
        match purpose {
            Purpose::Retail | Purpose::DirectSale => retail::of_lot(self, conn, row, &mut said)?,
            Purpose::Receiving => receiving::of_lot(self, conn, row, &mut said)?,
            Purpose::Curing => curing::of_lot(self, conn, row, &mut said)?,
            Purpose::Kitchen | Purpose::Freezer => kitchen::of_lot(self, &mut said),
            Purpose::Hold => kitchen::hold_of_lot(self, &mut said),
        }
        Ok(said)
    }

    /// The day since which a pack is frozen, and whether it was frozen before and is thawed now.
    fn frozen_on(
        &mut self,
        conn: &mut Conn,
        row: &LotRow,
        number: u32,
    ) -> Result<(Option<NaiveDate>, bool)> {
        let is_frozen = self.pack(number).state == State::Frozen.as_str();
        let born_frozen = row.born_state == State::Frozen.as_str();
        let made = self.made();
        let states = self.states(conn, row)?;
        let of_pack = || states.iter().filter(|(pack, ..)| *pack == number);
        let last = of_pack()
            .rev()
            .find(|(_, state, _)| *state == State::Frozen)
            .map(|(.., day)| *day);
        let since = last.or(made.filter(|_| born_frozen));
        Ok(match is_frozen {
            true => (since, false),
            false => (None, since.is_some()),
        })
    }

    /// Raw or ready to eat: on the label it is never told by colour alone.
    pub fn readiness(&self) -> Option<Readiness> {
        use ProductKind::*;
        match (self.product.raw, self.product.kind) {
            (true, _) => Some(Readiness::Raw),
            (false, Cooked | Rendered | Stock | Cured | Mixed) => Some(Readiness::ReadyToEat),
            (false, _) => None,
        }
    }

    /// The date in the kitchen's own words: over it, at length, and short for a small label.
    pub fn own_date(&self, said: &mut Said, number: u32) {
        let pack = self.pack(number);
        let first = &self.first;
        let frozen = pack.state == State::Frozen.as_str();
        let heading = match (pack.use_by, pack.days_left) {
            (None, Some(_)) if frozen => first.use_within,
            _ => first.use_by,
        };
        said.say(Field::UseByHeading, heading);
        let use_by = pack.use_by.map(|day| day.0);
        let long = match (use_by, pack.days_left) {
            (Some(date), _) => first.date(date),
            (None, Some(days)) if frozen => first.once_thawed(days),
            (None, _) if frozen => first.frozen.to_owned(),
            (None, _) => first.no_date.to_owned(),
        };
        let soon = use_by
            .zip(self.made())
            .is_some_and(|(date, made)| (date - made).num_days() < THIS_SEASON);
        let short = match use_by {
            Some(date) if soon => first.day_label(date),
            _ => long.clone(),
        };
        said.say(Field::UseBy, long);
        said.say(Field::UseByShort, short);
        if let (Some(second), Some(date)) = (&self.second, use_by) {
            let text = format!("{} {}", second.use_by, second.short_date(date));
            said.say(Field::SecondUseBy, text);
        }
    }

    /// The date as the place words it for a customer, else in the kitchen's own words.
    pub fn customers_date(&self, said: &mut Said, number: u32) {
        self.own_date(said, number);
        let Some(date) = self.pack(number).use_by else {
            return;
        };
        let languages: Vec<&str> = std::iter::once(self.first.language)
            .chain(self.second.as_ref().map(|second| second.language))
            .collect();
        // In both languages at once where they share one form of the date.
        let both = mark::of(self, date.0, &languages).filter(|mark| !mark.date.contains(" / "));
        let one = || mark::of(self, date.0, &languages[..1]);
        let shared = both.is_some();
        let Some(mark) = both.or_else(one) else {
            return;
        };
        said.say(Field::UseByHeading, mark.words.to_uppercase());
        said.say(Field::UseByShort, mark.date.clone());
        said.say(Field::UseBy, mark.date);
        said.0.remove(&Field::SecondUseBy);
        let second = self.second.as_ref().filter(|_| !shared);
        if let Some(mark) = second.and_then(|second| mark::of(self, date.0, &[second.language])) {
            said.say(Field::SecondUseBy, mark.text);
        }
    }

    /// The weight of a pack as it stands on a label: grams, from a kilogram on kilograms.
    pub fn weight(&self, number: u32) -> String {
        let grams = self.grams(number);
        let kilograms = Decimal::new(grams.milligrams(), 6);
        // A no-break space: the unit stays with its number.
        match kilograms < Decimal::ONE {
            true => grams.to_string().replace(' ', "\u{a0}"),
            false => {
                let text = kilograms.round_dp(3).normalize().to_string();
                format!("{}\u{a0}kg", self.first.number(&text))
            }
        }
    }

    /// The weight of a pack: what is left of it, or what it was born with once it is empty.
    pub fn grams(&self, number: u32) -> domain::grams::Grams {
        let pack = self.pack(number);
        match pack.left_grams.0.milligrams() > 0 {
            true => pack.left_grams.0,
            false => pack.grams.0,
        }
    }
}
