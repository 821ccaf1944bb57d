//! Reading what is built in, and checking it as a whole.

use crate::Bad;
use crate::file::{Subject, read};
use crate::sections::{
    CuresEntry, DatesEntry, DutiesEntry, FoodWordsEntry, HeatEntry, StabilityEntry,
    StatementsEntry, TradeEntry, TrichinaeEntry,
};
use domain::heat::{CoolingPlan, Holding, Lethality};
use domain::law::{Law, Laws};
use domain::rows::{RowId, Rows};
use domain::words::Profile;
use std::collections::BTreeMap;

/// Everything that is shipped.
#[derive(Debug, Clone, Default)]
pub struct Shipped {
    /// The law of each place.
    pub laws: Laws,
    /// What the trade expects.
    pub trade: domain::trade::TradeRules,
    /// The rows behind that.
    pub trade_rows: Rows,
    /// The address behind each key that a row's `sources` name.
    pub sources: BTreeMap<String, String>,
}

struct Texts {
    place: Profile,
    dates: &'static str,
    stability: &'static str,
    cures: &'static str,
    heat: &'static str,
    trichinae: &'static str,
    statements: &'static str,
    duties: &'static str,
}

macro_rules! texts {
    ($($place:ident $folder:literal,)+) => {
        [$(Texts {
            place: Profile::$place,
            dates: include_str!(concat!("../data/", $folder, "/dates.json")),
            stability: include_str!(concat!("../data/", $folder, "/stability.json")),
            cures: include_str!(concat!("../data/", $folder, "/cures.json")),
            heat: include_str!(concat!("../data/", $folder, "/heat.json")),
            trichinae: include_str!(concat!("../data/", $folder, "/trichinae.json")),
            statements: include_str!(concat!("../data/", $folder, "/statements.json")),
            duties: include_str!(concat!("../data/", $folder, "/duties.json")),
        },)+]
    };
}

const TEXTS: [Texts; 4] = texts! { Us "us", Ca "ca", Eu "eu", Uk "uk", };
const TRADE: &str = include_str!("../data/trade.json");
const FOOD_WORDS: &str = include_str!("../data/food-words.json");
const SOURCES: &str = include_str!("../data/sources.json");

/// Reads everything that is shipped.
///
/// # Errors
/// A file does not parse, a rule points at a row that is not there, a row at a source that is not.
pub fn shipped() -> Result<Shipped, Bad> {
    let sources: BTreeMap<String, String> = serde_json::from_str(SOURCES)
        .map_err(|error| Bad::new(error.to_string()).in_file("sources.json"))?;
    let mut laws = Laws::default();
    for texts in &TEXTS {
        laws.places.insert(texts.place, law(texts, &sources)?);
    }
    share_heat(&mut laws)?;
    let mut trade_rows = Rows::default();
    let trade = section::<TradeEntry>(TRADE, "trade.json", &sources, &mut trade_rows)?;
    let food_words =
        section::<FoodWordsEntry>(FOOD_WORDS, "food-words.json", &sources, &mut trade_rows)?;
    for law in laws.places.values_mut() {
        law.statements.allergens.food_words = food_words.clone();
        law.words = trade.ask.clone();
    }
    Ok(Shipped {
        laws,
        trade,
        trade_rows,
        sources,
    })
}

/// Every table of heat and every way to cool may show anywhere that food was made safe: each place gets
/// those of the others, marked as theirs, with the rows that they stand in.
fn share_heat(laws: &mut Laws) -> Result<(), Bad> {
    let shipped = laws.places.clone();
    for (place, law) in &mut laws.places {
        for (of, other) in shipped.iter().filter(|(of, _)| *of != place) {
            for table in &other.heat.lethality {
                take_row(law, other, table.table.row())?;
                law.heat.lethality.push(Lethality {
                    place: Some(*of),
                    ..table.clone()
                });
            }
            for hold in &other.heat.holding {
                let row = hold.degrees.row();
                let is_cold = matches!(hold.what, Holding::Receiving | Holding::Cold);
                if is_cold && other.rows.is_confirmed(row) {
                    take_row(law, other, row)?;
                    law.heat.cold_elsewhere.push(hold.degrees.clone());
                }
            }
            for plan in &other.heat.cooling {
                let stages = plan.stages.iter().map(|stage| &stage.within_minutes.row);
                let nitrite = plan.nitrite_ppm.iter().map(|least| &least.row);
                for row in [&plan.row]
                    .into_iter()
                    .chain(stages)
                    .chain(nitrite)
                    .chain(&plan.needs_approval)
                {
                    take_row(law, other, row)?;
                }
                law.heat.cooling.push(CoolingPlan {
                    place: Some(*of),
                    ..plan.clone()
                });
            }
        }
    }
    Ok(())
}

fn take_row(law: &mut Law, from: &Law, id: &RowId) -> Result<(), Bad> {
    let Some(row) = from.rows.get(id) else {
        return Ok(());
    };
    match law.rows.insert(row.clone()).filter(|known| known != row) {
        Some(_) => Err(Bad::new(format!(
            "the row {id} says something else in another place"
        ))),
        None => Ok(()),
    }
}

fn law(texts: &Texts, sources: &BTreeMap<String, String>) -> Result<Law, Bad> {
    let mut rows = Rows::default();
    let file = |subject: &str| format!("{}/{subject}.json", texts.place);
    Ok(Law {
        dates: section::<DatesEntry>(texts.dates, &file("dates"), sources, &mut rows)?,
        stability: section::<StabilityEntry>(
            texts.stability,
            &file("stability"),
            sources,
            &mut rows,
        )?,
        cures: section::<CuresEntry>(texts.cures, &file("cures"), sources, &mut rows)?,
        heat: section::<HeatEntry>(texts.heat, &file("heat"), sources, &mut rows)?,
        trichinae: section::<TrichinaeEntry>(
            texts.trichinae,
            &file("trichinae"),
            sources,
            &mut rows,
        )?,
        statements: section::<StatementsEntry>(
            texts.statements,
            &file("statements"),
            sources,
            &mut rows,
        )?,
        duties: section::<DutiesEntry>(texts.duties, &file("duties"), sources, &mut rows)?,
        words: domain::ask::AskRules::default(),
        rows,
    })
}

/// Reads one file, checks its sources, and adds its rows to those of its place. A row that two
/// subjects share says the same in both.
fn section<S: Subject>(
    text: &str,
    file: &str,
    sources: &BTreeMap<String, String>,
    all: &mut Rows,
) -> Result<S::Rules, Bad> {
    let (rows, rules) = read::<S>(text).map_err(|bad| bad.in_file(file))?;
    for row in rows.iter() {
        if let Some(key) = row.sources.iter().find(|key| !sources.contains_key(*key)) {
            let says = format!(
                "the row {} names the source {key:?}, which is not in sources.json",
                row.id
            );
            return Err(Bad::new(says).in_file(file));
        }
        if let Some(other) = all.insert(row.clone()).filter(|other| other != row) {
            let says = format!(
                "the row {} says something else in another file of the place",
                other.id
            );
            return Err(Bad::new(says).in_file(file));
        }
    }
    Ok(rules)
}

#[cfg(test)]
mod tests {
    #[test]
    fn what_is_shipped_can_be_read() {
        let shipped = super::shipped().unwrap_or_else(|bad| panic!("{bad}"));
        assert_eq!(shipped.laws.places.len(), 4);
    }
}
