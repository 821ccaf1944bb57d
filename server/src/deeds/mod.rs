//! One file per deed, all through [`mod@perform`]: parse, load the facts inside the transaction, plan,
//! record, answer.

pub mod adopt;
mod again;
pub mod approval;
mod bag;
mod before;
pub mod cancel_print;
mod carton;
pub mod clean_down;
pub mod confirm_row;
mod contents;
pub mod correct;
mod correct_read;
mod correct_source;
pub mod count;
pub mod cure;
mod degrees;
pub mod depart;
pub mod dispose;
pub mod facts;
pub mod happened;
pub mod heat;
mod heat_asked;
mod heat_log;
pub mod hold;
pub mod measure;
mod mince;
mod mixture;
pub mod perform;
mod pierced;
pub mod place;
pub mod print;
pub mod probe;
pub mod receive;
pub mod release;
pub mod relocate;
mod residual;
pub mod says;
pub mod settle_print;
pub mod stable;
pub mod step;
pub mod take_back;
pub mod trichinae;
mod trichinae_record;
pub mod void;

pub use perform::{DeedAnswer, DeedHeader, Done, perform};
