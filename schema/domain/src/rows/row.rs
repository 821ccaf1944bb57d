//! One row of the facts: what it says, where it stands, and whether the text itself was read.

use crate::messages;
use crate::says::{Arg, Says, Texts};
use crate::words::Mark;
use chrono::NaiveDate;
use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;

/// A row's name: the file of the fact tables and the row in it, as `us-N14`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RowId(Arc<str>);

impl RowId {
    /// A row's name.
    pub fn new(text: impl AsRef<str>) -> RowId {
        RowId(text.as_ref().into())
    }

    /// As it is written.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for RowId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

messages! {
    /// Where a rule comes from.
    SourceSays in "source" {
        Row "row" { row: String },
        SecondHand "second-hand" { row: String },
        Memory "memory" { row: String },
        CommonPractice "common-practice" { row: String },
        House "house" { row: String },
        OnlyIn "only-in" { place: Texts, source: Says },
        ProductList "product-list",
        Practice "practice",
    }
}

/// A row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// Its name.
    pub id: RowId,
    /// What it says, in our own words.
    pub says: Texts,
    /// Other rows of the facts that say the same, confirm it or complete it.
    pub also: Vec<RowId>,
    /// The law's own number, where it has one: `9 CFR 424.21(c)`.
    pub cite: Option<String>,
    /// Keys of the sources file.
    pub sources: Vec<String>,
    /// How far it is confirmed.
    pub mark: Mark,
    /// The part of the country whose rule it is, where it is not that of all of it: another part may ask for something else.
    pub only_in: Option<Texts>,
    /// The first day on which it holds, if it is new.
    pub from: Option<NaiveDate>,
    /// The last day on which it holds, if it ends.
    pub until: Option<NaiveDate>,
}

impl Row {
    /// May it stop somebody? What nobody has read may only warn.
    pub fn is_confirmed(&self) -> bool {
        matches!(self.mark, Mark::Read | Mark::Derived | Mark::Kitchen)
    }

    /// Does it hold on a day?
    pub fn holds_on(&self, day: NaiveDate) -> bool {
        self.from.is_none_or(|from| from <= day) && self.until.is_none_or(|until| day <= until)
    }

    /// Where it comes from, for a screen: `us-N2, 9 CFR 424.21(c)`, with a word where it is not read, and the part of the
    /// country before it whose rule it is.
    pub fn source(&self) -> Says {
        let source = self.own_source();
        match self.only_in.clone() {
            Some(place) => SourceSays::OnlyIn { place, source }.into(),
            None => source,
        }
    }

    fn own_source(&self) -> Says {
        let cite = self.cite.as_deref().map(|cite| format!(", {cite}"));
        let row = format!("{}{}", self.id, cite.unwrap_or_default());
        match self.mark {
            Mark::Read | Mark::Derived | Mark::Kitchen => SourceSays::Row { row },
            Mark::SecondHand => SourceSays::SecondHand { row },
            Mark::Memory => SourceSays::Memory { row },
            Mark::CommonPractice => SourceSays::CommonPractice { row },
            Mark::House => SourceSays::House { row },
        }
        .into()
    }
}

/// Rows by name.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Rows(BTreeMap<RowId, Row>);

impl Rows {
    /// Adds a row; the one that was there under that name comes back.
    pub fn insert(&mut self, row: Row) -> Option<Row> {
        self.0.insert(row.id.clone(), row)
    }

    /// The row of that name.
    pub fn get(&self, id: &RowId) -> Option<&Row> {
        self.0.get(id)
    }

    /// Notes that a named person confirmed a row for the kitchen: from now on it may stop somebody. What
    /// was read stays what it was.
    pub fn confirm(&mut self, id: &RowId) {
        if let Some(row) = self.0.get_mut(id).filter(|row| !row.is_confirmed()) {
            row.mark = Mark::Kitchen;
        }
    }

    /// All of them, by name.
    pub fn iter(&self) -> impl Iterator<Item = &Row> {
        self.0.values()
    }

    /// Is the row of that name confirmed? A row that is not there is not.
    pub fn is_confirmed(&self, id: &RowId) -> bool {
        self.get(id).is_some_and(Row::is_confirmed)
    }

    /// Where a row comes from, for a screen; its bare name where it is not there.
    pub fn source(&self, id: &RowId) -> Says {
        let unknown = || {
            let row = id.to_string();
            SourceSays::Row { row }.into()
        };
        self.get(id).map_or_else(unknown, Row::source)
    }

    /// Where several rows come from.
    pub fn sources(&self, ids: &[RowId]) -> Arg {
        Arg::Series(ids.iter().map(|id| self.source(id)).collect())
    }
}
