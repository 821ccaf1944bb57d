//! Makes the two pictures of the README from the demo: `cargo run -p stories --example pictures`
//!
//! A side of pork on the bench, half of it weighed off, and the label of a pack of bacon. Chromium draws the
//! one, poppler the other; each stays under 150 kB.

use std::path::Path;
use std::process::Command;
use stories::browser::Browser;
use stories::{Caller, Engine, House};

/// The most that a picture may weigh.
const MOST: usize = 150_000;

/// What is weighed off, and what is on the scale.
const WEIGHED: [&str; 5] = ["11.025", "8.325", "6.975", "1.440", "3.600"];
const ON_THE_SCALE: &str = "4.050";

fn main() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../pictures");
    std::fs::create_dir_all(&folder).expect("the folder can be made");
    let house = House::demo(Engine::Sqlite);
    keep(&folder.join("bench.png"), &bench(&house));
    keep(&folder.join("label.png"), &label(&house.caller(), &house));
}

fn bench(house: &House) -> Vec<u8> {
    let side = house.caller().side_on_the_rail();
    let browser = Browser::reading("en");
    browser.sign_in(&house.address, "Pim Verrall");
    browser.resize((1280, 860));
    browser.open(&format!("{}/lots/{side}/break-down", house.address));
    stories::queue::until(|| {
        browser.run("return document.activeElement.matches('[data-weight]')") == true
    });
    for weight in WEIGHED {
        browser.press(&format!("{weight}\u{e007}\u{e007}"));
    }
    browser.press(&format!("{ON_THE_SCALE}\u{e007}"));
    // The device's own clock is another than the demo's.
    browser.run(
        "document.querySelector('[data-last-says]').textContent =
            document.querySelector('[data-last-says]').textContent.replace(/[0-9]+:[0-9]+.[AP]M/, '10:52 AM');
         document.activeElement.blur(); window.scrollTo(0, 0);",
    );
    browser.picture()
}

fn label(caller: &Caller, house: &House) -> Vec<u8> {
    let bacon = caller.noted("L13");
    let labels = caller.get(&format!("/api/lots/{bacon}/labels.pdf?packs=13"));
    let (pdf, png) = (
        house.folder().join("label.pdf"),
        house.folder().join("label"),
    );
    std::fs::write(&pdf, labels.expect(200).bytes).expect("the label can be kept");
    let drawn = Command::new("pdftoppm")
        .args(["-singlefile", "-png", "-gray", "-r", "254"])
        .args([&pdf, &png])
        .status();
    assert!(
        drawn.is_ok_and(|ended| ended.success()),
        "pdftoppm is missing; tests/run installs it (poppler-utils)"
    );
    std::fs::read(png.with_extension("png")).expect("the label as a picture")
}

fn keep(file: &Path, picture: &[u8]) {
    let bytes = picture.len();
    assert!(bytes < MOST, "{}: {bytes} bytes", file.display());
    std::fs::write(file, picture).expect("the picture can be kept");
    println!("{}: {bytes} bytes", file.display());
}
