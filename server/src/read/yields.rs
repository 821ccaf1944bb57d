//! What came off an animal, or out of a cook, against what is usual.

use super::LoadedFamily;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::Weight;
use crate::wire::cures::number;
use crate::wire::money::{YieldLine, YieldRead};
use domain::family::yields;
use domain::yields::{Verdict, YieldShown};
use store::Conn;
use store::family::Extent;

/// What has to be loaded to hold a lot against what is usual.
pub const EXTENT: Extent = Extent {
    descendants: true,
    ..Extent::ANCESTORS
};

/// The yield of a lot: of a carcass, what was cut off it; of a cooked lot, what came out.
///
/// # Errors
/// 422 where the list does not say how it is cut or cooked, or nothing was cut off it yet.
pub fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<YieldRead> {
    let (reading, lot) = LoadedFamily::of_code(app.app(), conn, code, EXTENT)?;
    let (of_grams, lines) = yields(&reading.family, lot, &app.law.trade.yields)?;
    let speech = app.speech(reading.kitchen());
    let line = |line: YieldShown| YieldLine {
        name: speech.say(&line.name),
        grams: Weight(line.grams),
        amount: number(line.amount.round_dp(2)),
        expected: line.expected.map(|expected| number(expected.round_dp(2))),
        verdict: match line.verdict {
            Verdict::Usual => "usual",
            Verdict::Low => "low",
            Verdict::High => "high",
            Verdict::NoBand => "no-band",
            Verdict::NotWeighed => "not-weighed",
        }
        .to_owned(),
        says: speech.say(&line.says),
        key: line.says.key().to_owned(),
        source: speech.say(&app.law.trade_rows.source(&line.row)),
    };
    Ok(YieldRead {
        lot: reading.code(lot),
        of_grams: Weight(of_grams),
        lines: lines.into_iter().map(line).collect(),
    })
}
