//! The first page: what needs a hand today, in the order of the hour, each thing with its button.

use super::acts::ActKind;
use super::done::Done;
use super::piece::way_of;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::today::{self, Today, TodayQuery};
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use chrono::TimeDelta;
use domain::code::LotCode;
use domain::right::Right;
use domain::rows::without_sources;
use domain::today::{About, DoSays, Hand, Sort, When};
use serde::Deserialize;
use store::Conn;

/// The most things on one page.
const MOST: usize = 60;

/// How much of what is stopped is told here: how much it is and where, and one reason.
const STOPPED_TELLS: usize = 2;

/// How long a label that was refused is somebody's affair.
const REFUSED_LATELY: TimeDelta = TimeDelta::days(2);

#[derive(Template)]
#[template(path = "home.html")]
struct Home {
    words: Words,
    now: String,
    /// What stands there instead where the page was kept by a device: its hour goes on for nobody.
    as_of: String,
    kitchen: String,
    /// How many things there are, in words.
    counted: String,
    lines: Vec<Line>,
    /// Labels that a printer refused.
    refused: Option<String>,
    /// Labels that are being printed: all is well, and nothing to do.
    printing: Option<String>,
    /// Where the next part begins.
    next: Option<usize>,
    /// What an empty kitchen does first.
    begin: Vec<Step>,
    done: Option<Done>,
    /// Is it read by somebody who only sells?
    at_counter: bool,
    /// May whoever reads it begin a recall?
    may_recall: bool,
    /// May whoever reads it add a printer, of which there is none?
    lacks_printer: bool,
    /// Have they just chosen their PIN?
    pin_kept: bool,
    /// The end of the record's chain, for the sheet.
    anchor: Option<AnchorShown>,
}

/// The end of the record's chain as it is shown: a line, and the same as a square code.
pub(super) struct AnchorShown {
    pub(super) line: String,
    pub(super) code: String,
}

impl AnchorShown {
    /// That of the record as it is now, in groups that a person can compare.
    pub(super) fn of(conn: &mut Conn) -> Result<Option<AnchorShown>> {
        let anchor = store::chain::anchor(conn)?;
        Ok(anchor.map(|anchor| AnchorShown {
            line: anchor.in_groups(),
            code: labels::qr_svg(&anchor.to_string(), 132).unwrap_or_default(),
        }))
    }
}

/// One thing that needs a hand.
struct Line {
    /// When, where it is the first of its hour.
    at: Option<String>,
    alarm: bool,
    sign: &'static str,
    says: String,
    more: String,
    act: String,
    /// Where its button leads.
    path: String,
    /// What else may be done about it, and where.
    others: Vec<(String, String)>,
    /// Or the deed that it is: the place that was cleaned.
    cleaned: Option<String>,
}

/// A step of setting the kitchen up.
struct Step {
    says: String,
    done: bool,
    /// Where it is done; nothing where whoever reads it may not, or another comes first.
    path: Option<&'static str>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    after: Option<usize>,
    /// The deed that was just done.
    did: Option<String>,
    /// Given where somebody has just chosen their PIN.
    pin: Option<String>,
}

/// What there is to do.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, home).await
}

fn home(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<Home> {
    let wanted = TodayQuery {
        after: asked.after,
        limit: Some(MOST),
    };
    let found = today::read(app, conn, &wanted)?;
    let kitchen = app.kitchen(conn)?;
    let words = Words(app.speech(&kitchen));
    let mut lines: Vec<Line> = Vec::with_capacity(found.hands.len());
    let mut hour: Option<When> = None;
    for hand in &found.hands {
        let at = (hour != Some(hand.when)).then(|| words.say(hand.when.says()));
        hour = Some(hand.when);
        lines.push(line(app, &words, hand, at));
    }
    let since = (found.now - REFUSED_LATELY).naive_utc();
    let labels = store::print_runs::refused_since(conn, since)?;
    let refused = (labels > 0).then(|| words.say(PageSays::PrintsRefused { labels }));
    let labels = found.printing;
    let printing = (labels > 0).then(|| words.say(PageSays::PrintsWait { labels }));
    Ok(Home {
        words,
        as_of: words.say(PageSays::TodayAsOf {
            at: words.minute(found.now, found.zone),
        }),
        now: words.minute(found.now, found.zone),
        kitchen: match kitchen.is_set {
            true => kitchen.entry.name.0.clone(),
            false => String::new(),
        },
        counted: match found.all {
            0 if refused.is_some() => String::new(),
            0 => words.t("page-today-nothing"),
            hands => words.say(PageSays::TodayHands { hands }),
        },
        begin: begin(&words, &found, app.who.may(Right::SetUp)),
        next: found.next,
        lacks_printer: found.begun.is_done() && !found.begun.printer && app.who.may(Right::SetUp),
        pin_kept: asked.pin.is_some(),
        at_counter: !app.who.may(Right::Work),
        may_recall: app.who.may(Right::Recall),
        done: Done::of(app, conn, &words, asked.did.as_deref(), "/")?,
        anchor: AnchorShown::of(conn)?,
        lines,
        refused,
        printing,
    })
}

fn line(app: &Caller<'_>, words: &Words, hand: &Hand, at: Option<String>) -> Line {
    let cleans = matches!(hand.sort, Sort::CleanDown | Sort::Crossed) && app.who.may(Right::Work);
    let may = app.who.may(asks(hand));
    Line {
        at,
        alarm: matches!(
            hand.sort,
            Sort::Alarm | Sort::Crossed | Sort::Recall | Sort::Beyond
        ),
        others: others(app, words, hand),
        sign: sign(hand.sort),
        says: words.say(hand.says.clone()),
        more: more(words, hand),
        act: match may {
            true => words.say(hand.act.clone()),
            false => words.say(DoSays::See),
        },
        cleaned: match &hand.about {
            About::Place(code) if cleans => Some(code.clone()),
            _ => None,
        },
        path: match may {
            true => path(hand),
            false => seen(hand),
        },
    }
}

/// What is known of it, in sentences. Of what is stopped, how much it is and the first reason, without the rows: the thing
/// itself says the others, and what is behind them.
fn more(words: &Words, hand: &Hand) -> String {
    let told = match (&hand.about, hand.sort) {
        (About::Lot(..), Sort::Stop) => STOPPED_TELLS,
        _ => hand.more.len(),
    };
    let sentences = hand.more.iter().take(told);
    let mut sentences: Vec<String> = sentences
        .map(|says| words.headed(without_sources(says)))
        .collect();
    let reasons = hand.more.len().saturating_sub(told);
    if reasons > 0 {
        sentences.push(words.say(PageSays::TodayReasons { reasons }));
    }
    sentences.join(" ")
}

/// The right that its act asks: a button that leads to a refusal is none.
fn asks(hand: &Hand) -> Right {
    match hand.sort {
        Sort::Release => Right::Release,
        Sort::Drill | Sort::Recall => Right::Recall,
        Sort::Stop if hand.act.key() == "today-do-sort" => ActKind::Discard.right(),
        Sort::Past => ActKind::Discard.right(),
        Sort::WrongLabel | Sort::Printer => Right::Print,
        Sort::Stop | Sort::Copies => Right::See,
        Sort::Alarm | Sort::Crossed | Sort::Beyond | Sort::LastDay | Sort::Reading => Right::Work,
        Sort::Cooling | Sort::Missing => Right::Work,
        Sort::Piece | Sort::Thaw | Sort::CleanDown => Right::Work,
    }
}

/// What else may be done: what lies where it is too warm is moved, or thrown away; what is missing may be the tub that
/// turned up without its label.
fn others(app: &Caller<'_>, words: &Words, hand: &Hand) -> Vec<(String, String)> {
    let suffers = hand.more.iter().any(|says| says.key() == "today-beyond-do");
    let ways = match (&hand.about, hand.sort) {
        (About::Place(place), Sort::Beyond) if suffers => vec![
            (
                "page-act-move-good",
                format!("/places/{place}/move?good=yes"),
                Right::Work,
            ),
            (
                "page-act-discard",
                format!("/places/{place}/discard"),
                Right::Sell,
            ),
        ],
        // What it stopped is thrown away; what is left is carried into the cold.
        (About::Place(place), Sort::Stop) => vec![(
            "page-act-move-good",
            format!("/places/{place}/move?good=yes"),
            Right::Work,
        )],
        (About::Lot(lot, packs), Sort::Missing) => {
            let is = packs.first().map_or(String::new(), u32::to_string);
            vec![
                (
                    "page-act-adopt",
                    format!("/adopt?is={lot}/{is}"),
                    Right::Work,
                ),
                ("page-act-see-lot", format!("/lots/{lot}"), Right::See),
            ]
        }
        _ => Vec::new(),
    };
    let ways = ways.into_iter().filter(|(_, _, right)| app.who.may(*right));
    ways.map(|(key, path, _)| (words.t(key), path)).collect()
}

/// Where whoever may not do it sees what it is about.
fn seen(hand: &Hand) -> String {
    match &hand.about {
        About::Lot(lot, _) | About::Piece(lot, _) => format!("/lots/{lot}"),
        About::Place(place) => format!("/places/{place}"),
        About::Printing => "/printing".to_owned(),
        About::Recall(number) => format!("/recall/{number}"),
        About::Drills => "/recall/drills".to_owned(),
        About::Copies => "/copies".to_owned(),
    }
}

/// Where a thing's button leads: to the thing, with its act.
fn path(hand: &Hand) -> String {
    match (&hand.about, hand.sort) {
        (About::Recall(number), _) if hand.act.key() == "today-do-count-recall" => {
            format!("/recall/{number}/count")
        }
        (About::Recall(number), _) => format!("/recall/{number}"),
        (About::Drills, _) => "/recall?drill=yes".to_owned(),
        (About::Printing, _) => "/printing".to_owned(),
        (About::Copies, _) => "/copies".to_owned(),
        (About::Lot(_, _), Sort::WrongLabel) => "/wrong-labels".to_owned(),
        (About::Lot(lot, packs), Sort::Past) => act(lot, "discard", packs),
        (About::Lot(lot, packs), Sort::LastDay) => act(lot, "freeze", packs),
        (About::Lot(lot, packs), Sort::Missing) => act(lot, "count", packs),
        (About::Lot(lot, _), Sort::Cooling) => format!("/lots/{lot}/cool"),
        (About::Lot(lot, _), Sort::Release) => format!("/lots/{lot}/release"),
        (About::Lot(lot, _), Sort::Alarm) => format!("/lots/{lot}/weigh"),
        (About::Piece(lot, task), _) => format!("/lots/{lot}/{}", way_of(*task)),
        (About::Lot(lot, _), _) => format!("/lots/{lot}"),
        (About::Place(place), Sort::Reading | Sort::Beyond) => {
            format!("/places/{place}/temperature")
        }
        (About::Place(place), Sort::Stop) => format!("/places/{place}/discard?stopped=yes"),
        (About::Place(place), Sort::Thaw) => format!("/places/{place}/thaw"),
        (About::Place(place), _) => format!("/places/{place}"),
    }
}

/// The page of an act on some packs.
fn act(lot: &LotCode, act: &str, packs: &[u32]) -> String {
    let packs: Vec<String> = packs.iter().map(u32::to_string).collect();
    format!("/lots/{lot}/{act}?packs={}", packs.join(","))
}

/// The sign of a sort, as `sign.html` draws it.
fn sign(sort: Sort) -> &'static str {
    match sort {
        Sort::Alarm | Sort::Crossed | Sort::Beyond => "alarm",
        Sort::Printer | Sort::WrongLabel => "printer",
        Sort::Stop | Sort::Copies | Sort::Recall => "stop",
        Sort::Past => "past",
        Sort::Missing => "missing",
        Sort::LastDay => "last-day",
        Sort::Reading | Sort::Cooling => "reading",
        Sort::Piece => "scale",
        Sort::Release | Sort::Drill => "tick",
        Sort::CleanDown => "clean",
        Sort::Thaw => "thaw",
    }
}

/// What a kitchen does first, step by step; nothing once it works.
fn begin(words: &Words, found: &Today, may: bool) -> Vec<Step> {
    if found.begun.is_done() {
        return Vec::new();
    }
    let [kitchen, places, people, printer, products, lots] = found.begun.steps();
    let at_printer = match found.begun.printer {
        true => "page-begin-printer-test",
        false => "page-begin-printer",
    };
    let steps = [
        ("page-begin-kitchen", "/set-up/kitchen", kitchen),
        ("page-begin-places", "/set-up/places", places),
        ("page-begin-people", "/set-up/people", people),
        (at_printer, "/set-up/printer", printer),
        ("page-begin-products", "/set-up/products", products),
        ("page-begin-lots", "/set-up/animal", lots),
    ];
    // As the pages of setting up have it: what may wait holds nobody up once there is something to label.
    let waits = |path: &str| {
        let step = path.trim_start_matches("/set-up/");
        found.begun.products && super::set_up::may_wait(step)
    };
    let next = steps
        .iter()
        .position(|(_, path, done)| !done && !waits(path));
    let all = steps.into_iter().enumerate();
    all.map(|(nth, (key, path, done))| Step {
        says: words.t(key),
        done,
        path: Some(path).filter(|_| may && (next == Some(nth) || !done && waits(path))),
    })
    .collect()
}
