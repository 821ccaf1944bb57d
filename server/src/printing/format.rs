//! What a label is sent as.

use super::says::{PrintSays, PrinterSays};
use labels::{Colours, PlacedLabel};

/// A document format.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// PDF.
    Pdf,
    /// PWG raster (PWG 5102.4).
    PwgRaster,
}

impl Format {
    /// By preference: PDF keeps letters as letters.
    const ALL: [Format; 2] = [Format::Pdf, Format::PwgRaster];

    /// Its media type.
    pub const fn mime(self) -> &'static str {
        match self {
            Format::Pdf => "application/pdf",
            Format::PwgRaster => "image/pwg-raster",
        }
    }

    /// The format of that media type.
    pub fn of_mime(mime: &str) -> Option<Format> {
        Format::ALL.into_iter().find(|format| format.mime() == mime)
    }

    /// The best that a printer takes. One that does not say is trusted with PDF: it can still refuse.
    ///
    /// # Errors
    /// What it takes instead.
    pub fn choose(taken: &[String]) -> Result<Format, PrinterSays> {
        let takes =
            |format: &Format| taken.is_empty() || taken.iter().any(|mime| mime == format.mime());
        let formats = || taken.join(", ");
        let best = Format::ALL.into_iter().find(takes);
        best.ok_or_else(|| PrinterSays::NoFormat { formats: formats() })
    }
}

/// A label as a document. The same label gives the same bytes.
///
/// # Errors
/// Why it cannot be drawn.
pub fn encode(format: Format, label: &PlacedLabel) -> Result<Vec<u8>, PrintSays> {
    let pages = label.alike();
    let not_drawn = |cause: String| PrintSays::NotDrawn { cause };
    match format {
        Format::Pdf => labels::pdf(&pages).map_err(|error| not_drawn(error.to_string())),
        // Eight bits of grey, which every printer of that format takes (PWG 5100.14, from memory);
        // the dots themselves are black or white.
        Format::PwgRaster => Ok(labels::pwg(&pages, Colours::Sgray8)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pdf_comes_first_and_nothing_is_sent_blindly() {
        let choose = |taken: &[&str]| {
            Format::choose(
                &taken
                    .iter()
                    .map(|mime| (*mime).to_owned())
                    .collect::<Vec<_>>(),
            )
        };
        assert_eq!(
            choose(&["image/pwg-raster", "application/pdf"]),
            Ok(Format::Pdf)
        );
        assert_eq!(choose(&["image/pwg-raster"]), Ok(Format::PwgRaster));
        assert_eq!(choose(&[]), Ok(Format::Pdf));
        let formats = "text/plain".to_owned();
        assert_eq!(
            choose(&["text/plain"]),
            Err(PrinterSays::NoFormat { formats })
        );
    }
}
