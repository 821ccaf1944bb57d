//! What goes into a pot: for each part of a recipe the packs on hand, those that have to go first, first.

use super::bench::{self, Units};
use super::bench_says::BenchSays;
use super::spoken::Words;
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::read::names::Names;
use chrono::NaiveDate;
use domain::cure::{Alkali, Strength};
use domain::family::{Lists, Relative, mixture_read};
use domain::lot::{Lot, Pack, brief};
use domain::product::{InCure, Part, Product};
use domain::words::{CurePart, Natural, ProductKind, State, StepKind};
use serde_json::{Value, json};
use store::family::Extent;
use store::{Conn, list_lots};
use words::Mass;

/// The most lots of one page, and the most packs that are offered for one part.
const MOST_LOTS: i64 = 300;
const MOST_PACKS: usize = 6;

/// A part of what is made, with what is on hand of it.
pub struct PotPart {
    /// Its product.
    pub product: String,
    /// What it is called.
    pub name: String,
    /// Its weight in the recipe, in grams; nothing where there is no recipe.
    pub grams: String,
    /// What it is in a cure: `curing-salt`, `salt`, `sugar`, or nothing.
    pub role: &'static str,
    /// The unit in which it is typed: pounds for meat where somebody weighs in them, else grams.
    pub unit: &'static str,
    /// Where its strength stands on the list, of a curing salt, for who may change it.
    pub strength_at: Option<String>,
    /// The packs on hand.
    pub rows: Vec<PotRow>,
    /// Where none is: how to come by some, the likelier way first; the address and the key of its words.
    pub ways: Vec<(String, &'static str)>,
}

/// A pack that may go in.
pub struct PotRow {
    /// Its place among all rows.
    pub nth: usize,
    /// `CODE/2`, or the code alone.
    pub lot: String,
    /// The same for the eye, with what is left and until when it keeps.
    pub shown: String,
    /// What is left, in grams.
    pub left: String,
    /// The same as it would be typed.
    pub typed: String,
    /// Is it in from the start?
    pub chosen: bool,
    /// How strong it is, where it is a curing salt.
    pub strength: Option<String>,
}

/// What is added without a lot of its own.
pub fn is_water(product: &Product) -> bool {
    product.keeping.stable_as == Some(Natural::Water)
}

/// The parts of a recipe, with what is on hand; of what has no recipe, the lot that was brought.
pub fn parts(
    reading: &LoadedFamily<'_>,
    names: &Names,
    kind: StepKind,
    recipe: &[Part],
    brought: Option<&str>,
    today: NaiveDate,
) -> Vec<PotPart> {
    let words = Words::of(names);
    let mut all: Vec<&Relative> = reading.family.lots.values().collect();
    all.sort_by_key(|of| of.lot.id);
    let mut parts = Vec::new();
    let mut nth = 0;
    let lists = &reading.standing.lists;
    for part in recipe {
        let listed = lists.products.get(&part.product);
        if listed.is_some_and(|product| is_water(product)) {
            continue;
        }
        let unit = unit(&words, listed.map(|product| &**product));
        let words = weighed_in(words, unit);
        let of = all.iter().filter(|of| of.lot.product.code == part.product);
        let mut rows = packs(of.copied(), kind, today);
        rows.sort_by_key(|(of, pack)| order(of, pack, brought));
        rows.truncate(MOST_PACKS);
        let rows = rows.into_iter().map(|(of, pack)| {
            nth += 1;
            row(&words, nth - 1, of, pack, brought, unit)
        });
        parts.push(PotPart {
            rows: rows.collect(),
            ways: Vec::new(),
            unit,
            strength_at: None,
            role: listed.map_or("", |product| role(product)),
            name: names.product(&part.product),
            grams: bench::in_grams(part.grams),
            product: part.product.clone(),
        });
    }
    let is_in = |code: &str| recipe.iter().any(|part| part.product == code);
    let code = |of: &&&Relative| brought == Some(of.lot.code.to_string().as_str());
    if let Some(of) = all
        .iter()
        .find(code)
        .filter(|of| !is_in(&of.lot.product.code))
    {
        let unit = unit(&words, Some(&of.lot.product));
        let words = weighed_in(words, unit);
        let mut rows = packs(std::iter::once(*of), kind, today);
        rows.truncate(MOST_PACKS);
        let rows = rows.into_iter().enumerate().map(|(at, (of, pack))| PotRow {
            chosen: at == 0,
            ..row(&words, nth + at, of, pack, brought, unit)
        });
        parts.insert(
            0,
            PotPart {
                rows: rows.collect(),
                ways: Vec::new(),
                unit,
                strength_at: None,
                role: "",
                name: names.product(&of.lot.product.code),
                grams: "0".to_owned(),
                product: of.lot.product.code.clone(),
            },
        );
    }
    parts
}

/// The lots on hand of some products, with their packs and readings.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn load<'a>(
    app: &'a crate::app::App,
    conn: &mut Conn,
    recipe: &[Part],
    brought: Option<i32>,
) -> Result<LoadedFamily<'a>> {
    let codes: Vec<&str> = recipe.iter().map(|part| part.product.as_str()).collect();
    let mut lots = list_lots::on_hand_of(conn, &codes, MOST_LOTS)?;
    lots.extend(brought.filter(|lot| !lots.contains(lot)));
    LoadedFamily::load(app, conn, &lots, Extent::ALONE)
}

/// The packs that may go in: on hand, in their day, and nothing stands in their way that a form can see. The
/// service asks again, and says what it refuses.
fn packs<'a>(
    lots: impl Iterator<Item = &'a Relative>,
    kind: StepKind,
    today: NaiveDate,
) -> Vec<(&'a Relative, &'a Pack)> {
    let in_day = |pack: &&Pack| pack.now.use_by.is_none_or(|day| today <= day);
    let cures_on = matches!(
        kind,
        StepKind::Cure | StepKind::Smoke | StepKind::Cook | StepKind::Render
    );
    let goes_in = |lot: &Lot| {
        let stopped = lot.stops.iter().any(|placed| placed.ended.is_none());
        !lot.voided && !stopped && (cures_on || !lot.waits_for_release())
    };
    lots.filter(|of| goes_in(&of.lot))
        .flat_map(|of| {
            brief::left(&of.lot.packs)
                .filter(in_day)
                .map(move |pack| (of, pack))
        })
        .collect()
}

/// The lot that was brought first, what is frozen last, and of the rest what has to go first.
fn order(of: &Relative, pack: &Pack, brought: Option<&str>) -> (bool, bool, NaiveDate, i32, u32) {
    let is_brought = brought == Some(of.lot.code.to_string().as_str());
    let frozen = pack.now.state == State::Frozen && !is_brought;
    let day = pack.now.use_by.unwrap_or(NaiveDate::MAX);
    (!is_brought, frozen, day, of.lot.id.0, pack.number)
}

/// How a part is typed. Salts and spices lie on the small scale, which shows grams everywhere.
fn unit(words: &Words, product: Option<&Product>) -> &'static str {
    let is_meat = |of: &Product| of.species.is_some() && of.kind != ProductKind::Ingredient;
    match product.is_some_and(is_meat) {
        true => Units::of(words).pot,
        false => "g",
    }
}

/// Words that tell weights in the unit in which they are typed: never two units for one thing.
fn weighed_in(mut words: Words, unit: &str) -> Words {
    if unit == "g" {
        words.0.mass = Mass::Metric;
    }
    words
}

fn row(
    words: &Words,
    nth: usize,
    of: &Relative,
    pack: &Pack,
    brought: Option<&str>,
    unit: &str,
) -> PotRow {
    let lot = &of.lot;
    let until = match (pack.now.use_by, pack.now.state) {
        (_, State::Frozen) => words.headed(State::Frozen.says()),
        (Some(day), _) => words.day(day),
        (None, _) => String::new(),
    };
    let left = words.say(BenchSays::Left {
        weight: pack.now.left,
        until,
    });
    let left = left.trim_end_matches([',', ' ']);
    let code = lot.code.to_string();
    PotRow {
        nth,
        shown: format!("{}, {left}", lot.shown(pack.number)),
        left: bench::in_grams(pack.now.left),
        typed: bench::typed(words, pack.now.left, unit),
        chosen: brought == Some(code.as_str()),
        strength: lot.product.curing_salt().map(|_| strength(of).to_string()),
        lot: match lot.pack_count {
            1 => code,
            _ => format!("{code}/{}", pack.number),
        },
    }
}

/// What a product is in a cure.
fn role(product: &Product) -> &'static str {
    match product.part.in_cure {
        Some(InCure::CuringSalt(_)) => "curing-salt",
        Some(InCure::Other(CurePart::Salt)) => "salt",
        Some(InCure::Other(CurePart::Sugar)) => "sugar",
        None if product.species.is_some() => "meat",
        _ => "",
    }
}

/// How strong a lot of curing salt is, by its own bag.
fn strength(of: &Relative) -> Value {
    let last = |quantity| {
        let mut read = of.readings.iter().rev();
        let found = read.find(|read| read.quantity == quantity);
        found.map(|read| read.millionths)
    };
    told(&mixture_read(&of.lot.product, last).strength)
}

/// A strength, as the call that plans a cure takes it.
pub fn told(strength: &Strength) -> Value {
    let percent = |of: Option<domain::measure::Percent>| {
        of.and_then(|of| {
            of.number()
                .normalize()
                .to_string()
                .parse::<serde_json::Number>()
                .ok()
        })
    };
    let alkali = |of: Alkali| of.as_str();
    let mut told = json!({});
    let figures = [
        ("nitrite_percent", percent(strength.nitrite)),
        ("nitrate_percent", percent(strength.nitrate)),
        ("salt_percent", percent(strength.salt)),
    ];
    for (name, figure) in figures {
        if let Some(figure) = figure {
            told[name] = Value::Number(figure);
        }
    }
    if strength.nitrite.is_some() {
        told["nitrite_of"] = json!(alkali(strength.nitrite_of));
    }
    if strength.nitrate.is_some() {
        told["nitrate_of"] = json!(alkali(strength.nitrate_of));
    }
    told
}

/// What the plan of a cure is asked with: the class and the way. Without a curing salt there is nothing to plan.
pub fn plan(product: &Product, parts: &[PotPart]) -> Option<String> {
    let cured = product.cured.cure?;
    parts.iter().find(|part| part.role == "curing-salt")?;
    let mut asked = json!({ "class": cured.class.as_str(), "method": cured.method.as_str() });
    if let Some(heated) = cured.heated {
        asked["heated"] = json!(heated);
    }
    Some(asked.to_string())
}

/// How strong the curing salt of the list is, for want of a lot of it.
pub fn listed_strength(lists: &Lists, parts: &[PotPart]) -> String {
    let salt = parts.iter().find(|part| part.role == "curing-salt");
    let salt = salt.and_then(|part| lists.products.get(&part.product));
    let strength = salt.and_then(|product| product.curing_salt());
    strength.map_or_else(|| "{}".to_owned(), |of| told(&of).to_string())
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::words::Species;
    use words::{Language, Speech};

    fn of(kind: ProductKind, species: Option<Species>) -> Product {
        Product {
            kind,
            species,
            ..Product::unnamed()
        }
    }

    #[test]
    fn meat_is_typed_as_somebody_weighs_it_and_salt_in_grams() {
        let metric = Words(Speech::in_language(Language::English));
        let mut pounds = metric;
        pounds.0.mass = Mass::Pounds;
        let belly = of(ProductKind::Cut, Some(Species::Pig));
        let salt = of(ProductKind::Ingredient, None);
        let casings = of(ProductKind::Ingredient, Some(Species::Pig));
        assert_eq!(unit(&metric, Some(&belly)), "g");
        assert_eq!(unit(&pounds, Some(&belly)), "lb");
        assert_eq!(unit(&pounds, Some(&salt)), "g");
        assert_eq!(unit(&pounds, Some(&casings)), "g");
        // What is left is told as it is typed.
        let left = domain::grams::Grams::from_milligrams(1_020_583);
        assert_eq!(bench::typed(&pounds, left, "lb"), "2.25");
        assert_eq!(weighed_in(pounds, "g").grams(left), metric.grams(left));
        assert_eq!(weighed_in(pounds, "lb").grams(left), "2.25\u{a0}lb");
    }
}
