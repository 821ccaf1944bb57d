//! Labels that were printed of the animals of a farm, or of an abattoir: of the lots that came in, and of all that
//! was made of them.

use crate::conn::Conn;
use crate::error::Result;
use crate::on_each;
use crate::tables::{animals, sources};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::Integer;

#[derive(Debug, QueryableByName)]
struct PrintedRow {
    #[diesel(sql_type = Integer)]
    id: i32,
}

/// Who tells where an animal comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OriginOf<'a> {
    /// The farm that reared it, by its code.
    Farm(&'a str),
    /// The abattoir that killed it, by its number.
    Abattoir(&'a str),
}

/// The lots of the animals of a farm or an abattoir, and what was made of them, of which a label was ever printed, in
/// order.
pub fn of(conn: &mut Conn, origin: OriginOf<'_>) -> Result<Vec<i32>> {
    let of = sources::table
        .inner_join(animals::table.on(sources::animal_id.eq(animals::id.nullable())))
        .select(sources::lot_id)
        .into_boxed();
    let of = match origin {
        OriginOf::Farm(code) => of.filter(animals::farm.eq(code)),
        OriginOf::Abattoir(number) => of.filter(animals::abattoir.eq(number)),
    };
    let received: Vec<i32> = of.load(conn)?;
    made_of(conn, &received)
}

fn made_of(conn: &mut Conn, received: &[i32]) -> Result<Vec<i32>> {
    if received.is_empty() {
        return Ok(Vec::new());
    }
    let keys: Vec<String> = received.iter().map(i32::to_string).collect();
    let sql = format!(
        "WITH RECURSIVE down(id) AS (
             SELECT id FROM lots WHERE id IN ({})
             UNION
             SELECT made.id FROM down CROSS JOIN pack_events used CROSS JOIN lots made
             WHERE used.lot_id = down.id AND used.account = 'used' AND made.deed_id = used.deed_id
         )
         SELECT down.id FROM down CROSS JOIN label_truths WHERE label_truths.id = down.id
         ORDER BY down.id",
        keys.join(", ")
    );
    let rows: Vec<PrintedRow> = on_each!(conn, c => sql_query(sql).load(c)?);
    Ok(rows.into_iter().map(|row| row.id).collect())
}
