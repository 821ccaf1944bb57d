//! The core temperature of a cook that was recorded without one: it corrects the cook's deed, and what came of it is
//! judged again.

use super::acts::Button;
use super::bench::{DEGREES, Units};
use super::heat_shown::{self, Rule};
use super::managers::not_yours;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::{Error, Result};
use crate::ids::shown_id;
use crate::read::LoadedFamily;
use crate::read::names::Names;
use actix_web::{HttpResponse, web};
use askama::Template;
use domain::family::LotView;
use domain::right::Right;
use domain::words::{DeedKind, StopKind};
use serde_json::json;
use store::Conn;
use store::family::Extent;

#[derive(Template)]
#[template(path = "core.html")]
struct CorePage {
    words: Words,
    units: Units,
    heading: String,
    shown: String,
    lot: String,
    body: String,
    rule: Rule,
    /// How it may be known.
    hows: [String; 2],
    sentence: String,
    /// Who may, where whoever reads it may not.
    not_yours: Option<String>,
}

/// Lacks the lot the proof that a core temperature of its cook would be?
pub fn is_for(view: &LotView<'_>) -> bool {
    let cooked = matches!(
        view.of.made_by.kind,
        DeedKind::Cook | DeedKind::Smoke | DeedKind::Render
    );
    let unproven = || {
        let mut stops = view.stops.iter();
        stops.any(|stop| stop.kind == StopKind::NotProven)
    };
    cooked && !view.of.lot.voided && !view.of.lot.condition().is_ready() && unproven()
}

/// Its button; nobody's black one but of who may.
pub fn button(words: &Words, app: &Caller<'_>, view: &LotView<'_>) -> Option<Button> {
    let path = format!("/lots/{}/core", view.of.lot.code);
    let may = app.who.may(Right::Correct);
    (is_for(view) && app.who.may(Right::Work))
        .then(|| Button::plain(words, "page-act-core", path, may))
}

/// The page.
pub async fn page(asking: Asking, code: web::Path<String>) -> HttpResponse {
    super::from_record(asking, move |app, conn| read(app, conn, &code)).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<CorePage> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, Extent::REASONED)?;
    let names = Names::of(reading.standing.clone(), app.speech(reading.kitchen()));
    let words = Words::of(&names);
    let view = reading.lot_view(id)?;
    if !is_for(&view) {
        let path = format!("/lots/{code}/core");
        return Err(Error::not_found(PageSays::NothingHere { path }));
    }
    let lot = &view.of.lot;
    let shown = lot.code.shown();
    let units = Units::of(&words);
    let code_year = heat_shown::code_year(&reading);
    Ok(CorePage {
        heading: words.say(PageSays::ActOf {
            act: words.t("page-act-core"),
            name: lot.product.name(words.lang()).to_owned(),
        }),
        body: json!({ "step": shown_id(&view.of.made_by.uid) }).to_string(),
        rule: heat_shown::of_cook(&words, reading.law, &lot.product, code_year),
        hows: ["page-core-noted", "page-core-logged"].map(|key| words.t(key)),
        sentence: words
            .say(super::bench_says::WorkSays::Core { lot: shown.clone() })
            .replace("[degrees]", &format!("[readings.{}]", units.degrees)),
        not_yours: not_yours(app, &words, Right::Correct),
        lot: lot.code.to_string(),
        units,
        shown,
        words,
    })
}
