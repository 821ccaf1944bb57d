//! Does what is on record of a cook show that the food is ready, and by which table?
//!
//! The kitchen's own table for the class of food comes first, then every other table that was made for
//! it: those of the place, then those of other places. Meeting one of them is proof. Where none is met,
//! the first speaks. A row of another place opens nothing that the kitchen's own table shuts, until an approval is on
//! file; it stops nobody alone; a cook that meets no table at all is asked
//! about everywhere (`nowhere`), also where the place has no confirmed figure of its own.

use super::cook::{Cook, logged, looked_over, one};
use super::judgement::Judgement;
use super::log::Log;
use super::nowhere::none_met;
use super::rules::{HeatRules, minutes};
use super::sane::{plausible_core, plausible_time};
use super::says::CookSays;
use super::table::HeatTable;
use super::ways::{Way, chosen, class, ways};
use super::words::{Food, PiercedBy};
use crate::code::LotCode;
use crate::duties::percent;
use crate::measure::Percent;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, RowId, Rows};
use crate::says::Texts;
use crate::words::Species;
use chrono::TimeDelta;
use std::collections::BTreeSet;

/// What was written down of a cook.
#[derive(Debug, Clone, Copy)]
pub enum HeatRecord<'a> {
    /// One temperature of the core, and how long it was held.
    Held(Cook),
    /// A log of the core.
    Logged(&'a Log),
    /// The pot boiled for so long.
    Boiled(TimeDelta),
}

/// A cook, with what its table is chosen by.
#[derive(Debug, Clone, Copy)]
pub struct Heated<'a> {
    /// What was written down.
    pub record: HeatRecord<'a>,
    /// Its class, where the product says one.
    pub food: Option<Food>,
    /// What is in it.
    pub species: &'a BTreeSet<Species>,
    /// How fat the meat is, where somebody knows.
    pub fat: Option<Percent>,
    /// The year of the code that the place has adopted.
    pub code_year: u16,
    /// The row of the table that the cook named, if one was.
    pub chosen: Option<&'a RowId>,
    /// What of the meat was ground, pumped or stuffed, if any was.
    pub pierced: Option<&'a Pierced>,
    /// The whole piece that went in, if one did that a pot says nothing about.
    pub piece: Option<&'a Texts>,
    /// Raw meat in it of which nobody knows the animal, if there is any.
    pub unknown: Option<(&'a LotCode, &'a Texts)>,
    /// Is an approval for cooking by another table on file?
    pub is_approved: bool,
}

/// Meat that was ground, pumped or stuffed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pierced {
    /// How.
    pub by: PiercedBy,
    /// Which lot was; of what may fill it: the filling.
    pub lot: LotCode,
    /// Its product.
    pub product: Texts,
}

/// The table that a cook met. Where several had to be met, the rows of all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proof {
    /// The rows that were met.
    pub rows: Vec<RowId>,
    /// Were all of them read? One that was not proves all the same, with a warning.
    pub is_confirmed: bool,
    /// Is it that the pot boiled, and no temperature?
    pub has_boiled: bool,
}

/// What is said of a cook, and its proof, if it is one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeatVerdict {
    /// The answer with its reasons.
    pub judgement: Judgement,
    /// The proof that the food is ready.
    pub proof: Option<Proof>,
}

impl Heated<'_> {
    /// The class that the kitchen's table is chosen by: what has a bird in it is poultry whatever the
    /// list says, what may have one in it and what was stuffed is asked for as much, what was ground is ground, what
    /// was pumped is not intact, and meat that nobody has classed is taken for ground, which needs more than whole
    /// muscle.
    pub fn class(&self) -> Food {
        match (
            self.food,
            self.species.iter().any(|species| species.is_bird()),
        ) {
            (Some(Food::Microwaved), _) => Food::Microwaved,
            (_, true) => Food::Poultry,
            (_, false) if self.unknown.is_some() => Food::Poultry,
            (_, false) if self.by() == Some(PiercedBy::SaidStuffed) => Food::Poultry,
            (Some(food), false) if self.is_not(food) => self.pierced_class(),
            (food, false) => food.unwrap_or(Food::Ground),
        }
    }

    /// The class of what was stuffed, ground or pumped: a stuffing shields the middle as no grinding does
    /// (`us-1.8-poultry`).
    fn pierced_class(&self) -> Food {
        match self.by() {
            Some(PiercedBy::Filled | PiercedBy::Stuffed) => Food::Poultry,
            _ => Food::Ground,
        }
    }

    /// Was done to the meat what the class of its product rules out? A cured ham that was pumped is a
    /// roast all the same.
    fn is_not(&self, food: Food) -> bool {
        use PiercedBy::*;
        match (food, self.by()) {
            (_, None) => false,
            (Food::Intact, _) => true,
            (Food::Roast, Some(by)) => matches!(by, SaidStuffed | Filled | Stuffed | Ground),
            _ => false,
        }
    }

    /// Does the record rule out what its product claims?
    pub(super) fn is_no_such_meat(&self) -> bool {
        self.food.is_some_and(|food| self.is_not(food))
    }

    fn by(&self) -> Option<PiercedBy> {
        self.pierced.map(|pierced| pierced.by)
    }

    fn says_unknown(&self, rules: &HeatRules) -> Option<Finding> {
        let (lot, product) = self.unknown?;
        let (lot, product) = (lot.clone(), product.clone());
        let is_bird = self.species.iter().any(|species| species.is_bird());
        let is_judged_so = class(self, rules) == Food::Poultry && !is_bird;
        is_judged_so.then(|| Finding::note(CookSays::UnknownAnimal { product, lot }, []))
    }

    fn says_pierced(&self) -> Option<Finding> {
        let pierced = self.pierced?;
        let class = self.food.filter(|food| self.is_not(*food))?;
        let (product, lot) = (pierced.product.clone(), pierced.lot.clone());
        let says = match pierced.by {
            PiercedBy::SaidStuffed => CookSays::SaidStuffed { class },
            PiercedBy::Filled => CookSays::Filled {
                product,
                lot,
                class,
            },
            PiercedBy::Stuffed => CookSays::Stuffed {
                product,
                lot,
                class,
            },
            by => CookSays::Pierced {
                product,
                lot,
                by,
                class,
            },
        };
        Some(Finding::note(says, []))
    }
}

/// Does it show that the food is ready?
///
/// # Errors
/// A temperature or time that cannot be; a table that is not there or was not made for this food.
pub fn prove(heated: &Heated<'_>, rules: &HeatRules, rows: &Rows) -> Result<HeatVerdict> {
    if let Some(fat) = heated.fat {
        percent("fat_percent", fat)?;
    }
    match heated.record {
        HeatRecord::Held(cook) => {
            plausible_core("core", cook.core)?;
            plausible_time("held", cook.held)?;
        }
        HeatRecord::Logged(_) => {}
        HeatRecord::Boiled(length) => {
            plausible_time("boiled", length)?;
            return Ok(verdict(boiled(heated, length, rules, rows), true, rows));
        }
    }
    let ways = match heated.chosen {
        // Whoever names another table, of another place or made for other food, is bound by the kitchen's own all the same.
        Some(row) => match chosen(heated, row, rules)? {
            known if known.is_known => vec![known],
            other => {
                let own = ways(heated, rules)
                    .into_iter()
                    .filter(|own| own.is_kitchens || own.is_own);
                own.chain([other]).collect()
            }
        },
        None => ways(heated, rules),
    };
    let mut first = None;
    let mut undecided: Option<RowId> = None;
    let mut missed = Vec::new();
    let mut near: Option<Judgement> = None;
    for (nth, way) in ways.iter().enumerate() {
        let mut judged = judge(heated, way, rules, rows);
        if !way.is_own {
            judged = judged.warned();
        }
        if judged.is_enough() {
            // A later way is only looked at because the kitchen's own table was not met.
            let is_bound = ways[0].is_kitchens || heated.chosen.is_some() && ways[0].is_own;
            if nth > 0 && is_bound {
                let row = way.tables[0].row().clone();
                if !way.is_known && !heated.is_approved {
                    // One of the place was read, and so was what it is for: there is nothing to decide.
                    if !way.is_own {
                        undecided.get_or_insert(row);
                    }
                    continue;
                }
                let says = CookSays::ByAnother { row: row.clone() };
                judged = judged.with([Finding::new(Gravity::Warn, says, [row])]);
            }
            return Ok(verdict(judged, false, rows));
        }
        missed.push((&way.tables[..], judged.clone()));
        let is_nearer = |known: &Judgement| judged.missing < known.missing;
        let counts = way.is_own && way.is_known && judged.missing.is_some() && judged.refuses();
        if counts && near.as_ref().is_none_or(is_nearer) {
            near = Some(judged.clone());
        }
        // What another table leaves open does not open what the first one shuts.
        first.get_or_insert(judged);
    }
    let none = || {
        let says = CookSays::NoTable {
            food: heated.class(),
        };
        Judgement::decide(Finding::new(Gravity::Warn, says, []))
    };
    let mut judged = first.unwrap_or_else(none);
    // Where the first says that no time is long enough, another of the place's own is told that some more time meets.
    if judged.refuses() && judged.missing.is_none() {
        judged = near.unwrap_or(judged);
    }
    if let Some(row) = undecided {
        let says = CookSays::NotDecided { row: row.clone() };
        judged = judged
            .warned()
            .with([Finding::new(Gravity::Warn, says, [row])]);
    } else if !judged.refuses() {
        let floor = |table: &HeatTable| match heated.record {
            HeatRecord::Logged(log) => logged(log, table, rules, rows),
            HeatRecord::Held(cook) => one(&cook, table, rows),
            HeatRecord::Boiled(length) => boiled(heated, length, rules, rows),
        };
        judged = none_met(judged, missed, rules, rows, floor);
    }
    let judged = judged.with(heated.says_unknown(rules));
    Ok(verdict(judged.with(heated.says_pierced()), false, rows))
}

fn verdict(judgement: Judgement, has_boiled: bool, rows: &Rows) -> HeatVerdict {
    let proof = judgement.is_enough().then(|| {
        let mut met: Vec<RowId> = Vec::new();
        for row in judgement.findings.iter().flat_map(|finding| &finding.rows) {
            if !met.contains(row) {
                met.push(row.clone());
            }
        }
        Proof {
            has_boiled,
            is_confirmed: met.iter().all(|row| rows.is_confirmed(row)),
            rows: met,
        }
    });
    HeatVerdict { judgement, proof }
}

fn judge(heated: &Heated<'_>, way: &Way<'_>, rules: &HeatRules, rows: &Rows) -> Judgement {
    let each = way.tables.iter().map(|table| match heated.record {
        HeatRecord::Held(cook) => one(&cook, table, rows),
        HeatRecord::Logged(log) => logged(log, table, rules, rows),
        HeatRecord::Boiled(length) => boiled(heated, length, rules, rows),
    });
    let judged = each.reduce(Judgement::and);
    let judged = judged.expect("a way has a table");
    match heated.record {
        HeatRecord::Logged(log) => looked_over(judged, log, &way.tables, rules),
        _ => judged,
    }
}

/// A pot that boiled: common practice for what is liquid or small, and no word about a piece's middle.
fn boiled(heated: &Heated<'_>, length: TimeDelta, rules: &HeatRules, rows: &Rows) -> Judgement {
    let Some(rule) = &rules.boiling else {
        let food = heated.class();
        let says = CookSays::NoTable { food };
        return Judgement::decide(Finding::new(Gravity::Warn, says, []));
    };
    let row = &rule.minutes.row;
    if let Some(food) = heated.food.filter(|food| rule.not_for.contains(food)) {
        let says = CookSays::BoiledPiece { food };
        return Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]));
    }
    if let Some(piece) = heated.piece {
        let piece = piece.clone();
        let says = CookSays::BoiledWhole { piece };
        return Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]));
    }
    let least = minutes(rule.minutes.value);
    if length < least {
        let says = CookSays::BoiledShort {
            boiled: length,
            least,
        };
        return Judgement::short(Some(least - length), Finding::against(rows, row, says));
    }
    let says = CookSays::Boiled {
        boiled: length,
        least,
    };
    let gravity = match rows.is_confirmed(row) {
        true => Gravity::Note,
        false => Gravity::Warn,
    };
    Judgement::enough(Finding::new(gravity, says, [row.clone()]))
}
