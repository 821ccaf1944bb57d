//! The mark of a lot on a pack.

use crate::rows::{Bound, RowId};
use rust_decimal::Decimal;

/// The rule of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LotMarkWording {
    /// Where the letter stands.
    pub row: RowId,
    /// The mandated letter before the lot.
    pub before: String,
    /// Where the exceptions stand.
    pub not_needed_row: RowId,
    /// Packs whose largest side is below so many square centimetres need none.
    pub small_pack: Bound,
}

/// Must the pack carry a lot at all (`canada-eu-uk-16-exceptions`)?
pub fn is_needed(
    wording: &LotMarkWording,
    date_shows_day_and_month: bool,
    for_immediate_sale: bool,
    square_centimetres: Decimal,
) -> bool {
    !date_shows_day_and_month
        && !for_immediate_sale
        && wording.small_pack.allows(square_centimetres)
}

/// The lot as it stands on the label: after its letter, unless it is plain without.
pub fn shown(wording: &LotMarkWording, lot: &str, plain_without: bool) -> String {
    match plain_without {
        true => lot.to_owned(),
        false => format!("{}{lot}", wording.before),
    }
}
