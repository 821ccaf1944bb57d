//! The pages of source animals: finding them, and what came of each.

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
fn what(words: &Words, animal: &SourceAnimal) -> String {
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
    /// What the place calls one.
    abattoir_word: String,
    once: Vec<Once>,
    /// Where a recall of it begins, for whoever may begin one.
    recall: Option<String>,
    has_lots: bool,
    forward: Forward,
    /// Where the picture of it is.
    picture_file: String,
}

/// All that came of an animal.
pub async fn one(asking: Asking, uid: web::Path<String>) -> HttpResponse {
    let speech = asking.speech();
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
            Ok(AnimalPage {
                words,
                id: uid.to_string(),
                title: words.say(title),
                killed: words.day(animal.killed_on),
                carcass: told(animal.carcass.as_deref()),
                tag: told(animal.tag.as_deref()),
                abattoir_word: words.in_place(ABATTOIR, app.kitchen(conn)?.entry.profile.0),
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
