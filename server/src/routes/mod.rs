//! Every path of the API, once: how it is served and how it is described.
//!
//! The OpenAPI document is made from this same list, so the two cannot disagree.

mod api;
mod counter;
mod deeds;
mod examples;
mod imports;
mod labels;
mod lists;
mod logs;
mod papers;
mod people;
mod pictures;
mod prints;
mod reads;
mod recall;
mod rules;

use domain::right::Right;

pub use api::{Api, Documented};
pub use deeds::id;
pub(crate) use reads::known;
pub use reads::{any_query, query};

/// All calls of the API.
pub fn api() -> Api {
    let mut api = Api::default();
    reads::add(&mut api);
    labels::add(&mut api);
    rules::add(&mut api);
    deeds::add(&mut api);
    lists::add(&mut api);
    imports::add(&mut api);
    recall::add(&mut api);
    prints::add(&mut api);
    people::add(&mut api);
    counter::add(&mut api);
    logs::add(&mut api);
    papers::add(&mut api);
    pictures::add(&mut api);
    api
}

/// Every route of the API and every page, with the right that it asks.
pub fn rights() -> Vec<(&'static str, &'static str, Right)> {
    let pages = crate::pages::all().into_iter();
    let mut all = api().rights();
    all.extend(pages.map(|(path, right, _)| ("GET", path, right)));
    let forms = crate::pages::forms().into_iter();
    all.extend(forms.map(|(path, right, _)| ("POST", path, right)));
    all
}
