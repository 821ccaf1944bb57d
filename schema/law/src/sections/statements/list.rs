//! How the ingredient list of a place is written.

use super::*;

/// The ingredient list.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct ListEntry {
    /// The row that wants the order.
    pub(super) order: String,
    /// The title.
    pub(super) title: WordingEntry,
    /// Is the title bold?
    #[serde(default)]
    pub(super) bold_title: bool,
    /// The row of compounds.
    pub(super) compounds: String,
    /// May compounds be dissolved into the list?
    #[serde(default)]
    pub(super) may_merge: bool,
    /// Words before small things at the end.
    pub(super) tail: Option<TailEntry>,
    /// What may stand last in any order.
    pub(super) last: Option<LastEntry>,
    /// The row that lets casings be left out.
    pub(super) no_casings: Option<String>,
    /// The row that lets water be left out that is taken out again.
    pub(super) no_removed_water: Option<String>,
    /// The row that wants a cure's parts by name.
    pub(super) cure_parts: Option<String>,
    /// The share of what the name speaks of, where the place wants it.
    pub(super) shares: Option<SharesEntry>,
    /// What is not a spice.
    pub(super) not_spice: Option<NotSpiceEntry>,
    /// Additives by key.
    #[serde(default)]
    pub(super) additives: BTreeMap<String, AdditiveEntry>,
}

/// The share of an ingredient.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct SharesEntry {
    /// The row that wants the share of what the name speaks of.
    pub(super) row: String,
    /// The row that wants the share of meat whatever the name says.
    pub(super) meat: Option<String>,
    /// Where more went in than the food weighs: `{} g per 100 g`.
    pub(super) per_hundred: WordingEntry,
}

/// Words before small things at the end.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct TailEntry {
    /// What the words may name, in percent.
    pub(super) percents: Vec<Number>,
    /// The highest of them.
    pub(super) limit: BoundEntry,
    /// The words, `{}` for the number.
    pub(super) words: WordingEntry,
}

/// What may stand last.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct LastEntry {
    /// The row.
    pub(super) row: String,
    /// What may: `spice`, `flavouring`, `additive`.
    pub(super) natures: Vec<String>,
    /// Spices and herbs together, in percent of the whole.
    pub(super) spices: BoundEntry,
}

/// What is not a spice.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct NotSpiceEntry {
    /// The row.
    pub(super) row: String,
    /// The words.
    pub(super) words: Vec<String>,
}

/// An additive.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct AdditiveEntry {
    /// The row.
    pub(super) row: String,
    /// Its class.
    #[serde(default)]
    pub(super) class: Texts,
    /// Its name.
    pub(super) name: Texts,
    /// Its number.
    pub(super) number: Option<String>,
}

impl ListEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<law::ListRules, Bad> {
        let tail = maybe(self.tail, |tail| {
            let at_most = tail.limit.bound(rows)?;
            if at_most.sense != Sense::AtMost {
                return Err(Bad::new(format!(
                    "{}: the tail has a highest share",
                    at_most.row
                )));
            }
            Ok(law::TailRules {
                percents: tail.percents.iter().map(|percent| percent.0).collect(),
                at_most,
                words: tail.words.wording(rows)?,
            })
        })?;
        let last = maybe(self.last, |last| {
            Ok(law::LastRules {
                row: known(rows, &last.row)?,
                natures: each(last.natures, |text| word(&text, Nature::parse))?,
                spices_at_most: last.spices.bound(rows)?,
            })
        })?;
        let additives = self.additives.into_iter().map(|(key, entry)| {
            let name = law::AdditiveName {
                row: known(rows, &entry.row)?,
                class: entry.class,
                name: entry.name,
                number: entry.number,
            };
            Ok((key, name))
        });
        Ok(law::ListRules {
            order: known(rows, &self.order)?,
            title: self.title.wording(rows)?,
            bold_title: self.bold_title,
            compounds: known(rows, &self.compounds)?,
            may_merge: self.may_merge,
            tail,
            last,
            no_casings: maybe_known(rows, self.no_casings)?,
            no_removed_water: maybe_known(rows, self.no_removed_water)?,
            cure_parts: maybe_known(rows, self.cure_parts)?,
            shares: maybe(self.shares, |entry| {
                Ok(law::ShareRules {
                    row: known(rows, &entry.row)?,
                    meat: maybe_known(rows, entry.meat)?,
                    per_hundred: entry.per_hundred.wording(rows)?,
                })
            })?,
            not_spice: maybe(self.not_spice, |entry| {
                Ok((known(rows, &entry.row)?, entry.words))
            })?,
            additives: additives.collect::<Result<_, Bad>>()?,
        })
    }
}
