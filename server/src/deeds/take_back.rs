//! A customer brings a pack back.

use super::facts::{choice, wanted};
use super::says::DeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::asked::TakeBackAsked;
use domain::audit;
use domain::deed::draw::Choice;
use domain::deed::take_back;
use domain::grams::Grams;
use domain::words::{Account, DeedKind};
use store::voids::live_events;

/// Records a take-back.
///
/// # Errors
/// Whatever the contract refuses of a take-back.
pub fn take(app: &Caller<'_>, asked: &TakeBackAsked) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", DeedSays::WhyBack));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::TakeBack,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref().or(Some(&asked.why)),
    };
    perform(app, header, asked, |facts| {
        let named = facts.named(&asked.lot.0, "lot")?;
        let choice = choice(&named, asked.pack, None, asked.grams, "")?;
        let lot = facts.lot(&named.code, wanted(&choice))?;
        let number = match choice {
            Choice::One {
                pack: Some(number), ..
            } => number,
            _ if lot.pack_count == 1 => 1,
            _ => {
                let detail = DeedSays::WhichBack {
                    lot: lot.code.clone(),
                    packs: lot.pack_count,
                };
                return Err(Error::cannot_be("pack", detail));
            }
        };
        let events = live_events(facts.tx.conn, &[lot.id.0])?;
        let key = lot.pack(number).map(|pack| pack.id.0);
        let of_pack = events
            .iter()
            .filter(|event| Some(event.row.pack_id) == key)
            .map(|event| event.event());
        let totals = audit::totals(of_pack.collect::<store::Result<Vec<_>>>()?.into_iter());
        let of = |account: Account| totals.get(&account).copied().unwrap_or(Grams::ZERO);
        let away = of(Account::Sold) + of(Account::Shipped) - of(Account::TakenBack);
        let grams = asked.grams.map(|grams| grams.0);
        let plan = take_back::plan(&lot, number, grams, away, &facts.moment, facts.kitchen.zone)?;
        facts.record(asked.id.0.to_string(), DeedKind::TakeBack, &plan)
    })
}
