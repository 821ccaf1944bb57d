//! EAN-13: thirteen digits for a shop's till.

use barcoders::sym::ean13::EAN13;
use domain::gs1::check_digit_is_right;

use crate::bars::Bars;
use crate::length::{Dpi, Length};
use crate::refusal::{CodeKind, Refusal};

/// White left and right of the bars, in modules: 11 and 7 in the size guide of GS1 Sweden
/// (gs1.se, "Size guide", read as a summary of the General Specifications).
pub const QUIET: (i64, i64) = (11, 7);

/// Thinnest and thickest bar at a till, 80 and 200 % of the nominal 0.330 mm (the same guide).
const BAR: (Length, Length) = (Length::from_um(264), Length::from_um(660));

/// The digits as bars. The digits in clear are a text of the label.
pub(crate) fn bars(digits: &str, dpi: Dpi) -> Result<Bars, Refusal> {
    let refused = || Refusal::NotTillDigits {
        digits: digits.to_owned(),
    };
    if digits.len() != 13 || !check_digit_is_right(digits) {
        return Err(refused());
    }
    let symbol = EAN13::new(digits).map_err(|_| refused())?;
    Ok(Bars {
        kind: CodeKind::Ean13,
        payload: digits.to_owned(),
        modules: symbol.encode(),
        quiet: QUIET,
        fewest_dots: dpi.first_dot(BAR.0),
        most_dots: Some(dpi.whole_dots(BAR.1)),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ninety_five_modules_within_the_sizes_of_a_till() {
        for (dpi, fewest, most) in [(Dpi::D203, 3, 5), (Dpi::D300, 4, 7)] {
            let bars = bars("2000042212995", dpi).unwrap();
            assert_eq!((bars.modules.len(), bars.across()), (95, 113));
            assert_eq!((bars.fewest_dots, bars.most_dots), (fewest, Some(most)));
        }
    }

    #[test]
    fn thirteen_right_digits_or_none() {
        for digits in [
            "",
            "200004221299",
            "2000042212994",
            "20000422129955",
            "200004221299é",
        ] {
            let refusal = bars(digits, Dpi::D203).unwrap_err();
            assert!(matches!(refusal, Refusal::NotTillDigits { .. }), "{digits}");
        }
    }
}
