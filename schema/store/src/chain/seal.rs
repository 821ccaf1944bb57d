//! What a transaction writes, gathered while it writes, and sealed as its last act.

use super::line::{Written, hexadecimal};
use super::link::{self, Part};
use crate::conn::Conn;
use crate::error::Result;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, HashMap, HashSet};
use std::ops::Range;

/// What a link is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(crate) struct Root {
    /// `deed`, or the table of a row that stands by itself.
    pub(crate) kind: &'static str,
    /// The key of the deed, or of the row.
    pub(crate) of: i32,
}

/// The links of deeds.
pub(crate) const DEED: &str = "deed";

/// A line that was written.
#[derive(Debug)]
struct Line {
    deed: Option<i32>,
    table: &'static str,
    key: i32,
    text: Range<usize>,
}

/// What a transaction has written so far.
#[derive(Debug, Default)]
pub(crate) struct Sealing {
    lines: Vec<Line>,
    text: String,
    /// The hashes of kept texts that went by, by their keys.
    pub(crate) texts: HashMap<i32, String>,
}

impl Sealing {
    /// Takes a row of a deed, or one that is no deed's.
    pub(crate) fn add<R: Written>(&mut self, deed: Option<i32>, row: &R) {
        let from = self.text.len();
        row.write(&mut self.text);
        self.text.push('\n');
        self.lines.push(Line {
            deed,
            table: R::TABLE,
            key: row.key(),
            text: from..self.text.len(),
        });
    }

    /// Puts the links of what was written at the end of the chain.
    ///
    /// A row of a deed that another transaction recorded stands by itself: that deed is sealed.
    ///
    /// # Errors
    /// The database is away or full.
    pub(crate) fn finish(&mut self, conn: &mut Conn) -> Result<()> {
        if self.lines.is_empty() {
            return Ok(());
        }
        let deeds = self.lines.iter().filter(|line| line.table == "deeds");
        let begun: HashSet<i32> = deeds.map(|line| line.key).collect();
        let root = |line: &Line| match line.deed.filter(|deed| begun.contains(deed)) {
            Some(of) => Root { kind: DEED, of },
            None => Root {
                kind: line.table,
                of: line.key,
            },
        };
        let mut roots: Vec<Root> = Vec::new();
        let mut lines: HashMap<Root, Vec<&Line>> = HashMap::new();
        for line in &self.lines {
            let root = root(line);
            let of = lines.entry(root).or_default();
            if of.is_empty() {
                roots.push(root);
            }
            of.push(line);
        }
        let mut about = Vec::with_capacity(roots.len());
        for root in roots {
            let mut parts = Parts::default();
            let of = lines.get_mut(&root).expect("each root has a line");
            of.sort_unstable_by_key(|line| (line.table, line.key));
            for line in of {
                parts.feed(line.table, &self.text[line.text.clone()]);
            }
            about.push((root, parts.done()));
        }
        link::append(conn, &about, false)
    }
}

/// The digests of the rows of one link, a table each.
#[derive(Debug, Default)]
pub(crate) struct Parts(BTreeMap<&'static str, (u32, Sha256)>);

impl Parts {
    /// Takes a line with its end; lines of a table come in the order of their keys.
    pub(crate) fn feed(&mut self, table: &'static str, line: &str) {
        let (count, hash) = self.0.entry(table).or_default();
        *count += 1;
        hash.update(line);
    }

    /// What there is of each table.
    pub(crate) fn done(self) -> Vec<Part> {
        let part = |(table, (count, hash)): (&str, (u32, Sha256))| {
            let mut digest = String::with_capacity(64);
            hexadecimal(&hash.finalize(), &mut digest);
            Part {
                table: table.to_owned(),
                count,
                digest,
            }
        };
        self.0.into_iter().map(part).collect()
    }
}
