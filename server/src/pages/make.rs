//! What is made of several things: ground, mixed, cured, cooked, smoked, rendered. First what it is to be, then
//! what goes in, by its recipe and what is on hand; a cure is worked out in grams before anybody weighs.

use super::bench::{self, DEGREES, Pick, Units, WEIGHT};
use super::bench_says::WorkSays;
use super::done::Done;
use super::hanging::{self, AtBench, Pieces};
use super::heat_shown::{self, Rule};
use super::makes::{makes, ways};
use super::managers::not_yours;
use super::parts::{self, PotPart};
use super::spoken::Words;
use super::way_back;
use crate::caller::{Asking, Caller};
use crate::error::{Error, Result};
use crate::read::names::Names;
use crate::read::seek::fold;
use crate::routes::query;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::code::LotCode;
use domain::family::Lists;
use domain::lot::PlaceId;
use domain::moment::day_of;
use domain::product::{Part, Product};
use domain::right::Right;
use domain::words::{DeedKind, StepKind};
use serde::Deserialize;
use serde_json::json;
use std::sync::Arc;
use store::Conn;

/// What can be made here, the likeliest first.
const KINDS: [StepKind; 6] = [
    StepKind::Cook,
    StepKind::Grind,
    StepKind::Mix,
    StepKind::Cure,
    StepKind::Smoke,
    StepKind::Render,
];

#[derive(Template)]
#[template(path = "make.html")]
struct ChoicePage {
    words: Words,
    title: String,
    /// Ways on: the address, the words.
    first: Vec<(String, String)>,
    others: Vec<(String, String)>,
    /// What hangs and can be broken down: where, what, how much.
    hangs: Vec<(String, String, String)>,
    /// What can be cut or packed now, likewise.
    pieces: Vec<(String, String, String)>,
    /// What cannot be now, and why: leads to the lot; and what is said over it.
    apart: Vec<(String, String, String)>,
    apart_says: String,
    /// What is said where there is nothing of it.
    none: Option<&'static str>,
    not_yours: Option<String>,
}

#[derive(Template)]
#[template(path = "pot.html")]
struct PotPage {
    words: Words,
    units: Units,
    title: String,
    body: String,
    is_cure: bool,
    heats: bool,
    /// What the recipe's shares are of: all of it, or the meat of a cure.
    base: String,
    parts: Vec<PotPart>,
    /// The water of the recipe, in grams.
    water: Option<String>,
    places: Vec<Pick>,
    benches: Vec<Pick>,
    printers: Vec<Pick>,
    numbers: [u32; 8],
    /// What the plan of a cure is asked with, where one can be worked out.
    plan: Option<String>,
    strength: String,
    boiled: Option<(String, String)>,
    rule: Rule,
    /// Is it asked whether the meat is stuffed?
    asks_stuffed: bool,
    clock: heat_shown::Clock,
    /// How many readings there are already.
    read_before: usize,
    sentence: String,
    may: bool,
    /// Who may not, and whom to ask.
    not_yours: Option<String>,
    /// What came in since, with its undo.
    done: Option<Done>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The lot that it is made of.
    lot: Option<String>,
    /// What it is to be.
    product: Option<String>,
    /// What was done since somebody was led away from here: what was lacking came in.
    did: Option<String>,
}

/// What is to be done?
pub async fn kinds(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, |app, conn, asked: &Asked| {
        let names = Names::load(app, conn)?;
        let words = Words::of(&names);
        let of = asked.lot.as_ref();
        let of = of.map_or_else(String::new, |lot| {
            format!("?lot={}", super::find::encoded(lot))
        });
        let each = KINDS.map(|kind| {
            let says = words.headed(DeedKind::from(kind).says());
            (format!("/make/{}{of}", kind.as_str()), says)
        });
        let not_yours = not_yours(app, &words, Right::Work);
        let may = not_yours.is_none();
        Ok(ChoicePage {
            title: words.t("page-make"),
            hangs: match may && asked.lot.is_none() {
                true => hanging::lots(app, conn, &names)?,
                false => Vec::new(),
            },
            first: each.into_iter().filter(|_| may).collect(),
            others: Vec::new(),
            pieces: Vec::new(),
            apart: Vec::new(),
            apart_says: String::new(),
            none: None,
            not_yours,
            words,
        })
    })
    .await
}

/// What it is to be, or, where that is chosen, what goes in.
pub async fn page(request: HttpRequest, asking: Asking, kind: web::Path<String>) -> HttpResponse {
    if let Some(wish) = AtBench::parse(&kind) {
        return super::from_record(asking, move |app, conn| bench_choice(app, conn, wish)).await;
    }
    let Some(kind) = KINDS.into_iter().find(|of| of.as_str() == kind.as_str()) else {
        let path = format!("/make/{kind}");
        let error = Error::not_found(super::says::PageSays::NothingHere { path });
        return super::trouble(asking.speech(), &error);
    };
    match query::<Asked>(&request) {
        Ok(asked) if asked.product.is_some() => {
            super::from_record(asking, move |app, conn| pot(app, conn, kind, &asked)).await
        }
        Ok(asked) => {
            super::from_record(asking, move |app, conn| choice(app, conn, kind, &asked)).await
        }
        Err(error) => super::trouble(asking.speech(), &error),
    }
}

/// Is it plain mince of the animal that somebody brought meat of? It takes any cut, whatever its recipe names.
fn is_its_mince(kind: StepKind, of: &str, code: &str, lists: &Lists) -> bool {
    let species = |code: &str| lists.products.get(code).and_then(|product| product.species);
    let parts = lists.recipes.get(code);
    let is_plain = parts.is_some_and(|parts| {
        parts
            .iter()
            .all(|part| species(&part.product) == species(code))
    });
    kind == StepKind::Grind && species(of).is_some() && species(of) == species(code) && is_plain
}

fn choice(app: &Caller<'_>, conn: &mut Conn, kind: StepKind, asked: &Asked) -> Result<ChoicePage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let standing = app.standing(conn)?;
    let lists = &standing.lists;
    let lot = match &asked.lot {
        Some(lot) => Some(crate::read::lot_named(app.app(), conn, lot)?),
        None => None,
    };
    let of = match &lot {
        Some(lot) => Some(app.product(conn, lot.version_id)?.code.clone()),
        None => None,
    };
    let mut likely = store::places::made_by(conn, kind.as_str(), of.as_deref())?;
    let mut others: Vec<String> = Vec::new();
    let mut listed: Vec<(&String, &Vec<Part>)> = lists.recipes.iter().collect();
    listed.sort_by_cached_key(|(code, _)| fold(&names.product(code)));
    for (code, recipe) in listed {
        let product = lists.products.get(code.as_str());
        if likely.contains(code) || !product.is_some_and(|product| makes(kind, product)) {
            continue;
        }
        let holds = match &of {
            Some(of) => {
                recipe.iter().any(|part| part.product == *of) || is_its_mince(kind, of, code, lists)
            }
            // Where nothing was brought along, nothing is beside the point.
            None => true,
        };
        match holds {
            true => likely.push(code.clone()),
            false => others.push(code.clone()),
        }
    }
    // Of what nothing is usually made, what is of the same animal comes before goat curry of pork.
    if let Some(of) = of.as_ref().filter(|_| likely.is_empty()) {
        let animal = |code: &str| lists.products.get(code).and_then(|product| product.species);
        (likely, others) = others
            .into_iter()
            .partition(|code| animal(of).is_some() && animal(code) == animal(of));
    }
    let code = lot
        .map(|lot| lot.code().map(|code| format!("&lot={code}")))
        .transpose()?;
    let code = code.unwrap_or_default();
    let way = |product: &String| {
        let path = format!("/make/{}?product={product}{code}", kind.as_str());
        (path, names.product(product))
    };
    Ok(ChoicePage {
        title: words.t(match of {
            Some(_) => "page-make-becomes",
            None => title(kind),
        }),
        first: likely.iter().map(way).collect(),
        others: others.iter().map(way).collect(),
        hangs: Vec::new(),
        pieces: Vec::new(),
        apart: Vec::new(),
        apart_says: String::new(),
        none: (likely.is_empty() && others.is_empty()).then_some("page-make-none"),
        not_yours: None,
        words,
    })
}

/// Which piece is cut, what is packed: whoever has not got it in hand yet chooses it here.
fn bench_choice(app: &Caller<'_>, conn: &mut Conn, wish: AtBench) -> Result<ChoicePage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let not_yours = not_yours(app, &words, Right::Work);
    let Pieces { free, apart } = match not_yours {
        None => hanging::pieces(app, conn, &names, wish)?,
        Some(_) => Pieces::default(),
    };
    let lots = apart.len();
    let (title, none) = wish.asks();
    Ok(ChoicePage {
        title: words.t(title),
        first: Vec::new(),
        others: Vec::new(),
        hangs: Vec::new(),
        none: (free.is_empty() && not_yours.is_none()).then_some(none),
        pieces: free,
        apart,
        apart_says: words.say(super::says::PageSays::MakeApart { lots }),
        not_yours,
        words,
    })
}

/// What is asked first.
fn title(kind: StepKind) -> &'static str {
    match kind {
        StepKind::Grind => "page-make-grind",
        StepKind::Mix => "page-make-mix",
        StepKind::Cure => "page-make-cure",
        StepKind::Smoke => "page-make-smoke",
        StepKind::Render => "page-make-render",
        _ => "page-make-cook",
    }
}

fn pot(app: &Caller<'_>, conn: &mut Conn, kind: StepKind, asked: &Asked) -> Result<PotPage> {
    let code = asked.product.clone().unwrap_or_default();
    let standing = app.standing(conn)?;
    let product = standing.lists.products.get(&code).cloned();
    let product: Arc<Product> = product.ok_or_else(|| {
        let path = format!("/make/{}?product={code}", kind.as_str());
        Error::not_found(super::says::PageSays::NothingHere { path })
    })?;
    let recipe = standing
        .lists
        .recipes
        .get(&code)
        .cloned()
        .unwrap_or_default();
    let brought = match &asked.lot {
        Some(lot) => Some(crate::read::lot_named(app.app(), conn, lot)?),
        None => None,
    };
    let reading = parts::load(app.app(), conn, &recipe, brought.as_ref().map(|lot| lot.id))?;
    let names = Names::of(reading.standing.clone(), app.speech(reading.kitchen()));
    let words = Words::of(&names);
    let zone = reading.kitchen().zone;
    let today = day_of(app.now(), zone);
    let lists = &reading.standing.lists;
    let brought: Option<LotCode> = brought.map(|lot| lot.code()).transpose()?;
    let brought = brought.map(|code| code.to_string());
    let lot = brought.as_ref().map(|lot| format!("&lot={lot}"));
    let here = format!(
        "/make/{}?product={code}{}",
        kind.as_str(),
        lot.unwrap_or_default()
    );
    let mut parts = parts::parts(&reading, &names, kind, &recipe, brought.as_deref(), today);
    if parts.iter().any(|part| part.rows.is_empty()) {
        let received = store::places::received_lately(conn)?;
        for part in parts.iter_mut().filter(|part| part.rows.is_empty()) {
            let comes_in = received.iter().any(|(of, _)| *of == part.product);
            part.ways = ways(lists, &part.product, comes_in, &here);
        }
    }
    if app.who.may(Right::SetUp) {
        for part in parts.iter_mut().filter(|part| part.role == "curing-salt") {
            let entry = format!("/lists/products/{}", part.product);
            part.strength_at = Some(way_back::leading(&entry, &here));
        }
    }
    let in_list = |part: &Part| lists.products.get(&part.product).cloned();
    let is_meat = |part: &&Part| in_list(part).is_some_and(|of| of.species.is_some());
    let is_water = |part: &&Part| in_list(part).is_some_and(|of| parts::is_water(&of));
    let is_cure = kind == StepKind::Cure;
    let base = recipe.iter().filter(|part| !is_cure || is_meat(part));
    let base = bench::in_grams(base.map(|part| part.grams).sum());
    let place_of = |key: i32| lists.place_code(PlaceId(key)).to_owned();
    let worked = store::places::worked_at(conn, kind.as_str())?.map(place_of);
    let bench = bench::work_place(lists, kind, worked);
    let laid = store::places::laid_at(conn, &code)?.map(place_of);
    let printers = crate::read::prints::printers(conn)?;
    let printers = printers.into_iter().map(|of| Pick::of(&of.code, of.name));
    let name = names.product(&code);
    let heats = matches!(kind, StepKind::Cook | StepKind::Smoke | StepKind::Render);
    let law = reading.law;
    let code_year = heat_shown::code_year(&reading);
    Ok(PotPage {
        title: words.say(super::says::PageSays::ActOf {
            act: words.headed(DeedKind::from(kind).says()),
            name: name.clone(),
        }),
        body: json!({ "kind": kind.as_str(), "inputs": [], "outputs": [{ "product": code }],
            "added": [{ "what": "water" }] })
        .to_string(),
        water: recipe
            .iter()
            .find(is_water)
            .map(|part| bench::in_grams(part.grams)),
        places: bench::places(&names, laid.as_deref().or(Some(&bench))),
        benches: bench::places(&names, Some(&bench)),
        printers: printers.collect(),
        numbers: [1, 2, 4, 6, 8, 10, 12, 20],
        plan: parts::plan(&product, &parts),
        strength: parts::listed_strength(lists, &parts),
        boiled: heat_shown::boiled(&words, law, &product)
            .filter(|_| heats && kind != StepKind::Smoke),
        rule: match heats {
            true => heat_shown::of_cook(&words, law, &product, code_year),
            false => Rule::default(),
        },
        asks_stuffed: heats && heat_shown::asks_stuffed(&product),
        clock: heat_shown::Clock::of(app.now(), zone),
        read_before: 0,
        sentence: words.say(sentence(kind, name)),
        not_yours: not_yours(app, &words, Right::Work),
        may: app.who.may(Right::Work),
        done: Done::of(app, conn, &words, asked.did.as_deref(), &here)?,
        units: Units::of(&words),
        is_cure,
        heats,
        base,
        parts,
        words,
    })
}

fn sentence(kind: StepKind, name: String) -> WorkSays {
    match kind {
        StepKind::Grind => WorkSays::Grind { name },
        StepKind::Mix => WorkSays::Mix { name },
        StepKind::Cure => WorkSays::Cure { name },
        StepKind::Smoke => WorkSays::Smoke { name },
        StepKind::Render => WorkSays::Render { name },
        _ => WorkSays::Cook { name },
    }
}
