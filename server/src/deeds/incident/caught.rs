//! What is entered late, or comes in, and falls in the scope of an open incident: it is taken, held from its birth,
//! and told.

use super::{codes, hold};
use crate::app::damaged;
use crate::deeds::facts::Facts;
use crate::error::Result;
use crate::read::scope;
use crate::wire::scope::ScopeAsked;
use domain::incident::{self, IncidentSays};
use domain::says::Says;
use domain::words::DeedKind;
use store::incidents;

/// May a deed bring something into a scope that was asked before it?
fn may_widen(facts: &Facts<'_, '_>, kind: DeedKind) -> bool {
    use DeedKind::*;
    match kind {
        Incident | IncidentScope | IncidentNote | IncidentGuests | IncidentClose => false,
        Hold | HoldRelease | Print | SettlePrint | CancelPrint | CheckProbe | ConfirmRow
        | Paper | Thin => false,
        Receive | Adopt | Void | Correct => true,
        _ => facts.moment.late,
    }
}

/// Holds what a deed brought into the scope of an open incident, and tells it. A clean-down that was entered since
/// narrows nothing: what was cleaned counts as it was known when the scope was last said.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn caught(facts: &mut Facts<'_, '_>, kind: DeedKind) -> Result<Vec<Says>> {
    let mut said = Vec::new();
    if !may_widen(facts, kind) {
        return Ok(said);
    }
    for row in incidents::open_holding(facts.tx.conn)? {
        let Some((last, done)) = incidents::scopes(facts.tx.conn, row.id)?.pop() else {
            continue;
        };
        let asked: ScopeAsked =
            serde_json::from_str(&last.question).map_err(|error| damaged(&error))?;
        let known = Some(done.recorded_at);
        let found = scope::find(facts.app, facts.tx.conn, &asked, "", known);
        // A lot that was named may have been voided since, or an animal corrected away: nothing new is in it.
        let found = match found {
            Ok(found) => found,
            Err(crate::error::Error::Store(error)) => return Err(error.into()),
            Err(_) => continue,
        };
        let held = incidents::ever_held(facts.tx.conn, row.id)?;
        let (new, _) = incident::differ(&found.scope, &held);
        if new.is_empty() {
            continue;
        }
        hold(facts, &row, &new)?;
        let lots = codes(facts, &new)?.join(", ");
        let number = row.number.clone();
        said.push(IncidentSays::Caught { number, lots }.into());
    }
    Ok(said)
}
