//! What the rules want written down stands in a log: every field of every record that an occasion of the kitchen's
//! own work asks for has its column.

use domain::duties::fields::fields;
use domain::log::{LogKind, due, fields_in};
use std::collections::BTreeSet;

#[test]
fn every_field_of_a_record_that_a_log_holds_has_its_column() {
    let laws = law::shipped().expect("the law is read");
    let mut held = 0;
    for (place, law) in &laws.laws.places {
        for record in LogKind::ALL.iter().flat_map(|kind| due(&law.duties, *kind)) {
            let wanted: BTreeSet<&str> = fields(&law.duties, record.record)
                .into_iter()
                .map(|field| field.field.as_str())
                .collect();
            let stands: BTreeSet<&str> = LogKind::ALL
                .iter()
                .flat_map(|kind| fields_in(&law.duties, *kind, record.record))
                .map(|(field, _)| field.field.as_str())
                .collect();
            assert_eq!(wanted, stands, "{place}: {}", record.record);
            held += wanted.len();
        }
    }
    assert!(held > 40, "{held}");
}
