//! Boxes and lines of a family, as SVG.

use std::fmt::Write;

/// A box.
#[derive(Default)]
pub struct Card {
    /// Where a tap leads.
    pub goes_to: Option<String>,
    /// Its first line.
    pub title: String,
    /// Its second line.
    pub below: String,
}

/// What stands on one side of the lot.
pub struct Side {
    /// Its boxes.
    pub cards: Vec<Card>,
    /// How many are left out, in words.
    pub more: Option<String>,
}

const WIDTH: i32 = 288;
const HEIGHT: i32 = 62;
/// From the top of one box to the next: a finger's width.
const PITCH: i32 = 76;
const COLUMNS: [i32; 3] = [4, 346, 688];

impl Side {
    /// How many rows it takes; what is left out is a line of its own.
    fn rows(&self) -> i32 {
        self.cards.len() as i32 + i32::from(self.more.is_some())
    }
}

// Writing to a string cannot fail, hence the ignored results below.

/// From left to right, the lot in the middle.
pub fn wide(title: &str, before: &Side, own: &Card, after: &Side) -> String {
    let rows = before.rows().max(after.rows()).max(1);
    let (width, height) = (COLUMNS[2] + WIDTH + 4, rows * PITCH);
    let mut out = open("wide-tree", title, width, height);
    let middle = height / 2;
    for (side, column, from, to) in [
        (before, 0, COLUMNS[0] + WIDTH, COLUMNS[1]),
        (after, 2, COLUMNS[2], COLUMNS[1] + WIDTH),
    ] {
        let top = (height - side.rows() * PITCH) / 2 + (PITCH - HEIGHT) / 2;
        let bend = (from + to) / 2;
        for row in 0..side.rows() {
            let y = top + row * PITCH + HEIGHT / 2;
            let _ = write!(out, "<path d=\"M{from} {y}H{bend}V{middle}H{to}\"/>");
        }
        side.draw(&mut out, COLUMNS[column], top);
    }
    own.draw(&mut out, COLUMNS[1], middle - HEIGHT / 2, true);
    out + "</svg>"
}

/// From top to bottom along one line.
pub fn narrow(title: &str, before: &Side, own: &Card, after: &Side) -> String {
    const INDENT: i32 = 40;
    const SPINE: i32 = 18;
    let rows = before.rows() + 1 + after.rows();
    let mut out = open("narrow-tree", title, INDENT + WIDTH + 4, rows * PITCH);
    let pad = (PITCH - HEIGHT) / 2;
    let centre = |row: i32| row * PITCH + PITCH / 2;
    let _ = write!(
        out,
        "<path d=\"M{SPINE} {}V{}\"/>",
        centre(0),
        centre(rows - 1)
    );
    for row in (0..rows).filter(|row| *row != before.rows()) {
        let y = centre(row);
        let _ = write!(out, "<path d=\"M{SPINE} {y}H{INDENT}\"/>");
    }
    before.draw(&mut out, INDENT, pad);
    own.draw(&mut out, 4, before.rows() * PITCH + pad, true);
    after.draw(&mut out, INDENT, (before.rows() + 1) * PITCH + pad);
    out + "</svg>"
}

fn open(class: &str, title: &str, width: i32, height: i32) -> String {
    format!(
        "<svg class=\"tree {class}\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\" role=\"group\" aria-label=\"{}\">",
        escaped(title)
    )
}

impl Side {
    fn draw(&self, out: &mut String, x: i32, top: i32) {
        for (row, card) in self.cards.iter().enumerate() {
            card.draw(out, x, top + row as i32 * PITCH, false);
        }
        if let Some(more) = &self.more {
            let y = top + self.cards.len() as i32 * PITCH + HEIGHT / 2 + 6;
            let x = x + 12;
            let _ = write!(
                out,
                "<text class=\"more\" x=\"{x}\" y=\"{y}\">{}</text>",
                escaped(more)
            );
        }
    }
}

impl Card {
    fn draw(&self, out: &mut String, x: i32, y: i32, own: bool) {
        if let Some(goes_to) = &self.goes_to {
            let _ = write!(out, "<a href=\"{}\">", escaped(goes_to));
        }
        let class = if own { "own" } else { "kin" };
        let (title, below) = (escaped(&self.title), escaped(&self.below));
        let (inside, first, second) = (x + 12, y + 26, y + 50);
        let _ = write!(
            out,
            "<g class=\"{class}\"><rect x=\"{x}\" y=\"{y}\" width=\"{WIDTH}\" height=\"{HEIGHT}\" rx=\"5\"/>\
             <text x=\"{inside}\" y=\"{first}\">{title}</text>\
             <text class=\"thin\" x=\"{inside}\" y=\"{second}\">{below}</text></g>"
        );
        if self.goes_to.is_some() {
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
