//! Placed label to SVG for the screen: the same items at the same places.

use std::fmt::Write;

use domain::gs1::GS;

use crate::face::{FAMILY, Weight};
use crate::length::{Area, Length};
use crate::placed::{Placed, PlacedLabel, PlacedLine};

/// Draws a label. Text stays text, in the family [`FAMILY`]; each code is one path.
/// Every line is given its width, so that a screen without the font still shows the layout.
pub fn svg(label: &PlacedLabel) -> String {
    let (w, h) = (Mm(label.width), Mm(label.height));
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" \
         viewBox=\"0 0 {w} {h}\" font-family=\"{FAMILY}\" style=\"font-kerning:none;\
         font-variant-ligatures:none\"><rect width=\"{w}\" height=\"{h}\" fill=\"#fff\"/>"
    );
    for item in &label.items {
        match item {
            Placed::Text(line) => text(&mut out, line),
            Placed::Code(code) => {
                let title = escape(&code.payload);
                path(&mut out, &code.dark, &format!("<title>{title}</title>"));
            }
            Placed::Rule(area) => path(&mut out, std::slice::from_ref(area), ""),
            Placed::Picture(picture) => path(&mut out, &picture.dark, ""),
        }
    }
    for hole in &label.holes {
        let radius = hole.w / 2;
        let (x, y) = (Mm(hole.x + radius), Mm(hole.y + radius));
        let _ = write!(
            out,
            "<circle cx=\"{x}\" cy=\"{y}\" r=\"{}\" fill=\"none\" stroke=\"#888\" \
             stroke-width=\".3\" stroke-dasharray=\"1 1\"/>",
            Mm(radius)
        );
    }
    out.push_str("</svg>");
    out
}

// Writing to a string cannot fail, so the results below are ignored.

fn text(out: &mut String, line: &PlacedLine) {
    let weight = match line.weight {
        Weight::Regular => 400,
        Weight::Bold => 700,
    };
    let (x, y, size, width) = (Mm(line.x), Mm(line.baseline), Mm(line.size), Mm(line.width));
    let words = escape(&line.text);
    let _ = write!(
        out,
        "<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\" font-weight=\"{weight}\" \
         textLength=\"{width}\" lengthAdjust=\"spacingAndGlyphs\">{words}</text>"
    );
}

fn path(out: &mut String, areas: &[Area], inside: &str) {
    out.push_str("<path shape-rendering=\"crispEdges\" d=\"");
    for area in areas {
        let (x, y, w, h) = (Mm(area.x), Mm(area.y), Mm(area.w), Mm(area.h));
        let _ = write!(out, "M{x} {y}h{w}v{h}h-{w}z");
    }
    let _ = write!(out, "\">{inside}</path>");
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            // XML knows no control characters; this is the picture of the separator.
            GS => out.push('\u{241d}'),
            other => out.push(other),
        }
    }
    out
}

/// Millimetres with three places.
struct Mm(Length);

impl std::fmt::Display for Mm {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (whole, part) = (self.0.um() / 1000, self.0.um() % 1000);
        if part == 0 {
            write!(f, "{whole}")
        } else {
            write!(f, "{whole}.{part:03}")
        }
    }
}
