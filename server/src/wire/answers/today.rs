//! What needs a hand, as it is answered.

use super::instant;
use crate::read::today::Today;
use domain::says::Says;
use domain::today::{About, Hand};
use serde::Serialize;
use utoipa::ToSchema;
use words::Speech;

/// What needs a hand today.
#[derive(Debug, Serialize, ToSchema)]
pub struct TodayRead {
    /// The moment for which it was worked out.
    pub now: String,
    /// The things, in the order of the hour.
    pub hands: Vec<HandRead>,
    /// How many there are in all.
    pub all: usize,
    /// `after` of the next part, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<usize>,
    /// Is the kitchen set up, and has anything come in?
    pub begun: bool,
}

/// One thing that needs a hand.
#[derive(Debug, Serialize, ToSchema)]
pub struct HandRead {
    /// `now`, `today` or `closing`.
    pub when: String,
    /// What sort of thing it is: `recall`, `alarm`, `crossed`, `beyond`, `cooling`, `printer`, `copies`, `wrong-label`, `stop`, `past`, `last-day`,
    /// `missing`, `reading`, `piece`, `release`, `drill`, `thaw`, `clean-down`.
    pub sort: String,
    /// The lot's code, where it is about one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lot: Option<String>,
    /// The packs of it that are meant.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub packs: Vec<u32>,
    /// The place's code, where it is about one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// What it is.
    pub says: String,
    /// The key of `says`.
    pub key: String,
    /// What is known of it, and what may still lawfully be done.
    pub more: Vec<String>,
    /// What to do.
    pub act: String,
    /// The key of `act`.
    pub act_key: String,
}

/// What needs a hand, for a reader.
pub fn today_read(today: &Today, speech: &Speech) -> TodayRead {
    TodayRead {
        now: instant(today.now.naive_utc(), today.zone),
        hands: today
            .hands
            .iter()
            .map(|hand| hand_read(hand, speech))
            .collect(),
        all: today.all,
        next: today.next,
        begun: today.begun.is_done(),
    }
}

fn hand_read(hand: &Hand, speech: &Speech) -> HandRead {
    let say = |says: &Says| speech.say(says);
    let (lot, packs, place) = match &hand.about {
        About::Lot(code, packs) => (Some(code.to_string()), packs.clone(), None),
        About::Piece(code, _) => (Some(code.to_string()), Vec::new(), None),
        About::Place(place) => (None, Vec::new(), Some(place.clone())),
        About::Printing | About::Drills | About::Copies | About::Recall(_) => {
            (None, Vec::new(), None)
        }
    };
    HandRead {
        when: hand.when.as_str().to_owned(),
        sort: hand.sort.as_str().to_owned(),
        lot,
        packs,
        place,
        says: say(&hand.says),
        key: hand.says.key().to_owned(),
        more: hand.more.iter().map(say).collect(),
        act: say(&hand.act),
        act_key: hand.act.key().to_owned(),
    }
}
