//! To be written.

/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Rules {}
