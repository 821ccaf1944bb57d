//! A lot in full, as it is answered.

use super::because::{because_read, finding_read};
use super::{BecauseRead, FindingRead, StopRead, stop_read};
use super::{instant, shown_id};
use crate::read::LoadedFamily;
use crate::wire::cure_room::CureRead;
use crate::wire::{Day, Number, Weight};
use chrono_tz::Tz;
use domain::family::{Cured, Line, LotView, contents_links};
use domain::lot::Pack;
use domain::rows::Rows;
use domain::words::{Account, StopKind};
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;
use words::Speech;

/// A lot in full.
#[derive(Debug, Serialize, ToSchema)]
pub struct LotRead {
    /// Its code.
    pub code: String,
    /// Its code with hyphens, for the eye.
    pub shown: String,
    /// Its product.
    pub product: String,
    /// Its product's names.
    pub names: BTreeMap<String, String>,
    /// Its weight at birth.
    pub grams: Weight,
    /// What is left of it.
    pub on_hand_grams: Weight,
    /// When it was made.
    pub made_at: String,
    /// The deed that made it.
    pub made_by_step: String,
    /// Its packs.
    pub packs: Vec<PackRead>,
    /// The earliest date on hand.
    pub use_by: Option<Day>,
    /// Why this date.
    pub use_by_because: Vec<BecauseRead>,
    /// What was corrected of it, or of what went into it, and by whom.
    pub corrections: Vec<BecauseRead>,
    /// What is in it, by language.
    pub ingredients: BTreeMap<String, String>,
    /// The title of the ingredient list as the place has it, by language.
    pub ingredients_title: BTreeMap<String, String>,
    /// The allergen statement of the place, by language; nothing where its list shows them.
    pub contains: BTreeMap<String, String>,
    /// Animals that the name does not mention, by language.
    pub species_note: BTreeMap<String, String>,
    /// What is to be known or mended before it is labelled for sale.
    pub statement_findings: Vec<FindingRead>,
    /// What stands against its label for a customer: its name, its standard, where its meat comes from.
    pub label_findings: Vec<FindingRead>,
    /// Allergens by union over everything that went in.
    pub allergens: Vec<String>,
    /// Are those all? False of what nobody knows the history of: never read `allergens` alone.
    pub allergens_known: bool,
    /// What may be in it unasked, by union over everything that went in: never instead of `allergens`.
    pub may_contain: Vec<String>,
    /// The same as its label says it, in the place's words, by language.
    pub may_contain_statement: BTreeMap<String, String>,
    /// By what it is known what is in it, if it was bought.
    pub declared: Option<DeclaredRead>,
    /// Species by union over everything that went in.
    pub species: Vec<String>,
    /// Must it be cooked before it is eaten?
    pub raw: bool,
    /// What it is by what happened to it, and by which proof.
    pub condition: ConditionRead,
    /// How it was cured.
    pub cure: Option<crate::wire::cure_room::CureRead>,
    /// Those stops on it that are holds.
    pub holds: Vec<StopRead>,
    /// What stands in its way, the gravest first.
    pub stops: Vec<StopRead>,
    /// Everything that was done with it, the oldest first.
    pub steps: Vec<StepBrief>,
    /// Its readings, the oldest first.
    pub readings: Vec<ReadingRead>,
    /// Was its making voided?
    pub voided: bool,
    /// A word about it.
    pub note: Option<String>,
}

/// By what it is known what is in a bought lot. The product list as it stood counts as the supplier's
/// declaration, where the pack's own is not on record.
#[derive(Debug, Serialize, ToSchema)]
pub struct DeclaredRead {
    /// Its ingredients as the pack has them, by language.
    pub ingredients: BTreeMap<String, String>,
    /// `pack` or `list`.
    pub ingredients_by: String,
    /// `pack` or `list`.
    pub allergens_by: String,
    /// In words.
    pub because: Vec<BecauseRead>,
}

impl DeclaredRead {
    fn by(pack: bool) -> String {
        match pack {
            true => "pack",
            false => "list",
        }
        .to_owned()
    }
}

/// What food is by what happened to it.
#[derive(Debug, Serialize, ToSchema)]
pub struct ConditionRead {
    /// `raw`, `treated` or `ready`.
    pub is: String,
    /// The same for a reader.
    pub says: String,
    /// What proves it: `heat`, `declared`, `released`, `parts` …; `nothing` where nothing does.
    pub by: String,
    /// What shows that it needs no time and temperature control, if anything does.
    pub stable_by: Option<String>,
    /// Was it judged before conditions were asked, and keeps what it was judged to be?
    pub judged_before: bool,
    /// Why.
    pub because: Vec<BecauseRead>,
}

/// A pack.
#[derive(Debug, Serialize, ToSchema)]
pub struct PackRead {
    /// Its number.
    pub pack: u32,
    /// Its grams at birth.
    pub grams: Weight,
    /// What is left of it.
    pub left_grams: Weight,
    /// What has become of it.
    pub is: String,
    /// Where it is.
    pub place: String,
    /// How it is kept.
    pub state: String,
    /// Its last day.
    pub use_by: Option<Day>,
    /// While frozen: the days it still has once thawed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_left: Option<i32>,
}

/// A deed in a lot's history.
#[derive(Debug, Serialize, ToSchema)]
pub struct StepBrief {
    /// Its id.
    pub id: String,
    /// What it was.
    pub kind: String,
    /// When.
    pub at: String,
    /// Who.
    pub by: String,
    /// Was it voided?
    pub voided: bool,
    /// What it did with this lot: made, used, sold …, and how much.
    pub account: String,
    /// How much.
    pub grams: Weight,
}

/// A reading.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReadingRead {
    /// When.
    pub at: String,
    /// What was measured.
    pub quantity: String,
    /// How much.
    pub value: crate::wire::Number,
}

/// A lot, for a reader.
pub fn lot_read(view: &LotView<'_>, reading: &LoadedFamily<'_>, speech: &Speech) -> LotRead {
    let of = view.of;
    let (lot, zone, rows) = (&of.lot, reading.kitchen().zone, &reading.law.rows);
    let because = view.because.iter();
    let findings = view.stated.findings.iter();
    let readings = of.readings.iter();
    let stops = view.stops.iter();
    let stops: Vec<StopRead> = stops.map(|stop| stop_read(stop, zone, speech)).collect();
    LotRead {
        code: lot.code.to_string(),
        shown: lot.code.shown(),
        product: lot.product.code.clone(),
        names: (*lot.product.names).clone(),
        grams: Weight(of.made()),
        on_hand_grams: Weight(of.went.on_hand),
        made_at: instant(lot.made_at.naive_utc(), zone),
        made_by_step: shown_id(&of.made_by.uid),
        use_by: view.use_by.map(Day),
        corrections: view
            .corrected
            .iter()
            .map(|link| because_read(link, rows, speech))
            .collect(),
        use_by_because: because
            .map(|link| because_read(link, rows, speech))
            .collect(),
        packs: lot
            .packs
            .iter()
            .map(|pack| pack_read(pack, reading))
            .collect(),
        ingredients: view.stated.ingredients.clone(),
        ingredients_title: view.stated.titles.clone(),
        contains: view.stated.contains.clone(),
        species_note: view.stated.species.clone(),
        statement_findings: findings
            .map(|found| finding_read(found, rows, speech))
            .collect(),
        label_findings: view
            .against_label
            .iter()
            .map(|found| finding_read(found, rows, speech))
            .collect(),
        allergens: lot.allergens.iter().map(ToString::to_string).collect(),
        allergens_known: lot.knows_allergens(),
        may_contain: lot.perhaps().iter().map(ToString::to_string).collect(),
        may_contain_statement: view.stated.may_contain.clone(),
        declared: lot.supplied.as_ref().map(|of| DeclaredRead {
            ingredients: of.ingredients.clone(),
            ingredients_by: DeclaredRead::by(!of.ingredients.is_empty()),
            allergens_by: DeclaredRead::by(of.allergens_by_pack),
            because: contents_links(view.of)
                .iter()
                .map(|link| because_read(link, rows, speech))
                .collect(),
        }),
        species: lot.species.iter().map(ToString::to_string).collect(),
        raw: lot.product.raw,
        condition: condition_read(view, rows, speech),
        cure: view
            .cured
            .as_ref()
            .map(|cured| cure_read(cured, reading, rows, speech)),
        holds: stops
            .iter()
            .filter(|stop| stop.stop == StopKind::Held.as_str())
            .cloned()
            .collect(),
        stops,
        steps: view
            .lines()
            .iter()
            .map(|line| step_brief(line, zone))
            .collect(),
        readings: readings
            .map(|reading| ReadingRead {
                at: instant(reading.at.naive_utc(), zone),
                quantity: reading.quantity.to_string(),
                value: Number(reading.millionths),
            })
            .collect(),
        voided: lot.voided,
        note: of.note.clone(),
    }
}

fn condition_read(view: &LotView<'_>, rows: &Rows, speech: &Speech) -> ConditionRead {
    let condition = view.of.lot.condition();
    let because = view.condition_because.iter();
    ConditionRead {
        is: condition.is.to_string(),
        says: speech.say(&condition.is.says()),
        by: condition.by.to_string(),
        stable_by: condition.stable.map(|by| by.to_string()),
        judged_before: view.of.lot.condition.is_none(),
        because: because
            .map(|link| because_read(link, rows, speech))
            .collect(),
    }
}

fn pack_read(pack: &Pack, reading: &LoadedFamily<'_>) -> PackRead {
    PackRead {
        pack: pack.number,
        grams: Weight(pack.made),
        left_grams: Weight(pack.now.left),
        is: pack.now.being.as_str().to_owned(),
        place: reading.standing.lists.place_code(pack.now.place).to_owned(),
        state: pack.now.state.as_str().to_owned(),
        use_by: pack.now.use_by.map(Day),
        days_left: pack.now.days_frozen(),
    }
}

fn cure_read(cured: &Cured, reading: &LoadedFamily<'_>, rows: &Rows, speech: &Speech) -> CureRead {
    let lot = reading.family.get(cured.lot);
    CureRead {
        lot: lot.map(|of| of.lot.code.to_string()).unwrap_or_default(),
        nitrite_ppm: Number(cured.nitrite_ppm),
        nitrate_ppm: Number(cured.nitrate_ppm),
        salt_percent: Number(cured.salt_percent),
        because: cured
            .because
            .iter()
            .map(|link| because_read(link, rows, speech))
            .collect(),
    }
}

fn step_brief(line: &Line<'_>, zone: Tz) -> StepBrief {
    StepBrief {
        id: shown_id(line.uid),
        kind: line.kind.as_str().to_owned(),
        at: instant(line.at.naive_utc(), zone),
        by: line.by.to_owned(),
        voided: line.voided,
        account: line.account.map_or("made", Account::as_str).to_owned(),
        grams: Weight(line.grams),
    }
}
