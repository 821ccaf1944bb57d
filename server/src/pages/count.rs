//! The count of a recall, place by place as one walks: scan each pack as it is put on the held shelf. The code of a pack
//! that lies there as the book has it is counted by the scan alone; what differs is asked.

use super::bench::{self, Units, WEIGHT};
use super::done::Done;
use super::incident::{clock, figures, title, waiting_at};
use super::incident_held::held;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::named::named;
use crate::read::names::Names;
use crate::read::seek::fold;
use crate::recall;
use crate::recall::facts::{
    IncidentFacts, LotFacts, PackFacts, PlaceFacts, in_language, is_uncounted,
};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::grams::Grams;
use domain::incident::CountState;
use serde::Deserialize;
use store::Conn;

#[derive(Template)]
#[template(path = "incident-count.html")]
struct Count {
    words: Words,
    units: Units,
    title: String,
    number: String,
    /// The place, its name, and which of how many it is.
    place: String,
    head: String,
    says: String,
    places: Vec<Stop>,
    /// Where to go when all is counted here.
    next: Option<(String, String)>,
    lots: Vec<Row>,
    /// What was scanned.
    scanned: Option<Scanned>,
    /// What was scanned before, and whose weight nobody has said yet.
    unanswered: Vec<Scanned>,
    /// All of them, as an address says them.
    asked: String,
    /// Where all is counted: what is done next, where on the page of the recall.
    decide: Option<(&'static str, &'static str)>,
    /// What may be a tub without a label, by code.
    products: Vec<(String, String)>,
    since: String,
    figures: Vec<(String, String)>,
    open: bool,
    /// What was just counted, with its undo.
    done: Option<Done>,
}

/// A place on the way.
struct Stop {
    path: String,
    says: String,
    here: bool,
    /// Is everything there counted?
    done: bool,
}

/// A lot at this place.
struct Row {
    code: String,
    shown: String,
    name: String,
    book: usize,
    found: usize,
    stands: String,
    /// Those that nobody found yet: each as it is when it was found without its label being read.
    waiting: Vec<(u32, String)>,
    /// The tags of those that are held here.
    tags: Option<String>,
    /// The deed that says they are not here.
    missing: Option<(String, String)>,
}

/// The most questions that are kept open at once.
const MOST_OPEN: usize = 12;

/// What a scan found.
struct Scanned {
    says: String,
    /// The deed that counts it.
    body: Option<String>,
    /// What it should weigh, in grams, and as it is typed in the reader's unit.
    grams: String,
    typed: String,
    /// Is it counted by the scan alone?
    alone: bool,
    /// Its code, where its weight is asked and nobody has said it yet: the next scan does not end that.
    waits: Option<String>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    place: Option<String>,
    code: Option<String>,
    /// Those whose weight was asked before and nobody said, with commas between.
    open: Option<String>,
    did: Option<String>,
}

/// The count.
pub async fn page(request: HttpRequest, asking: Asking, number: web::Path<String>) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked: &Asked| {
        view(app, conn, &number, asked)
    })
    .await
}

fn view(app: &Caller<'_>, conn: &mut Conn, number: &str, asked: &Asked) -> Result<Count> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let facts = recall::of_number(app, conn, number)?;
    let first = facts.places.iter().find(|place| place.uncounted > 0);
    let first = first
        .or(facts.places.first())
        .map(|place| place.place.clone());
    let place = asked.place.clone().or(first).unwrap_or_default();
    let ours = app.ours();
    let scanned = match asked.code.as_deref().filter(|code| !code.trim().is_empty()) {
        Some(code) => Some(scan(&words, &facts, &place, code, &ours)?),
        None => None,
    };
    let before = asked.open.as_deref().unwrap_or_default().split(',');
    let before = before
        .filter(|code| !code.trim().is_empty())
        .take(MOST_OPEN);
    let mut unanswered = Vec::new();
    for code in before {
        let again = scan(&words, &facts, &place, code, &ours)?;
        let is_new = scanned.as_ref().is_none_or(|now| now.waits != again.waits);
        unanswered.extend(Some(again).filter(|again| is_new && again.waits.is_some()));
    }
    let open = unanswered.iter().chain(&scanned);
    let open: Vec<String> = open.filter_map(|one| one.waits.clone()).collect();
    let lots: Vec<Row> = facts
        .lots
        .iter()
        .filter_map(|lot| row(&words, lot, &place, facts.holds && !facts.closed))
        .collect();
    let then = format!("/recall/{}/count?place={place}", facts.number);
    let done = Done::of(app, conn, &words, asked.did.as_deref(), &then)?;
    let nth = facts.places.iter().position(|of| of.place == place);
    let here = nth.map(|nth| &facts.places[nth]);
    let last = clock(&words, &facts).pop();
    Ok(Count {
        title: title(&words, &facts),
        number: facts.number.clone(),
        head: words.say(PageSays::CountAt {
            place: facts.place(&place).to_owned(),
            nth: nth.map_or(0, |nth| nth + 1),
            places: facts.places.len(),
        }),
        says: words.say(PageSays::CountFound {
            found: here.map_or(0, |here| found(&facts, here)),
            packs: here.map_or(0, |here| here.packs),
            missing: here.map_or(0, |here| missing(&facts, here)),
        }),
        places: facts
            .places
            .iter()
            .map(|of| Stop {
                path: format!("/recall/{}/count?place={}", facts.number, of.place),
                says: words.say(PageSays::CountPlace {
                    place: of.name.clone(),
                    found: found(&facts, of),
                    packs: of.packs,
                    missing: missing(&facts, of),
                }),
                here: of.place == place,
                done: of.uncounted == 0,
            })
            .collect(),
        next: next(&facts, &place).map(|of| {
            let path = format!("/recall/{}/count?place={}", facts.number, of.place);
            let place = of.name.clone();
            (path, words.say(PageSays::CountNext { place }))
        }),
        products: products(&names, &facts),
        since: last.map_or_else(String::new, |(what, _, more)| {
            words.say(PageSays::AndMore { what, more })
        }),
        figures: figures(&words, &facts),
        units: Units::of(&words),
        open: !facts.closed,
        decide: (facts.uncounted == 0 && !facts.closed).then(|| match held(&words, &facts) {
            Some(_) => ("decide", "page-count-decide"),
            None => ("close", "page-incident-close"),
        }),
        unanswered,
        asked: open.join(","),
        done,
        lots,
        scanned,
        place,
        words,
    })
}

/// How many packs were found at a place.
fn found(facts: &IncidentFacts, at: &PlaceFacts) -> usize {
    let gone = at.uncounted + missing(facts, at);
    at.packs.saturating_sub(gone)
}

/// How many were looked for there in vain.
fn missing(facts: &IncidentFacts, at: &PlaceFacts) -> usize {
    let packs = facts.lots.iter().flat_map(|lot| &lot.packs);
    let here = packs.filter(|pack| pack.place == at.place && pack.sums.book_grams.0 > Grams::ZERO);
    here.filter(|pack| pack.state == CountState::Missing.as_str())
        .count()
}

/// The next place on the way where something is still to be counted; only once all is counted here.
fn next<'a>(facts: &'a IncidentFacts, place: &str) -> Option<&'a PlaceFacts> {
    let nth = facts.places.iter().position(|of| of.place == place)?;
    let (before, after) = facts.places.split_at(nth);
    let mut onward = after.iter().chain(before);
    let here = onward.next().filter(|here| here.uncounted == 0);
    here.and_then(|_| onward.find(|of| of.uncounted > 0))
}

/// The products in scope first, then all others.
fn products(names: &Names, facts: &IncidentFacts) -> Vec<(String, String)> {
    let mut all = names.products();
    let of = |code: &String| facts.lots.iter().any(|lot| lot.product == *code);
    all.sort_by_cached_key(|(code, name)| (!of(code), fold(name)));
    all
}

fn row(words: &Words, lot: &LotFacts, place: &str, held: bool) -> Option<Row> {
    let here: Vec<&PackFacts> = lot
        .packs
        .iter()
        .filter(|pack| pack.place == place)
        .collect();
    if here.is_empty() {
        return None;
    }
    let waiting = waiting_at(lot, place);
    let found = here
        .iter()
        .filter(|pack| pack.state == CountState::Found.as_str());
    let book = here
        .iter()
        .filter(|pack| pack.sums.book_grams.0 > Grams::ZERO);
    let missing: Vec<String> = here
        .iter()
        .filter(|pack| pack.state == CountState::Missing.as_str())
        .map(|pack| pack.pack.to_string())
        .collect();
    let stands = match (missing.is_empty(), waiting.is_empty()) {
        (false, _) => words.say(PageSays::CountMissing {
            packs: missing.join(", "),
        }),
        (true, true) => words.t("page-incident-all-there"),
        (true, false) => String::new(),
    };
    let numbers: Vec<String> = waiting.iter().map(u32::to_string).collect();
    let packs: Vec<String> = waiting
        .iter()
        .map(|pack| format!(r#"{{"pack":{pack},"missing":true}}"#))
        .collect();
    let body = format!(
        r#"{{"lot":"{}","place":"{place}","packs":[{}]}}"#,
        lot.code,
        packs.join(",")
    );
    let not_here = words.say(PageSays::CountNotHere {
        packs: numbers.join(", "),
    });
    let left: Vec<String> = lot.left_at(place).iter().map(u32::to_string).collect();
    let tags = (held && !left.is_empty()).then(|| {
        let packs = left.join(",");
        format!(
            "/api/lots/{}/labels.pdf?packs={packs}&template=hold",
            lot.code
        )
    });
    Some(Row {
        tags,
        code: lot.code.clone(),
        shown: lot.shown.clone(),
        name: lot.name(words.lang()),
        book: book.count(),
        found: found.count(),
        stands,
        missing: (!waiting.is_empty()).then_some((body, not_here)),
        waiting: waiting
            .iter()
            .map(|pack| {
                let pack = lot.packs.iter().find(|of| of.pack == *pack);
                let weight = pack.map_or(Grams::ZERO, |pack| pack.sums.left_grams.0);
                let number = pack.map_or(0, |pack| pack.pack);
                let says = PageSays::CountPack {
                    pack: number,
                    weight,
                };
                (number, words.say(says))
            })
            .collect(),
    })
}

/// What a code means here: a pack to count, one that was counted, one that is more than the book, none of ours.
fn scan(
    words: &Words,
    facts: &IncidentFacts,
    place: &str,
    code: &str,
    ours: &[String],
) -> Result<Scanned> {
    let none = |says: PageSays| Scanned {
        says: words.say(says),
        body: None,
        grams: String::new(),
        typed: String::new(),
        alone: false,
        waits: None,
    };
    let read = named(code, "code", ours)?;
    let shown = read.code.shown();
    let text = read.code.to_string();
    let Some(lot) = facts.lots.iter().find(|lot| lot.code == text) else {
        return Ok(none(PageSays::CountOutside { lot: shown }));
    };
    let name = in_language(&lot.names, words.lang(), &lot.product);
    let number = read.pack.or(match lot.packs.as_slice() {
        [one] => Some(one.pack),
        _ => None,
    });
    let Some(number) = number else {
        return Ok(none(PageSays::CountWhich { name, lot: shown }));
    };
    let pack = lot.packs.iter().find(|pack| pack.pack == number);
    let label = format!("{shown}/{number}");
    let body = format!(r#"{{"lot":"{text}","place":"{place}","packs":[{{"pack":{number}}}]}}"#);
    let Some(pack) = pack else {
        // By the book nothing of it is here: sold, used or thrown away.
        return Ok(Scanned {
            says: words.say(PageSays::CountSurplus { name, pack: label }),
            body: Some(body),
            grams: String::new(),
            typed: String::new(),
            alone: false,
            waits: Some(format!("{text}/{number}")),
        });
    };
    let weight = pack.sums.left_grams.0;
    let elsewhere = pack.place != place;
    let says = match (is_uncounted(pack), elsewhere) {
        (false, _) => PageSays::CountAgain {
            name,
            pack: label,
            weight,
        },
        (true, true) => PageSays::CountElsewhere {
            name,
            pack: label,
            place: facts.place(&pack.place).to_owned(),
        },
        (true, false) if pack.opened => PageSays::CountOpened {
            name,
            pack: label,
            weight,
        },
        (true, false) => PageSays::CountThis {
            name,
            pack: label,
            weight,
        },
    };
    Ok(Scanned {
        says: words.say(says),
        body: Some(body),
        grams: bench::in_grams(weight),
        typed: bench::typed(words, weight, Units::of(words).pot),
        // An opened pack is weighed; one that is whole weighs what its label says.
        alone: is_uncounted(pack) && !pack.opened,
        waits: (is_uncounted(pack) && pack.opened).then(|| format!("{text}/{number}")),
    })
}
