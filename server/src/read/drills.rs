//! Drills of a recall: what each found, and when the next one is due.

use crate::app::damaged;
use crate::caller::Caller;
use crate::error::Result;
use crate::lists::standing::Standing;
use crate::recall::IncidentFacts;
use crate::recall::facts::InEach;
use chrono::{DateTime, Months, NaiveDate};
use domain::duties::deadline::{Due, due as deadline};
use domain::grams::Grams;
use domain::moment::day_of;
use store::Conn;

/// So many months may pass where neither house nor place says otherwise: once a year (common practice, no source).
const MONTHS: u32 = 12;
/// So many drills are compared.
const MOST: i64 = 24;

/// A drill that is over.
pub struct Drill {
    /// Its number.
    pub number: String,
    /// Its day.
    pub day: NaiveDate,
    /// What it began with.
    begun_with: Vec<InEach>,
    /// How many packs there were to find.
    pub packs: usize,
    /// Seconds from the call until the scope was known.
    pub scoped: Option<i64>,
    /// Until all was located.
    pub located: Option<i64>,
    /// Until all was counted.
    pub counted: Option<i64>,
    /// The share of the packs that somebody looked for.
    pub share: f64,
    /// What was not found.
    pub missing: Grams,
}

impl Drill {
    /// What it began with, in a language.
    pub fn what(&self, language: &str) -> String {
        let names = self.begun_with.iter();
        let names: Vec<String> = names
            .map(|names| crate::recall::facts::in_language(names, language, ""))
            .collect();
        names.join(", ")
    }
}

/// The last drills that are over, the newest first.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn past(conn: &mut Conn) -> Result<Vec<Drill>> {
    let kept = store::incident_reports::of_drills(conn, MOST)?;
    let read = |text: &String| -> Result<Drill> {
        let facts: IncidentFacts = serde_json::from_str(text).map_err(|error| damaged(&error))?;
        Ok(drill(&facts))
    };
    kept.iter().map(read).collect()
}

fn drill(facts: &IncidentFacts) -> Drill {
    let after = |what: &str| {
        let mut marks = facts.milestones.iter();
        marks
            .find(|mark| mark.what == what)
            .map(|mark| mark.seconds)
    };
    let day = DateTime::parse_from_rfc3339(&facts.told_at);
    let begun = facts.lots.iter().filter(|lot| lot.is_start);
    Drill {
        number: facts.number.clone(),
        day: day.map_or_else(|_| NaiveDate::default(), |at| at.date_naive()),
        begun_with: begun.map(|lot| lot.names.clone()).collect(),
        packs: facts.to_count,
        scoped: after("scoped"),
        located: after("located"),
        counted: after("counted"),
        share: match facts.to_count {
            0 => 1.0,
            packs => (packs - facts.waiting) as f64 / packs as f64,
        },
        missing: facts.sums.missing_grams.0,
    }
}

/// When the next drill is due.
pub struct NextDrill {
    /// The last one, if there was one.
    pub last: Option<NaiveDate>,
    /// The last day for it.
    pub by: NaiveDate,
}

/// When the next drill is due: by the rules of the place, or as the house asks for it more often; none in a kitchen
/// that nothing has come to. A recall is one, too.
///
/// # Errors
/// The database is away.
pub fn due(app: &Caller<'_>, conn: &mut Conn) -> Result<Option<NextDrill>> {
    let standing = app.standing(conn)?;
    due_by(app, conn, &standing)
}

/// The same, where the lists were read already.
///
/// # Errors
/// The database is away.
pub fn due_by(app: &Caller<'_>, conn: &mut Conn, standing: &Standing) -> Result<Option<NextDrill>> {
    let zone = standing.kitchen.zone;
    let day = |at: chrono::NaiveDateTime| day_of(at.and_utc(), zone);
    let (last, first) = store::incident_life::last_told_and_first_made(conn)?;
    let Some(since) = last.or(first) else {
        return Ok(None);
    };
    let law = super::logs::law(app, standing);
    let by_place = deadline(&law.duties, Due::RecallDrill, since).map(|(by, _)| day(by));
    let months = standing.kitchen.entry.drill_every_months.unwrap_or(MONTHS);
    let by_house = day(since).checked_add_months(Months::new(months));
    let by = by_place.into_iter().chain(by_house).min();
    Ok(by.map(|by| NextDrill {
        last: last.map(day),
        by,
    }))
}
