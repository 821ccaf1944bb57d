//! A bench or a machine is cleaned: what is between two clean-downs shares contact.

use super::says::DeedSays;
use super::{DeedHeader, Done, perform};
use crate::app::damaged;
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::wire::asked::CleanDownAsked;
use crate::wire::lists::PlaceEntry;
use domain::plan::Plan;
use domain::words::{DeedKind, PlaceKind};
use store::entries;

/// Records a clean-down.
///
/// # Errors
/// 422 where the place is not one that food touches.
pub fn take(app: &Caller<'_>, asked: &CleanDownAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::CleanDown,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: Some(&asked.place),
        note: asked.note.as_ref(),
    };
    perform(app, header, asked, |facts| {
        let row = entries::get(facts.tx.conn, List::Places.as_str(), &asked.place.0)?
            .expect("the place was found before");
        let place: PlaceEntry = serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
        if place.kind.0 != PlaceKind::Contact {
            let detail = DeedSays::NoFoodPlace {
                place: place.name.0,
            };
            return Err(Error::cannot_be("place", detail));
        }
        facts.record(
            asked.id.0.to_string(),
            DeedKind::CleanDown,
            &Plan::default(),
        )
    })
}
