//! Pictures of what the record holds, as SVG: pure functions of facts. The same facts give the same bytes;
//! texts stay texts, nothing is run and nothing is fetched.

mod chart;
pub mod family;
mod items;
mod layout;
mod rows;
pub mod says;
mod svg;
#[cfg(test)]
mod tests;

pub use family::{Drawn, Family};

use words::Speech;

/// The picture of some lots, for a reader.
pub fn family(family: &Family, speech: &Speech) -> String {
    svg::write(&layout::lay_out(family, speech))
}
