//! The kitchen's lists: one way in for all of them, and what each checks for itself.

pub mod cells;
pub mod checks;
pub mod entry;
pub mod fields;
pub mod import;
pub mod kitchen;
pub mod origins;
pub mod says;
pub mod standing;
pub mod table;

pub use entry::{Entry, List};
