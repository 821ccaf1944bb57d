//! What stories of labels ask for, and the programs that read what came out.

use crate::Caller;
use serde_json::Value;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What a program printed.
///
/// # Panics
/// It is missing or complains.
pub fn run(program: &str, args: &[&str]) -> String {
    let out = Command::new(program)
        .args(args)
        .output()
        .unwrap_or_else(|error| panic!("{program} is missing ({error}); tests/run installs it"));
    let told = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "{program} {args:?}: {told}");
    String::from_utf8_lossy(&out.stdout).into_owned()
}

/// Changes the kitchen's own entry.
pub fn set(caller: &Caller, changes: &[(&str, Value)]) {
    let kitchen = caller.get("/api/kitchen").expect(200);
    let mut body = kitchen.body.clone();
    for (field, value) in changes {
        body[*field] = value.clone();
    }
    let etag = kitchen.etag.unwrap();
    caller.put_over("/api/kitchen", &etag, &body).expect(200);
}

/// Changes a product.
pub fn change(caller: &Caller, product: &str, changes: &[(&str, Value)]) {
    let path = format!("/api/products/{product}");
    let entry = caller.get(&path).expect(200);
    let mut body = entry.body.clone();
    for (field, value) in changes {
        body[*field] = value.clone();
    }
    caller
        .put_over(&path, &entry.etag.unwrap(), &body)
        .expect(200);
}

/// A file with these bytes.
///
/// # Panics
/// It cannot be written.
pub fn save(folder: &Path, name: &str, bytes: &[u8]) -> PathBuf {
    let file = folder.join(name);
    std::fs::write(&file, bytes).unwrap();
    file
}

/// The words of a PDF, one blank between two.
pub fn words(pdf: &Path) -> String {
    let text = run("pdftotext", &["-layout", pdf.to_str().unwrap(), "-"]);
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What both readers see on the first page: kind and text of each code.
pub fn codes(pdf: &Path, dpi: &str) -> BTreeSet<(String, String)> {
    let stem = pdf.with_extension("");
    let (file, stem) = (pdf.to_str().unwrap(), stem.to_str().unwrap());
    run(
        "pdftoppm",
        &["-r", dpi, "-gray", "-png", "-singlefile", file, stem],
    );
    let picture = format!("{stem}.png");
    let python = std::env::var("GAMBREL_PYTHON").unwrap_or_else(|_| "python3".into());
    let script = "import sys, zxingcpp\nfrom PIL import Image\nfor c in zxingcpp.read_barcodes(Image.open(sys.argv[1])): print(c.symbology_identifier, c.bytes.decode().replace(chr(29), '|'))";
    let by_zxing = run(&python, &["-c", script, &picture]);
    let by_zbar = run("zbarimg", &["-q", "--raw", &picture]);
    let texts = |text: &str| -> BTreeSet<String> { text.lines().map(str::to_owned).collect() };
    let codes: BTreeSet<(String, String)> = by_zxing
        .lines()
        .map(|line| line.split_once(' ').unwrap())
        .map(|(kind, text)| (kind.to_owned(), text.to_owned()))
        .collect();
    let both: BTreeSet<String> = codes.iter().map(|(_, text)| text.clone()).collect();
    assert_eq!(texts(&by_zbar.replace('\u{1d}', "|")), both);
    codes
}

/// Every lot of the record, oldest last.
pub fn all_lots(caller: &Caller) -> Vec<String> {
    let mut codes: Vec<String> = Vec::new();
    loop {
        let after = codes
            .last()
            .map_or(String::new(), |code| format!("&after={code}"));
        let page = caller
            .get(&format!("/api/lots?limit=200{after}"))
            .expect(200)
            .body;
        let lots = page["lots"].as_array().unwrap().clone();
        codes.extend(
            lots.iter()
                .map(|lot| lot["code"].as_str().unwrap().to_owned()),
        );
        if lots.len() < 200 {
            return codes;
        }
    }
}
