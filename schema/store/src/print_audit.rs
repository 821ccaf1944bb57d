//! What `gambrel check` asks of the labels that were printed.

use crate::conn::Conn;
use crate::error::Result;
use crate::{kept, on_each};
use diesel::sql_types::Integer;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use domain::audit::AuditFinding;

#[derive(QueryableByName)]
struct PrintKey {
    #[diesel(sql_type = Integer)]
    id: i32,
}

/// Each query finds what must not be, and is followed by what that means.
const NEVER: [(&str, &str); 4] = [
    (
        "SELECT prints.id FROM prints LEFT JOIN print_runs ON print_runs.id = prints.id
            LEFT JOIN print_events ON print_events.print_id = print_runs.id AND print_events.step = print_runs.step
            WHERE print_runs.id IS NULL OR print_events.print_id IS NULL OR print_events.state <> print_runs.state
                OR print_runs.printer_id <> prints.printer_id
            ORDER BY prints.id",
        "does not say how far it has come",
    ),
    (
        "SELECT MAX(prints.id) AS id FROM prints JOIN print_runs ON print_runs.id = prints.id
            WHERE print_runs.state NOT IN ('refused', 'cancelled', 'spoilt')
            GROUP BY prints.pack_id, prints.ordinal HAVING COUNT(*) > 1 ORDER BY 1",
        "is there twice: its pack has two labels under one number",
    ),
    (
        "SELECT DISTINCT later.id FROM prints later
            JOIN prints earlier ON earlier.pack_id = later.pack_id AND earlier.ordinal < later.ordinal
            JOIN print_runs ON print_runs.id = earlier.id
            WHERE earlier.use_by < later.use_by AND print_runs.state NOT IN ('refused', 'cancelled', 'spoilt')
            ORDER BY later.id",
        "shows a later date than the print before it",
    ),
    (
        "SELECT prints.id FROM prints JOIN deeds ON deeds.id = prints.deed_id
            WHERE deeds.kind NOT IN ('print', 'settle-print') ORDER BY prints.id",
        "was asked for by no deed of printing",
    ),
];

/// Everything about prints and kept texts that is not as it must be.
pub(crate) fn check(conn: &mut Conn) -> Result<Vec<AuditFinding>> {
    let mut findings = Vec::new();
    for (query, says) in NEVER {
        let found: Vec<PrintKey> = on_each!(&mut *conn, c => sql_query(query).load(c)?);
        let finding = |key: PrintKey| AuditFinding::new(format!("print {}", key.id), says);
        findings.extend(found.into_iter().map(finding));
    }
    let finding = |id| AuditFinding::new(format!("kept text {id}"), "is not what its hash says");
    findings.extend(kept::spoilt(conn)?.into_iter().map(finding));
    Ok(findings)
}
