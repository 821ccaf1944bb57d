//! What a device asks: one struct per call. An unknown field is an error.

use super::cures::{CureAsked, CuringSalt};
use super::readings::{LogAsked, ReadingsAsked};
use super::says::{ValueSays, fault};
use super::{
    AdditionWord, AllergenWord, Amount, By, Code, Day, DepartureKindWord, Instant, Line, Note,
    Number, PackagingWord, SideWord, SpeciesWord, StateWord, Weight,
};
use serde::{Deserialize, Deserializer, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// The id that the device made for its deed: a UUID.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(transparent)]
#[schema(value_type = String, format = "uuid")]
pub struct Id(pub Uuid);

impl<'de> Deserialize<'de> for Id {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        match Uuid::parse_str(&text) {
            Ok(id) if !id.is_nil() => Ok(Id(id)),
            _ => Err(fault(ValueSays::NoUuid { text })),
        }
    }
}

/// The whole of a request as canonical text: what "the same body" is compared by. Fields left out
/// and fields given as null are the same.
pub fn canonical(asked: &impl Serialize) -> String {
    fn strip(value: &mut serde_json::Value) {
        match value {
            serde_json::Value::Object(fields) => {
                fields.retain(|_, value| !value.is_null());
                fields.values_mut().for_each(strip);
            }
            serde_json::Value::Array(values) => values.iter_mut().for_each(strip),
            _ => {}
        }
    }
    let mut value = serde_json::to_value(asked).unwrap_or_default();
    strip(&mut value);
    value.to_string()
}

/// Something arrives.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReceiptAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Where it is put.
    pub place: Code,
    /// What it is. May be left out where the barcode holds the GTIN of a product in the list, or that
    /// of a case of it.
    pub product: Option<Code>,
    /// What it weighs. May be left out where the barcode holds a net weight.
    pub grams: Option<Weight>,
    /// How many packs, of even weight.
    pub pack_count: Option<u32>,
    /// Or each pack's grams.
    pub pack_grams: Option<Vec<Weight>>,
    /// How it is kept, if not as its product is.
    pub state: Option<StateWord>,
    /// The animal that it is of.
    pub animal: Option<AnimalAsked>,
    /// Or the supplier that it was bought from.
    pub bought: Option<BoughtAsked>,
    /// Or the carton's GS1 string, bracketed or as a scanner sends it.
    pub barcode: Option<Line>,
    /// What was paid for all of it, in hundredths of the currency.
    pub price_minor: Option<Amount>,
    /// Readings taken at the door.
    pub readings: Option<ReadingsAsked>,
    /// The delivery note.
    pub document: Option<Line>,
    /// It was taken in although a limit forbids it: the note says what happened.
    pub as_it_happened: Option<bool>,
    /// A word about it.
    pub note: Option<Note>,
}

/// A source animal, or birds and small animals bought together.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AnimalAsked {
    /// The farm's code.
    pub farm: Line,
    /// Its species.
    pub species: SpeciesWord,
    /// The day it was killed.
    pub killed_on: Day,
    /// The abattoir's establishment number.
    pub abattoir: Option<Line>,
    /// The abattoir's carcass number.
    pub carcass: Option<Line>,
    /// Which part of it this is.
    pub side: Option<SideWord>,
    /// Ear tag or tattoo.
    pub tag: Option<Line>,
    /// How many, where they are one source.
    pub head: Option<u32>,
}

/// A bought-in lot.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BoughtAsked {
    /// The supplier's code.
    pub supplier: Option<Line>,
    /// The supplier's lot, as printed.
    pub supplier_lot: Option<Line>,
    /// When it was packed.
    pub packed_on: Option<Day>,
    /// The supplier's own last day. A correction says with null that there is none.
    #[serde(default, deserialize_with = "told")]
    #[schema(value_type = Option<Day>)]
    pub use_by: Option<Option<Day>>,
    /// How strong it is, if it is a curing salt: read off this bag.
    pub curing_salt: Option<CuringSalt>,
    /// What the pack itself or the supplier's paper says.
    pub declares: Option<DeclaresAsked>,
}

/// A field that may be told to be nothing: null, which is not the same as left out.
fn told<'de, D, T>(from: D) -> Result<Option<Option<T>>, D::Error>
where
    D: Deserializer<'de>,
    T: Deserialize<'de>,
{
    Option::deserialize(from).map(Some)
}

/// What the pack itself or the supplier's paper says of a bought-in lot.
#[derive(Debug, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DeclaresAsked {
    /// Is it ready to eat? Food of animals that is sold ready needs this.
    pub ready: Option<bool>,
    /// For which food the last day is: chilled, or frozen. If left out: chilled.
    #[serde(default, deserialize_with = "told")]
    #[schema(value_type = Option<UseByIs>)]
    pub use_by_is: Option<Option<UseByIs>>,
    /// Days that it keeps once it is opened; the day of opening is the first. A correction says with null that none are told.
    #[serde(default, deserialize_with = "told")]
    #[schema(value_type = Option<u32>)]
    pub days_once_opened: Option<Option<u32>>,
    /// The allergens in it, all of them. If left out, those of the product list count; of a mixture, of something
    /// cured or cooked of which neither the pack nor the list tells anything, they are then not known.
    pub allergens: Option<Vec<AllergenWord>>,
    /// Its ingredients, by language: `{ "en": "tomato, salt" }`. If left out, the recipe of the product list
    /// counts as it stands when the lot is received.
    #[schema(value_type = Option<std::collections::BTreeMap<String, String>>)]
    pub ingredients: Option<std::collections::BTreeMap<Line, Note>>,
    /// The allergens that may be in it unasked.
    pub may_contain: Option<Vec<AllergenWord>>,
    /// How strong it is, if it is a curing salt: the same as `curing_salt`.
    pub strength: Option<CuringSalt>,
}

/// For which food a supplier's last day is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum UseByIs {
    /// The chilled one, or what needs no cold.
    Chilled,
    /// The frozen one: once thawed it keeps by its own days.
    Frozen,
}

/// A step at the bench.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StepAsked {
    /// Made by the device.
    pub id: Id,
    /// Which step. Kinds with a call of their own are refused here.
    pub kind: Line,
    /// When it ended; now if left out.
    pub at: Option<Instant>,
    /// When it began.
    pub began_at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Where.
    pub place: Code,
    /// What goes in.
    pub inputs: Vec<InputAsked>,
    /// What comes out.
    #[serde(default)]
    pub outputs: Vec<OutputAsked>,
    /// What was added without a lot of its own.
    pub added: Option<Vec<AddedAsked>>,
    /// Readings taken.
    pub readings: Option<ReadingsAsked>,
    /// Timed readings of the core: an overnight cook, a cooling.
    pub log: Option<Vec<LogAsked>>,
    /// The row of the table that the cook is held against: `us-1.8-roast`. If left out, the one that fits
    /// is found.
    pub heat_standard: Option<Line>,
    /// The way to cool that the log is held against, by its name or row. If left out, the one that fits
    /// is found.
    pub cooling_plan: Option<Line>,
    /// How fat the meat is, in per cent, where somebody knows: some tables of poultry go by it.
    pub fat_percent: Option<Number>,
    /// Is the meat stuffed? `false` where what went in with it lies around it or beside it. If left out, what is
    /// more than a seasoning is taken for a filling, and the middle needs what stuffed meat needs.
    #[schema(example = false)]
    pub stuffed: Option<bool>,
    /// What is to be said of its cure, beyond what the product says.
    pub cure: Option<CureAsked>,
    /// It was done although a limit or a stop forbids it: the note says what happened.
    pub as_it_happened: Option<bool>,
    /// A word about it.
    pub note: Option<Note>,
}

/// One input: a pack or the only pack, all of it or so many grams; or packs, whole.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct InputAsked {
    /// The lot's code, in any spelling; `CODE/N` names a pack.
    pub lot: Line,
    /// The pack's number.
    pub pack: Option<u32>,
    /// Or several packs, whole.
    pub packs: Option<Vec<u32>>,
    /// How much of the pack; all that is left if left out.
    pub grams: Option<Weight>,
}

/// One output.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct OutputAsked {
    /// Its product.
    pub product: Code,
    /// Its weight.
    pub grams: Weight,
    /// How many packs, of even weight.
    pub pack_count: Option<u32>,
    /// Or each pack's grams.
    pub pack_grams: Option<Vec<Weight>>,
    /// Where it goes, if not where the step is.
    pub place: Option<Code>,
    /// How it is kept, if not as its product is.
    pub state: Option<StateWord>,
    /// How it is packed, where air was taken out.
    pub packaging: Option<PackagingWord>,
    /// A word about the lot.
    pub note: Option<Note>,
}

/// Something added without a lot of its own.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AddedAsked {
    /// Water, ice, steam, or the difference of two scales.
    pub what: AdditionWord,
    /// How much.
    pub grams: Weight,
}

/// Packs go elsewhere, or are frozen or thawed.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MoveAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The lot.
    pub lot: Line,
    /// Which packs; all on hand if left out.
    pub packs: Option<Vec<u32>>,
    /// Where they go.
    pub to: Option<Code>,
    /// How they are kept from now on.
    pub state: Option<StateWord>,
    /// It was done although a limit or a stop forbids it: the note says what happened.
    pub as_it_happened: Option<bool>,
    /// A word about it.
    pub note: Option<Note>,
}

/// Packs leave.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DepartureAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// How.
    pub kind: DepartureKindWord,
    /// The lot.
    pub lot: Line,
    /// The pack.
    pub pack: Option<u32>,
    /// Or several packs, whole.
    pub packs: Option<Vec<u32>>,
    /// How much of the pack; all that is left if left out.
    pub grams: Option<Weight>,
    /// To whom.
    pub to: Option<Line>,
    /// Why.
    pub why: Option<Note>,
    /// It was done although a limit or a stop forbids it: the note says what happened.
    pub as_it_happened: Option<bool>,
    /// A word about it.
    pub note: Option<Note>,
}

/// A customer brings a pack back.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeBackAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The lot.
    pub lot: Line,
    /// The pack.
    pub pack: Option<u32>,
    /// How much of it; all that was sold if left out.
    pub grams: Option<Weight>,
    /// From whom.
    pub from: Option<Line>,
    /// Why.
    pub why: Note,
    /// A word about it.
    pub note: Option<Note>,
}

/// Packs are counted.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CountAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Where it was counted.
    pub place: Option<Code>,
    /// The lot.
    pub lot: Line,
    /// What was found.
    pub packs: Vec<FoundAsked>,
    /// More was in a pack than it ever held: the note says what happened.
    pub as_it_happened: Option<bool>,
    /// A word about it.
    pub note: Option<Note>,
}

/// What was found of one pack: its grams, or that it is missing.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FoundAsked {
    /// The pack's number.
    pub pack: u32,
    /// What it weighs.
    pub grams: Option<Weight>,
    /// Or that it is missing.
    pub missing: Option<bool>,
}

/// A bench or a machine is cleaned.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CleanDownAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Which bench or machine.
    pub place: Code,
    /// A word about it.
    pub note: Option<Note>,
}

/// A deed is voided.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct VoidAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Why.
    pub why: Note,
    /// A word about it.
    pub note: Option<Note>,
}

/// A wrong fact of a receipt, a step or a reading is corrected. What is left out stays.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CorrectionAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The receipt, the step or the reading that said it wrong.
    pub step: Id,
    /// Of a receipt: what is now known of the animal.
    pub animal: Option<AnimalCorrected>,
    /// Or of the supplier's lot, what its pack declares, how strong it is.
    pub bought: Option<BoughtAsked>,
    /// Of a receipt: what was paid for all of it, in hundredths of the currency.
    pub price_minor: Option<Amount>,
    /// What was read. What is left out stays.
    pub readings: Option<ReadingsAsked>,
    /// Of a step: the whole log as it is right, also where there was none.
    pub log: Option<Vec<LogAsked>>,
    /// Of a step: the row of the table that the cook is held against.
    pub heat_standard: Option<Line>,
    /// Of a step: the way to cool that the log is held against.
    pub cooling_plan: Option<Line>,
    /// Of a step: how fat the meat is, in per cent.
    pub fat_percent: Option<Number>,
    /// Of a step: whether the meat is stuffed.
    pub stuffed: Option<bool>,
    /// Tells what would change, and records nothing.
    #[serde(rename = "try")]
    pub only_try: Option<bool>,
    /// Why.
    pub why: Note,
    /// A word about it.
    pub note: Option<Note>,
}

/// What is now known to be otherwise of an animal.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AnimalCorrected {
    /// The farm's code.
    pub farm: Option<Line>,
    /// Its species.
    pub species: Option<SpeciesWord>,
    /// The day it was killed.
    pub killed_on: Option<Day>,
    /// The abattoir's establishment number.
    pub abattoir: Option<Line>,
    /// The abattoir's carcass number.
    pub carcass: Option<Line>,
    /// Which part of it the lot is.
    pub side: Option<SideWord>,
    /// Ear tag or tattoo.
    pub tag: Option<Line>,
    /// How many.
    pub head: Option<u32>,
}
