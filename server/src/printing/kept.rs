//! A label as it was asked for: taken apart to be kept, and put together again.

use crate::error::{Error, Result};
use labels::{Dpi, Facts, Field, PlacedLabel, Template, lay_out};
use std::collections::BTreeMap;
use store::prints::PrintRow;
use store::{Conn, kept};

/// What several labels say, taken apart: the texts that they share, and each one's own part.
#[derive(Debug)]
pub struct Apart {
    /// The shared texts, as JSON.
    pub base: String,
    /// Each label's own texts and codes, as JSON, in order.
    pub own: Vec<String>,
}

/// Takes labels apart, so that what they share is kept once.
pub fn apart(labels: &[&Facts]) -> Apart {
    let mut shared = labels
        .first()
        .map_or_else(BTreeMap::new, |first| first.texts.clone());
    for label in labels {
        shared.retain(|field, text| label.texts.get(field) == Some(text));
    }
    let own = labels.iter().map(|label| {
        let mut own = Facts::clone(label);
        own.texts.retain(|field, _| !shared.contains_key(field));
        serde_json::to_string(&own).unwrap_or_default()
    });
    Apart {
        own: own.collect(),
        base: serde_json::to_string(&shared).unwrap_or_default(),
    }
}

/// What a label says, put together again.
///
/// # Errors
/// What was kept does not parse.
pub fn together(base: &str, own: &str) -> Result<Facts> {
    let shared: BTreeMap<Field, String> =
        serde_json::from_str(base).map_err(|error| broken(&error))?;
    let mut facts: Facts = serde_json::from_str(own).map_err(|error| broken(&error))?;
    facts.texts.extend(shared);
    Ok(facts)
}

/// What a print says.
///
/// # Errors
/// What was kept does not parse.
pub fn facts(conn: &mut Conn, print: &PrintRow) -> Result<Facts> {
    together(&kept::text(conn, print.base_id)?, &print.own)
}

/// A print's label, from what was kept with it: lists and templates may have changed since.
///
/// # Errors
/// What was kept does not parse, or no longer fits on itself.
pub fn label(conn: &mut Conn, print: &PrintRow) -> Result<PlacedLabel> {
    let facts = facts(conn, print)?;
    let form = kept::text(conn, print.form_id)?;
    let template = Template::parse(&print.template, &form).map_err(|error| broken(&error))?;
    let dpi = u16::try_from(print.dpi).ok().and_then(Dpi::from_number);
    let dpi = dpi.ok_or_else(|| broken(&"no such dots per inch"))?;
    lay_out(&facts, &template, dpi).map_err(|refusal| broken(&refusal))
}

fn broken(cause: &impl std::fmt::Display) -> Error {
    store::Error::Broken(format!("a label that was kept cannot be read: {cause}")).into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_shared_is_kept_once_and_nothing_is_lost() {
        let label = |lot: &str, qr: &str| Facts {
            texts: BTreeMap::from([
                (Field::Name, "Sausage".to_owned()),
                (Field::Lot, lot.to_owned()),
            ]),
            qr: qr.to_owned(),
            linear: lot.to_owned(),
            ..Facts::default()
        };
        let labels = [label("A / 1", "u/1"), label("A / 2", "u/2")];
        let kept = apart(&labels.iter().collect::<Vec<_>>());
        assert_eq!(kept.base, r#"{"name":"Sausage"}"#);
        for (own, label) in kept.own.iter().zip(&labels) {
            assert!(!own.contains("Sausage"));
            assert_eq!(&together(&kept.base, own).unwrap(), label);
        }
    }
}
