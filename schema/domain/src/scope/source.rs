//! What is known of where lots came from, now and until it was corrected, held against what was said.

use crate::code::LotCode;
use crate::lot::LotId;
use chrono::{DateTime, NaiveDate, Utc};

/// What was once said of a received lot.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SourceFact {
    /// The lot.
    pub lot: i32,
    /// Its code.
    pub code: Option<LotCode>,
    /// Is it what is known now?
    pub is_current: bool,
    /// Was the lot voided?
    pub is_voided: bool,
    /// The key of the animal.
    pub animal: Option<i32>,
    /// The animal's id outside.
    pub uid: Vec<u8>,
    /// The farm's code.
    pub farm: Option<String>,
    /// When it was killed.
    pub killed_on: Option<NaiveDate>,
    /// Where it was killed.
    pub abattoir: Option<String>,
    /// Its carcass number.
    pub carcass: Option<String>,
    /// Its tag.
    pub tag: Option<String>,
    /// The supplier.
    pub supplier: Option<String>,
    /// The supplier's lot.
    pub supplier_lot: Option<String>,
    /// Who corrected it, and when.
    pub corrected: Option<(String, DateTime<Utc>)>,
}

/// What was said of a source. What is given must all match.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sought {
    /// The farm's code.
    pub farm: Option<String>,
    /// The day it was killed.
    pub killed_on: Option<NaiveDate>,
    /// Killed on this day or later.
    pub killed_from: Option<NaiveDate>,
    /// Killed before this day.
    pub killed_until: Option<NaiveDate>,
    /// The carcass number, however spelt.
    pub carcass: Option<String>,
    /// The tag, however spelt.
    pub tag: Option<String>,
    /// The supplier's code.
    pub supplier: Option<String>,
    /// The supplier's lot, however spelt.
    pub supplier_lot: Option<String>,
}

/// A lot that matches only by what was known of it until that was corrected.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownOnceAs {
    /// The lot.
    pub lot: LotId,
    /// What was known.
    pub fact: SourceFact,
}

/// Letters and figures alone, in capitals: `0608 17` is `0608-17`.
pub fn plain(text: &str) -> String {
    let of = text.chars().filter(|letter| letter.is_alphanumeric());
    of.flat_map(char::to_uppercase).collect()
}

impl Sought {
    /// Does a fact match all that was said?
    pub fn fits(&self, fact: &SourceFact) -> bool {
        let same = |asked: &Option<String>, known: &Option<String>| {
            let known = known.as_deref().map(plain);
            asked
                .as_deref()
                .is_none_or(|asked| Some(plain(asked)) == known)
        };
        let day = |holds: &dyn Fn(NaiveDate) -> bool| fact.killed_on.is_some_and(holds);
        same(&self.farm, &fact.farm)
            && same(&self.carcass, &fact.carcass)
            && same(&self.tag, &fact.tag)
            && same(&self.supplier, &fact.supplier)
            && same(&self.supplier_lot, &fact.supplier_lot)
            && self.killed_on.is_none_or(|on| day(&|of| of == on))
            && self.killed_from.is_none_or(|from| day(&|of| of >= from))
            && self.killed_until.is_none_or(|until| day(&|of| of < until))
    }
}

/// The lots that match by what is known now, and those that match only by what was known before.
pub fn sought(facts: &[SourceFact], said: &Sought) -> (Vec<LotId>, Vec<KnownOnceAs>) {
    let fits: Vec<&SourceFact> = facts
        .iter()
        .filter(|fact| !fact.is_voided && said.fits(fact))
        .collect();
    let now = fits.iter().filter(|fact| fact.is_current);
    let mut lots: Vec<LotId> = now.map(|fact| LotId(fact.lot)).collect();
    lots.sort_unstable();
    lots.dedup();
    let mut once: Vec<KnownOnceAs> = Vec::new();
    for fact in fits {
        let lot = LotId(fact.lot);
        let is_told = lots.contains(&lot) || once.iter().any(|known| known.lot == lot);
        if !is_told {
            let fact = fact.clone();
            once.push(KnownOnceAs { lot, fact });
        }
    }
    (lots, once)
}
