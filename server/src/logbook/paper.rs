//! A log for paper: a table of what belongs together, under headings that stand again on each page.

use super::Telling;
use super::says::LogWords;
use domain::log::{Cell, Entry, Group};
use domain::moment::on_clock;
use domain::says::{Arg, Says};
use domain::words::Profile;
use labels::report::{Line, Paper, Report, Sort};
use labels::{PdfError, report};
use words::capital;

/// The file.
///
/// # Errors
/// The PDF library was not content.
pub fn paper(telling: &Telling<'_>) -> Result<Vec<u8>, PdfError> {
    let report = laid(telling);
    report::pdf(&report, |page, of| {
        let (page, of) = (Arg::from(page), Arg::from(of));
        telling.speech.say(&LogWords::PageOf { page, of }.into())
    })
}

fn laid(telling: &Telling<'_>) -> Report {
    let page = telling.page;
    let groups: Vec<Group> = Group::ALL
        .iter()
        .filter(|group| {
            let columns = page.log.kind.columns();
            columns.iter().any(|column| column.group() == **group)
        })
        .copied()
        .collect();
    let say = |says: Says| telling.speech.say(&says);
    let share = |group: &Group| match group {
        Group::When => 17,
        Group::What => 24,
        Group::Whence => 30,
        Group::Checks => 26,
        Group::Whereto => 16,
        Group::Remarks => 26,
    };
    Report {
        title: format!("{} {}", page.log.kind, page.window.from.date_naive()),
        heading: telling.name(page.log.kind),
        under: under(telling),
        code: page.anchor.clone(),
        paper: match page.kitchen().entry.profile.0 {
            Profile::Us | Profile::Ca => Paper::Letter,
            Profile::Eu | Profile::Uk => Paper::A4,
        },
        columns: groups
            .iter()
            .map(|group| (capital(&say(group.says())), share(group)))
            .collect(),
        rows: page
            .log
            .entries
            .iter()
            .map(|entry| {
                let of = groups.iter().map(|group| lines(telling, entry, *group));
                of.collect()
            })
            .collect(),
        empty: say(LogWords::Nothing.into()),
    }
}

/// What stands under the heading: the kitchen, the window and what narrows it, what makes the log due, who asked.
pub fn under(telling: &Telling<'_>) -> Vec<String> {
    let page = telling.page;
    let kitchen = &page.kitchen().entry;
    let zone = page.kitchen().zone;
    let say = |says: LogWords| telling.speech.say(&says.into());
    let mut lines = vec![match &kitchen.address {
        Some(address) => format!("{}, {}", kitchen.name.0, address.0.replace('\n', ", ")),
        None => kitchen.name.0.clone(),
    }];
    let (first, last) = page.window.days(zone);
    lines.push(match page.window.is_of_days(zone) {
        true => say(LogWords::Days { first, last }),
        false => say(LogWords::Between {
            from: on_clock(page.window.from, zone),
            until: on_clock(page.window.until, zone),
        }),
    });
    let mut only: Vec<String> = Vec::new();
    if let Some(code) = &page.window.place_code {
        let place = page.standing.lists.place(code).to_owned();
        only.push(say(LogWords::OnlyPlace { place }));
    }
    if let Some(by) = page.window.by.clone() {
        only.push(say(LogWords::OnlyBy { by }));
    }
    if let Some((_, lot)) = &page.window.lot {
        let lot = lot.shown();
        only.push(say(LogWords::OnlyLot { lot }));
    }
    if !only.is_empty() {
        lines.push(only.join(" "));
    }
    lines.push(say(LogWords::Counted {
        entries: page.log.entries.len(),
        holes: page.log.holes(),
    }));
    lines.push(say(LogWords::AskedBy {
        by: page.asked_by.clone(),
    }));
    if let Some(line) = page.anchor.clone() {
        lines.push(say(LogWords::Anchor { line }));
    }
    lines
}

/// The lines of a group of an entry. A column that holds nothing, and has to hold nothing, takes no room.
pub fn lines(telling: &Telling<'_>, entry: &Entry, group: Group) -> Vec<Line> {
    let of = entry
        .cells
        .iter()
        .filter(|cell| cell.column.group() == group);
    let mut lines: Vec<Line> = of.flat_map(|cell| of_cell(telling, cell)).collect();
    if group == Group::When {
        let remarks = remarks(telling, entry).into_iter();
        lines.extend(remarks.map(|text| Line {
            label: None,
            text,
            sort: Sort::Mark,
        }));
    }
    lines
}

fn of_cell(telling: &Telling<'_>, cell: &Cell) -> Vec<Line> {
    let mut lines = Vec::new();
    if !cell.values.is_empty() {
        let values = cell.values.iter().map(|value| telling.with_rows(value));
        let values: Vec<String> = values.collect();
        lines.push(Line {
            label: Some(telling.heading(cell)),
            text: super::joined(&values),
            sort: Sort::Plain,
        });
    }
    lines.extend(cell.holes.iter().map(|hole| Line {
        label: Some(telling.heading(cell)),
        text: telling.hole(hole),
        sort: Sort::Hole,
    }));
    lines
}

/// What is to be known of an entry besides its cells: that it was voided, corrected, or entered later.
pub fn remarks(telling: &Telling<'_>, entry: &Entry) -> Vec<String> {
    let zone = telling.page.kitchen().zone;
    let say = |says: LogWords| telling.speech.say(&says.into());
    let mut told = Vec::new();
    if let Some(undone) = &entry.undone {
        told.push(say(LogWords::Voided {
            by: undone.by.clone(),
            at: on_clock(undone.at, zone),
            why: undone.why.clone(),
        }));
    }
    told.extend(entry.corrected.iter().map(|of| {
        say(LogWords::Corrected {
            by: of.by.clone(),
            at: on_clock(of.at, zone),
        })
    }));
    if let Some(entered) = entry.entered {
        let at = on_clock(entered, zone);
        told.push(say(LogWords::Entered { at }));
    }
    told
}
