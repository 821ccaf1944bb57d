//! The record of an incident for a spreadsheet: a line for each lot that came in, for each lot that went into
//! another, for each shipment, each hour of sales, and for what was found, destroyed, returned and missing. Over each
//! column that a rule of the place names stand the rows that do.

use super::facts::{IncidentFacts, LotFacts, in_language};
use super::picture::local;
use super::says::ReportSays;
use crate::logbook::cells::{File, MARK};
use crate::wire::Weight;
use chrono::NaiveDateTime;
use domain::duties::keeping::Record;
use domain::law::Law;
use domain::says::{Arg, Says};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use words::{Speech, capital};

/// The columns that a rule may name, with its names for them.
const COLUMNS: &[(&str, &[&str])] = &[
    ("lot", &["lot-code", "identifier"]),
    ("description", &["description", "common-name"]),
    ("quantity", &["quantity", "quantity-used"]),
    (
        "moment",
        &[
            "received-on",
            "shipped-on",
            "completed-on",
            "provided-on",
            "dispatched-on",
        ],
    ),
    ("place", &["received-at", "shipped-from", "place"]),
    (
        "from",
        &[
            "previous-source",
            "supplier",
            "dispatcher",
            "consignor",
            "farm-name",
        ],
    ),
    ("from-address", &["farm-address", "supplier", "dispatcher"]),
    ("from-lot", &["lot-code-source"]),
    ("to", &["recipient", "receiver", "consignee"]),
    ("input-lot", &["inputs"]),
    ("document", &["document"]),
    ("responsible", &["responsible"]),
];

/// The records whose fields these are.
const RECORDS: [Record; 9] = [
    Record::ListedReceiving,
    Record::ListedInputs,
    Record::ListedOutput,
    Record::ListedShipping,
    Record::OneUpOneDown,
    Record::FarmDirect,
    Record::TraceToBusiness,
    Record::TraceRetail,
    Record::AnimalProduct,
];

/// The rows of a place that name each column.
pub(super) fn rows(law: &Law) -> BTreeMap<String, Vec<String>> {
    let mut all: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for field in &law.duties.fields {
        if !field.records.iter().any(|record| RECORDS.contains(record)) {
            continue;
        }
        for (column, names) in COLUMNS {
            let inputs = field.records.contains(&Record::ListedInputs);
            let column = match (*column, inputs) {
                ("lot", true) => "input-lot",
                ("description", true) => "input",
                ("quantity", true) => "input-quantity",
                (column, _) => column,
            };
            if names.contains(&field.field.as_str()) {
                let rows = all.entry(column.to_owned()).or_default();
                let row = field.row.to_string();
                if !rows.contains(&row) {
                    rows.push(row);
                }
            }
        }
    }
    all
}

/// The file.
pub fn sheet(facts: &IncidentFacts, speech: &Speech) -> Vec<u8> {
    let mut sheet = Sheet {
        facts,
        speech,
        file: File::default(),
    };
    sheet.file.out.push_str(MARK);
    sheet.head();
    for lot in &facts.lots {
        sheet.lot(lot);
    }
    sheet.sold();
    for disposal in &facts.disposals {
        let entry = match disposal.what.as_str() {
            "discarded" => ReportSays::EntryDestroyed,
            "returned" => ReportSays::EntryReturned,
            _ => continue,
        };
        sheet.line(&Line {
            entry: Some(entry),
            lot: &disposal.lot,
            description: in_language(&disposal.names, speech.language.tag(), ""),
            grams: Some(disposal.grams),
            packs: Some(disposal.packs.len()),
            at: Some(local(&disposal.at)),
            place: disposal.place.clone(),
            document: disposal.document.clone(),
            to: disposal.witness.clone(),
            ..Line::default()
        });
    }
    sheet.file.out.into_bytes()
}

/// A line of the file.
#[derive(Default)]
struct Line<'a> {
    entry: Option<ReportSays>,
    lot: &'a str,
    description: String,
    grams: Option<Weight>,
    packs: Option<usize>,
    at: Option<NaiveDateTime>,
    place: Option<String>,
    from: Option<String>,
    from_address: Option<String>,
    from_lot: Option<String>,
    killed_on: Option<String>,
    abattoir: Option<String>,
    to: Option<String>,
    input_lot: Option<String>,
    input: Option<String>,
    input_grams: Option<Weight>,
    document: Option<String>,
}

struct Sheet<'a> {
    facts: &'a IncidentFacts,
    speech: &'a Speech,
    file: File,
}

impl Sheet<'_> {
    fn say(&self, says: ReportSays) -> String {
        self.speech.say(&Says::from(says))
    }

    fn head(&mut self) {
        use ReportSays::*;
        let columns = [
            ("entry", Entry),
            ("lot", Lot),
            ("description", Name),
            ("quantity", Grams),
            ("packs", NumberOfPacks),
            ("moment", Moment),
            ("place", Place),
            ("from", From),
            ("from-address", FromAddress),
            ("from-lot", FromLot),
            ("killed-on", KilledOn),
            ("abattoir", Abattoir),
            ("to", To),
            ("input-lot", InputLot),
            ("input", Input),
            ("input-quantity", InputGrams),
            ("document", Document),
            ("responsible", Responsible),
        ];
        for (column, heading) in columns {
            let heading = capital(&self.say(heading));
            let rows = self.facts.rows.get(column);
            let text = match rows {
                Some(rows) => self.say(WithRows {
                    heading: Arg::from(heading),
                    rows: rows.join(", "),
                }),
                None => heading,
            };
            self.file.text(&text);
        }
        self.file.end_line();
    }

    fn lot(&mut self, lot: &LotFacts) {
        let description = lot.name(self.speech.language.tag());
        let line = |entry| Line {
            entry: Some(entry),
            lot: &lot.shown,
            description: description.clone(),
            grams: Some(lot.went.made),
            at: Some(local(&lot.made_at)),
            place: lot.made_place.clone(),
            ..Line::default()
        };
        if let Some(from) = &lot.from {
            self.line(&Line {
                from: Some(from.name.clone()),
                from_address: from.address.clone(),
                from_lot: from.lot.clone(),
                killed_on: from.killed_on.clone(),
                abattoir: from.abattoir.clone(),
                document: from.document.clone(),
                ..line(ReportSays::EntryReceived)
            });
        }
        for input in &lot.of {
            let name = in_language(&input.names, self.speech.language.tag(), "");
            self.line(&Line {
                input_lot: Some(input.lot.clone()),
                input: Some(name),
                input_grams: Some(input.grams),
                ..line(ReportSays::EntryMade)
            });
        }
        for shipped in &lot.shipped {
            self.line(&Line {
                grams: Some(shipped.grams),
                at: Some(local(&shipped.at)),
                to: Some(shipped.to.clone()),
                place: None,
                ..line(ReportSays::EntryShipped)
            });
        }
        let as_of = local(&self.facts.as_of);
        for (place, left) in &lot.places {
            self.line(&Line {
                grams: Some(*left),
                at: Some(as_of),
                place: Some(place.clone()),
                ..line(ReportSays::EntryOnHand)
            });
        }
        for pack in lot.packs.iter().filter(|pack| pack.state == "missing") {
            self.line(&Line {
                grams: Some(pack.sums.missing_grams),
                packs: Some(1),
                at: Some(as_of),
                place: Some(pack.place.clone()),
                ..line(ReportSays::EntryMissing)
            });
        }
    }

    fn sold(&mut self) {
        let facts = self.facts;
        for sold in &facts.sold {
            let day: Option<chrono::NaiveDate> = sold.day.parse().ok();
            let at = day.and_then(|day| day.and_hms_opt(sold.hour, 0, 0));
            self.line(&Line {
                entry: Some(ReportSays::EntrySold),
                lot: &sold.lot,
                description: in_language(&sold.names, self.speech.language.tag(), ""),
                grams: Some(sold.grams),
                packs: Some(sold.packs),
                at,
                to: (!sold.to.is_empty()).then(|| sold.to.join("; ")),
                ..Line::default()
            });
        }
    }

    fn line(&mut self, line: &Line<'_>) {
        let entry = line.entry.as_ref();
        let entry = entry.map_or_else(String::new, |says| self.speech.say(&says.clone().into()));
        self.file.text(&entry);
        self.file.text(line.lot);
        self.file.text(&line.description);
        self.weight(line.grams);
        match line.packs {
            Some(packs) => self.file.number(Decimal::from(packs)),
            None => self.file.nothing(),
        }
        match line.at {
            Some(at) => self.file.bare(&at.format("%Y-%m-%d %H:%M:%S").to_string()),
            None => self.file.nothing(),
        }
        let place = line.place.as_deref().map(|code| self.facts.place(code));
        self.file.text(place.unwrap_or_default());
        for text in [&line.from, &line.from_address, &line.from_lot] {
            self.file.text(text.as_deref().unwrap_or_default());
        }
        match &line.killed_on {
            Some(day) => self.file.bare(day),
            None => self.file.nothing(),
        }
        for text in [&line.abattoir, &line.to, &line.input_lot, &line.input] {
            self.file.text(text.as_deref().unwrap_or_default());
        }
        self.weight(line.input_grams);
        self.file.text(line.document.as_deref().unwrap_or_default());
        let made_here = line.from.is_none();
        let kitchen = &self.facts.kitchen;
        let address = kitchen.address.as_deref().unwrap_or_default();
        let responsible = format!("{}, {address}", kitchen.name);
        let responsible = responsible.trim_end_matches(", ");
        self.file.text(if made_here { responsible } else { "" });
        self.file.end_line();
    }

    fn weight(&mut self, grams: Option<Weight>) {
        match grams {
            Some(grams) => self.file.number(Decimal::new(grams.0.milligrams(), 3)),
            None => self.file.nothing(),
        }
    }
}
