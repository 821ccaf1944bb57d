//! The law of each place and the facts of the trade: data files, read into the domain's rules.
//!
//! One folder a place under `data`, one file a subject: each holds its rows (what the text says,
//! where it stands, whether it was read) and the rules that point at them. `data/sources.json`
//! holds the addresses. [`shipped`] reads what is built in; a house file may tighten it.

mod bad;
mod entry;
mod file;
mod house;
mod load;
mod sections;

pub use bad::Bad;
pub use house::House;
pub use load::{Shipped, shipped};

/// What each file must look like, by the name of its subject: JSON Schema (2020-12).
pub fn schemas() -> Vec<(&'static str, serde_json::Value)> {
    let mut all = sections::schemas();
    all.push(("house", house::schema()));
    all
}
