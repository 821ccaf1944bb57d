//! What can happen there, at random, and what the book keeps of it.

use super::book::{Heat, Lot, Root};
use super::{Done, Living, last_day};
use chrono::{NaiveDate, TimeDelta};
use rand::RngExt;
use serde_json::{Value, json};

/// For how many minutes food may be warm, once (`us-T8`).
const WARM_AT_MOST: i64 = 240;

const PLACES: [&str; 3] = ["cooler", "rail", "stove"];

impl Living {
    pub(super) fn chance(&mut self, percent: u32) -> bool {
        self.random.random_range(0..100) < percent
    }

    fn one_of<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.random.random_range(0..of.len())]
    }

    pub(super) fn day(&mut self, from: i64, until: i64) -> String {
        let days = self.random.random_range(from..until);
        (self.now.date_naive() + TimeDelta::days(days)).to_string()
    }

    fn keep(&mut self, done: &Done, place: &'static str, lot: Lot) {
        let [code] = &done.codes[..] else {
            panic!("one lot is made");
        };
        let stood = vec![(done.deed, self.now, place)];
        let deed = done.deed;
        let lot = Lot { deed, stood, ..lot };
        assert!(self.book.lots.insert(code.clone(), lot).is_none(), "{code}");
        self.book.order.push(code.clone());
    }

    /// A pack of one of these products, the newer the likelier, and what is left of it.
    fn pack(&mut self, of: &[&str]) -> Option<(String, usize, i64)> {
        let order = self.book.order.iter().rev();
        let fit = order.filter(|code| {
            let lot = &self.book.lots[*code];
            of.contains(&lot.product) && !self.book.is_void(code)
        });
        let fit: Vec<String> = fit.take(8).cloned().collect();
        if fit.is_empty() {
            return None;
        }
        let code = fit[self.random.random_range(0..fit.len())].clone();
        let packs = self.book.lots[&code].packs.clone();
        let pack = self.random.random_range(0..packs.len());
        Some((code, pack + 1, packs[pack]))
    }

    pub fn pig(&mut self) {
        self.carcasses += 1;
        let body = json!({ "place": "rail", "product": "pig-half", "grams": 40_000, "animal": { "farm": "BRC", "species": "pig",
            "killed_on": self.day(-6, 0), "abattoir": "DEMO-17", "carcass": format!("C{}", self.carcasses), "side": "left" } });
        if let Some(done) = self.send("/api/receipts", body) {
            let lot = Lot::of(Root::Animal, "pig-half", vec![40_000]);
            self.keep(&done, "rail", lot);
        }
    }

    pub fn bread(&mut self) {
        let body = json!({ "place": "stove", "product": "bread", "grams": 5_000,
            "bought": { "supplier": "PTS", "supplier_lot": "B" } });
        if let Some(done) = self.send("/api/receipts", body) {
            let lot = Lot::of(Root::Bought { of_animal: false }, "bread", vec![5_000]);
            self.keep(&done, "stove", lot);
        }
    }

    /// Bought ready to eat, or not: its pack says so, or nothing does.
    pub fn spread(&mut self) {
        let says = self.one_of(&[Some(true), Some(true), Some(false), None]);
        let body = json!({ "place": "cooler", "product": "spread", "grams": 3_000, "pack_count": 2,
            "bought": { "supplier": "PTS", "supplier_lot": "S", "use_by": self.day(2, 25), "declares": { "ready": says } } });
        if let Some(done) = self.send("/api/receipts", body) {
            let root = Root::Bought { of_animal: true };
            let lot = Lot {
                ready: says == Some(true),
                ..Lot::of(root, "spread", vec![1_500, 1_500])
            };
            self.keep(&done, "cooler", lot);
        }
    }

    /// Some of what there is: a pack each, and how much of it.
    fn some(&mut self, of: &[&str], most: usize) -> Vec<(String, usize, i64)> {
        let mut inputs: Vec<(String, usize, i64)> = Vec::new();
        for _ in 0..self.random.random_range(1..=most) {
            let Some((code, pack, left)) = self.pack(of) else {
                continue;
            };
            let known = |(other, of, _): &(String, usize, i64)| (other, *of) == (&code, pack);
            if left < 200 || inputs.iter().any(known) {
                continue;
            }
            let grams = self.random.random_range(100..=left.min(2_500));
            inputs.push((code, pack, grams));
        }
        inputs
    }

    fn make(
        &mut self,
        step: &'static str,
        product: &'static str,
        inputs: Vec<(String, usize, i64)>,
        more: Value,
    ) -> Option<Done> {
        if inputs.is_empty() {
            return None;
        }
        let place = self.one_of(&PLACES);
        let total: i64 = inputs.iter().map(|(.., grams)| grams).sum();
        let count = self.random.random_range(1..3);
        let asked: Vec<Value> = inputs
            .iter()
            .map(|(lot, pack, grams)| json!({ "lot": lot, "pack": pack, "grams": grams }))
            .collect();
        let mut body = json!({ "kind": step, "place": place, "inputs": asked,
            "outputs": [{ "product": product, "grams": total, "pack_count": count }] });
        for (key, value) in more.as_object().expect("fields") {
            body[key] = value.clone();
        }
        let done = self.send("/api/steps", body)?;
        for (code, pack, grams) in &inputs {
            self.book.lots.get_mut(code).expect("known").packs[pack - 1] -= grams;
        }
        let inputs = inputs.into_iter().map(|(lot, _, grams)| (lot, grams));
        // Of an odd gram the first packs get more.
        let packs = (0..count).map(|pack| total / count + i64::from(pack < total % count));
        let lot = Lot {
            step,
            inputs: inputs.collect(),
            ..Lot::of(Root::Made, product, packs.collect())
        };
        self.keep(&done, place, lot);
        Some(done)
    }

    pub fn cut(&mut self) {
        let inputs = self.some(&["pig-half", "pork-chop"], 2);
        let celsius = self.one_of(&[None, None, Some(3), Some(20)]);
        let more = celsius.map_or(json!({}), |read| json!({ "readings": { "celsius": read } }));
        let made = match self.chance(60) {
            true => self.make("cut", "pork-chop", inputs, more),
            false => self.make("grind", "mince", inputs, more),
        };
        if let (Some(done), Some(celsius)) = (made, celsius) {
            let read = (done.deed, self.now, celsius > 10);
            let lot = self.book.lots.get_mut(&done.codes[0]);
            lot.expect("it is kept").read.push(read);
        }
    }

    pub(super) fn readings(&mut self) -> (Heat, Option<Value>) {
        let read =
            |celsius: f64, minutes: f64| json!({ "celsius": celsius, "hold_minutes": minutes });
        match self.random.random_range(0..8) {
            0 => (Heat::Nothing, None),
            1 => (Heat::Nothing, Some(read(48.0, 5.0))),
            2..5 => (Heat::Whole, Some(read(63.0, 0.5))),
            _ => (Heat::Enough, Some(read(76.0, 5.0))),
        }
    }

    /// Cooked with bread or without, stuffed or not, through or not.
    pub fn cook(&mut self) {
        let of: &[&str] = match self.random.random_range(0..3) {
            0 => &["pork-chop"],
            1 => &["pork-chop", "mince", "pig-half", "fillet"],
            _ => &["pork-chop", "mince", "fillet", "stew", "salad", "spread"],
        };
        let mut inputs = self.some(of, 3);
        if self.chance(45)
            && !inputs.is_empty()
            && let Some((bread, pack, left)) = self.pack(&["bread"])
        {
            let grams = self.one_of(&[5, 40, 300]);
            if grams <= left {
                inputs.push((bread, pack, grams));
            }
        }
        let product = self.one_of(&["fillet", "fillet", "stew"]);
        let stuffed = self.one_of(&[None, None, Some(true), Some(false)]);
        let (heat, readings) = self.readings();
        let more = json!({ "readings": readings, "stuffed": stuffed });
        if let Some(done) = self.make("cook", product, inputs, more) {
            let lot = self.book.lots.get_mut(&done.codes[0]).expect("it is kept");
            (lot.heat, lot.stuffed) = (heat, stuffed);
        }
    }

    /// Put together cold, or parted again.
    pub fn mix(&mut self) {
        let ready = ["fillet", "stew", "salad", "spread", "bread"];
        let inputs = self.some(&ready, 3);
        let step = self.one_of(&["mix", "mix", "portion", "pack"]);
        self.make(step, "salad", inputs, json!({}));
    }

    pub fn adopt(&mut self) {
        let product = self.one_of(&["stew", "pork-chop", "spread"]);
        let mut body =
            json!({ "place": "cooler", "product": product, "grams": 900, "why": "no label" });
        if self.chance(60) {
            body["declares"] = json!({ "allergens": ["milk"] });
        }
        if let Some(done) = self.send("/api/adoptions", body) {
            let lot = Lot::of(Root::Adopted, product, vec![900]);
            self.keep(&done, "cooler", lot);
        }
    }

    /// Something leaves. What leaves without a word has nothing against it: that is looked at before.
    pub fn depart(&mut self) {
        let of = ["fillet", "stew", "salad", "spread", "pork-chop", "mince"];
        let Some((code, pack, left)) = self.pack(&of) else {
            return;
        };
        let kind = self.one_of(&["sell", "serve", "ship"]);
        let before = self.lot(&code);
        let body = json!({ "kind": kind, "lot": code, "pack": pack, "grams": left.clamp(1, 300), "to": "The inn" });
        let Some(done) = self.send("/api/departures", body) else {
            return;
        };
        let lot = self.book.lots.get_mut(&code).expect("known");
        lot.packs[pack - 1] -= left.clamp(1, 300);
        if done.told {
            return;
        }
        let (lot, held) = (&self.book.lots[&code], self.book.held());
        let says_ready = !matches!(lot.product, "pork-chop" | "mince");
        let against = [
            ("no proof", says_ready && !held.ready[code.as_str()]),
            ("a history that nobody knows", self.book.is_tainted(&code)),
            (
                "a customer had it",
                self.book.was_back(&code, pack) && !lot.let_go,
            ),
            (
                "it stood in the warm",
                self.book.warm_minutes(&code) > WARM_AT_MOST
                    && !lot.let_go
                    && !self.book.keeps_anywhere(&code),
            ),
            (
                "it was found warm, and again",
                self.book.found_warm_minutes(&code) > WARM_AT_MOST
                    && !lot.let_go
                    && !self.book.keeps_anywhere(&code),
            ),
            (
                "its day is over",
                last_day(&before).is_some_and(|day| *day < *self.today().to_string()),
            ),
        ];
        for (what, stands) in against {
            assert!(
                !stands,
                "{code}/{pack}, {what}, and it left unasked: {before}"
            );
        }
    }

    /// The kitchen's day.
    fn today(&self) -> NaiveDate {
        let zone = chrono_tz::America::New_York;
        self.now.with_timezone(&zone).date_naive()
    }

    pub fn take_back(&mut self) {
        let Some((code, pack, _)) = self.pack(&["fillet", "stew", "salad", "spread"]) else {
            return;
        };
        let body = json!({ "lot": code, "pack": pack, "why": "too much" });
        if let Some(done) = self.send("/api/take-backs", body) {
            let left = self.lot(&code)["packs"][pack - 1]["left_grams"].clone();
            let lot = self.book.lots.get_mut(&code).expect("known");
            lot.packs[pack - 1] = left.as_f64().expect("grams") as i64;
            lot.back.push((pack, done.deed));
        }
    }

    /// A manager lets it go.
    pub fn dispose(&mut self) {
        let Some((code, ..)) = self.pack(&["fillet", "stew", "salad", "spread", "pork-chop"])
        else {
            return;
        };
        let body = json!({ "lot": code, "what": "released", "why": "seen" });
        if self.send("/api/dispositions", body).is_some() {
            self.book.lots.get_mut(&code).expect("known").let_go = true;
        }
    }

    pub fn relocate(&mut self) {
        let Some((code, ..)) = self.pack(&["fillet", "stew", "salad", "spread", "pork-chop"])
        else {
            return;
        };
        let to = self.one_of(&PLACES);
        if let Some(done) = self.send("/api/moves", json!({ "lot": code, "to": to })) {
            let stood = (done.deed, self.now, to);
            self.book
                .lots
                .get_mut(&code)
                .expect("known")
                .stood
                .push(stood);
        }
    }

    /// Somebody reads how warm something is, by itself or in a step that makes nothing of it.
    pub fn read(&mut self) {
        let of = ["salad", "spread", "pork-chop", "mince", "pig-half"];
        let Some((code, ..)) = self.pack(&of) else {
            return;
        };
        let celsius = self.one_of(&[3, 20, 20]);
        let done = match self.chance(50) {
            true => self.send("/api/readings", json!({ "lot": code, "celsius": celsius })),
            false => {
                let place = self.one_of(&PLACES);
                let body = json!({ "kind": "chill", "place": place, "inputs": [{ "lot": code }],
                    "outputs": [], "readings": { "celsius": celsius } });
                self.send("/api/steps", body)
            }
        };
        if let Some(done) = done {
            let read = (done.deed, self.now, celsius > 10);
            self.book
                .lots
                .get_mut(&code)
                .expect("known")
                .read
                .push(read);
        }
    }

    /// A place was warm until now, or somebody reads that it is.
    pub fn fail(&mut self) {
        let place = self.one_of(&PLACES);
        if self.chance(20) {
            let read = json!({ "place": place, "celsius": 14 });
            self.send("/api/readings", read);
            return;
        }
        let minutes = self.random.random_range(30..420);
        let from = self.now - TimeDelta::minutes(minutes);
        let body = json!({ "place": place, "from": from.to_rfc3339() });
        if let Some(done) = self.send("/api/place-failures", body) {
            let until = self.now;
            self.book.warm.push((done.deed, place, from, until));
        }
    }
}

impl Lot {
    fn of(root: Root, product: &'static str, packs: Vec<i64>) -> Lot {
        Lot {
            deed: 0,
            root,
            product,
            step: "",
            inputs: Vec::new(),
            packs,
            stood: Vec::new(),
            heat: Heat::Nothing,
            stuffed: None,
            ready: false,
            read: Vec::new(),
            let_go: false,
            back: Vec::new(),
        }
    }
}
