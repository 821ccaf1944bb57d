//! Running one vector: which area, which task, what went in.

mod cures;
mod dates;
mod duties;
mod heat;
mod statements;
mod trade;

use law::Shipped;
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

/// What went in, by name. Every value must be asked for: a typing error in the table fails.
pub struct Input {
    values: BTreeMap<String, String>,
    asked: RefCell<BTreeSet<String>>,
}

impl Input {
    pub fn parse(text: &str, at: &str) -> Input {
        let pairs = text
            .split(';')
            .map(str::trim)
            .filter(|pair| !pair.is_empty());
        let values = pairs
            .map(|pair| {
                let (key, value) = pair
                    .split_once('=')
                    .unwrap_or_else(|| panic!("{at}: {pair:?} is not key=value"));
                (key.trim().to_owned(), value.trim().to_owned())
            })
            .collect();
        Input {
            values,
            asked: RefCell::default(),
        }
    }

    /// A value that may be missing.
    pub fn maybe(&self, key: &str) -> Option<&str> {
        self.asked.borrow_mut().insert(key.to_owned());
        self.values.get(key).map(String::as_str)
    }

    /// A value that must be there.
    pub fn text(&self, key: &str) -> &str {
        self.maybe(key)
            .unwrap_or_else(|| panic!("the input lacks {key}"))
    }

    /// A value of any type that reads text.
    pub fn get<T: std::str::FromStr>(&self, key: &str) -> T {
        let text = self.text(key);
        text.parse()
            .unwrap_or_else(|_| panic!("{key}={text} does not read"))
    }

    /// A value of any type that reads text, if it is there.
    pub fn try_get<T: std::str::FromStr>(&self, key: &str) -> Option<T> {
        self.maybe(key).map(|_| self.get(key))
    }

    pub fn all_used(&self, at: &str) {
        let asked = self.asked.borrow();
        let left: Vec<&String> = self
            .values
            .keys()
            .filter(|key| !asked.contains(*key))
            .collect();
        assert!(left.is_empty(), "{at}: nobody asked for {left:?}");
    }
}

/// What comes out, as text.
pub fn run(area: &str, task: &str, input: &Input, shipped: &Shipped) -> String {
    let run = match area {
        "cures" => cures::run,
        "dates" => dates::run,
        "duties" => duties::run,
        "heat" => heat::run,
        "statements" => statements::run,
        "trade" => trade::run,
        _ => panic!("no area {area}"),
    };
    run(task, input, shipped)
}
