//! How `trade.json` is written: what the trade expects of animals, pots and the cure room, and the words of what
//! guests ask about.

mod ask;
mod cure_room;
mod knife;
mod yields;

use crate::Bad;
use crate::file::Subject;
use ask::AskEntry;
use cure_room::CureRoomEntry;
use domain::rows::Rows;
use domain::trade;
use schemars::JsonSchema;
use serde::Deserialize;
use yields::YieldsEntry;

/// What the trade expects. None of it is law.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TradeEntry {
    /// What comes off an animal, and what is left after a cook.
    yields: YieldsEntry,
    /// Curves, targets and ways of salting.
    cure_room: CureRoomEntry,
    /// The words that tell what a guest asks about.
    ask: AskEntry,
}

impl Subject for TradeEntry {
    type Rules = trade::TradeRules;

    fn rules(self, rows: &Rows) -> Result<trade::TradeRules, Bad> {
        Ok(trade::TradeRules {
            yields: self.yields.rules(rows)?,
            cure_room: self.cure_room.rules(rows)?,
            ask: self.ask.rules(rows)?,
        })
    }
}

/// A key that stands twice would hide one of the two.
fn once<'a>(what: &str, keys: impl Iterator<Item = &'a String>) -> Result<(), Bad> {
    let mut keys: Vec<&String> = keys.collect();
    keys.sort();
    match keys.windows(2).find(|pair| pair[0] == pair[1]) {
        Some(pair) => Err(Bad::new(format!(
            "{what}: {:?} stands in it twice",
            pair[0]
        ))),
        None => Ok(()),
    }
}
