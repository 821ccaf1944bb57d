//! Papers: those of a deed, a lot or an animal, what each holds, and how long everything is kept.

use super::lot_named;
use crate::caller::Caller;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use crate::routes::id;
use actix_web::http::StatusCode;
use chrono::NaiveDate;
use domain::duties::DutyRules;
use domain::moment::day_of;
use domain::paper::{self, Facts, Kept, Needed, PaperSays};
use serde::Deserialize;
use store::papers::{self, PaperFound, Which};
use store::{Conn, deeds, paper_reach};
use utoipa::IntoParams;

/// Which papers.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct PapersQuery {
    /// Those of a deed, by its id
    pub of: Option<String>,
    /// Those of a lot and of all it was made from, by its code
    pub lot: Option<String>,
    /// Those of an animal, by its id
    pub animal: Option<String>,
    /// Where none of these is given: those before this mark, as `next` gave it
    pub before: Option<i32>,
}

/// The most papers of one page.
pub const MOST: i64 = 200;

/// Papers, as they were asked for.
pub struct Papers {
    /// The papers.
    pub papers: Vec<PaperFound>,
    /// The mark before which the next page goes on.
    pub next: Option<i32>,
}

/// The papers that a query asks for.
///
/// # Errors
/// 404 or 422 for a deed, a lot or an animal that is none; the database is away.
pub fn find(app: &Caller<'_>, conn: &mut Conn, asked: &PapersQuery) -> Result<Papers> {
    let Some(deeds) = deeds_asked(app, conn, asked)? else {
        let mut found = papers::find(conn, Which::Newest(asked.before), MOST + 1)?;
        let more = found.len() > MOST as usize;
        found.truncate(MOST as usize);
        let next = found.last().filter(|_| more).map(|last| last.row.id);
        return Ok(Papers {
            papers: found,
            next,
        });
    };
    let mut found = Vec::new();
    for some in deeds.chunks(1_000) {
        found.extend(papers::find(conn, Which::OfDeeds(some), MOST)?);
    }
    found.sort_by_key(|paper| paper.row.id);
    Ok(Papers {
        papers: found,
        next: None,
    })
}

/// The deeds whose papers are asked for; nothing where all are.
fn deeds_asked(app: &Caller<'_>, conn: &mut Conn, asked: &PapersQuery) -> Result<Option<Vec<i32>>> {
    Ok(match (&asked.of, &asked.lot, &asked.animal) {
        (None, None, None) => None,
        (Some(of), None, None) => Some(vec![of_deed(conn, of)?.id]),
        (None, Some(lot), None) => {
            let lot = lot_named(app.app(), conn, lot)?;
            let lots = paper_reach::back(conn, lot.id)?;
            Some(paper_reach::deeds_of(conn, &lots)?)
        }
        (None, None, Some(animal)) => {
            let uid = id(animal)?.0;
            let row = store::animals::by_uid(conn, uid.as_bytes())?;
            let row =
                row.ok_or_else(|| Error::not_found(crate::pages::says::PageSays::NoAnimal))?;
            Some(paper_reach::deeds_of_animal(conn, row.id)?)
        }
        _ => return Err(Error::cannot_be("query", PaperSays::WhichOf)),
    })
}

/// The deed of an id in an address.
///
/// # Errors
/// 404 where there is none.
pub fn of_deed(conn: &mut Conn, text: &str) -> Result<deeds::DeedRow> {
    let uid = id(text)?.0;
    let unknown = || {
        Error::not_found(crate::deeds::says::DeedSays::Unknown {
            id: uid.to_string(),
        })
    };
    deeds::by_uid(conn, uid.as_bytes())?.ok_or_else(unknown)
}

/// A paper with what it holds.
///
/// # Errors
/// 404 where there is none of that id, 410 where what it held was thrown away.
pub fn content(conn: &mut Conn, text: &str) -> Result<(PaperFound, Vec<u8>)> {
    let uid = id(text)?.0;
    let found = papers::find(conn, Which::Ids(&[uid.as_bytes().to_vec()]), 1)?.pop();
    let id = uid.to_string();
    let found = found.ok_or_else(|| Error::not_found(PaperSays::NoPaper { id }))?;
    if found.thinned {
        let title = TitleSays::NotFound;
        return Err(Problem::new(StatusCode::GONE, "thinned", title, PaperSays::Thinned).into());
    }
    let content = papers::content(conn, found.row.id)?;
    Ok((found, content))
}

/// What may need a paper, whatever its deed is.
pub struct Standing {
    incident: Option<String>,
    oldest: Option<(chrono::NaiveDateTime, String)>,
}

impl Standing {
    /// As the record stands.
    ///
    /// # Errors
    /// The database is away.
    pub fn read(conn: &mut Conn) -> Result<Standing> {
        Ok(Standing {
            incident: paper_reach::open_incident(conn)?,
            oldest: paper_reach::oldest_on_hand(conn)?,
        })
    }

    /// The number of an incident that is open.
    pub fn incident(&self) -> Option<&str> {
        self.incident.as_deref()
    }

    /// How long a paper is kept.
    ///
    /// # Errors
    /// The database is away.
    pub fn kept(&self, conn: &mut Conn, rules: &DutyRules, of: &PaperFound) -> Result<Kept> {
        let lots = paper_reach::lots_of(conn, of.row.of_deed_id)?;
        let came = paper_reach::came_of(conn, &lots)?;
        let begun = self.oldest.as_ref().filter(|(at, _)| *at <= of.of_at);
        let needed = match (&self.incident, came.on_hand, begun) {
            (Some(incident), ..) => Some(Needed::Incident(incident.clone())),
            (None, Some(lot), _) => Some(Needed::OnHand(lot)),
            (None, None, Some((_, lot))) if lots.is_empty() => {
                Some(Needed::BegunBefore(lot.clone()))
            }
            _ => None,
        };
        let facts = Facts {
            deed: of.of_kind,
            last: came.last.map_or(of.day, |day| day.max(of.day)),
            eaten_by: came.eaten_by,
            needed,
        };
        Ok(paper::kept(rules, &facts))
    }
}

/// So many of the oldest papers are looked at for what may be thinned.
const LOOKED_AT: i64 = 200;

/// How long everything is kept, and what may be thinned.
pub struct Keeping {
    /// The kitchen's day.
    pub today: NaiveDate,
    /// How many papers, how many bytes of those that were not thinned, how many were.
    pub counts: (i64, i64, i64),
    /// What may need them.
    pub standing: Standing,
    /// The papers of which the content may be thinned.
    pub may_go: Vec<(PaperFound, Kept)>,
    /// How many were looked at for that.
    pub looked_at: usize,
}

/// How long everything is kept. The oldest papers are looked at: nobody thins the newest.
///
/// # Errors
/// The database is away.
pub fn keeping(app: &Caller<'_>, conn: &mut Conn) -> Result<Keeping> {
    let lists = app.standing(conn)?;
    let place = lists.kitchen.entry.profile.0;
    let today = day_of(app.now(), lists.kitchen.zone);
    let rules = &app.laws(&lists.confirmed).of(place).duties;
    let standing = Standing::read(conn)?;
    let mut may_go = Vec::new();
    let oldest = papers::find(conn, Which::Whole(i32::MIN), LOOKED_AT)?;
    let looked_at = oldest.len();
    if standing.incident.is_none() {
        for paper in oldest {
            let kept = standing.kept(conn, rules, &paper)?;
            if kept.may_go(today) {
                may_go.push((paper, kept));
            }
        }
    }
    Ok(Keeping {
        today,
        counts: papers::count(conn)?,
        standing,
        may_go,
        looked_at,
    })
}
