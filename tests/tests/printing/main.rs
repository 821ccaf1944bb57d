//! Labels on their way to a printer: asked, settled, printed again, and whatever a printer, a line or the power does to them.

mod encrypted;
mod ippeveprinter;
mod queue;
mod reprints;
mod tried;
mod trouble;
