//! What the labels of a lot have in common: its names, its date, its code.

use super::phrases::{LabelWords, Phrases};
use super::{codes, curing, heights, kitchen, mark, receiving, retail};
use crate::app::App;
use crate::error::Result;
use crate::lists::kitchen::Kitchen;
use crate::read::LoadedFamily;
use chrono::{NaiveDate, NaiveDateTime};
use domain::cure_room::Piece;
use domain::family::{KnownSource, Lists, LotView, SourceAnimal, frozen, piece};
use domain::law::Law;
use domain::lot::{Lot, LotId, Pack};
use domain::moment::day_of;
use domain::naming::{NameFacts, mince_kind};
use domain::origin::Origin;
use domain::product::Product;
use domain::stop;
use domain::words::{ProductKind, State};
use labels::{Facts, Field, Purpose, Readiness};
use std::cell::OnceCell;
use std::collections::BTreeMap;
use words::Mass;

/// How long a date may lie ahead and still go without its year on a small label, in days.
const THIS_SEASON: i64 = 180;

/// Turns a lot into what its labels say.
pub struct Writer<'a> {
    pub app: &'a App,
    pub reading: &'a LoadedFamily<'a>,
    /// The lot as it is told.
    pub view: LotView<'a>,
    pub lot: &'a Lot,
    pub product: &'a Product,
    pub kitchen: &'a Kitchen,
    /// The words of the first language.
    pub first: Phrases,
    /// Those of the second, where the kitchen has one.
    pub second: Option<Phrases>,
    /// Is it sold as minced meat? Looked up for the first of its packs.
    minced: OnceCell<bool>,
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
    /// A writer for one lot of a family that was loaded with its ancestors; none where it is not in
    /// it.
    pub fn new(app: &'a App, reading: &'a LoadedFamily<'a>, lot: LotId) -> Option<Writer<'a>> {
        let languages = reading.kitchen().languages();
        Writer::in_languages(app, reading, lot, &languages)
    }

    /// The same in other languages than the kitchen's: for somebody who reads the label on a screen.
    pub fn in_languages(
        app: &'a App,
        reading: &'a LoadedFamily<'a>,
        lot: LotId,
        languages: &[&str],
    ) -> Option<Writer<'a>> {
        let kitchen = reading.kitchen();
        // What a label says is in a language that there are words for: list, allergens and all.
        let mut written: Vec<&'static str> = Vec::new();
        for language in languages {
            let language = Phrases::of(language).language;
            if !written.contains(&language) {
                written.push(language);
            }
        }
        let languages = &written[..];
        let view = reading.view_in(lot, languages)?;
        let phrases = |language| Phrases::of(language).in_place(kitchen.entry.profile.0);
        Some(Writer {
            app,
            reading,
            lot: &view.of.lot,
            product: &view.of.lot.product,
            view,
            kitchen,
            first: phrases(languages.first().copied().unwrap_or("en")),
            second: languages.get(1).map(|language| phrases(language)),
            minced: OnceCell::new(),
            shared: None,
        })
    }

    /// Is it sold as minced meat?
    pub fn is_minced(&self) -> bool {
        *self.minced.get_or_init(|| {
            let family = &self.reading.family;
            mince_kind(&NameFacts::of_lot(family, self.view.of, self.lists())).is_some()
        })
    }

    /// The law of the kitchen's place.
    pub fn law(&self) -> &'a Law {
        self.reading.law
    }

    /// The pack of that number; the caller has looked that there is one.
    pub fn pack(&self, number: u32) -> &'a Pack {
        let packs = &self.lot.packs;
        &packs[packs.partition_point(|pack| pack.number < number)]
    }

    /// Where it was received from, if it was.
    pub fn source(&self) -> Option<&'a KnownSource> {
        self.view.of.source.as_ref()
    }

    /// The piece in the cure room that it is, if it is one and not released yet.
    pub fn piece(&self) -> Option<Piece> {
        let rules = &self.app.law.trade.cure_room;
        let family = &self.reading.family;
        self.lot
            .waits_for_release()
            .then(|| piece(family, self.lot.id, self.kitchen.zone, rules))?
    }

    /// The one animal that everything with a species in it comes from, if it is one.
    pub fn animal(&self) -> Option<&'a SourceAnimal> {
        let Origin::One(animal) = self.lot.origin else {
            return None;
        };
        let sources = self
            .reading
            .family
            .lots
            .values()
            .filter_map(|of| of.source.as_ref());
        sources
            .filter_map(|source| source.animal.as_ref())
            .find(|of| of.key == animal.0)
    }

    /// The kitchen's lists.
    pub fn lists(&self) -> &'a Lists {
        &self.reading.standing.lists
    }

    /// When it was made, by the kitchen's clock.
    pub fn made_at(&self) -> NaiveDateTime {
        self.lot
            .made_at
            .with_timezone(&self.kitchen.zone)
            .naive_local()
    }

    /// The day it was made.
    pub fn made(&self) -> NaiveDate {
        self.made_at().date()
    }

    /// What a pack's label says for a purpose.
    ///
    /// # Errors
    /// 409 for words that may not stand on it.
    pub fn facts(&mut self, number: u32, purpose: Purpose) -> Result<Facts> {
        let known = self.shared.take().filter(|(of, _)| *of == purpose);
        let shared = match known {
            Some((_, said)) => said,
            None => self.shared(purpose)?,
        };
        let mut said = shared.clone();
        self.shared = Some((purpose, shared));
        let state = frozen(self.view.of, number, self.kitchen.zone);
        match purpose {
            Purpose::Retail | Purpose::DirectSale => {
                retail::of_pack(self, &mut said, number, state)
            }
            Purpose::Freezer => kitchen::frozen(self, &mut said, number, state),
            Purpose::Kitchen => kitchen::of_pack(self, &mut said, number),
            Purpose::Receiving => receiving::of_pack(self, &mut said, number),
            Purpose::Curing => curing::of_pack(self, &mut said, number),
            Purpose::Hold => kitchen::held(self, &mut said, number),
        }
        let shown = self.lot.code.shown();
        said.say(
            Field::Lot,
            match self.lot.pack_count {
                1 => shown,
                _ => format!("{shown} / {number}"),
            },
        );
        if self.lot.pack_count > 1 {
            said.say(Field::LotOnly, self.first.text("label-lot-only"));
        }
        let retail = matches!(purpose, Purpose::Retail | Purpose::DirectSale);
        let mut facts = codes::of_pack(self, number, retail);
        if let Some(digits) = &facts.ean13 {
            said.say(Field::Till, digits.clone());
        }
        facts.readiness = self.readiness_of(number);
        if facts.readiness.is_none() {
            said.0.remove(&Field::Kind);
        }
        let face = self.product.sale.face_cm2.filter(|_| retail);
        facts.net_least_um = face.and_then(|face| heights::net_least_um(self.law(), face));
        facts.panel_apart = said.0.contains_key(&Field::HandlingHeading) && self.panel_apart();
        facts.texts = said.0;
        Ok(facts)
    }

    /// Does the panel on safe handling stand on a second label? As the product says, else as the kitchen does.
    fn panel_apart(&self) -> bool {
        let own = self.product.sale.panel_apart;
        own.or(self.kitchen.entry.panel_apart).unwrap_or(false)
    }

    /// What the one tag of a lot says that hangs as several pieces and is weighed as one.
    ///
    /// # Errors
    /// As [`Writer::facts`].
    pub fn facts_together(&mut self, number: u32) -> Result<Facts> {
        let mut facts = self.facts(number, Purpose::Curing)?;
        let mut said = Said(std::mem::take(&mut facts.texts));
        curing::together(self, &mut said);
        said.say(Field::Lot, self.lot.code.shown());
        said.0.remove(&Field::LotOnly);
        facts.texts = said.0;
        Ok(Facts {
            qr: codes::address_of_lot(self),
            linear: self.lot.code.to_string(),
            ..facts
        })
    }

    /// What all packs of the lot have in common.
    fn shared(&self, purpose: Purpose) -> Result<Said> {
        let mut said = Said::default();
        let name = |language| match purpose {
            Purpose::Retail | Purpose::DirectSale => self.product.label_name(language),
            _ => self.product.name(language),
        };
        said.say(Field::Name, name(self.first.language));
        if let Some(second) = &self.second
            && name(second.language) != name(self.first.language)
        {
            said.say(Field::SecondName, name(second.language));
        }
        let words = |phrases: &Phrases| match self.readiness() {
            Some(Readiness::Raw) => phrases.text("label-raw"),
            Some(Readiness::ReadyToEat) => phrases.text("label-ready-to-eat"),
            None => String::new(),
        };
        said.say(Field::Kind, words(&self.first));
        match purpose {
            Purpose::Retail | Purpose::DirectSale => retail::of_lot(self, &mut said)?,
            Purpose::Receiving => receiving::of_lot(self, &mut said),
            Purpose::Curing => curing::of_lot(self, &mut said),
            Purpose::Kitchen | Purpose::Freezer => kitchen::of_lot(self, &mut said),
            Purpose::Hold => kitchen::hold_of_lot(self, &mut said),
        }
        Ok(said)
    }

    /// Raw or ready to eat: on the label it is never told by colour alone.
    pub fn readiness(&self) -> Option<Readiness> {
        use ProductKind::*;
        match (self.product.raw, self.product.kind) {
            (true, _) => Some(Readiness::Raw),
            // What nothing proves is not called ready, on no label; a piece in its cure is nothing yet.
            _ if !self.lot.is_called_ready() || self.lot.waits_for_release() => None,
            (false, Cooked | Rendered | Stock | Cured | Mixed) => Some(Readiness::ReadyToEat),
            (false, _) => None,
        }
    }

    /// The same of one pack: what is stopped, or past its day, is not called ready.
    fn readiness_of(&self, number: u32) -> Option<Readiness> {
        let now = self.reading.now;
        let day = day_of(now, self.kitchen.zone);
        let is_ready = || stop::is_called_ready(self.lot, self.pack(number), now, day);
        let of_lot = self.readiness();
        of_lot.filter(|of| *of == Readiness::Raw || is_ready())
    }

    /// The date in the kitchen's own words: over it, at length, and short for a small label.
    pub fn own_date(&self, said: &mut Said, number: u32) {
        let pack = self.pack(number);
        let first = &self.first;
        let frozen = pack.now.state == State::Frozen;
        let once_thawed = pack.now.days_once_thawed(self.lot.later);
        let heading = match once_thawed {
            Some(_) => "label-use-within",
            None => "label-use-by",
        };
        said.say(Field::UseByHeading, first.text(heading));
        let use_by = pack.now.use_by;
        let long = match (use_by, once_thawed) {
            (Some(date), _) => first.date(date),
            (None, Some(days)) => first.say(LabelWords::OnceThawed { days }),
            (None, _) if frozen => first.text("label-frozen"),
            (None, _) => first.text("label-no-date"),
        };
        let soon = use_by.is_some_and(|date| (date - self.made()).num_days() < THIS_SEASON);
        let short = match use_by {
            Some(date) if soon => first.day_label(date),
            _ => long.clone(),
        };
        said.say(Field::UseBy, long);
        said.say(Field::UseByShort, short);
        if let (Some(second), Some(date)) = (&self.second, use_by) {
            let day = second.short_date(date);
            said.say(Field::SecondUseBy, second.say(LabelWords::UseByDay { day }));
        }
        if let (Some(second), Some(days)) = (&self.second, once_thawed) {
            let within = second.text("label-use-within");
            let days = second.say(LabelWords::OnceThawed { days });
            said.say(Field::SecondUseBy, format!("{within} {days}"));
        }
    }

    /// The date as the place words it for a customer, else in the kitchen's own words.
    pub fn customers_date(&self, said: &mut Said, number: u32) {
        self.own_date(said, number);
        let languages: Vec<&str> = std::iter::once(self.first.language)
            .chain(self.second.as_ref().map(|second| second.language))
            .collect();
        let now = &self.pack(number).now;
        let Some(date) = now.use_by else {
            // What has no date has no words over one either: a customer is told nothing about a date to come.
            if now.days_once_thawed(self.lot.later).is_none() {
                for field in [Field::UseByHeading, Field::UseBy, Field::UseByShort] {
                    said.0.remove(&field);
                }
            }
            return;
        };
        // In both languages at once where they share one form of the date.
        let both = mark::of(self, date, &languages).filter(|mark| !mark.date.contains(" / "));
        let one = || mark::of(self, date, &languages[..1]);
        let shared = both.is_some();
        let Some(mark) = both.or_else(one) else {
            return;
        };
        said.say(Field::UseByHeading, mark.words.to_uppercase());
        said.say(Field::UseByShort, mark.date.clone());
        said.say(Field::UseBy, mark.date);
        said.0.remove(&Field::SecondUseBy);
        let second = self.second.as_ref().filter(|_| !shared);
        if let Some(mark) = second.and_then(|second| mark::of(self, date, &[second.language])) {
            said.say(Field::SecondUseBy, mark.text);
        }
    }

    /// The weight of a pack as it stands on a label: grams, from a kilogram on kilograms.
    pub fn weight(&self, number: u32) -> String {
        self.first.weight(self.grams(number))
    }

    /// The same on a tag that stays in the kitchen: in the units that it reads.
    pub fn house_weight(&self, number: u32) -> String {
        let grams = self.grams(number);
        match self.kitchen.mass() {
            Mass::Metric => self.first.weight(grams),
            Mass::Pounds => self.first.pounds(grams),
        }
    }

    /// A weight as the kitchen's scale shows it.
    pub fn scale_weight(&self, grams: domain::grams::Grams) -> String {
        match self.kitchen.mass() {
            Mass::Metric => self.first.scale_weight(grams),
            Mass::Pounds => self.first.pounds(grams),
        }
    }

    /// The weight of a pack: what is left of it, or what it was born with once it is empty.
    pub fn grams(&self, number: u32) -> domain::grams::Grams {
        let pack = self.pack(number);
        match pack.now.left.is_none_left() {
            true => pack.made,
            false => pack.now.left,
        }
    }
}
