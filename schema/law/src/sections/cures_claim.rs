//! The claim that a product is not cured with nitrite, as it is written in the file of cures.

use super::cures::word;
use crate::Bad;
use crate::entry::{BoundEntry, Number, TextEntry, known};
use domain::cure::{Beside, ClaimRules, ClaimWords, Exception};
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;

/// When a product may say that it is not cured with nitrite.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClaimEntry {
    /// The words that must be printed.
    #[serde(default)]
    words: Vec<ClaimWordsEntry>,
    /// The brine concentration from which none of them is due, in per cent.
    no_wording: Option<BoundEntry>,
    /// The row by which it must be like the cured product.
    resemble: Option<String>,
    /// The row by which any source of nitrite, a natural one too, stops the claim.
    any_source_blocks: Option<String>,
    /// Where the words print another temperature than the kitchen keeps.
    colder: Option<ColderEntry>,
}

/// A wording.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ClaimWordsEntry {
    /// Its row.
    row: String,
    /// The words that the law fixes.
    mandated: String,
    /// `before-name` or `next-to-name`.
    beside: String,
    /// The height of its letters over that of the name's.
    size: Number,
    /// Must it be in the name's own style of letter?
    #[serde(default)]
    same_style: bool,
    /// One of these frees from it.
    #[serde(default)]
    unless: Vec<UnlessEntry>,
    /// What follows it where nitrite comes with a natural ingredient; `[source]` for its name.
    natural: Option<NoteEntry>,
}

/// What frees from a wording.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct UnlessEntry {
    /// `fo`, `ph`, `aw`.
    what: String,
    /// The number.
    value: BoundEntry,
}

/// Words with their row.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NoteEntry {
    /// The row.
    row: String,
    /// The words.
    says: String,
}

/// A note of our own with its row.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ColderEntry {
    /// The row.
    row: String,
    /// The note.
    says: TextEntry,
}

impl NoteEntry {
    fn note(self, rows: &Rows) -> Result<(domain::rows::RowId, String), Bad> {
        Ok((known(rows, &self.row)?, self.says))
    }
}

impl ClaimEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<ClaimRules, Bad> {
        let row = |id: Option<String>| id.map(|id| known(rows, &id)).transpose();
        let words = self.words.into_iter().map(|words| {
            let unless = words.unless.iter().map(|unless| {
                Ok((
                    word(&unless.what, Exception::parse(&unless.what))?,
                    unless.value.bound(rows)?,
                ))
            });
            Ok(ClaimWords {
                row: known(rows, &words.row)?,
                beside: word(&words.beside, Beside::parse(&words.beside))?,
                size: words.size.0,
                same_style: words.same_style,
                unless: unless.collect::<Result<_, Bad>>()?,
                natural: words.natural.map(|note| note.note(rows)).transpose()?,
                mandated: words.mandated,
            })
        });
        Ok(ClaimRules {
            words: words.collect::<Result<_, Bad>>()?,
            no_wording: self.no_wording.map(|bound| bound.bound(rows)).transpose()?,
            resemble: row(self.resemble)?,
            any_source_blocks: row(self.any_source_blocks)?,
            colder: self
                .colder
                .map(|note| Ok::<_, Bad>((known(rows, &note.row)?, note.says.into())))
                .transpose()?,
        })
    }
}
