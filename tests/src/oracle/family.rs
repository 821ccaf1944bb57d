//! Which lot was made from which, by brute force.

use super::{Book, Root};
use std::collections::{BTreeMap, BTreeSet};

/// Shares by animal; empty for a lot without any.
pub type Shares = BTreeMap<String, f64>;

impl Book {
    /// What went into a lot: lots and milligrams.
    pub fn inputs(&self, lot: &str) -> Vec<(&str, i64)> {
        let deed = self.lots[lot].deed;
        let used = self.of_deed(deed).filter(|entry| entry.account == "used");
        used.map(|entry| (entry.lot.as_str(), entry.mg)).collect()
    }

    /// The shares of every lot, each from those of its inputs, in the order in which lots were made.
    pub fn all_shares(&self) -> BTreeMap<&str, Shares> {
        let mut in_order: Vec<&String> = self.lots.keys().collect();
        in_order.sort_by_key(|code| self.lots[*code].deed);
        let mut all: BTreeMap<&str, Shares> = BTreeMap::new();
        for code in in_order {
            let shares = match &self.lots[code].root {
                Some(Root::Animal(animal)) => Shares::from([(animal.clone(), 1.0)]),
                Some(Root::Bought) => Shares::new(),
                None => {
                    let inputs = self.inputs(code);
                    let with_animal: Vec<_> = inputs
                        .iter()
                        .filter(|(input, _)| !all[input].is_empty())
                        .collect();
                    let total: i64 = with_animal.iter().map(|(_, mg)| mg).sum();
                    let mut mixed = Shares::new();
                    for (input, mg) in with_animal {
                        for (animal, share) in &all[input] {
                            *mixed.entry(animal.clone()).or_default() +=
                                share * *mg as f64 / total as f64;
                        }
                    }
                    mixed
                }
            };
            all.insert(code, shares);
        }
        all
    }

    /// The share of a starting lot in every lot: 1 in itself, carried on as shares are.
    pub fn shares_of(&self, start: &str, all: &BTreeMap<&str, Shares>) -> BTreeMap<String, f64> {
        let mut in_order: Vec<&String> = self.lots.keys().collect();
        in_order.sort_by_key(|code| self.lots[*code].deed);
        let mut of_start: BTreeMap<String, f64> = BTreeMap::from([(start.to_owned(), 1.0)]);
        for code in in_order {
            if code == start || self.lots[code].root.is_some() {
                continue;
            }
            let inputs = self.inputs(code);
            let total: i64 = inputs
                .iter()
                .filter(|(input, _)| !all[input].is_empty())
                .map(|(_, mg)| mg)
                .sum();
            let parts = inputs.iter().filter(|(input, _)| !all[input].is_empty());
            let share: f64 = parts
                .map(|(input, mg)| {
                    of_start.get(*input).copied().unwrap_or(0.0) * *mg as f64 / total as f64
                })
                .sum();
            of_start.insert(code.clone(), share);
        }
        of_start
    }

    /// Every lot made from `start`, voided ones left out: relaxed until nothing changes.
    pub fn descendants(&self, start: &str) -> BTreeSet<String> {
        let mut reached = BTreeSet::from([start.to_owned()]);
        loop {
            let before = reached.len();
            for code in self.lots.keys().filter(|code| !self.is_void(code)) {
                if self
                    .inputs(code)
                    .iter()
                    .any(|(input, _)| reached.contains(*input))
                {
                    reached.insert(code.clone());
                }
            }
            if reached.len() == before {
                reached.remove(start);
                return reached;
            }
        }
    }

    /// Every bought-in lot in a lot.
    pub fn bought(&self, lot: &str) -> BTreeSet<String> {
        let mut seen = BTreeSet::new();
        let mut open = vec![lot.to_owned()];
        let mut bought = BTreeSet::new();
        while let Some(code) = open.pop() {
            if !seen.insert(code.clone()) {
                continue;
            }
            if self.lots[&code].root == Some(Root::Bought) {
                bought.insert(code.clone());
            }
            open.extend(
                self.inputs(&code)
                    .iter()
                    .map(|(input, _)| (*input).to_owned()),
            );
        }
        bought
    }
}
