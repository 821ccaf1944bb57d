//! What `gambrel check` asks of the running numbers.

use crate::conn::Conn;
use crate::error::Result;
use crate::on_each;
use crate::tables::series;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::Text;
use domain::audit::AuditFinding;
use std::collections::HashMap;

#[derive(QueryableByName)]
struct StemMax {
    #[diesel(sql_type = Text)]
    stem: String,
    #[diesel(sql_type = Text)]
    number: String,
}

/// No series will give out a number that a lot has already.
pub(crate) fn check(conn: &mut Conn) -> Result<Vec<AuditFinding>> {
    let mut findings = Vec::new();
    const BASE_32: &str = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    let next: HashMap<String, i32> = series::table
        .select((series::key, series::next))
        .load(conn)?
        .into_iter()
        .collect();
    let sql = "SELECT SUBSTR(code, 1, LENGTH(code) - 3) AS stem, MAX(SUBSTR(code, LENGTH(code) - 2, 2)) AS number
               FROM lots GROUP BY SUBSTR(code, 1, LENGTH(code) - 3)";
    let stems: Vec<StemMax> = on_each!(conn, c => sql_query(sql).load(c)?);
    for StemMax { stem, number } in stems {
        let number = number.chars().fold(0, |sum, digit| {
            sum * 32 + BASE_32.find(digit).unwrap_or(0) as i32
        });
        let day = &stem[..stem.len() - 1];
        let letter = domain::code::LETTERS
            .iter()
            .position(|letter| stem.ends_with(*letter as char))
            .unwrap_or(0) as i32;
        let ahead = match (next.get(&stem), next.get(day)) {
            (Some(next), _) => *next > number,
            (None, Some(next)) => *next > letter * domain::code::NUMBERS as i32 + number,
            (None, None) => false,
        };
        if !ahead {
            findings.push(AuditFinding::new(
                &stem,
                "the series does not stand past its highest number",
            ));
        }
    }
    Ok(findings)
}
