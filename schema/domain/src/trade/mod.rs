//! To be written.

/// What the trade expects: cut-out bands, cooking yields, the drying curve. No law.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Rules {}
