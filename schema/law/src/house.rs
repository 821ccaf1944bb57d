//! The house file: a kitchen's own numbers, stricter than the law's, or looser by a named approval.

use crate::Bad;
use crate::entry::{HouseTextEntry, Number, RowEntry};
use chrono::NaiveDate;
use domain::law::{Law, Laws};
use domain::rows::{Bound, Row, RowId, Sense};
use domain::says::Texts;
use domain::words::{Mark, Profile};
use rust_decimal::Decimal;
use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde::Deserialize;

/// The file of a house.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct HouseEntry {
    /// Where the schema of this file is, for editors.
    #[serde(rename = "$schema", default)]
    #[expect(dead_code, reason = "for editors only")]
    schema: Option<String>,
    /// Rows of the house's own, marked OURS; they are added in every place.
    #[serde(default)]
    rows: Vec<RowEntry<HouseTextEntry>>,
    /// Numbers that are changed.
    #[serde(default)]
    changes: Vec<ChangeEntry>,
}

/// A number that is changed.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ChangeEntry {
    /// The place: `us`, `ca`, `eu`, `uk`.
    place: String,
    /// The row that the number stands in.
    row: String,
    /// Which number of the row, where it holds several: as the law has it.
    of: Option<Number>,
    /// The number of the house, in the unit of the row.
    value: Number,
    /// Why.
    why: String,
    /// What allows it, where it is looser.
    approval: Option<ApprovalEntry>,
}

/// An approval on file: a variance, a plan.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ApprovalEntry {
    /// Its number.
    number: String,
    /// What it is for.
    r#for: String,
    /// The last day on which it holds, `2027-03-31`; left out if it does not end.
    until: Option<String>,
}

/// A house's own numbers, read and ready to be set in the laws.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct House {
    /// Rows of its own.
    rows: Vec<Row>,
    /// What it changes.
    changes: Vec<HouseChange>,
}

#[derive(Debug, Clone, PartialEq)]
struct HouseChange {
    place: Profile,
    row: RowId,
    of: Option<Decimal>,
    value: Decimal,
    why: String,
    approval: Option<HouseApproval>,
}

#[derive(Debug, Clone, PartialEq)]
struct HouseApproval {
    number: String,
    purpose: String,
    until: Option<NaiveDate>,
}

/// The schema of the house file: JSON Schema (2020-12).
pub fn schema() -> serde_json::Value {
    let settings = SchemaSettings::draft2020_12();
    let schema = settings
        .into_generator()
        .into_root_schema_for::<HouseEntry>();
    schema.to_value()
}

impl House {
    /// Reads a house file.
    ///
    /// # Errors
    /// It does not parse, a row of its own is not marked OURS, a place is not one of ours, an
    /// approval has no number.
    pub fn read(text: &str) -> Result<House, Bad> {
        read(text).map_err(in_file)
    }

    /// Sets the house's numbers in the laws, all or none. A stricter number is set; its row keeps its
    /// mark, so that what refused before still refuses. A looser one is set only by a named approval,
    /// whether it has ended or not (see [`House::apply_on`]): its row becomes the house's own.
    ///
    /// # Errors
    /// A row that is not there, or that holds no number, or several; a number below nothing; one
    /// that is looser, or an exact one changed, without an approval.
    pub fn apply(&self, laws: &mut Laws) -> Result<(), Bad> {
        self.set(laws, None).map(drop)
    }

    /// The same on a day: a looser number whose approval has ended by then is left as the law has it.
    /// What was left comes back, in words.
    ///
    /// # Errors
    /// As [`House::apply`].
    pub fn apply_on(&self, laws: &mut Laws, day: NaiveDate) -> Result<Vec<String>, Bad> {
        self.set(laws, Some(day))
    }

    fn set(&self, laws: &mut Laws, day: Option<NaiveDate>) -> Result<Vec<String>, Bad> {
        let mut changed = laws.clone();
        for row in &self.rows {
            for law in changed.places.values_mut() {
                if let Some(there) = law.rows.insert(row.clone()) {
                    let says = format!(
                        "the row {} is there already. Give it a name of its own.",
                        there.id
                    );
                    return Err(in_file(Bad::new(says)));
                }
            }
        }
        let mut left = Vec::new();
        for change in &self.changes {
            let law = changed
                .places
                .get_mut(&change.place)
                .ok_or_else(|| in_file(Bad::new(format!("there is no law of {}", change.place))))?;
            left.extend(change.set(law, day).map_err(in_file)?);
        }
        *laws = changed;
        Ok(left)
    }
}

impl HouseChange {
    /// Sets the number; comes back with words if its approval has ended.
    fn set(&self, law: &mut Law, day: Option<NaiveDate>) -> Result<Option<String>, Bad> {
        let row = &self.row;
        let Some(mut told) = law.rows.get(row).cloned() else {
            return Err(Bad::new(format!(
                "there is no row {row} in the law of {}. Look its name up in the list of rows.",
                self.place
            )));
        };
        let mut bounds: Vec<&mut Bound> =
            law.bounds_mut().filter(|bound| bound.row == *row).collect();
        if bounds.is_empty() {
            return Err(Bad::new(format!(
                "{row} holds no number that could be changed."
            )));
        }
        if let Some(of) = self.of {
            bounds.retain(|bound| bound.value == of);
            if bounds.is_empty() {
                return Err(Bad::new(format!("{row} does not hold the number {of}.")));
            }
        }
        let first = &*bounds[0];
        if bounds
            .iter()
            .any(|bound| bound.value != first.value || bound.sense != first.sense)
        {
            let all: Vec<String> = bounds.iter().map(|bound| bound.value.to_string()).collect();
            return Err(Bad::new(format!(
                "{row} holds several numbers: {}. Name the one you mean with \"of\".",
                all.join(", ")
            )));
        }
        if self.value < Decimal::ZERO && first.value >= Decimal::ZERO {
            return Err(Bad::new(format!("{row}: {} is below nothing.", self.value)));
        }
        let looser = match first.sense {
            Sense::Exactly => self.value != first.value,
            Sense::AtMost | Sense::AtLeast => !first.is_kept_by(self.value),
        };
        if looser {
            let Some(approval) = &self.approval else {
                return Err(Bad::new(self.refused(first)));
            };
            if let Some(until) = approval
                .until
                .filter(|until| day.is_some_and(|day| day > *until))
            {
                return Ok(Some(format!(
                    "{row}: {} ended on {until}, so {} holds again. Have it renewed.",
                    approval.number, first.value
                )));
            }
        }
        if self.value != first.value {
            told.says = self.row_says(&told.says, first.value);
        }
        for bound in bounds {
            bound.value = self.value;
        }
        law.rows.insert(told);
        Ok(None)
    }

    fn refused(&self, bound: &Bound) -> String {
        let (row, law, house) = (&self.row, bound.value, self.value);
        let (allows, is) = match bound.sense {
            Sense::AtMost => ("allows at most", "looser"),
            Sense::AtLeast => ("asks for at least", "looser"),
            Sense::Exactly => ("is exactly", "another number"),
        };
        format!("{row} {allows} {law}; {house} is {is}. Name the approval that allows it.")
    }

    /// What the row says now.
    fn row_says(&self, says: &Texts, law: Decimal) -> Texts {
        let by = self.approval.as_ref().map(|approval| {
            let until = approval.until.map(|until| format!(" until {until}"));
            format!(
                ", by approval {} for {}{}",
                approval.number,
                approval.purpose,
                until.unwrap_or_default()
            )
        });
        let by = by.unwrap_or_default();
        let told = says.iter().map(|(language, says)| {
            let (house, instead) = match language {
                "fr" => ("Maison :", "au lieu de"),
                _ => ("House:", "in place of"),
            };
            let says = format!(
                "{says} {house} {} {instead} {law}{by} ({}).",
                self.value, self.why
            );
            (language.to_owned(), says)
        });
        Texts::new(told.collect())
    }
}

fn in_file(bad: Bad) -> Bad {
    bad.in_file("the house file")
}

fn read(text: &str) -> Result<House, Bad> {
    let entry: HouseEntry = serde_json::from_str(text).map_err(|error| Bad::json(&error))?;
    let mut rows = Vec::new();
    for row in entry.rows {
        let row = row.row()?;
        if row.mark != Mark::House {
            return Err(Bad::new(format!(
                "{}: a row of the house is marked OURS; the law's own rows are not written here.",
                row.id
            )));
        }
        rows.push(row);
    }
    let changes = entry.changes.into_iter().map(change);
    Ok(House {
        rows,
        changes: changes.collect::<Result<_, _>>()?,
    })
}

fn change(entry: ChangeEntry) -> Result<HouseChange, Bad> {
    let row = entry.row;
    let place = Profile::parse(&entry.place).ok_or_else(|| {
        let places = Profile::SPELT.join(", ");
        Bad::new(format!(
            "{row}: {:?} is not a place. Give one of {places}.",
            entry.place
        ))
    })?;
    if entry.why.trim().is_empty() {
        return Err(Bad::new(format!("{row}: say why.")));
    }
    let approval = |entry: ApprovalEntry| {
        if entry.number.trim().is_empty() {
            return Err(Bad::new(format!(
                "{row}: the approval has no number. Enter it."
            )));
        }
        let until = entry.until.map(|text| {
            text.parse()
                .map_err(|_| Bad::new(format!("{row}: {text:?} is not a day")))
        });
        Ok(HouseApproval {
            number: entry.number,
            purpose: entry.r#for,
            until: until.transpose()?,
        })
    };
    Ok(HouseChange {
        place,
        of: entry.of.map(|Number(of)| of),
        value: entry.value.0,
        why: entry.why,
        approval: entry.approval.map(approval).transpose()?,
        row: RowId::new(&row),
    })
}
