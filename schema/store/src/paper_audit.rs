//! Papers hold what their hash says, or were thinned by a deed.

use crate::conn::Conn;
use crate::error::Result;
use crate::kept;
use crate::papers::{self, PaperRow};
use crate::tables::{paper_parts, papers as papers_table, thinnings};
use diesel::prelude::*;
use domain::audit::AuditFinding;
use std::collections::HashSet;

/// What is not as it must be.
///
/// # Errors
/// The database is away.
pub(crate) fn check(conn: &mut Conn) -> Result<Vec<AuditFinding>> {
    let rows: Vec<PaperRow> = papers_table::table
        .order(papers_table::id)
        .select(PaperRow::as_select())
        .load(conn)?;
    let thinned: HashSet<i32> = thinnings::table
        .select(thinnings::paper_id)
        .load(conn)?
        .into_iter()
        .collect();
    let with: HashSet<i32> = paper_parts::table
        .select(paper_parts::paper_id)
        .distinct()
        .load(conn)?
        .into_iter()
        .collect();
    let mut found = Vec::new();
    for row in &rows {
        let says = match (with.contains(&row.id), thinned.contains(&row.id)) {
            (false, true) => continue,
            (true, true) => "was thinned, and holds something",
            (false, false) => "what it held is gone, and nobody thinned it",
            (true, false) => {
                let content = papers::content(conn, row.id)?;
                if kept::hash(&content) == row.hash {
                    continue;
                }
                "what it holds is not what its hash says: it was changed"
            }
        };
        found.push(AuditFinding::new(format!("paper {}", row.id), says));
    }
    let known: HashSet<i32> = rows.iter().map(|row| row.id).collect();
    for key in with.difference(&known) {
        let says = "there is content of it, and no paper";
        found.push(AuditFinding::new(format!("paper {key}"), says));
    }
    Ok(found)
}
