//! Proving the chain: every link, that each is of what is on record, and that nothing is on record outside it.

use super::born::Order;
use super::columns;
use super::link::{self, BEFORE, Link, Part};
use super::read::{self, Alone};
use super::seal::DEED;
use crate::conn::Conn;
use crate::error::Result;
use crate::tables::{chain, chain_due, deeds};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use domain::audit::AuditFinding;
use std::collections::{BTreeMap, HashMap, HashSet};
use std::fmt;

/// The end of the chain at some time: what a sheet or a mail keeps outside the record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Anchor {
    /// How many links there were.
    pub number: i32,
    /// The head of the last of them, 64 digits.
    pub head: String,
}

impl fmt::Display for Anchor {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "GAMBREL {} {}", self.number, self.head.to_uppercase())
    }
}

impl Anchor {
    /// The same in groups of eight, for paper.
    pub fn in_groups(&self) -> String {
        let head = self.head.to_uppercase();
        let groups = head.as_bytes().chunks(8).map(String::from_utf8_lossy);
        let groups: Vec<_> = groups.collect();
        format!("GAMBREL {} {}", self.number, groups.join(" "))
    }

    /// An anchor as it was printed or typed: the word in front may be missing, and the digits may be in groups.
    pub fn parse(text: &str) -> Option<Anchor> {
        let mut words = text.split_whitespace().peekable();
        words.next_if(|word| word.eq_ignore_ascii_case("gambrel"));
        let number = words.next()?.parse().ok().filter(|number| *number > 0)?;
        let head: String = words.collect::<String>().to_lowercase().replace('-', "");
        let is_head = head.len() == BEFORE.len() && head.bytes().all(|of| of.is_ascii_hexdigit());
        is_head.then_some(Anchor { number, head })
    }
}

/// What the walk along the chain saw.
#[derive(Debug, Default)]
pub struct Chain {
    /// How many links.
    pub links: u64,
    /// How many of them were sealed later than recorded.
    pub late: u64,
    /// Its end.
    pub end: Option<Anchor>,
    /// Everything that is not as it must be.
    pub findings: Vec<AuditFinding>,
}

impl Chain {
    fn find(&mut self, about: impl Into<String>, says: impl Into<String>) {
        self.findings.push(AuditFinding::new(about, says));
    }
}

/// Walks the whole chain, and holds it against an anchor if there is one.
///
/// # Errors
/// The database is away, or the record is so damaged that it does not read.
pub fn check(conn: &mut Conn, anchor: Option<&Anchor>) -> Result<Chain> {
    let mut seen = Chain::default();
    let due: Vec<i32> = chain_due::table.select(chain_due::id).load(conn)?;
    if !due.is_empty() {
        seen.find("the chain", "what was recorded before it was never sealed");
    }
    let roots: Vec<(i32, String, i32)> = chain::table
        .order(chain::id)
        .select((chain::id, chain::kind, chain::of_id))
        .load(conn)?;
    let (mut order, mut alone) = (Order::new(), Alone::new());
    for (number, kind, of) in roots {
        let twice = match kind.as_str() {
            DEED => order.insert(of, number).is_some(),
            _ => !alone.entry(kind.clone()).or_default().insert(of),
        };
        if twice {
            seen.find(
                format!("link {number}"),
                format!("is a second one of {kind} {of}"),
            );
        }
    }
    walk(conn, anchor, &order, &alone, &mut seen)?;
    outside(conn, &order, &alone, &mut seen)?;
    seen.findings.extend(columns::check(conn, &order)?);
    Ok(seen)
}

fn walk(
    conn: &mut Conn,
    anchor: Option<&Anchor>,
    order: &Order,
    alone: &Alone,
    seen: &mut Chain,
) -> Result<()> {
    let (mut last, mut head) = (0, BEFORE.to_owned());
    loop {
        let links: Vec<Link> = chain::table
            .filter(chain::id.gt(last))
            .order(chain::id)
            .limit(read::AT_ONCE as i64)
            .select(Link::as_select())
            .load(conn)?;
        if links.is_empty() {
            break;
        }
        for link in &links {
            let about = || format!("link {} (of {} {})", link.id, link.kind, link.of_id);
            if link.id != last + 1 {
                let (from, to) = (last + 1, link.id - 1);
                seen.find("the chain", format!("links {from} to {to} are gone"));
            } else if link.head_after(&head) != link.head {
                seen.find(
                    about(),
                    "does not follow from the one before: it was changed",
                );
            }
            if anchor.is_some_and(|anchor| anchor.number == link.id && anchor.head != link.head) {
                let says = format!(
                    "is another than that of the anchor: something up to link {} was altered",
                    link.id
                );
                seen.find("the chain", says);
            }
            seen.links += 1;
            seen.late += u64::from(link.late);
            last = link.id;
            head.clone_from(&link.head);
        }
        of_deeds(conn, &links, order, alone, seen)?;
        by_themselves(conn, &links, seen)?;
    }
    if let Some(anchor) = anchor.filter(|anchor| anchor.number > last) {
        let says = format!(
            "ends at link {last}, and had {} when the anchor was made: the end was taken away",
            anchor.number
        );
        seen.find("the chain", says);
    }
    seen.end = (last > 0).then_some(Anchor { number: last, head });
    Ok(())
}

fn of_deeds(
    conn: &mut Conn,
    links: &[Link],
    order: &Order,
    alone: &Alone,
    seen: &mut Chain,
) -> Result<()> {
    let of_deeds = links.iter().filter(|link| link.kind == DEED);
    let keys: Vec<i32> = of_deeds.clone().map(|link| link.of_id).collect();
    let parts = read::of_deeds(conn, &keys, alone, order)?;
    let wrong = of_deeds.filter(|link| {
        let now = parts.get(&link.of_id).map(|parts| link::written(parts));
        now.as_deref().unwrap_or_default() != link.parts
    });
    let wrong: Vec<&Link> = wrong.collect();
    let keys: Vec<i32> = wrong.iter().map(|link| link.of_id).collect();
    let names = names(conn, &keys)?;
    for link in wrong {
        let none = Vec::new();
        let now = parts.get(&link.of_id).unwrap_or(&none);
        match names.get(&link.of_id) {
            Some(name) => told(link, now, name, seen),
            None => {
                let before = before(conn, link)?;
                let name = format!("deed {}", link.of_id);
                seen.find(name, format!("is not on record any more; it came {before}"));
            }
        }
    }
    Ok(())
}

/// Names each table whose rows are not those that were sealed.
fn told(link: &Link, now: &[Part], name: &str, seen: &mut Chain) {
    let Some(sealed) = link::read(&link.parts) else {
        seen.find(name, "what its link says does not read");
        return;
    };
    let by_table = |parts: &[Part]| -> BTreeMap<String, Part> {
        let named = parts.iter().map(|part| (part.table.clone(), part.clone()));
        named.collect()
    };
    let (sealed, now) = (by_table(&sealed), by_table(now));
    let tables: HashSet<&String> = sealed.keys().chain(now.keys()).collect();
    let mut tables: Vec<&String> = tables.into_iter().collect();
    tables.sort_unstable();
    for table in tables {
        let count = |of: Option<&Part>| of.map_or(0, |part| part.count);
        let (was, is) = (sealed.get(table), now.get(table));
        match (count(was), count(is)) {
            (before, after) if before != after => seen.find(
                name,
                format!("{table}: {before} were sealed, and there are {after}"),
            ),
            _ if was != is => seen.find(name, format!("{table}: was changed after it was sealed")),
            _ => {}
        }
    }
}

fn by_themselves(conn: &mut Conn, links: &[Link], seen: &mut Chain) -> Result<()> {
    let mut by_table: BTreeMap<&str, Vec<&Link>> = BTreeMap::new();
    for link in links.iter().filter(|link| link.kind != DEED) {
        by_table.entry(&link.kind).or_default().push(link);
    }
    for (table, links) in by_table {
        let keys: Vec<i32> = links.iter().map(|link| link.of_id).collect();
        let now = read::alone(conn, table, Some(&keys))?;
        let now: HashMap<i32, String> = now
            .into_iter()
            .map(|(key, parts)| (key, link::written(&parts)))
            .collect();
        for link in links {
            let name = format!("{table} {}", link.of_id);
            match now.get(&link.of_id) {
                None => seen.find(name, "is not on record any more"),
                Some(parts) if *parts != link.parts => {
                    seen.find(name, "was changed after it was sealed");
                }
                Some(_) => {}
            }
        }
    }
    Ok(())
}

/// What is on record and in no link was put there past the program.
fn outside(conn: &mut Conn, order: &Order, alone: &Alone, seen: &mut Chain) -> Result<()> {
    let all: Vec<i32> = deeds::table.order(deeds::id).select(deeds::id).load(conn)?;
    let unsealed = all.into_iter().filter(|deed| !order.contains_key(deed));
    let unsealed: Vec<i32> = unsealed.collect();
    let names = names(conn, &unsealed)?;
    for deed in &unsealed {
        seen.find(&names[deed], "is in no link of the chain");
    }
    for table in read::BY_THEMSELVES {
        for (key, _) in read::alone(conn, table, None)? {
            if !alone.get(table).is_some_and(|keys| keys.contains(&key)) {
                seen.find(format!("{table} {key}"), "is in no link of the chain");
            }
        }
    }
    Ok(())
}

/// Deeds as a person knows them.
fn names(conn: &mut Conn, keys: &[i32]) -> Result<HashMap<i32, String>> {
    let mut names = HashMap::new();
    for some in keys.chunks(read::AT_ONCE) {
        let rows: Vec<(i32, String, String, NaiveDateTime)> = deeds::table
            .filter(deeds::id.eq_any(some))
            .select((deeds::id, deeds::kind, deeds::person, deeds::at))
            .load(conn)?;
        names.extend(rows.into_iter().map(|(id, kind, person, at)| {
            let at = at.format("%Y-%m-%d %H:%M");
            (id, format!("deed {id} ({kind}, {person}, {at} UTC)"))
        }));
    }
    Ok(names)
}

/// The deed on record that came before a link.
fn before(conn: &mut Conn, link: &Link) -> Result<String> {
    let earlier: Vec<i32> = chain::table
        .filter(chain::id.lt(link.id).and(chain::kind.eq(DEED)))
        .order(chain::id.desc())
        .limit(20)
        .select(chain::of_id)
        .load(conn)?;
    let known = names(conn, &earlier)?;
    let last = earlier.iter().find_map(|deed| known.get(deed));
    Ok(last.map_or("first".into(), |name| format!("after {name}")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_anchor_reads_as_it_is_printed_and_in_groups() {
        let anchor = Anchor {
            number: 812,
            head: "ab12".repeat(16),
        };
        assert_eq!(Anchor::parse(&anchor.to_string()), Some(anchor.clone()));
        let groups = format!("812 {}", "AB12 ".repeat(16));
        assert_eq!(Anchor::parse(&groups), Some(anchor));
        for wrong in ["", "GAMBREL", "GAMBREL 5 AB", "0 ", "GAMBREL x 00"] {
            assert_eq!(Anchor::parse(wrong), None, "{wrong}");
        }
    }
}
