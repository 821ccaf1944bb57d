//! Every label that was asked of a printer or left as a document, as it was kept: a PDF for each deed.

use super::{Trouble, cannot};
use crate::ids::shown_id;
use crate::printing::kept;
use std::fs;
use std::path::Path;
use store::{Conn, prints, sheets};

/// Writes them into a folder; how many labels can not be drawn any more.
///
/// # Errors
/// In words: the record cannot be read, or a file cannot be written.
pub(super) fn write(conn: &mut Conn, folder: &Path) -> Result<u64, Trouble> {
    fs::create_dir(folder).map_err(|error| cannot(folder, &error))?;
    let mut undrawn = 0;
    let mut after = i32::MIN;
    loop {
        let deeds = sheets::deeds(conn, after)?;
        let Some(last) = deeds.last() else {
            return Ok(undrawn);
        };
        after = last.id;
        for deed in deeds.iter().filter(|deed| deed.kind == "print") {
            let mut placed = Vec::new();
            for print in prints::of_deed(conn, deed.id)? {
                match kept::label(conn, &print.row) {
                    Ok(label) => placed.push(label),
                    Err(_) => undrawn += 1,
                }
            }
            if placed.is_empty() {
                continue;
            }
            let path = folder.join(format!("{}.pdf", shown_id(&deed.uid)));
            let drawn = ::labels::pdf(&placed).map_err(|error| Trouble(error.to_string()))?;
            fs::write(&path, drawn).map_err(|error| cannot(&path, &error))?;
        }
    }
}
