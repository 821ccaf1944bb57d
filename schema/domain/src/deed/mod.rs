//! One file per deed: facts and a request in, a plan or a refusal out.

pub mod adopt;
pub mod again;
mod change;
pub mod correct;
pub mod count;
pub mod depart;
pub mod dispose;
pub mod draw;
pub mod found_warm;
pub mod hold;
pub mod output;
pub mod packing;
pub mod place_failure;
pub mod receive;
pub mod release;
pub mod relocate;
pub mod says;
pub mod step;
pub mod take_back;
pub mod void;
pub mod weigh;
mod went_in;
