//! The pages of source animals: finding them, and what came of each.

use super::bench::Pick;
use super::done::Done;
use super::forward::Forward;
use super::says::PageSays;
use super::spoken::{ABATTOIR, Words, told};
use crate::caller::Asking;
use crate::error::{Error, Result};
use crate::ids::shown_id;
use crate::read;
use crate::read::animals::AnimalsQuery;
use crate::read::names::Names;
use crate::rooms::blocking;
use crate::routes::{id, query};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use chrono_tz::Tz;
use domain::family::{AnimalView, KnownOnce, SourceAnimal};
use domain::moment::day_of;
use domain::right::Right;
use serde::Deserialize;
use serde_json::json;
use store::Conn;

#[derive(Template)]
#[template(path = "animals.html")]
struct AnimalsPage {
    words: Words,
    carcass: String,
    killed_on: String,
    farms: Vec<Farm>,
    animals: Vec<Row>,
    narrowed: bool,
}

struct Farm {
    code: String,
    name: String,
    chosen: bool,
}

struct Row {
    id: String,
    what: String,
    farm: String,
    killed: String,
    carcass: String,
    tag: String,
    /// Codes of the lots received, each as it is and for the eye.
    lots: Vec<(String, String)>,
    once: Vec<Once>,
}

/// A lot that was known as received of an animal, until that was corrected.
struct Once {
    code: String,
    shown: String,
    now: String,
    says: String,
}

impl Once {
    fn all(words: &Words, zone: Tz, once: &[KnownOnce]) -> Vec<Once> {
        let told = once.iter().map(|of| Once {
            code: of.lot.to_string(),
            shown: of.lot.shown(),
            now: shown_id(&of.now),
            says: words.say(PageSays::KnownOnce {
                by: of.by.clone(),
                day: day_of(of.at, zone),
            }),
        });
        told.collect()
    }
}

/// Source animals, newest kill first.
pub async fn list(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::page(asking.speech(), find(&request, asking).await)
}

async fn find(request: &HttpRequest, asking: Asking) -> Result<AnimalsPage> {
    let asked: AnimalsQuery = query(request)?;
    blocking(move || {
        let app = asking.caller();
        let found = read::animals::list(&app, &asked)?.animals;
        let names = app.store.look(|conn| Names::load(&app, conn))?;
        let words = Words::of(&names);
        let given = |text: &Option<String>| text.clone().unwrap_or_default().trim().to_owned();
        let (farm, carcass) = (given(&asked.farm).to_uppercase(), given(&asked.carcass));
        let killed_on = given(&asked.killed_on);
        let zone = names.zone();
        let animals = found
            .iter()
            .map(|of| row(&words, of, &names, zone))
            .collect();
        Ok(AnimalsPage {
            words,
            narrowed: !(farm.is_empty() && carcass.is_empty() && killed_on.is_empty()),
            carcass,
            killed_on,
            farms: names
                .farms
                .iter()
                .map(|(code, name)| Farm {
                    code: code.clone(),
                    name: name.clone(),
                    chosen: *code == farm,
                })
                .collect(),
            animals,
        })
    })
    .await
}

fn row(words: &Words, view: &AnimalView, names: &Names, zone: Tz) -> Row {
    let animal = &view.animal;
    let received = view.received.iter();
    Row {
        id: shown_id(&animal.uid),
        what: what(words, animal),
        farm: names.farm(&animal.farm),
        killed: words.day(animal.killed_on),
        carcass: told(animal.carcass.as_deref()),
        tag: told(animal.tag.as_deref()),
        lots: received
            .map(|code| (code.to_string(), code.shown()))
            .collect(),
        once: Once::all(words, zone, &view.once),
    }
}

/// `Pig`, or `Chicken, 20 head`.
pub(super) fn what(words: &Words, animal: &SourceAnimal) -> String {
    let (species, head) = (words.headed(animal.species.says()), animal.head);
    match head > 1 {
        true => words.say(PageSays::Head { species, head }),
        false => species,
    }
}

#[derive(Template)]
#[template(path = "animal.html")]
struct AnimalPage {
    words: Words,
    id: String,
    title: String,
    killed: String,
    carcass: String,
    tag: String,
    abattoir: String,
    /// Did nobody enter one?
    lacks_abattoir: bool,
    /// What the place calls one.
    abattoir_word: String,
    /// Those on the list besides, for whoever may correct it: its number, and its name.
    abattoirs: Vec<Pick>,
    /// May whoever reads it correct it?
    corrects: bool,
    /// The corrections, but for what is right: one for each receipt that brought it, with the code of its lot.
    receipts: Vec<(String, String)>,
    done: Option<Done>,
    once: Vec<Once>,
    /// Where a recall of it begins, for whoever may begin one.
    recall: Option<String>,
    has_lots: bool,
    forward: Forward,
    /// Where the picture of it is.
    picture_file: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The deed that was just done.
    did: Option<String>,
}

/// All that came of an animal.
pub async fn one(request: HttpRequest, asking: Asking, uid: web::Path<String>) -> HttpResponse {
    let speech = asking.speech();
    let asked: Asked = match query(&request) {
        Ok(asked) => asked,
        Err(error) => return super::trouble(speech, &error),
    };
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let found = read::trace::of_animal(conn, &uid)?;
            let uid = id(&uid)?.0;
            let row = store::animals::by_uid(conn, uid.as_bytes())?;
            let row = row.ok_or_else(|| Error::not_found(PageSays::NoAnimal))?;
            let animal = row.source_animal(uid.as_bytes())?;
            let names = Names::load(&app, conn)?;
            let words = Words::of(&names);
            let title = PageSays::From {
                what: what(&words, &animal),
                farm: names.farm(&animal.farm),
            };
            let once = Once::all(&words, names.zone(), &found.once);
            let then = format!("/animals/{uid}");
            // What it is known as no more is not corrected here.
            let may = app.who.may(Right::Correct) && once.is_empty();
            let known = |number: &String| animal.abattoir.as_ref() == Some(number);
            let standing = app.standing(conn)?;
            let others = standing.lists.abattoirs.iter();
            let others = others.filter(|(number, _)| may && !known(number));
            Ok(AnimalPage {
                abattoirs: others
                    .map(|(number, of)| Pick::of(number, format!("{}, {number}", of.name)))
                    .collect(),
                corrects: may,
                receipts: receipts(conn, row.id)?,
                done: Done::of(&app, conn, &words, asked.did.as_deref(), &then)?,
                words,
                id: uid.to_string(),
                title: words.say(title),
                killed: words.day(animal.killed_on),
                carcass: told(animal.carcass.as_deref()),
                tag: told(animal.tag.as_deref()),
                abattoir_word: words.in_place(ABATTOIR, app.kitchen(conn)?.entry.profile.0),
                lacks_abattoir: animal.abattoir.is_none(),
                abattoir: told(animal.abattoir.as_deref()),
                once,
                recall: app
                    .who
                    .may(Right::Recall)
                    .then(|| format!("/recall?animal={uid}")),
                has_lots: !found.lots.is_empty(),
                forward: Forward::of(&found, &names),
                picture_file: format!("/api/animals/{uid}/family.svg"),
            })
        })
    });
    super::page(speech, made.await)
}

/// What a correction of each receipt that brought an animal names, with the code of the lot that it made.
fn receipts(conn: &mut Conn, animal: i32) -> Result<Vec<(String, String)>> {
    let lots = store::animals::received(conn, animal)?;
    let mut all = Vec::new();
    for lot in store::lots::by_keys(conn, &lots)? {
        let receipt = store::deeds::by_keys(conn, &[lot.deed_id])?;
        let ids = receipt.iter().map(|deed| shown_id(&deed.uid));
        for step in ids {
            all.push((json!({ "step": step }).to_string(), lot.code()?.to_string()));
        }
    }
    Ok(all)
}
