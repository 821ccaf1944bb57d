//! Everything that a lot's label rests on, in one answer: the links by topic, the rows behind them,
//! the readings.

use super::LoadedFamily;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::WhyRead;
use crate::wire::answers::because::because_read;
use crate::wire::answers::lot::lot_read;
use domain::dates::Because;
use domain::family::{all_contents_links, nearest_links};
use domain::plan::Reason;
use domain::words::Topic;
use std::collections::BTreeMap;
use store::Conn;
use store::family::Extent;

/// Why a lot is as its label says.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn everything(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<WhyRead> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, Extent::REASONED)?;
    let speech = app.speech(reading.kitchen());
    let lot = lot_read(&reading.lot_view(id)?, &reading, &speech);
    let place = reading.kitchen().entry.profile.0;
    let mut topics = BTreeMap::new();
    topics.insert(Topic::Date.as_str().to_owned(), lot.use_by_because);
    for topic in [Topic::Cure, Topic::Heat, Topic::Release] {
        let links = nearest_links(&reading.family, id, topic);
        if !links.is_empty() {
            let told = |link: &Because| because_read(link, &reading.law.rows, &speech);
            topics.insert(topic.as_str().to_owned(), links.iter().map(told).collect());
        }
    }
    let own = reading.family.get(id).map(|of| of.reasons.iter());
    let stops = own.into_iter().flatten();
    let stops = stops.filter(|reason| reason.topic == Topic::Stop);
    let told = |reason: &Reason| because_read(&reason.because, &reading.law.rows, &speech);
    let stops: Vec<_> = stops.map(told).collect();
    if !stops.is_empty() {
        topics.insert(Topic::Stop.as_str().to_owned(), stops);
    }
    let contents = all_contents_links(&reading.family, id);
    if !contents.is_empty() {
        let told = |link: &Because| because_read(link, &reading.law.rows, &speech);
        let told = contents.iter().map(told).collect();
        topics.insert(Topic::Contents.as_str().to_owned(), told);
    }
    if !lot.corrections.is_empty() {
        let told = lot.corrections;
        topics.insert(Topic::Correction.as_str().to_owned(), told);
    }
    let rules = topics.values().flatten();
    let rules: Vec<String> = rules.map(|link| link.rule.clone()).collect();
    let named = rules.iter();
    let mut rows: Vec<_> = named
        .flat_map(|rule| super::law::named(app, place, rule, speech.language.tag()))
        .collect();
    rows.sort_by(|one, other| one.id.cmp(&other.id));
    rows.dedup_by(|one, other| one.id == other.id);
    Ok(WhyRead {
        code: lot.code,
        use_by: lot.use_by,
        ingredients: lot.ingredients,
        allergens: lot.allergens,
        may_contain: lot.may_contain,
        because: topics,
        rows,
        readings: lot.readings,
    })
}
