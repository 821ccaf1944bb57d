//! To be written.

/// What must be met.
#[derive(Debug, Clone, PartialEq)]
pub struct ReleaseRule {}
