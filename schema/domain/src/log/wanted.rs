//! Which field a rule of the place wants in which column, and of which entries.
//!
//! The rules name records and their fields (`duties.fields`) and the occasions that ask for a record
//! (`duties.step_records`). Here stands where each field is kept, and which entry is such an occasion.

use super::cooking::is_heat;
use super::doing::Doing;
use super::grinding::is_beef;
use super::kind::{Column, LogKind};
use super::source::Known;
use crate::duties::fields::{Field, fields};
use crate::duties::keeping::Record;
use crate::duties::step_records::Occasion;
use crate::words::DeedKind;

/// A field that a rule wants in a column of an entry.
#[derive(Debug, Clone, Copy)]
pub struct Wanted<'a> {
    /// The column.
    pub column: Column,
    /// The field, with its row.
    pub field: &'a Field,
    /// Must there be something in any case?
    pub(super) must: Must,
}

/// When a field has to hold something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Must {
    /// In any case.
    Always,
    /// Where there is such a one: a consignor who is another than the sender.
    IfThereIs,
}

/// The columns of a log in which a field of a record stands; none where the log does not hold it.
fn columns(kind: LogKind, record: Record, field: &str) -> (&'static [Column], Must) {
    use Column::*;
    use LogKind::*;
    use Must::*;
    use Record::*;
    let always = |columns: &'static [Column]| (columns, Always);
    match (record, kind, field) {
        (GroundBeefLog, Grinding, "supplier-establishments") => always(&[Establishments]),
        (GroundBeefLog, Grinding, "supplier-lots") => always(&[SupplierLots]),
        (GroundBeefLog, Grinding, "production-dates") => always(&[ProducedOn]),
        (GroundBeefLog, Grinding, "materials") => always(&[Materials, CarriedOver]),
        (GroundBeefLog, Grinding, "ground-at") => always(&[At]),
        (GroundBeefLog, Grinding, "cleaned-at") => always(&[CleanedBefore, CleanedAfter]),
        (GroundBeefLog, CleanDowns, "cleaned-at") => always(&[At]),

        (ReducedOxygenLog, Cooking, "temperature") => always(&[Hottest]),
        (ReducedOxygenLog, Cooling, "temperature") => always(&[Chart]),
        (ReducedOxygenLog, Temperatures, "temperature") => always(&[Temperature]),

        (OneUpOneDown, Departures, "receiver") => always(&[To]),
        (OneUpOneDown, Departures, "receiver-address") => always(&[ToAddress]),
        (OneUpOneDown, Departures, "receiver-telephone") => always(&[ToTelephone]),
        (OneUpOneDown, Departures, "description") => always(&[Product]),
        (OneUpOneDown, Departures, "lot-code") => always(&[Lot]),
        (OneUpOneDown, Departures, "quantity") => always(&[Weight, Packs]),
        (OneUpOneDown, Departures, "carrier") => always(&[Carrier]),

        (TraceToBusiness | TraceRetail, Departures | Batches, "common-name") => always(&[Product]),
        (TraceToBusiness | TraceRetail, Departures | Batches, "identifier") => always(&[Lot]),
        (TraceToBusiness | TraceRetail, Departures | Batches, "responsible") => {
            always(&[Responsible])
        }
        (TraceToBusiness, Departures, "provided-on") => always(&[At]),
        (TraceToBusiness, Departures, "receiver") => always(&[To, ToAddress]),
        (TraceToBusiness | TraceRetail, Departures | Receiving, "supplier") => {
            always(&[From, FromAddress])
        }
        (TraceToBusiness | TraceRetail, Departures, "received-on") => always(&[ReceivedOn]),
        (TraceToBusiness | TraceRetail, Receiving, "received-on") => always(&[At]),
        (TraceToBusiness | TraceRetail, Departures | Batches, "inputs") => always(&[Sources]),

        (AnimalProduct, Receiving | Departures, "description") => always(&[Product]),
        (AnimalProduct, Receiving | Departures, "quantity") => always(&[Weight]),
        (AnimalProduct, Receiving, "dispatcher") => always(&[From, FromAddress]),
        (AnimalProduct, Departures, "dispatcher") => always(&[Responsible]),
        (AnimalProduct, Receiving, "consignor") => (&[From], IfThereIs),
        (AnimalProduct, Departures, "consignor") => (&[Responsible], IfThereIs),
        (AnimalProduct, Receiving, "receiver") => always(&[Responsible]),
        (AnimalProduct, Departures, "receiver") => always(&[To, ToAddress]),
        (AnimalProduct, Receiving, "consignee") => (&[Responsible], IfThereIs),
        (AnimalProduct, Departures, "consignee") => (&[To], IfThereIs),
        (AnimalProduct, Receiving, "lot-code") => always(&[Reference]),
        (AnimalProduct, Departures, "lot-code") => always(&[Lot]),
        (AnimalProduct, Receiving, "dispatched-on") => always(&[SentOn]),
        (AnimalProduct, Departures, "dispatched-on") => always(&[At]),

        (TrichinaeTreatment, Trichinae, "lot-code") => always(&[Lot]),
        (TrichinaeTreatment, Trichinae, "chart") => always(&[Chart]),
        (TrichinaeTreatment, Trichinae, "salt") => always(&[Salt]),
        (TrichinaeTreatment, Trichinae, "casing") => always(&[Casing]),
        (TrichinaeTreatment, Trichinae, "limit") => always(&[Limit]),
        (TrichinaeTreatment, Trichinae, "actual") => always(&[Actual]),
        (TrichinaeTreatment, Trichinae, "deviation") => always(&[Deviation]),
        (TrichinaeTreatment, Trichinae, "correction") => always(&[Correction]),
        _ => (&[], Always),
    }
}

/// The fields of a record that a log holds, each with its columns.
pub fn fields_in(
    rules: &crate::duties::DutyRules,
    kind: LogKind,
    record: Record,
) -> Vec<(&Field, &'static [Column])> {
    let of = fields(rules, record).into_iter();
    let with = of.map(|field| (field, columns(kind, record, &field.field).0));
    with.filter(|(_, columns)| !columns.is_empty()).collect()
}

/// The occasions that an entry of a log is.
fn occasions(kind: LogKind, doing: &Doing, known: &Known<'_>) -> Vec<Occasion> {
    use Occasion::*;
    let lots = doing.lots();
    let of = || lots.iter().filter_map(|lot| known.lot(*lot));
    let of_animal = of().any(|of| of.has_species());
    // What is received or made is for somebody: its trace is kept from the start.
    let sold = [SellAtRetail, SellToBusiness];
    match kind {
        LogKind::Receiving => {
            let bought = of().any(|of| of.source.as_ref().is_some_and(|of| of.animal.is_none()));
            let mut all = sold.to_vec();
            all.extend(bought.then_some(BuyFood));
            all.extend(of_animal.then_some(ReceiveAnimalProduct));
            all
        }
        LogKind::Grinding if is_beef(doing, known) => vec![GrindBeef],
        LogKind::CleanDowns => vec![GrindBeef],
        LogKind::Batches => {
            let made = of().any(|of| of.has_species() && of.lot.product.kind.has_parts());
            let mut all = sold.to_vec();
            all.extend(made.then_some(MakeMeatProduct));
            all
        }
        LogKind::Cooking | LogKind::Cooling
            if of().any(|of| of.lot.packaging.is_some()) && is_heat(doing) =>
        {
            vec![PackReducedOxygen]
        }
        LogKind::Trichinae => vec![TreatTrichinae],
        LogKind::Departures => match doing.kind {
            DeedKind::Sell => vec![SellAtRetail],
            DeedKind::Ship => vec![SellToBusiness],
            DeedKind::Serve => vec![ServeMeal],
            _ => Vec::new(),
        },
        _ => Vec::new(),
    }
}

/// What the rules of the place want in an entry.
pub fn wanted<'a>(kind: LogKind, doing: &Doing, known: &Known<'a>) -> Vec<Wanted<'a>> {
    let rules = &known.law.duties;
    let occasions = occasions(kind, doing, known);
    let asked = rules
        .step_records
        .iter()
        .filter(|asks| occasions.contains(&asks.on));
    let mut found: Vec<Wanted<'a>> = Vec::new();
    for asks in asked {
        for field in fields(rules, asks.record) {
            let (columns, must) = columns(kind, asks.record, &field.field);
            for column in columns {
                let known = |of: &Wanted<'_>| of.column == *column && of.field == field;
                if !found.iter().any(known) {
                    found.push(Wanted {
                        column: *column,
                        field,
                        must,
                    });
                }
            }
        }
    }
    found
}
