//! How cooking, cooling and holding are written: `heat.json`.

use super::measures::{DegreesEntry, LimitEntry, TableEntry, bound_of};
use crate::Bad;
use crate::entry::{BoundEntry, Number, PrintedEntry, known};
use crate::file::Subject;
use domain::heat::{
    Boiling, ComeUp, Cooking, CoolingPlan, CoolingStage, FailureRules, Food, HeatRules, Hold,
    Holding, Lethality, LogRules, ProbeRules,
};
use domain::rows::Rows;
use domain::words::Species;
use schemars::JsonSchema;
use serde::Deserialize;

/// The rules of heat and cold.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HeatEntry {
    /// The edition of the code that is taken where the kitchen names none.
    code_year: Option<CodeYearEntry>,
    /// The way to cool what was cooked: a name among `cooling`.
    after_cooking: Option<String>,
    /// The kitchen's cooking tables, by class of food and year of the code. Where two hold for one
    /// food and year, both must be met.
    #[serde(default)]
    cooking: Vec<CookingEntry>,
    /// Tables by how far they cut down Salmonella.
    #[serde(default)]
    lethality: Vec<LethalityEntry>,
    /// A pot that boiled.
    boiling: Option<BoilingEntry>,
    /// How food is judged that stood in a place which did not stay cold.
    failure: Option<FailureEntry>,
    /// How probes are checked.
    probes: Option<ProbesEntry>,
    /// How fast meat should come up to heat; advice.
    come_up: Option<ComeUpEntry>,
    /// How close the readings of a log must stand.
    log: Option<LogEntry>,
    /// Ways to cool.
    #[serde(default)]
    cooling: Vec<CoolingEntry>,
    /// Holding hot and cold, thawing, receiving.
    #[serde(default)]
    holding: Vec<HoldEntry>,
}

/// An edition of the code.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CodeYearEntry {
    /// Its year.
    year: u16,
    /// The row that says so.
    row: String,
}

/// A class of food.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum FoodEntry {
    /// Whole muscle that was neither pierced nor pumped.
    Intact,
    /// Ground, injected or mechanically tenderised meat.
    Ground,
    /// Poultry, stuffed meat, and stuffing with meat in it.
    Poultry,
    /// A whole roast of beef or pork, a cured one such as a ham among them.
    Roast,
    /// Raw animal food cooked by microwaves.
    Microwaved,
}

impl FoodEntry {
    fn food(self) -> Food {
        match self {
            FoodEntry::Intact => Food::Intact,
            FoodEntry::Ground => Food::Ground,
            FoodEntry::Poultry => Food::Poultry,
            FoodEntry::Roast => Food::Roast,
            FoodEntry::Microwaved => Food::Microwaved,
        }
    }
}

/// The birds that tables were made for.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum BirdEntry {
    /// Chicken.
    Chicken,
    /// Turkey.
    Turkey,
}

impl BirdEntry {
    fn species(self) -> Species {
        match self {
            BirdEntry::Chicken => Species::Chicken,
            BirdEntry::Turkey => Species::Turkey,
        }
    }
}

/// A pot that boiled.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct BoilingEntry {
    /// In minutes, at least.
    minutes: BoundEntry,
    /// Classes of food whose middle a boiling pot tells nothing about.
    #[serde(default)]
    not_for: Vec<FoodEntry>,
}

/// How food is judged that stood in a place which did not stay cold.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct FailureEntry {
    /// How cold it has to be.
    cold: DegreesEntry,
    /// For how many hours it may be warmer, once.
    hours: LimitEntry,
    /// The same of raw food, where that is counted by another row.
    raw_hours: Option<LimitEntry>,
    /// The row by which what is still raw need not be kept cold here, if the place has one.
    leaves_raw_out: Option<String>,
}

/// How probes are checked.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ProbesEntry {
    /// How warm melting ice is, on both scales.
    ice: PrintedEntry,
    /// How hot water boils at the sea's level, on both scales.
    boiling: PrintedEntry,
    /// How far it may be off, in degrees Celsius.
    within_celsius: BoundEntry,
    /// The same in degrees Fahrenheit.
    within_fahrenheit: BoundEntry,
    /// In how many days it is checked again, at most.
    every_days: BoundEntry,
}

/// A cooking table and whom it is for.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CookingEntry {
    /// Which class of food.
    food: Option<FoodEntry>,
    /// Or which classes.
    #[serde(default)]
    foods: Vec<FoodEntry>,
    /// The first year of the code that has it, if it is new.
    from_year: Option<u16>,
    /// The last year of the code that has it, if it was replaced.
    until_year: Option<u16>,
    /// The table.
    table: TableEntry,
}

/// A table for one reduction of Salmonella.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LethalityEntry {
    /// How many tenfold cuts: 6.5; left out where the table does not say.
    log: Option<Number>,
    /// Foods that it is not for.
    #[serde(default)]
    not_for: Vec<FoodEntry>,
    /// The bird that it was made for; left out for a table of meat.
    bird: Option<BirdEntry>,
    /// For meat no fatter than this, in per cent; left out for any, and for what nobody has measured.
    fat_at_most: Option<Number>,
    /// Is it, a table of meat, the one for meat with poultry in it?
    #[serde(default)]
    with_poultry: bool,
    /// Is it taken only where a cook names it?
    #[serde(default)]
    only_if_chosen: bool,
    /// The table.
    table: TableEntry,
}

/// Coming up to heat.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ComeUpEntry {
    /// Out of the cold.
    from: PrintedEntry,
    /// Into the heat.
    to: PrintedEntry,
    /// In hours, at most.
    within_hours: BoundEntry,
}

/// How close the readings of a log must stand.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LogEntry {
    /// Two readings this many minutes apart or less count as one hold.
    join_minutes: BoundEntry,
    /// A longer silence than this many minutes is for a person to decide.
    silence_minutes: BoundEntry,
}

/// A way to cool.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CoolingEntry {
    /// Its name.
    name: String,
    /// The row that it stands in.
    row: String,
    /// The row that lets a kitchen use it only with an approval on file, if one does.
    needs_approval: Option<String>,
    /// For cured meat only, with so much nitrite taken in (ppm).
    nitrite_ppm: Option<BoundEntry>,
    /// For what was not cooked: it is never found for a cook.
    #[serde(default)]
    not_after_cooking: bool,
    /// Its stages.
    stages: Vec<StageEntry>,
}

/// From one temperature to another within a time.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct StageEntry {
    /// From here; from the first reading where it is left out.
    from: Option<PrintedEntry>,
    /// Down to here.
    to: PrintedEntry,
    /// In minutes, at most.
    within_minutes: BoundEntry,
}

/// A temperature at which something is held.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct HoldEntry {
    /// What is held.
    what: HoldingEntry,
    /// How warm or cold it must be.
    degrees: DegreesEntry,
}

macro_rules! holding {
    ($($word:ident)+) => {
        /// What is held, thawed or received at a temperature.
        #[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
        #[serde(rename_all = "kebab-case")]
        enum HoldingEntry { $($word,)+ }

        impl HoldingEntry {
            fn holding(self) -> Holding {
                match self { $(HoldingEntry::$word => Holding::$word,)+ }
            }
        }
    };
}

holding! {
    ReceivingMeat ReceivingPoultry ReceivingOffal ReceivingMince ReceivingPreparation ReceivingFrozen
    Cold Hot HotRoast BarbecuedCold BarbecuedHot Refrigerated Eggs Receiving ThawWater
    ThawReadyToEat Mince FrozenMince Bath ChickenBath SousVideStore
}

impl Subject for HeatEntry {
    type Rules = HeatRules;

    fn rules(self, rows: &Rows) -> Result<HeatRules, Bad> {
        let named = |name: &String| self.cooling.iter().any(|plan| plan.name == *name);
        if let Some(name) = self.after_cooking.as_ref().filter(|name| !named(name)) {
            return Err(Bad::new(format!("there is no way to cool {name:?}")));
        }
        Ok(HeatRules {
            code_year: self
                .code_year
                .map(|entry| Ok::<_, Bad>((entry.year, known(rows, &entry.row)?)))
                .transpose()?,
            after_cooking: self.after_cooking,
            cooking: all(self.cooking, |entry| entry.tables(rows))?.concat(),
            boiling: self
                .boiling
                .map(|entry| {
                    Ok::<_, Bad>(Boiling {
                        minutes: entry.minutes.bound(rows)?,
                        not_for: entry.not_for.iter().map(|food| food.food()).collect(),
                    })
                })
                .transpose()?,
            lethality: all(self.lethality, |entry| {
                Ok(Lethality {
                    log: entry.log.map(|log| log.0),
                    not_for: entry.not_for.iter().map(|food| food.food()).collect(),
                    bird: entry.bird.map(BirdEntry::species),
                    fat_at_most: entry.fat_at_most.map(Number::percent),
                    with_poultry: entry.with_poultry,
                    only_if_chosen: entry.only_if_chosen,
                    place: None,
                    table: entry.table.table(rows)?,
                })
            })?,
            failure: self
                .failure
                .map(|entry| {
                    Ok::<_, Bad>(FailureRules {
                        cold: entry.cold.degrees(rows)?,
                        hours: entry.hours.limit(rows)?,
                        raw_hours: entry.raw_hours.map(|it| it.limit(rows)).transpose()?,
                        leaves_raw_out: (entry.leaves_raw_out.as_deref())
                            .map(|row| known(rows, row))
                            .transpose()?,
                    })
                })
                .transpose()?,
            probes: self
                .probes
                .map(|entry| {
                    Ok::<_, Bad>(ProbeRules {
                        ice: entry.ice.printed()?,
                        boiling: entry.boiling.printed()?,
                        within_celsius: entry.within_celsius.bound(rows)?,
                        within_fahrenheit: entry.within_fahrenheit.bound(rows)?,
                        every_days: entry.every_days.bound(rows)?,
                    })
                })
                .transpose()?,
            come_up: self
                .come_up
                .map(|entry| {
                    Ok(ComeUp {
                        from: entry.from.printed()?,
                        to: entry.to.printed()?,
                        within_hours: entry.within_hours.bound(rows)?,
                    })
                })
                .transpose()?,
            log: self
                .log
                .map(|entry| {
                    Ok(LogRules {
                        join_minutes: entry.join_minutes.bound(rows)?,
                        silence_minutes: entry.silence_minutes.bound(rows)?,
                    })
                })
                .transpose()?,
            cooling: all(self.cooling, |entry| entry.plan(rows))?,
            cold_elsewhere: Vec::new(),
            holding: all(self.holding, |entry| {
                Ok(Hold {
                    what: entry.what.holding(),
                    degrees: entry.degrees.degrees(rows)?,
                })
            })?,
        })
    }
}

impl CookingEntry {
    /// The table, once for each class that it is for.
    fn tables(self, rows: &Rows) -> Result<Vec<Cooking>, Bad> {
        let table = self.table.table(rows)?;
        let foods = self.food.into_iter().chain(self.foods);
        let of = |food: FoodEntry| Cooking {
            food: food.food(),
            from_year: self.from_year,
            until_year: self.until_year,
            table: table.clone(),
        };
        let tables: Vec<Cooking> = foods.map(of).collect();
        match tables.is_empty() {
            true => Err(Bad::new(format!(
                "the table {} is for no food",
                table.row()
            ))),
            false => Ok(tables),
        }
    }
}

impl CoolingEntry {
    fn plan(self, rows: &Rows) -> Result<CoolingPlan, Bad> {
        Ok(CoolingPlan {
            row: known(rows, &self.row)?,
            needs_approval: self
                .needs_approval
                .map(|row| known(rows, &row))
                .transpose()?,
            nitrite_ppm: bound_of(self.nitrite_ppm.as_ref(), rows)?,
            not_after_cooking: self.not_after_cooking,
            place: None,
            stages: all(self.stages, |stage| {
                Ok(CoolingStage {
                    from: stage.from.map(PrintedEntry::printed).transpose()?,
                    to: stage.to.printed()?,
                    within_minutes: stage.within_minutes.bound(rows)?,
                })
            })?,
            name: self.name,
        })
    }
}

fn all<Entry, Rule>(
    entries: Vec<Entry>,
    rule: impl Fn(Entry) -> Result<Rule, Bad>,
) -> Result<Vec<Rule>, Bad> {
    entries.into_iter().map(rule).collect()
}
