//! What stands on the tag of a carcass or a box that came in.

use super::kitchen::allergens;
use super::phrases::LabelWords;
use super::writer::{Said, Writer};
use domain::family::{KnownSource, SourceAnimal};
use domain::measure::Temperature;
use domain::says::Arg;
use labels::Field;

/// What all packs of a received lot have in common.
pub fn of_lot(writer: &Writer<'_>, said: &mut Said) {
    let first = writer.first;
    said.say(Field::Heading, first.text("label-received-heading"));
    said.0.remove(&Field::SecondName);
    allergens(writer, said);
    said.0.remove(&Field::SecondAllergens);
    said.say(Field::Received, received(writer));
    if let Some(source) = writer.source() {
        match &source.animal {
            Some(animal) => animal_of(writer, animal, source, said),
            None => bought(writer, source, said),
        }
    }
}

/// When it came in, and how cold it was.
fn received(writer: &Writer<'_>) -> String {
    let first = &writer.first;
    let at = writer.made_at();
    let readings = &writer.view.of.readings;
    let cold = { readings.iter() }
        .find_map(|reading| Temperature::read(reading.quantity, reading.millionths));
    match cold {
        None => first.say(LabelWords::ReceivedAt { at }),
        Some(read) => {
            let degrees = Arg::from(read);
            let line = LabelWords::ReceivedCold { at, degrees };
            first.say_in_house(line, writer.kitchen.heat())
        }
    }
}

fn animal_of(writer: &Writer<'_>, animal: &SourceAnimal, source: &KnownSource, said: &mut Said) {
    let first = &writer.first;
    said.say(Field::From, writer.lists().farm(&animal.farm));
    let day = animal.killed_on;
    said.say(Field::Killed, first.say(LabelWords::Killed { day }));
    if let Some(number) = &animal.abattoir {
        let name = writer.lists().abattoir(number);
        said.say(Field::Abattoir, format!("{name}, {number}"));
    }
    let side = source.side.map(|side| first.say(side.says()));
    let carcass = animal.carcass.clone();
    let carcass = carcass.map(|number| first.say(LabelWords::Carcass { number }));
    let tag = animal.tag.clone();
    let tag = tag.map(|tag| first.say(LabelWords::Tag { tag }));
    let parts: Vec<String> = [carcass, side, tag].into_iter().flatten().collect();
    said.say(Field::Carcass, parts.join(" · "));
}

fn bought(writer: &Writer<'_>, source: &KnownSource, said: &mut Said) {
    if let Some(supplier) = &source.supplier {
        said.say(Field::From, writer.lists().supplier(supplier));
    }
    if let Some(lot) = &source.supplier_lot {
        let lot = lot.clone();
        said.say(
            Field::SupplierLot,
            writer.first.say(LabelWords::TheirLot { lot }),
        );
    }
}

/// What differs from pack to pack.
pub fn of_pack(writer: &Writer<'_>, said: &mut Said, number: u32) {
    let weight = writer.house_weight(number);
    let pack = writer.pack(number);
    // What is left is not what was received, and the tag says so.
    let is_rest = writer.grams(number) < pack.made;
    said.say(
        Field::Net,
        match is_rest {
            true => writer.first.say(LabelWords::Left { weight }),
            false => weight,
        },
    );
    if let Some(date) = writer.pack(number).now.use_by {
        said.say(Field::UseByHeading, writer.first.text("label-use-by"));
        said.say(Field::UseBy, writer.first.date(date));
    }
}
