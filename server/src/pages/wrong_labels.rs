//! The page of labels that say what is no longer true.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Asking;
use crate::read::names::Names;
use crate::read::wrong_labels::{self, WrongPack};
use crate::rooms::blocking;
use actix_web::HttpResponse;
use askama::Template;

#[derive(Template)]
#[template(path = "wrong-labels.html")]
struct WrongLabelsPage {
    words: Words,
    on_hand: Vec<Row>,
    gone: Vec<Row>,
}

struct Row {
    code: String,
    shown: String,
    name: String,
    /// What the label says, and what is true, line by line.
    untrue: Vec<(String, String)>,
    place: String,
}

/// Packs on hand with such a label, and those that went out with it.
pub async fn page(asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let names = Names::load(&app, conn)?;
            let words = Words::of(&names);
            let row = |wrong: WrongPack| Row {
                code: wrong.lot.code.to_string(),
                shown: wrong.lot.shown(wrong.pack.number),
                name: names.product(&wrong.lot.product.code),
                untrue: wrong
                    .untrue
                    .iter()
                    .map(|of| {
                        let tells = PageSays::LabelTells {
                            about: words.headed(of.about.says()),
                            says: of.printed.clone(),
                        };
                        (words.say(tells), words.say(of.now.clone()))
                    })
                    .collect(),
                place: names.place(&wrong.place),
            };
            let on_hand = wrong_labels::list(&app, conn, false)?;
            let gone = wrong_labels::list(&app, conn, true)?;
            Ok(WrongLabelsPage {
                on_hand: on_hand.into_iter().map(row).collect(),
                gone: gone.into_iter().map(row).collect(),
                words,
            })
        })
    });
    super::page(speech, made.await)
}
