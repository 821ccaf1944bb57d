//! 1,000 different labels on one core: ours (layout and PDF), the floor, and ReportLab, in one run.
//!
//! `cargo bench -p labels`. ReportLab and segno come from the Python named by `GAMBREL_PYTHON`,
//! else `python3`. The floor makes its square codes with our own `mask`, and packs pages at the usual
//! level. Wanted: at most 1.3 times the floor, at least 10 times faster than the peer.

#[path = "../tests/layout/common/mod.rs"]
mod common;
mod floor;

use std::path::Path;
use std::process::Command;
use std::sync::LazyLock;
use std::time::{Duration, Instant};

use labels::{Dpi, Facts, Field, Placed, PlacedLabel, Template, lay_out, pdf};
use serde_json::{Value, json};

/// How many labels, and how often: `--smallest` only shows that it still runs.
static SIZE: LazyLock<(usize, usize)> = LazyLock::new(|| {
    let smallest = std::env::args().any(|arg| arg == "--smallest");
    if smallest { (20, 1) } else { (1_000, 7) }
});

fn facts() -> Vec<Facts> {
    let different = |n: usize| {
        let mut facts = common::full_pack();
        facts
            .texts
            .insert(Field::Lot, format!("BRC-26159-A00-6 · {n}"));
        facts
            .texts
            .insert(Field::Net, format!("{} g", 400 + n % 300));
        facts.qr = format!("https://trace.cinderhook.example/L/BRC26159A006/{n}");
        facts.linear = format!("BRC26159A006/{n}");
        facts
    };
    (1..=SIZE.0).map(different).collect()
}

fn ours(facts: &[Facts], template: &Template) -> Vec<u8> {
    let placed: Vec<PlacedLabel> = facts
        .iter()
        .map(|facts| lay_out(facts, template, Dpi::D203).unwrap())
        .collect();
    pdf(&placed).unwrap()
}

/// Median time of some rounds, and the size of what was made.
#[allow(clippy::disallowed_methods, reason = "a bench reads the clock")]
fn time(mut work: impl FnMut() -> Vec<u8>) -> (Duration, usize) {
    let mut bytes = 0;
    let mut times: Vec<Duration> = (0..SIZE.1)
        .map(|_| {
            let start = Instant::now();
            bytes = work().len();
            start.elapsed()
        })
        .collect();
    times.sort();
    (times[SIZE.1 / 2], bytes)
}

/// The placed items as JSON, for the peer.
fn items(label: &PlacedLabel) -> Value {
    let mm = |length: labels::Length| length.to_mm();
    let area = |a: &labels::Area| json!([mm(a.x), mm(label.height - a.bottom()), mm(a.w), mm(a.h)]);
    let items = label.items.iter().map(|item| match item {
        Placed::Text(line) => json!({
            "text": line.text, "x": mm(line.x), "y": mm(label.height - line.baseline),
            "size": mm(line.size), "weight": line.weight.as_str(),
        }),
        Placed::Rule(rule) => json!({ "dark": [area(rule)] }),
        Placed::Picture(picture) => {
            json!({ "dark": picture.dark.iter().map(area).collect::<Vec<_>>() })
        }
        Placed::Code(code) if code.kind == labels::CodeKind::Qr => json!({
            "qr": code.payload, "at": area(&code.bounds),
            "module": mm(code.bounds.w) / (code.modules + 2 * labels::QR_QUIET) as f64,
        }),
        Placed::Code(code) => json!({ "dark": code.dark.iter().map(area).collect::<Vec<_>>() }),
    });
    let items: Vec<Value> = items.collect();
    json!({ "width": mm(label.width), "height": mm(label.height), "items": items })
}

/// Seconds and bytes as the peer reports them.
fn peer(placed: &[PlacedLabel]) -> (Duration, usize) {
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join("bulk.json");
    let all: Vec<Value> = placed.iter().map(items).collect();
    std::fs::write(&file, Value::from(all).to_string()).unwrap();
    let crate_dir = Path::new(env!("CARGO_MANIFEST_DIR"));
    let python = std::env::var("GAMBREL_PYTHON").unwrap_or_else(|_| "python3".into());
    let mut command = Command::new(&python);
    command
        .arg(crate_dir.join("benches/reportlab_bulk.py"))
        .arg(&file)
        .arg(crate_dir.join("fonts"));
    let output = command
        .output()
        .unwrap_or_else(|error| panic!("missing tool: {python} ({error})"));
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "reportlab_bulk.py: {complaint}");
    let answer = String::from_utf8(output.stdout).unwrap();
    let (seconds, bytes) = answer.trim().split_once(' ').unwrap();
    (
        Duration::from_secs_f64(seconds.parse().unwrap()),
        bytes.parse().unwrap(),
    )
}

fn row(what: &str, (time, bytes): (Duration, usize), count: usize) {
    let each = time.as_secs_f64() * 1e6 / count as f64;
    println!(
        "{what:<34} {each:>9.0} us/label {:>8} B/label",
        bytes / count
    );
}

fn main() {
    let (count, rounds) = *SIZE;
    let (facts, template, faces) = (facts(), common::pack_tall(), floor::faces());
    let placed: Vec<PlacedLabel> = facts
        .iter()
        .map(|facts| lay_out(facts, &template, Dpi::D203).unwrap())
        .collect();
    let one_floor = time(|| floor::pdf(&placed[..1], &faces));
    let one_ours = time(|| ours(&facts[..1], &template));
    let many_floor = time(|| floor::pdf(&placed, &faces));
    let many_ours = time(|| ours(&facts, &template));
    let layout = time(|| {
        for facts in &facts {
            std::hint::black_box(lay_out(facts, &template, Dpi::D203).unwrap());
        }
        Vec::new()
    });
    let one_peer = peer(&placed[..1]);
    let many_peer = peer(&placed);
    println!("pack label, 203 dpi; medians of {rounds}, the peer's own clock and median of 3");
    row("1 label, floor", one_floor, 1);
    row("1 label, ours", one_ours, 1);
    row("1 label, ReportLab + segno", one_peer, 1);
    row("many labels, floor", many_floor, count);
    row("many labels, ours", many_ours, count);
    row("   of which layout and codes", layout, count);
    row("many labels, ReportLab + segno", many_peer, count);
    let ratio = |a: (Duration, usize), b: (Duration, usize)| a.0.as_secs_f64() / b.0.as_secs_f64();
    println!(
        "ours / floor: {:.2} (wanted: at most 1.3)",
        ratio(many_ours, many_floor)
    );
    println!(
        "ReportLab / ours: {:.1} (wanted: at least 10)",
        ratio(many_peer, many_ours)
    );
}
