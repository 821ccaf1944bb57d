//! `gambrel check`: the whole record, past a checker that is separate from the maker.

use crate::config::Where;
use crate::wire::lists::ProductEntry;
use domain::product::Product;
use std::collections::HashMap;
use store::Store;
use store::audit::Report;

/// Checks the record and prints what was found; the answer is whether it is sound.
///
/// # Errors
/// In words: the record cannot be opened or read.
pub fn run(place: &Where) -> Result<bool, String> {
    let store = Store::open(&place.address, false, 1).map_err(|error| error.to_string())?;
    let (report, digest) = look(&store).map_err(|error| error.to_string())?;
    for finding in &report.findings {
        println!("{}: {}", finding.about, finding.says);
    }
    println!(
        "{} deeds, {} lots, {} packs: {} findings",
        report.deeds,
        report.lots,
        report.packs,
        report.findings.len()
    );
    println!("digest {digest}");
    Ok(report.findings.is_empty())
}

/// What the checker finds in a record, and the record's digest, both at one moment.
///
/// # Errors
/// The record cannot be read.
pub fn look(store: &Store) -> store::Result<(Report, String)> {
    let mut products: HashMap<i32, Product> = HashMap::new();
    store.read(|conn| {
        let report = store::audit::run(conn, |conn, row| {
            let version = row.version_id;
            if let Some(known) = products.get(&version) {
                return row.later(known);
            }
            let body = store::entries::version(conn, version)?;
            let entry: ProductEntry = serde_json::from_str(&body)
                .map_err(|error| store::Error::Broken(format!("versions {version}: {error}")))?;
            row.later(products.entry(version).or_insert(entry.product()))
        })?;
        Ok((report, store::digest::digest(conn)?))
    })
}
