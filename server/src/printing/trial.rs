//! A label to try a printer with: it names no lot, goes out at once and is on no record. Whoever set the printer up
//! looks whether it came out, and whether it stands whole on the label. One that could not go out is noted as the
//! printer's trouble, until another try or a label of the record goes out.

use super::address::PrinterAddress;
use super::client::{Client, Failure, Ticket};
use super::format::{Format, encode};
use super::paper;
use super::says::{PaperSays, PrinterSays};
use super::words::no_answer;
use crate::app::damaged;
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::kitchen::Kitchen;
use crate::lists::{List, entry};
use crate::problems::TitleSays;
use crate::wire::lists::PrinterEntry;
use domain::moment::day_of;
use domain::says::{Arg, Says};
use labels::{Dpi, Facts, Field, PlacedLabel, Template, lay_out};
use std::collections::BTreeMap;
use store::{entries, leases};

/// The labels that it is tried with: the first that the printer has paper for.
const TRIED: [&str; 7] = [
    "tub",
    "tub-large",
    "freezer",
    "receiving",
    "freezer-large",
    "receiving-large",
    "cure-tag",
];

/// Sends it.
///
/// # Errors
/// 404 for a printer that is not listed; 409 where it does not answer, or has no paper for any label.
pub fn send(app: &Caller<'_>, code: &str) -> Result<Says> {
    let (kitchen, row) = app.store.read(|conn| {
        let row = entries::get(conn, List::Printers.as_str(), code)?
            .ok_or_else(|| entry::no_such_entry(List::Printers, code))?;
        Ok::<_, Error>((app.kitchen(conn)?, row))
    })?;
    let printer: PrinterEntry = serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
    let sent = try_it(app, &kitchen, &printer);
    let now = app.now().naive_utc();
    app.store.write(|tx| -> Result<()> {
        Ok(leases::note_tried(tx, row.id, sent.as_ref().err(), now)?)
    })?;
    sent.map(|()| PrinterSays::TestSent.into())
        .map_err(|says| Error::label_refused(TitleSays::LabelNotMade, says))
}

/// What stands against it, where it could not go out.
fn try_it(
    app: &Caller<'_>,
    kitchen: &Kitchen,
    printer: &PrinterEntry,
) -> std::result::Result<(), Says> {
    let address = PrinterAddress::of(printer)?;
    let client = Client::new(&address);
    let failed = |failure| -> Says {
        let printer = printer.name.0.clone();
        match failure {
            Failure::Unreached(_) | Failure::Lost(_) => {
                PrinterSays::TestUnanswered { printer }.into()
            }
            other => no_answer(&printer, &other).into(),
        }
    };
    let can = client.capabilities().map_err(failed)?;
    app.printers.note(&printer.code.0, &can);
    let format = Format::choose(&can.formats)?;
    let dpi = can.dpi().and_then(Dpi::from_number).unwrap_or(Dpi::D203);
    let speech = app.speech(kitchen);
    let today = day_of(app.now(), kitchen.zone);
    let facts = facts(
        &kitchen.entry.name.0,
        &speech.day(today),
        &app.address(kitchen),
    );
    let mut lacked = Vec::new();
    for template in tried(&app.templates) {
        let Some(label) = placed(&facts, template, dpi) else {
            continue;
        };
        let hundredths = |um: i64| i32::try_from((um + 5) / 10).unwrap_or(i32::MAX);
        match can.size_for(hundredths(label.width.um()), hundredths(label.height.um())) {
            Ok(size) => {
                let document = encode(format, &label)?;
                let ticket = Ticket {
                    name: "test",
                    person: &app.who.name,
                    size,
                    capabilities: &can,
                };
                if can.creates_jobs {
                    let job = client.create_job(ticket).map_err(failed)?;
                    let person = &app.who.name;
                    return client
                        .send_document(job, person, format, document)
                        .map_err(failed);
                }
                return client
                    .print_job(ticket, format, document)
                    .map(|_| ())
                    .map_err(failed);
            }
            Err(_) => lacked.push(template),
        }
    }
    let printer = printer.name.0.clone();
    if lacked.is_empty() {
        return Err(PrinterSays::TestUnanswered { printer }.into());
    }
    Err(PrinterSays::TestNoPaper {
        printer,
        held: Arg::All(can.sizes().map(Arg::from).collect()),
        sizes: paper::sizes(&lacked),
    }
    .into())
}

/// The sizes of paper on which a test label comes out.
pub fn paper(templates: &BTreeMap<String, Template>) -> Says {
    let tried: Vec<&Template> = tried(templates).collect();
    PaperSays::Test {
        sizes: paper::sizes(&tried),
    }
    .into()
}

fn tried(templates: &BTreeMap<String, Template>) -> impl Iterator<Item = &Template> {
    TRIED.iter().filter_map(|name| templates.get(*name))
}

/// What stands on it: whose it is, the day, a code that is none of ours.
fn facts(kitchen: &str, today: &str, address: &str) -> Facts {
    let said = [
        (Field::Name, kitchen.to_owned()),
        (Field::UseByHeading, "TEST".to_owned()),
        (Field::UseBy, today.to_owned()),
        (Field::UseByShort, today.to_owned()),
        (Field::Lot, "TEST / 1".to_owned()),
        (Field::Made, today.to_owned()),
        (Field::Kind, "TEST".to_owned()),
        (Field::Heading, "TEST".to_owned()),
        (Field::Frozen, today.to_owned()),
        (Field::Net, "TEST".to_owned()),
        (Field::Green, "TEST".to_owned()),
        (Field::ColumnDay, "TEST".to_owned()),
        (Field::ColumnWeight, "TEST".to_owned()),
        (Field::ColumnWho, "TEST".to_owned()),
    ];
    Facts {
        texts: BTreeMap::from(said),
        readiness: None,
        qr: format!("{address}/TEST"),
        linear: "TEST".to_owned(),
        gs1: Vec::new(),
        ean13: None,
        net_least_um: None,
        panel_apart: false,
    }
}

/// The label on a template, without the texts that it has no place for.
fn placed(facts: &Facts, template: &Template, dpi: Dpi) -> Option<PlacedLabel> {
    let mut facts = facts.clone();
    facts
        .texts
        .retain(|field, _| template.fields().any(|known| known == *field));
    lay_out(&facts, template, dpi).ok()
}
