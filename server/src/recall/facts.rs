//! What is told of an incident, and kept when it is closed. Texts stand in each language that we speak, weights in
//! grams, moments by the kitchen's clock with its offset.

mod people;

pub use people::{ActFacts, DisposalFacts, PersonFacts, SoldFacts};

use crate::wire::Weight;
use domain::grams::Grams;
use domain::incident::CountSums;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use utoipa::ToSchema;

/// The most lots that are named where it is told what an incident began with.
const MOST_STARTS: usize = 3;

/// A text in each language, by its tag.
pub type InEach = BTreeMap<String, String>;

/// An incident.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct IncidentFacts {
    /// The kitchen.
    pub kitchen: KitchenFacts,
    /// Its id.
    pub id: String,
    /// Its number.
    pub number: String,
    /// Who told it.
    pub told_by: String,
    /// When.
    pub told_at: String,
    /// What it is about.
    pub hazard: String,
    /// Is it a drill?
    pub drill: bool,
    /// Does it hold?
    pub holds: bool,
    /// Why.
    pub why: String,
    /// Everything recorded until then is in it.
    pub as_of: String,
    /// Is it closed?
    pub closed: bool,
    /// What was done when.
    pub milestones: Vec<MilestoneFacts>,
    /// The lots in scope, the oldest first.
    pub lots: Vec<LotFacts>,
    /// Where there is something to count, as one walks.
    pub places: Vec<PlaceFacts>,
    /// What became of it since the call.
    pub sums: SumsFacts,
    /// Where everything went that was ever made of it.
    pub went: WentFacts,
    /// How many packs there are to count.
    pub to_count: usize,
    /// How many of them nobody has counted.
    pub uncounted: usize,
    /// How many of them nobody has looked for.
    pub waiting: usize,
    /// What is deliberately outside.
    pub outside: Vec<OutsideFacts>,
    /// Who it came from: one step back.
    pub sources: Vec<PersonFacts>,
    /// Businesses that it went to: one step forward.
    pub customers: Vec<PersonFacts>,
    /// What was sold, by day and hour.
    pub sold: Vec<SoldFacts>,
    /// What was decided, told and answered.
    pub acts: Vec<ActFacts>,
    /// What became of what was held.
    pub disposals: Vec<DisposalFacts>,
    /// What places are called, by code.
    pub place_names: BTreeMap<String, String>,
    /// The rows of the place's rules that name a field of the record, by column.
    pub rows: BTreeMap<String, Vec<String>>,
    /// Of question and answer of the scope.
    pub scope_digest: String,
    /// Of the whole record, where it was asked.
    pub record_digest: Option<String>,
    /// The end of the record's chain as it was then: what shows later that nothing before it was altered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub anchor: Option<String>,
}

/// The kitchen of an incident.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct KitchenFacts {
    /// Its name.
    pub name: String,
    /// Its address.
    pub address: Option<String>,
    /// Its time zone.
    pub zone: String,
    /// The law of its place.
    pub profile: String,
    /// Its languages.
    pub languages: Vec<String>,
    /// Do its people read pounds?
    pub pounds: bool,
}

/// What was done when.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct MilestoneFacts {
    /// What.
    pub what: String,
    /// When.
    pub at: String,
    /// How many seconds after the call.
    pub seconds: i64,
}

/// What became of a weight since the call: book + back + surplus = missing + destroyed + returned + gone + left.
#[derive(Debug, Clone, Default, Serialize, Deserialize, ToSchema)]
pub struct SumsFacts {
    /// By the book when the incident began; of what was made or entered since, at its birth.
    pub book_grams: Weight,
    /// Not found.
    pub missing_grams: Weight,
    /// Found, and not in the book.
    pub surplus_grams: Weight,
    /// Brought back by customers.
    pub back_grams: Weight,
    /// Thrown away.
    pub destroyed_grams: Weight,
    /// Sent back to where it came from.
    pub returned_grams: Weight,
    /// Left otherwise since.
    pub gone_grams: Weight,
    /// Still there.
    pub left_grams: Weight,
}

impl From<CountSums> for SumsFacts {
    fn from(sums: CountSums) -> SumsFacts {
        SumsFacts {
            book_grams: Weight(sums.book),
            missing_grams: Weight(sums.missing),
            surplus_grams: Weight(sums.surplus),
            back_grams: Weight(sums.back),
            destroyed_grams: Weight(sums.destroyed),
            returned_grams: Weight(sums.returned),
            gone_grams: Weight(sums.gone),
            left_grams: Weight(sums.left),
        }
    }
}

/// Where everything went that was ever made.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
pub struct WentFacts {
    /// Made.
    pub made: Weight,
    /// Brought back by customers.
    pub taken_back: Weight,
    /// Used.
    pub used: Weight,
    /// Sold.
    pub sold: Weight,
    /// Whole packs sold.
    pub sold_packs: usize,
    /// Served.
    pub served: Weight,
    /// Thrown away.
    pub discarded: Weight,
    /// Shipped.
    pub shipped: Weight,
    /// Sent back.
    pub returned: Weight,
    /// Lost by drying.
    pub lost: Weight,
    /// Unexplained.
    pub unexplained: Weight,
    /// On hand.
    pub on_hand: Weight,
}

/// A lot in scope.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct LotFacts {
    /// Its code.
    pub code: String,
    /// For the eye.
    pub shown: String,
    /// Its product's code.
    pub product: String,
    /// Its name.
    pub names: InEach,
    /// A word about it.
    pub note: Option<String>,
    /// When it was made.
    pub made_at: String,
    /// What made it.
    pub made_kind: String,
    /// Which of the record's deeds that was: lots of one stand together.
    pub made_by: i32,
    /// Where, by code.
    pub made_place: Option<String>,
    /// Does the scope begin with it?
    pub is_start: bool,
    /// Why it is in scope.
    pub because: Vec<InEach>,
    /// Where its affected packs went.
    pub went: WentFacts,
    /// What became of them since the call.
    pub sums: SumsFacts,
    /// The packs to count, and those that came since.
    pub packs: Vec<PackFacts>,
    /// Where what is left is, by code.
    pub places: Vec<(String, Weight)>,
    /// When the last of it went.
    pub gone_at: Option<String>,
    /// The deeds that it went into.
    pub used_in: Vec<i32>,
    /// Where it came from, where it was received.
    pub from: Option<SourceFacts>,
    /// What went into it.
    pub of: Vec<InputFacts>,
    /// To whom it was shipped.
    pub shipped: Vec<ShippedFacts>,
}

/// A pack that is counted.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct PackFacts {
    /// Its number.
    pub pack: u32,
    /// Where it is by the book.
    pub place: String,
    /// Where it was found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub found_at: Option<String>,
    /// `waiting`, `seen`, `found`, `missing` or `gone`.
    pub state: String,
    /// Is a part of it gone, and a part left?
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub opened: bool,
    /// Its weight.
    pub sums: SumsFacts,
}

/// A place with something to count.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct PlaceFacts {
    /// Its code.
    pub place: String,
    /// Its name.
    pub name: String,
    /// How many packs lay there by the book.
    pub packs: usize,
    /// What they weighed.
    pub book_grams: Weight,
    /// How many of them nobody has counted.
    pub uncounted: usize,
}

/// Where a lot came from.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct SourceFacts {
    /// The name of the farm or supplier.
    pub name: String,
    /// Its address.
    pub address: Option<String>,
    /// Its own lot, or what the animal is known by.
    pub lot: Option<String>,
    /// The day of the kill.
    pub killed_on: Option<String>,
    /// The abattoir.
    pub abattoir: Option<String>,
    /// The paper that it came with.
    pub document: Option<String>,
}

/// What went into a lot.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct InputFacts {
    /// The lot.
    pub lot: String,
    /// What it is.
    pub names: InEach,
    /// How much of it.
    pub grams: Weight,
}

/// A shipment.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct ShippedFacts {
    /// To whom.
    pub to: String,
    /// When.
    pub at: String,
    /// How much.
    pub grams: Weight,
}

/// Something outside.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct OutsideFacts {
    /// The lot, for the eye; none where it is an animal.
    pub lot: Option<String>,
    /// Why.
    pub why: InEach,
}

impl IncidentFacts {
    /// What it began with, in a language: each lot with its code and where it came from; of many the first few.
    pub fn about(&self, language: &str) -> String {
        let starts = self.lots.iter().filter(|lot| lot.is_start);
        let told = |lot: &LotFacts| {
            let from = lot.from.as_ref().filter(|from| !from.name.is_empty());
            let from = from.map(|from| match &from.lot {
                Some(number) => format!(" ({}, {number})", from.name),
                None => format!(" ({})", from.name),
            });
            let name = lot.name(language);
            format!("{name}, {}{}", lot.shown, from.unwrap_or_default())
        };
        let mut about: Vec<String> = starts.clone().take(MOST_STARTS).map(told).collect();
        if starts.count() > MOST_STARTS {
            about.push("…".to_owned());
        }
        about.join("; ")
    }

    /// What is held and still there, in the order in which one walks: a lot with its packs at each place. Nothing of a
    /// drill, or of a recall that is closed.
    pub fn held_by_place(&self) -> Vec<(&LotFacts, Vec<u32>)> {
        if self.closed || self.drill || !self.holds {
            return Vec::new();
        }
        let at = |place| self.lots.iter().map(move |lot| (lot, lot.left_at(place)));
        let held = self.places.iter().flat_map(|place| at(&place.place));
        held.filter(|(_, packs)| !packs.is_empty()).collect()
    }

    /// What a place is called.
    pub fn place<'a>(&'a self, code: &'a str) -> &'a str {
        self.place_names.get(code).map_or(code, String::as_str)
    }
}

impl LotFacts {
    /// Its packs at a place of which something is left, by number.
    pub fn left_at(&self, place: &str) -> Vec<u32> {
        let here = self.packs.iter().filter(|pack| pack.place == place);
        let left = here.filter(|pack| pack.sums.left_grams.0 > Grams::ZERO);
        left.map(|pack| pack.pack).collect()
    }

    /// Its name in a language.
    pub fn name(&self, language: &str) -> String {
        let name = in_language(&self.names, language, &self.product);
        match &self.note {
            Some(note) => format!("{name}, {note}"),
            None => name,
        }
    }

    /// How many of its packs nobody has counted.
    pub fn uncounted(&self) -> usize {
        let of = self.packs.iter();
        of.filter(|pack| is_uncounted(pack)).count()
    }
}

/// Is a pack there by the book, and has nobody counted it?
pub fn is_uncounted(pack: &PackFacts) -> bool {
    let open = matches!(pack.state.as_str(), "waiting" | "seen");
    open && pack.sums.book_grams.0 > Grams::ZERO
}

/// A text in a language, else in any.
pub fn in_language(texts: &InEach, language: &str, otherwise: &str) -> String {
    let text = texts.get(language).or_else(|| texts.values().next());
    text.map_or_else(|| otherwise.to_owned(), Clone::clone)
}
