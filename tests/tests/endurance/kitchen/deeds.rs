//! What can happen in a kitchen, at random, and what the book says of it.

use super::{Kitchen, grams};
use rand::RngExt;
use serde_json::{Value, json};
use stories::oracle::{Lot, Root};

impl Kitchen {
    fn chance(&mut self, percent: u32) -> bool {
        self.random.random_range(0..100) < percent
    }

    fn code(&mut self) -> Option<String> {
        let codes: Vec<&String> = self.book.lots.keys().collect();
        if codes.is_empty() {
            return None;
        }
        // Newer lots more often, so that families grow deep.
        let from = if self.random.random_range(0..3) == 0 {
            0
        } else {
            codes.len().saturating_sub(25)
        };
        let mut by_age: Vec<&String> = codes;
        by_age.sort_by_key(|code| self.book.lots[*code].deed);
        Some(by_age[self.random.random_range(from..by_age.len())].clone())
    }

    /// A pack at random, and what the book says is left in it.
    fn pack(&mut self) -> Option<(String, usize, i64)> {
        let code = self.code()?;
        let pack = self
            .random
            .random_range(1..=self.book.lots[&code].packs.len());
        let left = self.book.left(&code, pack);
        Some((code, pack, left))
    }

    fn keep_lot(&mut self, code: &str, lot: Lot) {
        assert!(
            self.book.lots.insert(code.to_owned(), lot).is_none(),
            "{code} was given out twice"
        );
    }

    pub fn receive(&mut self) {
        let mg = self.random.random_range(1_000..90_000_000);
        let bought = self.chance(35);
        let mut has_species = true;
        let mut body = json!({ "place": "rail", "grams": grams(mg) });
        let root = if bought {
            has_species = self.chance(50);
            body["product"] = json!(if has_species { "pork-trim" } else { "salt" });
            body["bought"] = json!({ "supplier": "PTS", "supplier_lot": "x" });
            Root::Bought
        } else {
            let second_side = self.carcasses > 0 && self.chance(30);
            if !second_side {
                self.carcasses += 1;
            }
            let carcass = format!("C{}", self.carcasses);
            let side = if second_side { "right" } else { "left" };
            let known = self.book.lots.iter().any(|(code, lot)| {
                lot.root == Some(Root::Animal(format!("{carcass}/{side}")))
                    && !self.book.is_void(code)
            });
            body["product"] = json!("pig-half");
            body["animal"] = json!({ "farm": "BRC", "species": "pig", "killed_on": "2026-05-30", "abattoir": "DEMO-17", "carcass": carcass, "side": side });
            if known {
                self.send("/api/receipts", body, false);
                return;
            }
            Root::Animal(format!("{carcass}/{side}"))
        };
        if let Some((id, codes)) = self.send("/api/receipts", body, true) {
            let deed = self.book.deed(&id);
            let lot = Lot {
                deed,
                packs: vec![mg],
                root: Some(root),
                has_species,
                heated: false,
            };
            self.keep_lot(&codes[0], lot);
        }
    }

    pub fn step(&mut self) {
        let wanted = self.random.random_range(1..6);
        let mut inputs: Vec<(String, usize, i64)> = Vec::new();
        for _ in 0..wanted {
            let Some((code, pack, left)) = self.pack() else {
                return;
            };
            if left > 0
                && !inputs
                    .iter()
                    .any(|(other, number, _)| *other == code && *number == pack)
            {
                let mg = if self.chance(50) {
                    left
                } else {
                    self.random.random_range(1..=left)
                };
                inputs.push((code, pack, mg));
            }
        }
        let total: i64 = inputs.iter().map(|(_, _, mg)| mg).sum();
        if total < 100 {
            return;
        }
        let heavier = self.chance(5);
        let water = if self.chance(20) {
            self.random.random_range(1..=1_000_000)
        } else {
            0
        };
        let count = self.random.random_range(1..5);
        let loss = self.random.random_range(0..=total / 3);
        let mut rest = total + water - loss;
        let (mut outputs, mut packs) = (Vec::new(), Vec::new());
        for nth in 0..count {
            let mg = if nth + 1 == count {
                rest
            } else {
                self.random.random_range(1..=rest / 2).max(1)
            };
            rest -= mg;
            let number = if self.chance(25) {
                self.random.random_range(2..=8).min(mg)
            } else {
                1
            };
            let mut output = json!({ "product": "cooked-pork", "grams": grams(if heavier { mg + loss + 1 } else { mg }) });
            if number > 1 {
                output["pack_count"] = json!(number);
            }
            outputs.push(output);
            packs.push(
                (0..number)
                    .map(|pack| mg / number + i64::from(pack < mg % number))
                    .collect::<Vec<i64>>(),
            );
        }
        let kinds = [
            "break-down",
            "cut",
            "grind",
            "mix",
            "cook",
            "portion",
            "pack",
            "render",
        ];
        let kind = kinds[self.random.random_range(0..kinds.len())];
        let asked: Vec<Value> = inputs
            .iter()
            .map(|(code, pack, mg)| json!({ "lot": code, "pack": pack, "grams": grams(*mg) }))
            .collect();
        let mut body =
            json!({ "kind": kind, "place": "bench", "inputs": asked, "outputs": outputs });
        let heated = self.heat(kind, &mut body);
        if water > 0 {
            body["added"] = json!([{ "what": "water", "grams": grams(water) }]);
        }
        if let Some((id, codes)) = self.send("/api/steps", body, !heavier) {
            let deed = self.book.deed(&id);
            for (code, pack, mg) in &inputs {
                self.book.enter(deed, code, *pack, "used", *mg);
            }
            for (code, packs) in codes.iter().zip(packs) {
                let lot = Lot {
                    deed,
                    packs,
                    root: None,
                    has_species: true,
                    heated,
                };
                self.keep_lot(code, lot);
            }
        }
    }

    /// What is cooked is mostly heated through, and sometimes not: that is told as it happened.
    fn heat(&mut self, kind: &str, body: &mut Value) -> bool {
        if !matches!(kind, "cook" | "render") {
            return false;
        }
        let heated = self.chance(70);
        if heated || self.chance(50) {
            let celsius = if heated { 75 } else { 50 };
            body["readings"] = json!({ "celsius": celsius, "hold_minutes": 5 });
        }
        heated
    }

    pub fn depart(&mut self) {
        let Some((code, pack, left)) = self.pack() else {
            return;
        };
        let (kind, account) = [
            ("sell", "sold"),
            ("serve", "served"),
            ("discard", "discarded"),
            ("ship", "shipped"),
            ("return", "returned"),
        ][self.random.random_range(0..5)];
        let whole = self.chance(50);
        let asked = if whole {
            left
        } else {
            self.random.random_range(1..=left.max(1) + left / 4)
        };
        let was_back = self.book.of_lot(&code).any(|entry| {
            entry.pack == pack
                && entry.account == "taken-back"
                && !self.book.deeds[entry.deed].voided
        });
        let good = left > 0 && asked <= left && !(kind == "sell" && was_back);
        let mut body = json!({ "kind": kind, "lot": code, "pack": pack });
        if !whole {
            body["grams"] = grams(asked);
        }
        if let Some((id, _)) = self.send("/api/departures", body, good) {
            let deed = self.book.deed(&id);
            self.book.enter(deed, &code, pack, account, asked);
            // What is called ready and has no proof leaves as it happened, or not at all.
            let leaves = matches!(account, "sold" | "served" | "shipped");
            let is_made = self.book.lots[&code].root.is_none();
            let proven = || self.book.all_ready()[code.as_str()];
            assert!(
                !leaves || !is_made || self.told || proven(),
                "{code} left without a proof, and nobody asked"
            );
        }
    }

    pub fn take_back(&mut self) {
        let Some((code, pack, _)) = self.pack() else {
            return;
        };
        let away = self.book.away(&code, pack);
        let asked = self.random.random_range(1..=away.max(1) + away / 4);
        let good = !self.book.is_void(&code) && away > 0 && asked <= away;
        let body = json!({ "lot": code, "pack": pack, "grams": grams(asked), "why": "x" });
        if let Some((id, _)) = self.send("/api/take-backs", body, good) {
            let deed = self.book.deed(&id);
            self.book.enter(deed, &code, pack, "taken-back", asked);
        }
    }

    pub fn weigh(&mut self) {
        let Some((code, pack, left)) = self.pack() else {
            return;
        };
        let now = self.random.random_range(1..=left.max(1) + left / 40);
        let one = self.book.lots[&code].packs.len() == 1;
        let good = one && left > 0 && now <= left + left / 100;
        if let Some((id, _)) = self.send(
            "/api/readings",
            json!({ "lot": code, "grams": grams(now) }),
            good,
        ) {
            let deed = self.book.deed(&id);
            self.book.enter(deed, &code, pack, "lost", left - now);
        }
    }

    pub fn count(&mut self) {
        let Some((code, pack, left)) = self.pack() else {
            return;
        };
        let made = self.book.lots[&code].packs[pack - 1];
        let found = match self.random.random_range(0..4) {
            0 => None,
            1 => Some(left),
            _ => Some(self.random.random_range(1..=made + made / 50)),
        };
        let good = !self.book.is_void(&code)
            && found.is_none_or(|found| found > 0 && found <= made + made / 100);
        let body = match found {
            Some(found) => {
                json!({ "lot": code, "packs": [{ "pack": pack, "grams": grams(found) }] })
            }
            None => json!({ "lot": code, "packs": [{ "pack": pack, "missing": true }] }),
        };
        if let Some((id, _)) = self.send("/api/counts", body, good) {
            let deed = self.book.deed(&id);
            let gap = left - found.unwrap_or(0);
            self.book.enter(
                deed,
                &code,
                pack,
                if gap == 0 { "noted" } else { "unexplained" },
                gap,
            );
        }
    }

    pub fn relocate(&mut self) {
        let Some((code, pack, left)) = self.pack() else {
            return;
        };
        let state = ["frozen", "chilled"][self.random.random_range(0..2)];
        let body = json!({ "lot": code, "packs": [pack], "to": "freezer", "state": state });
        if let Some((id, _)) = self.send("/api/moves", body, left > 0) {
            self.book.deed(&id);
            self.book.moved.insert(code);
        }
    }

    pub fn void(&mut self) {
        if self.book.deeds.is_empty() {
            return;
        }
        let from = self.book.deeds.len().saturating_sub(20);
        let nth = self.random.random_range(from..self.book.deeds.len());
        let good = self.book.may_void(nth);
        let body = json!({ "step": self.book.deeds[nth].id, "why": "a mistake" });
        if let Some((id, _)) = self.send("void", body, good) {
            self.book.void(nth);
            let deed = self.book.deed(&id);
            self.book.deeds[deed].is_void = true;
        }
    }

    pub fn correct(&mut self) {
        let Some(code) = self.code() else { return };
        let lot = self.book.lots[&code].clone();
        let step = self.book.deeds[lot.deed].id.clone();
        self.carcasses += 1;
        let good = matches!(lot.root, Some(Root::Animal(_))) && !self.book.is_void(&code);
        let body = json!({ "step": step, "animal": { "carcass": format!("C{}", self.carcasses) }, "why": "wrong paper" });
        if let Some((id, _)) = self.send("/api/corrections", body, good) {
            let deed = self.book.deed(&id);
            let before = lot.root.expect("it is good");
            let Root::Animal(known) = &before else {
                unreachable!()
            };
            let side = known.rsplit('/').next().unwrap_or("");
            let after = Root::Animal(format!("C{}/{side}", self.carcasses));
            self.book.deeds[deed].corrected = Some((code.clone(), before));
            self.book.lots.get_mut(&code).expect("it is known").root = Some(after);
        }
    }

    /// Deeds that cannot be.
    pub fn nonsense(&mut self) {
        let Some((code, pack, left)) = self.pack() else {
            return;
        };
        let step = |grams: Value| {
            json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": code, "pack": pack, "grams": grams }],
            "outputs": [{ "product": "pork-trim", "grams": 1 }] })
        };
        let body = match self.random.random_range(0..5) {
            0 => step(grams(left + 1)),
            1 => step(json!(0)),
            2 => step(json!(-3)),
            3 => {
                json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": "BRC-26159-A16-R" }], "outputs": [] })
            }
            _ => {
                json!({ "kind": "cut", "place": "nowhere", "inputs": [{ "lot": code, "pack": pack }], "outputs": [{ "product": "pork-trim", "grams": 1 }] })
            }
        };
        self.send("/api/steps", body, false);
    }
}
