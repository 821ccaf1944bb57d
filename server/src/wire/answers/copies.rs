//! The copies of the record, as they are answered.

use super::instant;
use crate::app::App;
use crate::copies::says;
use crate::copies::timetable::Timetable;
use crate::read::copies::Copies;
use chrono_tz::Tz;
use domain::says::Says;
use serde::Serialize;
use store::copied::CopyRow;
use store::record_lease::LeaseRow;
use utoipa::ToSchema;
use words::Speech;

/// The copies of the record.
#[derive(Debug, Serialize, ToSchema)]
pub struct CopiesRead {
    /// `on-time`, `late`, `failed` (the last try made none), or `off` where no timetable is set up.
    pub status: String,
    /// The timetable, if one is set up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub timetable: Option<TimetableRead>,
    /// The last good copy.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last: Option<CopyRead>,
    /// The last time that a copy was tried and was good.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_drill: Option<CopyRead>,
    /// Has nobody tried a copy for a quarter of a year?
    pub drill_due: bool,
    /// Which record it is: every copy of it says the same.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub record: Option<String>,
    /// Where it is worked in, and since when.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lease: Option<LeaseRead>,
    /// What came of the last copies and trials, the newest first; at most 30.
    pub copies: Vec<CopyRead>,
}

/// When copies are made.
#[derive(Debug, Serialize, ToSchema)]
pub struct TimetableRead {
    /// The folder that they go into.
    pub folder: String,
    /// Minutes from one to the next.
    pub every_minutes: i64,
    /// Are they under lock?
    pub locked: bool,
    /// The last copy of each of so many days is kept.
    pub keep_daily: usize,
    /// And of so many weeks.
    pub keep_weekly: usize,
    /// And of so many months.
    pub keep_monthly: usize,
}

/// What came of a copy, or of the trial of one.
#[derive(Debug, Serialize, ToSchema)]
pub struct CopyRead {
    /// `copy`, or `drill`: one was restored, proven and thrown away.
    pub what: String,
    /// When.
    pub at: String,
    /// The file, or the folder where there is no file.
    pub file: String,
    /// How long it is.
    pub bytes: i64,
    /// How long it took.
    pub milliseconds: i64,
    /// How many deeds are in it.
    pub deeds: i64,
    /// The end of its chain, for `gambrel check --anchor`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub anchor: Option<String>,
    /// What went wrong, in a word: `folder`, `record`, `unsound`, `key`, `apart`. None where it is good.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trouble: Option<String>,
    /// The same in a sentence.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// What the machine said of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub detail: Option<String>,
}

/// Where a record is worked in.
#[derive(Debug, Serialize, ToSchema)]
pub struct LeaseRead {
    /// What tells this lease from others: a restore takes a new one.
    pub mark: String,
    /// Since when.
    pub since: String,
    /// The file or the database.
    pub place: String,
    /// `made`, `restored`, or `moved`: found in another file or database than before.
    pub why: String,
}

/// How it stands with copies, as far as the service knows without asking.
#[derive(Debug, Serialize, ToSchema)]
pub struct CopiesHealth {
    /// `on-time`, `late`, `failed`, or `off`.
    pub status: String,
    /// When the last good one was made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last: Option<String>,
    /// When one was last tried and was good.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_drill: Option<String>,
}

/// How it stands with copies, without asking the record.
pub fn copies_health(app: &App, zone: Tz) -> CopiesHealth {
    let known = app.copying.seen();
    let timetable = app.copying.timetable.as_ref();
    let at = |row: &Option<CopyRow>| row.as_ref().map(|row| instant(row.at, zone));
    CopiesHealth {
        status: known.standing(timetable, app.now()).as_str().to_owned(),
        last: at(&known.last),
        last_drill: at(&known.drill),
    }
}

/// The copies, for a reader.
pub fn copies_read(found: &Copies<'_>, zone: Tz, speech: &Speech) -> CopiesRead {
    let copy = |row: &CopyRow| copy_read(row, zone, speech);
    CopiesRead {
        status: found.standing.as_str().to_owned(),
        timetable: found.timetable.map(timetable_read),
        last: found.known.last.as_ref().map(copy),
        last_drill: found.known.drill.as_ref().map(copy),
        drill_due: found.is_untried,
        record: found.identity.as_deref().map(super::shown_id),
        lease: found.known.lease.as_ref().map(|row| lease_read(row, zone)),
        copies: found.last.iter().map(copy).collect(),
    }
}

fn timetable_read(of: &Timetable) -> TimetableRead {
    TimetableRead {
        folder: of.folder.display().to_string(),
        every_minutes: of.every.num_minutes(),
        locked: of.key.is_some(),
        keep_daily: of.keeping.keep_daily.unwrap_or(0),
        keep_weekly: of.keeping.keep_weekly.unwrap_or(0),
        keep_monthly: of.keeping.keep_monthly.unwrap_or(0),
    }
}

fn copy_read(row: &CopyRow, zone: Tz, speech: &Speech) -> CopyRead {
    CopyRead {
        what: row.what.clone(),
        at: instant(row.at, zone),
        file: row.name.clone(),
        bytes: row.bytes,
        milliseconds: row.took_ms,
        deeds: row.deeds,
        anchor: row.anchor.clone(),
        trouble: row.trouble.clone(),
        why: row
            .trouble
            .as_deref()
            .map(|sort| speech.say(&Says::from(says::of(sort)))),
        detail: row.says.clone(),
    }
}

fn lease_read(row: &LeaseRow, zone: Tz) -> LeaseRead {
    LeaseRead {
        mark: super::shown_id(&row.mark),
        since: instant(row.at, zone),
        place: row.place.clone(),
        why: row.why.clone(),
    }
}
