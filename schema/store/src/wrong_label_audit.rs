//! What `gambrel check` asks of the marks on wrong labels: each is worked out again.

use crate::conn::Conn;
use crate::error::Result;
use crate::tables::{lots, packs, prints, wrong_labels};
use crate::wrong_labels::{AT_ONCE, WrongLabelRow, judge};
use diesel::dsl::{exists, not};
use diesel::prelude::*;
use domain::audit::AuditFinding;
use std::collections::HashMap;

/// Everything about them that is not as it must be.
pub(crate) fn check(conn: &mut Conn) -> Result<Vec<AuditFinding>> {
    let mut found = wrongly_marked(conn)?;
    let says = "does not say rightly whether a label of it was ever printed";
    let printed = wrongly_printed(conn)?.into_iter();
    found.extend(printed.map(|pack| (pack, says)));
    let finding = |(pack, says)| AuditFinding::new(format!("pack {pack}"), says);
    Ok(found.into_iter().map(finding).collect())
}

/// Packs whose mark is not what their prints, their state and the truth say, with what is wrong about it.
fn wrongly_marked(conn: &mut Conn) -> Result<Vec<(i32, &'static str)>> {
    let mut kept: HashMap<i32, WrongLabelRow> = wrong_labels::table
        .select(WrongLabelRow::as_select())
        .load(conn)?
        .into_iter()
        .map(|row| (row.id, row))
        .collect();
    let printed: Vec<i32> = prints::table
        .select(prints::pack_id)
        .distinct()
        .order(prints::pack_id)
        .load(conn)?;
    let mut found = Vec::new();
    for some in printed.chunks(AT_ONCE) {
        for pack in judge(conn, some)?.packs {
            let kept = kept.remove(&pack.id);
            let kept = kept.map(|row| (row.print_id, row.untrue));
            if kept != pack.wrong {
                found.push((
                    pack.id,
                    "is not marked by what its last label says and what is true",
                ));
            }
        }
    }
    found.extend(
        kept.into_keys()
            .map(|pack| (pack, "is marked with a wrong label and has none")),
    );
    let unseen: Vec<i32> = wrong_labels::table
        .inner_join(lots::table.on(lots::id.eq(wrong_labels::lot_id)))
        .filter(lots::stopped.eq(false))
        .select(wrong_labels::id)
        .load(conn)?;
    found.extend(
        unseen
            .into_iter()
            .map(|pack| (pack, "has a wrong label that no scan looks for")),
    );
    found.sort_unstable();
    Ok(found)
}

/// Packs that are said to have been printed and were not, or the other way round.
fn wrongly_printed(conn: &mut Conn) -> Result<Vec<i32>> {
    let kept = prints::table
        .filter(prints::claims_id.is_not_null())
        .filter(prints::pack_id.eq(packs::id));
    let without = packs::printed.eq(true).and(not(exists(kept)));
    let unsaid = packs::printed.eq(false).and(exists(kept));
    let wrong = packs::table.filter(without.or(unsaid)).select(packs::id);
    Ok(wrong.order(packs::id).load(conn)?)
}
