//! The id of an event, from what it says: SHA-256 of its fields in the order of the standard (standards 3.6). The
//! same event told by another system has the same id.

use super::event::{Event, EventKind, Item};
use chrono::{SecondsFormat, Utc};
use sha2::{Digest, Sha256};
use std::fmt::Write;

/// `ni:///sha-256;…?ver=CBV2.0`.
pub fn id(event: &Event, vocabulary: &str) -> String {
    let mut hex = String::with_capacity(64);
    for byte in Sha256::digest(text(event, vocabulary)) {
        let _ = write!(hex, "{byte:02x}");
    }
    format!("ni:///sha-256;{hex}?ver=CBV2.0")
}

/// What is hashed.
fn text(event: &Event, vocabulary: &str) -> String {
    let mut out = String::new();
    let at = event.at.with_timezone(&Utc);
    let at = at.to_rfc3339_opts(SecondsFormat::Millis, true);
    let (kind, offset) = (event.type_name(), event.offset());
    let _ = write!(
        out,
        "eventType={kind}eventTime={at}eventTimeZoneOffset={offset}"
    );
    match &event.kind {
        EventKind::Object { items, action } => {
            list(&mut out, "quantityList", items);
            let _ = write!(out, "action={action}");
        }
        EventKind::Transformation { inputs, outputs } => {
            list(&mut out, "inputQuantityList", inputs);
            list(&mut out, "outputQuantityList", outputs);
        }
        EventKind::Aggregation { parent, items } => {
            let _ = write!(out, "parentID={parent}");
            list(&mut out, "childQuantityList", items);
            out.push_str("action=ADD");
        }
    }
    let _ = write!(
        out,
        "bizStep=https://ref.gs1.org/cbv/BizStep-{}",
        event.biz_step
    );
    if let Some(disposition) = event.disposition {
        let word = format!("https://ref.gs1.org/cbv/Disp-{disposition}");
        let _ = write!(out, "disposition={word}");
        if event.persists {
            let _ = write!(out, "persistentDispositionset={word}");
        }
    }
    for (key, place) in [
        ("readPoint", &event.read_point),
        ("bizLocation", &event.biz_location),
    ] {
        if let Some(place) = place {
            let _ = write!(out, "{key}id={place}");
        }
    }
    let own = event
        .own
        .iter()
        .map(|(key, value)| format!("{{{vocabulary}}}{key}={}", value.trim()));
    let mut own: Vec<String> = own.collect();
    own.sort_unstable();
    out + &own.concat()
}

/// The name of the list once, its members in the order of their bytes.
fn list(out: &mut String, name: &str, items: &[Item]) {
    let member = |item: &Item| {
        let mut text = format!("quantityElementepcClass={}", item.class);
        if let Some(kilograms) = item.kilograms() {
            let _ = write!(text, "quantity={kilograms}uom=KGM");
        }
        text
    };
    let mut members: Vec<String> = items.iter().map(member).collect();
    members.sort_unstable();
    out.push_str(name);
    out.push_str(&members.concat());
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::DateTime;
    use domain::grams::Grams;
    use std::collections::BTreeMap;

    fn item(class: &str, grams: Option<i64>) -> Item {
        let class = format!("https://id.gs1.org/01/{class}");
        Item {
            class,
            grams: grams.map(Grams::whole),
        }
    }

    fn event(at: &str, kind: EventKind, biz_step: &'static str) -> Event {
        Event {
            kind,
            at: DateTime::parse_from_rfc3339(at).unwrap(),
            biz_step,
            disposition: None,
            persists: false,
            biz_location: None,
            read_point: None,
            own: BTreeMap::new(),
        }
    }

    /// The fields of the published vectors V1 (without its `ilmd`) to V4 that we write; two implementations of others
    /// gave the hash of V4 whole (standards 3.6).
    #[test]
    fn the_text_is_that_of_the_vectors() {
        let belly = "09521234543220/10/26P0718-01-BEL";
        let transformed = event(
            "2026-07-20T09:30:00+02:00",
            EventKind::Transformation {
                inputs: vec![item("09521234543213/10/26P0718-01", Some(43_250))],
                outputs: vec![
                    item("09521234543237/10/26P0718-01-LOI", Some(9_100)),
                    item(belly, Some(6_200)),
                ],
            },
            "creating_class_instance",
        );
        let told = text(&transformed, "");
        assert_eq!(
            told,
            "eventType=TransformationEventeventTime=2026-07-20T07:30:00.000ZeventTimeZoneOffset=+02:00\
             inputQuantityListquantityElementepcClass=https://id.gs1.org/01/09521234543213/10/26P0718-01\
             quantity=43.25uom=KGMoutputQuantityListquantityElementepcClass=https://id.gs1.org/01/09521234543220/10/26P0718-01-BEL\
             quantity=6.2uom=KGMquantityElementepcClass=https://id.gs1.org/01/09521234543237/10/26P0718-01-LOI\
             quantity=9.1uom=KGMbizStep=https://ref.gs1.org/cbv/BizStep-creating_class_instance"
        );
        let packed = event(
            "2026-07-21T08:00:00+00:00",
            EventKind::Aggregation {
                parent: "https://id.gs1.org/00/095212345000000018".into(),
                items: vec![item(belly, None)],
            },
            "packing",
        );
        assert!(text(&packed, "").ends_with(
            "parentID=https://id.gs1.org/00/095212345000000018childQuantityListquantityElementepcClass=\
             https://id.gs1.org/01/09521234543220/10/26P0718-01-BELaction=ADDbizStep=https://ref.gs1.org/cbv/BizStep-packing"
        ));
        let held = Event {
            disposition: Some("recalled"),
            persists: true,
            own: [("b", "2".to_owned()), ("a", " 1 ".to_owned())].into(),
            ..event(
                "2026-08-01T12:00:00.5+02:00",
                EventKind::Object {
                    items: vec![item(belly, Some(3_000))],
                    action: "OBSERVE",
                },
                "holding",
            )
        };
        assert!(text(&held, "https://example.org/ns/").ends_with(
            "action=OBSERVEbizStep=https://ref.gs1.org/cbv/BizStep-holdingdisposition=https://ref.gs1.org/cbv/Disp-recalled\
             persistentDispositionset=https://ref.gs1.org/cbv/Disp-recalled{https://example.org/ns/}a=1{https://example.org/ns/}b=2"
        ));
        let id = id(&held, "");
        assert!(
            id.starts_with("ni:///sha-256;") && id.ends_with("?ver=CBV2.0") && id.len() == 89,
            "{id}"
        );
    }
}
