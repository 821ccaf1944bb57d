//! Every path of the API, once: how it is served and how it is described.
//!
//! The OpenAPI document is made from this same list, so the two cannot disagree.

mod api;
mod deeds;
mod labels;
mod lists;
mod prints;
mod reads;
mod rules;

pub use api::{Api, Documented};
pub use deeds::id;
pub use reads::{any_query, query};

/// All calls of the API.
pub fn api() -> Api {
    let mut api = Api::default();
    reads::add(&mut api);
    labels::add(&mut api);
    rules::add(&mut api);
    deeds::add(&mut api);
    lists::add(&mut api);
    prints::add(&mut api);
    api
}
