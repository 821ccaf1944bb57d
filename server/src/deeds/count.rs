//! Packs are counted: the difference to the book is unexplained, and stays so.

use super::facts::not_too_many;
use super::happened::as_it_happened;
use super::says::DeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::Weight;
use crate::wire::asked::CountAsked;
use domain::deed::count::{self, CountedPack};
use domain::words::{Account, DeedKind};
use store::packs::PackChoice;

/// Records a count.
///
/// # Errors
/// Whatever the contract refuses of a count.
pub fn take(app: &Caller<'_>, asked: &CountAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Count,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: asked.place.as_ref(),
        note: asked.note.as_ref(),
    };
    not_too_many(asked.packs.len(), "packs")?;
    let happened = as_it_happened(asked.as_it_happened, asked.note.as_ref())?;
    let mut found = Vec::with_capacity(asked.packs.len());
    for (nth, pack) in asked.packs.iter().enumerate() {
        match (pack.grams, pack.missing) {
            (Some(grams), None | Some(false)) => found.push(CountedPack {
                pack: pack.pack,
                grams: Some(grams.0),
            }),
            (None, Some(true)) => found.push(CountedPack {
                pack: pack.pack,
                grams: None,
            }),
            _ => {
                return Err(Error::cannot_be(
                    format!("packs[{nth}].grams"),
                    DeedSays::WeighOrMissing,
                ));
            }
        }
    }
    perform(app, header, asked, |facts| {
        let named = facts.named(&asked.lot.0, "lot")?;
        let numbers = found
            .iter()
            .map(|found| i32::try_from(found.pack).unwrap_or(-1))
            .collect();
        let lot = facts.lot(&named.code, PackChoice::Numbers(numbers))?;
        let plan = count::plan(&lot, &found, &facts.moment, facts.kitchen.zone, happened)?;
        let mut done = facts.record(asked.id.0.to_string(), DeedKind::Count, &plan)?;
        let unexplained = plan
            .changes
            .iter()
            .filter(|change| change.account == Account::Unexplained);
        done.unexplained_grams = Some(Weight(unexplained.map(|change| change.grams).sum()));
        Ok(done)
    })
}
