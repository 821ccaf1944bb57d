//! The codes in a grey picture: square ones and bars, as our labels and the cartons have them.

use super::grey::Grey;
use rxing::{BarcodeFormat, DecodeHints, helpers};
use std::collections::{BTreeSet, HashSet};
use std::panic::catch_unwind;

/// A code that was seen.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Code {
    /// What it holds.
    pub text: String,
    /// What it is: `qr`, `data-matrix`, `code-128`, `ean-13` …
    pub kind: &'static str,
}

/// The kinds that are looked for.
const KINDS: [(BarcodeFormat, &str); 6] = [
    (BarcodeFormat::QR_CODE, "qr"),
    (BarcodeFormat::DATA_MATRIX, "data-matrix"),
    (BarcodeFormat::CODE_128, "code-128"),
    (BarcodeFormat::EAN_13, "ean-13"),
    (BarcodeFormat::EAN_8, "ean-8"),
    (BarcodeFormat::UPC_A, "upc-a"),
];

/// The longest sides at which it is looked at, in dots: most codes are read in a small picture, and a fine one in a
/// large one.
const SIDES: [usize; 2] = [1_000, 2_400];
/// The most letters of a code; a longer one is none of ours.
const LONGEST: usize = 500;

/// The codes in a picture, square ones first.
pub fn of(grey: &Grey) -> Vec<Code> {
    let mut seen = 0;
    for side in SIDES {
        let small = grey.at_most(side);
        if small.dots.len() == seen {
            break;
        }
        seen = small.dots.len();
        // Another's code reads what anybody sends: if it gives up over a picture, there is no code in it for us.
        let codes = catch_unwind(|| at(small)).unwrap_or_default();
        if !codes.is_empty() {
            return codes;
        }
    }
    Vec::new()
}

fn at(grey: Grey) -> Vec<Code> {
    let formats: HashSet<BarcodeFormat> = KINDS.iter().map(|(format, _)| *format).collect();
    let mut hints = DecodeHints {
        TryHarder: Some(true),
        PossibleFormats: Some(formats),
        ..DecodeHints::default()
    };
    let (Ok(width), Ok(height)) = (u32::try_from(grey.width), u32::try_from(grey.height)) else {
        return Vec::new();
    };
    let found = helpers::detect_multiple_in_luma_with_hints(grey.dots, width, height, &mut hints);
    let mut codes: Vec<(usize, Code)> = Vec::new();
    let mut known = BTreeSet::new();
    for one in found.unwrap_or_default() {
        let nth = KINDS
            .iter()
            .position(|(format, _)| format == one.getBarcodeFormat());
        let Some(nth) = nth else { continue };
        let text = one.getText().to_owned();
        if !text.is_empty() && text.chars().count() <= LONGEST && known.insert(text.clone()) {
            let kind = KINDS[nth].1;
            codes.push((nth, Code { text, kind }));
        }
    }
    codes.sort();
    codes.into_iter().map(|(_, code)| code).collect()
}
