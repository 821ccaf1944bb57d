//! Batches, origin and marks, as the file has them.

use super::each;
use crate::Bad;
use crate::entry::{BoundEntry, Number, known};
use domain::duties::{beef, lot_mark, origin_words, oval, reared};
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;

/// What beef may share a batch.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BeefEntry {
    /// The row by which a batch is never over one day's production.
    one_day: String,
    /// The row by which kill days may differ within one slaughterhouse.
    kill_days: String,
    /// What each stage must share.
    share: Vec<ShareEntry>,
}

/// What a stage must share.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ShareEntry {
    /// Where it stands.
    row: String,
    /// `cutting`, `further-cutting`, `mince`.
    stage: String,
    /// What is the same for all: `born`, `reared`, `slaughtered`, `slaughterhouse`, `cutting-plant`.
    same: Vec<String>,
}

impl BeefEntry {
    pub fn groups(self, rows: &Rows) -> Result<beef::Groups, Bad> {
        let share = |entry: ShareEntry| {
            Ok(beef::SharedFact {
                row: known(rows, &entry.row)?,
                stage: word!(beef::Stage, &entry.stage)?,
                same: each(entry.same, |it| word!(beef::Shared, &it))?,
            })
        };
        Ok(beef::Groups {
            one_day: known(rows, &self.one_day)?,
            kill_days: known(rows, &self.kill_days)?,
            share: each(self.share, share)?,
        })
    }
}

/// The mark of a lot on a pack.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LotMarkEntry {
    /// Where the letter stands.
    row: String,
    /// Mandated: before the lot.
    mandated_before: String,
    /// Where the exceptions stand.
    not_needed_row: String,
    /// Packs whose largest side is below so many square centimetres need none.
    small_pack: BoundEntry,
}

impl LotMarkEntry {
    pub fn wording(self, rows: &Rows) -> Result<lot_mark::LotMarkWording, Bad> {
        Ok(lot_mark::LotMarkWording {
            row: known(rows, &self.row)?,
            before: self.mandated_before,
            not_needed_row: known(rows, &self.not_needed_row)?,
            small_pack: self.small_pack.bound(rows)?,
        })
    }
}

/// Where a pig counts as reared.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RearedEntry {
    /// Where it stands.
    row: String,
    /// Killed older than so many months …
    months: u32,
    /// … the last so many months count.
    last_months: u32,
    /// Killed younger, but at so many kilograms or more …
    kilograms: Number,
    /// … from so many kilograms on counts.
    from_kilograms: Number,
}

impl RearedEntry {
    pub fn ages(self, rows: &Rows) -> Result<reared::Ages, Bad> {
        Ok(reared::Ages {
            row: known(rows, &self.row)?,
            months: self.months,
            last_months: self.last_months,
            kilograms: self.kilograms.0,
            from_kilograms: self.from_kilograms.0,
        })
    }
}

/// How origin is worded, with `{}` for what is filled in.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OriginEntry {
    /// Where "reared in" and "slaughtered in" stand.
    row: String,
    /// Mandated: `Reared in: {}`.
    mandated_reared: String,
    /// Mandated: `Slaughtered in: {}`.
    mandated_slaughtered: String,
    /// Where the single word stands.
    single_row: String,
    /// `Origin: {}`.
    single: String,
    /// Where the words for several countries stand.
    several_row: String,
    /// Several countries inside the Union.
    several_inside: String,
    /// Several countries outside.
    several_outside: String,
    /// Where the beef label stands.
    beef_row: String,
    /// `Born in: {}`.
    beef_born: String,
    /// `Reared in: {}`.
    beef_reared: String,
    /// Mandated: `Slaughtered in: {} {}`, the country and the approval number.
    mandated_beef_slaughtered: String,
    /// Mandated: `Cutting in: {} {}`.
    mandated_beef_cutting: String,
    /// `Reference number: {}`.
    beef_reference: String,
}

impl OriginEntry {
    pub fn wording(self, rows: &Rows) -> Result<origin_words::OriginWording, Bad> {
        Ok(origin_words::OriginWording {
            row: known(rows, &self.row)?,
            reared: self.mandated_reared,
            slaughtered: self.mandated_slaughtered,
            single_row: known(rows, &self.single_row)?,
            single: self.single,
            several_row: known(rows, &self.several_row)?,
            several_inside: self.several_inside,
            several_outside: self.several_outside,
            beef_row: known(rows, &self.beef_row)?,
            beef_born: self.beef_born,
            beef_reared: self.beef_reared,
            beef_slaughtered: self.mandated_beef_slaughtered,
            beef_cutting: self.mandated_beef_cutting,
            beef_reference: self.beef_reference,
        })
    }
}

/// The oval identification mark.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OvalEntry {
    /// The row by which it holds the country and the approval number.
    row: String,
    /// The row by which it is not for retail without a number.
    retail_row: String,
    /// The row by which what is worked further carries the number of who did it.
    own_number_row: String,
    /// The letters that it may carry.
    letters: Vec<LettersEntry>,
}

/// Letters on the mark.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LettersEntry {
    /// Where they stand.
    row: String,
    /// The letters.
    mandated: String,
    /// The last day on which they are allowed, `2028-12-31`.
    until: Option<String>,
}

impl OvalEntry {
    pub fn oval(self, rows: &Rows) -> Result<oval::Oval, Bad> {
        let letters = |entry: LettersEntry| {
            Ok(oval::Letters {
                row: known(rows, &entry.row)?,
                letters: entry.mandated,
                until: entry
                    .until
                    .as_deref()
                    .map(super::records::day)
                    .transpose()?,
            })
        };
        Ok(oval::Oval {
            row: known(rows, &self.row)?,
            retail_row: known(rows, &self.retail_row)?,
            own_number_row: known(rows, &self.own_number_row)?,
            letters: each(self.letters, letters)?,
        })
    }
}
