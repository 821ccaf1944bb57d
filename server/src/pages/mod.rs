//! The pages: server-rendered, plain words, large type. They only read; the
//! buttons of acts call the API as a device does.
//!
//! A view holds ready strings; a template only lays them out.

mod act;
mod acts;
mod animals;
mod answer;
mod ask;
mod assets;
mod basket;
mod break_down;
mod count;
mod counter;
mod counter_acts;
mod counter_did;
mod cure_room;
mod done;
mod drawing;
mod drills;
mod find;
mod forward;
pub mod frame;
mod history;
mod home;
mod house_cuts;
mod incident;
mod label;
mod logs;
mod lot;
mod lots;
mod me;
mod origins;
mod packs;
mod people;
mod printing;
mod recall;
pub mod says;
mod side;
mod sign_in;
mod spoken;
mod tree;
mod trust;
mod wrong_labels;

mod bench;
pub mod bench_says;
mod cool;
mod curve;
mod guest;
mod heat_shown;
mod make;
mod parts;
mod piece;
mod receive;

use crate::caller::Asking;
use crate::error::Error;
use crate::who::permit::only;
use actix_web::{HttpRequest, HttpResponse, Route, web};
pub use answer::trouble;
use answer::{asked, from_record, page, see_other};
use domain::right::Right;
use says::PageSays;
pub use sign_in::to_sign_in;

/// Every page, with the right that it asks.
pub fn all() -> Vec<(&'static str, Right, Route)> {
    use Right::{Anyone, People, Scan, See};
    vec![
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
        ("/weigh", See, web::get().to(piece::by_tag)),
        ("/receive", See, web::get().to(receive::page)),
        ("/make", See, web::get().to(make::kinds)),
        ("/make/{kind}", See, web::get().to(make::page)),
        ("/lots/{code}/{act}", See, web::get().to(act::page)),
        ("/cure-room", See, web::get().to(cure_room::page)),
        ("/printing", See, web::get().to(printing::page)),
        ("/recall", Right::Recall, web::get().to(recall::page)),
        ("/recall/drills", See, web::get().to(drills::page)),
        ("/recall/{number}", See, web::get().to(incident::page)),
        ("/recall/{number}/count", See, web::get().to(count::page)),
        ("/wrong-labels", See, web::get().to(wrong_labels::page)),
        ("/animals", See, web::get().to(animals::list)),
        ("/animals/{id}", See, web::get().to(animals::one)),
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

/// 404 for a path that is none: a problem document for programs, a page for people.
pub async fn nothing_here(request: HttpRequest, asking: Asking) -> HttpResponse {
    let path = request.path();
    let error = Error::not_found(PageSays::NothingHere {
        path: path.to_owned(),
    });
    if path == "/api" || path.starts_with("/api/") {
        HttpResponse::from_error(error)
    } else {
        trouble(asking.speech(), &error)
    }
}
