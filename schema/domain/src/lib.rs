//! The pure core of Gambrel: what a kitchen's record means, and what may be added to it.
//!
//! Facts go in, a [`plan::Plan`] or a [`refusal::Refusal`] comes out. Nothing here reads a
//! clock, a random source, a file, a database or a wire format; time and codes arrive as values.
//!
//! Reading order: [`grams`] and [`words`] (the values), [`code`] and [`series`] (lot codes),
//! [`lot`] (lots and packs, and how a pack changes), [`deed`] (one file per deed: plan or refuse),
//! [`condition`] (what food is by what happened to it), [`stop`] (what stands in the way of a pack),
//! [`supplied`] (what a bought lot is made of), [`naming`] (what a food may be called) and [`gate`] (what stands
//! against a customer's label), [`claims`] (what a label says, and what of it is no longer true),
//! [`genealogy`] (origins, descendants, shares), [`scope`] (what a recall reaches, and why), [`incident`] (what it holds), [`dates`], [`ingredients`], [`verdict`] and [`counter`]
//! (what the counter is told of a scan), [`ask`] (what a guest is told), [`today`] (what needs a hand), [`paper`] (what is kept with a deed, and how long), [`mod@log`] (the logs as the rules name them), [`mod@print`] (a label on its way through a printer), and
//! [`audit`], the checker that is separate from the maker.

pub mod ask;
pub mod audit;
pub mod check_char;
pub mod claims;
pub mod code;
pub mod condition;
pub mod cost;
pub mod counter;
pub mod country;
pub mod cure;
pub mod cure_room;
pub mod dates;
pub mod deed;
pub mod duties;
pub mod family;
pub mod gate;
pub mod genealogy;
pub mod grams;
pub mod gs1;
pub mod guest;
pub mod heat;
pub mod incident;
pub mod ingredients;
pub mod law;
pub mod limits;
pub mod log;
pub mod lot;
pub mod measure;
pub mod moment;
pub mod naming;
pub mod origin;
pub mod paper;
pub mod plan;
pub mod print;
pub mod product;
mod quantity;
pub mod refusal;
pub mod right;
pub mod rows;
pub mod says;
pub mod scanned;
pub mod scope;
pub mod series;
pub mod stability;
pub mod statement;
pub mod stop;
pub mod supplied;
pub mod today;
pub mod trade;
pub mod trichinae;
pub mod verdict;
pub mod words;
pub mod yields;
