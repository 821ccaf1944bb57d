//! Prints on the wire: what is asked of a printer, and what became of it.

use super::answers::{instant, shown_id};
use super::asked::Id;
use super::{By, Certificate, Code, Day, Instant, Line, Note};
use crate::deeds::DeedAnswer;
use crate::read::prints::{document_path, label_path};
use chrono_tz::Tz;
use domain::print::PrintView;
use domain::says::Says;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use utoipa::ToSchema;
use words::Speech;

/// Labels are asked for.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PrintAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// On which printer.
    pub printer: Code,
    /// The lot, in any spelling; `CODE/N` names a pack.
    pub lot: Option<Line>,
    /// Or the deed whose lots are to be labelled.
    pub step: Option<Id>,
    /// Which packs of the lot; those on hand if left out.
    pub packs: Option<Vec<u32>>,
    /// On which label; on the one that suits the printer and the product if left out.
    pub template: Option<Line>,
    /// One tag for all pieces of a lot that hangs, to be weighed together? A tag a piece, if left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub together: Option<bool>,
    /// For packs that were printed before.
    pub again: Option<AgainAsked>,
    /// A word about it.
    pub note: Option<Note>,
}

/// Labels are asked for as a document, to be printed by what means there are.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DocumentAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The lot, in any spelling; `CODE/N` names a pack.
    pub lot: Option<Line>,
    /// Or the deed whose lots are to be labelled.
    pub step: Option<Id>,
    /// Which packs of the lot; those on hand if left out. At most 100 labels are one document.
    pub packs: Option<Vec<u32>>,
    /// On which label; on the one that suits the product if left out.
    pub template: Option<Line>,
    /// One tag for all pieces of a lot that hangs, to be weighed together? A tag a piece, if left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub together: Option<bool>,
    /// For a printer of so many dots an inch: 203, if left out, or 300.
    pub dpi: Option<u16>,
    /// For packs that were printed before.
    pub again: Option<AgainAsked>,
    /// A word about it.
    pub note: Option<Note>,
}

/// Why a label is printed again.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AgainAsked {
    /// Why.
    pub why: Note,
}

/// Somebody looked which labels came out.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SettlementAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who looked.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// What was seen of each.
    pub prints: Vec<SettledAsked>,
    /// Print those that did not come out once more? Yes, if left out.
    pub again: Option<bool>,
    /// A word about it.
    pub note: Option<Note>,
}

/// What was seen of one label.
#[derive(Debug, Clone, Copy, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SettledAsked {
    /// The print's number.
    pub print: i32,
    /// Did it come out whole?
    pub came_out: bool,
}

/// Labels that wait are wanted no more.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CancellationAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Which prints.
    pub prints: Vec<i32>,
    /// A word about it.
    pub note: Option<Note>,
}

/// What was asked of a printer, or settled.
#[derive(Debug, Serialize, ToSchema)]
pub struct PrintsDone {
    /// The deed's id.
    pub id: String,
    /// What it was.
    pub kind: String,
    /// Entered later than it happened.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub late: bool,
    /// The labels, as they stood then.
    pub prints: Vec<PrintRead>,
    /// Where the labels are, where they left as a document.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub document: Option<String>,
    /// Nothing is wrong, but look.
    pub warnings: Vec<String>,
    /// The key of each warning: it is the same in every language.
    pub warning_keys: Vec<String>,
    /// What becomes of the two.
    #[serde(skip)]
    pub said: Vec<Says>,
}

impl DeedAnswer for PrintsDone {
    fn also(&mut self, said: Vec<Says>) {
        self.said.extend(said);
    }

    fn entered_late(&mut self, late: bool) {
        self.late = late;
    }

    fn tell(&mut self, speech: &Speech) {
        self.warnings = self.said.iter().map(|says| speech.say(says)).collect();
        self.warning_keys = self.said.iter().map(|says| says.key().to_owned()).collect();
    }
}

/// A label and what became of it.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct PrintRead {
    /// Its number.
    pub print: i32,
    /// The lot's code.
    pub lot: String,
    /// The same with hyphens, and the pack.
    pub shown: String,
    /// The pack.
    pub pack: u32,
    /// The printer's code; `pdf` where it left as a document.
    pub printer: String,
    /// The document in which it left, where it did not go to a printer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub document: Option<String>,
    /// Which label.
    pub template: String,
    /// The date that it shows.
    pub use_by: Option<Day>,
    /// 0 for the first print of its pack, from 1 on for reprints.
    pub reprint: u32,
    /// `waiting`, `sending`, `sent`, `printed`, `unsure`, `refused`, `cancelled` or `spoilt`.
    pub state: String,
    /// The same in words.
    pub says: String,
    /// What is wrong, and what to do.
    pub trouble: Option<String>,
    /// When it was asked for.
    pub asked_at: String,
    /// Who asked.
    pub by: String,
    /// The deed that asked for it.
    pub step: String,
    /// The print that did not come out and that this one stands in for.
    pub instead_of: Option<i32>,
    /// The label itself, as PDF.
    pub label: String,
}

impl PrintRead {
    /// A label, for a reader in a kitchen of that time zone.
    pub fn of(view: &PrintView, zone: Tz, speech: &Speech) -> PrintRead {
        PrintRead {
            print: view.number,
            lot: view.lot.to_string(),
            shown: view.shown(),
            pack: view.pack,
            printer: view.printer.clone(),
            document: view
                .is_document
                .then(|| document_path(&shown_id(&view.deed))),
            template: view.template.clone(),
            use_by: view.use_by.map(Day),
            reprint: view.reprint,
            state: view.state.as_str().to_owned(),
            says: speech.say(&view.says()),
            trouble: view.trouble.as_ref().map(|says| speech.say(says)),
            asked_at: instant(view.asked_at.naive_utc(), zone),
            by: view.by.clone(),
            step: shown_id(&view.deed),
            instead_of: view.instead_of,
            label: label_path(view.number),
        }
    }
}

/// A label with its whole story.
#[derive(Debug, Serialize, ToSchema)]
pub struct PrintInFull {
    /// In short.
    #[serde(flatten)]
    pub print: PrintRead,
    /// Why it was printed again, or a word about it.
    pub note: Option<String>,
    /// Dots per inch that it is laid out for.
    pub dpi: i32,
    /// How often its turn has come.
    pub attempts: i32,
    /// The job's name at the printer, in the last attempt.
    pub token: Option<String>,
    /// The printer's own number of that job.
    pub job: Option<i32>,
    /// What it was sent as.
    pub format: Option<String>,
    /// SHA-256 of what was sent.
    pub document_sha256: Option<String>,
    /// What happened to it, in order.
    pub events: Vec<PrintEvent>,
}

/// Something that happened to a label.
#[derive(Debug, Serialize, ToSchema)]
pub struct PrintEvent {
    /// When.
    pub at: String,
    /// Its state from then on.
    pub state: String,
    /// Why, in words.
    pub says: Option<String>,
}

/// A page of prints.
#[derive(Debug, Serialize, ToSchema)]
pub struct PrintsPage {
    /// The prints, newest first.
    pub prints: Vec<PrintRead>,
    /// Where the next page goes on: send it as `after`.
    pub next: Option<i32>,
}

/// Who answers for a printer, and who should.
#[derive(Debug, Serialize, ToSchema)]
pub struct CertificateState {
    /// The certificate that was shown just now, if anybody answered. Compare it with what the printer itself
    /// tells before it is made the printer's.
    pub seen: Option<Certificate>,
    /// The one that the printer is known by: no other is spoken to.
    pub pinned: Option<Certificate>,
}

/// How a printer is.
#[derive(Debug, Serialize, ToSchema)]
pub struct PrinterState {
    /// Its code.
    pub code: String,
    /// What people call it.
    pub name: String,
    /// Does it answer?
    pub reachable: bool,
    /// `ready`, `printing`, `stopped`, or why there is no answer.
    pub state: String,
    /// What is wrong, and what to do.
    pub trouble: Option<String>,
    /// Its own words for it.
    pub reasons: Vec<String>,
    /// The label sizes that it has, in millimetres.
    pub sizes: Vec<String>,
    /// What each of the kitchen's labels is for, and which of the sizes that do it has; nothing where it does not say
    /// which it has.
    pub paper: Vec<String>,
    /// What it has no paper for of what the kitchen makes, and what to do.
    pub lacks: Option<String>,
    /// The formats that it takes.
    pub formats: Vec<String>,
    /// Dots per inch.
    pub resolutions: Vec<i32>,
    /// Behind `ipps://`: which certificate it shows, and by which it is known.
    pub certificate: Option<CertificateState>,
    /// How many labels are in each state.
    pub prints: BTreeMap<String, i64>,
}

/// A label to try a printer with was sent.
#[derive(Debug, Serialize, ToSchema)]
pub struct TestLabelSent {
    /// What to look at, in the caller's language.
    pub says: String,
}
