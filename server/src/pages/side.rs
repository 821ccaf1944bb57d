//! The picture of a carcass: the project's own drawings, with the cuts of a style on them.
//!
//! A drawing is a file of `assets/sides`, a line a part: a region is `<g id="ham" data-at="196 222">`, with the
//! middle of its name; every other line is bone, or a mark of the knife.

use super::answer::escaped;
use domain::yields::Drawing;
use std::fmt::Write;

/// A cut as the picture shows it.
pub struct Shown<'a> {
    /// Its key.
    pub key: &'a str,
    /// Its number in the order of the knife.
    pub nth: usize,
    /// Its name.
    pub name: &'a str,
    /// The regions that it is; the first bears the name.
    pub regions: &'a [String],
}

/// A part of a drawing that is cut off as one.
struct Region<'a> {
    id: &'a str,
    /// The middle of its name.
    at: (i32, i32),
    outline: &'a str,
}

/// From the number and name of a cut down to its weight.
const NEXT_LINE: i32 = 27;

/// The ground of what is weighed off.
const HATCH: &str = "<defs><pattern id=\"hatch\" width=\"13\" height=\"13\" patternUnits=\"userSpaceOnUse\" \
    patternTransform=\"rotate(45)\"><rect width=\"13\" height=\"13\"/><path d=\"M0 0h3v13h-3z\"/></pattern></defs>";

/// The picture; `says` is what it shows, for those who hear it.
pub fn draw(drawing: Drawing, says: &str, cuts: &[Shown<'_>]) -> String {
    let file = file(drawing);
    let (view, regions, rest) = parts(file);
    let mut svg = format!(
        "<svg class=\"side\" viewBox=\"{view}\" role=\"img\" aria-label=\"{}\">{HATCH}",
        escaped(says)
    );
    for region in &regions {
        let outline = region.outline;
        let _ = match owner(cuts, region.id) {
            Some((cut, _)) => write!(
                svg,
                "<g class=\"cut\" data-of=\"{}\"><title>{} {}</title>{outline}</g>",
                cut.key,
                cut.nth,
                escaped(cut.name)
            ),
            None => write!(svg, "<g class=\"elsewhere\">{outline}</g>"),
        };
    }
    let _ = write!(svg, "<g class=\"bones\">{rest}</g>");
    for region in &regions {
        if let Some((cut, is_first)) = owner(cuts, region.id) {
            let _ = write!(svg, "<g class=\"says\" data-of=\"{}\">", cut.key);
            written(&mut svg, cut, region.at, is_first);
            svg.push_str("</g>");
        }
    }
    svg.push_str("</svg>");
    svg
}

/// Number, name and, below, room for its weight; on a second region the number alone.
fn written(svg: &mut String, cut: &Shown<'_>, (x, y): (i32, i32), is_first: bool) {
    let nth = cut.nth;
    if !is_first {
        let _ = write!(
            svg,
            "<text x=\"{x}\" y=\"{y}\"><tspan class=\"n\">{nth}</tspan></text>"
        );
        return;
    }
    let (name, below) = (escaped(cut.name), y + NEXT_LINE);
    let _ = write!(
        svg,
        "<text x=\"{x}\" y=\"{y}\"><tspan class=\"n\">{nth}</tspan><tspan class=\"w\"> {name}</tspan></text>\
         <text class=\"kg\" x=\"{x}\" y=\"{below}\"></text>"
    );
}

/// The cut that a region belongs to, and whether it bears its name.
fn owner<'a>(cuts: &'a [Shown<'a>], region: &str) -> Option<(&'a Shown<'a>, bool)> {
    cuts.iter().find_map(|cut| {
        let nth = cut.regions.iter().position(|one| one == region)?;
        Some((cut, nth == 0))
    })
}

fn file(drawing: Drawing) -> &'static str {
    match drawing {
        Drawing::Pork => include_str!("../../assets/sides/pork.svg"),
        Drawing::Lamb => include_str!("../../assets/sides/lamb.svg"),
        Drawing::Beef => include_str!("../../assets/sides/beef.svg"),
        Drawing::Bird => include_str!("../../assets/sides/bird.svg"),
    }
}

/// What is seen of a drawing, its regions, and the rest of it.
fn parts(file: &str) -> (&str, Vec<Region<'_>>, String) {
    let (mut view, mut regions, mut rest) = ("", Vec::new(), String::new());
    for line in file.lines() {
        if let Some(found) = between(line, "viewBox=\"", "\"") {
            view = found;
        } else if let Some(region) = region(line) {
            regions.push(region);
        } else if line != "</svg>" {
            rest.push_str(line);
        }
    }
    (view, regions, rest)
}

fn region(line: &str) -> Option<Region<'_>> {
    let line = line.strip_prefix("<g id=\"")?;
    let (id, line) = line.split_once('"')?;
    let (x, y) = between(line, "data-at=\"", "\"")?.split_once(' ')?;
    Some(Region {
        id,
        at: (x.parse().ok()?, y.parse().ok()?),
        outline: between(line, ">", "</g>")?,
    })
}

fn between<'a>(text: &'a str, before: &str, after: &str) -> Option<&'a str> {
    let (_, rest) = text.split_once(before)?;
    Some(rest.split_once(after)?.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_region_that_a_style_names_stands_on_its_drawing() {
        let law = law::shipped().expect("the law reads");
        let mut seen = 0;
        for style in &law.trade.yields.styles {
            let knife = style.knife.as_ref().expect("every style has its knife");
            let (view, regions, rest) = parts(file(knife.drawing));
            assert_eq!(view.split(' ').count(), 4, "{}", style.key);
            assert!(rest.contains("class=\"knife\""), "{}", style.key);
            let drawn: BTreeSet<&str> = regions.iter().map(|region| region.id).collect();
            assert_eq!(drawn.len(), regions.len(), "{}", style.key);
            for cut in &knife.cuts {
                for region in &cut.regions {
                    assert!(drawn.contains(region.as_str()), "{}: {region}", style.key);
                    seen += 1;
                }
            }
        }
        assert!(seen > 60, "{seen} regions");
    }

    #[test]
    fn a_cut_bears_its_name_once_and_its_number_on_every_region() {
        let regions = ["breast".to_owned(), "neck".to_owned()];
        let cut = Shown {
            key: "breast",
            nth: 3,
            name: "Breast & neck",
            regions: &regions,
        };
        let svg = draw(Drawing::Lamb, "Lamb", &[cut]);
        assert_eq!(svg.matches("> Breast &amp; neck</tspan>").count(), 1);
        assert_eq!(svg.matches("<tspan class=\"n\">3</tspan>").count(), 2);
        assert_eq!(svg.matches("class=\"cut\"").count(), 2);
        assert_eq!(svg.matches("class=\"elsewhere\"").count(), 6);
    }
}
