//! What came out of the heat and cools: by when it has to be how cold.

use super::{About, DoSays, Hand, Known, Sort, TodaySays, When};
use crate::heat::{CoolingDue, CoreReading};
use crate::lot::LotId;
use crate::moment::on_clock;
use chrono::TimeDelta;
use chrono_tz::Tz;

/// How long before its hour it is told of first of all.
const AHEAD: TimeDelta = TimeDelta::minutes(30);

/// A lot that cools.
#[derive(Debug, Clone)]
pub struct CoolingLot {
    /// The lot.
    pub lot: LotId,
    /// What was read last, if anything was.
    pub last: Option<CoreReading>,
    /// What it has to reach next.
    pub next: CoolingDue,
    /// The kitchen's time zone.
    pub zone: Tz,
}

pub(super) fn hand(known: &Known<'_>, of: &CoolingLot) -> Option<Hand> {
    let lot = &known.family.get(of.lot)?.lot;
    let name = lot.product.named();
    let by = on_clock(of.next.by, of.zone);
    let to = of.next.to;
    let more = match of.last {
        Some(last) => TodaySays::CoolRead {
            core: last.core,
            at: on_clock(last.at, of.zone),
        },
        None => TodaySays::CoolUnread,
    };
    Some(Hand {
        when: match of.next.by - known.now <= AHEAD {
            true => When::Now,
            false => When::Today,
        },
        sort: Sort::Cooling,
        about: About::Lot(lot.code.clone(), Vec::new()),
        says: TodaySays::Cools {
            name,
            to: to.into(),
            by,
        }
        .into(),
        more: vec![more.into()],
        act: DoSays::ReadCore.into(),
    })
}
