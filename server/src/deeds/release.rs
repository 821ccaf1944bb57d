//! A cured piece is released, or the answer lists the numbers that are not met.

use super::facts::Facts;
use super::says::DeedSays;
use super::{DeedHeader, Done, perform, trichinae};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::read::LoadedFamily;
use crate::wire::cures::ReleaseAsked;
use domain::cure_room::{self, Signed};
use domain::deed::release;
use domain::family::piece;
use domain::lot::LotId;
use domain::plan::Reason;
use domain::words::{DeedKind, Topic};
use store::family::Extent;
use store::lots::LotRow;
use store::packs::PackChoice;

/// Records a release.
///
/// # Errors
/// 409 with every number of the product's rule that is not met.
pub fn take(app: &Caller<'_>, asked: &ReleaseAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Release,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref().or(asked.alarm_looked_at.as_ref()),
    };
    perform(app, header, asked, |facts| {
        let named = facts.named(&asked.lot.0, "lot")?;
        let lot = facts.lot(&named.code, PackChoice::OnHand)?;
        let (release, row) = judged(facts, asked, &named.code)?;
        let (moment, zone) = (facts.moment, facts.kitchen.zone);
        let by = facts.by.clone();
        let mut plan = release::plan(&lot, &release, &by, &moment, zone)?;
        let chain = trichinae::proof(facts, asked.trichinae.as_ref(), &lot, &row)?;
        let links = Reason::all(Topic::Release, chain);
        plan.reasons
            .extend(links.into_iter().map(|link| (lot.id, link)));
        facts.record(asked.id.0.to_string(), DeedKind::Release, &plan)
    })
}

fn judged(
    facts: &mut Facts<'_, '_>,
    asked: &ReleaseAsked,
    code: &domain::code::LotCode,
) -> Result<(cure_room::Release, LotRow)> {
    let row = store::lots::by_code(facts.tx.conn, code)?
        .ok_or_else(|| domain::refusal::Refusal::never_issued("lot", code))?;
    let reading = LoadedFamily::load(facts.app, facts.tx.conn, &[row.id], Extent::ANCESTORS)?;
    let (zone, rules) = (facts.kitchen.zone, &facts.app.law.trade.cure_room);
    let found = piece(&reading.family, LotId(row.id), zone, rules);
    let mut piece = found.ok_or_else(|| {
        let lot = code.clone();
        Error::cannot_be("lot", DeedSays::NotFromCure { lot })
    })?;
    let signed = Signed {
        day: facts.moment.day,
        by: facts.by.clone(),
    };
    piece.alarm_signed = asked.alarm_looked_at.as_ref().map(|_| signed.clone());
    piece.signed = Some(signed);
    Ok((cure_room::release(&piece, facts.moment.day, rules), row))
}
