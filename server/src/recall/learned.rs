//! What is known of an incident by now: who told it, why, and what it is about. In haste it is held first; who called and
//! what they said is noted afterwards.

use domain::incident::{Hazard, IncidentNote};
use store::incidents::{ActRow, Done, IncidentRow};

/// The row of an incident as it is known after what was noted: the last word of each kind counts. What nobody noted is an
/// empty text.
pub fn as_known(row: &IncidentRow, acts: &[(ActRow, Done)]) -> IncidentRow {
    let mut known = row.clone();
    for (act, _) in acts {
        let said = || act.text.clone();
        match IncidentNote::parse(&act.kind) {
            Some(IncidentNote::Caller) => known.told_by = said(),
            Some(IncidentNote::Reason) => known.why = said(),
            Some(IncidentNote::Hazard) => known.hazard = said(),
            Some(IncidentNote::Told | IncidentNote::Answered | IncidentNote::Note) | None => {}
        }
    }
    known
}

/// Is what was noted one of the things that a recall can be about, where it says what it is about?
pub fn is_said(kind: IncidentNote, text: &str) -> bool {
    kind != IncidentNote::Hazard || Hazard::parse(text).is_some()
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveDateTime;

    fn row() -> IncidentRow {
        IncidentRow {
            id: 1,
            number: "CHK-2026-1".into(),
            told_by: String::new(),
            told_at: NaiveDateTime::default(),
            hazard: "other".into(),
            drill: false,
            holds: true,
            why: String::new(),
        }
    }

    fn act(kind: &str, text: &str) -> (ActRow, Done) {
        let (kind, text) = (kind.to_owned(), text.to_owned());
        let act = ActRow {
            id: 2,
            incident_id: 1,
            kind,
            whom: None,
            text,
        };
        let done = Done {
            uid: Vec::new(),
            at: NaiveDateTime::default(),
            recorded_at: NaiveDateTime::default(),
            person: "Oda".into(),
        };
        (act, done)
    }

    #[test]
    fn the_last_word_of_each_kind_counts() {
        let acts = [
            act("caller", "somebody"),
            act("told", "by telephone"),
            act("hazard", "residue"),
            act("caller", "Harle Gate"),
        ];
        let known = as_known(&row(), &acts);
        assert_eq!(
            (
                known.told_by.as_str(),
                known.why.as_str(),
                known.hazard.as_str()
            ),
            ("Harle Gate", "", "residue")
        );
    }

    #[test]
    fn a_hazard_is_one_of_the_list() {
        assert!(is_said(IncidentNote::Hazard, "residue"));
        assert!(!is_said(IncidentNote::Hazard, "a bad feeling"));
        assert!(is_said(IncidentNote::Reason, "a bad feeling"));
    }
}
