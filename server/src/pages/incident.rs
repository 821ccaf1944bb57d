//! One recall: its clock, what to do next, what was found and disposed of, whom to call, what was sold, the notices,
//! and what is taken away of it.

use super::done::Done;
use super::incident_held::{Held, held};
use super::recall::hazards;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::names::Names;
use crate::recall::facts::{IncidentFacts, LotFacts, PersonFacts, is_uncounted};
use crate::recall::says::ReportSays;
use crate::recall::{self, notices};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use chrono::DateTime;
use domain::grams::Grams;
use domain::incident::{Hazard, IncidentNote, Milestone};
use domain::lot::numbers::in_runs;
use serde::Deserialize;
use store::Conn;

#[derive(Template)]
#[template(path = "incident.html")]
struct Incident {
    words: Words,
    title: String,
    /// What was just done.
    done: Option<Done>,
    /// What it began with.
    about: String,
    /// Who told it, when, why.
    told: String,
    why: String,
    /// What is asked now that it is held.
    known: Option<Known>,
    /// Is anything held that wants a tag?
    tags: bool,
    drill: bool,
    open: bool,
    id: String,
    number: String,
    /// What was done when.
    clock: Vec<(String, String, String)>,
    /// Was some of it counted already?
    is_counting: bool,
    /// What is still to be counted, in words; nothing where all is.
    to_count: Option<String>,
    figures: Vec<(String, String)>,
    lots: Vec<Row>,
    /// The lots of which something is there and held.
    held: Option<Held>,
    people: Vec<Person>,
    sold: Vec<(String, String, String)>,
    notices: Vec<(String, String, Vec<String>, Vec<String>)>,
    outside: Vec<(String, String)>,
    acts: Vec<(String, String, String)>,
    places: Vec<(String, String)>,
    /// Are guests told?
    shown: bool,
}

struct Row {
    code: String,
    shown: String,
    name: String,
    book: String,
    left: String,
    stands: String,
    because: String,
}

/// What nobody noted yet when the recall was begun.
struct Known {
    caller: bool,
    reason: bool,
    hazards: Vec<(&'static str, String)>,
}

impl Known {
    /// What is still to be asked of an incident, if anything is.
    fn of(words: &Words, facts: &IncidentFacts, hazard: Hazard) -> Option<Known> {
        let known = Known {
            caller: facts.told_by.is_empty(),
            reason: facts.why.is_empty(),
            hazards: match hazard {
                Hazard::Other => hazards(words).into_iter().skip(1).collect(),
                _ => Vec::new(),
            },
        };
        let asks = known.caller || known.reason || !known.hazards.is_empty();
        (!facts.closed && asks).then_some(known)
    }
}

struct Person {
    role: String,
    name: String,
    more: String,
    phone: Option<String>,
    told: Option<String>,
    answered: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The deed that was just done.
    did: Option<String>,
}

/// A recall.
pub async fn page(request: HttpRequest, asking: Asking, number: web::Path<String>) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked: &Asked| {
        view(app, conn, &number, asked.did.as_deref())
    })
    .await
}

fn view(app: &Caller<'_>, conn: &mut Conn, number: &str, did: Option<&str>) -> Result<Incident> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let facts = recall::of_number(app, conn, number)?;
    let moment = |at: &str| moment(&words, at);
    let shown = facts.acts.iter().rev();
    let mut shown = shown.filter(|act| ["shown", "hidden"].contains(&act.kind.as_str()));
    let shown = shown.next().is_some_and(|act| act.kind == "shown");
    let hazard = Hazard::parse(&facts.hazard).unwrap_or(Hazard::Other);
    let told = ReportSays::told(&facts.told_by, local(&facts.told_at), hazard);
    let done = Done::of(app, conn, &words, did, &format!("/recall/{number}"))?;
    Ok(Incident {
        done,
        title: title(&words, &facts),
        about: facts.about(words.lang()),
        tags: !facts.held_by_place().is_empty(),
        told: words.say(told),
        why: match facts.why.to_lowercase() == words.say(hazard.says()).to_lowercase() {
            // It is said already.
            true => String::new(),
            false => facts.why.clone(),
        },
        known: Known::of(&words, &facts, hazard),
        drill: facts.drill,
        open: !facts.closed,
        id: facts.id.clone(),
        number: facts.number.clone(),
        clock: clock(&words, &facts),
        is_counting: facts.uncounted < facts.to_count,
        to_count: (facts.uncounted > 0 && !facts.closed).then(|| {
            words.say(ReportSays::Open {
                uncounted: facts.uncounted,
                packs: facts.to_count,
            })
        }),
        figures: figures(&words, &facts),
        held: held(&words, &facts),
        lots: facts
            .lots
            .iter()
            .filter(|lot| !lot.packs.is_empty())
            .map(|lot| row(&words, lot))
            .collect(),
        people: facts
            .sources
            .iter()
            .chain(&facts.customers)
            .map(|one| person(&words, one))
            .collect(),
        sold: sold(&words, &facts),
        notices: notices(&facts)
            .into_iter()
            .map(|of| (of.language, of.title, of.customers, of.shelf))
            .collect(),
        outside: facts
            .outside
            .iter()
            .map(|out| {
                let why = recall::facts::in_language(&out.why, words.lang(), "");
                (out.lot.clone().unwrap_or_default(), why)
            })
            .collect(),
        acts: facts
            .acts
            .iter()
            .map(|act| {
                let what = act_says(&words, &act.kind);
                let whom = act.whom.as_deref().unwrap_or_default();
                let when = format!("{}, {}", moment(&act.at), act.by);
                (
                    when,
                    format!("{what} {whom}").trim().to_owned(),
                    act.text.clone(),
                )
            })
            .collect(),
        places: names
            .places
            .iter()
            .map(|(code, name)| (code.clone(), name.clone()))
            .collect(),
        shown,
        words,
    })
}

/// Its number, and whether it is a drill.
pub fn title(words: &Words, facts: &IncidentFacts) -> String {
    let number = facts.number.clone();
    match facts.drill {
        true => words.say(ReportSays::DrillTitle { number }),
        false => words.say(ReportSays::Title { number }),
    }
}

fn local(at: &str) -> chrono::NaiveDateTime {
    let at = DateTime::parse_from_rfc3339(at);
    at.map_or_else(|_| chrono::NaiveDateTime::default(), |at| at.naive_local())
}

/// A moment of the facts, as the kitchen's clock shows it.
pub fn moment(words: &Words, at: &str) -> String {
    words.0.moment(local(at))
}

/// What was done when, and how long after the call.
pub fn clock(words: &Words, facts: &IncidentFacts) -> Vec<(String, String, String)> {
    let marks = facts.milestones.iter();
    let one = |mark: &recall::facts::MilestoneFacts| {
        let what = match (Milestone::parse(&mark.what), facts.disposed_so_far()) {
            (Some(Milestone::Disposed), Some(says)) => words.headed(says),
            (Some(what), _) => words.headed(what.says()),
            (None, _) => String::new(),
        };
        let later = words.say(ReportSays::later(mark.seconds));
        (what, moment(words, &mark.at), later)
    };
    marks.map(one).collect()
}

/// What became of everything since the call.
pub fn figures(words: &Words, facts: &IncidentFacts) -> Vec<(String, String)> {
    let sums = &facts.sums;
    let all = [
        (ReportSays::SumBook, sums.book_grams.0),
        (ReportSays::SumMissing, sums.missing_grams.0),
        (ReportSays::SumSurplus, sums.surplus_grams.0),
        (ReportSays::SumBack, sums.back_grams.0),
        (ReportSays::SumDestroyed, sums.destroyed_grams.0),
        (ReportSays::SumReturned, sums.returned_grams.0),
        (ReportSays::SumGone, sums.gone_grams.0),
        (ReportSays::SumLeft, sums.left_grams.0),
    ];
    let told = all.into_iter().filter(|(_, grams)| *grams != Grams::ZERO);
    told.map(|(says, grams)| (words.headed(says), words.grams(grams)))
        .collect()
}

/// How a lot stands: not counted, with what is missing, or all there.
fn row(words: &Words, lot: &LotFacts) -> Row {
    let packs = lot.uncounted();
    let sums = &lot.sums;
    let mut stands = Vec::new();
    if packs > 0 {
        stands.push(words.say(ReportSays::NotCounted { packs }));
    }
    for (says, grams) in [
        (ReportSays::SumMissing, sums.missing_grams.0),
        (ReportSays::SumSurplus, sums.surplus_grams.0),
        (ReportSays::SumBack, sums.back_grams.0),
        (ReportSays::SumDestroyed, sums.destroyed_grams.0),
        (ReportSays::SumReturned, sums.returned_grams.0),
    ] {
        if grams != Grams::ZERO {
            stands.push(format!("{} {}", words.grams(grams), words.say(says)));
        }
    }
    if stands.is_empty() {
        stands.push(words.t("page-incident-all-there"));
    }
    let because = lot.because.first();
    Row {
        code: lot.code.clone(),
        shown: lot.shown.clone(),
        name: lot.name(words.lang()),
        book: words.grams(sums.book_grams.0),
        left: words.or_dash(sums.left_grams.0),
        stands: words.apart(&stands),
        because: because.map_or_else(String::new, |why| {
            recall::facts::in_language(why, words.lang(), "")
        }),
    }
}

fn person(words: &Words, one: &PersonFacts) -> Person {
    let role = match one.role.as_str() {
        "farm" => ReportSays::Farm,
        "abattoir" => ReportSays::Abattoir,
        "supplier" => ReportSays::Supplier,
        _ => ReportSays::Customer,
    };
    let grams = one.grams.map(|grams| words.grams(grams.0));
    let more: Vec<String> = one
        .address
        .clone()
        .into_iter()
        .chain((!one.lots.is_empty()).then(|| one.lots.join(", ")))
        .chain(grams)
        .collect();
    Person {
        role: words.headed(role),
        name: one.name.clone(),
        more: words.apart(&more),
        phone: one.phone.clone(),
        told: one.told_at.as_ref().map(|at| moment(words, at)),
        answered: one.answered.clone().unwrap_or_default(),
    }
}

fn sold(words: &Words, facts: &IncidentFacts) -> Vec<(String, String, String)> {
    let one = |of: &recall::facts::SoldFacts| {
        let hour = ReportSays::Hour {
            day: of.day.parse().unwrap_or_default(),
            from: of.hour,
            until: of.hour + 1,
        };
        let name = recall::facts::in_language(&of.names, words.lang(), &of.lot);
        let packs = words.packs(of.packs);
        let mut numbers = of.numbers.clone();
        numbers.sort_unstable();
        let what = match numbers.as_slice() {
            [] => format!("{name}, {}", of.lot),
            numbers => format!("{name}, {}/{}", of.lot, in_runs(numbers)),
        };
        let sold = format!("{packs}, {}", words.grams(of.grams.0));
        let how_much = match of.to.is_empty() {
            true => sold,
            false => words.say(PageSays::AndMore {
                what: sold,
                more: words.apart(&of.to),
            }),
        };
        (words.say(hour), what, how_much)
    };
    facts.sold.iter().map(one).collect()
}

fn act_says(words: &Words, kind: &str) -> String {
    match kind {
        "begun" => words.headed(ReportSays::Begun),
        "scope" => words.headed(ReportSays::Scoped),
        "shown" => words.headed(ReportSays::Shown),
        "hidden" => words.headed(ReportSays::Hidden),
        "disposed" => words.headed(ReportSays::Disposed),
        "closed" => words.headed(ReportSays::Closed),
        kind => {
            let note = IncidentNote::parse(kind).unwrap_or(IncidentNote::Note);
            words.headed(note.says())
        }
    }
}

/// How many packs of a lot wait at a place, and their numbers.
pub fn waiting_at(lot: &LotFacts, place: &str) -> Vec<u32> {
    let here = lot.packs.iter().filter(|pack| pack.place == place);
    let waiting = here.filter(|pack| is_uncounted(pack));
    waiting.map(|pack| pack.pack).collect()
}
