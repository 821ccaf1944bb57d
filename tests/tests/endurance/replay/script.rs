//! A script of deeds at random, with facts that may turn out to be wrong: a kill date, a supplier's lot, an
//! allergen, a maker's date, a strength, a reading, a log.

use rand::RngExt;
use rand::rngs::SmallRng;
use serde_json::{Value, json};

/// A fact that is wrong at first: where it stands in the body, and what is right.
pub struct Fact {
    /// What a correction calls it.
    field: &'static str,
    right: Value,
    /// Do its figures stand in the deed itself, as those of a reading do?
    is_the_deed: bool,
}

impl Fact {
    fn new(field: &'static str, right: Value) -> Fact {
        Fact {
            field,
            right,
            is_the_deed: false,
        }
    }

    /// The body with what is right in it.
    pub fn put_over(&self, body: &mut Value) {
        let place = match self.is_the_deed {
            true => body,
            false => &mut body[self.field],
        };
        match (&self.right, place) {
            (Value::Object(right), Value::Object(told)) => {
                for (key, value) in right {
                    told.insert(key.clone(), value.clone());
                }
            }
            (right, told) => *told = right.clone(),
        }
    }

    /// What a correction says of it.
    pub fn correction(&self) -> Value {
        json!({ self.field: self.right })
    }
}

/// One deed: lots are named by their places in the order of making.
pub struct Doing {
    pub path: &'static str,
    pub minutes_ago: i64,
    pub body: Value,
    pub fact: Option<Fact>,
    /// Do its lots count among those that later doings use?
    pub makes: bool,
}

/// What is on the list besides the furniture.
pub fn products() -> Vec<Value> {
    let of = |code: &str, more: Value| {
        let mut body = json!({ "code": code, "names": { "en": code, "fr": code }, "storage": "chilled", "species": "pig",
            "for_sale": true, "price_minor_per_kg": 100, "keep": { "days": 5, "from": "made", "day_one_counts": true } });
        for (key, value) in more.as_object().expect("fields") {
            body[key] = value.clone();
        }
        body
    };
    let bought = json!({ "days": 60, "from": "received", "day_one_counts": true });
    vec![
        of("stew", json!({ "kind": "cooked", "raw": false })),
        of("salad", json!({ "kind": "cooked", "raw": false })),
        of("mince", json!({ "kind": "mixed", "raw": true })),
        of(
            "paste",
            json!({ "kind": "ingredient", "raw": false, "species": null, "keep": bought }),
        ),
        of(
            "cure-salt",
            json!({ "kind": "ingredient", "raw": false, "species": null, "storage": "ambient",
            "curing_salt": { "nitrite_percent": 6.25 }, "keep": bought }),
        ),
        of(
            "belly",
            json!({ "kind": "cured", "raw": true, "cure": { "class": "bacon", "method": "dry" } }),
        ),
    ]
}

/// A lot of the script, as far as the next doing has to know it.
struct Made {
    product: &'static str,
    grams: i64,
}

struct Writer<'a> {
    random: &'a mut SmallRng,
    lots: Vec<Made>,
    all: Vec<Doing>,
    minutes_ago: i64,
}

/// A kitchen's days.
pub fn script(random: &mut SmallRng) -> Vec<Doing> {
    let count = random.random_range(10..24);
    let mut writer = Writer {
        random,
        lots: Vec::new(),
        all: Vec::new(),
        minutes_ago: 6 * 24 * 60,
    };
    writer.pig();
    writer.paste();
    for _ in 0..count {
        match writer.random.random_range(0..12) {
            0 => writer.pig(),
            1 => writer.paste(),
            2 => writer.salt(),
            3 => writer.cure(),
            4 => writer.read(),
            5 => writer.chill(),
            6 | 7 => writer.cook(),
            8 => writer.make("grind", "mince", &["pig-half", "pork-trim", "paste"]),
            9 => writer.make("cut", "pork-trim", &["pig-half"]),
            10 => writer.make("mix", "salad", &["stew", "salad", "paste"]),
            _ => writer.make("pack", "salad", &["stew", "salad"]),
        }
    }
    writer.all
}

impl Writer<'_> {
    fn day(&mut self, from: i64, until: i64) -> String {
        let days = self.random.random_range(from..until);
        let day = super::now().date_naive() + chrono::TimeDelta::days(days);
        day.to_string()
    }

    fn chance(&mut self, percent: u32) -> bool {
        self.random.random_range(0..100) < percent
    }

    fn add(&mut self, path: &'static str, body: Value, fact: Option<Fact>, makes: Option<Made>) {
        self.minutes_ago -= self.random.random_range(1..340);
        self.minutes_ago = self.minutes_ago.max(1);
        self.all.push(Doing {
            path,
            minutes_ago: self.minutes_ago,
            body,
            fact,
            makes: makes.is_some(),
        });
        self.lots.extend(makes);
    }

    fn pig(&mut self) {
        let carcass = format!("C{}", self.all.len());
        let mut body = json!({ "place": "rail", "product": "pig-half", "grams": 20_000, "animal": { "farm": "BRC", "species": "pig",
            "killed_on": "", "abattoir": "DEMO-17", "carcass": carcass, "side": "left" } });
        // On either side of the days within which it may be minced.
        let (young, old) = (self.day(-9, -6), self.day(-20, -9));
        let (wrong, right) = if self.chance(70) {
            (young, old)
        } else {
            (old, young)
        };
        let right = json!({ "killed_on": right });
        body["animal"]["killed_on"] = json!(wrong);
        let fact = self.chance(60).then_some(Fact::new("animal", right));
        let made = Made {
            product: "pig-half",
            grams: 20_000,
        };
        self.add("/api/receipts", body, fact, Some(made));
    }

    fn paste(&mut self) {
        let body = json!({ "place": "cooler", "product": "paste", "grams": 4_000,
            "bought": { "supplier": "PTS", "supplier_lot": "P-1", "use_by": self.day(30, 60) } });
        let right = match self.random.random_range(0..4) {
            0 => json!({ "supplier_lot": "P-77" }),
            1 => json!({ "use_by": self.day(1, 30) }),
            2 => json!({ "declares": { "allergens": ["milk", "mustard"] } }),
            _ => json!({ "declares": { "ready": false } }),
        };
        let fact = self.chance(75).then_some(Fact::new("bought", right));
        let made = Made {
            product: "paste",
            grams: 4_000,
        };
        self.add("/api/receipts", body, fact, Some(made));
    }

    fn salt(&mut self) {
        let strength = |percent: f64| json!({ "curing_salt": { "nitrite_percent": percent } });
        let mut body = json!({ "place": "cooler", "product": "cure-salt", "grams": 1_000,
            "bought": { "supplier": "PTS", "supplier_lot": "S-1" } });
        let (wrong, right) = if self.chance(50) {
            (5.0, 6.25)
        } else {
            (6.25, 5.0)
        };
        body["bought"]["curing_salt"] = strength(wrong)["curing_salt"].clone();
        let fact = self
            .chance(75)
            .then_some(Fact::new("bought", strength(right)));
        let made = Made {
            product: "cure-salt",
            grams: 1_000,
        };
        self.add("/api/receipts", body, fact, Some(made));
    }

    /// A lot of one of these products with something left, and some of it.
    fn some(&mut self, of: &[&str], most: i64) -> Option<(usize, i64)> {
        let fit = self.lots.iter().enumerate();
        let fit = fit.filter(|(_, lot)| of.contains(&lot.product) && lot.grams >= 50);
        let fit: Vec<usize> = fit.map(|(nth, _)| nth).collect();
        if fit.is_empty() {
            return None;
        }
        let nth = fit[self.random.random_range(0..fit.len())];
        let grams = self
            .random
            .random_range(20..=most.min(self.lots[nth].grams - 20));
        self.lots[nth].grams -= grams;
        Some((nth, grams))
    }

    fn make(&mut self, kind: &str, into: &'static str, of: &[&str]) {
        self.make_with(kind, into, of, json!({}), None);
    }

    fn make_with(
        &mut self,
        kind: &str,
        into: &'static str,
        of: &[&str],
        more: Value,
        fact: Option<Fact>,
    ) {
        let mut inputs: Vec<(usize, i64)> = Vec::new();
        for _ in 0..self.random.random_range(1..4) {
            if let Some((nth, grams)) = self.some(of, 3_000) {
                match inputs.iter_mut().find(|(other, _)| *other == nth) {
                    Some((_, sum)) => *sum += grams,
                    None => inputs.push((nth, grams)),
                }
            }
        }
        if inputs.is_empty() {
            return;
        }
        let total: i64 = inputs.iter().map(|(_, grams)| grams).sum();
        let inputs: Vec<Value> = inputs
            .into_iter()
            .map(|(nth, grams)| json!({ "lot": nth, "grams": grams }))
            .collect();
        let mut body = json!({ "kind": kind, "place": "bench", "inputs": inputs,
            "outputs": [{ "product": into, "grams": total }] });
        for (key, value) in more.as_object().expect("fields") {
            body[key] = value.clone();
        }
        let made = Made {
            product: into,
            grams: total,
        };
        self.add("/api/steps", body, fact, Some(made));
    }

    fn cook(&mut self) {
        let hot = json!({ "celsius": 75, "hold_minutes": 5 });
        let cold = json!({ "celsius": 48, "hold_minutes": 5 });
        let (wrong, right) = match self.random.random_range(0..3) {
            0 => (json!({}), json!({ "readings": hot })),
            1 => (json!({ "readings": hot }), json!({ "readings": cold })),
            _ => (json!({ "readings": cold }), json!({ "readings": hot })),
        };
        let right = right["readings"].clone();
        let fact = self.chance(60).then_some(Fact::new("readings", right));
        let of = ["pig-half", "pork-trim", "mince", "paste", "stew"];
        self.make_with("cook", "stew", &of, wrong, fact);
    }

    fn cure(&mut self) {
        let Some((meat, grams)) = self.some(&["pork-trim", "pig-half"], 5_000) else {
            return;
        };
        // As much as the limits let in at 6.25 %, and some more or less.
        let Some((salt, _)) = self.some(&["cure-salt"], 21) else {
            return;
        };
        let salt_grams = (grams * self.random.random_range(10..50) / 10_000).max(1);
        let body = json!({ "kind": "cure", "place": "bench",
            "inputs": [{ "lot": meat, "grams": grams }, { "lot": salt, "grams": salt_grams.min(20) }],
            "outputs": [{ "product": "belly", "grams": grams }] });
        let made = Made {
            product: "belly",
            grams,
        };
        self.add("/api/steps", body, None, Some(made));
    }

    fn log(&mut self, every: i64) -> Value {
        let until = super::now() - chrono::TimeDelta::minutes(self.minutes_ago);
        let at = |nth: i64| until - chrono::TimeDelta::minutes((9 - nth) * every);
        let points = (0..=9)
            .map(|nth| json!({ "at": at(nth).to_rfc3339(), "celsius": 62.0 - 6.5 * nth as f64 }));
        Value::Array(points.collect())
    }

    /// A chill makes no lot: it cools a stew, fast or slowly.
    fn chill(&mut self) {
        let Some((nth, _)) = self.some(&["stew"], 21) else {
            return;
        };
        self.minutes_ago = (self.minutes_ago - 700).max(1);
        let (slow, fast) = (self.log(60), self.log(15));
        let (wrong, right) = if self.chance(50) {
            (slow, fast)
        } else {
            (fast, slow)
        };
        let body =
            json!({ "kind": "chill", "place": "cooler", "inputs": [{ "lot": nth }], "log": wrong });
        let fact = self.chance(60).then_some(Fact::new("log", right));
        self.add_at_once("/api/steps", body, fact);
    }

    /// A reading of a lot: does it keep?
    fn read(&mut self) {
        let Some((nth, _)) = self.some(&["belly", "stew", "salad"], 21) else {
            return;
        };
        let of = |activity: f64| json!({ "water_activity": activity, "ph": 5.6 });
        let (wrong, right) = if self.chance(50) {
            (0.95, 0.83)
        } else {
            (0.83, 0.95)
        };
        let mut body = of(wrong);
        body["lot"] = json!(nth);
        let right = json!({ "water_activity": right });
        let fact = self.chance(60).then_some(Fact {
            field: "readings",
            right,
            is_the_deed: true,
        });
        self.add_at_once("/api/readings", body, fact);
    }

    fn add_at_once(&mut self, path: &'static str, body: Value, fact: Option<Fact>) {
        self.all.push(Doing {
            path,
            minutes_ago: self.minutes_ago,
            body,
            fact,
            makes: false,
        });
    }
}
