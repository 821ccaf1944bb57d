//! Small words and figures as the pages show them.

use crate::wire::Weight;
use crate::wire::answers::DescendantRead;
use domain::code::LotCode;
use domain::grams::Grams;

/// A code with hyphens, for the eye.
pub fn shown(code: &str) -> String {
    LotCode::read(code).map_or_else(|_| code.to_owned(), |code| code.shown())
}

/// A weight, or a dash for none.
pub fn or_dash(weight: &Weight) -> String {
    if weight.0 == Grams::ZERO {
        "–".into()
    } else {
        weight.0.to_string()
    }
}

/// What was sold, with the packs.
pub fn sold(lot: &DescendantRead) -> String {
    match lot.sold_packs {
        0 => or_dash(&lot.sold_grams),
        1 => format!("{} (1 pack)", lot.sold_grams.0),
        packs => format!("{} ({packs} packs)", lot.sold_grams.0),
    }
}

/// What went other ways, each named.
pub fn other(lot: &DescendantRead) -> String {
    let ways = [
        ("shipped", lot.shipped_grams),
        ("returned", lot.returned_grams),
        ("lost", lot.lost_grams),
        ("unexplained", lot.unexplained_grams),
        ("taken back", lot.taken_back_grams),
    ];
    let told = ways.iter().filter(|(_, weight)| weight.0 != Grams::ZERO);
    let told: Vec<String> = told
        .map(|(way, weight)| format!("{way} {}", weight.0))
        .collect();
    if told.is_empty() {
        "–".into()
    } else {
        told.join(", ")
    }
}

/// A share in per cent.
pub fn percent(share: &Option<f64>) -> String {
    match share {
        Some(share) if *share > 0.0 && *share < 0.001 => "under 0.1 %".into(),
        Some(share) => format!("{:.1} %", share * 100.0),
        None => "–".into(),
    }
}

/// A share that is always known.
pub fn of_all(share: &f64) -> String {
    percent(&Some(*share))
}

/// A time to the minute, as the kitchen's clock shows it.
pub fn minute(time: &str) -> String {
    time.get(..16).unwrap_or(time).replace('T', " ")
}
