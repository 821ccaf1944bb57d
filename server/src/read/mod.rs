//! Reading the record: no deed is done here.

pub mod animals;
pub mod composition;
pub mod cost;
pub mod cure_plan;
pub mod cure_room;
pub mod deed;
pub mod due;
pub mod find;
pub mod law;
pub mod lot;
pub mod names;
pub mod piece;
pub mod prints;
pub mod scan;
pub mod statement;
pub mod trace;
pub mod why;
pub mod yields;

use crate::app::App;
use crate::error::Result;
use domain::code::LotCode;
use domain::refusal::Refusal;
use store::Conn;
use store::lots::LotRow;

/// The lot that a path names, in any spelling of its code.
///
/// # Errors
/// 422 for what is no code, 404 for one never given out.
pub fn lot_named(app: &App, conn: &mut Conn, text: &str) -> Result<LotRow> {
    let kitchen = app.kitchen(conn)?;
    let named = crate::deeds::facts::named(text, "code", &app.address(&kitchen))?;
    row(conn, &named.code, "code")
}

/// The lot of a code.
///
/// # Errors
/// 404 for one never given out.
pub fn row(conn: &mut Conn, code: &LotCode, field: &str) -> Result<LotRow> {
    let row = store::lots::by_code(conn, code)?;
    Ok(row.ok_or_else(|| Refusal::never_issued(field, code))?)
}
