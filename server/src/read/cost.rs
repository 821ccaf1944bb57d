//! What a lot cost.

use super::LoadedFamily;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::cures::number;
use crate::wire::money::CostRead;
use domain::cost::By;
use domain::family::{Parted, Relative, cost};
use rust_decimal::Decimal;
use store::Conn;
use store::family::Extent;

/// The cost of a lot, split both ways.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<CostRead> {
    let extent = Extent {
        siblings: true,
        dried: true,
        ..Extent::ANCESTORS
    };
    let (reading, lot) = LoadedFamily::of_code(app.app(), conn, code, extent)?;
    let speech = app.speech(reading.kitchen());
    let by_value = cost(&reading.family, lot, By::SalesValue)?;
    let by_weight = cost(&reading.family, lot, By::Weight)?;
    let bears = reading.family.get(lot).map(per_kilogram);
    let per_kg = |cost: Option<Decimal>| {
        let (cost, (share, kilograms)) = cost.zip(bears)?;
        Some(number((cost * share / kilograms).round_dp(2)))
    };
    Ok(CostRead {
        lot: reading.code(lot),
        cost_minor: by_value.minor.map(|cost| number(cost.round_dp(2))),
        per_kg_minor: per_kg(by_value.minor),
        per_kg_by_weight_minor: per_kg(by_weight.minor),
        how: by_value.how.iter().map(|says| speech.say(says)).collect(),
        how_keys: by_value
            .how
            .iter()
            .map(|says| says.key().to_owned())
            .collect(),
    })
}

/// The share of its cost and the kilograms that bear it: of what is left of a lot, or of all of it where nothing is.
fn per_kilogram(of: &Relative) -> (Decimal, Decimal) {
    let kilograms = |milligrams: i64| Decimal::new(milligrams.max(1), 6);
    match of.went.on_hand.milligrams() {
        ..=0 => {
            let dried = of.went.lost;
            (Decimal::ONE, kilograms((of.made() - dried).milligrams()))
        }
        left => (Parted::of(of).rest, kilograms(left)),
    }
}
