//! Batches and origin, as the file has them.

use super::each;
use crate::Bad;
use crate::entry::{BoundEntry, TextEntry, known};
use domain::duties::{beef, origin_words};
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
    /// `cutting`, `further-cutting`, `cut-meat` (pieces as a customer buys them), `trimmings`, `mince`.
    stage: String,
    /// What is the same for all: `born`, `reared`, `slaughtered`, `slaughterhouse`, `cutting-plant`.
    same: Vec<String>,
    /// What there may be several of, and how many.
    #[serde(default)]
    several: Vec<SeveralEntry>,
}

/// What there may be several of in one batch.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SeveralEntry {
    /// `slaughterhouse`, `cutting-plant`.
    what: String,
    /// How many.
    number: BoundEntry,
}

impl BeefEntry {
    pub fn groups(self, rows: &Rows) -> Result<beef::Groups, Bad> {
        let share = |entry: ShareEntry| {
            Ok(beef::SharedFact {
                row: known(rows, &entry.row)?,
                stage: word!(beef::Stage, &entry.stage)?,
                same: each(entry.same, |it| word!(beef::Shared, &it))?,
                several: each(entry.several, |it| {
                    Ok((word!(beef::Shared, &it.what)?, it.number.bound(rows)?))
                })?,
            })
        };
        Ok(beef::Groups {
            one_day: known(rows, &self.one_day)?,
            kill_days: known(rows, &self.kill_days)?,
            share: each(self.share, share)?,
        })
    }
}

/// How the origin of beef is worded, with `{}` for what is filled in. The English of a field that begins
/// with `mandated` is the law's own; its French was not read and is our translation.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OriginEntry {
    /// Where the beef label stands.
    beef_row: String,
    /// `Born in: {}`.
    beef_born: TextEntry,
    /// `Reared in: {}`.
    beef_reared: TextEntry,
    /// Mandated: `Slaughtered in {} {}`, the country and the approval number.
    mandated_beef_slaughtered: TextEntry,
    /// Mandated: `Cutting in: {} {}`.
    mandated_beef_cutting: TextEntry,
    /// Mandated: `Animals in the group slaughtered in {} {}`, with several approval numbers.
    mandated_beef_group: TextEntry,
    /// `Reference number: {}`.
    beef_reference: TextEntry,
    /// The row of minced beef.
    mince_row: String,
    /// Mandated: `Prepared {}`, the country.
    mandated_mince_prepared: TextEntry,
    /// Mandated: `Origin: {}`, countries that it was not prepared in.
    mandated_mince_origin: TextEntry,
}

impl OriginEntry {
    pub fn wording(self, rows: &Rows) -> Result<origin_words::OriginWording, Bad> {
        Ok(origin_words::OriginWording {
            beef_row: known(rows, &self.beef_row)?,
            beef_born: self.beef_born.into(),
            beef_reared: self.beef_reared.into(),
            beef_slaughtered: self.mandated_beef_slaughtered.into(),
            beef_cutting: self.mandated_beef_cutting.into(),
            beef_group: self.mandated_beef_group.into(),
            beef_reference: self.beef_reference.into(),
            mince_row: known(rows, &self.mince_row)?,
            mince_prepared: self.mandated_mince_prepared.into(),
            mince_origin: self.mandated_mince_origin.into(),
        })
    }
}
