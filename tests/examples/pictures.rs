//! Makes the two pictures of the README from the demo: `cargo run -p stories --example pictures`
//!
//! A side of pork on the bench, half of it weighed off, and the label of a jar of rillettes. Chromium draws the
//! one, poppler the other; each stays under 150 kB.

use png::{BitDepth, ColorType, Compression, Decoder, Encoder, Filter};
use std::collections::HashMap;
use std::io::Cursor;
use std::path::Path;
use std::process::Command;
use stories::browser::Browser;
use stories::{Caller, Engine, House};

/// The most that a picture may weigh.
const MOST: usize = 150_000;

/// In so many colours a picture is kept.
const COLOURS: usize = 48;

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
         document.documentElement.style.scrollbarWidth = 'none';
         document.activeElement.blur(); window.scrollTo(0, 0);",
    );
    browser.picture()
}

fn label(caller: &Caller, house: &House) -> Vec<u8> {
    let rillettes = caller.noted("L31");
    let labels = caller.get(&format!("/api/lots/{rillettes}/labels.pdf"));
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

/// A colour.
type Colour = [u8; 3];

/// The same picture in few colours: each pixel in the nearest of those that it has most of.
fn in_few_colours(picture: &[u8]) -> Vec<u8> {
    let mut reader = Decoder::new(Cursor::new(picture))
        .read_info()
        .expect("a PNG");
    let mut pixels = vec![0; reader.output_buffer_size().expect("a size")];
    let info = reader.next_frame(&mut pixels).expect("its pixels");
    let each = info.color_type.samples();
    let pixels = pixels[..info.buffer_size()].chunks_exact(each);
    let pixels: Vec<Colour> = pixels
        .map(|pixel| match pixel {
            [red, green, blue, ..] => [*red, *green, *blue],
            _ => [pixel[0]; 3],
        })
        .collect();
    let mut counts: HashMap<Colour, usize> = HashMap::new();
    for pixel in &pixels {
        *counts.entry(*pixel).or_default() += 1;
    }
    let mut palette: Vec<Colour> = counts.keys().copied().collect();
    palette.sort_by_key(|colour| (std::cmp::Reverse(counts[colour]), *colour));
    palette.truncate(COLOURS);
    let apart = |one: &Colour, other: &Colour| -> u32 {
        let channels = one.iter().zip(other);
        channels
            .map(|(a, b)| u32::from(a.abs_diff(*b)).pow(2))
            .sum()
    };
    let nearest = |colour: &Colour| {
        let nth = (0..palette.len()).min_by_key(|nth| apart(&palette[*nth], colour));
        nth.and_then(|nth| u8::try_from(nth).ok()).unwrap_or(0)
    };
    let names: HashMap<Colour, u8> = counts.keys().map(|one| (*one, nearest(one))).collect();
    let named: Vec<u8> = pixels.iter().map(|pixel| names[pixel]).collect();

    let mut file = Vec::new();
    let mut encoder = Encoder::new(&mut file, info.width, info.height);
    encoder.set_color(ColorType::Indexed);
    encoder.set_depth(BitDepth::Eight);
    encoder.set_palette(palette.concat());
    encoder.set_compression(Compression::High);
    encoder.set_filter(Filter::NoFilter);
    let mut writer = encoder.write_header().expect("a header");
    writer.write_image_data(&named).expect("its pixels");
    writer.finish().expect("an end");
    file
}

fn keep(file: &Path, picture: &[u8]) {
    let picture = &in_few_colours(picture);
    let bytes = picture.len();
    assert!(bytes < MOST, "{}: {bytes} bytes", file.display());
    std::fs::write(file, picture).expect("the picture can be kept");
    println!("{}: {bytes} bytes", file.display());
}
