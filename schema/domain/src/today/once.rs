//! Things of the house that want a hand: printers, and the yearly drill.

use super::{About, DoSays, Hand, Known, Printer, Sort, TodaySays, When};
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
