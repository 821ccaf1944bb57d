//! Today: what needs a hand, in the order of the hour, each thing with what to do about it. Done things
//! are not in it: they are worked out of the record, so that they leave by themselves.

mod beyond;
mod cooling;
mod failed;
mod food;
mod missing;
mod once;
mod piece;
mod says;
#[cfg(test)]
mod tests;

pub use beyond::suffers;
pub use cooling::CoolingLot;
pub use missing::MissingPacks;
pub use once::CopiesDay;
pub use says::{DoSays, TodaySays, WhenSays};

pub use once::Frozen;
use once::{of_copies, of_drill, of_printer, of_recall, of_thaw};

use crate::code::LotCode;
use crate::cure_room::Task;
use crate::family::{Family, LyingView, PieceView};
use crate::grams::Grams;
use crate::heat::Broken;
use crate::lot::PlaceId;
use crate::says::Says;
use chrono::{DateTime, NaiveDate, NaiveDateTime, Utc};
use std::collections::BTreeMap;

/// When a thing wants its hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum When {
    /// Before anything else.
    Now,
    /// In the course of the day.
    Today,
    /// Before the kitchen closes.
    Closing,
}

impl When {
    /// As a program reads it.
    pub fn as_str(self) -> &'static str {
        match self {
            When::Now => "now",
            When::Today => "today",
            When::Closing => "closing",
        }
    }

    /// As a cook says it.
    pub fn says(self) -> Says {
        match self {
            When::Now => WhenSays::Now.into(),
            When::Today => WhenSays::Today.into(),
            When::Closing => WhenSays::Closing.into(),
        }
    }
}

/// What sort of thing it is; the order is that of one hour: what can make somebody ill comes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sort {
    /// A recall is open.
    Recall,
    /// A piece of the cure room is not as it should be.
    Alarm,
    /// Raw and ready met without a clean-down between.
    Crossed,
    /// A place was not as cold, or as warm, as it has to be when it was read last.
    Beyond,
    /// It came out of the heat and has to be cold by an hour.
    Cooling,
    /// Something is stopped, and a person decides.
    Stop,
    /// A label says what is no longer true.
    WrongLabel,
    /// Past its day.
    Past,
    /// Its last day.
    LastDay,
    /// A printer is in trouble, or nobody knows what came out of it.
    Printer,
    /// There is no copy of the record where there should be one, or it was found elsewhere than it was.
    Copies,
    /// A count did not find it.
    Missing,
    /// A place was not read today.
    Reading,
    /// A piece is to be turned, moved or weighed.
    Piece,
    /// A piece may be released.
    Release,
    /// A drill of a recall is due.
    Drill,
    /// Something may have to thaw for tomorrow.
    Thaw,
    /// A bench or machine is to be cleaned.
    CleanDown,
}

impl Sort {
    /// As a program reads it.
    pub fn as_str(self) -> &'static str {
        match self {
            Sort::Recall => "recall",
            Sort::Alarm => "alarm",
            Sort::Crossed => "crossed",
            Sort::Beyond => "beyond",
            Sort::Printer => "printer",
            Sort::Copies => "copies",
            Sort::WrongLabel => "wrong-label",
            Sort::Stop => "stop",
            Sort::Past => "past",
            Sort::LastDay => "last-day",
            Sort::Cooling => "cooling",
            Sort::Missing => "missing",
            Sort::Reading => "reading",
            Sort::Piece => "piece",
            Sort::Release => "release",
            Sort::Drill => "drill",
            Sort::Thaw => "thaw",
            Sort::CleanDown => "clean-down",
        }
    }
}

/// What a thing is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum About {
    /// A lot, and packs of it.
    Lot(LotCode, Vec<u32>),
    /// A piece of the cure room, and what is to be done with it.
    Piece(LotCode, Task),
    /// A place, by its code.
    Place(String),
    /// Printing.
    Printing,
    /// Drills of a recall.
    Drills,
    /// A recall that is open, by its number.
    Recall(String),
    /// Copies of the record.
    Copies,
}

/// One thing that needs a hand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hand {
    /// When.
    pub when: When,
    /// What sort of thing it is.
    pub sort: Sort,
    /// What it is about.
    pub about: About,
    /// What it is.
    pub says: Says,
    /// What is known of it, and what may still lawfully be done.
    pub more: Vec<Says>,
    /// What to do.
    pub act: Says,
}

/// A recall that nobody has closed yet.
#[derive(Debug, Clone)]
pub struct OpenRecall {
    /// Its number.
    pub number: String,
    /// The packs on hand that it holds, and what they weigh.
    pub packs: usize,
    /// What they weigh.
    pub grams: Grams,
}

/// A printer's trouble.
#[derive(Debug, Clone)]
pub struct Printer {
    /// What people call it.
    pub name: String,
    /// What is wrong there.
    pub trouble: Option<Says>,
    /// Labels of which nobody knows whether they came out.
    pub unsure: usize,
    /// Labels that wait.
    pub waiting: usize,
}

/// A place as it was worked at, cleaned and read.
#[derive(Debug, Clone, Default)]
pub struct PlaceDay {
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// Has it limits of warmth?
    pub has_limits: bool,
    /// The last day on which its warmth was read.
    pub read: Option<NaiveDate>,
    /// The limit that its last reading broke, and when that was, by the kitchen's clock.
    pub beyond: Option<(Broken, NaiveDateTime)>,
    /// Is it one that is cleaned down?
    pub is_cleaned: bool,
    /// When raw food of animals was last made there since the last clean-down.
    pub raw: Option<DateTime<Utc>>,
    /// When food that is ready to eat was last made there since the last clean-down.
    pub ready: Option<DateTime<Utc>>,
}

/// What is known of a day.
pub struct Known<'a> {
    /// The day.
    pub today: NaiveDate,
    /// The moment.
    pub now: DateTime<Utc>,
    /// The lots that may need a hand: stopped ones, those at their day, the pieces of the cure room.
    pub family: &'a Family,
    /// The pieces.
    pub pieces: &'a [PieceView],
    /// What came out of the heat a while ago, with what was read of it since.
    pub cooling: &'a [CoolingLot],
    /// What lies in a cure by a calendar.
    pub lying: &'a [LyingView],
    /// What places are called, by key.
    pub places: &'a BTreeMap<PlaceId, String>,
    /// Recalls that are open, drills apart.
    pub recalls: &'a [OpenRecall],
    /// The printers.
    pub printers: &'a [Printer],
    /// The places.
    pub days: &'a [PlaceDay],
    /// The last day for the next drill, and the day of the last one, if there was one.
    pub drill: Option<(NaiveDate, Option<NaiveDate>)>,
    /// What is frozen, as long as nothing was thawed on this day.
    pub frozen: Option<Frozen>,
    /// What counts of these days did not find.
    pub missing: &'a [MissingPacks],
    /// How it stands with the copies of the record.
    pub copies: &'a CopiesDay,
}

/// Everything that needs a hand, in the order of the hour.
pub fn hands(known: &Known<'_>) -> Vec<Hand> {
    let mut hands = piece::hands(known);
    hands.extend(known.recalls.iter().map(of_recall));
    hands.extend(known.printers.iter().filter_map(of_printer));
    hands.extend(of_copies(known.copies));
    hands.extend(food::hands(known));
    hands.extend(
        known
            .cooling
            .iter()
            .filter_map(|of| cooling::hand(known, of)),
    );
    hands.extend(known.missing.iter().map(missing::hand));
    hands.extend(known.drill.and_then(|(by, last)| of_drill(known, by, last)));
    hands.extend(known.days.iter().flat_map(|place| of_place(known, place)));
    let frozen = known.frozen.as_ref();
    let frozen = frozen.and_then(|frozen| food::may_thaw(known, frozen));
    hands.extend(frozen.as_ref().map(of_thaw));
    // Within a sort they stay as they came: pieces the longest in salt first, food by its day.
    hands.sort_by_key(|hand| (hand.when, hand.sort));
    hands
}

fn of_place(known: &Known<'_>, place: &PlaceDay) -> Vec<Hand> {
    let mut hands = Vec::new();
    let about = || About::Place(place.code.clone());
    let name = || place.name.clone();
    let beyond = beyond::hand(known, place);
    // Who reads it again has read it.
    if beyond.is_none() && place.has_limits && place.read.is_none_or(|day| day < known.today) {
        hands.push(Hand {
            when: When::Today,
            sort: Sort::Reading,
            about: about(),
            says: TodaySays::NotRead { place: name() }.into(),
            more: vec![match place.read {
                Some(day) => TodaySays::ReadOn { day }.into(),
                None => TodaySays::NeverRead.into(),
            }],
            act: DoSays::Read.into(),
        });
    }
    hands.extend(beyond);
    if !place.is_cleaned {
        return hands;
    }
    match (place.raw, place.ready) {
        // Both since one clean-down: whichever came first, a person looks at what is ready.
        (Some(_), Some(_)) => hands.push(Hand {
            when: When::Now,
            sort: Sort::Crossed,
            about: about(),
            says: TodaySays::Crossed { place: name() }.into(),
            more: vec![TodaySays::CrossedDo.into()],
            act: DoSays::Cleaned.into(),
        }),
        (Some(_), None) => hands.push(Hand {
            when: When::Closing,
            sort: Sort::CleanDown,
            about: about(),
            says: TodaySays::CleanDown { place: name() }.into(),
            more: vec![TodaySays::RawThere.into()],
            act: DoSays::Cleaned.into(),
        }),
        (None, Some(_)) => hands.push(Hand {
            when: When::Closing,
            sort: Sort::CleanDown,
            about: about(),
            says: TodaySays::CleanDown { place: name() }.into(),
            more: vec![TodaySays::ReadyThere.into()],
            act: DoSays::Cleaned.into(),
        }),
        (None, None) => {}
    }
    hands
}
