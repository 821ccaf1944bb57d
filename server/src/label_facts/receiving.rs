//! What stands on the tag of a carcass or a box that came in.

use super::kitchen::allergens;
use super::writer::{Said, Writer};
use domain::family::{Source, SourceAnimal};
use labels::Field;
use rust_decimal::Decimal;

/// What all packs of a received lot have in common.
pub fn of_lot(writer: &Writer<'_>, said: &mut Said) {
    let first = writer.first;
    said.say(Field::Heading, first.received_heading);
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
    let made = writer.made_at();
    let (day, time) = (first.date(made.date()), made.format("%H:%M"));
    let readings = &writer.view.of.readings;
    let cold = readings
        .iter()
        .find(|reading| reading.quantity == "celsius");
    let cold = cold.map_or(String::new(), |reading| {
        let degrees = Decimal::new(reading.millionths, 6).normalize().to_string();
        format!(" · {} °C", first.number(&degrees))
    });
    format!("{} {day} {time}{cold}", first.received)
}

fn animal_of(writer: &Writer<'_>, animal: &SourceAnimal, source: &Source, said: &mut Said) {
    let first = &writer.first;
    said.say(Field::From, writer.lists().farm(&animal.farm));
    let killed = format!("{} {}", first.killed, first.date(animal.killed_on));
    said.say(Field::Killed, killed);
    if let Some(number) = &animal.abattoir {
        let name = writer.lists().abattoir(number);
        said.say(Field::Abattoir, format!("{name}, {number}"));
    }
    let side = source.side.map(|side| first.side(side.as_str()));
    let carcass = animal
        .carcass
        .as_ref()
        .map(|number| format!("{} {number}", first.carcass));
    let tag = animal
        .tag
        .as_ref()
        .map(|tag| format!("{} {tag}", first.tag));
    let parts: Vec<String> = [carcass, side.map(str::to_owned), tag]
        .into_iter()
        .flatten()
        .collect();
    said.say(Field::Carcass, parts.join(" · "));
}

fn bought(writer: &Writer<'_>, source: &Source, said: &mut Said) {
    if let Some(supplier) = &source.supplier {
        said.say(Field::From, writer.lists().supplier(supplier));
    }
    if let Some(lot) = &source.supplier_lot {
        let text = format!("{} {lot}", writer.first.their_lot);
        said.say(Field::SupplierLot, text);
    }
}

/// What differs from pack to pack.
pub fn of_pack(writer: &Writer<'_>, said: &mut Said, number: u32) {
    said.say(Field::Net, writer.weight(number));
    if let Some(date) = writer.pack(number).now.use_by {
        said.say(Field::UseByHeading, writer.first.use_by);
        said.say(Field::UseBy, writer.first.date(date));
    }
}
