//! The copies of the record: when the last one was made and tried, by which timetable, and where the record is.

use super::spoken::{NONE, Words};
use crate::caller::{Asking, Caller};
use crate::copies::says::{self, CopySays};
use crate::copies::timetable::Standing;
use crate::error::Result;
use crate::ids::shown_id;
use crate::read::copies::{self, Copies};
use crate::read::names::Names;
use actix_web::HttpResponse;
use askama::Template;
use chrono::NaiveDateTime;
use rust_decimal::Decimal;
use store::Conn;
use store::copied::{CopyRow, DRILL};
use store::record_lease::{MOVED, RESTORED};

#[derive(Template)]
#[template(path = "copies.html")]
struct Page {
    words: Words,
    /// How it stands, in a sentence; and is it as it should be?
    stands: String,
    is_well: bool,
    /// What is known at a glance: a heading and a sentence.
    facts: Vec<(String, String)>,
    rows: Vec<Row>,
    has_timetable: bool,
    untried: bool,
}

/// What came of one.
struct Row {
    at: String,
    what: String,
    file: String,
    length: String,
    took: String,
    came: String,
    detail: Option<String>,
}

/// The page.
pub async fn page(asking: Asking) -> HttpResponse {
    super::from_record(asking, view).await
}

fn view(app: &Caller<'_>, conn: &mut Conn) -> Result<Page> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let zone = app.kitchen(conn)?.zone;
    let found = copies::read(app, conn)?;
    let minute = |at: NaiveDateTime| words.minute(at.and_utc(), zone);
    Ok(Page {
        stands: words.t(match found.standing {
            Standing::Off => "page-copies-off",
            Standing::OnTime => "page-copies-on-time",
            Standing::Late => "page-copies-late",
            Standing::Failed => "page-copies-failed",
        }),
        is_well: found.standing == Standing::OnTime,
        facts: facts(&words, &found, &minute),
        rows: found
            .last
            .iter()
            .map(|of| row(&words, of, minute(of.at)))
            .collect(),
        has_timetable: found.timetable.is_some(),
        untried: found.is_untried,
        words,
    })
}

fn facts(
    words: &Words,
    found: &Copies<'_>,
    minute: &dyn Fn(NaiveDateTime) -> String,
) -> Vec<(String, String)> {
    let at = |row: &Option<CopyRow>| row.as_ref().map(|row| minute(row.at));
    let never = || words.t("page-copies-never");
    let mut facts = vec![
        (
            "page-copies-last",
            at(&found.known.last).unwrap_or_else(never),
        ),
        (
            "page-copies-tried",
            at(&found.known.drill).unwrap_or_else(never),
        ),
    ];
    if let Some(timetable) = found.timetable {
        let kept = timetable.keeping;
        facts.push((
            "page-copies-every",
            words.headed(says::every(timetable.every)),
        ));
        facts.push((
            "page-copies-kept",
            words.headed(CopySays::Keeps {
                days: kept.keep_daily.unwrap_or(0),
                weeks: kept.keep_weekly.unwrap_or(0),
                months: kept.keep_monthly.unwrap_or(0),
            }),
        ));
        facts.push(("page-copies-folder", timetable.folder.display().to_string()));
        facts.push((
            "page-copies-lock",
            words.t(match timetable.key {
                Some(_) => "page-copies-locked",
                None => "page-copies-open",
            }),
        ));
    }
    if let Some(lease) = &found.known.lease {
        let why = words.t(match lease.why.as_str() {
            RESTORED => "page-copies-restored",
            MOVED => "page-copies-moved",
            _ => "page-copies-made",
        });
        facts.push(("page-copies-where", lease.place.clone()));
        facts.push(("page-copies-since", format!("{} · {why}", minute(lease.at))));
    }
    let identity = found.identity.as_deref().map(shown_id);
    facts.extend(identity.map(|identity| ("page-copies-record", identity)));
    facts
        .into_iter()
        .map(|(key, text)| (words.t(key), text))
        .collect()
}

fn row(words: &Words, of: &CopyRow, at: String) -> Row {
    let name = of.name.rsplit('/').next().unwrap_or_default();
    let seconds = Decimal::new(of.took_ms, 3).round_dp(1);
    let megabytes = (Decimal::from(of.bytes) / Decimal::from(1_000_000)).round_dp(1);
    Row {
        at,
        what: words.t(match of.what == DRILL {
            true => "page-copies-drill",
            false => "page-copies-copy",
        }),
        file: name.to_owned(),
        length: match of.bytes {
            0 => NONE.to_owned(),
            _ => words.say(CopySays::Length { megabytes }),
        },
        took: words.say(CopySays::Took { seconds }),
        came: match of.trouble.as_deref() {
            Some(sort) => words.headed(says::of(sort)),
            None => words.t("page-copies-good"),
        },
        detail: of.says.clone(),
    }
}
