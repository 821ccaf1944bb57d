//! Why? The links behind a lot's date, as they were kept when each deed was done, and what its packs
//! have lived through since.

use crate::app::App;
use crate::error::Result;
use crate::wire::answers::{BecauseRead, WhyRead};
use domain::dates::{Because, Rule};
use domain::law::Law;
use domain::rows::{RowId, Rows, SourceSays};
use domain::words::Topic;
use store::Conn;
use store::lots::LotRow;
use store::packs::PackRow;
use store::reasons::{self, ReasonRow};
use words::Speech;

/// The reasons about one topic, in order.
///
/// # Errors
/// The database is away.
pub fn of_topic(conn: &mut Conn, lot: i32, topic: Topic, law: &Rows) -> Result<Vec<BecauseRead>> {
    let mut rows = reasons::of_lot(conn, lot)?;
    rows.retain(|row| row.topic == topic.as_str());
    let told = |row: &ReasonRow| Ok(told(&row.because()?, law));
    rows.iter().map(told).collect()
}

/// The reasons for a lot's date: those kept at its making, and what has happened to its packs since.
///
/// # Errors
/// The database is away.
pub fn of_date(
    conn: &mut Conn,
    row: &LotRow,
    packs: &[PackRow],
    law: &Law,
) -> Result<Vec<BecauseRead>> {
    let mut chain = of_topic(conn, row.id, Topic::Date, &law.rows)?;
    let left = || packs.iter().filter(|pack| pack.left_mg > 0);
    if let Some(days) = left().find_map(|pack| pack.days_left) {
        let says = format!(
            "Frozen packs have no date; {days} days are left once they are thawed, the day of thawing counted."
        );
        let freezing = law
            .dates
            .freezing
            .clone()
            .unwrap_or_else(|| RowId::new("us-DT7"));
        chain.push(told(&Because::law(says, &freezing), &law.rows));
    }
    let earliest = left().filter_map(|pack| pack.use_by).min();
    if let Some(date) = earliest.filter(|date| row.born_use_by != Some(*date)) {
        let says = format!("Since then a pack was opened or thawed: {date}.");
        chain.push(told(&Because::house(says, "opened or thawed"), &law.rows));
    }
    Ok(chain)
}

fn told(because: &Because, rows: &Rows) -> BecauseRead {
    let speech = Speech::default();
    let (rule, source) = match &because.rule {
        Rule::House(says) => (
            speech.say(says),
            speech.say(&SourceSays::ProductList.into()),
        ),
        Rule::Practice(says) => (speech.say(says), speech.say(&SourceSays::Practice.into())),
        Rule::Rows(ids) => {
            let names: Vec<&str> = ids.iter().map(RowId::as_str).collect();
            (names.join(", "), speech.arg(&rows.sources(ids)))
        }
        Rule::Kept { rule, source } => (rule.clone(), source.clone()),
    };
    BecauseRead {
        says: speech.say(&because.says),
        key: because.says.key().to_owned(),
        rule,
        source,
    }
}

/// Everything that a lot's label rests on, in one answer: the links by topic, the rows behind them,
/// the readings.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn everything(app: &App, conn: &mut Conn, row: &LotRow) -> Result<WhyRead> {
    let lot = super::lot::read(app, conn, row)?;
    let place = app.kitchen(conn)?.entry.profile.0;
    let mut topics = std::collections::BTreeMap::new();
    topics.insert(Topic::Date.as_str().to_owned(), lot.use_by_because);
    // What was cured, cooked and released before it was cut up is told by the lots it came from.
    let ancestry = store::trace::back(conn, row.id)?;
    let family: Vec<i32> = ancestry
        .descendants_first(domain::lot::LotId(row.id))
        .iter()
        .map(|lot| lot.0)
        .collect();
    for topic in [Topic::Cure, Topic::Heat, Topic::Release] {
        let told = reasons::with_topic(conn, &family, topic.as_str())?;
        for lot in family.iter().filter(|lot| told.contains(lot)) {
            let links = of_topic(conn, *lot, topic, &app.law.laws.of(place).rows)?;
            if !links.is_empty() {
                topics.insert(topic.as_str().to_owned(), links);
                break;
            }
        }
    }
    let rules: Vec<String> = topics
        .values()
        .flatten()
        .map(|link| link.rule.clone())
        .collect();
    let mut rows: Vec<_> = rules
        .iter()
        .flat_map(|rule| super::law::named(app, place, rule))
        .collect();
    rows.sort_by(|one, other| one.id.cmp(&other.id));
    rows.dedup_by(|one, other| one.id == other.id);
    Ok(WhyRead {
        code: lot.code,
        use_by: lot.use_by,
        ingredients: lot.ingredients,
        allergens: lot.allergens,
        because: topics,
        rows,
        readings: lot.readings,
    })
}
