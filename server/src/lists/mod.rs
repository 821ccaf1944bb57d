//! The kitchen's lists: one way in for all of them, and what each checks for itself.

pub mod checks;
pub mod entry;
pub mod kitchen;
pub mod says;
pub mod standing;

pub use entry::{Entry, List};
