//! The pages of source animals: finding them, and what came of each.

use super::format;
use super::forward::Forward;
use crate::app::App;
use crate::blocking::blocking;
use crate::error::{Error, Result};
use crate::read;
use crate::read::animals::AnimalsQuery;
use crate::read::names::Names;
use crate::routes::{id, query};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;

#[derive(Template)]
#[template(path = "animals.html")]
struct AnimalsPage {
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
}

/// Source animals, newest kill first.
pub async fn list(request: HttpRequest, app: web::Data<App>) -> HttpResponse {
    super::page(find(&request, app).await)
}

async fn find(request: &HttpRequest, app: web::Data<App>) -> Result<AnimalsPage> {
    let asked: AnimalsQuery = query(request)?;
    blocking(move || {
        let found = read::animals::list(&app, &asked)?.animals;
        let names = app.store.look(|conn| Names::load(&app, conn))?;
        let given = |text: &Option<String>| text.clone().unwrap_or_default().trim().to_owned();
        let (farm, carcass) = (given(&asked.farm).to_uppercase(), given(&asked.carcass));
        let killed_on = given(&asked.killed_on);
        Ok(AnimalsPage {
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
            animals: found
                .into_iter()
                .map(|animal| Row {
                    what: what(&animal.species, animal.head),
                    farm: names.farm(&animal.farm),
                    killed: format::day(animal.killed_on.0),
                    carcass: format::told(animal.carcass.as_deref()),
                    tag: format::told(animal.tag.as_deref()),
                    lots: animal
                        .lots
                        .into_iter()
                        .map(|code| (code.clone(), format::shown(&code)))
                        .collect(),
                    id: animal.id,
                })
                .collect(),
        })
    })
    .await
}

/// `Pig`, or `Chicken, 20 head`.
fn what(species: &str, head: i32) -> String {
    let species = format::headed(species);
    if head > 1 {
        format!("{species}, {head} head")
    } else {
        species
    }
}

#[derive(Template)]
#[template(path = "animal.html")]
struct AnimalPage {
    title: String,
    killed: String,
    carcass: String,
    tag: String,
    abattoir: String,
    forward: Forward,
}

/// All that came of an animal.
pub async fn one(app: web::Data<App>, uid: web::Path<String>) -> HttpResponse {
    let made = blocking(move || {
        app.store.read(|conn| {
            let found = read::trace::of_animal(conn, &uid)?;
            let row = store::animals::by_uid(conn, id(&uid)?.0.as_bytes())?;
            let row = row.ok_or_else(|| Error::not_found("No such animal is on record."))?;
            let names = Names::load(&app, conn)?;
            Ok(AnimalPage {
                title: format!(
                    "{} from {}",
                    what(&row.species, row.head),
                    names.farm(&row.farm)
                ),
                killed: format::day(row.killed_on),
                carcass: format::told(row.carcass.as_deref()),
                tag: format::told(row.tag.as_deref()),
                abattoir: format::told(row.abattoir.as_deref()),
                forward: Forward::of(found, &names),
            })
        })
    });
    super::page(made.await)
}
