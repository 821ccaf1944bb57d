//! In what form a label is written: the ending of the file's name says.

use labels::{Colours, Edges, PlacedLabel, pdf, png, pwg, raster, svg};
use std::path::Path;

/// A form of file.
#[derive(Debug, Clone, Copy)]
pub(super) enum Form {
    /// For any printer.
    Pdf,
    /// The very dots of the label printer.
    Png,
    /// For a browser.
    Svg,
    /// Dots as IPP label printers take them.
    Pwg,
}

/// Is it no file but standard output: `-`, or `-` and an ending?
pub(super) fn is_standard_output(path: &Path) -> bool {
    path == Path::new("-")
        || path.parent() == Some(Path::new("")) && path.file_stem().is_some_and(|stem| stem == "-")
}

impl Form {
    /// The form that a file's name asks for.
    ///
    /// # Errors
    /// An ending that is none of ours.
    pub fn of(path: &Path) -> Result<Form, String> {
        if path == Path::new("-") {
            return Ok(Form::Pdf);
        }
        let ending = path.extension().unwrap_or_default().to_ascii_lowercase();
        match ending.to_str() {
            Some("pdf") => Ok(Form::Pdf),
            Some("png") => Ok(Form::Png),
            Some("svg") => Ok(Form::Svg),
            Some("pwg") => Ok(Form::Pwg),
            _ => Err(format!(
                "{} has no ending that says in what form to write it: .pdf, .png, .svg or .pwg",
                path.display()
            )),
        }
    }

    /// The bytes of the file.
    ///
    /// # Errors
    /// What the library that writes it says.
    pub fn draw(self, label: &PlacedLabel) -> Result<Vec<u8>, String> {
        let one = std::slice::from_ref(label);
        match self {
            Form::Pdf => pdf(one).map_err(|error| error.to_string()),
            Form::Png => {
                png(&raster(&label.joined(), 1, Edges::Sharp)).map_err(|error| error.to_string())
            }
            Form::Svg => Ok(svg(&label.joined()).into_bytes()),
            Form::Pwg => Ok(pwg(one, Colours::Black1)),
        }
    }
}
