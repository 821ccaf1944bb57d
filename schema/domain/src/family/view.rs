//! A lot as it is shown: to programs, on its page, on its labels.

use super::{
    Cured, Did, Family, Line, Lists, Relative, Stated, condition_links, correction_links, cured,
    date_links, lines, stated,
};
use crate::dates::Because;
use crate::gate;
use crate::law::Law;
use crate::lot::{Lot, LotId, brief};
use crate::moment::day_of;
use crate::rows::Finding;
use crate::stop::{self, Stop};
use crate::words::StopKind;
use chrono::{DateTime, NaiveDate, Utc};
use chrono_tz::Tz;

/// A lot as it is shown.
#[derive(Debug, Clone)]
pub struct LotView<'a> {
    /// What the record holds about it.
    pub of: &'a Relative,
    /// The earliest date on hand.
    pub use_by: Option<NaiveDate>,
    /// Why that date.
    pub because: Vec<Because>,
    /// Why it is raw, treated or ready.
    pub condition_because: Vec<Because>,
    /// What was corrected of it, or of what went into it, and by whom.
    pub corrected: Vec<Because>,
    /// What its label says.
    pub stated: Stated,
    /// What stands against its label for a customer, if it is for one.
    pub against_label: Vec<Finding>,
    /// How it was cured, if it was.
    pub cured: Option<Cured>,
    /// What stands in its way, or in that of a pack of it on hand, the gravest first.
    pub stops: Vec<Stop>,
    /// What was done with it after it was made, deed by deed.
    pub steps: Vec<Did>,
}

impl LotView<'_> {
    /// Its history: how it was made, and what was done with it since.
    pub fn lines(&self) -> Vec<Line<'_>> {
        lines(self.of, &self.steps)
    }
}

/// How a lot is shown under the law of a place; its statement in some languages, the kitchen's own
/// first. The family has to be loaded with its ancestors, its reasons and the lot's packs.
pub fn view<'a>(
    family: &'a Family,
    lot: LotId,
    lists: &Lists,
    law: &Law,
    languages: &[&str],
    now: DateTime<Utc>,
    zone: Tz,
) -> Option<LotView<'a>> {
    let of = family.get(lot)?;
    let sold = of.lot.product.sale.offered && of.lot.knows_allergens();
    Some(LotView {
        of,
        stops: stops(&of.lot, now, day_of(now, zone)),
        use_by: brief::earliest(&of.lot.packs),
        because: date_links(of, law.dates.freezing.as_ref()),
        condition_because: condition_links(of),
        corrected: correction_links(of),
        // The list of the product proves nothing of a pot that nobody knows the history of.
        stated: match of.lot.knows_allergens() {
            true => stated(family, of, lists, law, languages),
            false => Stated::default(),
        },
        against_label: match sold {
            true => gate::of_lot(family, of, lists, law),
            false => Vec::new(),
        },
        cured: cured(family, lot),
        steps: of.steps(),
    })
}

/// The stops on a lot and on its packs on hand, each once.
fn stops(lot: &Lot, now: DateTime<Utc>, today: NaiveDate) -> Vec<Stop> {
    let mut stops = stop::on(lot, None, now, today);
    for pack in lot.on_hand() {
        let of_pack = stop::on(lot, Some(pack), now, today);
        // Packs that are past their day tell the same, and those with wrong labels nearly so: the first
        // of them is enough.
        let same = |one: &Stop, other: &Stop| {
            let of_packs = matches!(one.kind, StopKind::PastDay | StopKind::WrongLabel);
            one == other || of_packs && one.kind == other.kind
        };
        let new = |stop: &Stop| !stops.iter().any(|other| same(stop, other));
        let of_pack: Vec<Stop> = of_pack.into_iter().filter(new).collect();
        stops.extend(of_pack);
    }
    stops.sort_by_key(|stop| stop.kind);
    stops
}
