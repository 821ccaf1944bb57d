//! `gambrel check`: the whole record, past a checker that is separate from the maker.

use crate::config::Where;
use crate::wire::lists::ProductEntry;
use domain::audit::AuditFinding;
use domain::family::claims;
use domain::lot::LotId;
use domain::product::Product;
use std::cell::RefCell;
use std::collections::HashMap;
use std::sync::Arc;
use store::audit::Report;
use store::family::{self, Extent, Products, WalkStart};
use store::{Conn, Store};

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
    let products = Known::default();
    store.read(|conn| {
        let mut report = store::audit::run(conn, |conn, row| {
            let version = row.version_id;
            let product = match products.known(version) {
                Some(known) => known,
                None => products.read(version, &store::entries::version(conn, version)?)?,
            };
            row.later(&product)
        })?;
        report.findings.extend(truths(conn, &products)?);
        Ok((report, store::digest::digest(conn)?))
    })
}

/// The products that were met.
#[derive(Default)]
struct Known(RefCell<HashMap<i32, Arc<Product>>>);

impl Products for Known {
    fn known(&self, version: i32) -> Option<Arc<Product>> {
        self.0.borrow().get(&version).cloned()
    }

    fn read(&self, version: i32, body: &str) -> store::Result<Arc<Product>> {
        let entry: ProductEntry = serde_json::from_str(body)
            .map_err(|error| store::Error::Broken(format!("versions {version}: {error}")))?;
        let product = Arc::new(entry.product());
        self.0.borrow_mut().insert(version, product.clone());
        Ok(product)
    }
}

/// How many lots' families are held in memory at once.
const AT_ONCE: usize = 100;

/// Lots whose labels would claim something else than is kept of them, worked out anew from all that
/// went into them.
fn truths(conn: &mut Conn, products: &Known) -> store::Result<Vec<AuditFinding>> {
    let printed = store::wrong_labels::printed_lots(conn)?;
    let mut findings = Vec::new();
    for some in printed.chunks(AT_ONCE) {
        let kept = store::wrong_labels::truths(conn, some)?;
        let family = family::load(conn, WalkStart::Keys(some), Extent::ANCESTORS, products)?;
        for lot in some {
            let now = family.get(LotId(*lot)).map(|of| claims(&family, of));
            if now.as_ref() != kept.get(lot) {
                let says = "would claim something else on its labels than is kept of it";
                findings.push(AuditFinding::new(format!("lot {lot}"), says));
            }
        }
    }
    Ok(findings)
}
