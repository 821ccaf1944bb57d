//! Pictures of what the record holds, as SVG: pure functions of facts. The same facts give the same bytes;
//! texts stay texts, nothing is run and nothing is fetched.

mod chart;
pub mod family;
mod items;
mod layout;
mod placed;
mod rows;
pub mod says;
mod svg;
#[cfg(test)]
mod tests;

pub use family::{Drawn, Family};

use labels::{Length, Placed};
use words::Speech;

/// The picture of some lots, for a reader.
pub fn family(family: &Family, speech: &Speech) -> String {
    svg::write(&layout::lay_out(family, speech))
}

/// The same on sheets of paper, each from a left upper corner on and so high.
pub fn family_on_paper(
    family: &Family,
    speech: &Speech,
    corner: (Length, Length),
    high: Length,
) -> Vec<Vec<Placed>> {
    placed::placed(&layout::lay_out(family, speech), corner, high)
}
