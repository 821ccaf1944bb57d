//! What a deed answers, and a lot in short.

use super::instant;
use super::stop::StopRead;
use crate::wire::Day;
use crate::wire::Weight;
use chrono_tz::Tz;
use domain::lot::Brief;
use domain::says::Says;
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;

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
    /// How many packs were made of it.
    pub pack_count: u32,
    /// Where most of what is left is.
    pub place: Option<String>,
    /// Every place where some of it is left, that of most first.
    pub places: Vec<String>,
    /// When it was made.
    pub made_at: String,
    /// A word about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// What this deed placed in its way.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub stops: Vec<StopRead>,
}

impl LotBrief {
    /// A lot in short, as a kitchen of that time zone sees it.
    pub fn of(brief: &Brief, zone: Tz) -> LotBrief {
        LotBrief {
            code: brief.code.to_string(),
            shown: brief.code.shown(),
            product: brief.product.clone(),
            grams: Weight(brief.made),
            on_hand_grams: Weight(brief.on_hand),
            use_by: brief.use_by.map(Day),
            pack_count: brief.pack_count,
            place: brief.place().cloned(),
            places: brief.places.clone(),
            made_at: instant(brief.made_at.naive_utc(), zone),
            note: brief.note.clone(),
            stops: Vec::new(),
        }
    }
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
    /// Where the labels of what was made are; of a move that changes how packs are kept, the new labels of those.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub labels: Option<String>,
    /// Nothing is wrong, but look: in the caller's language.
    pub warnings: Vec<String>,
    /// The key of each warning: it is the same in every language.
    pub warning_keys: Vec<String>,
    /// Of a correction: what it changes, lot by lot.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub changes: Vec<ChangeRead>,
    /// It was only asked what would change: nothing is recorded.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub tried: bool,
    /// What becomes of the two.
    #[serde(skip)]
    pub said: Vec<Says>,
}

/// What a correction changes of a lot. What is not named stays.
#[derive(Debug, Clone, Default, Serialize, ToSchema)]
pub struct ChangeRead {
    /// Its code, which stays.
    pub lot: String,
    /// Its product.
    pub product: String,
    /// Raw, treated or ready.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub condition: Option<Turned<String>>,
    /// Its allergens.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub allergens: Option<Turned<Vec<String>>>,
    /// What may be in it unasked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub may_contain: Option<Turned<Vec<String>>>,
    /// Its ingredients, by language: as its pack declares them, or as they follow from what went in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ingredients: Option<Turned<BTreeMap<String, String>>>,
    /// The animals in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub species: Option<Turned<Vec<String>>>,
    /// The date that its packs were made with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub use_by: Option<Turned<Option<String>>>,
    /// Stops that appear, in words.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub stops: Vec<String>,
    /// Stops that end, in words.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub ended: Vec<String>,
    /// Where its labels are as they have to be now, where something changed that stands on one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub labels: Option<String>,
}

/// What was, and what is.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Turned<T> {
    /// What was believed.
    pub was: T,
    /// What is right.
    pub now: T,
}

impl<T: PartialEq> Turned<T> {
    /// Where the two differ.
    pub fn between(was: T, now: T) -> Option<Turned<T>> {
        (was != now).then_some(Turned { was, now })
    }
}
