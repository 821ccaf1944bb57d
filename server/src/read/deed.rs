//! Any deed on record, with what voided or corrected it.

use crate::app::App;
use crate::error::Result;
use crate::wire::answers::shown_id;
use crate::wire::answers::{DeedRead, VoidedRead, instant};
use store::corrections::ever as corrected;
use store::deeds::{self, DeedRow};
use store::{Conn, entries, lots, sources};

/// A deed in full.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &App, conn: &mut Conn, deed: &DeedRow) -> Result<DeedRead> {
    let zone = app.kitchen(conn)?.zone;
    let json = |text: &str| serde_json::from_str(text).map_err(|error| crate::app::damaged(&error));
    Ok(DeedRead {
        id: shown_id(&deed.uid),
        kind: deed.kind.clone(),
        at: instant(deed.at, zone),
        began_at: deed.began_at.map(|began| instant(began, zone)),
        recorded_at: instant(deed.recorded_at, zone),
        late: deed.late,
        by: deed.person.clone(),
        place: deed
            .place_id
            .map(|place| entries::code(conn, place))
            .transpose()?,
        note: deed.note.clone(),
        asked: json(&deed.request)?,
        answered: json(&deeds::answer(conn, deed.id)?)?,
        voided: deeds::voided_by(conn, deed.id)?.map(|void| VoidedRead {
            id: shown_id(&void.uid),
            why: void.why,
            by: void.person,
            at: instant(void.recorded_at, zone),
        }),
        corrections: corrections(conn, deed.id)?,
    })
}

fn corrections(conn: &mut Conn, deed: i32) -> Result<Vec<String>> {
    let mut told: Vec<i32> = corrected(conn, deed)?;
    // Corrections of the time before what was wrong was kept.
    if let Some(lot) = lots::of_deed(conn, deed)?.first().map(|lot| lot.id) {
        let sources = sources::history(conn, lot)?;
        let sources = sources.iter().map(|source| source.deed_id);
        told.extend(sources.filter(|by| *by != deed));
    }
    told.sort_unstable();
    told.dedup();
    let mut by = deeds::by_keys(conn, &told)?;
    by.reverse();
    Ok(by.iter().map(|deed| shown_id(&deed.uid)).collect())
}
