//! A lot's family as a picture: what went in on the left, what came out on the right.

use super::format::shown;
use crate::app::App;
use crate::error::Result;
use domain::grams::Grams;
use domain::lot::LotId;
use std::fmt::Write;
use store::Conn;
use store::lots::{self, LotRow};
use store::trace;

/// The most boxes on a side; the tables below tell of all.
const MOST: usize = 9;
const BOX: (i32, i32) = (300, 62);
const GAP: i32 = 16;

struct Card {
    code: Option<String>,
    title: String,
    below: String,
}

/// Draws parents, the lot, and children.
pub fn draw(app: &App, conn: &mut Conn, row: &LotRow) -> Result<String> {
    let language = app.kitchen(conn)?.language().to_owned();
    let ancestry = trace::back(conn, row.id)?;
    let mut uses: Vec<(i32, i64)> = Vec::new();
    for used in ancestry.uses_of(LotId(row.id)) {
        match uses.iter_mut().find(|(lot, _)| *lot == used.lot.0) {
            Some((_, mg)) => *mg += used.milligrams,
            None => uses.push((used.lot.0, used.milligrams)),
        }
    }
    let parents = boxes(app, conn, &uses, &language)?;
    let made = trace::children(conn, row.id)?;
    let children = boxes(app, conn, &made, &language)?;
    let product = app.product(conn, row.version_id)?;
    let own = Card {
        code: None,
        title: row.code()?.shown(),
        below: product.name(&language).to_owned(),
    };
    Ok(svg(&parents, &own, &children))
}

fn boxes(app: &App, conn: &mut Conn, lots: &[(i32, i64)], language: &str) -> Result<Vec<Card>> {
    let keys: Vec<i32> = lots.iter().map(|(lot, _)| *lot).collect();
    let mut boxes = Vec::new();
    for row in lots::by_keys(conn, &keys)?.iter().take(MOST) {
        let product = app.product(conn, row.version_id)?;
        let mg = lots
            .iter()
            .find(|(lot, _)| *lot == row.id)
            .map_or(0, |(_, mg)| *mg);
        let name: String = product.name(language).chars().take(24).collect();
        let below = format!("{name}, {}", Grams::from_milligrams(mg));
        boxes.push(Card {
            code: Some(row.code.clone()),
            title: row.code()?.shown(),
            below,
        });
    }
    if lots.len() > MOST {
        boxes.push(Card {
            code: None,
            title: format!("and {} more", lots.len() - MOST),
            below: "all are in the tables".into(),
        });
    }
    Ok(boxes)
}

fn svg(parents: &[Card], own: &Card, children: &[Card]) -> String {
    let rows = parents.len().max(children.len()).max(1) as i32;
    let height = rows * (BOX.1 + GAP) + GAP;
    let columns = [10, 390, 770];
    let mut out = format!(
        "<svg class=\"tree\" viewBox=\"0 0 1080 {height}\" role=\"img\" aria-label=\"Family of the lot\">"
    );
    let top = |count: usize, nth: usize| {
        (height - count as i32 * (BOX.1 + GAP)) / 2 + nth as i32 * (BOX.1 + GAP) + GAP / 2
    };
    let middle = top(1, 0) + BOX.1 / 2;
    for (side, boxes) in [(0, parents), (2, children)] {
        for nth in 0..boxes.len() {
            let y = top(boxes.len(), nth) + BOX.1 / 2;
            let (from, to) = if side == 0 {
                (columns[0] + BOX.0, columns[1])
            } else {
                (columns[2], columns[1] + BOX.0)
            };
            let bend = (from + to) / 2;
            let _ = write!(
                out,
                "<path d=\"M{from} {y} C{bend} {y} {bend} {middle} {to} {middle}\" fill=\"none\" stroke=\"#16181a\" stroke-width=\"2\"/>"
            );
        }
    }
    for (x, boxes) in [
        (columns[0], parents),
        (columns[1], std::slice::from_ref(own)),
        (columns[2], children),
    ] {
        for (nth, one) in boxes.iter().enumerate() {
            one.draw(&mut out, x, top(boxes.len(), nth), x == columns[1]);
        }
    }
    out + "</svg>"
}

impl Card {
    fn draw(&self, out: &mut String, x: i32, y: i32, own: bool) {
        if let Some(code) = &self.code {
            let _ = write!(out, "<a href=\"/lots/{code}\">");
        }
        let width = if own { 4 } else { 2 };
        let _ = write!(
            out,
            "<rect x=\"{x}\" y=\"{y}\" width=\"{}\" height=\"{}\" rx=\"6\" fill=\"#fff\" stroke=\"#16181a\" stroke-width=\"{width}\"/>",
            BOX.0, BOX.1
        );
        let title = self
            .code
            .as_deref()
            .map_or_else(|| self.title.clone(), shown);
        let _ = write!(
            out,
            "<text x=\"{}\" y=\"{}\">{}</text>",
            x + 12,
            y + 26,
            escaped(&title)
        );
        let _ = write!(
            out,
            "<text class=\"thin\" x=\"{}\" y=\"{}\">{}</text>",
            x + 12,
            y + 49,
            escaped(&self.below)
        );
        if self.code.is_some() {
            out.push_str("</a>");
        }
    }
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
