//! Names with a standard, approvals, batches and records, as their file has them.

/// A word of a closed set, by the set's own lists.
macro_rules! word {
    ($set:ty, $text:expr) => {
        $crate::sections::duties::word_of($text, <$set>::ALL, <$set>::SPELT)
    };
}

mod batches;
mod identity;
mod meat;
mod names;
mod records;

use crate::Bad;
use crate::entry::{TextEntry, known};
use crate::file::Subject;
use domain::duties::{approvals, banned, sulphites, tenderised};
use domain::heat::Food;
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;

/// What a place asks of a kitchen besides dates and cures. What it has no rule for is left out.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DutiesEntry {
    /// Words in a name, and what they may stand for.
    #[serde(default)]
    names: names::NamesEntry,
    /// Cured pork that has a standard.
    cured_pork: Option<meat::CuredPorkEntry>,
    /// Foods whose name stands for a standard of what is in them.
    #[serde(default)]
    identities: Vec<identity::IdentityEntry>,
    /// Meat protein in solid cuts with water or additives.
    meat_protein: Option<meat::MeatProteinEntry>,
    /// The words due on beef that was tenderised by machine.
    tenderised: Option<TenderisedEntry>,
    /// What may not be in food, or not in mince.
    #[serde(default)]
    banned: Vec<BannedEntry>,
    /// Which raw meat may have sulphites.
    sulphites: Option<SulphitesEntry>,
    /// Work that needs a paper first.
    #[serde(default)]
    approvals: Vec<NeedEntry>,
    /// What beef may share a batch.
    beef: Option<batches::BeefEntry>,
    /// What mince may be.
    mince: Option<meat::MinceEntry>,
    /// How origin is worded.
    origin: Option<batches::OriginEntry>,
    /// How long each record is kept.
    #[serde(default)]
    keeping: Vec<records::KeepingEntry>,
    /// What each record holds.
    #[serde(default)]
    fields: Vec<records::FieldEntry>,
    /// Which record an occasion asks for.
    #[serde(default)]
    step_records: Vec<records::AsksEntry>,
    /// The traceability rule for listed foods.
    fsma: Option<records::FsmaEntry>,
    /// Until when something is due.
    #[serde(default)]
    deadlines: Vec<records::DeadlineEntry>,
    /// The most that is still a retail sale.
    #[serde(default)]
    sale: Vec<meat::SaleEntry>,
}

/// Mandated words on beef that was tenderised by machine; one entry a language.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct TenderisedEntry {
    /// Where they stand.
    row: String,
    /// Mandated: beside the name.
    #[serde(default)]
    mandated_name: Vec<String>,
    /// Mandated: how it is cooked.
    #[serde(default)]
    mandated_cook: Vec<String>,
    /// Mandated: how a steak is turned.
    #[serde(default)]
    mandated_turn: Vec<String>,
    /// Mandated: words of which the name has one.
    #[serde(default)]
    mandated_one_of: Vec<String>,
    /// The class of food whose table of heat its label tells it is cooked by: `ground`.
    cook_by: Option<String>,
}

/// A part of the animal that is banned.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct BannedEntry {
    /// Where it stands.
    row: String,
    /// From what: `food` or `mince`.
    from: String,
    /// The law's word for it.
    part: String,
    /// The words that call it up, in lower case.
    words: Vec<String>,
    /// Phrases with which it is allowed after all.
    #[serde(default)]
    unless: Vec<String>,
}

/// Which raw meat may have sulphites.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SulphitesEntry {
    /// Where it stands.
    row: String,
    /// The names that may, in lower case.
    names: Vec<String>,
}

/// Work that needs a paper first.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NeedEntry {
    /// Where it stands.
    row: String,
    /// The work: `cure`, `smoke-to-keep`, `reduced-oxygen` …
    work: String,
    /// What it needs: `a variance from the health authority`.
    needs: TextEntry,
}

/// A word of a closed set.
fn word_of<T: Copy>(text: &str, all: &[T], spelt: &[&str]) -> Result<T, Bad> {
    let at = spelt.iter().position(|&spelt| spelt == text);
    at.map(|at| all[at])
        .ok_or_else(|| Bad::new(format!("{text:?} is not one of {}", spelt.join(", "))))
}

/// Each of them, read.
fn each<Entry, Rule>(
    entries: Vec<Entry>,
    read: impl Fn(Entry) -> Result<Rule, Bad>,
) -> Result<Vec<Rule>, Bad> {
    entries.into_iter().map(read).collect()
}

impl Subject for DutiesEntry {
    type Rules = domain::duties::DutyRules;

    fn rules(self, rows: &Rows) -> Result<Self::Rules, Bad> {
        let row = |id: &str| known(rows, id);
        let tenderised = |entry: TenderisedEntry| {
            Ok::<_, Bad>(tenderised::TenderisedWording {
                row: row(&entry.row)?,
                name: entry.mandated_name,
                cook: entry.mandated_cook,
                turn: entry.mandated_turn,
                one_of: entry.mandated_one_of,
                cook_by: { entry.cook_by }
                    .map(|food| word!(Food, &food))
                    .transpose()?,
            })
        };
        let banned = |entry: BannedEntry| {
            Ok(banned::Banned {
                row: row(&entry.row)?,
                from: word!(banned::BannedFrom, &entry.from)?,
                part: entry.part,
                words: entry.words,
                unless: entry.unless,
            })
        };
        let sulphites = |entry: SulphitesEntry| {
            Ok::<_, Bad>(sulphites::SulphitesInMeat {
                row: row(&entry.row)?,
                names: entry.names,
            })
        };
        let need = |entry: NeedEntry| {
            Ok(approvals::ApprovalNeed {
                row: row(&entry.row)?,
                work: word!(approvals::Work, &entry.work)?,
                needs: entry.needs.into(),
            })
        };
        Ok(domain::duties::DutyRules {
            names: self.names.names(rows)?,
            cured_pork: self.cured_pork.map(|it| it.standards(rows)).transpose()?,
            identities: each(self.identities, |it| it.identity(rows))?,
            meat_protein: self.meat_protein.map(|it| it.least(rows)).transpose()?,
            tenderised: self.tenderised.map(tenderised).transpose()?,
            banned: each(self.banned, banned)?,
            sulphites: self.sulphites.map(sulphites).transpose()?,
            approvals: each(self.approvals, need)?,
            beef: self.beef.map(|it| it.groups(rows)).transpose()?,
            mince: self.mince.map(|it| it.limits(rows)).transpose()?,
            origin: self.origin.map(|it| it.wording(rows)).transpose()?,
            keeping: each(self.keeping, |it| it.keeping(rows))?,
            fields: each(self.fields, |it| it.field(rows))?,
            step_records: each(self.step_records, |it| it.asks(rows))?,
            fsma: self.fsma.map(|it| it.reach(rows)).transpose()?,
            deadlines: each(self.deadlines, |it| it.deadline(rows))?,
            sale: each(self.sale, |it| it.most(rows))?,
        })
    }
}
