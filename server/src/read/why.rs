//! Why this date? The chain of rules behind a lot's last day, in words for a cook.

use crate::app::App;
use crate::error::Result;
use crate::wire::answers::BecauseRead;
use chrono::NaiveDate;
use domain::dates::{Because, date_at_birth};
use domain::words::DeedKind;
use store::Conn;
use store::deeds::DeedRow;
use store::lots::LotRow;
use store::packs::PackRow;

/// The reasons for a lot's date: its product's rule, the earliest date of its parts, and what has
/// happened to its packs since.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn because(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    made_by: &DeedRow,
    packs: &[PackRow],
) -> Result<Vec<BecauseRead>> {
    let product = app.product(conn, row.version_id)?;
    let mut chain = Vec::new();
    let own = date_at_birth(product.keep, made_by.day, None);
    match (product.keep, own) {
        (Some(keep), own) => {
            let day_one = if keep.day_one_counts {
                "that day is day 1"
            } else {
                "the day after is day 1"
            };
            let days = match keep.days {
                1 => "1 day".to_owned(),
                days => format!("{days} days"),
            };
            let says = match own {
                Some(date) => format!(
                    "{} keeps {days} from {} on {}; {day_one}: {date}.",
                    product.name("en"),
                    keep.from,
                    made_by.day
                ),
                None => format!(
                    "{} keeps {days} from being {}; {day_one}.",
                    product.name("en"),
                    keep.from
                ),
            };
            chain.push(Because::house(
                says,
                format!("{} days from {}", keep.days, keep.from),
            ));
        }
        (None, _) => chain.push(Because::house(
            format!("{} has no keeping rule of its own.", product.name("en")),
            "no rule",
        )),
    }
    if row.born_use_by.is_some() && row.born_use_by != own {
        chain.push(cap(row, made_by));
    }
    let frozen = packs
        .iter()
        .filter(|pack| pack.left_mg > 0)
        .find_map(|pack| pack.days_left);
    if let Some(days) = frozen {
        let says = format!(
            "Frozen packs have no date; {days} days are left once they are thawed, the day of thawing counted."
        );
        chain.push(Because {
            says,
            rule: "freezing stops the clock".into(),
            source: "us-DT7; stricter reading of us-DT4".into(),
        });
    }
    let earliest = packs
        .iter()
        .filter(|pack| pack.left_mg > 0)
        .filter_map(|pack| pack.use_by)
        .min();
    if let Some(date) = earliest.filter(|date| row.born_use_by != Some(*date)) {
        let says = format!("Since then a pack was opened or thawed: {date}.");
        chain.push(Because::house(says, "opened or thawed"));
    }
    Ok(chain
        .into_iter()
        .map(|link| BecauseRead {
            says: link.says,
            rule: link.rule,
            source: link.source,
        })
        .collect())
}

fn cap(row: &LotRow, made_by: &DeedRow) -> Because {
    let date: NaiveDate = row.born_use_by.unwrap_or_default();
    match made_by.kind() {
        Ok(DeedKind::Receive) => Because {
            says: format!("The supplier's own date is earlier: {date}."),
            rule: "the supplier's date is never passed".into(),
            source: "trade-D4; us-D5".into(),
        },
        _ => Because {
            says: format!("The earliest date of what went in is {date}."),
            rule: "a mix keeps the earliest date of its parts".into(),
            source: "us-D6; trade-D3".into(),
        },
    }
}
