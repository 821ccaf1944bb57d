//! The kitchen itself: set up once, changed by a new version.

use super::checks::{language_tag, take_house_code};
use super::entry::{lock, same_version};
use super::says::KitchenSays;
use crate::app::{App, damaged};
use crate::error::{Error, Result};
use crate::web_address::is_web_address;
use crate::wire::asked::canonical;
use crate::wire::lists::{Approval, KitchenEntry};
use crate::wire::{Line, Word};
use crate::world::machine_zone;
use chrono::{DateTime, NaiveDate, Utc};
use chrono_tz::Tz;
use domain::code::HouseCode;
use domain::moment::day_of;
use domain::words::{HeatUnits, MassUnits, Profile};
use store::entries::{self, EntryBody};
use store::{Conn, Tx};
use words::{Heat, Language, Mass};

/// The kitchen, ready for use.
#[derive(Debug, Clone)]
pub struct Kitchen {
    /// As it is in the list, or the defaults.
    pub entry: KitchenEntry,
    /// Its code.
    pub house: HouseCode,
    /// Its time zone.
    pub zone: Tz,
    /// Has somebody set it up?
    pub is_set: bool,
}

impl Kitchen {
    /// From its entry.
    ///
    /// # Errors
    /// The entry is damaged.
    pub fn parse(body: &str) -> Result<Kitchen> {
        let entry: KitchenEntry = serde_json::from_str(body).map_err(|error| damaged(&error))?;
        let broken =
            |what: &str| store::Error::Broken(format!("the kitchen's {what} does not parse"));
        Ok(Kitchen {
            house: HouseCode::parse(&entry.code.0).ok_or_else(|| broken("code"))?,
            zone: entry.time_zone.0.parse().map_err(|_| broken("time zone"))?,
            entry,
            is_set: true,
        })
    }

    /// What holds until somebody sets the kitchen up.
    pub fn unset() -> Kitchen {
        let zone = machine_zone();
        let line = |text: &str| Line(text.to_owned());
        Kitchen {
            entry: KitchenEntry {
                code: line("KTC"),
                name: line("Kitchen"),
                address: None,
                country: None,
                establishment: None,
                time_zone: line(zone.name()),
                profile: Word(Profile::Us),
                languages: vec![line("en")],
                weights: None,
                temperatures: None,
                currency: line("USD"),
                public_url: None,
                gs1_prefix: None,
                till_layout: None,
                panel_apart: None,
                code_year: None,
                open_scan: None,
                ready_keeps_its_day: None,
                drill_every_months: None,
                approvals: Vec::new(),
                set_up: None,
                missing: None,
            },
            house: HouseCode::parse("KTC").expect("three letters without look-alikes"),
            zone,
            is_set: false,
        }
    }

    /// The units of weight that its people read.
    pub fn mass(&self) -> Mass {
        let word = self.entry.weights.as_ref();
        word.map_or(Mass::Metric, |word| mass(word.0))
    }

    /// The units of temperature that its people read.
    pub fn heat(&self) -> Heat {
        let word = self.entry.temperatures.as_ref();
        word.map_or(Heat::Celsius, |word| heat(word.0))
    }

    /// The kitchen's first language.
    pub fn language(&self) -> &str {
        self.entry
            .languages
            .first()
            .map_or("en", |language| language.0.as_str())
    }

    /// The languages of its labels, the first one first.
    pub fn languages(&self) -> Vec<&str> {
        let languages = self.entry.languages.iter();
        languages.map(|language| language.0.as_str()).collect()
    }

    /// The number of an approval for something that holds on a day, if one is on file.
    pub fn approval(&self, purpose: &str, day: NaiveDate) -> Option<&str> {
        let holds = |approval: &&Approval| {
            approval.purpose.0.eq_ignore_ascii_case(purpose)
                && approval.until.is_none_or(|until| day <= until.0)
        };
        let found = self.entry.approvals.iter().find(holds);
        found.map(|approval| approval.number.0.as_str())
    }

    /// What somebody should still say, in words.
    pub fn missing(&self) -> Vec<&'static str> {
        let mut missing = Vec::new();
        if !self.is_set {
            missing.extend([
                "code",
                "name",
                "time_zone",
                "profile",
                "languages",
                "currency",
            ]);
        }
        if self.entry.address.is_none() {
            missing.push("address");
        }
        if self.entry.public_url.is_none() {
            missing.push("public_url");
        }
        missing
    }
}

/// How weights are written in some units.
pub const fn mass(units: MassUnits) -> Mass {
    match units {
        MassUnits::Pounds => Mass::Pounds,
        MassUnits::Metric => Mass::Metric,
    }
}

/// How temperatures are written in some units.
pub const fn heat(units: HeatUnits) -> Heat {
    match units {
        HeatUnits::Fahrenheit => Heat::Fahrenheit,
        HeatUnits::Celsius => Heat::Celsius,
    }
}

/// Sets the kitchen up, or changes it.
///
/// # Errors
/// 409 where its code is a farm's, 412 where it was changed meanwhile, 422 where it cannot be.
pub fn put(app: &App, entry: &KitchenEntry, version: Option<i32>) -> Result<i32> {
    check(entry)?;
    let text = canonical(entry);
    app.store.write(|tx| {
        lock(tx)?;
        let known = entries::get(tx.conn, "kitchen", "kitchen")?;
        let body = known.as_ref().map(|known| known.body.as_str());
        keeps_its_day(tx, entry, body, app.now())?;
        let search = entry.name.0.to_lowercase();
        let body = EntryBody {
            text: &text,
            search: &search,
            at: app.now().naive_utc(),
        };
        match known {
            Some(known) if known.body == text => Ok(known.number),
            Some(known) => {
                if let Some(version) = version {
                    same_version(&known, version)?;
                }
                take_code(tx, entry)?;
                entries::replace(tx, &known, body)?;
                Ok(known.number + 1)
            }
            None => {
                take_code(tx, entry)?;
                entries::insert(tx, "kitchen", "kitchen", body)?;
                Ok(1)
            }
        }
    })
}

/// A date is a day of the kitchen's calendar. Where something is on record, another time zone may not turn that back:
/// what was past its day would be in it again.
fn keeps_its_day(
    tx: &mut Tx<'_>,
    entry: &KitchenEntry,
    known: Option<&str>,
    now: DateTime<Utc>,
) -> Result<()> {
    let before = match known {
        Some(body) => Kitchen::parse(body)?.zone,
        None => machine_zone(),
    };
    let Some(after) = entry
        .time_zone
        .0
        .parse::<Tz>()
        .ok()
        .filter(|after| *after != before)
    else {
        return Ok(());
    };
    let (today, there) = (day_of(now, before), day_of(now, after));
    if there < today && entries::seen(tx.conn)?.last_recorded_at.is_some() {
        let zone = after.name().to_owned();
        let detail = KitchenSays::DayGoesBack { zone, today, there };
        return Err(Error::cannot_be("time_zone", detail));
    }
    Ok(())
}

/// The time zone by which a moment in the past had its day: the kitchen's, as it was set then.
///
/// # Errors
/// The database is away, or an entry in it is damaged.
pub fn zone_at(conn: &mut Conn, at: DateTime<Utc>, kitchen: &Kitchen) -> Result<Tz> {
    let then = entries::body_at(conn, "kitchen", "kitchen", at.naive_utc())?;
    Ok(match then {
        Some(body) => Kitchen::parse(&body)?.zone,
        None => kitchen.zone,
    })
}

fn take_code(tx: &mut Tx<'_>, entry: &KitchenEntry) -> Result<()> {
    take_house_code(tx, &entry.code.0, "kitchen")
}

/// The most languages that a label is written in.
const MOST_LANGUAGES: usize = 4;

/// The most months between two drills: who asks for none so long has none.
const MOST_MONTHS: u32 = 60;

fn check(entry: &KitchenEntry) -> Result<()> {
    if entry.time_zone.0.parse::<Tz>().is_err() {
        let detail = KitchenSays::NoTimeZone {
            zone: entry.time_zone.0.clone(),
        };
        return Err(Error::cannot_be("time_zone", detail));
    }
    if let Some(layout) = &entry.till_layout {
        let read = layout.0.parse::<domain::gs1::in_store::Layout>();
        read.map_err(|why| Error::cannot_be("till_layout", why))?;
    }
    if entry.languages.is_empty() || entry.languages.len() > MOST_LANGUAGES {
        let most = MOST_LANGUAGES;
        return Err(Error::cannot_be(
            "languages",
            KitchenSays::Languages { most },
        ));
    }
    for (nth, language) in entry.languages.iter().enumerate() {
        let field = format!("languages[{nth}]");
        language_tag(&language.0, &field)?;
        // In a language without words a label would have no list and no allergens.
        if Language::of_tag(&language.0).is_none() {
            let tag = language.0.clone();
            let ours = Language::ALL.map(Language::tag).join(", ");
            return Err(Error::cannot_be(
                field,
                KitchenSays::NotWritten { tag, ours },
            ));
        }
    }
    if let Some(country) = &entry.country
        && (country.0.len() != 2 || !country.0.bytes().all(|byte| byte.is_ascii_uppercase()))
    {
        let country = country.0.clone();
        return Err(Error::cannot_be(
            "country",
            KitchenSays::NoCountry { country },
        ));
    }
    // The number means nothing without the State that gave it.
    if entry.establishment.is_some() && entry.country.is_none() {
        return Err(Error::cannot_be("country", KitchenSays::CountryOfNumber));
    }
    if entry.currency.0.len() != 3
        || !entry
            .currency
            .0
            .bytes()
            .all(|byte| byte.is_ascii_uppercase())
    {
        let currency = entry.currency.0.clone();
        return Err(Error::cannot_be(
            "currency",
            KitchenSays::NoCurrency { currency },
        ));
    }
    if let Some(url) = entry
        .public_url
        .as_ref()
        .filter(|url| !is_web_address(&url.0))
    {
        let url = url.0.clone();
        return Err(Error::cannot_be(
            "public_url",
            KitchenSays::NoAddress { url },
        ));
    }
    if let Some(prefix) = &entry.gs1_prefix
        && (!(4..=12).contains(&prefix.0.len())
            || !prefix.0.bytes().all(|byte| byte.is_ascii_digit()))
    {
        return Err(Error::cannot_be("gs1_prefix", KitchenSays::Gs1Prefix));
    }
    if let Some(months) = entry.drill_every_months
        && !(1..=MOST_MONTHS).contains(&months)
    {
        let most = MOST_MONTHS;
        return Err(Error::cannot_be(
            "drill_every_months",
            KitchenSays::Drills { most },
        ));
    }
    Ok(())
}
