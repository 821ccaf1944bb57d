//! Source animals, and the lots received of them.

use crate::app::App;
use crate::deeds::perform::shown_id;
use crate::error::{Error, Result};
use crate::read::find::limit;
use crate::wire::Day;
use crate::wire::answers::{AnimalRead, AnimalsPage};
use crate::wire::scalars::day;
use serde::Deserialize;
use store::animals::{self, AnimalRow, Sought};

/// The query of a search for animals.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
#[allow(missing_docs, reason = "told of in the API's document")]
pub struct AnimalsQuery {
    pub farm: Option<String>,
    pub killed_on: Option<String>,
    pub carcass: Option<String>,
    pub tag: Option<String>,
    pub limit: Option<String>,
}

/// Animals that fit, newest kill first.
///
/// # Errors
/// 422 where a value of the query cannot be.
pub fn list(app: &App, query: &AnimalsQuery) -> Result<AnimalsPage> {
    let given = |text: &Option<String>| {
        text.as_deref()
            .map(str::trim)
            .filter(|text| !text.is_empty())
            .map(str::to_owned)
    };
    let sought = Sought {
        farm: given(&query.farm).map(|farm| farm.to_uppercase()),
        killed_on: given(&query.killed_on)
            .map(|text| day(&text).map_err(|says| Error::cannot_be("killed_on", says)))
            .transpose()?,
        carcass: given(&query.carcass),
        tag: given(&query.tag),
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
            return Err(Error::cannot_be(
                field,
                "It holds a character that cannot be printed.",
            ));
        }
    }
    let limit = limit(query.limit.as_deref())?;
    app.store.read(|conn| {
        let mut animals = Vec::new();
        for (row, uid) in animals::list(conn, &sought, limit)? {
            let sides = animals::sides(conn, row.id)?;
            let lots = sides
                .into_iter()
                .map(|(_, code)| code.to_string())
                .collect();
            animals.push(AnimalRead {
                lots,
                ..read(&row, &uid)
            });
        }
        Ok(AnimalsPage { animals })
    })
}

/// An animal as it is told.
pub fn read(row: &AnimalRow, uid: &[u8]) -> AnimalRead {
    AnimalRead {
        id: shown_id(uid),
        farm: row.farm.clone(),
        species: row.species.clone(),
        killed_on: Day(row.killed_on),
        abattoir: row.abattoir.clone(),
        carcass: row.carcass.clone(),
        tag: row.tag.clone(),
        head: row.head,
        lots: Vec::new(),
    }
}
