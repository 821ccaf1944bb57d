//! A source animal, as it is answered.

use super::shown_id;
use crate::wire::Day;
use domain::family::{AnimalView, KnownOnce};
use serde::Serialize;
use utoipa::ToSchema;

/// A source animal.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct AnimalRead {
    /// Its id.
    pub id: String,
    /// The farm's code.
    pub farm: String,
    /// Its species.
    pub species: String,
    /// The day it was killed.
    pub killed_on: Day,
    /// The abattoir's establishment number.
    pub abattoir: Option<String>,
    /// The abattoir's carcass number.
    pub carcass: Option<String>,
    /// Ear tag or tattoo.
    pub tag: Option<String>,
    /// How many.
    pub head: i32,
    /// The lots received of it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lots: Vec<String>,
    /// The lots that were known as received of it, until that was corrected.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub once: Vec<OnceRead>,
}

/// A lot that was known as received of an animal, until that was corrected.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct OnceRead {
    /// Its code.
    pub lot: String,
    /// The id of the animal that it is known to be of now.
    pub now: String,
    /// Who corrected it.
    pub corrected_by: String,
}

impl OnceRead {
    /// Each of them.
    pub fn all(once: &[KnownOnce]) -> Vec<OnceRead> {
        let read = once.iter().map(|of| OnceRead {
            lot: of.lot.to_string(),
            now: shown_id(&of.now),
            corrected_by: of.by.clone(),
        });
        read.collect()
    }
}

impl AnimalRead {
    /// A source animal and the lots received of it.
    pub fn of(view: &AnimalView) -> AnimalRead {
        let animal = &view.animal;
        AnimalRead {
            id: shown_id(&animal.uid),
            farm: animal.farm.clone(),
            species: animal.species.as_str().to_owned(),
            killed_on: Day(animal.killed_on),
            abattoir: animal.abattoir.clone(),
            carcass: animal.carcass.clone(),
            tag: animal.tag.clone(),
            head: i32::try_from(animal.head).unwrap_or(i32::MAX),
            lots: view.received.iter().map(ToString::to_string).collect(),
            once: OnceRead::all(&view.once),
        }
    }
}
