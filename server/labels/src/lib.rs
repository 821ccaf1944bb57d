//! Label facts and a template in; placed items, PDF and SVG out.
//!
//! The crate is pure: it reads no file, no clock and no database. Reading order:
//!
//! 1. [`facts`]: what one label says, field by field, and what its codes hold.
//! 2. [`template`] (its JSON is in `wire`): where things stand, how small they may get.
//! 3. [`layout`]: the one way through, [`lay_out`]; `stack` sets the texts, `codes` the codes (`qr`
//!    with `mask`; `code128` with `spelling`, and `ean13`, both on `bars`), and [`refusal`] lists
//!    every reason why a label is not made.
//! 4. [`placed`]: the finished label as items at fixed places.
//! 5. [`mod@pdf`] and [`mod@svg`]: translate the items and decide nothing.
//!
//! Under all of it: [`length`] (whole micrometres, printer dots) and [`face`] (the two embedded
//! weights, measured). The promise: a text is on the label whole and no smaller than the template
//! allows, or the label is refused with the reason.

mod bars;
mod code128;
mod codes;
mod ean13;
pub mod face;
pub mod facts;
pub mod layout;
pub mod length;
mod mask;
pub mod pdf;
pub mod placed;
mod qr;
pub mod refusal;
mod spelling;
mod stack;
pub mod svg;
pub mod template;
mod wire;

pub use code128::{QUIET as CODE128_QUIET, WIDEST_GS1};
pub use ean13::QUIET as EAN13_QUIET;
pub use face::{FAMILY, Face, Measure, Weight};
pub use facts::{Facts, Field};
pub use layout::lay_out;
pub use length::{Area, Dpi, Length};
pub use pdf::{PdfError, pdf};
pub use placed::{Code, Line, Placed, PlacedLabel};
pub use qr::QUIET as QR_QUIET;
pub use refusal::{CodeKind, Refusal};
pub use svg::svg;
pub use template::{Fault, Template, TemplateError};
