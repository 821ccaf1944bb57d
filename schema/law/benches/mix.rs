//! Date and statement of a mix of 200 lots with recipes nested five deep, the facts in memory.
//! The floor beside it walks the same parts once and adds up their weights.
//!
//! `cargo bench -p law`

use domain::dates::{KeepingRule, Making, PartDate};
use domain::grams::Grams;
use domain::ingredients::{Ingredient, of_step};
use domain::product::{Keeping, Product};
use domain::statement::{Food, StatementStyle, write};
use domain::words::{Allergen, DeedKind, KeepFrom, ProductKind, Profile, State};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, LazyLock};

static LAW: LazyLock<law::Shipped> = LazyLock::new(|| law::shipped().expect("the law reads"));

fn main() {
    // As for the other benches: to see that it still runs.
    if std::env::args().any(|arg| arg == "--smallest") {
        divan::Divan::default().test_benches();
    } else {
        divan::main();
    }
}

/// The names of a product, made once and shared, as the list of products shares them.
static NAMES: LazyLock<Vec<Arc<BTreeMap<String, String>>>> = LazyLock::new(|| {
    let names = |nth: usize| {
        Arc::new(BTreeMap::from([
            ("en".to_owned(), format!("ingredient {nth}")),
            ("fr".to_owned(), format!("ingrédient {nth}")),
        ]))
    };
    (0..40).map(names).collect()
});

/// What went in: 200 lots, each with a recipe nested five deep, two parts at each turn.
fn inputs() -> Vec<Ingredient> {
    (0..200).map(|nth| part(nth, 5)).collect()
}

fn part(nth: usize, depth: u32) -> Ingredient {
    let parts = match depth {
        0 => Vec::new(),
        _ => vec![part(nth * 3 + 1, depth - 1), leaf(nth * 5 + 2)],
    };
    Ingredient { parts, ..leaf(nth) }
}

fn leaf(nth: usize) -> Ingredient {
    let product = nth % NAMES.len();
    Ingredient {
        product: format!("p{product}"),
        names: NAMES[product].clone(),
        grams: Grams::whole(i64::try_from(nth % 97 + 1).unwrap_or(1)),
        allergens: match product % 7 {
            0 => BTreeSet::from([Allergen::Wheat]),
            3 => BTreeSet::from([Allergen::Milk]),
            _ => BTreeSet::new(),
        },
        ..Ingredient::default()
    }
}

fn product() -> Product {
    Product {
        code: "mix".into(),
        kind: ProductKind::Cooked,
        storage: State::Chilled,
        keeping: Keeping {
            usual: Some(KeepingRule {
                days: 7,
                from: KeepFrom::Made,
                day_one_counts: true,
                freeze_day_counts: true,
            }),
            ..Keeping::default()
        },
        ..Product::unnamed()
    }
}

#[divan::bench]
fn date_and_statement(bencher: divan::Bencher<'_, '_>) {
    let law = LAW.laws.of(Profile::Us);
    let product = product();
    let day = "2026-06-20".parse().expect("a day");
    let parts: Vec<PartDate> = (0..200)
        .map(|nth| PartDate {
            shown: domain::says::Says::as_written(format!("lot {nth}")),
            date: Some(day + chrono::Days::new(nth % 9 + 1)),
            cap: None,
            is_raw_animal: true,
            was_frozen: false,
            is_undated: false,
        })
        .collect();
    bencher.with_inputs(inputs).bench_values(|inputs| {
        let dated = Making {
            product: &product,
            kind: DeedKind::Mix,
            day,
            parts: &parts,
            supplier: None,
            packaging: None,
            is_controlled: true,
            stable: None,
            is_killed: false,
            once_opened: None,
            approved: None,
            law,
            ready_keeps_its_day: false,
            as_it_happened: false,
            is_released: false,
            is_unfrozen_fish: false,
        }
        .date();
        let food = Food {
            name: "Mix".into(),
            parts: of_step("mix", inputs),
            ..Food::default()
        };
        let statement = write(
            &law.statements,
            &law.rows,
            &food,
            &["en", "fr"],
            StatementStyle::default(),
        );
        (dated, statement)
    });
}

/// The floor: every part is looked at once.
#[divan::bench]
fn walk_once(bencher: divan::Bencher<'_, '_>) {
    fn sum(parts: &[Ingredient]) -> Grams {
        parts.iter().map(|part| part.grams + sum(&part.parts)).sum()
    }
    bencher.with_inputs(inputs).bench_refs(|inputs| sum(inputs));
}
