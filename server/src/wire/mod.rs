//! The JSON as it is on the wire. Nothing here decides; it turns into the domain's types by hand.

pub mod adopt;
pub mod answers;
pub mod asked;
mod by;
mod certificate;
pub mod cure_room;
pub mod cures;
pub mod epcis;
pub mod incidents;
mod kitchen;
pub mod limits;
pub mod lists;
pub mod money;
pub mod papers;
pub mod people;
pub mod prints;
pub mod readings;
pub mod recall_words;
mod recipes;
pub mod rows;
pub mod says;
pub mod scalars;
pub mod scope;
pub mod standard;
pub mod starters;
pub mod stops;
pub mod told;
pub mod unread;

pub use by::By;
pub use certificate::Certificate;
pub use recall_words::{HazardWord, IncidentNoteWord, InstantOrDay, SpreadsWord};
pub use scalars::{
    AdditionWord, AllergenWord, CurePartWord, DepartureKindWord, DisposalWord, HeatUnitsWord,
    KeepFromWord, MassUnitsWord, NaturalWord, PackagingWord, PlaceKindWord, ProductKindWord,
    ProfileWord, SideWord, SpeciesWord, StateWord,
};
pub use scalars::{Amount, Code, Day, Instant, Line, Note, Number, Vocabulary, Weight, Word};
