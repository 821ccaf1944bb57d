//! Which place suits what is put away, as far as the place's code or its limits tell: proposed where nobody has put
//! such a thing away yet. A place that is known not to suit is never proposed.

use domain::family::{Listed, Lists};
use domain::measure::Temperature;
use domain::product::Product;
use domain::words::{ProductKind, State};

/// What lies at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Lies {
    Frozen,
    Cold,
    /// Cold, and ready to eat.
    Cooked,
    /// At room temperature.
    Dry,
    /// Carcasses.
    Rail,
    /// What is in salt, and the salts themselves in some kitchens.
    Salted,
    /// What hangs or dries there.
    Hung,
}

/// By a part of its code: those that a kitchen is offered while it is set up, and what else such places are called.
const BY_CODE: [(&str, Lies); 16] = [
    ("freez", Lies::Frozen),
    ("congel", Lies::Frozen),
    ("surgel", Lies::Frozen),
    ("dry-store", Lies::Dry),
    ("pantry", Lies::Dry),
    ("reserve-seche", Lies::Dry),
    ("epicerie", Lies::Dry),
    ("cooked", Lies::Cooked),
    ("cuit", Lies::Cooked),
    ("walk-in", Lies::Cold),
    ("rail", Lies::Rail),
    ("cure-room", Lies::Hung),
    ("salt-room", Lies::Salted),
    ("drying", Lies::Hung),
    ("sechoir", Lies::Hung),
    ("saloir", Lies::Salted),
];

/// Above this no place is called cold: common practice, no source.
const COLD_MOST: i64 = 10;

fn lies(code: &str, place: &Listed) -> Option<Lies> {
    let warmer = |celsius: i64, most| Temperature::celsius(celsius).against(&most).is_lt();
    let by_code = BY_CODE.iter().find(|(part, _)| of_words(code, part));
    let by_limit = || {
        let most = place.bounds.most?;
        match (warmer(0, most), warmer(COLD_MOST, most)) {
            (false, _) => Some(Lies::Frozen),
            (_, false) => Some(Lies::Cold),
            _ => None,
        }
    };
    by_code.map(|(_, lies)| *lies).or_else(by_limit)
}

/// Does a word of the code, or several, begin so?
fn of_words(code: &str, part: &str) -> bool {
    code.starts_with(part) || code.contains(&format!("-{part}"))
}

/// Does a place suit a product? Nothing where neither code nor limits tell.
pub fn suits(product: &Product, code: &str, place: &Listed) -> Option<bool> {
    let lies = lies(code, place)?;
    if lies == Lies::Salted && product.storage == State::Ambient {
        return None;
    }
    let hangs = lies == Lies::Hung || lies == Lies::Salted;
    Some(match product.storage {
        State::Frozen => lies == Lies::Frozen,
        State::Ambient => lies == Lies::Dry || hangs && product.is_hung(),
        State::Chilled | State::Hot => match lies {
            Lies::Cold => true,
            Lies::Cooked => !product.raw,
            Lies::Rail => product.kind == ProductKind::Carcass,
            Lies::Hung | Lies::Salted => product.is_hung(),
            Lies::Frozen | Lies::Dry => false,
        },
    })
}

/// Where a product is put: where it was put last, unless that is known to be wrong; else a place that suits, of those
/// where such things were put lately before all others. Where none is known to, one of the former of which nothing is
/// known, and for cold food any such.
pub fn proposed<'a>(
    lists: &'a Lists,
    product: &Product,
    own: Option<&'a str>,
    alike: &[&'a str],
) -> Option<&'a str> {
    let suits = |code: &str| suits(product, code, lists.places.get(code)?);
    let known = |code: &&str| lists.places.contains_key(*code);
    let stores = || {
        let keeps = |(_, place): &(&String, &Listed)| place.keeps_food && !place.is_counter;
        let all = lists.places.iter().filter(keeps);
        all.map(|(code, _)| code.as_str())
    };
    let alike = || alike.iter().copied().filter(known);
    let cold = stores().filter(|_| product.storage == State::Chilled);
    own.filter(known)
        .filter(|code| suits(code) != Some(false))
        .or_else(|| {
            alike()
                .chain(stores())
                .find(|code| suits(code) == Some(true))
        })
        .or_else(|| alike().chain(cold).find(|code| suits(code).is_none()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::heat::Bounds;

    fn lists(codes: &[&str]) -> Lists {
        let mut lists = Lists::default();
        for code in codes {
            let place = Listed {
                keeps_food: true,
                is_counter: *code == "case",
                ..Listed::default()
            };
            lists.places.insert((*code).to_owned(), place);
        }
        lists
    }

    fn of(storage: State, raw: bool) -> Product {
        Product {
            storage,
            raw,
            ..Product::unnamed()
        }
    }

    #[test]
    fn salt_goes_to_the_dry_store_or_nowhere() {
        let salt = of(State::Ambient, false);
        let all = lists(&["case", "cooked", "cure-room", "dry-store", "walk-in"]);
        assert_eq!(proposed(&all, &salt, None, &[]), Some("dry-store"));
        // Where it was put lately counts, but for a place that does not suit.
        assert_eq!(
            proposed(&all, &salt, Some("cooked"), &[]),
            Some("dry-store")
        );
        let alike = ["cooked", "cure-room", "b"];
        assert_eq!(proposed(&all, &salt, None, &alike), Some("dry-store"));
        assert_eq!(
            proposed(&lists(&["b", "cooked"]), &salt, None, &alike),
            Some("b")
        );
        // Some kitchens keep their salts where they salt.
        assert_eq!(
            proposed(&lists(&["salt-room"]), &salt, Some("salt-room"), &[]),
            Some("salt-room")
        );
        assert_eq!(proposed(&lists(&["salt-room"]), &salt, None, &[]), None);
        assert_eq!(
            proposed(&lists(&["cooked", "walk-in"]), &salt, None, &[]),
            None
        );
        assert_eq!(proposed(&lists(&["a"]), &salt, Some("a"), &[]), Some("a"));
        assert_eq!(proposed(&lists(&["a"]), &salt, None, &[]), None);
    }

    #[test]
    fn what_is_packed_cold_hangs_nowhere_and_raw_meat_lies_with_nothing_cooked() {
        let all = lists(&["case", "cooked", "cure-room", "freezer", "walk-in"]);
        let (ready, raw) = (of(State::Chilled, false), of(State::Chilled, true));
        assert_eq!(
            proposed(&all, &ready, Some("cure-room"), &[]),
            Some("cooked")
        );
        assert_eq!(proposed(&all, &ready, Some("case"), &[]), Some("case"));
        assert_eq!(proposed(&all, &raw, Some("cooked"), &[]), Some("walk-in"));
        assert_eq!(
            proposed(&all, &of(State::Frozen, true), None, &[]),
            Some("freezer")
        );
        assert_eq!(
            proposed(&lists(&["cooler-1", "drying-room"]), &ready, None, &[]),
            Some("cooler-1")
        );
    }

    #[test]
    fn limits_tell_where_the_code_does_not() {
        let mut all = lists(&["a", "b"]);
        let most = |celsius: i64| Bounds {
            most: Some(Temperature::celsius(celsius).into()),
            least: None,
        };
        all.places.get_mut("a").expect("a place").bounds = most(-18);
        assert_eq!(
            proposed(&all, &of(State::Chilled, true), None, &[]),
            Some("b")
        );
        all.places.get_mut("b").expect("a place").bounds = most(4);
        assert_eq!(
            proposed(&all, &of(State::Ambient, false), Some("b"), &[]),
            None
        );
        assert_eq!(
            proposed(&all, &of(State::Frozen, true), None, &[]),
            Some("a")
        );
    }
}
