//! The report of an incident: its facts are gathered from the record as it was at a moment, and kept when it is
//! closed. Everything that is told of it (answer, page, paper, spreadsheet, picture) is made of them alone, without a
//! clock: the same facts give the same bytes. The picture as it is now alone takes its lots from what the scope loaded.

pub mod facts;
mod gather;
mod gathered;
mod learned;
mod lots_now;
mod notice;
mod paper;
mod people;
mod picture;
pub mod says;
mod sheet;
mod so_far;
mod tables;
mod told;

pub use facts::IncidentFacts;
pub use gather::{anchor, of, of_number, to_keep};
pub use learned::{as_known, is_said};
pub use notice::{Notice, notices};
pub use paper::paper;
pub use picture::drawn;
pub use sheet::sheet;
