//! To be written.

/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Rules {}

impl Rules {
    /// Every number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut crate::law::Bound> {
        Vec::new()
    }
}
