//! Things of the house that want a hand: printers, the yearly drill, what is to thaw for tomorrow, copies of the record.

use super::{About, DoSays, Hand, Known, OpenRecall, Printer, Sort, TodaySays, When};
use crate::grams::Grams;
use crate::says::Says;
use chrono::NaiveDate;

/// A drill of a recall, once it is due.
pub(super) fn of_drill(known: &Known<'_>, by: NaiveDate, last: Option<NaiveDate>) -> Option<Hand> {
    let last = last.map_or(TodaySays::NoDrill, |day| TodaySays::LastDrill { day });
    (by <= known.today).then(|| Hand {
        when: When::Today,
        sort: Sort::Drill,
        about: About::Drills,
        says: TodaySays::Drill.into(),
        more: vec![last.into()],
        act: DoSays::BeginDrill.into(),
    })
}

/// A recall that is open: its next act is on its page, until somebody closes it.
pub(super) fn of_recall(recall: &OpenRecall) -> Hand {
    let number = recall.number.clone();
    let (packs, weight) = (recall.packs, recall.grams);
    Hand {
        when: When::Now,
        sort: Sort::Recall,
        about: About::Recall(number.clone()),
        says: TodaySays::Recall { number }.into(),
        more: match packs {
            0 => vec![TodaySays::RecallEnd.into()],
            packs => vec![TodaySays::RecallHolds { packs, weight }.into()],
        },
        act: match packs {
            0 => DoSays::CloseRecall.into(),
            _ => DoSays::CountRecall.into(),
        },
    }
}

/// A printer that is in trouble, or of which nobody knows what came out.
pub(super) fn of_printer(printer: &Printer) -> Option<Hand> {
    let (name, waiting, unsure) = (printer.name.clone(), printer.waiting, printer.unsure);
    let waits = (waiting > 0).then(|| TodaySays::LabelsWait { labels: waiting }.into());
    let (says, more, act) = match (&printer.trouble, unsure) {
        (None, 0) => return None,
        (None, labels) => (
            TodaySays::Unsure { name, labels },
            waits.into_iter().collect(),
            DoSays::SayWhatCame,
        ),
        (Some(trouble), _) => (
            TodaySays::Printer { name },
            std::iter::once(trouble.clone()).chain(waits).collect(),
            DoSays::See,
        ),
    };
    Some(Hand {
        when: When::Now,
        sort: Sort::Printer,
        about: About::Printing,
        says: says.into(),
        more,
        act: act.into(),
    })
}

/// What is frozen, where most of it lies.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Frozen {
    /// The place's code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// How many packs lie there frozen.
    pub packs: usize,
    /// How much that is.
    pub grams: Grams,
}

/// Before closing somebody asks what has to thaw for tomorrow; it leaves when something was thawed.
pub(super) fn of_thaw(frozen: &Frozen) -> Hand {
    Hand {
        when: When::Closing,
        sort: Sort::Thaw,
        about: About::Place(frozen.code.clone()),
        says: TodaySays::Thaw.into(),
        more: vec![
            TodaySays::FrozenThere {
                packs: frozen.packs,
                weight: frozen.grams,
                place: frozen.name.clone(),
            }
            .into(),
            TodaySays::ThawCold.into(),
        ],
        act: DoSays::Choose.into(),
    }
}

/// How it stands with the copies of the record.
#[derive(Debug, Clone, Default)]
pub struct CopiesDay {
    /// The day of the last good copy.
    pub last: Option<NaiveDate>,
    /// Is the next one late?
    pub is_late: bool,
    /// Why the last try made none.
    pub failed: Option<Says>,
    /// The day on which a copy was last tried and was good.
    pub tried: Option<NaiveDate>,
    /// Has nobody tried one for too long?
    pub is_untried: bool,
    /// Why the last one that was tried is not good.
    pub tried_in_vain: Option<Says>,
    /// Was the record found elsewhere than it was last worked in, these days?
    pub moved: bool,
}

/// Copies that are late, failed, were never tried or were tried in vain; a record that was found elsewhere.
pub(super) fn of_copies(of: &CopiesDay) -> Vec<Hand> {
    let last = || match of.last {
        Some(day) => Says::from(TodaySays::LastCopy { day }),
        None => TodaySays::NoCopy.into(),
    };
    let tried = || match of.tried {
        Some(day) => Says::from(TodaySays::LastTried { day }),
        None => TodaySays::NeverTried.into(),
    };
    let hand = |when, says: TodaySays, more| Hand {
        when,
        sort: Sort::Copies,
        about: About::Copies,
        says: says.into(),
        more,
        act: DoSays::See.into(),
    };
    let mut hands = Vec::new();
    if of.moved {
        let more = vec![TodaySays::MovedDo.into()];
        hands.push(hand(When::Now, TodaySays::Moved, more));
    }
    if of.is_late || of.failed.is_some() {
        let says = match of.is_late {
            true => TodaySays::CopyLate,
            false => TodaySays::CopyFailed,
        };
        let why = of.failed.iter().cloned();
        hands.push(hand(When::Now, says, why.chain([last()]).collect()));
    }
    match &of.tried_in_vain {
        Some(why) => hands.push(hand(
            When::Now,
            TodaySays::CopyNoGood,
            vec![why.clone(), tried()],
        )),
        None if of.is_untried => {
            hands.push(hand(When::Today, TodaySays::CopyUntried, vec![tried()]))
        }
        None => {}
    }
    hands
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(of: &CopiesDay) -> Vec<(When, String, usize)> {
        let hands = of_copies(of).into_iter();
        hands
            .map(|hand| (hand.when, hand.says.key().to_owned(), hand.more.len()))
            .collect()
    }

    #[test]
    fn copies_on_time_want_no_hand_and_late_or_failed_ones_one() {
        let day = NaiveDate::from_ymd_opt(2026, 6, 25);
        let well = CopiesDay {
            last: day,
            tried: day,
            ..CopiesDay::default()
        };
        assert!(told(&well).is_empty());
        let why = || Some(Says::from(TodaySays::NoCopy));
        let failed = CopiesDay {
            failed: why(),
            ..well.clone()
        };
        assert_eq!(told(&failed), [(When::Now, "today-copy-failed".into(), 2)]);
        let late = CopiesDay {
            is_late: true,
            ..failed
        };
        assert_eq!(told(&late), [(When::Now, "today-copy-late".into(), 2)]);
        let untried = CopiesDay {
            is_untried: true,
            ..well.clone()
        };
        assert_eq!(
            told(&untried),
            [(When::Today, "today-copy-untried".into(), 1)]
        );
        let vain = CopiesDay {
            tried_in_vain: why(),
            moved: true,
            ..untried
        };
        let keys: Vec<String> = told(&vain).into_iter().map(|(_, key, _)| key).collect();
        assert_eq!(keys, ["today-moved", "today-copy-no-good"]);
    }
}
