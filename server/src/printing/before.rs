//! Packs that were printed before: a label is printed once, unless somebody says why again.

use super::says::PrintSays;
use crate::deeds::facts::Facts;
use crate::error::{Problem, Result};
use crate::label_facts::Prepared;
use crate::problems::TitleSays;
use actix_web::http::StatusCode;
use domain::moment::on_clock;
use domain::says::{Arg, Says};
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
        Says::from(PrintSays::BeforeBy {
            packs: runs(packs).into(),
            at: on_clock(deed.at.and_utc(), facts.kitchen.zone),
            by: deed.person.clone(),
        })
    });
    let detail = PrintSays::Before {
        lot: lot.code()?,
        prints: Arg::Series(lines.collect()),
    };
    Err(Problem::new(
        StatusCode::CONFLICT,
        "printed-before",
        TitleSays::PrintedBefore,
        detail,
    )
    .at("packs")
    .into())
}

/// `pack 3`, `packs 1 to 12 and 14`.
fn runs(numbers: &[u32]) -> PrintSays {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == *number => *last = *number,
            _ => runs.push((*number, *number)),
        }
    }
    if let [one] = numbers {
        return PrintSays::Pack { pack: *one };
    }
    let packs = runs.into_iter().map(|(first, last)| match last - first {
        0 => Arg::from(first),
        _ => Arg::from(PrintSays::Run { first, last }),
    });
    PrintSays::Packs {
        packs: Arg::All(packs.collect()),
    }
}

#[cfg(test)]
mod tests {
    use super::runs;
    use domain::says::Says;
    use words::Speech;

    #[test]
    fn packs_are_told_in_runs() {
        let told = |numbers: &[u32]| Speech::default().say(&Says::from(runs(numbers)));
        assert_eq!(told(&[3]), "pack 3");
        assert_eq!(told(&[1, 2, 3]), "packs 1 to 3");
        assert_eq!(told(&[1, 2, 5, 9]), "packs 1 to 2, 5 and 9");
    }
}
