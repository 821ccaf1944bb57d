//! A freezing or a heating that is claimed at a release, held against what is on record of the piece and of its meat.

use super::facts::Facts;
use super::trichinae::named;
use crate::error::Result;
use crate::read::LoadedFamily;
use chrono::TimeDelta;
use domain::family::{HeatOnRecord, carrying, heat_on_record, stood_frozen};
use domain::limits::CLOCK_SLACK_MINUTES;
use domain::lot::LotId;
use domain::refusal::Refusal;
use domain::trichinae::{ColdSays, HeatedSays, Proof, Treatment};
use store::family::Extent;
use store::lots::LotRow;

/// Refuses a freezing for longer than the meat stood frozen, and a heat that no step gave it.
///
/// # Errors
/// 422 with what is claimed and what is on record.
pub fn stands(facts: &mut Facts<'_, '_>, proofs: &[Proof], row: &LotRow) -> Result<()> {
    let of_heat_or_cold = |proof: &&Proof| {
        use Treatment::{Frozen, Heated};
        matches!(proof, Proof::Treated(Frozen(_) | Heated(_)))
    };
    let claimed: Vec<&Proof> = proofs.iter().filter(of_heat_or_cold).collect();
    if claimed.is_empty() {
        return Ok(());
    }
    let conn = &mut *facts.tx.conn;
    let lot = LotId(row.id);
    let loaded = LoadedFamily::load(facts.app, conn, &[row.id], Extent::ANCESTORS)?;
    let meat = carrying(&loaded.family, lot).into_iter();
    let meat: Vec<i32> = meat.map(|of| of.lot.id.0).collect();
    // What was done with a lot is loaded of those that are asked for by name.
    let loaded = LoadedFamily::load(facts.app, conn, &meat, Extent::ANCESTORS)?;
    let family = &loaded.family;
    for proof in claimed {
        let refused = match proof {
            Proof::Treated(Treatment::Frozen(claimed)) => {
                let held = claimed.held;
                let on_record = stood_frozen(family, lot, facts.moment.at);
                let is_short = held > on_record + TimeDelta::minutes(CLOCK_SLACK_MINUTES);
                let says = match on_record.is_zero() {
                    true => ColdSays::NeverFrozen { held },
                    false => ColdSays::LongerThanOnRecord { held, on_record },
                };
                is_short.then(|| Refusal::cannot_be("held", says))
            }
            Proof::Treated(Treatment::Heated(claimed)) => {
                let core = claimed.core;
                match heat_on_record(family, lot) {
                    HeatOnRecord::Never => {
                        Some(Refusal::cannot_be("core", HeatedSays::NeverHeated { core }))
                    }
                    HeatOnRecord::UpTo(on_record) if on_record < core => Some(Refusal::cannot_be(
                        "core",
                        HeatedSays::HotterThanOnRecord { core, on_record },
                    )),
                    HeatOnRecord::UpTo(_) | HeatOnRecord::Untold => None,
                }
            }
            _ => None,
        };
        if let Some(refusal) = refused {
            return Err(named(refusal, proof).into());
        }
    }
    Ok(())
}
