//! Label facts and a template in; placed items, PDF, SVG and dots out.
//!
//! The crate is pure: it reads no file, no clock and no database. Reading order:
//!
//! 1. [`facts`]: what one label says, field by field, and what its codes hold.
//! 2. [`template`] (its JSON is in `wire`): where things stand, how small they may get.
//! 3. [`layout`]: the one way through, [`lay_out`]; `stack` sets the texts, `codes` the codes (`qr`
//!    with `mask`; `code128` with `spelling`, and `ean13`, both on `bars`), `apart` the panel that stands on a
//!    second label, and [`refusal`] lists
//!    every reason why a label is not made.
//! 4. [`placed`]: the finished label as items at fixed places.
//! 5. [`sheet`]: many labels on a sheet of paper.
//! 6. [`report`]: a table on sheets of paper, as a log is.
//! 7. [`mod@pdf`] and [`mod@svg`]: translate the items and decide nothing. [`mod@raster`] draws them
//!    in dots (`outline` has the letters), [`mod@png`] and [`mod@pwg`] write the dots down.
//!
//! Under all of it: [`length`] (whole micrometres, printer dots) and [`face`] (the two embedded
//! weights, measured). The promise: a text is on the label whole and no smaller than the template
//! allows, or the label is refused with the reason.

mod apart;
mod bars;
mod check;
mod code128;
mod codes;
mod columns;
mod cut;
mod ean13;
pub mod face;
pub mod facts;
mod fault;
mod grow;
pub mod layout;
mod least;
pub mod length;
mod mask;
mod outline;
pub mod pdf;
pub mod picture;
pub mod placed;
pub mod png;
mod purpose;
pub mod pwg;
mod qr;
pub mod raster;
pub mod refusal;
pub mod report;
pub mod says;
pub mod sheet;
mod spelling;
mod stack;
pub mod svg;
mod table;
pub mod template;
mod text;
mod wire;

pub use code128::{QUIET as CODE128_QUIET, WIDEST_GS1};
pub use ean13::QUIET as EAN13_QUIET;
pub use face::{FAMILY, Face, Measure, Weight};
pub use facts::{Facts, Field, Readiness};
pub use fault::{Fault, TemplateError};
pub use layout::lay_out;
pub use length::{Area, Dpi, Length};
pub use pdf::{PdfError, pdf};
pub use picture::PictureName;
pub use placed::{Code, Picture, Placed, PlacedLabel, PlacedLine};
pub use png::png;
pub use purpose::Purpose;
pub use pwg::{Colours, pwg};
pub use qr::{QUIET as QR_QUIET, qr_svg};
pub use raster::{Bitmap, Edges, raster};
pub use refusal::{CodeKind, Refusal};
pub use says::{CodeSays, LayoutSays};
pub use sheet::{Sheet, SheetRefusal};
pub use svg::svg;
pub use template::{Style, Template};
