//! Which tables may show that food is ready: those that were made for it.

use super::proof::Heated;
use super::rules::{Cooking, HeatRules, Lethality};
use super::says::CookSays;
use super::table::HeatTable;
use super::words::Food;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use crate::words::Species;

/// Tables that must all be met, and whether they are the place's own.
#[derive(Clone)]
pub(super) struct Way<'r> {
    /// The tables.
    pub(super) tables: Vec<&'r HeatTable>,
    /// Are all of them of the place?
    pub(super) is_own: bool,
    /// Are they those of the kitchen's code, by class?
    pub(super) is_kitchens: bool,
    /// Are all of them of the place, or for as much as one that is: the same, printed in another unit? None that has to
    /// be named.
    pub(super) is_known: bool,
}

impl Way<'_> {
    /// The tables of both.
    fn and(mut self, other: Self) -> Self {
        self.is_own &= other.is_own;
        self.is_known &= other.is_known;
        self.tables.extend(other.tables);
        self
    }
}

/// The class that it is judged by: of stuffed meat only some places have a row, elsewhere it is judged as
/// ground.
pub(super) fn class(heated: &Heated<'_>, rules: &HeatRules) -> Food {
    let has_bird = heated.species.iter().any(|species| species.is_bird());
    let mut cooking = rules.cooking.iter();
    let own = |cooking: &Cooking| cooking.holds(Food::Poultry, heated.code_year);
    match heated.class() {
        // What its list calls stuffed stays for a person to decide there.
        Food::Poultry if heated.food == Some(Food::Poultry) => Food::Poultry,
        Food::Poultry if !has_bird && !cooking.any(own) => Food::Ground,
        class => class,
    }
}

/// The tables that were made for it, the kitchen's own first.
pub(super) fn ways<'r>(heated: &Heated<'_>, rules: &'r HeatRules) -> Vec<Way<'r>> {
    let class = class(heated, rules);
    let cooking = rules.cooking.iter();
    let cooking = cooking.filter(|cooking| cooking.holds(class, heated.code_year));
    let own: Vec<&HeatTable> = cooking.map(|cooking| &cooking.table).collect();
    let mut ways = Vec::new();
    if !own.is_empty() {
        ways.push(Way {
            tables: own,
            is_own: true,
            is_known: true,
            is_kitchens: true,
        });
    }
    let others = || {
        let tables = rules.lethality.iter();
        tables.filter(|table| !table.only_if_chosen)
    };
    let (birds, meat): (Vec<Species>, Vec<Species>) =
        heated.species.iter().partition(|species| species.is_bird());
    let single = |table: &'r Lethality| Way {
        tables: vec![&table.table],
        is_own: table.place.is_none(),
        is_known: is_known(table, rules),
        is_kitchens: false,
    };
    match (class == Food::Poultry, birds.is_empty(), meat.is_empty()) {
        // Meat with poultry in it, or stuffed with it: no sooner ready than the bird alone would be.
        (true, false, false) => {
            let of_birds = of_birds(&birds, heated.fat, others());
            let with = others().filter(|table| table.with_poultry);
            ways.extend(with.filter_map(|table| Some(single(table).and(of_birds.clone()?))));
        }
        (true, _, true) => ways.extend(of_birds(&birds, heated.fat, others())),
        // Stuffed meat: no table but the kitchen's was made for it.
        (true, true, false) => {}
        // Microwaves heat unevenly: the place's own rule asks for a standing time, which no other table does.
        (false, ..) if class == Food::Microwaved && !ways.is_empty() => {}
        // What its product calls whole meat and the record calls ground or pumped: the kitchen's own table for that, and
        // none beside it that somebody took for whole meat.
        (false, ..) if heated.is_no_such_meat() && !ways.is_empty() => {}
        (false, ..) => {
            let fits = |table: &&Lethality| table.bird.is_none() && !table.not_for.contains(&class);
            ways.extend(others().filter(fits).map(single));
        }
    }
    // Of equal standing, the place's own first.
    ways.sort_by_key(|way| !way.is_own);
    ways
}

/// Is it of the place, or for the same lethality as one that is? Not one that was made for a bird.
fn is_known(table: &Lethality, rules: &HeatRules) -> bool {
    let same = |own: &Lethality| {
        own.place.is_none() && own.bird == table.bird && own.log.is_some() && own.log == table.log
    };
    table.place.is_none() || rules.lethality.iter().any(same)
}

/// The tables of chicken or turkey; of any other bird, or of several, both must be met.
fn of_birds<'r>(
    birds: &[Species],
    fat: Option<Percent>,
    tables: impl Iterator<Item = &'r Lethality> + Clone,
) -> Option<Way<'r>> {
    let kinds: Vec<Species> = match birds {
        [one @ (Species::Chicken | Species::Turkey)] => vec![*one],
        _ => vec![Species::Chicken, Species::Turkey],
    };
    let mut chosen: Vec<&Lethality> = Vec::with_capacity(kinds.len());
    for kind in kinds {
        let of_kind = tables.clone().filter(|table| table.bird == Some(kind));
        let fits = of_kind.filter(|table| match (table.fat_at_most, fat) {
            (None, _) => true,
            (Some(most), Some(fat)) => fat <= most,
            (Some(_), None) => false,
        });
        // The leanest that it is lean enough for; else the one for any.
        let any = Percent::new(100);
        chosen.push(fits.min_by_key(|table| table.fat_at_most.unwrap_or(any))?);
    }
    Some(Way {
        is_own: chosen.iter().all(|table| table.place.is_none()),
        is_known: chosen.iter().all(|table| table.place.is_none()),
        tables: chosen.iter().map(|table| &table.table).collect(),
        is_kitchens: false,
    })
}

/// The table that a cook named by its row.
pub(super) fn chosen<'r>(
    heated: &Heated<'_>,
    row: &RowId,
    rules: &'r HeatRules,
) -> Result<Way<'r>> {
    let class = class(heated, rules);
    let mut of_row = rules.cooking.iter().filter(|of| of.table.row() == row);
    if let Some(first) = of_row.clone().next() {
        let Some(own) = of_row.find(|cooking| cooking.food == class) else {
            return Err(not_for(row, first.food, class));
        };
        return Ok(Way {
            tables: vec![&own.table],
            is_own: true,
            is_known: true,
            is_kitchens: true,
        });
    }
    let table = rules.lethality.iter().find(|of| of.table.row() == row);
    let Some(table) = table else {
        let says = CookSays::NoRow { row: row.clone() };
        return Err(Refusal::cannot_be("standard", says));
    };
    let has_bird = class == Food::Poultry;
    let birds: Vec<Species> = birds_of(heated);
    let is_mixed = !birds.is_empty() && birds.len() < heated.species.len();
    let fits = match table.bird {
        Some(bird) => heated.species.iter().all(|of| *of == bird) && has_bird,
        None if has_bird => table.with_poultry && is_mixed,
        None => !table.not_for.contains(&class),
    };
    let too_fat = table
        .fat_at_most
        .is_some_and(|most| heated.fat.is_none_or(|fat| fat > most));
    if !fits || too_fat {
        let says = CookSays::NotMadeFor { row: row.clone() };
        return Err(Refusal::cannot_be("standard", says));
    }
    let way = Way {
        tables: vec![&table.table],
        is_own: table.place.is_none(),
        // One that only whoever names it goes by asks for less than the kitchen's own.
        is_known: is_known(table, rules) && !table.only_if_chosen,
        is_kitchens: false,
    };
    if !is_mixed {
        return Ok(way);
    }
    let tables = rules.lethality.iter();
    let tables = tables.filter(|table| !table.only_if_chosen);
    let none = || Refusal::cannot_be("standard", CookSays::NotMadeFor { row: row.clone() });
    let of_birds = of_birds(&birds, heated.fat, tables).ok_or_else(none)?;
    Ok(way.and(of_birds))
}

fn birds_of(heated: &Heated<'_>) -> Vec<Species> {
    let birds = heated.species.iter().copied();
    birds.filter(|species| species.is_bird()).collect()
}

fn not_for(row: &RowId, made_for: Food, food: Food) -> Refusal {
    let says = CookSays::OtherFood {
        row: row.clone(),
        made_for,
        food,
    };
    Refusal::cannot_be("standard", says)
}
