//! What every deed goes through: its id first, its time settled, one transaction, one answer.

use super::facts::Facts;
use super::says::DeedSays;
use crate::caller::Caller;
use crate::error::{Blocker, Error, Problem, Result};
use crate::problems::TitleSays;
use crate::wire::answers::{DeedDone, instant, shown_id};
use crate::wire::asked::{Id, canonical};
use crate::wire::{By, Code, Instant, Note};
use actix_web::http::StatusCode;
use domain::moment::{Moment, day_of};
use domain::refusal::{Refusal, RefusalKind};
use domain::says::Says;
use domain::words::DeedKind;
use serde::Serialize;
use store::deeds::{self, NewDeed};
use store::{Turn, Tx};
use words::Speech;

/// The deeds that take out of packs, make new ones, and move none.
const TAKES: [DeedKind; 7] = [
    DeedKind::Sell,
    DeedKind::Serve,
    DeedKind::Ship,
    DeedKind::Discard,
    DeedKind::Return,
    DeedKind::Pack,
    DeedKind::Portion,
];

/// What every deed says of itself.
#[derive(Debug, Clone, Copy)]
pub struct DeedHeader<'a> {
    /// The id that the device made.
    pub id: Id,
    /// What it is.
    pub kind: DeedKind,
    /// When it ended.
    pub at: Option<Instant>,
    /// When it began.
    pub began_at: Option<Instant>,
    /// Who.
    pub by: &'a By,
    /// Where.
    pub place: Option<&'a Code>,
    /// A word about it; for what is not left without a reason, the reason.
    pub note: Option<&'a Note>,
}

/// What a deed answers.
pub trait DeedAnswer: Serialize {
    /// Notes that it was entered later than it happened.
    fn entered_late(&mut self, late: bool);
    /// Tells the caller what there is to look at.
    fn tell(&mut self, speech: &Speech);
    /// Notes what else came of it, to be told.
    fn also(&mut self, said: Vec<Says>);
}

impl DeedAnswer for DeedDone {
    fn entered_late(&mut self, late: bool) {
        self.late = late;
    }

    fn also(&mut self, said: Vec<Says>) {
        self.said.extend(said);
    }

    fn tell(&mut self, speech: &Speech) {
        self.warnings = self.said.iter().map(|says| speech.say(says)).collect();
        self.warning_keys = self.said.iter().map(|says| says.key().to_owned()).collect();
    }
}

/// A deed that is on record, and what was answered.
#[derive(Debug)]
pub struct Done {
    /// Its id.
    pub id: uuid::Uuid,
    /// What it is.
    pub kind: DeedKind,
    /// Was it recorded just now, or before?
    pub fresh: bool,
    /// The answer, as JSON.
    pub body: String,
}

/// Records a deed once. The same id with the same body is answered as the first time.
///
/// # Errors
/// Whatever `act` refuses; 409 where the id was used for something else; 503 where the clock is
/// wrong or the database away. Nothing is kept then.
pub fn perform<A: DeedAnswer>(
    app: &Caller<'_>,
    header: DeedHeader<'_>,
    asked: &impl Serialize,
    act: impl Fn(&mut Facts<'_, '_>) -> Result<A>,
) -> Result<Done> {
    let request = canonical(asked);
    let uid = *header.id.0.as_bytes();
    app.store.write_in(turn(header.kind), |tx| {
        if let Some(known) = deeds::by_uid(tx.conn, &uid)? {
            if known.kind != header.kind.as_str() || known.request != request {
                let detail = DeedSays::IdUsed {
                    id: header.id.0.to_string(),
                    kind: known.kind()?,
                };
                return Err(Problem::new(
                    StatusCode::CONFLICT,
                    "id-used",
                    TitleSays::IdUsed,
                    detail,
                )
                .at("id")
                .into());
            }
            return Ok(Done {
                id: header.id.0,
                kind: header.kind,
                fresh: false,
                body: deeds::answer(tx.conn, known.id)?,
            });
        }
        let seen = store::entries::seen(tx.conn)?;
        app.refuse_while_clock_is_wrong(seen.last_recorded_at)?;
        let standing = app.standing_at(tx.conn, seen.stamp)?;
        let kitchen = standing.kitchen.clone();
        let (at, began) = (
            header.at.map(|at| at.0),
            header.began_at.map(|began| began.0),
        );
        let noted = header.note.is_some_and(|note| !note.0.is_empty());
        let now = app.clockwork.not_before(app.now(), seen.last_recorded_at);
        let mut moment = Moment::settle(at, began, now, kitchen.zone, noted)?;
        if moment.late {
            // Its day is that of the kitchen's calendar then: another time zone since changes none.
            let zone = crate::lists::kitchen::zone_at(tx.conn, moment.at, &kitchen)?;
            moment.day = day_of(moment.at, zone);
        }
        let by = app
            .who
            .signs(header.by.name(), moment.at.naive_utc(), &app.people())?;
        let place = match header.place {
            Some(code) => Some(super::facts::place(&standing.lists, &code.0, "place")?),
            None => None,
        };
        let deed = deeds::insert(
            tx,
            &NewDeed {
                uid,
                kind: header.kind,
                moment,
                person: &by,
                place_id: place.map(|place| place.0),
                note: header.note.map(|note| note.0.as_str()),
                request: &request,
            },
        )?;
        let speech = app.speech(&kitchen);
        let mut facts = Facts {
            tx,
            app: app.app(),
            who: app.who.clone(),
            by,
            speech,
            kitchen,
            standing,
            deed,
            moment,
            place,
            moves: !TAKES.contains(&header.kind),
            past: None,
        };
        let mut answer = match act(&mut facts) {
            Ok(answer) => answer,
            Err(Error::Refused(refusal)) if !refusal.in_the_way.is_empty() => {
                return Err(blocked(facts.tx, &refusal, facts.kitchen.zone, &speech)?);
            }
            Err(error) => return Err(error),
        };
        if seen.incident.is_some() {
            answer.also(super::incident::caught(&mut facts, header.kind)?);
        }
        answer.entered_late(moment.late);
        answer.tell(&speech);
        let body = serde_json::to_string(&answer)
            .map_err(|error| store::Error::Broken(error.to_string()))?;
        deeds::keep_answer(facts.tx, deed, &body)?;
        Ok(Done {
            id: header.id.0,
            kind: header.kind,
            fresh: true,
            body,
        })
    })
}

/// When a deed may begin, before anything is read and before its time is settled: whoever waited for a hold is later
/// than it, and sees it.
///
/// A hold is one as a whole: whoever is at work ends first, and who comes later waits for it. Of two that close an
/// incident, or of one that closes and one that catches, each sees the other. What is thinned nobody begins to need
/// meanwhile.
fn turn(kind: DeedKind) -> Turn {
    use DeedKind::{Hold, HoldRelease, Incident, IncidentClose, IncidentScope, Thin};
    match kind {
        Hold | HoldRelease | Incident | IncidentScope | IncidentClose | Thin => Turn::Alone,
        _ => Turn::Shared,
    }
}

/// The refusal of a void, with the deeds that stand in its way.
fn blocked(
    tx: &mut Tx<'_>,
    refusal: &Refusal,
    zone: chrono_tz::Tz,
    speech: &Speech,
) -> Result<Error> {
    let mut problem = Error::Refused(refusal.clone()).problem();
    problem.in_the_way = deeds::by_keys(tx.conn, &refusal.in_the_way)?
        .into_iter()
        .map(|deed| {
            let says = DeedSays::OfSomebody {
                kind: deed.kind()?,
                by: deed.person.clone(),
                at: deed.at.and_utc().with_timezone(&zone).naive_local(),
            };
            Ok(Blocker {
                id: shown_id(&deed.uid),
                at: instant(deed.at, zone),
                kind: deed.kind,
                says: speech.say(&says.into()),
            })
        })
        .collect::<store::Result<_>>()?;
    Ok(problem.into())
}

/// The deed of that id, or 404.
///
/// # Errors
/// 404 where it does not exist.
pub fn known_deed(tx: &mut Tx<'_>, id: Id, field: Option<&str>) -> Result<deeds::DeedRow> {
    deeds::by_uid(tx.conn, id.0.as_bytes())?.ok_or_else(|| {
        let id = id.0.to_string();
        let refusal = Refusal::new(RefusalKind::NeverIssued, "", DeedSays::Unknown { id });
        Refusal {
            field: field.map(str::to_owned),
            ..refusal
        }
        .into()
    })
}
