//! A lot's family: what went in, the lot, what came out.

use super::drawing::{self, Card, Side};
use super::format;
use crate::app::App;
use crate::error::Result;
use crate::read::names::Names;
use crate::wire::answers::OriginsRead;
use domain::grams::Grams;
use domain::lot::LotId;
use std::cmp::Reverse;
use store::Conn;
use store::lots::{self, LotRow};
use store::trace;

/// The most boxes on a side; the tables tell of all.
const MOST: usize = 9;

/// The family, drawn twice.
pub struct Pictures {
    /// From left to right.
    pub wide: String,
    /// From top to bottom, for a phone.
    pub narrow: String,
}

/// Draws what went in, the lot, and what was made of it; for a carcass, its animal.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn draw(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    origins: &OriginsRead,
    names: &Names,
) -> Result<Pictures> {
    let language = app.kitchen(conn)?.language().to_owned();
    let ancestry = trace::back(conn, row.id)?;
    let mut uses: Vec<(i32, i64)> = Vec::new();
    for used in ancestry.uses_of(LotId(row.id)) {
        match uses.iter_mut().find(|(lot, _)| *lot == used.lot.0) {
            Some((_, mg)) => *mg += used.milligrams,
            None => uses.push((used.lot.0, used.milligrams)),
        }
    }
    let mut before = cards(app, conn, uses, &language)?;
    if before.cards.is_empty() {
        before.cards = animals(origins, names);
    }
    let made = trace::children(conn, row.id)?;
    let after = cards(app, conn, made, &language)?;
    let own = Card {
        goes_to: None,
        title: row.code()?.shown(),
        below: app
            .product(conn, row.version_id)?
            .name(&language)
            .to_owned(),
    };
    Ok(Pictures {
        wide: drawing::wide(&before, &own, &after),
        narrow: drawing::narrow(&before, &own, &after),
    })
}

/// A card for each lot with its weight in grams, the heaviest first.
fn cards(app: &App, conn: &mut Conn, mut of: Vec<(i32, i64)>, language: &str) -> Result<Side> {
    let all = of.len();
    of.sort_by_key(|(_, mg)| Reverse(*mg));
    of.truncate(MOST);
    let keys: Vec<i32> = of.iter().map(|(lot, _)| *lot).collect();
    let rows = lots::by_keys(conn, &keys)?;
    let mut cards = Vec::with_capacity(of.len());
    for (key, mg) in of {
        let Some(row) = rows.iter().find(|row| row.id == key) else {
            continue;
        };
        let product = app.product(conn, row.version_id)?;
        cards.push(Card {
            goes_to: Some(format!("/lots/{}", row.code)),
            title: row.code()?.shown(),
            below: format!(
                "{}, {}",
                short(product.name(language)),
                Grams::from_milligrams(mg)
            ),
        });
    }
    Ok(Side {
        more: all.saturating_sub(cards.len()),
        cards,
    })
}

fn animals(origins: &OriginsRead, names: &Names) -> Vec<Card> {
    let card = |animal: &crate::wire::answers::AnimalShare| Card {
        goes_to: Some(format!("/animals/{}", animal.id)),
        title: format!(
            "{} {}",
            format::headed(&animal.species),
            animal.carcass.as_deref().unwrap_or_default()
        ),
        below: short(&names.farm(&animal.farm)),
    };
    origins.animals.iter().take(MOST).map(card).collect()
}

/// What a box has room for.
fn short(name: &str) -> String {
    const ROOM: usize = 22;
    if name.chars().count() <= ROOM {
        return name.to_owned();
    }
    let start: String = name.chars().take(ROOM - 1).collect();
    format!("{}…", start.trim_end())
}
