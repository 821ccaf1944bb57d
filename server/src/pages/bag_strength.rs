//! How strong the bag of a curing salt is, read off it after it was received: it corrects the receipt, and what was cured
//! with it is judged again.

use super::acts::Button;
use super::bench::DEGREES;
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
use domain::words::DeedKind;
use serde_json::json;
use store::Conn;
use store::family::Extent;

#[derive(Template)]
#[template(path = "bag-strength.html")]
struct StrengthPage {
    words: Words,
    heading: String,
    shown: String,
    lot: String,
    body: String,
    /// How it is known.
    hows: [String; 2],
    /// Who may, where whoever reads it may not.
    not_yours: Option<String>,
}

/// Is it a bag of curing salt that was bought?
fn is_for(view: &LotView<'_>) -> bool {
    let lot = &view.of.lot;
    view.of.made_by.kind == DeedKind::Receive && !lot.voided && lot.product.curing_salt().is_some()
}

/// Its button, never the black one.
pub fn button(words: &Words, app: &Caller<'_>, view: &LotView<'_>) -> Option<Button> {
    let path = format!("/lots/{}/strength", view.of.lot.code);
    (is_for(view) && app.who.may(Right::Work))
        .then(|| Button::plain(words, "page-act-strength", path, false))
}

/// The page.
pub async fn page(asking: Asking, code: web::Path<String>) -> HttpResponse {
    super::from_record(asking, move |app, conn| read(app, conn, &code)).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<StrengthPage> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, Extent::REASONED)?;
    let names = Names::of(reading.standing.clone(), app.speech(reading.kitchen()));
    let words = Words::of(&names);
    let view = reading.lot_view(id)?;
    if !is_for(&view) {
        let path = format!("/lots/{code}/strength");
        return Err(Error::not_found(PageSays::NothingHere { path }));
    }
    let lot = &view.of.lot;
    Ok(StrengthPage {
        heading: words.say(PageSays::ActOf {
            act: words.t("page-act-strength"),
            name: lot.product.name(words.lang()).to_owned(),
        }),
        body: json!({ "step": shown_id(&view.of.made_by.uid), "bought": {} }).to_string(),
        hows: ["page-strength-read", "page-strength-mistyped"].map(|key| words.t(key)),
        not_yours: not_yours(app, &words, Right::Correct),
        shown: lot.code.shown(),
        lot: lot.code.to_string(),
        words,
    })
}
