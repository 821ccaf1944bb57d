//! Papers that belong to deeds: delivery notes, certificates, photos, print-outs. What they hold is kept in parts.

use crate::chain::rows::ThinningRow;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::kept;
use crate::tables::{deeds, paper_parts, papers, thinnings, voids};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::dsl::count_star;
use diesel::prelude::*;
use domain::paper::PaperForm;
use domain::words::{DeedKind, PaperKind};

/// The bytes of one part.
const PART: usize = 256 << 10;

/// A paper; its key is that of the deed that brought it.
#[derive(Debug, Clone, PartialEq, Eq, Queryable, Selectable, Insertable)]
#[diesel(table_name = papers, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct PaperRow {
    pub id: i32,
    pub of_deed_id: i32,
    pub kind: String,
    pub name: Option<String>,
    pub form: String,
    pub bytes: i64,
    pub hash: String,
}

impl PaperRow {
    /// The form of what it holds.
    pub fn form(&self) -> Result<PaperForm> {
        let form = PaperForm::parse(&self.form);
        form.ok_or_else(|| Error::bad_row("papers", self.id, "unknown form"))
    }

    /// What it is.
    pub fn kind(&self) -> Result<PaperKind> {
        let kind = PaperKind::parse(&self.kind);
        kind.ok_or_else(|| Error::bad_row("papers", self.id, "unknown kind"))
    }
}

#[derive(Debug, Insertable)]
#[diesel(table_name = paper_parts)]
struct NewPart<'a> {
    id: i32,
    paper_id: i32,
    part: &'a [u8],
}

/// A paper to be kept.
#[derive(Debug, Clone, Copy)]
pub struct NewPaper<'a> {
    /// The deed that it belongs to.
    pub of_deed: i32,
    /// What it is.
    pub kind: PaperKind,
    /// What it is called.
    pub name: Option<&'a str>,
    /// The form of what it holds.
    pub form: PaperForm,
    /// What it holds.
    pub content: &'a [u8],
}

/// Keeps a paper, with all that it holds.
///
/// # Errors
/// The database is away or full.
pub fn insert(tx: &mut Tx<'_>, deed: i32, paper: &NewPaper<'_>) -> Result<()> {
    let row = PaperRow {
        id: deed,
        of_deed_id: paper.of_deed,
        kind: paper.kind.as_str().to_owned(),
        name: paper.name.map(str::to_owned),
        form: paper.form.as_str().to_owned(),
        bytes: i64::try_from(paper.content.len()).unwrap_or(i64::MAX),
        hash: kept::hash(paper.content),
    };
    diesel::insert_into(papers::table)
        .values(&row)
        .execute(tx.conn)?;
    put_parts(tx, deed, paper.content)?;
    tx.seal(deed, &row);
    Ok(())
}

/// Keeps what a paper holds.
///
/// # Errors
/// The database is away or full.
pub fn put_parts(tx: &mut Tx<'_>, paper: i32, content: &[u8]) -> Result<()> {
    let parts = content.chunks(PART);
    let ids = tx.ids.take(tx.conn, parts.len())?;
    for (part, id) in parts.zip(ids) {
        let row = NewPart {
            id,
            paper_id: paper,
            part,
        };
        diesel::insert_into(paper_parts::table)
            .values(&row)
            .execute(tx.conn)?;
    }
    Ok(())
}

/// What a paper holds; empty where it was thinned.
///
/// # Errors
/// The database is away.
pub fn content(conn: &mut Conn, paper: i32) -> Result<Vec<u8>> {
    let parts: Vec<Vec<u8>> = paper_parts::table
        .filter(paper_parts::paper_id.eq(paper))
        .order(paper_parts::id)
        .select(paper_parts::part)
        .load(conn)?;
    Ok(parts.concat())
}

/// How many papers a deed has.
///
/// # Errors
/// The database is away.
pub fn count_of(conn: &mut Conn, deed: i32) -> Result<i64> {
    Ok(papers::table
        .filter(papers::of_deed_id.eq(deed))
        .select(count_star())
        .get_result(conn)?)
}

/// Throws away what some papers hold; that they were there, and what their content's hash is, stays.
///
/// # Errors
/// The database is away or full.
pub fn thin(tx: &mut Tx<'_>, deed: i32, which: &[i32]) -> Result<()> {
    let ids = tx.ids.take(tx.conn, which.len())?;
    let rows = which.iter().zip(ids).map(|(paper, id)| ThinningRow {
        id,
        deed_id: deed,
        paper_id: *paper,
    });
    let rows: Vec<ThinningRow> = rows.collect();
    insert_rows!(tx.conn, thinnings::table, &rows);
    for row in &rows {
        tx.seal(deed, row);
    }
    diesel::delete(paper_parts::table.filter(paper_parts::paper_id.eq_any(which)))
        .execute(tx.conn)?;
    Ok(())
}

/// A paper with what is told of it.
#[derive(Debug, Clone)]
pub struct PaperFound {
    /// The paper.
    pub row: PaperRow,
    /// The id of the deed that brought it.
    pub uid: Vec<u8>,
    /// Who brought it.
    pub person: String,
    /// When, UTC.
    pub at: NaiveDateTime,
    /// The kitchen's day of that.
    pub day: NaiveDate,
    /// A word about it.
    pub note: Option<String>,
    /// Was it taken back?
    pub voided: bool,
    /// Was what it held thrown away?
    pub thinned: bool,
    /// The id of the deed that it belongs to.
    pub of: Vec<u8>,
    /// What that was.
    pub of_kind: DeedKind,
    /// When that was, UTC.
    pub of_at: NaiveDateTime,
}

/// Which papers.
#[derive(Debug, Clone, Copy)]
pub enum Which<'a> {
    /// Those of some ids.
    Ids(&'a [Vec<u8>]),
    /// Those of some deeds, by their keys.
    OfDeeds(&'a [i32]),
    /// All of which the content is there, the oldest first, after a key.
    Whole(i32),
    /// All, the newest first, before a key.
    Newest(Option<i32>),
}

/// The papers so asked for.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn find(conn: &mut Conn, which: Which<'_>, most: i64) -> Result<Vec<PaperFound>> {
    let by = diesel::alias!(deeds as by);
    let all = papers::table
        .inner_join(by.on(by.field(deeds::id).eq(papers::id)))
        .inner_join(deeds::table.on(deeds::id.eq(papers::of_deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(papers::id)))
        .left_join(thinnings::table.on(thinnings::paper_id.eq(papers::id)))
        .select((
            PaperRow::as_select(),
            by.fields((
                deeds::uid,
                deeds::person,
                deeds::at,
                deeds::day,
                deeds::note,
            )),
            voids::id.nullable(),
            thinnings::id.nullable(),
            (deeds::uid, deeds::kind, deeds::at),
        ))
        .into_boxed();
    let all = match which {
        Which::Ids(uids) => all
            .filter(by.field(deeds::uid).eq_any(uids.to_vec()))
            .order(papers::id),
        Which::OfDeeds(keys) => all
            .filter(papers::of_deed_id.eq_any(keys.to_vec()))
            .order(papers::id),
        Which::Whole(after) => all
            .filter(papers::id.gt(after).and(thinnings::id.is_null()))
            .order(papers::id),
        Which::Newest(before) => all
            .filter(papers::id.lt(before.unwrap_or(i32::MAX)))
            .order(papers::id.desc()),
    };
    type By = (Vec<u8>, String, NaiveDateTime, NaiveDate, Option<String>);
    type Of = (Vec<u8>, String, NaiveDateTime);
    type Found = (PaperRow, By, Option<i32>, Option<i32>, Of);
    let rows: Vec<Found> = all.limit(most).load(conn)?;
    let found = rows.into_iter().map(|(row, by, voided, thinned, of)| {
        let of_kind = DeedKind::parse(&of.1);
        Ok(PaperFound {
            of_kind: of_kind
                .ok_or_else(|| Error::bad_row("deeds", row.of_deed_id, "unknown kind"))?,
            row,
            uid: by.0,
            person: by.1,
            at: by.2,
            day: by.3,
            note: by.4,
            voided: voided.is_some(),
            thinned: thinned.is_some(),
            of: of.0,
            of_at: of.2,
        })
    });
    found.collect()
}

/// How many papers there are, how many bytes they have, and how many were thinned.
///
/// # Errors
/// The database is away.
pub fn count(conn: &mut Conn) -> Result<(i64, i64, i64)> {
    use diesel::sql_types::BigInt;
    #[derive(QueryableByName)]
    struct Sums {
        #[diesel(sql_type = BigInt)]
        papers: i64,
        #[diesel(sql_type = BigInt)]
        bytes: i64,
        #[diesel(sql_type = BigInt)]
        thinned: i64,
    }
    let sql = "SELECT COUNT(*) AS papers, COUNT(thinnings.id) AS thinned,
            CAST(COALESCE(SUM(CASE WHEN thinnings.id IS NULL THEN papers.bytes ELSE 0 END), 0) AS BIGINT) AS bytes
        FROM papers LEFT JOIN thinnings ON thinnings.paper_id = papers.id";
    let sums: Sums = crate::on_each!(conn, c => diesel::sql_query(sql).get_result(c)?);
    Ok((sums.papers, sums.bytes, sums.thinned))
}
