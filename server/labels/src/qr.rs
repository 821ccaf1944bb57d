//! The square code: an address, its modules on whole printer dots.

use domain::gs1::DigitalLink;
use qrcode::{Color, EcLevel};

use crate::length::{Area, Dpi};
use crate::mask;
use crate::refusal::{CodeKind, Refusal};
use crate::template::Level;

/// White on every side, in modules (standards 7).
pub const QUIET: i64 = 4;

/// Dots of the smallest module (trade 5: 3 dots = 0.375 mm at 203 dpi, 4 dots = 0.339 mm at 300).
/// A place with more room gets more.
pub(crate) fn fewest_dots(dpi: Dpi) -> i64 {
    match dpi {
        Dpi::D203 => 3,
        Dpi::D300 => 4,
    }
}

/// What the compact mode of the code can hold; an upper-case address fits (standards 7).
fn compact(c: char) -> bool {
    matches!(c, '0'..='9' | 'A'..='Z' | ' ' | '$' | '%' | '*' | '+' | '-' | '.' | '/' | ':')
}

/// The address as the code holds it: in capitals, which make the code smaller, wherever they mean
/// the same.
///
/// A GS1 address with a query has signs that the compact mode lacks; only such a one may be longer.
/// A part of it that is in capitals is compact all the same.
fn spelt(payload: &str) -> Result<String, Refusal> {
    let code = CodeKind::Qr;
    if payload.is_empty() {
        return Err(Refusal::EmptyCode { code });
    }
    let (path, query) = payload.split_at(payload.find('?').unwrap_or(payload.len()));
    let capitals = path.to_ascii_uppercase() + query;
    let link = DigitalLink::read(payload).ok();
    let holds = |c: char| match link {
        // Scanners guess at anything beyond these.
        Some(_) => c.is_ascii_graphic(),
        None => compact(c),
    };
    if let Some(character) = capitals.chars().find(|c| !holds(*c)) {
        return Err(Refusal::CodeCharacter {
            code,
            character,
            payload: capitals,
        });
    }
    // A lot in small letters is not the lot in capitals.
    let same = link.is_none() || link == DigitalLink::read(&capitals).ok();
    Ok(if same { capitals } else { payload.to_owned() })
}

/// A square code by itself, for a page: an SVG of the given width in pixels, with its quiet zone. None where the
/// text is longer than a code holds.
pub fn qr_svg(text: &str, pixels: u32) -> Option<String> {
    let (width, colours) = mask::symbol(text.as_bytes(), EcLevel::M).ok()?;
    let across = width as i64 + 2 * QUIET;
    let mut path = String::new();
    for (row, colours) in colours.chunks(width).enumerate() {
        let mut column = 0;
        for run in colours.chunk_by(|a, b| a == b) {
            if run[0] == Color::Dark {
                let (x, y, long) = (column + QUIET, row as i64 + QUIET, run.len());
                path += &format!("M{x} {y}h{long}v1h-{long}z");
            }
            column += run.len() as i64;
        }
    }
    Some(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{pixels}\" height=\"{pixels}\" viewBox=\"0 0 {across} {across}\" \
         aria-hidden=\"true\"><path fill=\"#fff\" d=\"M0 0h{across}v{across}h-{across}z\"/><path d=\"{path}\"/></svg>"
    ))
}

/// Places the code in the middle of its area, as large as whole dots allow.
pub(crate) fn place(
    payload: &str,
    area: Area,
    level: Level,
    dpi: Dpi,
) -> Result<crate::Code, Refusal> {
    let code = CodeKind::Qr;
    let payload = spelt(payload)?;
    let Ok((width, colours)) = mask::symbol(payload.as_bytes(), ec_level(level)) else {
        return Err(Refusal::CodeTooLong { code, payload });
    };
    let modules = width as i64;
    let across = modules + 2 * QUIET;
    let (left, top) = (dpi.first_dot(area.x), dpi.first_dot(area.y));
    let (wide, high) = (
        dpi.whole_dots(area.right()) - left,
        dpi.whole_dots(area.bottom()) - top,
    );
    let dots = wide.min(high) / across;
    if dots < fewest_dots(dpi) {
        let needed = dpi.dots(across * fewest_dots(dpi));
        return Err(Refusal::CodeTooLarge {
            code,
            payload,
            needed,
            had: area.w.min(area.h),
        });
    }
    let (left, top) = (
        left + (wide - across * dots) / 2,
        top + (high - across * dots) / 2,
    );
    let bounds = boxed(
        dpi,
        (left, top),
        (left + across * dots, top + across * dots),
    );
    let at = |column: i64, row: i64| (left + (QUIET + column) * dots, top + (QUIET + row) * dots);
    let mut dark = Vec::new();
    for (row, colours) in colours.chunks(width).enumerate() {
        let row = row as i64;
        let mut column = 0;
        for run in colours.chunk_by(|a, b| a == b) {
            let from = column;
            column += run.len() as i64;
            if run[0] == Color::Dark {
                dark.push(boxed(dpi, at(from, row), at(column, row + 1)));
            }
        }
    }
    Ok(crate::Code {
        kind: code,
        payload,
        bounds,
        dots,
        modules,
        dark,
    })
}

fn boxed(dpi: Dpi, from: (i64, i64), to: (i64, i64)) -> Area {
    let (x, y) = (dpi.dots(from.0), dpi.dots(from.1));
    Area {
        x,
        y,
        w: dpi.dots(to.0) - x,
        h: dpi.dots(to.1) - y,
    }
}

fn ec_level(level: Level) -> EcLevel {
    match level {
        Level::L => EcLevel::L,
        Level::M => EcLevel::M,
        Level::Q => EcLevel::Q,
        Level::H => EcLevel::H,
    }
}

#[cfg(test)]
mod tests;
