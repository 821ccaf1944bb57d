//! Papers that belong to a deed: what they are, what they may hold, and how long their content is kept.

mod form;
mod keep;
mod kind;
mod says;

pub use form::{LARGEST, LARGEST_MB, MOST_OF_DEED, PaperForm};
pub use keep::{Facts, Kept, Needed, kept, records_of};
pub use kind::PaperKind;
pub use says::PaperSays;
