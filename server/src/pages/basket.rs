//! Several packs for one guest: what they are, what they come to, and the deeds that sell them.

use super::says::PageSays;
use super::spoken::Words;
use crate::app::App;
use crate::error::Result;
use crate::lists::kitchen::Kitchen;
use crate::read;
use domain::counter::{Known, ScanView};
use domain::lot::Lot;
use domain::lot::numbers::in_runs;
use domain::words::{Allergen, Verdict};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use store::Conn;

/// The most packs of one basket.
const MOST: usize = 40;

/// A pack that may be sold, with its word.
pub struct Sellable {
    known: Known,
    /// The number of the pack.
    pack: u32,
    is_last_day: bool,
}

/// What one guest takes.
pub struct Basket {
    /// The packs, those that were scanned before only.
    pub lines: Vec<BasketLine>,
    /// What all of them come to, the one that is scanned now as well; nothing where one has no price.
    pub total: Option<String>,
    /// How many those are.
    pub packs: usize,
    /// The allergens of all of them.
    pub together: String,
    /// Those that were scanned before, as an address says them.
    pub with_before: String,
    /// All of them, likewise.
    pub with_all: String,
    /// The deeds that sell them: one for each lot.
    pub deeds: Option<String>,
    /// What is sold then, for a slip that waits on the device: each thing by its name and its numbers.
    pub says: String,
    /// Said where some of those that were scanned before may no longer be sold.
    pub dropped: Option<String>,
}

/// One pack of it.
pub struct BasketLine {
    /// What it is.
    pub name: String,
    /// As an address says it.
    pub key: String,
    /// Which pack it is: several of a lot look alike.
    pub pack: String,
    /// Its allergens.
    pub allergens: String,
    /// Is today its last day?
    pub is_last_day: bool,
    /// What it costs, where it has a price.
    pub price: Option<String>,
    /// The basket without it, as an address says it.
    pub without: String,
}

/// What an address names.
#[derive(Default)]
pub struct Named {
    /// The packs.
    pub packs: Vec<Sellable>,
    /// What may no longer be sold.
    pub dropped: Vec<String>,
}

/// The packs that an address names, as they are now; and what may no longer be sold, as it was named.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn packs(app: &App, conn: &mut Conn, kitchen: &Kitchen, with: &str) -> Result<Named> {
    let codes = with.split(',').map(str::trim);
    let codes = codes.filter(|code| !code.is_empty()).take(MOST);
    let mut named = Named::default();
    for code in codes {
        match sellable(&read::scan::scan(app, conn, kitchen, code)?) {
            Some(pack) => named.packs.push(pack),
            None => named.dropped.push(code.chars().take(40).collect()),
        }
    }
    each_once(&mut named.packs);
    Ok(named)
}

/// What was scanned, if it is a pack that may be sold.
pub fn sellable(scan: &ScanView) -> Option<Sellable> {
    let verdict = scan.answer.verdict;
    let known = scan.known.as_ref()?;
    let may = matches!(verdict, Verdict::Sell | Verdict::SellToday);
    Some(Sellable {
        pack: known.pack.filter(|_| may)?,
        known: known.clone(),
        is_last_day: verdict == Verdict::SellToday,
    })
}

/// A pack that was scanned twice is one pack.
pub fn each_once(packs: &mut Vec<Sellable>) {
    let mut seen = BTreeSet::new();
    packs.retain(|one| seen.insert(one.key()));
}

impl Sellable {
    fn lot(&self) -> &Lot {
        &self.known.lot
    }

    /// As an address says it.
    fn key(&self) -> String {
        format!("{}/{}", self.lot().code, self.pack)
    }
}

impl Basket {
    /// Of packs, of which so many were scanned before.
    pub fn of(words: &Words, packs: &[Sellable], before: usize, kitchen: &Kitchen) -> Basket {
        let before = before.min(packs.len());
        let currency = &kitchen.entry.currency.0;
        let price = |one: &Sellable| one.known.price_minor().filter(|minor| *minor > 0);
        let keys: Vec<String> = packs.iter().map(Sellable::key).collect();
        let without = |nth: usize| {
            let others = keys[..before].iter().enumerate();
            let others = others.filter(|(other, _)| *other != nth);
            let others: Vec<&str> = others.map(|(_, key)| key.as_str()).collect();
            others.join(",")
        };
        let line = |(nth, one): (usize, &Sellable)| BasketLine {
            name: one.lot().product.name(words.lang()).to_owned(),
            key: one.key(),
            allergens: words.allergens_called(one.lot()),
            pack: one.lot().shown(one.pack),
            is_last_day: one.is_last_day,
            price: price(one).map(|minor| words.money(minor, currency)),
            without: without(nth),
        };
        let allergens: BTreeSet<Allergen> = packs
            .iter()
            .flat_map(|one| one.lot().allergens.iter().copied())
            .collect();
        let total: Option<i64> = packs.iter().map(price).sum();
        let are_known = packs.iter().all(|one| one.lot().knows_allergens());
        Basket {
            lines: packs[..before].iter().enumerate().map(line).collect(),
            total: total.map(|minor| words.money(minor, currency)),
            packs: packs.len(),
            together: words.say(PageSays::BasketTogether {
                allergens: words.called(&allergens, are_known),
            }),
            with_before: keys[..before].join(","),
            with_all: keys.join(","),
            deeds: (!packs.is_empty()).then(|| deeds(packs).to_string()),
            says: words.say(PageSays::CounterSoldPlain {
                what: things(words, packs),
            }),
            dropped: None,
        }
    }
}

impl Named {
    /// Said where something may no longer be sold.
    pub fn says_dropped(&self, words: &Words) -> Option<String> {
        let packs = self.dropped.join(", ");
        (!packs.is_empty()).then(|| words.say(PageSays::BasketDropped { packs }))
    }
}

/// Each lot once, with the numbers of its packs.
fn things(words: &Words, packs: &[Sellable]) -> String {
    let mut lots: Vec<(&Lot, Vec<u32>)> = Vec::new();
    for one in packs {
        match lots.iter_mut().find(|(lot, _)| lot.id == one.lot().id) {
            Some((_, numbers)) => numbers.push(one.pack),
            None => lots.push((one.lot(), vec![one.pack])),
        }
    }
    let told = lots.into_iter().map(|(lot, mut numbers)| {
        numbers.sort_unstable();
        let name = lot.product.name(words.lang());
        match lot.pack_count {
            1 => format!("{name}, {}", lot.code.shown()),
            _ => format!("{name}, {}/{}", lot.code.shown(), in_runs(&numbers)),
        }
    });
    told.collect::<Vec<_>>().join("; ")
}

/// One departure for each lot, in the order in which they were scanned.
fn deeds(packs: &[Sellable]) -> Value {
    let mut lots: Vec<(String, Vec<u32>)> = Vec::new();
    for one in packs {
        let code = one.lot().code.to_string();
        match lots.iter_mut().find(|(lot, _)| *lot == code) {
            Some((_, numbers)) => numbers.push(one.pack),
            None => lots.push((code, vec![one.pack])),
        }
    }
    let deed =
        |(lot, packs): (String, Vec<u32>)| json!({ "kind": "sell", "lot": lot, "packs": packs });
    lots.into_iter().map(deed).collect()
}
