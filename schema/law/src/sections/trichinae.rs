//! How the treatments against trichinae are written: `trichinae.json`.

mod drying;
mod other;

use self::drying::{DryingEntry, HamDryingEntry, SausageDryingEntry};
use self::other::OtherWayEntry;
use super::measures::{DegreesEntry, LengthEntry, TableEntry, TimeEntry, bound_of};
use crate::Bad;
use crate::entry::{BoundEntry, PrintedEntry, TemperatureEntry, known};
use crate::file::Subject;
use domain::rows::{RowId, Rows};
use domain::trichinae::{
    ColdStep, FreezingTable, HeatingRules, LeastOf, MeasuredAt, MostOf, SaltWay, StageKind,
    TimedPart, TrichinaeMethod, TrichinaeRules, Unlogged, Variant,
};
use domain::words::Species;
use schemars::JsonSchema;
use serde::Deserialize;

/// The rules against trichinae.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TrichinaeEntry {
    /// The row that frees fresh pork and bacon that are normally cooked.
    normally_cooked: Option<String>,
    /// By heat.
    heating: Option<HeatingEntry>,
    /// How cold the meat must be before freezing time begins.
    chill_first: Option<DegreesEntry>,
    /// By cold: any one table will do.
    #[serde(default)]
    freezing: Vec<FreezingEntry>,
    /// By salt and drying.
    #[serde(default)]
    methods: Vec<MethodEntry>,
    /// Tables of days for dry sausage.
    sausage_drying: Option<SausageDryingEntry>,
    /// The table of days for hams.
    ham_drying: Option<HamDryingEntry>,
    /// What may be shown instead of a treatment.
    #[serde(default)]
    other_ways: Vec<OtherWayEntry>,
    /// The row by which meat of some animals is tested, whatever was done to it.
    tested_only: Option<String>,
    /// Those animals.
    #[serde(default)]
    tested_species: Vec<String>,
}

/// By heat.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct HeatingEntry {
    /// Temperatures and times.
    table: TableEntry,
    /// Coming up, in hours, for meat that is neither cured nor fermented.
    come_up_hours: BoundEntry,
    /// When the time need not be logged.
    unlogged: Option<UnloggedEntry>,
}

/// A thick piece that is chilled late holds its heat anyway.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct UnloggedEntry {
    /// The row that it stands in.
    row: String,
    /// From this temperature.
    at_least: TemperatureEntry,
    /// Thicker than this.
    thicker_than: LengthEntry,
    /// Chilled later than this.
    later_than: TimeEntry,
}

/// A table of cold: the colder, the shorter.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct FreezingEntry {
    /// The row that it stands in.
    row: String,
    /// Where the temperature is read.
    measured: MeasuredEntry,
    /// For pieces up to this thickness; any where it is left out.
    up_to: Option<LengthEntry>,
    /// Its steps, the warmest first.
    steps: Vec<ColdStepEntry>,
}

/// Where a cold temperature is read.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum MeasuredEntry {
    /// In the room or the container.
    Room,
    /// In the middle of the meat.
    Centre,
}

/// One row of a table of cold.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ColdStepEntry {
    /// This temperature or colder.
    at_most: PrintedEntry,
    /// For this long or longer.
    hold: TimeEntry,
}

/// A method of curing.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MethodEntry {
    /// Its name.
    name: String,
    /// The row that it stands in.
    row: String,
    /// The largest piece of meat in a sausage (mm).
    piece_mm: Option<BoundEntry>,
    /// The deepest mass in which it cures (mm).
    mass_mm: Option<BoundEntry>,
    /// The ways to salt it; any one of them.
    #[serde(default)]
    salt: Vec<SaltWayEntry>,
    /// How often it must be overhauled.
    overhauls: Option<BoundEntry>,
    /// By casing, the thinnest first; a method without casings has one.
    variants: Vec<VariantEntry>,
    /// What else its drying follows.
    #[serde(default)]
    drying: DryingEntry,
    /// The row that says that a part of the method is not on file, if so.
    incomplete: Option<String>,
}

/// A way to salt: everything that is named must be met.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SaltWayEntry {
    /// Salt to a hundred of meat.
    dry: Option<BoundEntry>,
    /// Salt in the cure mix (%).
    mix: Option<BoundEntry>,
    /// Salt in the meat's brine at the end (%).
    brine: Option<BoundEntry>,
    /// Strength of the pickle on the salometer.
    salometer: Option<BoundEntry>,
    /// Pickle to a hundred of meat.
    pickle: Option<BoundEntry>,
}

/// What a method asks of one range of casings.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct VariantEntry {
    /// Up to this casing; any where it is left out.
    casing: Option<LengthEntry>,
    /// For pepperoni only?
    #[serde(default)]
    only_pepperoni: bool,
    /// What must be long enough. A hotter time counts for a cooler one too, so the times of a
    /// schedule that rises are written as "at this or hotter".
    #[serde(default)]
    needs: Vec<NeedEntry>,
    /// What must not be too long.
    #[serde(default)]
    up_to: Vec<UpToEntry>,
    /// From the first day of the cure to the end.
    whole: Option<WholeEntry>,
}

/// From the first day of the cure to the end.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WholeEntry {
    /// The row that it stands in; the method's own where it is left out.
    row: Option<String>,
    /// So long.
    time: TimeEntry,
}

/// Something that must be long enough.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NeedEntry {
    /// The row that it stands in; the method's own where it is left out.
    row: Option<String>,
    /// The stages whose times are added.
    parts: Vec<PartEntry>,
    /// Together so long.
    time: TimeEntry,
    /// So long for each pound of the heaviest piece, if that is more.
    per_pound: Option<TimeEntry>,
}

/// A stage whose time counts between two temperatures.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PartEntry {
    /// The stage.
    stage: StageEntry,
    /// Counts at or above this.
    at_least: Option<TemperatureEntry>,
    /// Counts at or below this.
    at_most: Option<TemperatureEntry>,
}

/// Something that must not be too long.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct UpToEntry {
    /// The stage.
    stage: StageEntry,
    /// Never above this.
    at_most: Option<TemperatureEntry>,
    /// In all no longer than this.
    time: TimeEntry,
}

macro_rules! stages {
    ($($word:ident)+) => {
        /// The stages that a curing passes through.
        #[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
        #[serde(rename_all = "kebab-case")]
        #[schemars(rename = "CuringStage")]
        enum StageEntry { $($word,)+ }

        impl StageEntry {
            fn stage(self) -> StageKind {
                match self { $(StageEntry::$word => StageKind::$word,)+ }
            }
        }
    };
}

stages! { Cure Contact Equalise Soak Rinse Hold Smoke Dry }

impl Subject for TrichinaeEntry {
    type Rules = TrichinaeRules;

    fn rules(self, rows: &Rows) -> Result<TrichinaeRules, Bad> {
        Ok(TrichinaeRules {
            normally_cooked: self
                .normally_cooked
                .map(|row| known(rows, &row))
                .transpose()?,
            heating: self.heating.map(|entry| entry.heating(rows)).transpose()?,
            chill_first: self
                .chill_first
                .map(|entry| entry.degrees(rows))
                .transpose()?,
            freezing: all(&self.freezing, |entry| entry.table(rows))?,
            methods: all(&self.methods, |entry| entry.method(rows))?,
            sausage_drying: self
                .sausage_drying
                .map(|entry| entry.tables(rows))
                .transpose()?,
            ham_drying: self.ham_drying.map(|entry| entry.table(rows)).transpose()?,
            tested_only: self.tested_only.map(|row| known(rows, &row)).transpose()?,
            tested_species: all(&self.tested_species, |text| {
                Species::parse(text).ok_or_else(|| {
                    Bad::new(format!("{text:?} is not an animal that is known here"))
                })
            })?,
            other_ways: all(&self.other_ways, |entry| entry.other_way(rows))?,
        })
    }
}

impl HeatingEntry {
    fn heating(self, rows: &Rows) -> Result<HeatingRules, Bad> {
        let unlogged = |entry: UnloggedEntry| {
            Ok(Unlogged {
                at_least: entry.at_least.temperature(),
                thicker_than: entry.thicker_than.length(),
                later_than: entry.later_than.time()?,
                row: known(rows, &entry.row)?,
            })
        };
        Ok(HeatingRules {
            table: self.table.table(rows)?,
            come_up_hours: self.come_up_hours.bound(rows)?,
            unlogged: self.unlogged.map(unlogged).transpose()?,
        })
    }
}

impl FreezingEntry {
    fn table(&self, rows: &Rows) -> Result<FreezingTable, Bad> {
        let measured = match self.measured {
            MeasuredEntry::Room => MeasuredAt::Room,
            MeasuredEntry::Centre => MeasuredAt::Centre,
        };
        let steps = all(&self.steps, |step| {
            Ok(ColdStep {
                at_most: step.at_most.printed()?,
                hold: step.hold.time()?,
            })
        })?;
        let up_to = self.up_to.map(LengthEntry::length);
        FreezingTable::new(known(rows, &self.row)?, measured, up_to, steps).map_err(Bad::new)
    }
}

impl MethodEntry {
    fn method(&self, rows: &Rows) -> Result<TrichinaeMethod, Bad> {
        let row = known(rows, &self.row)?;
        Ok(TrichinaeMethod {
            name: self.name.clone(),
            piece_mm: bound_of(self.piece_mm.as_ref(), rows)?,
            mass_mm: bound_of(self.mass_mm.as_ref(), rows)?,
            salt: all(&self.salt, |entry| entry.way(rows))?,
            overhauls: bound_of(self.overhauls.as_ref(), rows)?,
            variants: all(&self.variants, |entry| entry.variant(&row, rows))?,
            drying: self.drying.drying(rows)?,
            incomplete: self
                .incomplete
                .as_ref()
                .map(|row| known(rows, row))
                .transpose()?,
            row,
        })
    }
}

impl SaltWayEntry {
    fn way(&self, rows: &Rows) -> Result<SaltWay, Bad> {
        Ok(SaltWay {
            dry: bound_of(self.dry.as_ref(), rows)?,
            mix: bound_of(self.mix.as_ref(), rows)?,
            brine: bound_of(self.brine.as_ref(), rows)?,
            salometer: bound_of(self.salometer.as_ref(), rows)?,
            pickle: bound_of(self.pickle.as_ref(), rows)?,
        })
    }
}

impl VariantEntry {
    fn variant(&self, row: &RowId, rows: &Rows) -> Result<Variant, Bad> {
        let own = |id: &Option<String>| match id {
            Some(id) => known(rows, id),
            None => Ok(row.clone()),
        };
        let whole = |entry: &WholeEntry| Ok::<_, Bad>((entry.time.time()?, own(&entry.row)?));
        Ok(Variant {
            casing: self.casing.map(LengthEntry::length),
            only_pepperoni: self.only_pepperoni,
            needs: all(&self.needs, |need| {
                let (part, more) = need.parts.split_first().ok_or_else(|| {
                    Bad::new(format!("{row}: a need without parts. Name a stage."))
                })?;
                Ok(LeastOf {
                    part: part.part(),
                    more: more.iter().map(PartEntry::part).collect(),
                    time: need.time.time()?,
                    per_pound: need.per_pound.map(TimeEntry::time).transpose()?,
                    row: own(&need.row)?,
                })
            })?,
            up_to: all(&self.up_to, |up_to| {
                Ok(MostOf {
                    stage: up_to.stage.stage(),
                    at_most: up_to.at_most.map(TemperatureEntry::temperature),
                    time: up_to.time.time()?,
                    row: row.clone(),
                })
            })?,
            whole: self.whole.as_ref().map(whole).transpose()?,
        })
    }
}

impl PartEntry {
    fn part(&self) -> TimedPart {
        TimedPart {
            stage: self.stage.stage(),
            at_least: self.at_least.map(TemperatureEntry::temperature),
            at_most: self.at_most.map(TemperatureEntry::temperature),
        }
    }
}

fn all<Entry, Rule>(
    entries: &[Entry],
    rule: impl Fn(&Entry) -> Result<Rule, Bad>,
) -> Result<Vec<Rule>, Bad> {
    entries.iter().map(rule).collect()
}
