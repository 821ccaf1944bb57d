//! What stands on the kitchen's own labels: tubs and shelves, the freezer, what is on hold.

use super::curing;
use super::phrases::{LabelWords, Phrases};
use super::writer::{Said, Writer};
use domain::family::Frozen;
use domain::moment::day_of;
use domain::words::{Allergen, Profile, State, StopKind};
use labels::Field;

/// What all packs of a lot have in common.
pub fn of_lot(writer: &Writer<'_>, said: &mut Said) {
    allergens(writer, said);
    let first = &writer.first;
    let day = first.short_date(writer.made());
    said.say(Field::Made, first.say(LabelWords::Made { day }));
}

/// All allergens by their names: in the kitchen they are told whatever the place's law asks, since
/// somebody's guest may ask for them.
pub fn allergens(writer: &Writer<'_>, said: &mut Said) {
    let names = |phrases: &Phrases| {
        if !writer.lot.knows_allergens() {
            return phrases.text("label-allergens-unknown");
        }
        let mut names: Vec<String> = Vec::new();
        for allergen in &writer.lot.allergens {
            let name = named(writer, *allergen, phrases.language);
            if !names.contains(&name) {
                names.push(name);
            }
        }
        phrases.contains(&names)
    };
    said.say(Field::Allergens, names(&writer.first));
    if let Some(second) = &writer.second {
        said.say(Field::SecondAllergens, names(second));
    }
}

/// The name of an allergen: the place's own, else that of any place that names it.
fn named(writer: &Writer<'_>, allergen: Allergen, language: &str) -> String {
    let own = writer.kitchen.entry.profile.0;
    let places = std::iter::once(own).chain(Profile::ALL.iter().copied());
    let named = places
        .map(|place| &writer.app.law.laws.of(place).statements.allergens)
        .find_map(|rules| rules.name(allergen));
    named
        .and_then(|named| named.name.get(language).or_else(|| named.name.get("en")))
        .map_or_else(
            || allergen.as_str().replace('-', " "),
            |name| name.to_lowercase(),
        )
}

/// What differs from pack to pack on a tub or a shelf.
pub fn of_pack(writer: &Writer<'_>, said: &mut Said, number: u32) {
    writer.own_date(said, number);
    curing::lies(writer, said, number);
    said.say(Field::Net, writer.house_weight(number));
}

/// A pack in the freezer.
pub fn frozen(writer: &Writer<'_>, said: &mut Said, number: u32, state: Frozen) {
    of_pack(writer, said, number);
    let first = &writer.first;
    if writer.pack(number).now.state == State::Frozen {
        said.say(Field::Heading, first.text("label-frozen"));
        said.say(Field::ThawedOn, first.text("label-thawed-on"));
    }
    if let Frozen::Since(since) = state {
        let day = first.short_date(since);
        said.say(Field::Frozen, first.say(LabelWords::FrozenOn { day }));
    }
}

/// What the tags of a lot on hold have in common.
pub fn hold_of_lot(writer: &Writer<'_>, said: &mut Said) {
    let first = &writer.first;
    for field in [Field::SecondName, Field::Kind] {
        said.0.remove(&field);
    }
    said.say(Field::Heading, first.text("label-hold"));
    said.say(Field::Caution, first.text("label-hold-caution"));
    said.say(Field::ColumnDay, first.text("label-released-on"));
    said.say(Field::ColumnWho, first.text("label-by"));
}

/// A pack on hold: why, and since when. A hold that a person placed is told before what the record found by itself.
pub fn held(writer: &Writer<'_>, said: &mut Said, number: u32) {
    said.say(Field::Net, writer.house_weight(number));
    let pack = writer.pack(number).id;
    let on_it = writer.lot.stops.iter();
    let on_it = on_it.filter(|placed| placed.ended.is_none() && placed.is_on(Some(pack)));
    let first = on_it.min_by_key(|placed| {
        let cause = &placed.cause;
        (cause.kind != StopKind::Held, cause.since)
    });
    let Some(placed) = first else {
        return;
    };
    let day = day_of(placed.cause.since, writer.kitchen.zone);
    let day = writer.first.short_date(day);
    said.say(
        Field::Why,
        writer.first.say(placed.cause.because.says.clone()),
    );
    said.say(
        Field::Since,
        writer.first.say(LabelWords::HeldSince { day }),
    );
}
