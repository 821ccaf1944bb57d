//! The page of a lot: what it is, its label, its family, where it went.

use super::acts::{self, ActKind, Button};
use super::countries::{self, Missing};
use super::done::Done;
use super::forward::Forward;
use super::history::{self, Line};
use super::managers::managers;
use super::origins::Origins;
use super::packs::{self, Run};
use super::says::PageSays;
use super::spoken::Words;
use super::{bag_strength, cook_core, cure_room, label, tree};
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::read::names::Names;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use chrono::NaiveDate;
use domain::dates::Because;
use domain::family::{LotView, descendants, lying, origins};
use domain::lot::{Lot, brief};
use domain::moment::day_of;
use domain::right::Right;
use domain::stop::Stop;
use domain::words::{Being, DeedKind, StopKind};
use serde::Deserialize;
use std::collections::BTreeMap;
use store::Conn;
use store::family::Extent;
use words::capital;

#[derive(Template)]
#[template(path = "lot.html")]
struct LotPage {
    words: Words,
    code: String,
    shown: String,
    name: String,
    note: Option<String>,
    voided: bool,
    /// What else stands in its way: the word for it, and why.
    stops: Vec<(String, String)>,
    product: String,
    use_by: String,
    stands: Option<String>,
    /// While it lies in its cure: when it is turned, and when it comes out.
    in_cure: Option<String>,
    because: Vec<Link>,
    /// Why it is raw, treated or ready.
    condition_because: Vec<Link>,
    /// What was corrected, and by whom.
    corrected: Vec<String>,
    on_hand: String,
    /// Of how much.
    made: String,
    made_at: String,
    kind: String,
    species: Option<String>,
    allergens: String,
    ingredients: BTreeMap<String, String>,
    packs: Vec<Run>,
    /// The label of the first pack on hand, or why it cannot be made.
    label: Option<std::result::Result<String, String>>,
    /// Where the picture of it is, and the printer that is to be asked first which paper it has.
    label_at: String,
    label_ask: Option<String>,
    /// Of which printer it comes out so, on which paper.
    label_on: Option<String>,
    /// What is to be told to whoever prints it.
    label_warnings: Vec<String>,
    /// Countries that a label will tell and nobody entered.
    countries: Vec<Missing>,
    origins: Origins,
    forward: Forward,
    /// The family for a wide screen and for a narrow one.
    tree: tree::Pictures,
    /// Where the picture of all that came of it is.
    picture_file: String,
    history: Vec<Line>,
    readings: Vec<history::Reading>,
    /// What may be done with it, the likeliest first.
    acts: Vec<Button>,
    done: Option<Done>,
    /// What counts did not find.
    missing: Option<Unexplained>,
    /// Why the counter does not sell it, and who may change that.
    not_sold: Option<NotSold>,
}

/// Packs that a count did not find: nobody has explained it.
struct Unexplained {
    says: String,
    /// Where they are counted again, and where what turned up is taken in.
    ways: Vec<(&'static str, String)>,
}

/// Why the counter does not sell it.
struct NotSold {
    says: String,
    /// Where that is changed; else whom to ask.
    change: Option<String>,
    ask: Option<String>,
}

/// What the page is asked: a pack that was scanned, a deed that was just done.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    pack: Option<u32>,
    did: Option<String>,
    /// Any word: why is it not for sale?
    why: Option<String>,
}

/// A link of why it has its date, or is what it is.
struct Link {
    says: String,
    source: String,
}

/// What the page tells of: why, and what was made from it.
const EXTENT: Extent = Extent {
    descendants: true,
    ..Extent::REASONED
};

/// A lot.
pub async fn page(request: HttpRequest, asking: Asking, code: web::Path<String>) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked| {
        read(app, conn, &code, asked)
    })
    .await
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str, asked: &Asked) -> Result<LotPage> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, EXTENT)?;
    let kitchen = reading.kitchen();
    let today = day_of(app.now(), kitchen.zone);
    let names = Names::of(reading.standing.clone(), app.speech(kitchen));
    let words = Words::of(&names);
    let view = reading.lot_view(id)?;
    let lot = &view.of.lot;
    let (product, went) = (&lot.product, &view.of.went);
    let origins = origins(&reading.family, id);
    let forward = descendants(&reading.family, &reading.standing.lists);
    // The pack that was scanned, where it is there.
    let shown = asked
        .pack
        .filter(|number| lot.packs.iter().any(|pack| pack.number == *number));
    let then = format!("/lots/{}", lot.code);
    let done = Done::of(app, conn, &words, asked.did.as_deref(), &then)?;
    let pack = brief::left(&lot.packs).next();
    let pack = pack.map(|first| shown.unwrap_or(first.number));
    let label = pack.map(|pack| {
        label::as_printed(app.app(), conn, &reading, id, Some(pack))
            .map_err(|error| words.say(error.problem().detail))
    });
    let drawn = || label.iter().flatten().next();
    let label_ask = drawn().and_then(|drawn| drawn.ask.clone());
    let label_on = drawn().and_then(|drawn| drawn.on.clone());
    let label_on = label_on.map(|(printer, size)| words.say(PageSays::AsPrinted { printer, size }));
    let told = label.iter().flatten().flat_map(|drawn| &drawn.warnings);
    let mut label_warnings: Vec<String> = told.map(|says| words.say(says.clone())).collect();
    label_warnings.extend(of_rest(&words, lot, view.of.made_by.kind, shown));
    let because = view.because.iter();
    let link = |link: &Because| Link {
        says: words.say(link.says.clone()),
        source: words.0.arg(&link.source(&reading.law.rows)),
    };
    let corrected = view.corrected.iter();
    let stands = view.use_by.and_then(|day| words.standing(day, today));
    let rules = &app.law.trade.cure_room;
    let lies = lying(&reading.family, [id], kitchen.zone, today, rules);
    let in_cure = lies.iter().filter(|_| !went.on_hand.is_none_left());
    let in_cure = in_cure.map(|view| cure_room::next(&words, view)).next();
    Ok(LotPage {
        countries: countries::missing(app, &words, &reading, id),
        words,
        name: names
            .product_of(&product.names)
            .unwrap_or_else(|| product.code.clone()),
        use_by: use_by(&words, &view),
        stands,
        in_cure,
        on_hand: words.grams(went.on_hand),
        made: words.say(match view.of.made_by.kind {
            DeedKind::Receive => PageSays::OfReceived { made: went.made },
            _ => PageSays::OfMade { made: went.made },
        }),
        made_at: words.minute(lot.made_at, kitchen.zone),
        kind: words.raw_or_ready(lot),
        species: (!lot.species.is_empty()).then(|| words.species(&lot.species)),
        allergens: words.allergens(lot),
        packs: packs::runs(&lot.packs, &names, today),
        history: history::lines(&view, &names, app),
        readings: history::readings(&view, &names, &kitchen.entry.currency.0),
        origins: Origins::of(&origins, &names),
        forward: Forward::of(&forward, &names),
        label: label.map(|label| label.map(|drawn| drawn.svg)),
        label_at: format!("/lots/{}/label.svg?pack={}", lot.code, pack.unwrap_or(1)),
        label_ask,
        label_on,
        label_warnings,
        tree: tree::draw(&reading, id, &origins, &names),
        picture_file: format!("/api/lots/{}/family.svg", lot.code),
        acts: of_pack(acts_of(app, &words, &view, today), lot, shown),
        done,
        missing: unexplained(app, &words, lot),
        not_sold: (asked.why.is_some() && !product.sale.offered)
            .then(|| not_sold(app, &words, &product.code)),
        code: lot.code.to_string(),
        shown: shown.map_or_else(|| lot.code.shown(), |number| lot.shown(number)),
        note: view.of.note.clone(),
        voided: lot.voided,
        stops: stops(&words, &view),
        product: product.code.clone(),
        because: because.map(link).collect(),
        condition_because: view.condition_because.iter().map(link).collect(),
        corrected: corrected.map(|link| words.say(link.says.clone())).collect(),
        ingredients: view.stated.ingredients.clone(),
    })
}

/// The acts, of the pack that was scanned where there is one: nobody means all packs with one in hand.
fn of_pack(mut buttons: Vec<Button>, lot: &Lot, scanned: Option<u32>) -> Vec<Button> {
    let Some(number) = scanned.filter(|_| lot.packs.len() > 1) else {
        return buttons;
    };
    use ActKind::*;
    let pack = lot.packs.iter().find(|pack| pack.number == number);
    let kinds = [
        Discard, Serve, Move, Freeze, Thaw, Count, Ship, Return, TakeBack,
    ];
    let can = kinds
        .iter()
        .filter(|kind| pack.is_some_and(|pack| kind.is_for(pack)));
    let path = |kind: &ActKind| format!("/lots/{}/{}", lot.code, kind.as_str());
    let each: Vec<String> = can.map(path).collect();
    for button in buttons.iter_mut().filter(|of| each.contains(&of.path)) {
        button.path += &format!("?packs={number}");
    }
    let sells = format!("/counter?code={}", lot.code);
    let is_there = pack.is_some_and(|pack| !pack.now.left.is_none_left());
    for button in buttons.iter_mut().filter(|of| is_there && of.path == sells) {
        button.path += &format!("/{number}");
    }
    buttons
}

/// Its acts; what proves a cook before all else.
fn acts_of(app: &Caller<'_>, words: &Words, view: &LotView<'_>, today: NaiveDate) -> Vec<Button> {
    let mut buttons = acts::buttons(words, &app.who, view.of, app.now(), today);
    if let Some(proof) = cook_core::button(words, app, view) {
        buttons
            .iter_mut()
            .for_each(|button| button.first &= !proof.first);
        buttons.insert(0, proof);
    }
    buttons.extend(bag_strength::button(words, app, view));
    buttons
}

/// What is missing of it, with the next act.
fn unexplained(app: &Caller<'_>, words: &Words, lot: &Lot) -> Option<Unexplained> {
    let missing = lot.packs.iter();
    let missing: Vec<_> = missing
        .filter(|pack| !lot.voided && pack.now.being == Being::Missing)
        .collect();
    let first = missing.first()?;
    let numbers: Vec<String> = missing.iter().map(|pack| pack.number.to_string()).collect();
    let (code, named) = (&lot.code, numbers.join(","));
    let says = words.say(PageSays::LotMissing {
        packs: missing.len(),
        numbers: numbers.join(", "),
        weight: missing.iter().map(|pack| pack.made).sum(),
    });
    let ways = [
        (
            "today-do-count-again",
            format!("/lots/{code}/count?packs={named}"),
        ),
        (
            "page-act-adopt",
            format!("/adopt?is={code}/{}", first.number),
        ),
    ];
    let may = app.who.may(Right::Work);
    let ways = ways.into_iter().filter(|_| may).collect();
    Some(Unexplained { says, ways })
}

/// Why the counter does not sell it: the list of products does not offer it.
fn not_sold(app: &Caller<'_>, words: &Words, product: &str) -> NotSold {
    let may = app.who.may(Right::SetUp);
    let code: String = form_urlencoded::byte_serialize(product.as_bytes()).collect();
    NotSold {
        says: words.t("page-lot-not-sold"),
        change: may.then(|| format!("/lists/products/{code}")),
        ask: (!may).then(|| managers(app)).flatten(),
    }
}

/// What stands in its way; that it was voided is told in words of its own.
fn stops(words: &Words, view: &LotView<'_>) -> Vec<(String, String)> {
    let stops = view.stops.iter();
    let stops = stops.filter(|stop| stop.kind != StopKind::Voided);
    let told = |stop: &Stop| {
        let kind = capital(&words.say(stop.kind.says()));
        (format!("{kind}."), words.say(stop.says.clone()))
    };
    stops.map(told).collect()
}

/// That the label of what came in is for what is left of it, where some is gone.
fn of_rest(words: &Words, lot: &Lot, made_by: DeedKind, shown: Option<u32>) -> Option<String> {
    let pack =
        brief::left(&lot.packs).find(|pack| shown.is_none_or(|number| pack.number == number));
    let pack = pack.filter(|_| made_by == DeedKind::Receive && !lot.product.sale.offered)?;
    let (made, left) = (pack.made, pack.now.left);
    (left < made).then(|| words.say(PageSays::LabelOfRest { made, left }))
}

/// The last day; or what stands in its place.
fn use_by(words: &Words, view: &LotView<'_>) -> String {
    let mut left = brief::left(&view.of.lot.packs).peekable();
    if left.peek().is_none() {
        return words.t("page-nothing-left");
    }
    match (view.use_by, left.find_map(|pack| pack.now.days_frozen())) {
        (Some(day), _) => words.day(day),
        (None, Some(days)) => words.once_thawed(days),
        (None, None) => words.t("page-no-date"),
    }
}
