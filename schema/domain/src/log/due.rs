//! Which logs are due by the rules of a place, on which occasion, and how long each is kept.

use super::kind::{Column, LogKind};
use super::wanted::fields_in;
use crate::duties::DutyRules;
use crate::duties::keeping::{Keeping, Record};
use crate::duties::step_records::Occasion;
use crate::rows::RowId;

/// That a log is due.
#[derive(Debug, Clone, PartialEq)]
pub struct Due<'a> {
    /// The record that the rules know it by.
    pub record: Record,
    /// The occasion that asks for it.
    pub on: Occasion,
    /// The row that does.
    pub row: &'a RowId,
    /// How long it is kept.
    pub kept: Vec<&'a Keeping>,
    /// The columns that hold its fields, each with the rows that want them.
    pub columns: Vec<(Column, &'a RowId)>,
}

/// The logs in which a record stands.
const fn logs_of(record: Record) -> &'static [LogKind] {
    use LogKind::*;
    match record {
        Record::GroundBeefLog => &[Grinding, CleanDowns],
        Record::OneUpOneDown => &[Departures],
        Record::ReducedOxygenLog => &[Cooking, Cooling, Temperatures],
        Record::TraceToBusiness | Record::TraceRetail => &[Receiving, Batches, Departures],
        Record::TrichinaeTreatment => &[Trichinae, Corrections],
        Record::OntarioMeat => &[Batches, Curing],
        Record::OntarioPurchase => &[Receiving],
        Record::AnimalProduct => &[Receiving, Departures],
        _ => &[],
    }
}

/// What makes a log due in a place; nothing where no rule asks for it.
pub fn due(rules: &DutyRules, kind: LogKind) -> Vec<Due<'_>> {
    let asked = rules.step_records.iter();
    let asked = asked.filter(|asks| logs_of(asks.record).contains(&kind));
    let of = |asks: &'_ crate::duties::step_records::Asks| asks.record;
    asked
        .map(|asks| {
            let record = of(asks);
            let mut columns: Vec<(Column, &RowId)> = Vec::new();
            for (field, stands) in fields_in(rules, kind, record) {
                for column in stands {
                    if !columns.contains(&(*column, &field.row)) {
                        columns.push((*column, &field.row));
                    }
                }
            }
            Due {
                record,
                on: asks.on,
                row: &asks.row,
                kept: rules
                    .keeping
                    .iter()
                    .filter(|of| of.record == record)
                    .collect(),
                columns,
            }
        })
        .collect()
}
