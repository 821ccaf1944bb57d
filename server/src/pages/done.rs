//! The strip that says what was just done, with its undo: it stands where the act was.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Caller;
use crate::error::Result;
use crate::ids::shown_id;
use domain::words::StepKind;
use store::{Conn, deeds};
use uuid::Uuid;

/// What was just done.
pub struct Done {
    /// What, by whom, when.
    pub says: String,
    /// The deed's id, to undo it by.
    pub id: String,
    /// Was it undone?
    pub voided: bool,
    /// Where its labels are, where it made or changed any.
    pub labels: Option<String>,
    /// Where the page is, without the strip.
    pub then: String,
}

impl Done {
    /// The deed of an id in the address; nothing where none is named, or none of that id is on record.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn of(
        app: &Caller<'_>,
        conn: &mut Conn,
        words: &Words,
        did: Option<&str>,
        then: &str,
    ) -> Result<Option<Done>> {
        let Some(uid) = did.and_then(|text| Uuid::parse_str(text).ok()) else {
            return Ok(None);
        };
        let Some(deed) = deeds::by_uid(conn, uid.as_bytes())? else {
            return Ok(None);
        };
        let zone = app.kitchen(conn)?.zone;
        let voided = deeds::voided_by(conn, deed.id)?.is_some();
        let kind = deed.kind()?;
        let says = PageSays::Did {
            deed: words.headed(kind.says()),
            by: deed.person.clone(),
            at: words.minute(deed.at.and_utc(), zone),
        };
        let id = shown_id(&deed.uid);
        Ok(Some(Done {
            says: words.say(says),
            labels: StepKind::parse(kind.as_str())
                .is_some()
                .then(|| format!("/api/steps/{id}/labels.pdf"))
                .filter(|_| !voided),
            id,
            voided,
            then: then.to_owned(),
        }))
    }
}
