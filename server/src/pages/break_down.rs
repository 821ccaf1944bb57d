//! A carcass on the bench: its picture with the cuts in the order of the knife, what each usually weighs, and
//! the one deed that all of it becomes.
//!
//! What is weighed stays on the device, by lot, until it is recorded (`assets/break-down.js`); the page only
//! says what there is to cut and to choose.

use super::acts::{ActKind, may};
use super::break_down_unit::Unit;
use super::house_cuts::{Choice, HouseCuts, made_of_alone};
use super::origins::Origins;
use super::says::{ActSays, PageSays};
use super::side::{self, Shown};
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::read::names::Names;
use crate::read::yields::EXTENT;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::family::{Lists, cut_off, origins};
use domain::grams::Grams;
use domain::lot::{Lot, Pack, PlaceId, brief};
use domain::product::YieldOf;
use domain::rows::RowId;
use domain::words::{ProductKind, StepKind};
use domain::yields::{CuttingStyle, Drawing, UsualCut};
use serde::Deserialize;
use store::Conn;

#[derive(Template)]
#[template(path = "break-down.html")]
struct BreakDownPage {
    words: Words,
    name: String,
    /// The act: a carcass is broken down, what came off it is cut up.
    title: String,
    kind: StepKind,
    /// Is there an order of the knife?
    by_style: bool,
    shown: String,
    lot: String,
    /// Whose animal, killed when, which carcass.
    told: String,
    pack: u32,
    /// What is on the table, in milligrams.
    all: i64,
    /// The same for the eye.
    all_says: String,
    /// Who is at work.
    by: String,
    zone: String,
    /// The kitchen's moment, in milliseconds since 1970: that of the device may be another.
    now: i64,
    bench: String,
    unit: Unit,
    picture: Option<String>,
    cuts: Vec<Cut>,
    /// Cuts of the style that the house has no product for.
    lacking: Vec<String>,
    /// What else may come off it.
    others: Vec<Choice>,
    /// How much may be left unweighed, in milligrams.
    loss: Option<(i64, i64)>,
    /// Where the order, and what is usual, come from.
    sources: Vec<String>,
    places: Vec<Choice>,
    /// Does nobody know which of them it is?
    asks_place: bool,
    printers: Vec<Choice>,
    /// The deed as a sentence; what is chosen stands in it by name, in brackets.
    sentence: String,
    may: bool,
}

/// One cut of the side.
struct Cut {
    nth: usize,
    key: String,
    name: String,
    /// As the trade calls it in full.
    in_full: String,
    from: Option<String>,
    /// The house's products that it may be; none where the list has none.
    products: Vec<Choice>,
    usual: i64,
    band: Option<(i64, i64)>,
    /// What is usual, for the eye.
    usual_says: String,
    band_says: String,
    /// What its row says, and the row, with a word where nobody has read it.
    usual_source: String,
    /// What of it came off this carcass before, for the eye.
    before: Option<String>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// Which of several carcasses of the lot.
    pack: Option<u32>,
}

/// The page of a carcass on the bench.
pub async fn page(request: HttpRequest, asking: Asking, code: web::Path<String>) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked| {
        read(app, conn, &code, asked)
    })
    .await
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str, asked: &Asked) -> Result<BreakDownPage> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, EXTENT)?;
    let names = Names::of(reading.standing.clone(), app.speech(reading.kitchen()));
    let words = Words::of(&names);
    let view = reading.lot_view(id)?;
    let lot = &view.of.lot;
    let mut packs = brief::left(&lot.packs).filter(|pack| ActKind::Pack.is_for(pack));
    let pack = packs.find(|pack| asked.pack.is_none_or(|number| number == pack.number));
    let (_, before) = cut_off(&reading.family, id);
    // What was cut off already is parted as the house likes it: there is no picture and no template of that.
    let is_carcass = lot.product.kind == ProductKind::Carcass;
    let style = style(app, lot).filter(|_| is_carcass);
    let house = HouseCuts::of(&reading, &names, lot.species.first().copied());
    let hung = view.of.made();
    let usual = style.map_or_else(Vec::new, |style| style.usual_cuts(hung));
    let cuts: Vec<Cut> = usual
        .iter()
        .enumerate()
        .map(|(nth, one)| {
            let row = source(app, &words, style, one);
            cut(&words, &house, &before, row, nth + 1, one)
        })
        .collect();
    let cuts = match style {
        None => of_a_cut(&house, &reading.standing.lists, lot),
        Some(_) => cuts,
    };
    let loss = style.and_then(|style| style.usual_loss(hung));
    let animals = Origins::of(&origins(&reading.family, id), &names).animals;
    let told = animals.iter().map(|animal| {
        let told = [&animal.what, &animal.killed, &animal.carcass];
        told.map(String::as_str).join(", ")
    });
    let lacking = cuts.iter().filter(|cut| cut.products.is_empty());
    let places = places(conn, &reading, &names, pack, is_carcass)?;
    let name = lot.product.name(words.lang()).to_owned();
    let shown = lot.code.shown();
    let all = pack.map_or(Grams::ZERO, |pack| pack.now.left);
    let unit = Unit::of(&words);
    Ok(BreakDownPage {
        told: words.apart(&told.collect::<Vec<_>>()),
        pack: pack.map_or(1, |pack| pack.number),
        all: all.milligrams(),
        all_says: unit.shown(&words, all),
        by: app.who.name.clone(),
        now: app.now().timestamp_millis(),
        zone: names.zone().name().to_owned(),
        bench: super::act::bench(&reading),
        unit,
        kind: match is_carcass {
            true => StepKind::BreakDown,
            false => StepKind::Cut,
        },
        title: words.t(name_of(lot)),
        picture: style.and_then(|style| picture(&words, style, &usual)),
        lacking: lacking.map(|cut| cut.name.clone()).collect(),
        others: others(&house, style, lot),
        by_style: style.is_some(),
        loss: loss.map(|(low, high)| (low.milligrams(), high.milligrams())),
        sources: style.map_or_else(Vec::new, |style| sources(app, &words, style)),
        asks_place: places.iter().all(|one| !one.chosen),
        places,
        printers: printers(conn)?,
        sentence: words.say(ActSays::BreakDown {
            name: name.clone(),
            lot: shown.clone(),
        }),
        may: may(&app.who, ActKind::Pack) && pack.is_some() && !lot.voided,
        lot: lot.code.to_string(),
        cuts,
        words,
        name,
        shown,
    })
}

/// What the house makes of one cut alone, by its lists: chops of a loin. Nothing is usual of them.
fn of_a_cut(house: &HouseCuts, lists: &Lists, lot: &Lot) -> Vec<Cut> {
    let made = made_of_alone(lists, lot);
    let choices = house.others(None).into_iter();
    let choices = choices.filter(|one| made.contains(&one.code));
    choices
        .enumerate()
        .map(|(nth, one)| Cut {
            nth: nth + 1,
            key: one.code.clone(),
            name: one.name.clone(),
            in_full: String::new(),
            from: None,
            products: vec![one],
            usual: 0,
            band: None,
            usual_says: String::new(),
            band_says: String::new(),
            usual_source: String::new(),
            before: None,
        })
        .collect()
}

/// What else may come off: not the very thing that lies there.
fn others(house: &HouseCuts, style: Option<&CuttingStyle>, lot: &Lot) -> Vec<Choice> {
    let mut others = house.others(style);
    others.retain(|one| one.code != lot.product.code);
    others
}

/// The key of the act's name.
pub fn name_of(lot: &Lot) -> &'static str {
    match lot.product.kind {
        ProductKind::Carcass => "page-act-break-down",
        _ => "page-act-cut-up",
    }
}

/// Is a lot one that is cut up on the bench: a carcass, a side, a quarter, a raw cut of it, with something left?
pub fn is_for(lot: &Lot) -> bool {
    let is_cut = lot.product.kind == ProductKind::Cut && lot.product.raw && lot.pack_count == 1;
    (lot.product.kind == ProductKind::Carcass || is_cut)
        && !lot.species.is_empty()
        && !lot.waits_for_release()
        && !lot.voided
        && brief::left(&lot.packs).any(|pack| ActKind::Pack.is_for(pack))
}

/// How it is cut here: as the list says, else as its animal usually is.
fn style<'a>(app: &'a Caller<'_>, lot: &Lot) -> Option<&'a CuttingStyle> {
    let listed = match &lot.product.yields {
        Some(YieldOf::CutStyle(key)) => Some(key.as_str()),
        _ => None,
    };
    let species = lot.species.first().copied()?;
    app.law.trade.yields.on_the_bench(species, listed)
}

fn cut(
    words: &Words,
    house: &HouseCuts,
    before: &[(&str, Grams)],
    usual_source: String,
    nth: usize,
    of: &UsualCut<'_>,
) -> Cut {
    let text = |texts: &domain::says::Texts| words.of_data(texts).to_owned();
    let key = &of.cut.piece;
    let came_off = before.iter().filter(|(piece, _)| piece == key);
    let came_off: Grams = came_off.map(|(_, grams)| *grams).sum();
    Cut {
        nth,
        name: text(&of.cut.short),
        in_full: text(&of.rule.name),
        from: of.cut.from.as_ref().map(text),
        products: house.of_piece(key),
        usual: of.usual.milligrams(),
        band: of
            .band
            .map(|(low, high)| (low.milligrams(), high.milligrams())),
        usual_says: words.grams(of.usual),
        band_says: of.band.map_or_else(String::new, |(low, high)| {
            words.say(PageSays::Between { low, high })
        }),
        usual_source,
        before: (came_off > Grams::ZERO).then(|| words.grams(came_off)),
        key: key.clone(),
    }
}

/// Where what is usual of a cut comes from: the row of its band, else that of the template.
fn source(
    app: &Caller<'_>,
    words: &Words,
    style: Option<&CuttingStyle>,
    of: &UsualCut<'_>,
) -> String {
    let band = of.rule.band.as_ref().map(|band| &band.row);
    let row = band.or(style.map(|style| &style.row));
    row.and_then(|row| told_of(app, words, row))
        .unwrap_or_default()
}

/// What a row says, and the row itself.
fn told_of(app: &Caller<'_>, words: &Words, row: &RowId) -> Option<String> {
    let rows = &app.law.trade_rows;
    let says = words.of_data(&rows.get(row)?.says);
    Some(format!("{says} {}.", words.say(rows.source(row))))
}

fn picture(words: &Words, style: &CuttingStyle, usual: &[UsualCut<'_>]) -> Option<String> {
    let drawing = style.knife.as_ref()?.drawing;
    let named: Vec<&str> = usual
        .iter()
        .map(|one| words.of_data(&one.cut.short))
        .collect();
    let shown = usual.iter().zip(&named).enumerate();
    let shown: Vec<Shown<'_>> = shown
        .map(|(nth, (one, name))| Shown {
            key: &one.cut.piece,
            nth: nth + 1,
            name,
            regions: &one.cut.regions,
        })
        .collect();
    let says = words.t(match drawing {
        Drawing::Pork => "page-side-pork",
        Drawing::Lamb => "page-side-lamb",
        Drawing::Beef => "page-side-beef",
        Drawing::Bird => "page-side-bird",
    });
    Some(side::draw(drawing, &says, &shown))
}

/// Where the order of the knife, the bands and the template come from, each once.
fn sources(app: &Caller<'_>, words: &Words, style: &CuttingStyle) -> Vec<String> {
    let order = style.knife.as_ref().map(|knife| &knife.row);
    let band = style.pieces.iter().find_map(|piece| piece.band.as_ref());
    let rows = [order, Some(&style.row), band.map(|band| &band.row)];
    let rows = rows.into_iter().flatten();
    rows.filter_map(|row| told_of(app, words, row)).collect()
}

/// Where the cuts may go: of a piece where that lies, of a carcass where those of the last one went; of the first one it is asked.
fn places(
    conn: &mut Conn,
    reading: &LoadedFamily<'_>,
    names: &Names,
    pack: Option<&Pack>,
    is_carcass: bool,
) -> Result<Vec<Choice>> {
    let chosen = match is_carcass {
        true => store::places::cuts_put_last(conn)?.map(PlaceId),
        false => pack.map(|pack| pack.now.place),
    };
    let chosen = chosen.map(|place| reading.standing.lists.place_code(place));
    let choice = |(code, name): (&str, &str)| Choice {
        chosen: chosen == Some(code),
        code: code.to_owned(),
        name: name.to_owned(),
    };
    Ok(names.places_by_name().into_iter().map(choice).collect())
}

fn printers(conn: &mut Conn) -> Result<Vec<Choice>> {
    let printers = crate::read::prints::printers(conn)?.into_iter();
    Ok(printers
        .map(|printer| Choice {
            code: printer.code,
            name: printer.name,
            chosen: false,
        })
        .collect())
}
