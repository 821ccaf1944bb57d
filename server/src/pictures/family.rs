//! What the picture of a family shows of each lot.

use chrono::NaiveDateTime;
use domain::grams::Grams;
use domain::words::{Account, DeedKind};

/// Some lots that are drawn together.
#[derive(Debug, Clone, Default)]
pub struct Family {
    /// The lots, in any order.
    pub lots: Vec<Drawn>,
    /// Where the picture ends, by the kitchen's clock: the end of the day on which it is asked.
    pub until: NaiveDateTime,
}

/// A lot as it is drawn. Times are those of the kitchen's clock.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Drawn {
    /// Its code, for the eye.
    pub code: String,
    /// What it is.
    pub name: String,
    /// When it was made.
    pub made_at: NaiveDateTime,
    /// What made it.
    pub step: DeedKind,
    /// The key of that deed: lots of one step stand together.
    pub made_by: i32,
    /// Is it one of those that the picture begins with?
    pub is_start: bool,
    /// Its weight at birth.
    pub made: Grams,
    /// What is left of it.
    pub on_hand: Grams,
    /// Of that, what may not leave.
    pub held: Grams,
    /// When the last of it went, where nothing is left.
    pub gone_at: Option<NaiveDateTime>,
    /// Where it is, the place of most first.
    pub places: Vec<(String, Grams)>,
    /// Where it went.
    pub went: Vec<Account>,
    /// The keys of the steps that it went into.
    pub used_in: Vec<i32>,
}
