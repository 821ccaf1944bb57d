//! The service against the book: every lot, every pack, both directions, and the audit.

use super::Kitchen;
use domain::family::origins;
use domain::lot::LotId;
use gambrel::caller::Caller;
use gambrel::error::Error;
use gambrel::read::{self, LoadedFamily};
use gambrel::wire::answers;
use gambrel::wire::answers::lot::lot_read;
use rand::RngExt;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use store::family::Extent;
use stories::Engine;
use stories::oracle::Root;

/// How many lots are read at once: a family is walked and loaded once for all of them.
const BATCH: usize = 200;
/// Every so-manieth of them is read alone as well.
const ALONE: usize = 60;

const ACCOUNTS: [&str; 8] = [
    "used",
    "sold",
    "served",
    "discarded",
    "shipped",
    "returned",
    "lost",
    "unexplained",
];

impl Kitchen {
    /// Compares everything.
    pub fn compare(&mut self) {
        let (report, _) = gambrel::check::look(&self.app.store).unwrap();
        assert!(report.findings.is_empty(), "{:?}", report.findings);
        assert_eq!(report.lots as usize, self.book.lots.len());
        let all = self.book.all_shares();
        self.compare_packs();
        // Both directions cost a walk each; on the slower engine a sample will do.
        let percent = if self.engine == Engine::Sqlite {
            50
        } else {
            15
        };
        let mut random = self.random.clone();
        let mut chosen: Vec<&str> = self.book.lots.keys().map(String::as_str).collect();
        chosen.retain(|code| random.random_range(0..100) < percent && !self.book.is_void(code));
        self.compare_origins(&chosen, &all);
        for code in chosen {
            self.compare_descendants(code, &all);
        }
    }

    /// The keys of lots, in the order of their codes here.
    fn keys(&self, codes: &[&str]) -> Vec<i32> {
        let row = |code: &&str| {
            let found = self
                .app
                .store
                .look(|conn| read::lot_named(&self.app, conn, code));
            found.unwrap().id
        };
        codes.iter().map(row).collect()
    }

    fn read(
        &self,
        code: &str,
        what: impl Fn(&mut store::Conn, &store::lots::LotRow) -> Result<Value, Error>,
    ) -> Value {
        let read = self.app.store.read(|conn| {
            let row = read::lot_named(&self.app, conn, code)?;
            what(conn, &row)
        });
        read.unwrap()
    }

    /// Every lot as its page has it. They are loaded in batches, whose ancestors are then loaded once; some
    /// are read alone as well, and must be the same.
    fn compare_packs(&self) {
        let codes: Vec<&str> = self.book.lots.keys().map(String::as_str).collect();
        let mut all: BTreeMap<&str, Value> = BTreeMap::new();
        for batch in codes.chunks(BATCH) {
            let keys = self.keys(batch);
            let told: Result<Vec<Value>, Error> = self.app.store.read(|conn| {
                let reading = LoadedFamily::load(&self.app, conn, &keys, Extent::REASONED)?;
                let speech = Caller::new(&self.app).speech(reading.kitchen());
                let told = keys.iter().map(|key| {
                    let view = reading.lot_view(LotId(*key))?;
                    Ok(serde_json::to_value(lot_read(&view, &reading, &speech)).unwrap())
                });
                told.collect()
            });
            let told = told.unwrap();
            for (code, lot) in batch.iter().zip(&told) {
                self.compare_packs_of(code, lot);
            }
            for (code, told) in batch.iter().zip(&told).step_by(ALONE) {
                let alone = self.read(code, |conn, row| {
                    let read = read::lot::read(&Caller::new(&self.app), conn, &row.code)?;
                    Ok(serde_json::to_value(read).unwrap())
                });
                assert_eq!(without_ways(&alone), without_ways(told), "{code}");
            }
            all.extend(batch.iter().copied().zip(told));
        }
        self.compare_proof(&all);
    }

    fn compare_packs_of(&self, code: &str, lot: &Value) {
        let packs = lot["packs"].as_array().unwrap();
        assert_eq!(packs.len(), self.book.lots[code].packs.len(), "{code}");
        for (pack, made) in packs.iter().zip(&self.book.lots[code].packs) {
            let number = pack["pack"].as_u64().unwrap() as usize;
            assert_eq!(
                (mg(&pack["grams"]), mg(&pack["left_grams"])),
                (*made, self.book.left(code, number)),
                "{code}/{number}"
            );
            let expected = match self.book.emptied_by(code, number) {
                _ if self.book.is_void(code) => "void",
                Some("unexplained") => "missing",
                Some("used" | "lost") => "used",
                Some(account) => account,
                None => continue,
            };
            assert_eq!(pack["is"], expected, "{code}/{number}");
        }
    }

    /// In batches, as above.
    fn compare_origins(&self, codes: &[&str], all: &BTreeMap<&str, BTreeMap<String, f64>>) {
        for batch in codes.chunks(BATCH) {
            let keys = self.keys(batch);
            let told: Result<Vec<Value>, Error> = self.app.store.read(|conn| {
                let reading = LoadedFamily::load(&self.app, conn, &keys, Extent::ANCESTORS)?;
                let told = keys.iter().map(|key| {
                    let found = origins(&reading.family, LotId(*key));
                    let code = reading.code(LotId(*key));
                    serde_json::to_value(answers::origins::read(&code, &found)).unwrap()
                });
                Ok(told.collect())
            });
            let told = told.unwrap();
            for (code, origins) in batch.iter().zip(&told) {
                self.compare_origins_of(code, origins, &all[code]);
            }
            for (code, told) in batch.iter().zip(&told).step_by(ALONE) {
                let alone = self.read(code, |conn, row| {
                    let (code, found) = read::trace::origins_named(&self.app, conn, &row.code)?;
                    Ok(serde_json::to_value(answers::origins::read(&code, &found)).unwrap())
                });
                assert_eq!(without_ways(&alone), without_ways(told), "{code}");
            }
        }
    }

    fn compare_origins_of(&self, code: &str, origins: &Value, expected: &BTreeMap<String, f64>) {
        // The service tells an animal once; the book keeps its sides apart.
        let mut by_carcass: BTreeMap<&str, f64> = BTreeMap::new();
        for (side, share) in expected {
            *by_carcass
                .entry(side.split('/').next().unwrap())
                .or_default() += share;
        }
        let animals = origins["animals"].as_array().unwrap();
        assert_eq!(
            animals.len(),
            by_carcass.len(),
            "{code}: {origins} {by_carcass:?}"
        );
        for animal in animals {
            let share = by_carcass[animal["carcass"].as_str().unwrap()];
            assert!(
                (animal["share"].as_f64().unwrap() - share).abs() < 1e-6,
                "{code}: {animal} is {share}"
            );
            self.compare_path(code, animal);
        }
        let bought: BTreeSet<String> = origins["bought"]
            .as_array()
            .unwrap()
            .iter()
            .map(|lot| lot["lot"].as_str().unwrap().to_owned())
            .collect();
        assert_eq!(bought, self.book.bought(code), "{code}");
    }

    /// A path leads from a received lot of that animal to the lot, link by link.
    fn compare_path(&self, code: &str, animal: &Value) {
        let mut via: Vec<&str> = animal["via"]
            .as_array()
            .unwrap()
            .iter()
            .map(|code| code.as_str().unwrap())
            .collect();
        via.push(code);
        assert!(
            matches!(self.book.lots[via[0]].root, Some(Root::Animal(_))),
            "{via:?}"
        );
        for link in via.windows(2) {
            assert!(
                self.book
                    .inputs(link[1])
                    .iter()
                    .any(|(input, _)| *input == link[0]),
                "{via:?}"
            );
        }
    }

    fn compare_descendants(&self, code: &str, all: &BTreeMap<&str, BTreeMap<String, f64>>) {
        let read = self.read(code, |conn, row| {
            let found = read::trace::of_lot(conn, row)?;
            Ok(serde_json::to_value(answers::DescendantsRead::of(&found)).unwrap())
        });
        let lots = read["lots"].as_array().unwrap();
        let found: BTreeSet<String> = lots
            .iter()
            .map(|lot| lot["code"].as_str().unwrap().to_owned())
            .collect();
        assert_eq!(found, self.book.descendants(code), "{code}");
        let shares = self.book.shares_of(code, all);
        for lot in lots {
            let name = lot["code"].as_str().unwrap();
            match lot["share"].as_f64() {
                Some(share) => assert!(
                    (share - shares[name]).abs() < 1e-6,
                    "{code} in {name}: {share} is {}",
                    shares[name]
                ),
                None => assert!(all[code].is_empty(), "{code} has an animal"),
            }
            let mut out = mg(&lot["on_hand_grams"]);
            for account in ACCOUNTS {
                let told = mg(&lot[format!("{account}_grams")]);
                assert_eq!(told, self.book.sum(name, account), "{name} {account}");
                out += told;
            }
            let surplus = mg(&lot["surplus_grams"]);
            assert_eq!(surplus, self.book.surplus(name), "{name} surplus");
            let gap = mg(&lot["missing_grams"]) - surplus;
            assert_eq!(gap, mg(&lot["unexplained_grams"]), "{name} missing");
            assert_eq!(
                mg(&lot["made_grams"]) + mg(&lot["taken_back_grams"]),
                out,
                "{name}"
            );
        }
    }
}

fn mg(grams: &Value) -> i64 {
    let text = grams.to_string();
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let part: i64 = format!("{part:0<3}").parse().unwrap();
    let whole: i64 = whole.parse::<i64>().unwrap() * 1_000;
    if text.starts_with('-') {
        whole - part
    } else {
        whole + part
    }
}

/// An answer without the ways that led there: of two of one length either is told.
fn without_ways(told: &Value) -> Value {
    let mut told = told.clone();
    for sources in ["animals", "bought"] {
        for source in told[sources].as_array_mut().into_iter().flatten() {
            if let Some(source) = source.as_object_mut() {
                source.remove("via");
            }
        }
    }
    told
}
