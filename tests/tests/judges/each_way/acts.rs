//! The acts: what each needs, what is done from Today on, with how many taps, and how it ends.

use super::Do::{self, Choose, Day, Go, Hour, Pick, Press, Scan, Sees, Taps, Tick, Type, Weighs};
use std::sync::atomic::{AtomicU32, Ordering};
use stories::Caller;
use stories::day::{Told, bought};

/// How an act ends.
pub(super) enum End {
    /// It is on record as that, and is undone.
    Recorded(&'static str),
    /// What it is about is held, until somebody closes that.
    Held,
    /// It was told, and nothing is recorded.
    Told,
}

/// An act.
pub(super) struct Act {
    pub(super) name: &'static str,
    /// What it needs is received, and what is done with it is told.
    pub(super) does: fn(&Caller) -> Vec<Do>,
    /// So many labels come out.
    pub(super) labels: usize,
    pub(super) end: End,
}

const fn act(
    name: &'static str,
    does: fn(&Caller) -> Vec<Do>,
    labels: usize,
    kind: &'static str,
) -> Act {
    let end = End::Recorded(kind);
    Act {
        name,
        does,
        labels,
        end,
    }
}

pub(super) const ACTS: [Act; 21] = [
    act("receive", receive, 1, "receive"),
    act("break down", break_down, 2, "break-down"),
    act("cure", cure, 1, "cure"),
    act("weigh", weigh, 0, "measure"),
    act("grind", grind, 4, "grind"),
    act("mix", mix, 1, "mix"),
    act("smoke", smoke, 1, "smoke"),
    act("cook", cook, 1, "cook"),
    act("cool", cool, 0, "chill"),
    act("render", render, 1, "render"),
    act("pack", pack, 12, "pack"),
    act("freeze", freeze, 0, "move"),
    act("thaw", thaw, 0, "move"),
    act("move", carry, 0, "move"),
    act("discard", discard, 0, "discard"),
    act("count", count, 0, "count"),
    act("sell", sell, 0, "sell"),
    act("clean down", clean_down, 0, "clean-down"),
    act("temperature", temperature, 0, "measure"),
    Act {
        name: "ask",
        does: ask,
        labels: 0,
        end: End::Told,
    },
    Act {
        name: "recall",
        does: recall,
        labels: 0,
        end: End::Held,
    },
];

const GRAND: Do = Press("button.grand");

fn go(path: &str) -> Do {
    Go(format!("a[href='{path}']"))
}

fn text(css: &'static str, text: &str) -> Do {
    Type(css, text.to_owned())
}

fn choose(name: &'static str, value: &str) -> Do {
    Choose(name, value.to_owned())
}

/// Something bought, in the first cooler.
fn has(caller: &Caller, product: &str, grams: u64) -> String {
    let meat = caller.receive(product).bought(bought("HRW", "X-1"));
    meat.grams(grams).to("cooler-1").made()
}

/// From Today to the page of an act on a lot: its tag is scanned, and its button pressed.
fn to(lot: &str, act: &str) -> [Do; 2] {
    [Scan(lot.to_owned()), go(&format!("/lots/{lot}/{act}"))]
}

/// From Today to the pot of a product: what is made, how, of what.
fn pot(kind: &str, product: &str) -> [Do; 3] {
    [
        go("/make"),
        go(&format!("/make/{kind}")),
        go(&format!("/make/{kind}?product={product}")),
    ]
}

fn row(lot: &str) -> Do {
    Tick(format!("input[type=checkbox][value='{lot}']"))
}

fn receive(_: &Caller) -> Vec<Do> {
    vec![
        go("/receive"),
        choose("product", "pig-half"),
        Pick("animal.farm", "BRC"),
        Day("animal.killed_on", "2026-06-24"),
        text("input[name='animal.carcass']", "0624-9"),
        choose("animal.side", "left"),
        text("input[name=grams]", "44.2"),
        GRAND,
        Taps(9),
    ]
}

fn break_down(caller: &Caller) -> Vec<Do> {
    // On each screen another pig: each has one left side.
    static PIGS: AtomicU32 = AtomicU32::new(20);
    let nth = PIGS.fetch_add(1, Ordering::Relaxed);
    let side = caller.side_of(&format!("0624-{nth}"));
    let [scan, way] = to(&side, "break-down");
    vec![
        scan,
        way,
        Taps(1),
        Weighs("11.025"),
        Press("[data-keep]"),
        Taps(1),
        Weighs("8.325"),
        Press("[data-keep]"),
        Taps(1),
        choose("_rest", "stays"),
        Press("[data-record] button.grand"),
        Taps(2),
    ]
}

fn cure(caller: &Caller) -> Vec<Do> {
    has(caller, "pork-belly", 5_000);
    let [make, kind, product] = pot("cure", "pancetta");
    vec![
        make,
        kind,
        product,
        text("input[name=_batch]", "4"),
        Sees("[data-plan]:not([hidden])"),
        GRAND,
        Taps(5),
    ]
}

fn weigh(caller: &Caller) -> Vec<Do> {
    let [scan, way] = to(&caller.noted("H-05"), "weigh");
    let weight = text("input[name=grams]", "8.115");
    vec![scan, way, weight, GRAND, Taps(2)]
}

fn grind(caller: &Caller) -> Vec<Do> {
    has(caller, "pork-trim", 5_000);
    has(caller, "pork-fat", 5_000);
    let [make, kind, product] = pot("grind", "ground-pork");
    vec![
        make,
        kind,
        product,
        text("input[name=_batch]", "2"),
        choose("outputs.0.pack_count", "4"),
        GRAND,
        Taps(6),
    ]
}

fn mix(_: &Caller) -> Vec<Do> {
    let [make, kind, product] = pot("mix", "soy-sesame-glaze");
    let batch = text("input[name=_batch]", "0.2");
    vec![make, kind, product, batch, GRAND, Taps(5)]
}

fn smoke(caller: &Caller) -> Vec<Do> {
    let ribs = has(caller, "pork-back-ribs", 3_000);
    let [make, kind, product] = pot("smoke", "smoked-ribs");
    vec![
        make,
        kind,
        product,
        row(&ribs),
        text("input[name='readings.celsius']", "78.5"),
        text("input[name='readings.hold_minutes']", "20"),
        text("input[name='outputs.0.grams']", "2400"),
        GRAND,
        Taps(8),
    ]
}

/// A pot with its probe's readings: the curve is drawn as they are typed.
fn cook(caller: &Caller) -> Vec<Do> {
    let bones = has(caller, "pork-bones", 4_000);
    let [make, kind, product] = pot("cook", "pork-stock");
    let mut does = vec![
        make,
        kind,
        product,
        row(&bones),
        text("input[name='readings.celsius']", "99"),
        text("input[name='readings.hold_minutes']", "60"),
        Press("details:has([data-curve]) summary"),
    ];
    does.extend(readings([
        ("08:30", "18.5"),
        ("09:10", "96"),
        ("10:20", "99"),
    ]));
    does.push(text("input[name='outputs.0.grams']", "3000"));
    does.extend([GRAND, Taps(15)]);
    does
}

fn readings(rows: [(&'static str, &str); 3]) -> Vec<Do> {
    const DEGREES: [&str; 3] = [
        "input[name='log.0.celsius']",
        "input[name='log.1.celsius']",
        "input[name='log.2.celsius']",
    ];
    let mut does = Vec::new();
    for (nth, (at, degrees)) in rows.into_iter().enumerate() {
        does.push(Hour(format!("log.{nth}.at"), at));
        does.push(text(DEGREES[nth], degrees));
    }
    does.push(Sees("figure [data-curve] polyline"));
    does
}

fn cool(caller: &Caller) -> Vec<Do> {
    let mut does = Vec::from(to(&caller.noted("L31"), "cool"));
    does.extend(readings([
        ("08:40", "60"),
        ("09:30", "20"),
        ("10:30", "4.5"),
    ]));
    does.extend([GRAND, Taps(8)]);
    does
}

fn render(caller: &Caller) -> Vec<Do> {
    let fat = has(caller, "pork-fat", 3_000);
    let [make, kind, product] = pot("render", "lard");
    vec![
        make,
        kind,
        product,
        row(&fat),
        text("input[name='readings.celsius']", "118"),
        text("input[name='readings.hold_minutes']", "30"),
        text("input[name='outputs.0.grams']", "2200"),
        GRAND,
        Taps(8),
    ]
}

fn pack(caller: &Caller) -> Vec<Do> {
    let [scan, way] = to(&caller.noted("L16"), "pack");
    vec![
        scan,
        way,
        text("input[name=_each]", "250"),
        Taps(1),
        choose("outputs.0.product", "bacon-sliced"),
        choose("outputs.0.pack_count", "12"),
        GRAND,
        Taps(3),
    ]
}

fn freeze(caller: &Caller) -> Vec<Do> {
    let [scan, way] = to(&has(caller, "pork-chop", 2_000), "freeze");
    vec![scan, way, GRAND, Taps(2)]
}

fn thaw(caller: &Caller) -> Vec<Do> {
    let [scan, way] = to(&caller.noted("L24"), "thaw");
    vec![scan, way, choose("to", "cooler-2"), GRAND, Taps(3)]
}

fn carry(caller: &Caller) -> Vec<Do> {
    let [scan, way] = to(&has(caller, "pork-chop", 2_000), "move");
    vec![scan, way, choose("to", "cooler-2"), GRAND, Taps(3)]
}

fn discard(caller: &Caller) -> Vec<Do> {
    let [scan, way] = to(&has(caller, "pork-chop", 2_000), "discard");
    vec![
        scan,
        way,
        Do::Tick("input[name='why']".to_owned()),
        GRAND,
        Taps(3),
    ]
}

fn count(caller: &Caller) -> Vec<Do> {
    let [scan, way] = to(&has(caller, "pork-chop", 2_000), "count");
    let found = text("input[name='packs.0.grams']", "1850.5");
    vec![scan, way, found, GRAND, Taps(3)]
}

/// From the scan to the word no tap, and one to sell.
fn sell(caller: &Caller) -> Vec<Do> {
    vec![
        go("/counter"),
        Taps(1),
        Scan(format!("{}/13", caller.noted("L13"))),
        Sees("[data-verdict=sell]"),
        Taps(0),
        Press("[data-sells] button"),
        Taps(1),
    ]
}

fn clean_down(_: &Caller) -> Vec<Do> {
    let way = go("/places/bench/clean-down");
    vec![Scan("bench".to_owned()), way, GRAND, Taps(2)]
}

fn temperature(_: &Caller) -> Vec<Do> {
    let way = go("/places/cooler-1/temperature");
    let degrees = text("input[name=celsius]", "3.4");
    vec![Scan("cooler-1".to_owned()), way, degrees, GRAND, Taps(2)]
}

fn ask(_: &Caller) -> Vec<Do> {
    vec![
        go("/ask"),
        Go("[data-about=pig]".to_owned()),
        Sees(".answers [data-told=yes] li"),
        Taps(2),
    ]
}

fn recall(caller: &Caller) -> Vec<Do> {
    let lot = has(caller, "pork-chop", 2_000);
    vec![
        go("/recall"),
        Type("main input[name=q]", lot),
        Go("main form button.act".to_owned()),
        Go("main a.act.grand.first".to_owned()),
        GRAND,
        Taps(4),
    ]
}
