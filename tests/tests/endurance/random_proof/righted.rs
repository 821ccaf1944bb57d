//! What turns out to have been otherwise, at random, and what is taken back.

use super::Living;
use super::book::{Fact, Root};
use rand::RngExt;
use serde_json::json;

impl Living {
    /// Something was otherwise: how hot it was, whether it was stuffed, what a pack declares, a day, a kill.
    pub fn correct(&mut self) {
        let order = self.book.order.iter().rev();
        let fit = order.filter(|code| !self.book.is_void(code));
        let fit: Vec<String> = fit.take(20).cloned().collect();
        if fit.is_empty() {
            return;
        }
        let code = fit[self.random.random_range(0..fit.len())].clone();
        let lot = self.book.lots[&code].clone();
        let (what, fact) = match (&lot.root, lot.step) {
            (Root::Made, "cook") if self.chance(50) => match self.readings() {
                (heat, Some(read)) => (json!({ "readings": read }), Some(Fact::Heat(heat))),
                (_, None) => return,
            },
            (Root::Made, "cook" | "mix") => {
                let stuffed = self.chance(50);
                let fact = Fact::Stuffed(Some(stuffed));
                (json!({ "stuffed": stuffed }), Some(fact))
            }
            (Root::Bought { of_animal: true }, _) if self.chance(60) => {
                let ready = self.chance(50);
                let declares = json!({ "bought": { "declares": { "ready": ready } } });
                (declares, Some(Fact::Ready(ready)))
            }
            (Root::Bought { .. }, _) => {
                let day = self.day(-2, 25);
                (json!({ "bought": { "use_by": day } }), None)
            }
            (Root::Adopted, _) => {
                let allergens = json!({ "declares": { "allergens": ["mustard"] } });
                (json!({ "bought": allergens }), None)
            }
            (Root::Animal, _) => {
                let day = self.day(-12, -1);
                (json!({ "animal": { "killed_on": day } }), None)
            }
            _ => return,
        };
        let mut body = what;
        body["step"] = json!(self.book.deeds[lot.deed].id);
        body["why"] = json!("the paper says so");
        if let Some(done) = self.send("/api/corrections", body) {
            self.book.deeds[done.deed].says = fact.map(|fact| (code, fact));
        }
    }

    pub fn void(&mut self) {
        let from = self.book.deeds.len().saturating_sub(12);
        if from == self.book.deeds.len() {
            return;
        }
        let nth = self.random.random_range(from..self.book.deeds.len());
        if self.book.deeds[nth].voided {
            return;
        }
        let body = json!({ "step": self.book.deeds[nth].id, "why": "a mistake" });
        if self.send("void", body).is_some() {
            self.book.deeds[nth].voided = true;
            self.recount();
        }
    }

    /// What is left is as the service tells it: that is held against a book elsewhere.
    fn recount(&mut self) {
        for code in self.book.order.clone() {
            let told = self.lot(&code);
            let packs = told["packs"].as_array().expect("packs").iter();
            let left = packs.map(|pack| pack["left_grams"].as_f64().expect("grams") as i64);
            self.book.lots.get_mut(&code).expect("known").packs = left.collect();
        }
    }
}
