//! Packs that were printed before: a label is printed once, unless somebody says why again.

use crate::deeds::facts::Facts;
use crate::error::{Problem, Result};
use crate::label_facts::Prepared;
use actix_web::http::StatusCode;
use std::collections::BTreeMap;
use store::deeds;
use store::lots::LotRow;
use store::prints::Print;

/// 409, naming the packs and when each was printed. `before` are the prints that count, by pack.
///
/// # Errors
/// That refusal, where there is anything to refuse.
pub fn refuse(
    facts: &mut Facts<'_, '_>,
    lot: &LotRow,
    labels: &[Prepared],
    before: &BTreeMap<u32, Vec<Print>>,
) -> Result<()> {
    let printed: Vec<&Print> = labels
        .iter()
        .filter_map(|label| before.get(&label.pack)?.last())
        .collect();
    if printed.is_empty() {
        return Ok(());
    }
    let keys: Vec<i32> = printed.iter().map(|print| print.row.deed_id).collect();
    let asked: BTreeMap<i32, _> = deeds::by_keys(facts.tx.conn, &keys)?
        .into_iter()
        .map(|deed| (deed.id, deed))
        .collect();
    // Told deed by deed: twelve packs of one deed are one line.
    let mut told: BTreeMap<i32, Vec<u32>> = BTreeMap::new();
    for print in &printed {
        told.entry(print.row.deed_id)
            .or_default()
            .push(print.row.number.unsigned_abs());
    }
    let lines = told.iter().map(|(deed, packs)| {
        let deed = &asked[deed];
        let at = deed.at.and_utc().with_timezone(&facts.kitchen.zone);
        format!(
            "{} on {} by {}",
            runs(packs),
            at.format("%a %-d %b %Y at %H:%M"),
            deed.person
        )
    });
    let detail = format!(
        "{}: {}. A label is printed once. If it is needed again, say why: it will be marked as a reprint.",
        lot.code()?.shown(),
        lines.collect::<Vec<_>>().join("; ")
    );
    Err(Problem::new(
        StatusCode::CONFLICT,
        "printed-before",
        "Printed before",
        detail,
    )
    .at("packs")
    .into())
}

/// `pack 3`, `packs 1 to 12 and 14`.
fn runs(numbers: &[u32]) -> String {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == *number => *last = *number,
            _ => runs.push((*number, *number)),
        }
    }
    let shown: Vec<String> = runs
        .iter()
        .map(|(first, last)| match last - first {
            0 => first.to_string(),
            _ => format!("{first} to {last}"),
        })
        .collect();
    match (numbers.len(), shown.split_last()) {
        (1, _) | (_, None) => format!("pack {}", shown.join("")),
        (_, Some((last, []))) => format!("packs {last}"),
        (_, Some((last, rest))) => format!("packs {} and {last}", rest.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::runs;

    #[test]
    fn packs_are_told_in_runs() {
        assert_eq!(runs(&[3]), "pack 3");
        assert_eq!(runs(&[1, 2, 3]), "packs 1 to 3");
        assert_eq!(runs(&[1, 2, 5, 9]), "packs 1 to 2, 5 and 9");
    }
}
