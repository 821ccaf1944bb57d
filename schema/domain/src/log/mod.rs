//! The logs as the rules name them: what was received, ground, made, cooked, cooled, cured, treated against
//! trichinae, cleaned, read, put right, and what left. Each is a list of entries with typed cells, built from
//! deeds and the family of their lots.
//!
//! Reading order: `kind` (which logs there are, and their columns), `doing` (what is known of a deed),
//! `value` (what stands in a cell), one file a log (`receiving`, `grinding` …), and `wanted`: which field a
//! rule wants in which column. What a rule wants and the record lacks is a [`Hole`], never a blank.

mod batches;
mod cleaning;
mod cooking;
mod cooling;
mod curing;
mod departures;
mod doing;
mod due;
mod entry;
mod grinding;
mod kind;
mod lots;
mod receiving;
mod righting;
mod says;
mod source;
mod temperatures;
#[cfg(test)]
mod tests;
mod trichinae;
mod value;
mod wanted;

pub use doing::{
    CorePoint, CorrectedBy, Doing, Drawn, Ended, ProbeShown, Read, Told, TreatedAs, UndoneBy, Upon,
};
pub use due::{Due, due};
pub use entry::{Cell, Entry, Filled, Holds, Hole, Log};
pub use kind::{Column, Group, LogKind};
pub use says::LogsSays;
pub use source::{Bought, Cleaned, Ground, Known, Party};
pub use value::Value;
pub use wanted::{Wanted, fields_in, wanted};

use entry::entry;

/// The log of some deeds, in the order in which they come.
pub fn log(kind: LogKind, doings: &[Doing], known: &Known<'_>) -> Log {
    let cells = match kind {
        LogKind::Receiving => receiving::cells,
        LogKind::Grinding => grinding::cells,
        LogKind::Batches => batches::cells,
        LogKind::Cooking => cooking::cells,
        LogKind::Cooling => cooling::cells,
        LogKind::Curing => curing::cells,
        LogKind::Trichinae => trichinae::cells,
        LogKind::CleanDowns => cleaning::cells,
        LogKind::Temperatures => temperatures::cells,
        LogKind::Corrections => righting::cells,
        LogKind::Departures => departures::cells,
    };
    let is_of_it = |doing: &&Doing| match kind {
        LogKind::Cooking => cooking::is_heat(doing),
        LogKind::Cooling => cooling::is_cooling(doing),
        LogKind::Trichinae => trichinae::is_treatment(doing),
        LogKind::Temperatures => temperatures::is_reading(doing),
        LogKind::Curing => curing::is_of_a_cure(doing, known),
        _ => true,
    };
    let of_it = doings.iter().filter(is_of_it);
    Log {
        kind,
        entries: of_it
            .map(|doing| entry(kind, doing, cells(doing, known), known))
            .collect(),
    }
}
