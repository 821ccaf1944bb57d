//! Why: the links of each chain, as they were when the deed was done.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::said;
use crate::tables::{deeds, reasons, voids};
use diesel::prelude::*;
use domain::dates::{Because, Rule};
use domain::plan::Reason;
use domain::rows::RowId;
use domain::says::Says;
use domain::words::Topic;
use serde_json::{Value, json};

/// A link as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = reasons, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct ReasonRow {
    pub id: i32,
    pub deed_id: i32,
    pub lot_id: i32,
    pub topic: String,
    pub says: String,
    pub rule: String,
    pub source: String,
    pub said: Option<String>,
    pub basis: Option<String>,
}

impl ReasonRow {
    /// What it is about.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn topic(&self) -> Result<Topic> {
        let topic = Topic::parse(&self.topic);
        topic.ok_or_else(|| Error::bad_row("reasons", self.id, "unknown topic"))
    }

    /// The link, as it was when the deed was done.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn because(&self) -> Result<Because> {
        let json = |text: &str| -> Result<Value> {
            serde_json::from_str(text)
                .map_err(|error| Error::bad_row("reasons", self.id, &error.to_string()))
        };
        let (Some(said), Some(basis)) = (&self.said, &self.basis) else {
            return Ok(Because {
                says: Says::as_written(&self.says),
                rule: Rule::Kept {
                    rule: self.rule.clone(),
                    source: self.source.clone(),
                },
            });
        };
        Ok(Because {
            says: said::read(&json(said)?)?,
            rule: rule_in(&json(basis)?)
                .ok_or_else(|| Error::bad_row("reasons", self.id, "unknown basis"))?,
        })
    }
}

/// What a link rests on, as it is kept.
pub(crate) fn basis(rule: &Rule) -> Value {
    match rule {
        Rule::Rows(rows) => json!({ "rows": rows.iter().map(RowId::as_str).collect::<Vec<_>>() }),
        Rule::House(says) => json!({ "house": said::write(says) }),
        Rule::Practice(says) => json!({ "practice": said::write(says) }),
        Rule::Kept { rule, source } => json!({ "kept": [rule, source] }),
    }
}

pub(crate) fn rule_in(value: &Value) -> Option<Rule> {
    let (kind, value) = value.as_object()?.iter().next()?;
    Some(match kind.as_str() {
        "rows" => {
            let rows = value.as_array()?.iter();
            Rule::Rows(
                rows.map(|row| Some(RowId::new(row.as_str()?)))
                    .collect::<Option<_>>()?,
            )
        }
        "house" => Rule::House(said::read(value).ok()?),
        "practice" => Rule::Practice(said::read(value).ok()?),
        "kept" => Rule::Kept {
            rule: value.get(0)?.as_str()?.to_owned(),
            source: value.get(1)?.as_str()?.to_owned(),
        },
        _ => return None,
    })
}

/// Adds the links of a deed, each about a lot.
pub(crate) fn insert(tx: &mut Tx<'_>, deed: i32, links: Vec<(i32, &Reason)>) -> Result<()> {
    if tx.is_trial {
        return Ok(());
    }
    let ids = tx.ids.take(tx.conn, links.len())?;
    let mut written = Written::default();
    let mut rows = Vec::with_capacity(links.len());
    for ((lot, reason), id) in links.into_iter().zip(ids) {
        let (said, basis) = written.out(reason);
        rows.push(ReasonRow {
            id,
            deed_id: deed,
            lot_id: lot,
            topic: reason.topic.as_str().to_owned(),
            says: String::new(),
            rule: String::new(),
            source: String::new(),
            said: Some(said),
            basis: Some(basis),
        });
    }
    insert_rows!(tx.conn, reasons::table, &rows);
    tx.seal_all(deed, &rows);
    Ok(())
}

/// Links that were written out, with how: sixty tubs of one step have the same, so each is written once.
#[derive(Default)]
struct Written<'a>(Vec<(&'a Because, String, String)>);

impl<'a> Written<'a> {
    /// The most that are looked through: more than the links of one lot.
    const MOST: usize = 16;

    /// What a link says and what it rests on, as they are kept.
    fn out(&mut self, reason: &'a Reason) -> (String, String) {
        let because = &reason.because;
        let known = self.0.iter().find(|(known, ..)| *known == because);
        if let Some((_, said, basis)) = known {
            return (said.clone(), basis.clone());
        }
        let said = said::write(&because.says).to_string();
        let basis = basis(&because.rule).to_string();
        if self.0.len() < Written::MOST {
            self.0.push((because, said.clone(), basis.clone()));
        }
        (said, basis)
    }
}

/// The lots among these that have links of a kind, each once.
pub fn with_topic(conn: &mut Conn, lots: &[i32], topic: &str) -> Result<Vec<i32>> {
    Ok(reasons::table
        .filter(reasons::lot_id.eq_any(lots).and(reasons::topic.eq(topic)))
        .select(reasons::lot_id)
        .distinct()
        .load(conn)?)
}

/// The links about some lots, in order; those of voided deeds are left out.
pub fn of_lots(conn: &mut Conn, lots: &[i32]) -> Result<Vec<ReasonRow>> {
    Ok(reasons::table
        .left_join(voids::table.on(voids::deed_id.eq(reasons::deed_id)))
        .filter(reasons::lot_id.eq_any(lots).and(voids::id.is_null()))
        .order(reasons::id)
        .select(ReasonRow::as_select())
        .load(conn)?)
}

/// The links about a lot, in order; those of voided deeds are left out.
pub fn of_lot(conn: &mut Conn, lot: i32) -> Result<Vec<ReasonRow>> {
    Ok(reasons::table
        .inner_join(deeds::table.on(deeds::id.eq(reasons::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(reasons::deed_id)))
        .filter(reasons::lot_id.eq(lot).and(voids::id.is_null()))
        .order(reasons::id)
        .select(ReasonRow::as_select())
        .load(conn)?)
}

/// The links that some deeds gave, in order.
///
/// # Errors
/// The database is away.
pub fn of_deeds(conn: &mut Conn, deeds: &[i32]) -> Result<Vec<ReasonRow>> {
    Ok(reasons::table
        .filter(reasons::deed_id.eq_any(deeds))
        .order(reasons::id)
        .select(ReasonRow::as_select())
        .load(conn)?)
}
