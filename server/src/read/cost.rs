//! What a lot cost.

use super::LoadedFamily;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::cures::number;
use crate::wire::money::CostRead;
use domain::cost::By;
use domain::family::cost;
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
        ..Extent::ANCESTORS
    };
    let (reading, lot) = LoadedFamily::of_code(app.app(), conn, code, extent)?;
    let speech = app.speech(reading.kitchen());
    let by_value = cost(&reading.family, lot, By::SalesValue)?;
    let by_weight = cost(&reading.family, lot, By::Weight)?;
    let bears = reading.family.get(lot);
    let bears = bears.map_or(1, |of| of.bears_cost().milligrams());
    let kilograms = Decimal::new(bears, 6);
    let per_kg = |cost: Option<Decimal>| cost.map(|cost| number((cost / kilograms).round_dp(2)));
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
