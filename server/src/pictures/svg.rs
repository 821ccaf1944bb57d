//! A laid-out picture as SVG. Greys and hatching only, in attributes: it reads the same on a screen, in print,
//! and under a policy that lets no style in.

use super::items::{Fill, Item, Picture};
use labels::FAMILY;
use std::fmt::{Display, Formatter, Result, Write};

const HATCH: &str = "<defs><pattern id=\"family-held\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" \
    patternTransform=\"rotate(45)\"><path d=\"M0 0h9v9H0z\" fill=\"#fff\"/><path d=\"M0 0h4.5v9H0z\" \
    fill=\"#16181a\"/></pattern></defs>";

// Writing to a string cannot fail, hence the ignored results below.

/// Writes it.
pub fn write(picture: &Picture) -> String {
    let (width, height) = (Tenths(picture.width), Tenths(picture.height));
    let says = escaped(&picture.says);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"family-picture\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\" role=\"img\" aria-label=\"{says}\" font-family=\"{FAMILY}, sans-serif\" \
         font-size=\"22\" fill=\"#16181a\">{HATCH}<rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>"
    );
    for item in &picture.items {
        one(&mut out, item);
    }
    out.push_str("</svg>\n");
    out
}

fn one(out: &mut String, item: &Item) {
    let _ = match item {
        Item::Bar { area, fill } => {
            let (x, y) = (Tenths(area.x), Tenths(area.y));
            let (w, h) = (Tenths(area.w), Tenths(area.h));
            let fill = match fill {
                Fill::Row => "fill=\"#f0ede2\"",
                Fill::Gone => "fill=\"#8f8977\"",
                Fill::OnHand => "fill=\"#16181a\"",
                Fill::Held => "fill=\"url(#family-held)\" stroke=\"#16181a\" stroke-width=\"2\"",
            };
            write!(
                out,
                "<rect x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" {fill}/>"
            )
        }
        Item::Line { from, to, heavy } => {
            let pen = match heavy {
                None => "stroke=\"#dcd7c8\" stroke-width=\"1.5\"",
                Some(false) => "stroke=\"#6b6657\" stroke-width=\"2\"",
                Some(true) => "stroke=\"#16181a\" stroke-width=\"3\"",
            };
            let (x, y) = (Tenths(from.0), Tenths(from.1));
            let (to_x, to_y) = (Tenths(to.0), Tenths(to.1));
            write!(out, "<path d=\"M{x} {y}L{to_x} {to_y}\" {pen}/>")
        }
        Item::Dot { x, y } => {
            let (x, y) = (Tenths(*x), Tenths(*y));
            write!(out, "<circle cx=\"{x}\" cy=\"{y}\" r=\"4.5\"/>")
        }
        Item::Text(text) => {
            let (x, y) = (Tenths(text.x), Tenths(text.baseline));
            let bold = if text.bold {
                " font-weight=\"700\""
            } else {
                ""
            };
            let dim = if text.dim { " fill=\"#4d4a42\"" } else { "" };
            let whole = text.whole.as_ref();
            let title = whole.map(|whole| format!("<title>{}</title>", escaped(whole)));
            let width = Tenths(text.width);
            write!(
                out,
                "<text x=\"{x}\" y=\"{y}\" textLength=\"{width}\" lengthAdjust=\"spacingAndGlyphs\"{bold}{dim}>{}{}</text>",
                title.unwrap_or_default(),
                escaped(&text.text)
            )
        }
    };
}

/// As XML takes it; letters that it has no room for are left out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            letter if letter.is_control() || matches!(letter, '\u{fffe}' | '\u{ffff}') => {}
            letter => out.push(letter),
        }
    }
    out
}

/// Tenths of a pixel.
struct Tenths(i64);

impl Display for Tenths {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let (whole, part) = (self.0.abs() / 10, self.0.abs() % 10);
        match part {
            0 => write!(f, "{sign}{whole}"),
            _ => write!(f, "{sign}{whole}.{part}"),
        }
    }
}
