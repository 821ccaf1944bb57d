//! An empty kitchen is set up, one step at a time: who it is, its places, its people, its printer, its products, its
//! first animal. Each act is a call of its own, so that whoever stops in the middle goes on there tomorrow.

use super::bench::Pick;
use super::countries;
use super::list_form::{Asked as Field, asked as fields_of};
use super::people::does;
use super::regions::Region;
use super::says::SetUpSays;
use super::see_other;
use super::set_up_has::{CameIn, Has, came_in, has};
use super::set_up_kitchen::{KitchenForm, kitchen_form};
use super::set_up_places::{PlaceLine, places};
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::List;
use crate::printing::{paper, trial};
use crate::read::names::Names;
use crate::read::today::begun;
use crate::rooms::blocking;
use crate::who::people::FIRST;
use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::right::Role;
use domain::words::{PlaceKind, ProductKind, Profile, Species};
use serde::Deserialize;
use serde_json::json;
use store::Conn;

/// The steps, by the last part of their path, with what each is called.
const STEPS: [(&str, &str); 6] = [
    ("kitchen", "page-step-kitchen"),
    ("places", "page-step-places"),
    ("people", "page-step-people"),
    ("printer", "page-step-printer"),
    ("products", "page-step-products"),
    ("animal", "page-step-animal"),
];

#[derive(Template)]
#[template(path = "set-up.html")]
struct SetUp {
    words: Words,
    step: &'static str,
    title: String,
    counted: String,
    pegs: Vec<Peg>,
    /// No address: what a customer's label will want of it.
    lacks_address: bool,
    /// How many products were just added, in words.
    added: Option<String>,
    /// What the kitchen has of each step.
    has: Vec<Has>,
    kitchen: Option<KitchenForm>,
    places: Vec<PlaceLine>,
    /// Of what sort a place of their own may be.
    place_kinds: Vec<Pick>,
    people: Vec<String>,
    /// The first manager, who has no name of their own yet: the call, the version and the body.
    first: Option<(String, i32, String)>,
    roles: Vec<Pick>,
    printers: Vec<Printer>,
    /// What the kitchen needs labels for, each with the sizes that do.
    paper: Vec<String>,
    farms: Vec<Field>,
    abattoirs: Vec<Field>,
    /// The heading and the button of its slaughterhouse, in the place's word.
    abattoir: [String; 2],
    has_farm: bool,
    /// What was added last for the first animal, by name.
    has_farms: Vec<String>,
    has_abattoir: bool,
    has_carcass: bool,
    /// The animals that came in.
    came_in: Vec<CameIn>,
}

/// A step as it stands above the page.
struct Peg {
    path: &'static str,
    name: String,
    done: bool,
    /// Was it passed over? It may wait.
    later: bool,
    here: bool,
}

/// A printer, as far as it is known without asking it.
struct Printer {
    code: String,
    name: String,
    /// What was wrong there last.
    trouble: Option<String>,
    /// No label came out yet.
    untried: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The step that one comes from.
    from: Option<String>,
    /// How many products were just added there.
    added: Option<usize>,
}

/// On to the first step that is not done.
pub async fn next(asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let found = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| begun(&app, conn))
    });
    match found.await {
        Ok(begun) => {
            let undone = STEPS.iter().zip(begun.steps());
            let mut undone = undone.filter(|(step, _)| !(begun.products && may_wait(step.0)));
            let undone = undone.find(|(_, done)| !done);
            match undone {
                Some(((step, _), _)) => see_other(&format!("/set-up/{step}")),
                None => see_other("/"),
            }
        }
        Err(error) => super::trouble(speech, &error),
    }
}

/// A step that somebody may pass over: it is not asked for again once what comes after it is done.
pub(super) fn may_wait(step: &str) -> bool {
    matches!(step, "people" | "printer")
}

/// A step.
pub async fn page(request: HttpRequest, step: web::Path<String>, asking: Asking) -> HttpResponse {
    let wanted = request.headers().get(header::ACCEPT_LANGUAGE);
    let region = wanted.and_then(|wanted| Region::accepted(wanted.to_str().ok()?));
    super::asked(&request, asking, move |app, conn, asked: &Asked| {
        read(app, conn, &step, asked, region)
    })
    .await
}

fn read(
    app: &Caller<'_>,
    conn: &mut Conn,
    step: &str,
    asked: &Asked,
    region: Option<Region>,
) -> Result<SetUp> {
    let at = STEPS.iter().position(|(path, _)| *path == step);
    let at = at.ok_or_else(|| super::nowhere(&format!("/set-up/{step}")))?;
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let standing = app.standing(conn)?;
    let (kitchen, lists) = (&standing.kitchen, &standing.lists);
    let done = begun(app, conn)?.steps();
    let done_after = |nth: usize| done.iter().skip(nth + 1).any(|done| *done);
    let pegs = STEPS.iter().zip(done).enumerate();
    let step = STEPS[at].0;
    let is = |of: &str| step == of;
    let known = app.people();
    let animals = came_in(conn, &words, &names)?;
    let mut page = SetUp {
        step,
        title: words.t(STEPS[at].1),
        counted: words.say(SetUpSays::StepOf {
            step: at + 1,
            steps: STEPS.len(),
        }),
        pegs: pegs
            .map(|(nth, ((path, key), done))| Peg {
                path,
                name: words.t(key),
                done,
                later: !done && may_wait(path) && (nth < at || done_after(nth)),
                here: nth == at,
            })
            .collect(),
        lacks_address: kitchen.is_set
            && kitchen.entry.address.is_none()
            && asked.from.as_deref() == Some("kitchen"),
        added: asked
            .added
            .map(|products| words.say(SetUpSays::Added { products })),
        has: has(app, conn, &words, &names, &animals)?,
        kitchen: None,
        places: Vec::new(),
        place_kinds: Vec::new(),
        people: Vec::new(),
        first: None,
        roles: Vec::new(),
        printers: Vec::new(),
        paper: Vec::new(),
        farms: Vec::new(),
        abattoirs: Vec::new(),
        abattoir: [
            ["page-set-up-abattoir", "page-set-up-abattoir-us"],
            ["page-set-up-abattoir-keep", "page-set-up-abattoir-keep-us"],
        ]
        .map(|keys| words.in_place(keys, kitchen.entry.profile.0)),
        has_farm: !lists.farms.is_empty(),
        has_farms: Vec::new(),
        has_abattoir: !lists.abattoirs.is_empty(),
        has_carcass: lists
            .products
            .values()
            .any(|product| product.kind == ProductKind::Carcass),
        came_in: animals.into_iter().take(MOST_SHOWN).collect(),
        words,
    };
    if is("kitchen") {
        page.kitchen = Some(kitchen_form(app, conn, &page.words, region)?);
    }
    if is("places") {
        page.places = places(&words, lists);
        let kinds = PlaceKind::ALL.iter();
        page.place_kinds = kinds
            .map(|kind| Pick::of(kind.as_str(), words.headed(kind.says())))
            .collect();
    }
    if is("people") {
        let people = known.people.iter().filter(|person| person.row.active);
        page.people = people
            .map(|person| (words.person(&person.row.name), words.roles(&person.roles)))
            .map(|(name, roles)| format!("{name} ({roles})"))
            .collect();
        page.roles = Role::ALL
            .iter()
            .map(|role| Pick {
                more: words.t(does(*role)),
                ..Pick::of(role.as_str(), words.headed(role.says()))
            })
            .collect();
        page.first = known.named(FIRST).map(|person| {
            let roles: Vec<&str> = person.roles.iter().map(|role| role.as_str()).collect();
            let body = json!({ "roles": roles });
            let call = format!("/api/people/{}", person.uid());
            (call, person.row.number, body.to_string())
        });
    }
    if is("printer") {
        let printers = crate::read::prints::printers(conn)?.into_iter();
        page.printers = printers
            .map(|one| Printer {
                trouble: one.trouble.map(|says| page.words.say(says)),
                untried: !one.came_out,
                code: one.code,
                name: one.name,
            })
            .collect();
        let needs = paper::needs(&app.templates, kitchen.entry.profile.0);
        let needs = needs.iter().map(|need| need.says());
        let all = needs.chain([trial::paper(&app.templates)]);
        page.paper = all.map(|says| page.words.headed(says)).collect();
    }
    if is("animal") {
        page.has_farms = lists.farms.values().map(|farm| farm.name.clone()).collect();
        page.farms = fields_of(app, conn, &words, List::Farms, None)?;
        page.abattoirs = fields_of(app, conn, &words, List::Abattoirs, None)?;
        // What is asked of the first one; the rest stands in its list.
        let mut first = vec!["code", "name", "address", "trichinae_certificate"];
        let law = app.law.laws.of(kitchen.entry.profile.0);
        if Species::ALL.iter().any(|of| countries::asked(law, *of)) {
            first.push("country"); // the labels here tell where an animal was reared
        }
        page.farms.retain(|field| first.contains(&field.name));
        let own = kitchen.entry.country.as_ref().map(|line| line.0.as_str());
        let country = own.unwrap_or(country(kitchen.entry.profile.0));
        for field in page.farms.iter_mut().chain(&mut page.abattoirs) {
            if field.name == "country" && field.value.is_empty() {
                field.value = country.to_owned();
            }
        }
        for field in &mut page.farms {
            if field.name == "code" {
                field.help = Some(page.words.t("page-set-up-farm-code-help"));
            }
        }
    }
    Ok(page)
}

/// The most animals that are shown one by one; their list has all.
const MOST_SHOWN: usize = 8;

/// The country that most farms of a place are in, where the kitchen names none; none where it has many.
fn country(profile: Profile) -> &'static str {
    match profile {
        Profile::Us => "US",
        Profile::Ca => "CA",
        Profile::Uk => "GB",
        Profile::Eu => "",
    }
}
