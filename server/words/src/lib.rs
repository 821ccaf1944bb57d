//! The message catalogue: what the core says, in the reader's language and units.
//!
//! `catalogue/en.ftl` and `catalogue/fr.ftl` hold every sentence and word that a person reads, in the
//! Fluent format (<https://projectfluent.org>), under the keys that the core and the pages declare.
//! [`Speech`] renders them for one reader. Pure: the files are built in.

mod catalogue;
mod entries;
mod figures;
mod inches;
mod language;
mod speech;
mod weights;

pub use catalogue::{capital, has};
pub use entries::entries;
pub use language::{Language, wanted};
pub use speech::{Heat, Mass, Speech};
