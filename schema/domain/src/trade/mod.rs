//! What the trade expects, as data: cut-out bands, step yields, the cure room, the words of a guest's question. No law.

use crate::rows::Bound;
use crate::{ask, cure_room, yields};

/// What the trade expects. None of it is law: it warns, and a kitchen puts its own in its place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct TradeRules {
    /// What comes off an animal, and what is left after a cook.
    pub yields: yields::YieldRules,
    /// Curves, targets and ways of salting.
    pub cure_room: cure_room::CureRoomRules,
    /// The words that tell what a guest asks about.
    pub ask: ask::AskRules,
}

impl TradeRules {
    /// Every single number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut bounds = self.yields.bounds_mut();
        bounds.extend(self.cure_room.bounds_mut());
        bounds
    }
}
