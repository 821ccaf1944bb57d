//! What a record must hold.

use super::keeping::Record;
use super::says::RecordSays;
use crate::rows::{Finding, RowId, Rows};
use crate::says::Texts;

/// Something that a record must hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// Where it stands.
    pub row: RowId,
    /// Of which records.
    pub records: Vec<Record>,
    /// Its name.
    pub field: String,
    /// What it is.
    pub says: Texts,
}

/// What the record must hold here.
pub fn fields(rules: &super::DutyRules, record: Record) -> Vec<&Field> {
    let of_it = |field: &&Field| field.records.contains(&record);
    rules.fields.iter().filter(of_it).collect()
}

/// What is missing from a record that holds these fields.
pub fn check_fields(
    rules: &super::DutyRules,
    rows: &Rows,
    record: Record,
    held: &[&str],
) -> Vec<Finding> {
    fields(rules, record)
        .into_iter()
        .filter(|field| !held.contains(&field.field.as_str()))
        .map(|field| {
            let says = RecordSays::Lacks {
                record,
                field: field.says.clone(),
            };
            Finding::against(rows, &field.row, says)
        })
        .collect()
}
