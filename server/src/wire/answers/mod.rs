//! What the service answers; how each noun is translated has a file of its own.

pub mod because;
pub mod descendants;
pub mod lot;
pub mod origins;
pub mod piece;

use super::{Day, Instant, Weight};
use chrono::{DateTime, NaiveDateTime};
use chrono_tz::Tz;
use domain::says::Says;
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;

/// An instant as the kitchen writes it: with its own offset.
pub fn instant(utc: NaiveDateTime, zone: Tz) -> String {
    utc.and_utc()
        .with_timezone(&zone)
        .to_rfc3339_opts(chrono::SecondsFormat::AutoSi, false)
}

/// A deed's id as it is written.
pub fn shown_id(uid: &[u8]) -> String {
    uuid::Uuid::from_slice(uid)
        .map(|id| id.to_string())
        .unwrap_or_default()
}

/// The instant itself, for the wire.
pub fn as_instant(utc: NaiveDateTime) -> Instant {
    Instant(DateTime::from(utc.and_utc()))
}

/// A lot in short.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct LotBrief {
    /// Its code.
    pub code: String,
    /// Its code with hyphens, for the eye.
    pub shown: String,
    /// Its product.
    pub product: String,
    /// Its weight at birth.
    pub grams: Weight,
    /// What is left of it.
    pub on_hand_grams: Weight,
    /// The earliest date on hand.
    pub use_by: Option<Day>,
    /// How many packs it was born with.
    pub pack_count: u32,
    /// Where most of what is left is.
    pub place: Option<String>,
    /// When it was made.
    pub made_at: String,
    /// A word about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// What was done.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct DeedDone {
    /// The deed's id.
    pub id: String,
    /// What it was.
    pub kind: String,
    /// Entered later than it happened.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub late: bool,
    /// Of a step: in + added - out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss_grams: Option<Weight>,
    /// Of a weighing: what was lost in drying.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lost_grams: Option<Weight>,
    /// Of a count, and of a step with a difference of scales: missing positive, surplus negative.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unexplained_grams: Option<Weight>,
    /// The lots made, in the order asked; of other deeds, the lots touched.
    pub lots: Vec<LotBrief>,
    /// Where the labels of what was made are.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub labels: Option<String>,
    /// Nothing is wrong, but look: in the caller's language.
    pub warnings: Vec<String>,
    /// The key of each warning: it is the same in every language.
    pub warning_keys: Vec<String>,
    /// What becomes of the two.
    #[serde(skip)]
    pub said: Vec<Says>,
}

/// Any deed on record.
#[derive(Debug, Serialize, ToSchema)]
pub struct DeedRead {
    /// Its id.
    pub id: String,
    /// What it was.
    pub kind: String,
    /// When it ended.
    pub at: String,
    /// When it began.
    pub began_at: Option<String>,
    /// When the record took it.
    pub recorded_at: String,
    /// Entered later than it happened.
    pub late: bool,
    /// Who.
    pub by: String,
    /// Where.
    pub place: Option<String>,
    /// A word about it.
    pub note: Option<String>,
    /// What was asked.
    #[schema(value_type = Object)]
    pub asked: serde_json::Value,
    /// What was answered.
    #[schema(value_type = Object)]
    pub answered: serde_json::Value,
    /// What voided it.
    pub voided: Option<VoidedRead>,
    /// What corrected it, the oldest first.
    pub corrections: Vec<String>,
}

/// What voided a deed.
#[derive(Debug, Serialize, ToSchema)]
pub struct VoidedRead {
    /// The void's id.
    pub id: String,
    /// Why.
    pub why: String,
    /// Who.
    pub by: String,
    /// When.
    pub at: String,
}

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
    /// What is in it, by language.
    pub ingredients: BTreeMap<String, String>,
    /// The title of the ingredient list as the place has it, by language.
    pub ingredients_title: BTreeMap<String, String>,
    /// The allergen statement of the place, by language; nothing where its list tells them.
    pub contains: BTreeMap<String, String>,
    /// Animals that the name does not tell, by language.
    pub species_note: BTreeMap<String, String>,
    /// What is to be known or mended before it is labelled for sale.
    pub statement_findings: Vec<FindingRead>,
    /// Allergens by union over everything that went in.
    pub allergens: Vec<String>,
    /// Species by union over everything that went in.
    pub species: Vec<String>,
    /// Must it be cooked before it is eaten?
    pub raw: bool,
    /// How it was cured.
    pub cure: Option<super::cure_room::CureRead>,
    /// Holds on it.
    #[schema(value_type = Vec<Object>)]
    pub holds: Vec<serde_json::Value>,
    /// Everything that was done with it, the oldest first.
    pub steps: Vec<StepBrief>,
    /// Its readings, the oldest first.
    pub readings: Vec<ReadingRead>,
    /// Was its making voided?
    pub voided: bool,
    /// A word about it.
    pub note: Option<String>,
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

/// What a check found.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct FindingRead {
    /// `note`, `warn` or `refuse`.
    pub gravity: String,
    /// In words.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// The rows behind it.
    pub rows: Vec<String>,
    /// Where they come from.
    pub source: String,
}

/// A row of the law.
#[derive(Debug, Serialize, ToSchema)]
pub struct RowRead {
    /// Its name.
    pub id: String,
    /// What it says, in our own words.
    pub says: String,
    /// The law's own number.
    pub cite: Option<String>,
    /// How far it is confirmed.
    pub mark: String,
    /// May it stop somebody, or does it only warn?
    pub confirmed: bool,
    /// Where it was read.
    pub sources: Vec<String>,
}

/// The law of a place.
#[derive(Debug, Serialize, ToSchema)]
pub struct LawRead {
    /// The place.
    pub place: String,
    /// Its rows, by name.
    pub rows: Vec<RowRead>,
}

/// Everything that a lot's label rests on.
#[derive(Debug, Serialize, ToSchema)]
pub struct WhyRead {
    /// The lot.
    pub code: String,
    /// Its date.
    pub use_by: Option<Day>,
    /// What is in it, by language.
    pub ingredients: BTreeMap<String, String>,
    /// Its allergens.
    pub allergens: Vec<String>,
    /// The links of each chain, by topic: date, cure, heat, release.
    pub because: BTreeMap<String, Vec<BecauseRead>>,
    /// The rows behind them.
    pub rows: Vec<RowRead>,
    /// Its readings, the oldest first.
    pub readings: Vec<ReadingRead>,
}

/// One link of "why this date?".
#[derive(Debug, Serialize, ToSchema)]
pub struct BecauseRead {
    /// In words for a cook.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// The rule.
    pub rule: String,
    /// Where the rule comes from.
    pub source: String,
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
    pub value: super::Number,
}

/// A source animal.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct AnimalRead {
    /// Its id.
    pub id: String,
    /// The farm's code.
    pub farm: String,
    /// Its species.
    pub species: String,
    /// The day it was killed.
    pub killed_on: Day,
    /// The abattoir's establishment number.
    pub abattoir: Option<String>,
    /// The abattoir's carcass number.
    pub carcass: Option<String>,
    /// Ear tag or tattoo.
    pub tag: Option<String>,
    /// How many.
    pub head: i32,
    /// The lots received of it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lots: Vec<String>,
}

/// Where a lot comes from.
#[derive(Debug, Serialize, ToSchema)]
pub struct OriginsRead {
    /// The lot.
    pub lot: String,
    /// Its source animals.
    pub animals: Vec<AnimalShare>,
    /// Its bought-in lots.
    pub bought: Vec<BoughtRead>,
    /// Is bought-in meat in it, that the shares leave out?
    pub share_excludes_bought_meat: bool,
}

/// A source animal with its share.
#[derive(Debug, Serialize, ToSchema)]
pub struct AnimalShare {
    /// The animal's id.
    pub id: String,
    /// The farm's code.
    pub farm: String,
    /// Its species.
    pub species: String,
    /// The day it was killed.
    pub killed_on: Day,
    /// The abattoir's establishment number.
    pub abattoir: Option<String>,
    /// The abattoir's carcass number.
    pub carcass: Option<String>,
    /// Ear tag or tattoo.
    pub tag: Option<String>,
    /// Which side, if it is one.
    pub side: Option<String>,
    /// Its share of the animals' weight; information only, any share is in scope.
    pub share: f64,
    /// One shortest path, from the lot as received.
    pub via: Vec<String>,
}

/// A bought-in lot in a lot's origins.
#[derive(Debug, Serialize, ToSchema)]
pub struct BoughtRead {
    /// Our code of it.
    pub lot: String,
    /// Its product.
    pub product: String,
    /// The supplier's code.
    pub supplier: Option<String>,
    /// The supplier's lot.
    pub supplier_lot: Option<String>,
    /// One shortest path, from the lot as received.
    pub via: Vec<String>,
}

/// Where a lot's weight went.
#[derive(Debug, Clone, Copy, Default, Serialize, ToSchema)]
pub struct Whereabouts {
    /// At birth.
    pub made_grams: Weight,
    /// Brought back by customers.
    pub taken_back_grams: Weight,
    /// Used in later steps.
    pub used_grams: Weight,
    /// Sold at the counter.
    pub sold_grams: Weight,
    /// How many whole packs were sold.
    pub sold_packs: i64,
    /// Served.
    pub served_grams: Weight,
    /// Discarded.
    pub discarded_grams: Weight,
    /// Shipped.
    pub shipped_grams: Weight,
    /// Returned to the supplier.
    pub returned_grams: Weight,
    /// Lost in drying.
    pub lost_grams: Weight,
    /// On hand.
    pub on_hand_grams: Weight,
    /// Unexplained: missing positive, surplus negative.
    pub unexplained_grams: Weight,
}

/// A lot that came of another.
#[derive(Debug, Serialize, ToSchema)]
pub struct DescendantRead {
    /// Its code.
    pub code: String,
    /// Its product.
    pub product: String,
    /// At birth.
    pub made_grams: Weight,
    /// Brought back by customers.
    pub taken_back_grams: Weight,
    /// Used in later steps.
    pub used_grams: Weight,
    /// Sold at the counter.
    pub sold_grams: Weight,
    /// How many whole packs were sold.
    pub sold_packs: i64,
    /// Served.
    pub served_grams: Weight,
    /// Discarded.
    pub discarded_grams: Weight,
    /// Shipped.
    pub shipped_grams: Weight,
    /// Returned to the supplier.
    pub returned_grams: Weight,
    /// Lost in drying.
    pub lost_grams: Weight,
    /// On hand.
    pub on_hand_grams: Weight,
    /// Unexplained: missing positive, surplus negative.
    pub unexplained_grams: Weight,
    /// Where most of what is left is.
    pub place: Option<String>,
    /// The share of what was asked about in it; null where that has no animal.
    pub share: Option<f64>,
    /// A word about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// All that came of something.
#[derive(Debug, Default, Serialize, ToSchema)]
pub struct DescendantsRead {
    /// Each lot, the oldest first.
    pub lots: Vec<DescendantRead>,
    /// Their sums.
    pub totals: Whereabouts,
}

/// What the counter is told.
#[derive(Debug, Serialize, ToSchema)]
pub struct ScanRead {
    /// One word.
    pub verdict: String,
    /// In a sentence.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// Everything that led to it.
    pub reasons: Vec<String>,
    /// The key of each reason.
    pub reason_keys: Vec<String>,
    /// The lot's code.
    pub lot: Option<String>,
    /// The pack's number.
    pub pack: Option<u32>,
    /// The product's code.
    pub product: Option<String>,
    /// The product's name in the kitchen's first language.
    pub name: Option<String>,
    /// Its last day.
    pub use_by: Option<Day>,
    /// Allergens in full.
    pub allergens: Vec<String>,
    /// Must it be cooked before it is eaten?
    pub raw: Option<bool>,
    /// Its price, in hundredths of the currency.
    pub price_minor: Option<i64>,
}

/// A page of lots.
#[derive(Debug, Serialize, ToSchema)]
pub struct LotsPage {
    /// The lots, newest first.
    pub lots: Vec<LotBrief>,
    /// Give this as `after` for the next page.
    pub next: Option<String>,
}

/// Animals found.
#[derive(Debug, Serialize, ToSchema)]
pub struct AnimalsPage {
    /// The animals, newest kill first.
    pub animals: Vec<AnimalRead>,
    /// The `after` of the next page, if there is one.
    pub next: Option<String>,
}

/// How the service is.
#[derive(Debug, Serialize, ToSchema)]
pub struct HealthRead {
    /// `ok`, or what keeps it from taking deeds.
    pub status: String,
    /// The program's version.
    pub version: String,
    /// Which engine the record is in.
    pub database: String,
    /// What time the service thinks it is.
    pub now: String,
    /// Why no deed is taken, if none is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
}

impl Default for Weight {
    fn default() -> Weight {
        Weight(domain::grams::Grams::ZERO)
    }
}
