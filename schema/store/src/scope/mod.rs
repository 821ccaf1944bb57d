//! The scope of a recall, asked of the record: what may matter is loaded in some statements, whatever the number
//! of lots; what that is, is decided in the core. Where a walk lacks something, that is loaded and it goes again.

mod facts;
mod load;
mod rows;

pub use facts::{FactFilter, did_anything, facts, lots_of_codes, of_product, uids};

use crate::conn::Conn;
use crate::error::{Error, Result};
use chrono::NaiveDateTime;
use domain::lot::{LotId, PlaceId};
use domain::scope::{Lacks, Question, Scope, Start, World, starts, tell};
use load::Loader;
use std::collections::BTreeMap;

/// A question, as the record is asked.
#[derive(Debug, Clone)]
pub struct Asked {
    /// Where it begins.
    pub starts: Vec<Start>,
    /// How far it goes.
    pub question: Question,
    /// Why each lot is left out that a person leaves out.
    pub without: BTreeMap<LotId, String>,
    /// The places that are cleaned down.
    pub contact: Vec<PlaceId>,
    /// What was cleaned counts as it was known at a moment; as it is known now if left out.
    pub cleaned_as_known: Option<NaiveDateTime>,
}

/// More rounds than any chain of contact has: a walk that lacks more has lost its way.
const ROUNDS: usize = 100_000;

/// Asks the record: the answer, and what was loaded for it.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn ask(conn: &mut Conn, asked: &Asked) -> Result<(Scope, World)> {
    let mut loader = Loader::new(conn, World::default());
    loader.clean_downs(&asked.contact, asked.cleaned_as_known)?;
    for start in &asked.starts {
        match start {
            Start::Lots(lots) => {
                let keys: Vec<i32> = lots.iter().map(|lot| lot.0).collect();
                loader.family(&keys)?;
            }
            Start::Place { place, from, .. } => loader.lay_in(*place, *from)?,
            Start::By {
                person,
                from,
                until,
            } => loader.done_by(person, *from, *until)?,
        }
    }
    let left_out: Vec<i32> = asked.without.keys().map(|lot| lot.0).collect();
    loader.lots(&left_out)?;
    let seeds = starts(&loader.world, &asked.starts);
    for _ in 0..ROUNDS {
        match tell(&loader.world, &asked.question, &seeds, &asked.without) {
            Ok(scope) => return Ok((scope, loader.world)),
            Err(Lacks { deeds, windows }) => {
                let deeds: Vec<i32> = deeds.iter().map(|deed| deed.0).collect();
                loader.made_by(&deeds)?;
                for window in windows {
                    loader.window(window)?;
                }
            }
        }
    }
    Err(Error::Broken("a scope that never ends".into()))
}
