//! The first step of setting a kitchen up, and its settings afterwards: who it is, whose law, which units.

use super::bench::Pick;
use super::list_form::{RowShown, rows_shown};
use super::regions::Region;
use super::spoken::Words;
use super::zones::{Zones, zones};
use crate::caller::Caller;
use crate::error::Result;
use domain::words::Profile;
use serde_json::{Value, json};
use store::Conn;

/// What the law of each place says of packing without air.
const VACUUM: &str = "us-R1, us-R2, us-R5, canada-eu-uk-14.1";

/// What the form of the kitchen says already.
pub struct KitchenForm {
    /// The version that it changes, if there is one.
    pub version: Option<i32>,
    /// What stands in the entry.
    pub body: String,
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// Its address.
    pub address: String,
    /// The country that it is in.
    pub country: String,
    /// The number that it was approved under.
    pub establishment: String,
    /// Does the panel on safe handling stand on a second label?
    pub panel_apart: Option<bool>,
    /// The time zones, its own chosen.
    pub zones: Vec<Zones>,
    /// Has nobody set it up?
    pub is_new: bool,
    /// Whose law.
    pub profiles: Vec<Pick>,
    /// The languages of its labels.
    pub languages: Vec<Pick>,
    /// Its currency.
    pub currencies: Vec<Pick>,
    /// Its units of weight.
    pub weights: String,
    /// Its units of temperature.
    pub temperatures: String,
    /// The address in its codes.
    pub public_url: String,
    /// How its till numbers are written.
    pub till_layout: String,
    /// The rows behind what is said of packing without air.
    pub rows: Vec<RowShown>,
    /// Approvals on file, and blank rows: for what, the number, until when.
    pub approvals: Vec<[String; 3]>,
}

/// What is usual where that law holds: units, money and the reader's own country, as the form's own fields take them.
fn usual(profile: Profile, region: Option<Region>) -> Value {
    let (weights, temperatures, currency) = match profile {
        Profile::Us => ("pounds", "fahrenheit", "USD"),
        Profile::Ca => ("metric", "celsius", "CAD"),
        Profile::Eu => ("metric", "celsius", "EUR"),
        Profile::Uk => ("metric", "celsius", "GBP"),
    };
    let own = region.filter(|region| region.profile == profile);
    let country = own.map_or("", |region| region.country);
    json!({ "weights": weights, "temperatures": temperatures, "currency": currency, "country": country })
}

/// The languages of labels, the one that stands first on them at the top: of a new kitchen the reader's own. Where a law
/// may ask for two, both are proposed.
fn languages(told: &[&str], new_for: Option<&str>, region: Option<Region>) -> Vec<Pick> {
    let first = new_for.or(told.first().copied()).unwrap_or("en");
    let in_two = region.is_some_and(|region| region.profile == Profile::Ca);
    let mut all = [("en", "English"), ("fr", "Français")];
    all.sort_by_key(|(tag, _)| *tag != first);
    let chosen = |tag: &str| match new_for {
        Some(own) => tag == own || in_two,
        None => told.contains(&tag),
    };
    let pick = |(tag, name): (&str, &str)| Pick {
        chosen: chosen(tag),
        ..Pick::of(tag, name.to_owned())
    };
    all.map(pick).into()
}

/// The form, as it is filled in already.
///
/// # Errors
/// The database is away, or the entry is damaged.
pub fn kitchen_form(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    region: Option<Region>,
) -> Result<KitchenForm> {
    let kitchen = app.kitchen(conn)?;
    let kept = store::entries::get(conn, "kitchen", "kitchen")?;
    let entry = &kitchen.entry;
    let is_new = !kitchen.is_set;
    let text = |value: Option<&String>| value.cloned().unwrap_or_default();
    let profile = entry.profile.0;
    let currency = entry.currency.0.clone();
    let told: Vec<&str> = entry.languages.iter().map(|one| one.0.as_str()).collect();
    let mut approvals: Vec<[String; 3]> = entry
        .approvals
        .iter()
        .map(|one| {
            let until = one.until.map(|day| day.0.to_string()).unwrap_or_default();
            [one.purpose.0.clone(), one.number.0.clone(), until]
        })
        .collect();
    approvals.extend([
        [String::new(), String::new(), String::new()],
        Default::default(),
    ]);
    let body: Value = match &kept {
        Some(kept) => {
            serde_json::from_str(&kept.body).map_err(|error| crate::app::damaged(&error))?
        }
        None => json!({}),
    };
    Ok(KitchenForm {
        version: kept.as_ref().map(|kept| kept.number),
        body: body.to_string(),
        code: if is_new {
            String::new()
        } else {
            entry.code.0.clone()
        },
        name: if is_new {
            String::new()
        } else {
            entry.name.0.clone()
        },
        address: text(entry.address.as_ref().map(|note| &note.0)),
        country: match region {
            Some(region) if is_new => region.country.to_owned(),
            _ => text(entry.country.as_ref().map(|line| &line.0)),
        },
        establishment: text(entry.establishment.as_ref().map(|line| &line.0)),
        panel_apart: entry.panel_apart,
        // Of a new kitchen the tablet says it, else its language's region, else whoever sets it up.
        zones: match is_new {
            true => zones(words, region.and_then(Region::zone).unwrap_or(""), region),
            false => {
                let country = entry.country.as_ref().map(|line| line.0.as_str());
                let here = Region::of_kitchen(profile, country);
                zones(words, &entry.time_zone.0, Some(here))
            }
        },
        is_new,
        profiles: Profile::ALL
            .iter()
            .map(|of| Pick {
                more: usual(*of, region).to_string(),
                // Nobody's law is taken for granted.
                chosen: match is_new {
                    true => region.is_some_and(|region| region.profile == *of),
                    false => *of == profile,
                },
                ..Pick::of(of.as_str(), words.headed(of.says()))
            })
            .collect(),
        languages: languages(&told, is_new.then_some(words.lang()), region),
        currencies: ["USD", "CAD", "EUR", "GBP"]
            .into_iter()
            .map(|code| Pick {
                chosen: code == currency,
                ..Pick::of(code, code.to_owned())
            })
            .collect(),
        weights: entry
            .weights
            .as_ref()
            .map(|word| word.0.to_string())
            .unwrap_or_default(),
        temperatures: entry
            .temperatures
            .as_ref()
            .map(|word| word.0.to_string())
            .unwrap_or_default(),
        public_url: text(entry.public_url.as_ref().map(|line| &line.0)),
        till_layout: text(entry.till_layout.as_ref().map(|line| &line.0)),
        rows: rows_shown(crate::read::law::named(app, profile, VACUUM, words.lang())),
        approvals,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_readers_language_stands_first_and_canada_is_proposed_both() {
        let told = |told: &[&str], new_for: Option<&str>, region: Option<Region>| {
            let all = languages(told, new_for, region);
            let each = all.into_iter().map(|pick| (pick.code, pick.chosen));
            each.collect::<Vec<_>>()
        };
        let of = |country, profile| Some(Region { country, profile });
        let pick = |code: &str, chosen| (code.to_owned(), chosen);
        assert_eq!(
            told(&[], Some("fr"), of("FR", Profile::Eu)),
            [pick("fr", true), pick("en", false)]
        );
        assert_eq!(
            told(&[], Some("fr"), of("CA", Profile::Ca)),
            [pick("fr", true), pick("en", true)]
        );
        // What was chosen once stays as it was chosen.
        assert_eq!(
            told(&["fr", "en"], None, None),
            [pick("fr", true), pick("en", true)]
        );
        assert_eq!(
            told(&["en"], None, None),
            [pick("en", true), pick("fr", false)]
        );
    }
}
