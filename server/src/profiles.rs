//! `gambrel profiles`: every row of the law that the program knows, or those that nobody has confirmed.

use crate::config::ProfilesArgs;
use domain::rows::{Row, Rows};
use domain::words::Profile;
use law::{House, Shipped};
use std::fmt::Write;
use std::path::Path;

/// The shipped rules with the house's own numbers in place; in words, what of it no longer holds.
///
/// # Errors
/// In words: a file that cannot be read, and why.
pub fn read(
    house: Option<&Path>,
    day: chrono::NaiveDate,
) -> Result<(Shipped, Vec<String>), String> {
    let mut law = law::shipped().map_err(|bad| bad.to_string())?;
    let Some(path) = house else {
        return Ok((law, Vec::new()));
    };
    let text = crate::given::text(path)?;
    let told = |bad: law::Bad| format!("{}: {}", path.display(), bad.says);
    let house = House::read(&text).map_err(told)?;
    let ended = house.apply_on(&mut law.laws, day).map_err(told)?;
    Ok((law, ended))
}

/// The rows as a table, and how many there are.
///
/// # Errors
/// In words: a place that is not known, or a house file that cannot be used.
pub fn list(args: &ProfilesArgs, day: chrono::NaiveDate) -> Result<String, String> {
    let (law, _) = read(args.house.as_deref(), day)?;
    let place = args.place.as_deref().map(|word| {
        Profile::parse(word).ok_or_else(|| {
            format!(
                "{word:?} is no place here. Places are: {}.",
                Profile::SPELT.join(", ")
            )
        })
    });
    let place = place.transpose()?;
    let mut text = String::new();
    let (mut shown, mut unconfirmed) = (0, 0);
    let mut add = |name: &str, rows: &Rows| {
        let wanted = |row: &&Row| !args.unconfirmed || !row.is_confirmed();
        for row in rows.iter().filter(wanted) {
            shown += 1;
            unconfirmed += usize::from(!row.is_confirmed());
            let cite = row
                .cite
                .as_deref()
                .map(|cite| format!(" [{cite}]"))
                .unwrap_or_default();
            let _ = writeln!(
                text,
                "{name:<6} {:<22} {:<8} {}{cite}",
                row.id.as_str(),
                mark(row),
                row.says.in_language("en")
            );
        }
    };
    for (of, law) in &law.laws.places {
        if place.is_none_or(|place| place == *of) {
            add(of.as_str(), &law.rows);
        }
    }
    if place.is_none() {
        add("trade", &law.trade_rows);
    }
    let _ = write!(
        text,
        "{shown} rows, {unconfirmed} of them not confirmed: those warn and never block."
    );
    Ok(text)
}

/// The mark in one short word.
fn mark(row: &Row) -> &'static str {
    use domain::words::Mark::*;
    match row.mark {
        CommonPractice => "CP",
        House => "OURS",
        mark => mark.as_str(),
    }
}
