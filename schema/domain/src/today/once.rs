//! Things of the house that want a hand: printers, the yearly drill, and what is to thaw for tomorrow.

use super::{About, DoSays, Hand, Known, Printer, Sort, TodaySays, When};
use crate::grams::Grams;
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
