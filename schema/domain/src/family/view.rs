//! A lot as it is told: to programs, on its page, on its labels.

use super::{Cured, Did, Family, Lists, Relative, Stated, cured, date_links, stated};
use crate::dates::Because;
use crate::law::Law;
use crate::lot::LotId;
use chrono::NaiveDate;

/// A lot as it is told.
#[derive(Debug, Clone)]
pub struct LotView<'a> {
    /// What the record tells of it.
    pub of: &'a Relative,
    /// The earliest date on hand.
    pub use_by: Option<NaiveDate>,
    /// Why that date.
    pub because: Vec<Because>,
    /// What its label says.
    pub stated: Stated,
    /// How it was cured, if it was.
    pub cured: Option<Cured>,
    /// What was done with it after it was made, deed by deed.
    pub steps: Vec<Did>,
}

/// How a lot is told under the law of a place; its statement in some languages, the kitchen's own
/// first. The family has to be loaded with its ancestors, its reasons and the lot's packs.
pub fn view<'a>(
    family: &'a Family,
    lot: LotId,
    lists: &Lists,
    law: &Law,
    languages: &[&str],
) -> Option<LotView<'a>> {
    let of = family.get(lot)?;
    let left = of
        .lot
        .packs
        .iter()
        .filter(|pack| !pack.now.left.is_none_left());
    Some(LotView {
        of,
        use_by: left.filter_map(|pack| pack.now.use_by).min(),
        because: date_links(of, law.dates.freezing.as_ref()),
        stated: stated(family, of, lists, law, languages),
        cured: cured(family, lot),
        steps: of.steps(),
    })
}
