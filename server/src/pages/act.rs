//! One act on a lot: what it is about, what is chosen, the deed as a sentence, and one button that does it.
//!
//! The form is one call of the documented API: the page only says which fields it has.

use super::act_packs::{gone, is_sought, meant, numbers, runs, told};
use super::acts::{ActKind, may};
use super::bench::{Units, WEIGHT};
use super::done::Done;
use super::fitting;
use super::house_cuts::made_of_alone;
use super::managers::not_yours;
use super::odd;
use super::says::PageSays;
use super::spoken::Words;
use super::way_back;
use crate::caller::{Asking, Caller};
use crate::error::{Error, Result};
use crate::read::LoadedFamily;
use crate::read::names::Names;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::family::Lists;
use domain::grams::Grams;
use domain::lot::{Lot, Pack, PlaceId};
use domain::moment::day_of;
use domain::right::Right;
use domain::words::{Being, State};
use serde::Deserialize;
use serde_json::{Value, json};
use store::Conn;
use store::family::Extent;

#[derive(Template)]
#[template(path = "act.html")]
struct ActPage {
    words: Words,
    kind: ActKind,
    title: String,
    /// The deed and what it is done with: `Pack: pork liver`.
    heading: String,
    shown: String,
    lot: String,
    /// What is there: how much, and where.
    told: String,
    /// Where the deed is sent.
    call: &'static str,
    /// What the deed says already.
    body: String,
    units: Units,
    /// How much there is to pack, in grams.
    most: String,
    /// Fewer grams of all that there is nobody packs without a question.
    least: i64,
    /// Where a product is added that is not among them, for who may.
    adds: Option<String>,
    /// The packs that are meant, as they are typed: `1-4, 7`.
    packs: String,
    /// All that there are, likewise.
    there: String,
    /// Where the others went.
    gone: Option<String>,
    /// Each pack, for a count.
    each: Vec<Each>,
    /// The last pack that is counted here, where more are to be counted after it.
    next: Option<u32>,
    places: Vec<Choice>,
    products: Vec<Choice>,
    numbers: Vec<u32>,
    whys: Vec<Choice>,
    printers: Vec<Choice>,
    /// The sentence, with the names of fields in braces.
    sentence: String,
    button: String,
    may: bool,
    /// Who may not, and whom to ask.
    not_yours: Option<String>,
    asks_why: bool,
    /// Who it goes to or comes from: the field and its words.
    asks_whom: Option<(&'static str, String)>,
    asks_where: bool,
    needs_place: bool,
    /// What led here: a receipt that goes back at once.
    done: Option<Done>,
}

struct Each {
    nth: usize,
    number: u32,
    /// What the book has of it, in grams: `1125`; nothing where it is weighed anew.
    grams: String,
    /// The same in the reader's unit, as it is typed.
    left: String,
}

/// Something to choose.
pub(super) struct Choice {
    /// Its code.
    pub(super) code: String,
    /// Its words.
    pub(super) name: String,
    /// What is to be known before it is chosen.
    pub(super) more: Option<String>,
    /// Is it chosen already?
    pub(super) chosen: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    packs: Option<String>,
    /// The pack up to which it was counted already.
    after: Option<u32>,
    /// The reason that is known already, by its key.
    why: Option<String>,
    /// The deed that led here.
    did: Option<String>,
    /// What it is packed as, where that was just put on the list.
    product: Option<String>,
}

/// The most packs that are counted in one deed.
const MOST_COUNTED: usize = 24;

/// The page of an act.
pub async fn page(
    request: HttpRequest,
    asking: Asking,
    path: web::Path<(String, String)>,
) -> HttpResponse {
    let (code, act) = path.into_inner();
    let Some(kind) = ActKind::parse(&act) else {
        let path = format!("/lots/{code}/{act}");
        let error = Error::not_found(super::says::PageSays::NothingHere { path });
        return super::trouble(asking.speech(), &error);
    };
    super::asked(&request, asking, move |app, conn, asked| {
        read(app, conn, &code, kind, asked)
    })
    .await
}

fn read(
    app: &Caller<'_>,
    conn: &mut Conn,
    code: &str,
    kind: ActKind,
    asked: &Asked,
) -> Result<ActPage> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, Extent::ALONE)?;
    let names = Names::of(reading.standing.clone(), app.speech(reading.kitchen()));
    let words = Words::of(&names);
    let view = reading.lot_view(id)?;
    let lot = &view.of.lot;
    let named = asked.packs.as_deref().map(numbers);
    let packs = lot.packs.iter();
    let packs: Vec<&Pack> = packs
        .filter(|pack| kind.is_for(pack) || is_sought(kind, named.as_deref(), pack))
        .filter(|pack| {
            kind != ActKind::Count || named.as_ref().is_none_or(|of| of.contains(&pack.number))
        })
        .filter(|pack| asked.after.is_none_or(|after| pack.number > after))
        .collect();
    // Of many packs so many are counted at once, and the rest after them.
    let most = match kind {
        ActKind::Count => MOST_COUNTED,
        _ => packs.len(),
    };
    let more = packs.len() > most;
    let packs = &packs[..packs.len().min(most)];
    let next = packs.last().filter(|_| more).map(|last| last.number);
    // Of one pack in the hand that one is told, and not all that there are.
    let meant = meant(packs, named.as_deref());
    let lists = &reading.standing.lists;
    let chosen_place = match kind {
        ActKind::Freeze => store::places::where_frozen(conn)?.map(PlaceId),
        ActKind::Pack => packs.first().map(|pack| pack.now.place),
        _ => None,
    };
    let products = match kind {
        ActKind::Pack => products(conn, &words, &names, lists, lot, asked.product.as_deref())?,
        _ => Vec::new(),
    };
    let chosen_place = chosen_place.map(|place| lists.place_code(place).to_owned());
    let chosen_place = match kind {
        ActKind::Pack => put_at(conn, lists, lot, &products, chosen_place)?,
        _ => chosen_place,
    };
    // Where all of it is already is nowhere to move it to.
    let is_there = |code: &str| {
        kind == ActKind::Move
            && meant
                .iter()
                .all(|pack| lists.place_code(pack.now.place) == code)
    };
    let others = names.places_by_name().into_iter();
    let others = others.filter(|(code, _)| !is_there(code));
    let places = others.map(|(code, name)| Choice {
        chosen: chosen_place.as_deref() == Some(code),
        code: code.to_owned(),
        name: name.to_owned(),
        more: None,
    });
    let printers = match kind {
        ActKind::Pack => crate::read::prints::printers(conn)?,
        _ => Vec::new(),
    };
    let printers = printers
        .into_iter()
        .enumerate()
        .map(|(nth, printer)| Choice {
            chosen: nth == 0,
            code: printer.code,
            name: printer.name,
            more: None,
        });
    let printers: Vec<Choice> = printers.collect();
    let name = lot.product.name(words.lang()).to_owned();
    let shown = lot.code.shown();
    let bench = bench(&reading);
    let today = day_of(app.now(), reading.kitchen().zone);
    let is_over = |pack: &&Pack| pack.now.use_by.is_some_and(|day| day < today);
    let is_past = !meant.is_empty() && meant.iter().all(is_over);
    let here = format!("/lots/{}/{}", lot.code, kind.as_str());
    Ok(ActPage {
        title: words.t(kind.name()),
        heading: words.say(PageSays::ActOf {
            act: words.t(kind.name()),
            name: name.clone(),
        }),
        told: told(&words, &names, &meant, meant.len() < packs.len()),
        call: kind.call(),
        body: body(kind, lot, packs, &bench).to_string(),
        packs: asked.packs.clone().unwrap_or_else(|| match kind {
            // One at a time comes back: the first is as likely as another where they are several.
            ActKind::TakeBack => match packs {
                [one] => one.number.to_string(),
                _ => String::new(),
            },
            // Who throws one pack away must not throw away all of them.
            ActKind::Discard if packs.len() > 1 => String::new(),
            _ => runs(packs),
        }),
        there: runs(packs),
        gone: gone(&words, lot).filter(|_| lot.pack_count > 1),
        least: packs.first().map_or(0, |pack| odd::least_of(pack.now.left)),
        most: super::bench::in_grams(packs.first().map_or(Grams::ZERO, |pack| pack.now.left)),
        each: match kind {
            ActKind::Count => each(&words, packs),
            _ => Vec::new(),
        },
        next,
        places: places.collect(),
        products,
        numbers: (1..=12).chain([14, 15, 16, 18, 20, 24]).collect(),
        whys: kind.reasons(&words, asked.why.as_deref(), is_past),
        done: Done::of(app, conn, &words, asked.did.as_deref(), &here)?,
        sentence: words.say(kind.sentence(name, shown.clone())),
        button: match (kind, printers.is_empty()) {
            (ActKind::Pack, false) => words.t("page-act-pack-print"),
            _ => words.t(kind.name()),
        },
        asks_why: !kind.whys().is_empty(),
        asks_whom: match kind {
            ActKind::Ship => Some(("to", words.t("page-act-whom"))),
            ActKind::TakeBack => Some(("from", words.t("page-act-from-whom"))),
            _ => None,
        },
        asks_where: matches!(kind, ActKind::Move | ActKind::Freeze | ActKind::Thaw),
        needs_place: kind == ActKind::Move,
        adds: (kind == ActKind::Pack && app.who.may(Right::SetUp))
            .then(|| way_back::leading("/lists/products/new", &here)),
        units: Units::of(&words),
        not_yours: not_yours(app, &words, kind.right()),
        may: may(&app.who, kind) && !packs.is_empty(),
        printers,
        lot: lot.code.to_string(),
        words,
        kind,
        shown,
    })
}

/// What the form says already, before anybody chooses.
fn body(kind: ActKind, lot: &Lot, packs: &[&Pack], bench: &str) -> Value {
    let code = lot.code.to_string();
    match kind {
        ActKind::Pack => json!({
            "kind": "pack", "place": bench,
            "inputs": [{ "lot": code, "pack": packs.first().map(|pack| pack.number) }],
            "outputs": [{}],
        }),
        ActKind::Move => json!({ "lot": code }),
        ActKind::Freeze => json!({ "lot": code, "state": State::Frozen.as_str() }),
        ActKind::Thaw => json!({ "lot": code, "state": State::Chilled.as_str() }),
        ActKind::Discard => json!({ "kind": "discard", "lot": code }),
        ActKind::Serve => json!({ "kind": "serve", "lot": code }),
        ActKind::Ship => json!({ "kind": "ship", "lot": code }),
        ActKind::Return => json!({ "kind": "return", "lot": code }),
        ActKind::TakeBack => json!({ "lot": code }),
        ActKind::Count => json!({
            "lot": code,
            "packs": packs.iter()
                .map(|pack| json!({ "pack": pack.number })).collect::<Vec<_>>(),
        }),
    }
}

/// Where it is packed: a bench, else the first place of all.
pub(super) fn bench(reading: &LoadedFamily<'_>) -> String {
    let places = &reading.standing.lists.places;
    let bench = places.iter().find(|(_, place)| place.is_contact);
    let bench = bench.or_else(|| places.iter().next());
    bench.map(|(code, _)| code.clone()).unwrap_or_default()
}

/// Where packs are put: where it lies, unless what hangs or dries there is sliced or packed; then where such packs were
/// put last, else where they suit.
fn put_at(
    conn: &mut Conn,
    lists: &Lists,
    lot: &Lot,
    products: &[Choice],
    here: Option<String>,
) -> Result<Option<String>> {
    let packed = products.iter().find(|of| of.chosen).or(products.first());
    let packed = packed.and_then(|of| lists.products.get(&of.code));
    let Some(packed) = packed.filter(|of| lot.product.is_hung() && !of.is_hung()) else {
        return Ok(here);
    };
    let suits = |code: &String| fitting::suits(packed, code, lists.places.get(code)?);
    if here.as_ref().is_some_and(|here| suits(here) == Some(true)) {
        return Ok(here);
    }
    let last = store::places::laid_at(conn, &packed.code)?;
    let last = last.map(|place| lists.place_code(PlaceId(place)));
    Ok(fitting::proposed(lists, packed, last, &[]).map(str::to_owned))
}

/// What it is packed as: what was just put on the list for it, and what it was packed as last, first; then what the lists make of it alone, and itself. Where
/// nobody has packed it yet and several may be meant, none is chosen beforehand.
fn products(
    conn: &mut Conn,
    words: &Words,
    names: &Names,
    lists: &Lists,
    lot: &Lot,
    new: Option<&str>,
) -> Result<Vec<Choice>> {
    let new = new.filter(|code| lists.products.contains_key(*code));
    let packed = store::places::packed_as(conn, &lot.product.code)?;
    let mut codes: Vec<String> = new.map(str::to_owned).into_iter().collect();
    codes.extend(packed.into_iter().filter(|code| new != Some(code)));
    let known = !codes.is_empty();
    let made = made_of_alone(lists, lot);
    for code in made.into_iter().chain([lot.product.code.clone()]) {
        if !codes.contains(&code) {
            codes.push(code);
        }
    }
    let alone = codes.len() == 1;
    let sold = |code: &str| lists.products.get(code).is_some_and(|of| of.sale.offered);
    let choice = |(nth, code): (usize, String)| Choice {
        name: names.product(&code),
        more: (!sold(&code)).then(|| words.t("page-act-not-sold")),
        chosen: nth == 0 && (known || alone),
        code,
    };
    Ok(codes.into_iter().enumerate().map(choice).collect())
}

fn each(words: &Words, packs: &[&Pack]) -> Vec<Each> {
    let unit = Units::of(words).pot;
    let packs = packs.iter().enumerate();
    let each = packs.map(|(nth, pack)| {
        // What was missing is weighed before it is there.
        let known = (pack.now.being != Being::Missing).then_some(pack.now.left);
        Each {
            nth,
            number: pack.number,
            grams: known.map_or_else(String::new, super::bench::in_grams),
            left: known.map_or_else(String::new, |left| super::bench::typed(words, left, unit)),
        }
    });
    each.collect()
}
