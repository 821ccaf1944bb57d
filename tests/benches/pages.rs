//! Every page of the demo kitchen as a browser paints it, a scan until its word stands there, and the lists of a record
//! with 10,000 lots more, some 5,000 of them on hand at one place: every page of the demo once more, and those lists.
//!
//! `cargo bench -p stories --bench pages`, the binary built before, Chromium installed. Wanted: first paint below 200 ms,
//! a word below 100 ms, a page with 10,000 lots on record answered below 500 ms and below 60 kB over the wire.

#[allow(dead_code, reason = "other benches use the rest of it")]
mod record;

use gambrel::world::Clock;
use serde_json::Value;
use std::time::Duration;
use store::Address;
use stories::bench::{median, ms, row, size};
use stories::browser::Browser;
use stories::furniture::furniture;
use stories::pages::pages;
use stories::{Engine, House};

/// First paint.
const WANTED: Duration = Duration::from_millis(200);
/// What is asked of a record with many lots, besides every page.
const MANY: [&str; 15] = [
    "/",
    "/lots",
    "/lots?place=case",
    "/lots?on_hand=yes",
    "/find?q=pork",
    "/find?q=chop",
    "/animals",
    "/places",
    "/places/case",
    "/places/case/count",
    "/cure-room",
    "/make/cook",
    "/printing",
    "/ask?asked=yes&about=pig",
    "/papers",
];

/// When the first words stood there and when the last byte had come, in milliseconds from the tap, and the bytes over the wire.
const PAINTED: &str = "new Promise((told) => {
    const look = () => {
        const painted = performance.getEntriesByName('first-contentful-paint')[0];
        if (!painted) {
            return setTimeout(look, 10);
        }
        const page = performance.getEntriesByType('navigation')[0];
        const heavy = performance.getEntriesByType('resource')
            .filter((one) => one.initiatorType !== 'fetch' && !one.name.endsWith('.ttf')).concat(page);
        told({ first: painted.startTime, last: page.responseEnd, bytes: heavy.reduce((sum, one) => sum + one.transferSize, 0) });
    };
    look();
})";

/// Types a code as a scanner does, and waits until its word is painted: milliseconds.
const SCAN: &str = "new Promise((told) => {
    const begun = performance.now();
    const seen = () => document.querySelector('[data-verdict]') && !document.querySelector('[data-bench-old]');
    document.querySelector('[data-verdict]')?.setAttribute('data-bench-old', '');
    const look = () => seen() ? requestAnimationFrame(() => setTimeout(() => told(performance.now() - begun))) : requestAnimationFrame(look);
    const field = document.querySelector('[data-scan]');
    field.value = 'CODE';
    field.form.requestSubmit();
    requestAnimationFrame(look);
})";

fn main() {
    let rounds = size(5, 1);
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let pages: Vec<(&str, String)> = pages(&caller);
    let browser = Browser::reading("en");
    browser.sign_in(&house.address, "Oda Marsh");
    browser.resize((820, 1180));
    println!("median of {rounds} times; its parts kept from before");
    let head = ["page", "painted ms", "last byte ms", "bytes"];
    row(&head);
    for (name, path) in &pages {
        show(&browser, &format!("{}{path}", house.address), name, rounds);
    }
    let code = caller.noted("L13");
    scan(&browser, &house.address, &code, size(20, 2));

    for (path, body) in furniture() {
        if path == "/api/products" {
            // Those that the demo has too stay as they are.
            let _ = caller.post(path, &body);
        }
    }
    let address = Address::parse(&house.database).expect("an address");
    let grown = record::grow(&record::open(&address, Clock::Machine), size(10_000, 500));
    println!("with {} lots more", grown.lots);
    row(&head);
    let every = pages.iter().map(|(name, path)| (*name, path.as_str()));
    let every: Vec<(&str, &str)> = every.chain(MANY.map(|path| (path, path))).collect();
    let mut slow = Vec::new();
    for (name, path) in &every {
        let took = show(&browser, &format!("{}{path}", house.address), name, rounds);
        if took >= WANTED {
            slow.push(format!("{name} {} ms", ms(took)));
        }
    }
    match slow.is_empty() {
        true => println!("each of {} painted in less than 200 ms", every.len()),
        false => println!(
            "{} of {} painted later: {}",
            slow.len(),
            every.len(),
            slow.join(", ")
        ),
    }
    scan(&browser, &house.address, &grown.codes[0], size(20, 2));
    // What was grown was written past the program, so no chain holds it: such a record is not checked when it goes.
    let mut house = house;
    house.kill();
    std::fs::remove_file(&house.database).expect("the record of the bench is a file");
    std::mem::forget(house);
}

/// A row of the table about one page; when its first words stood there.
fn show(browser: &Browser, address: &str, name: &str, rounds: usize) -> Duration {
    let seen: Vec<Value> = (0..=rounds)
        .map(|_| {
            browser.open(address);
            browser.wait_for(PAINTED)
        })
        .collect();
    // The first brings what is kept from then on.
    let middle = |field: &str| {
        let took = seen[1..].iter().filter_map(|one| one[field].as_f64());
        median(
            took.map(|took| Duration::from_secs_f64(took / 1e3))
                .collect(),
        )
    };
    let bytes = seen[1]["bytes"].to_string();
    let first = middle("first");
    row(&[name, &ms(first), &ms(middle("last")), &bytes]);
    first
}

/// How long the word of a scan takes on a page that is open.
fn scan(browser: &Browser, address: &str, code: &str, rounds: usize) {
    browser.open(&format!("{address}/counter"));
    let scan = SCAN.replace("CODE", &format!("{code}/1"));
    let took = (0..rounds).map(|_| {
        let took = browser.wait_for(&scan);
        Duration::from_secs_f64(took.as_f64().expect("a word came") / 1e3)
    });
    println!("scan to word: {} ms", ms(median(took.collect())));
}
