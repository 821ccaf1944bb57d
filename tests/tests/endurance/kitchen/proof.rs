//! What a lot claims, against what was done: that it is ready, and how long it keeps.

use super::Kitchen;
use serde_json::Value;
use std::collections::BTreeMap;

impl Kitchen {
    /// No lot is ready without a proof in its ancestry; no date is later than that of the ready food which it
    /// was made of, unless raw food was cooked with it.
    pub fn compare_proof(&self, lots: &BTreeMap<&str, Value>) {
        let ready = self.book.all_ready();
        for (code, lot) in lots {
            if self.book.is_void(code) {
                continue;
            }
            let is_ready = lot["condition"]["is"] == "ready";
            assert!(!is_ready || ready[code], "{code} has no proof: {lot}");
            let Some(day) = last_day(lot) else { continue };
            for input in self.book.binding(code, &ready) {
                let before = last_day(&lots[input]);
                assert!(
                    before.is_none_or(|before| day <= before),
                    "{code} of {day} outlives {input} of {before:?}"
                );
            }
        }
    }
}

/// The last day of any of its packs.
fn last_day(lot: &Value) -> Option<&str> {
    let packs = lot["packs"].as_array().unwrap().iter();
    packs.filter_map(|pack| pack["use_by"].as_str()).max()
}
