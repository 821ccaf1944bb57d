//! Source animals, and the lots received of them.

use super::says::QuerySays;
use crate::app::App;
use crate::error::{Error, Result};
use crate::read::find::limit;
use crate::wire::scalars::day;
use domain::code::LotCode;
use domain::family::AnimalView;
use serde::Deserialize;
use std::collections::HashMap;
use store::animals::{self, AnimalSearch};
use utoipa::IntoParams;
use uuid::Uuid;

/// The query of a search for animals. What is said of each field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct AnimalsQuery {
    /// The farm's code
    pub farm: Option<String>,
    /// The day it was killed
    pub killed_on: Option<String>,
    /// The abattoir's carcass number
    pub carcass: Option<String>,
    /// Ear tag or tattoo
    pub tag: Option<String>,
    /// The id of the last animal of the page before
    pub after: Option<String>,
    /// How many, at most 200; 50 if left out
    pub limit: Option<String>,
}

/// A page of animals.
pub struct Found {
    /// The animals, newest kill first.
    pub animals: Vec<AnimalView>,
    /// Is there a next page?
    pub more: bool,
}

/// Animals that fit, newest kill first.
///
/// # Errors
/// 422 where a value of the query cannot be.
pub fn list(app: &App, query: &AnimalsQuery) -> Result<Found> {
    let given = |text: &Option<String>| {
        text.as_deref()
            .map(str::trim)
            .filter(|text| !text.is_empty())
            .map(str::to_owned)
    };
    let mut sought = AnimalSearch {
        farm: given(&query.farm).map(|farm| farm.to_uppercase()),
        killed_on: given(&query.killed_on)
            .map(|text| day(&text).map_err(|says| Error::cannot_be("killed_on", says)))
            .transpose()?,
        carcass: given(&query.carcass),
        tag: given(&query.tag),
        after: None,
    };
    for (field, text) in [
        ("farm", &sought.farm),
        ("carcass", &sought.carcass),
        ("tag", &sought.tag),
    ] {
        if text
            .as_ref()
            .is_some_and(|text| text.chars().any(char::is_control))
        {
            return Err(Error::cannot_be(field, QuerySays::Unprintable));
        }
    }
    let limit = limit(query.limit.as_deref())?;
    app.store.read(|conn| {
        if let Some(after) = given(&query.after) {
            let last = Uuid::parse_str(&after).ok();
            let last = last
                .map(|uid| animals::by_uid(conn, uid.as_bytes()))
                .transpose()?;
            let last = last.flatten().ok_or_else(|| {
                let after = after.clone();
                Error::cannot_be("after", QuerySays::NotAfter { after })
            })?;
            sought.after = Some((last.killed_on, last.id));
        }
        let mut rows = animals::list(conn, &sought, limit + 1)?;
        let more = rows.len() as i64 > limit;
        rows.truncate(limit as usize);
        let keys: Vec<i32> = rows.iter().map(|(row, _)| row.id).collect();
        let mut received: HashMap<i32, Vec<LotCode>> = HashMap::new();
        for (animal, _, code) in animals::received_of(conn, &keys)? {
            received.entry(animal).or_default().push(code);
        }
        let mut once = animals::once_of(conn, &keys)?;
        let animals = rows.iter().map(|(row, uid)| {
            Ok(AnimalView {
                animal: row.source_animal(uid)?,
                received: received.remove(&row.id).unwrap_or_default(),
                once: once.remove(&row.id).unwrap_or_default(),
            })
        });
        Ok(Found {
            animals: animals.collect::<Result<_>>()?,
            more,
        })
    })
}
