//! What a record must hold.

use super::keeping::Record;
use crate::rows::RowId;
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
