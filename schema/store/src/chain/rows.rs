//! Which columns of which table are in the chain: those that are never changed once they are written. What is
//! changed later (what is left of a lot, where a pack is) follows from these and is worked out by `check`.

use super::line::written;
use crate::animals::AnimalRow;
use crate::clock::ClockWord;
use crate::conditions::ConditionRow;
use crate::deeds::DeedRow;
use crate::incident_reports::ReportRow;
use crate::incidents::{ActRow, IncidentRow, ScopeRow};
use crate::lots::LotRow;
use crate::packs::PackRow;
use crate::papers::PaperRow;
use crate::prints::PrintRow;
use crate::reasons::ReasonRow;
use crate::record::PackEventRow;
use crate::sources::SourceRow;
use crate::stops::StopRow;
use crate::tables::*;
use chrono::NaiveDateTime;
use diesel::prelude::*;

/// A row that is only written and read here.
macro_rules! row {
    ($name:ident of $table:ident as $word:literal { $($column:ident: $of:ty),+ $(,)? }) => {
        #[derive(Debug, Clone, Queryable, Selectable, Insertable)]
        #[diesel(table_name = $table, treat_none_as_default_value = false)]
        pub(crate) struct $name { $(pub(crate) $column: $of),+ }
        written!($name, $word, $($column),+);
    };
}

row!(AnswerRow of answers as "answers" { id: i32, body: String });
/// An answer that is kept, as long as it may be: the text is not copied.
#[derive(Debug, Insertable)]
#[diesel(table_name = answers)]
pub(crate) struct AnswerLine<'a> {
    pub(crate) id: i32,
    pub(crate) body: &'a str,
}
written!(AnswerLine<'_>, "answers", id, body);

row!(VoidRow of voids as "voids" { id: i32, deed_id: i32, why: String });
row!(StepRow of steps as "steps" { id: i32, loss_mg: i64, animal_mg: i64 });
row!(AdditionRow of additions as "additions" { id: i32, deed_id: i32, what: String, mg: i64 });
row!(CoreReadingRow of core_readings as "core_readings" {
    id: i32, deed_id: i32, at: NaiveDateTime, quantity: String, millionths: i64, probe_id: Option<i32>,
});
row!(ProbeCheckRow of probe_checks as "probe_checks" {
    id: i32, probe_id: i32, bath: String, quantity: String, millionths: i64,
});
row!(CorrectedRow of corrections as "corrections" { id: i32, deed_id: i32, was: String, now: String });
row!(JudgedRow of judged_again as "judged_again" {
    id: i32, deed_id: i32, lot_id: i32, condition: Option<String>, was: String, now: String,
});
row!(MeasurementRow of measurements as "measurements" {
    id: i32, deed_id: i32, lot_id: Option<i32>, place_id: Option<i32>, quantity: String, millionths: i64,
    probe_id: Option<i32>, of_deed_id: Option<i32>,
});
row!(ThinningRow of thinnings as "thinnings" { id: i32, deed_id: i32, paper_id: i32 });
row!(StopEndRow of stop_ends as "stop_ends" { id: i32, deed_id: i32, stop_id: i32, what: String });
row!(EntryLine of entries as "entries" { id: i32, list: String, code: String });
row!(VersionLine of versions as "versions" {
    id: i32, entry_id: i32, number: i32, body: String, search: String, recorded_at: NaiveDateTime,
});
row!(HouseCodeRow of house_codes as "house_codes" { id: i32, code: String, owner: String });

written!(
    DeedRow,
    "deeds",
    id,
    uid,
    kind,
    at,
    began_at,
    recorded_at,
    day,
    late,
    person,
    place_id,
    note,
    request
);
written!(
    AnimalRow, "animals", id, deed_id, stem, farm, species, killed_on, abattoir, carcass, tag, head
);
written!(
    LotRow,
    "lots",
    id,
    code,
    deed_id,
    version_id,
    made_at,
    made_mg,
    pack_count,
    origin,
    animal_id,
    allergens,
    species,
    note,
    born_place_id,
    born_state,
    born_use_by,
    born_days_left,
    later,
    packaging
);
written!(PackRow, "packs", id, lot_id, number, made_mg);
written!(
    PackEventRow,
    "pack_events",
    id,
    deed_id,
    lot_id,
    pack_id,
    seq,
    account,
    mg,
    whole_pack,
    place_id,
    state,
    day
);
written!(
    SourceRow,
    "sources",
    id,
    lot_id,
    deed_id,
    animal_id,
    side,
    supplier,
    supplier_lot,
    packed_on,
    use_by,
    gtin
);
written!(
    ReasonRow, "reasons", id, deed_id, lot_id, topic, says, rule, source, said, basis
);
written!(
    StopRow,
    "stops",
    id,
    deed_id,
    lot_id,
    pack_id,
    root_id,
    kind,
    topic,
    said,
    basis,
    since,
    incident_id
);
written!(ConditionRow, "conditions", id, deed_id, lot_id, condition);
written!(
    IncidentRow,
    "incidents",
    id,
    number,
    told_by,
    told_at,
    hazard,
    drill,
    holds,
    why
);
written!(
    ScopeRow,
    "incident_scopes",
    id,
    incident_id,
    question,
    digest,
    lots,
    why
);
written!(
    PaperRow, "papers", id, of_deed_id, kind, name, form, bytes, hash
);
written!(ReportRow, "incident_reports", id, incident_id, facts);
written!(ActRow, "incident_acts", id, incident_id, kind, whom, text);
written!(
    ClockWord,
    "clock_words",
    id,
    at,
    ahead_until,
    person,
    why,
    last_deed
);

/// A print with the hashes of the kept texts that it points at: their keys alone would not say what they are.
pub(crate) struct PrintLine<'a> {
    pub(crate) id: i32,
    pub(crate) row: &'a PrintRow,
    pub(crate) form: &'a str,
    pub(crate) base: &'a str,
    pub(crate) claims: Option<&'a str>,
}

written!(
    PrintRow, "prints", id, deed_id, printer_id, version_id, lot_id, pack_id, number, template,
    own, dpi, use_by, ordinal, instead_of, net_mg
);

impl super::line::Written for PrintLine<'_> {
    const TABLE: &'static str = "prints";

    fn key(&self) -> i32 {
        self.id
    }

    fn write(&self, to: &mut String) {
        use super::line::Cell;
        self.row.write(to);
        to.pop();
        for (name, value) in [
            ("form", Some(self.form)),
            ("base", Some(self.base)),
            ("claims", self.claims),
        ] {
            to.push_str(",\"");
            to.push_str(name);
            to.push_str("\":");
            value.put(to);
        }
        to.push('}');
    }
}
