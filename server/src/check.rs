//! `gambrel check`: the whole record, past a checker that is separate from the maker.

use crate::config::Where;
use crate::lists::origins;
use crate::wire::lists::ProductEntry;
use domain::audit::AuditFinding;
use domain::family::claims;
use domain::lot::LotId;
use domain::product::Product;
use std::cell::RefCell;
use std::collections::HashMap;
use std::sync::Arc;
use store::audit::Report;
use store::chain::{Anchor, Chain};
use store::family::{self, Extent, Products, WalkStart};
use store::{Conn, Store};

/// Checks the record and prints what was found; the answer is whether it is sound.
///
/// # Errors
/// In words: the record cannot be opened or read.
pub fn run(place: &Where, anchor: Option<&str>) -> Result<bool, String> {
    let anchor = match anchor {
        Some(text) => Some(Anchor::parse(text).ok_or_else(|| {
            format!("{text:?} is no anchor; write it as it was printed: GAMBREL, a number, and 64 digits and letters")
        })?),
        None => None,
    };
    let store = opened(place)?;
    let (report, chain, digest) =
        whole(&store, anchor.as_ref()).map_err(|error| error.to_string())?;
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
    let late = match chain.late {
        0 => String::new(),
        late => format!(", {late} of them sealed when the record got its chain"),
    };
    println!("{} links{late}", chain.links);
    if let (Some(anchor), true) = (&anchor, report.findings.is_empty()) {
        println!(
            "nothing up to link {} was altered since the anchor was made",
            anchor.number
        );
    }
    if let Some(end) = &chain.end {
        println!("anchor {end}");
    }
    println!("digest {digest}");
    Ok(report.findings.is_empty())
}

/// The end of the chain, as a line to be kept outside the record.
///
/// # Errors
/// In words: the record cannot be opened or read, or nothing is on record.
pub fn anchor(place: &Where) -> Result<String, String> {
    let end = opened(place)?.look(store::chain::anchor);
    let end = end.map_err(|error| error.to_string())?;
    end.map(|anchor| anchor.to_string())
        .ok_or_else(|| "nothing is on record yet, so there is nothing to anchor".into())
}

/// The record, untouched if that can be: one of an earlier version is brought up to this one first.
fn opened(place: &Where) -> Result<Store, String> {
    let untouched = Store::to_read(&place.address, 2).map_err(|error| error.to_string())?;
    match untouched {
        Some(store) => Ok(store),
        None => Store::open(&place.address, false, 2).map_err(|error| error.to_string()),
    }
}

/// What is proven of a record.
#[derive(Debug)]
pub struct Proven {
    /// Deeds, lots and packs.
    pub counts: (u64, u64, u64),
    /// The end of its chain.
    pub anchor: Option<Anchor>,
    /// Its digest.
    pub digest: String,
    /// What is not as it must be.
    pub findings: Vec<AuditFinding>,
}

impl Proven {
    fn of((report, chain, digest): Whole) -> Proven {
        Proven {
            counts: (report.deeds, report.lots, report.packs),
            anchor: chain.end,
            digest,
            findings: report.findings,
        }
    }

    /// How much there is of it, in words.
    pub fn counted(&self) -> String {
        let (deeds, lots, packs) = self.counts;
        format!("{deeds} deeds, {lots} lots, {packs} packs")
    }
}

/// Proves a record.
///
/// # Errors
/// The record cannot be read.
pub fn proven(store: &Store) -> store::Result<Proven> {
    whole(store, None).map(Proven::of)
}

/// Proves a record in the transaction that is open.
///
/// # Errors
/// The record cannot be read.
pub fn proven_of(conn: &mut Conn) -> store::Result<Proven> {
    let says = Says::of(conn, None);
    Ok(Proven::of(both(Bytes::of(conn), says)))
}

/// What the checker finds in a record, and the record's digest, both at one moment.
///
/// # Errors
/// The record cannot be read.
pub fn look(store: &Store) -> store::Result<(Report, String)> {
    let (report, _, digest) = whole(store, None)?;
    Ok((report, digest))
}

/// What was found, what was seen of the chain, and the digest.
type Whole = (Report, Chain, String);

/// The same, with what was seen of its chain, held against an anchor. What is so damaged that one of the checkers
/// cannot read it is a finding: the others go on. Both halves are looked at side by side: the whole of a large record is
/// proven before each of its copies is relied on.
///
/// # Errors
/// The record cannot be read.
pub fn whole(store: &Store, anchor: Option<&Anchor>) -> store::Result<Whole> {
    let (bytes, says) = store.read_beside(
        |conn| Ok::<_, store::Error>(Bytes::of(conn)),
        |conn| Ok(Says::of(conn, anchor)),
    )?;
    Ok(both(bytes, says))
}

fn both(mut bytes: Bytes, says: Says) -> Whole {
    let (mut chain, mut report) = (says.chain, says.report);
    bytes.findings.append(&mut chain.findings);
    bytes.findings.append(&mut report.findings);
    report.findings = bytes.findings;
    (report, chain, bytes.digest)
}

fn unread(error: store::Error) -> AuditFinding {
    AuditFinding::new("the record", error.to_string())
}

/// Of what is on the disk: whether the file is sound, and the digest of all rows.
struct Bytes {
    digest: String,
    findings: Vec<AuditFinding>,
}

impl Bytes {
    fn of(conn: &mut Conn) -> Bytes {
        let mut findings = Vec::new();
        match store::integrity::check(conn) {
            Ok(found) => findings.extend(found),
            Err(error) => findings.push(unread(error)),
        }
        let digest = store::digest::digest(conn).unwrap_or_else(|error| {
            findings.push(unread(error));
            String::new()
        });
        Bytes { digest, findings }
    }
}

/// Of what the record says: its chain, and that what it says holds together.
struct Says {
    chain: Chain,
    report: Report,
}

impl Says {
    fn of(conn: &mut Conn, anchor: Option<&Anchor>) -> Says {
        let chain = store::chain::check(conn, anchor).unwrap_or_else(|error| Chain {
            findings: vec![unread(error)],
            ..Chain::default()
        });
        Says {
            chain,
            report: contents(conn),
        }
    }
}

/// What the record says, past the checker that is separate from the maker.
fn contents(conn: &mut Conn) -> Report {
    let products = Known::default();
    let mut report = store::audit::run(conn, |conn, row| {
        let version = row.version_id;
        let product = match products.known(version) {
            Some(known) => known,
            None => products.read(version, &store::entries::version(conn, version)?)?,
        };
        row.later(&product)
    });
    match truths(conn, &products) {
        Ok(found) => report.findings.extend(found),
        Err(error) => report.findings.push(unread(error)),
    }
    report
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
    let lists = origins::of(conn).map_err(|error| store::Error::Broken(error.to_string()))?;
    let printed = store::wrong_labels::printed_lots(conn)?;
    let mut findings = Vec::new();
    for some in printed.chunks(AT_ONCE) {
        let kept = store::wrong_labels::truths(conn, some)?;
        let family = family::load(conn, WalkStart::Keys(some), Extent::ANCESTORS, products)?;
        for lot in some {
            let (kept, now) = (kept.get(lot), family.get(LotId(*lot)));
            let now = now.map(|of| claims(&family, of, &lists));
            // What was kept before it was asked where its animals come from does not tell it.
            let asked = kept.is_none_or(|of| of.origin.is_some());
            let now = match asked {
                true => now,
                false => now.map(|of| of.without_origin()),
            };
            if now.as_ref() != kept {
                let says = "would claim something else on its labels than is kept of it";
                findings.push(AuditFinding::new(format!("lot {lot}"), says));
            }
        }
    }
    Ok(findings)
}
