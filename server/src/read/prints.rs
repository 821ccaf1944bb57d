//! Prints for the eye and for programs: with their lots, printers and deeds by name.

use super::says::{QuerySays, spelt};
use crate::app::damaged;
use crate::caller::Caller;
use crate::deeds::says::PrintDeedSays;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::printing::address::PrinterAddress;
use crate::printing::client::{Client, Failure};
use crate::printing::format::{Format, encode};
use crate::printing::says::{PrintSays, PrinterStateSays};
use crate::printing::{kept, paper, words};
use crate::problems::TitleSays;
use crate::wire::Certificate;
use crate::wire::answers::instant;
use crate::wire::lists::PrinterEntry;
use crate::wire::prints::{
    CertificateState, PrintEvent, PrintInFull, PrintRead, PrinterState, PrintsPage,
};
use ::labels::PlacedLabel;
use ::words::Speech;
use chrono_tz::Tz;
use domain::print::{PrintView, trouble};
use domain::says::Says;
use domain::words::PrintState;
use serde::Deserialize;
use std::collections::HashMap;
use store::prints::{Filter, Print};
use store::{Conn, deeds, entries, leases, lots, print_runs, prints};
use utoipa::IntoParams;
use uuid::Uuid;

/// Which prints are wanted. What is said of each field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct PrintsQuery {
    /// The printer's code
    printer: Option<String>,
    /// waiting, sending, sent, printed, unsure, refused, cancelled or spoilt
    state: Option<String>,
    /// A lot's code
    lot: Option<String>,
    /// The last number of the page before
    after: Option<i32>,
    /// How many, at most 200; 50 if left out
    limit: Option<i64>,
}

/// Prints that fit, newest first.
///
/// # Errors
/// 422 for a printer, a state or a lot that does not exist.
pub fn page(app: &Caller<'_>, query: &PrintsQuery) -> Result<PrintsPage> {
    let limit = query.limit.unwrap_or(50);
    if !(1..=200).contains(&limit) {
        return Err(Error::cannot_be(
            "limit",
            QuerySays::LimitRange { most: 200 },
        ));
    }
    let state = query.state.as_deref().map(|text| {
        PrintState::parse(text).ok_or_else(|| {
            let says = QuerySays::NotState {
                state: text.to_owned(),
                known: spelt(PrintState::SPELT.iter().copied()),
            };
            Error::cannot_be("state", says)
        })
    });
    let state = state.transpose()?;
    app.store.read(|conn| {
        let printer = match &query.printer {
            Some(code) => Some(printer(conn, code, "printer")?.id),
            None => None,
        };
        let lot = match &query.lot {
            Some(code) => Some(super::lot_named(app, conn, code)?.id),
            None => None,
        };
        let filter = Filter {
            printer,
            state,
            lot,
            before: query.after,
            keys: None,
        };
        let mut found = prints::find(conn, filter, limit + 1)?;
        let more = found.len() as i64 > limit;
        found.truncate(usize::try_from(limit).unwrap_or(0));
        let next = found.last().map(|last| last.row.id).filter(|_| more);
        Ok(PrintsPage {
            prints: read(app, conn, &found)?,
            next,
        })
    })
}

/// Prints in short, as they are answered.
///
/// # Errors
/// The database is away, or something in it is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, prints: &[Print]) -> Result<Vec<PrintRead>> {
    let kitchen = app.kitchen(conn)?;
    let speech = app.speech(&kitchen);
    let views = views(conn, prints)?;
    let read = |view| PrintRead::of(view, kitchen.zone, &speech);
    Ok(views.iter().map(read).collect())
}

/// Prints with their lots, printers and deeds.
///
/// # Errors
/// The database is away, or something in it is damaged.
pub fn views(conn: &mut Conn, prints: &[Print]) -> Result<Vec<PrintView>> {
    let keys = |key: fn(&Print) -> i32| {
        let mut keys: Vec<i32> = prints.iter().map(key).collect();
        keys.sort_unstable();
        keys.dedup();
        keys
    };
    let lots = lots::by_keys(conn, &keys(|print| print.row.lot_id))?;
    let lots: HashMap<i32, _> = lots.into_iter().map(|lot| (lot.id, lot)).collect();
    let deeds = deeds::by_keys(conn, &keys(|print| print.row.deed_id))?;
    let deeds: HashMap<i32, _> = deeds.into_iter().map(|deed| (deed.id, deed)).collect();
    let mut printers = HashMap::new();
    for printer in keys(|print| print.row.printer_id) {
        printers.insert(printer, entries::code(conn, printer)?);
    }
    let talked = leases::talked(conn)?;
    prints
        .iter()
        .map(|print| {
            let row = &print.row;
            let (lot, deed) = (&lots[&row.lot_id], &deeds[&row.deed_id]);
            let state = print.run.known()?.state;
            let at_printer = || talked.get(&row.printer_id)?.trouble.clone();
            Ok(PrintView {
                number: row.id,
                lot: lot.code()?,
                pack: row.number.unsigned_abs(),
                pack_count: lot.pack_count.unsigned_abs(),
                printer: printers[&row.printer_id].clone(),
                is_document: print.run.is_document(),
                template: row.template.clone(),
                use_by: row.use_by,
                reprint: row.ordinal.unsigned_abs(),
                state,
                trouble: trouble(state, print.run.said(), at_printer),
                asked_at: deed.at.and_utc(),
                by: deed.person.clone(),
                deed: deed.uid.clone(),
                instead_of: row.instead_of,
            })
        })
        .collect()
}

/// Where a print's label is, as PDF.
pub fn label_path(print: i32) -> String {
    format!("/api/prints/{print}/label.pdf")
}

/// Where the labels are that left as a document by a deed.
pub fn document_path(deed: &str) -> String {
    format!("/api/label-documents/{deed}/labels.pdf")
}

/// A printer of the list, and what it has done so far.
pub struct PrinterView {
    /// Its code.
    pub code: String,
    /// What people call it.
    pub name: String,
    /// What is wrong there.
    pub trouble: Option<Says>,
    /// Did a label come out there?
    pub came_out: bool,
    /// How many labels have come how far.
    pub counts: Vec<(PrintState, i64)>,
}

/// Every printer of the list.
///
/// # Errors
/// The database is away, or something in it is damaged.
pub fn printers(conn: &mut Conn) -> Result<Vec<PrinterView>> {
    let mut talked = leases::talked(conn)?;
    let mut printers = Vec::new();
    for row in entries::all(conn, List::Printers.as_str())? {
        let entry: PrinterEntry =
            serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
        let state = |spelt: &str| PrintState::parse(spelt).unwrap_or(PrintState::Unsure);
        let talked = talked.remove(&row.id).unwrap_or_default();
        let counts = print_runs::counts(conn, row.id)?.into_iter();
        let counts: Vec<_> = counts.map(|(spelt, of)| (state(&spelt), of)).collect();
        let printed =
            |(state, labels): &(PrintState, i64)| *state == PrintState::Printed && *labels > 0;
        printers.push(PrinterView {
            came_out: talked.tried || counts.iter().any(printed),
            counts,
            trouble: talked.trouble,
            code: row.code,
            name: entry.name.0,
        });
    }
    Ok(printers)
}

/// One print with its whole story.
///
/// # Errors
/// 404 where it does not exist.
pub fn one(app: &Caller<'_>, conn: &mut Conn, number: &str) -> Result<PrintInFull> {
    let print = numbered(conn, number)?;
    let kitchen = app.kitchen(conn)?;
    let (zone, speech) = (kitchen.zone, app.speech(&kitchen));
    let events = print_runs::events(conn, print.row.id)?;
    let deed = deeds::by_keys(conn, &[print.row.deed_id])?.pop();
    let read = read(app, conn, std::slice::from_ref(&print))?.remove(0);
    let run = print.run;
    Ok(PrintInFull {
        print: read,
        note: deed.and_then(|deed| deed.note),
        dpi: print.row.dpi,
        attempts: run.attempt,
        token: run.token,
        job: run.job_id,
        format: run.format,
        document_sha256: run.document_hash,
        events: events
            .into_iter()
            .map(|event| print_event(event, zone, &speech))
            .collect(),
    })
}

fn print_event(event: print_runs::EventRow, zone: Tz, speech: &Speech) -> PrintEvent {
    let says = event.said();
    PrintEvent {
        at: instant(event.at, zone),
        state: event.state,
        says: says.map(|says| speech.say(&says)),
    }
}

/// The print of that number.
///
/// # Errors
/// 404 where it does not exist.
pub fn numbered(conn: &mut Conn, number: &str) -> Result<Print> {
    let found = match number.parse() {
        Ok(key) => prints::by_key(conn, key)?,
        Err(_) => None,
    };
    let print = number.to_owned();
    found.ok_or_else(|| Error::not_found(PrintDeedSays::Unknown { print }))
}

/// A print's label as PDF, byte for byte as it was sent, if it was sent as PDF.
///
/// # Errors
/// 404; 409 where this version of the program draws it otherwise than the one that printed it.
pub fn label(app: &Caller<'_>, number: &str) -> Result<Vec<u8>> {
    let (print, label) = app.store.read(|conn| {
        let print = numbered(conn, number)?;
        let label = kept::label(conn, &print.row)?;
        Ok::<_, Error>((print, label))
    })?;
    let refused = |detail: PrintSays| Error::label_refused(TitleSays::LabelNotShown, detail);
    let document = encode(Format::Pdf, &label).map_err(&refused)?;
    let sent = print.run.document_hash;
    let as_pdf = print.run.format.as_deref() == Some(Format::Pdf.mime());
    match sent.filter(|_| as_pdf) {
        Some(sent) if sent != store::kept::hash(&document) => {
            Err(refused(PrintSays::DrawnOtherwise {
                print: number.to_owned(),
            }))
        }
        _ => Ok(document),
    }
}

/// The labels that left as a document by a deed, from what was kept with each: in the order of asking.
///
/// # Errors
/// 404 where that deed gave out no document.
pub fn document(app: &Caller<'_>, id: &str) -> Result<Vec<PlacedLabel>> {
    app.store.read(|conn| {
        let uid = Uuid::parse_str(id).ok();
        let deed = uid.map(|uid| deeds::by_uid(conn, uid.as_bytes()));
        let mut found = match deed.transpose()?.flatten() {
            Some(deed) => prints::of_deed(conn, deed.id)?,
            None => Vec::new(),
        };
        found.retain(|print| print.run.is_document());
        if found.is_empty() {
            let id = id.to_owned();
            return Err(Error::not_found(PrintDeedSays::NoDocument { id }));
        }
        let labels = found.iter().map(|print| kept::label(conn, &print.row));
        labels.collect()
    })
}

/// The printer of that code.
///
/// # Errors
/// 422 where there is none.
pub fn printer(conn: &mut Conn, code: &str, field: &str) -> Result<entries::EntryRow> {
    entries::get(conn, List::Printers.as_str(), code)?
        .ok_or_else(|| Error::cannot_be(field, List::Printers.lacks_or_another(code)))
}

/// How a printer is: asked just now, outside any transaction.
///
/// # Errors
/// 404 where no entry has that code.
pub fn state(app: &Caller<'_>, code: &str) -> Result<PrinterState> {
    let (standing, body, counts) = app.store.read(|conn| {
        let row = entries::get(conn, List::Printers.as_str(), code)?
            .ok_or_else(|| crate::lists::entry::no_such_entry(List::Printers, code))?;
        let counts = print_runs::counts(conn, row.id)?;
        Ok::<_, Error>((app.standing(conn)?, row.body, counts))
    })?;
    let kitchen = &standing.kitchen;
    let entry: PrinterEntry = serde_json::from_str(&body).map_err(|error| damaged(&error))?;
    let name = entry.name.0.clone();
    let address = PrinterAddress::of(&entry);
    let asked = address
        .as_ref()
        .map(|address| Client::new(address).capabilities());
    let speech = app.speech(kitchen);
    let mut state = PrinterState {
        code: entry.code.0,
        reachable: false,
        state: speech.say(&PrinterStateSays::DoesNotAnswer.into()),
        trouble: None,
        reasons: Vec::new(),
        sizes: Vec::new(),
        paper: Vec::new(),
        lacks: None,
        formats: Vec::new(),
        resolutions: Vec::new(),
        prints: counts.into_iter().collect(),
        certificate: None,
        name,
    };
    if let Ok(address) = &address
        && address.is_encrypted()
    {
        let pinned = address.certificate();
        let seen = match &asked {
            Ok(Err(Failure::Stranger { seen, .. })) => Some(*seen),
            Ok(Err(Failure::Unreached(_) | Failure::Lost(_))) | Err(_) => None,
            // It answered, so it is the one that it is known by.
            Ok(Ok(_) | Err(Failure::Said { .. })) => pinned,
        };
        state.certificate = Some(CertificateState {
            pinned: pinned.map(Certificate),
            seen: seen.map(Certificate),
        });
    }
    let needs = paper::needs(&app.templates, kitchen.entry.profile.0);
    if !matches!(asked, Ok(Ok(_))) {
        state.paper = (needs.iter().map(|need| speech.say(&need.says_unknown()))).collect();
    }
    match asked {
        Err(says) => state.trouble = Some(speech.say(&says.clone().into())),
        Ok(Err(failure)) => {
            state.trouble = Some(speech.say(&words::no_answer(&state.name, &failure).into()));
        }
        Ok(Ok(printer)) => {
            app.printers.note(code, &printer);
            let only: Vec<String> = entry
                .templates
                .iter()
                .flatten()
                .map(|of| of.0.clone())
                .collect();
            let lacks = paper::lacks(&needs, &printer, &only, &standing.lists);
            state.reachable = true;
            state.state = speech.say(&words::state(&printer, lacks.is_some()).into());
            state.lacks = lacks.map(|says| speech.say(&says));
            if !printer.is_mute_on_sizes() {
                let says = needs.iter().map(|need| speech.say(&need.says_of(&printer)));
                state.paper = says.collect();
            }
            let trouble = words::trouble(&state.name, &printer);
            state.trouble = trouble.map(|says| speech.say(&says.into()));
            // For a script: in millimetres, whatever its reader weighs in.
            let plain = Speech::in_language(speech.language);
            state.sizes = printer.sizes().map(|size| plain.say(&size)).collect();
            state.reasons = printer.reasons;
            state.formats = printer.formats;
            state.resolutions = printer.resolutions;
        }
    }
    Ok(state)
}
