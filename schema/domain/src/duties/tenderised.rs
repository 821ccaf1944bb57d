//! The words due on beef that was tenderised by machine, and how its label tells to cook it.

use crate::heat::{Food, HeatRules, HeatTable, HoldStep};
use crate::measure::{Printed, Temperature};
use crate::messages;
use crate::rows::{Finding, RowId, Rows};
use crate::says::Texts;
use chrono::TimeDelta;

messages! {
    /// What is said of the cooking instructions of a label.
    TenderisedSays in "tenderised" {
        TooCool "too-cool" { core: Temperature, at_least: Printed, hold: TimeDelta },
        TooShort "too-short" { core: Temperature, hold: TimeDelta },
    }
}

/// Mandated words; one entry a language, English first, then French.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TenderisedWording {
    /// Where they stand.
    pub row: RowId,
    /// Beside the name.
    pub name: Vec<String>,
    /// How it is cooked.
    pub cook: Vec<String>,
    /// And how a steak is turned.
    pub turn: Vec<String>,
    /// Words of which the name has one, where the place leaves the choice.
    pub one_of: Vec<String>,
    /// The class of food whose table it is cooked by, where the label tells how and the law has no words for it.
    pub cook_by: Option<Food>,
}

/// How a kitchen has shown that such beef is cooked: what its label tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CookingTold {
    /// The method, in words, by language.
    pub method: Texts,
    /// The core.
    pub core: Temperature,
    /// And for how long it is held there.
    pub held: TimeDelta,
}

/// The languages that the words are mandated in.
const LANGUAGES: [&str; 2] = ["en", "fr"];

/// The lines for the label, each with its language: beside the name, how to cook, how to turn.
pub fn lines(wording: &TenderisedWording, steak: bool) -> Vec<(&'static str, &str)> {
    let turn: &[String] = if steak { &wording.turn } else { &[] };
    let all = [&wording.name[..], &wording.cook, turn];
    let tagged = |words| LANGUAGES.into_iter().zip(words);
    all.into_iter()
        .flat_map(|words: &[String]| tagged(words.iter().map(String::as_str)))
        .collect()
}

/// The table by which its label tells how it is cooked, where the place asks that it is told.
pub fn table<'a>(
    wording: &TenderisedWording,
    heat: &'a HeatRules,
    code_year: u16,
) -> Option<&'a HeatTable> {
    let food = wording.cook_by?;
    let mut tables = heat.cooking.iter();
    let found = tables.find(|cooking| cooking.holds(food, code_year));
    found.map(|cooking| &cooking.table)
}

/// What the label tells to do: as the kitchen has shown, else by the coolest row of the table.
pub fn instructed(told: Option<&CookingTold>, table: &HeatTable) -> (Temperature, TimeDelta) {
    let HoldStep { at_least, hold } = table.first();
    told.map_or((at_least.temperature(), hold), |told| {
        (told.core, told.held)
    })
}

/// What stands against instructions by which such beef would not be cooked.
pub fn check_cooking(told: &CookingTold, table: &HeatTable, rows: &Rows) -> Option<Finding> {
    let CookingTold { core, held, .. } = *told;
    if table.is_met_by(core, held) {
        return None;
    }
    let says = match table.step_at(core) {
        Some(HoldStep { hold, .. }) => TenderisedSays::TooShort { core, hold },
        None => {
            let HoldStep { at_least, hold } = table.first();
            TenderisedSays::TooCool {
                core,
                at_least,
                hold,
            }
        }
    };
    Some(Finding::against(rows, table.row(), says))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rows::RowId;

    fn table() -> HeatTable {
        let step = |degrees: i64, seconds| HoldStep {
            at_least: Temperature::fahrenheit(degrees).into(),
            hold: TimeDelta::seconds(seconds),
        };
        HeatTable::new(RowId::new("us-0"), vec![step(145, 180), step(158, 0)]).unwrap()
    }

    fn told(degrees: i64, seconds: i64) -> CookingTold {
        CookingTold {
            method: Texts::from("Grill"),
            core: Temperature::fahrenheit(degrees),
            held: TimeDelta::seconds(seconds),
        }
    }

    #[test]
    fn instructions_that_do_not_cook_it_are_found() {
        let against = |degrees, seconds| {
            check_cooking(&told(degrees, seconds), &table(), &Rows::default())
                .map(|finding| finding.says.key().to_owned())
        };
        assert_eq!(against(145, 180).as_deref(), None);
        assert_eq!(against(160, 0).as_deref(), None);
        assert_eq!(against(145, 179).as_deref(), Some("tenderised-too-short"));
        assert_eq!(against(144, 600).as_deref(), Some("tenderised-too-cool"));
    }

    #[test]
    fn the_coolest_row_is_told_where_the_kitchen_tells_nothing() {
        let of_row = (Temperature::fahrenheit(145), TimeDelta::minutes(3));
        assert_eq!(instructed(None, &table()), of_row);
        let own = told(160, 0);
        assert_eq!(instructed(Some(&own), &table()), (own.core, own.held));
    }
}
