//! What a deed told in fields of its request, for the logs: read from the record as it was asked, with what was
//! corrected since. Fields that a log does not show are passed over.

use super::Number;
use super::cures::{TrichinaeAsked, decimal};
use crate::app::damaged;
use crate::error::Result;
use domain::log::{Told, TreatedAs};
use domain::measure::Temperature;
use domain::words::Disposal;
use serde::Deserialize;
use serde_json::{Map, Value};

/// The fields that a log shows, of whatever deed.
#[derive(Debug, Default, Deserialize)]
struct Shown {
    to: Option<String>,
    from: Option<String>,
    why: Option<String>,
    document: Option<String>,
    witness: Option<String>,
    what: Option<String>,
    heat_standard: Option<String>,
    cooling_plan: Option<String>,
    trichinae: Option<TrichinaeAsked>,
}

/// What a deed told: its request as the record keeps it, and the fields that are right instead, in order.
///
/// # Errors
/// The record is damaged.
pub fn told(request: &str, now: &[&str]) -> Result<Told> {
    let read = |text: &str| -> Result<Map<String, Value>> {
        serde_json::from_str(text).map_err(|error| damaged(&error))
    };
    let mut asked = read(request)?;
    for right in now {
        for (field, value) in read(right)? {
            match value.is_null() {
                true => asked.remove(&field),
                false => asked.insert(field, value),
            };
        }
    }
    // In a failure of a place `from` is a moment: it tells nobody's name.
    if asked.contains_key("until") || asked.contains_key("readings") {
        asked.remove("from");
    }
    // Read from text, as it came: numbers are decimals there.
    let text = Value::Object(asked).to_string();
    let shown: Shown = serde_json::from_str(&text).map_err(|error| damaged(&error))?;
    Ok(Told {
        to: shown.to.or(shown.from),
        why: shown.why,
        document: shown.document,
        witness: shown.witness,
        disposal: shown.what.as_deref().and_then(Disposal::parse),
        heat_standard: shown.heat_standard,
        cooling_plan: shown.cooling_plan,
        treated: shown.trichinae.map_or(Vec::new(), treated),
    })
}

/// A temperature as it was told, on either scale.
fn on_its_scale(celsius: Option<Number>, fahrenheit: Option<Number>) -> Option<Temperature> {
    let celsius = celsius.map(|degrees| Temperature::celsius(decimal(degrees)));
    celsius.or_else(|| Some(Temperature::fahrenheit(decimal(fahrenheit?))))
}

fn treated(asked: TrichinaeAsked) -> Vec<TreatedAs> {
    let mut told = Vec::new();
    told.extend(asked.frozen.and_then(|frozen| {
        Some(TreatedAs::Frozen {
            read: on_its_scale(frozen.celsius, frozen.fahrenheit)?,
            hours: frozen.hours,
            thickness: frozen.thickness_mm.map(decimal),
        })
    }));
    told.extend(asked.heated.and_then(|heated| {
        Some(TreatedAs::Heated {
            read: on_its_scale(heated.celsius, heated.fahrenheit)?,
            minutes: decimal(heated.minutes),
        })
    }));
    told.extend(asked.dried.map(|dried| TreatedAs::Dried {
        method: dried.method.0,
        casing: dried.casing_mm.map(decimal),
    }));
    told.extend(asked.certificate.map(|paper| TreatedAs::Certificate {
        way: paper.way.0,
        paper: paper.paper.0,
    }));
    told
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_right_counts_and_what_no_log_shows_is_passed_over() {
        let asked = r#"{"kind":"ship","to":"Inn","grams":1.5,"lot":"X","why":"sold"}"#;
        let read = told(asked, &[r#"{"to":"The Inn"}"#, r#"{"why":null}"#]).unwrap();
        assert_eq!((read.to.as_deref(), read.why), (Some("The Inn"), None));
        let failed = r#"{"place":"cooler-1","from":"2026-06-10T07:40:00Z","readings":[]}"#;
        assert_eq!(told(failed, &[]).unwrap(), Told::default());
        let released = r#"{"lot":"X","trichinae":{"frozen":{"celsius":-15,"hours":480}}}"#;
        assert!(matches!(
            told(released, &[]).unwrap().treated[..],
            [TreatedAs::Frozen { hours: 480, .. }]
        ));
    }
}
