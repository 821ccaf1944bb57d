//! What every rule stands on: rows of law and trade with their sources, the numbers in them, and what
//! a check found.
//!
//! Every rule names its row, and every row says where it comes from and whether the text itself was
//! read.

mod bound;
mod finding;
mod row;

pub use bound::{Bound, Sense};
pub use finding::{Finding, FindingSays, Gravity, without_sources};
pub use row::{Row, RowId, Rows, SourceSays};
