//! The pages: server-rendered, plain words, large type. They only read; the
//! buttons of acts call the API as a device does.
//!
//! A view holds ready strings; a template only lays them out.

mod act;
mod act_packs;
mod act_words;
mod acts;
mod animals;
mod answer;
mod ask;
mod ask_lines;
mod assets;
mod bag_strength;
mod basket;
mod break_down;
mod break_down_unit;
mod carcass_parts;
mod count;
mod counter;
mod counter_acts;
mod counter_did;
mod counter_ready;
mod countries;
mod cure_room;
mod done;
mod done_about;
mod done_labels;
mod drawing;
mod drills;
mod find;
mod forward;
pub mod frame;
mod history;
mod home;
mod house_cuts;
mod incident;
mod incident_held;
mod keeping;
mod label;
mod logs;
mod lot;
mod lots;
mod me;
mod odd;
mod origins;
mod packs;
mod papers;
mod people;
mod printing;
mod recall;
mod recall_days;
mod recall_named;
mod recall_sold;
pub mod says;
mod side;
mod sign_in;
mod spoken;
mod tree;
mod trust;
mod unbroken;
mod wrong_labels;
mod zones;

mod adopt;
mod bench;
pub mod bench_says;
mod cook_core;
mod cool;
mod copies;
mod curve;
mod field_words;
mod fitting;
mod guest;
mod hanging;
mod heat_shown;
mod import;
mod list_choices;
mod list_form;
mod list_parts;
mod lists;
mod make;
mod makes;
mod managers;
mod parts;
mod piece;
mod place_act;
mod place_packs;
pub mod place_says;
mod places;
mod probes;
mod receive;
mod regions;
mod rules;
mod set_up;
mod set_up_has;
mod set_up_kitchen;
mod set_up_places;
mod starters;
mod waiting;
mod way_back;

use crate::caller::Asking;
use crate::error::Error;
use crate::who::permit::only;
use actix_web::{HttpRequest, HttpResponse, Route, web};
pub use answer::trouble;
use answer::{asked, from_record, page, see_other};
use domain::right::Right;
pub use field_words::column;
use says::PageSays;
pub use sign_in::to_sign_in;

/// Every page, with the right that it asks.
pub fn all() -> Vec<(&'static str, Right, Route)> {
    use Right::{Anyone, People, Scan, See, SetUp};
    vec![
        ("/set-up", SetUp, web::get().to(set_up::next)),
        ("/set-up/{step}", SetUp, web::get().to(set_up::page)),
        ("/starters", See, web::get().to(starters::page)),
        ("/rules", See, web::get().to(rules::page)),
        ("/lists", See, web::get().to(lists::index)),
        ("/lists/{list}", See, web::get().to(lists::one)),
        ("/lists/{list}/import", See, web::get().to(import::page)),
        (
            "/lists/{list}/sample.csv",
            See,
            web::get().to(import::sample),
        ),
        ("/lists/{list}/{code}", See, web::get().to(list_form::page)),
        ("/", See, web::get().to(home::page)),
        ("/assets/{name}", Anyone, web::get().to(assets::get)),
        ("/sign-in", Anyone, web::get().to(sign_in::page)),
        ("/trust", Anyone, web::get().to(trust::page)),
        (
            "/trust/kitchen.crt",
            Anyone,
            web::get().to(trust::authority),
        ),
        ("/me", Scan, web::get().to(me::page)),
        ("/people", People, web::get().to(people::page)),
        ("/scan", Scan, web::get().to(counter::page)),
        ("/find", Scan, web::get().to(find::page)),
        ("/lots", See, web::get().to(lots::page)),
        ("/lots/{code}", See, web::get().to(lot::page)),
        ("/lots/{code}/label.svg", See, web::get().to(label::picture)),
        (
            "/lots/{code}/break-down",
            See,
            web::get().to(break_down::page),
        ),
        ("/lots/{code}/weigh", See, web::get().to(piece::weigh)),
        ("/lots/{code}/tend", See, web::get().to(piece::tend)),
        ("/lots/{code}/release", See, web::get().to(piece::release)),
        ("/lots/{code}/cool", See, web::get().to(cool::page)),
        ("/lots/{code}/core", See, web::get().to(cook_core::page)),
        (
            "/lots/{code}/strength",
            See,
            web::get().to(bag_strength::page),
        ),
        ("/weigh", See, web::get().to(piece::by_tag)),
        ("/places", See, web::get().to(places::all)),
        ("/places/{code}", See, web::get().to(places::one)),
        (
            "/places/{code}/clean-down",
            See,
            web::get().to(place_act::clean_down),
        ),
        (
            "/places/{code}/temperature",
            See,
            web::get().to(place_act::temperature),
        ),
        (
            "/places/{code}/failed",
            See,
            web::get().to(place_act::failed),
        ),
        (
            "/places/{code}/move",
            See,
            web::get().to(place_packs::moves),
        ),
        (
            "/places/{code}/thaw",
            See,
            web::get().to(place_packs::thaws),
        ),
        (
            "/places/{code}/discard",
            See,
            web::get().to(place_packs::discards),
        ),
        (
            "/places/{code}/count",
            See,
            web::get().to(place_packs::count),
        ),
        ("/probes", See, web::get().to(probes::page)),
        ("/adopt", See, web::get().to(adopt::page)),
        ("/waiting", Scan, web::get().to(waiting::page)),
        ("/worker.js", Anyone, web::get().to(assets::worker)),
        ("/receive", See, web::get().to(receive::page)),
        ("/make", See, web::get().to(make::kinds)),
        ("/make/{kind}", See, web::get().to(make::page)),
        ("/lots/{code}/{act}", See, web::get().to(act::page)),
        ("/cure-room", See, web::get().to(cure_room::page)),
        ("/printing", See, web::get().to(printing::page)),
        ("/copies", See, web::get().to(copies::page)),
        ("/recall", Right::Recall, web::get().to(recall::page)),
        ("/recall/drills", See, web::get().to(drills::page)),
        ("/recall/{number}", See, web::get().to(incident::page)),
        ("/recall/{number}/count", See, web::get().to(count::page)),
        ("/wrong-labels", See, web::get().to(wrong_labels::page)),
        ("/animals", See, web::get().to(animals::list)),
        ("/animals/{id}", See, web::get().to(animals::one)),
        ("/papers", See, web::get().to(papers::page)),
        ("/keeping", See, web::get().to(keeping::page)),
        ("/logs", See, web::get().to(logs::all)),
        ("/logs/{which}", See, web::get().to(logs::one)),
        // What the square code of a label holds: anybody may read it, and those at work are led on.
        ("/{l:[Ll]}/{code}", Anyone, web::get().to(guest::page)),
        (
            "/{l:[Ll]}/{code}/{pack}",
            Anyone,
            web::get().to(guest::page),
        ),
        ("/01/{gtin}/10/{code}", Anyone, web::get().to(guest::page)),
        (
            "/01/{gtin}/10/{code}/21/{serial}",
            Anyone,
            web::get().to(guest::page),
        ),
        ("/counter", Scan, web::get().to(counter::page)),
        ("/ask", See, web::get().to(ask::page)),
    ]
}

/// What the forms of pages send to: what people do about themselves and each other.
pub fn forms() -> Vec<(&'static str, Right, Route)> {
    use Right::{Anyone, People, Scan};
    vec![
        ("/sign-in", Anyone, web::post().to(sign_in::begin)),
        ("/sign-out", Anyone, web::post().to(sign_in::end)),
        ("/me/pin", Scan, web::post().to(me::choose_pin)),
        ("/me/reading", Scan, web::post().to(me::choose_reading)),
        ("/people", People, web::post().to(people::add)),
        ("/people/{id}", People, web::post().to(people::change)),
    ]
}

/// Registers the pages.
pub fn register(config: &mut web::ServiceConfig) {
    let read = web::FormConfig::default().limit(LARGEST_FORM);
    config.app_data(read.error_handler(|error, request| answer::no_form(&error, request)));
    for (path, right, route) in all().into_iter().chain(forms()) {
        config.route(path, only(right, route));
    }
}

/// The largest form, in bytes: a name and a PIN.
const LARGEST_FORM: usize = 4 << 10;

/// 404: no such page.
fn nowhere(path: &str) -> Error {
    let path = path.to_owned();
    Error::not_found(PageSays::NothingHere { path })
}

/// 404 for a path that is none: a problem document for programs, a page for people.
pub async fn nothing_here(request: HttpRequest, asking: Asking) -> HttpResponse {
    let path = request.path();
    let error = nowhere(path);
    if path == "/api" || path.starts_with("/api/") {
        HttpResponse::from_error(error)
    } else {
        trouble(asking.speech(), &error)
    }
}
