//! What may be ready to eat, and how long it may keep, by brute force.

use super::{Book, Root};
use std::collections::BTreeMap;

impl Book {
    /// Which lots may be ready to eat: each was heated through, or everything of an animal that went into it
    /// may have been ready before.
    pub fn all_ready(&self) -> BTreeMap<&str, bool> {
        let mut in_order: Vec<&String> = self.lots.keys().collect();
        in_order.sort_by_key(|code| self.lots[*code].deed);
        let mut ready: BTreeMap<&str, bool> = BTreeMap::new();
        for code in in_order {
            let lot = &self.lots[code];
            let may_be = match lot.root {
                Some(Root::Animal(_)) => false,
                Some(Root::Bought) => !lot.has_species,
                None => lot.heated || self.inputs(code).iter().all(|(input, _)| ready[input]),
            };
            ready.insert(code, may_be);
        }
        ready
    }

    /// The lots whose day binds a lot: ready food that it was made of, unless raw food of an animal was
    /// cooked with it. Lots that were ever moved are left out, because in the cold the days stand still.
    pub fn binding<'a>(&'a self, lot: &str, ready: &BTreeMap<&str, bool>) -> Vec<&'a str> {
        let inputs = self.inputs(lot);
        let cooked_anew = self.lots[lot].heated && inputs.iter().any(|(input, _)| !ready[input]);
        if cooked_anew || self.moved.contains(lot) {
            return Vec::new();
        }
        let inputs = inputs.into_iter().map(|(input, _)| input);
        let binds = |input: &&str| {
            ready[input] && self.lots[*input].root.is_none() && !self.moved.contains(*input)
        };
        inputs.filter(binds).collect()
    }
}
