//! Where everything of a family's picture stands. Lengths are tenths of a pixel, whole, so that the same facts
//! give the same picture everywhere.

use super::chart::{Chart, summary};
use super::family::Family;
use super::items::{Area, Fill, Item, Line, Picture};
use super::rows::{Row, Span, rows};
use super::says::PictureSays;
use chrono::Datelike;
use domain::grams::Grams;
use domain::says::Says;
use domain::words::Account;
use labels::{Length, Weight};
use words::Speech;

const WIDTH: i64 = 11_000;
const NAME: i64 = 2_560;
/// The right edge of the weights.
const WEIGHT: i64 = 6_160;
/// The left and the right edge of the bars.
pub const CHART: (i64, i64) = (6_280, 8_640);
const ON_HAND: i64 = 8_760;
const PITCH: i64 = 320;
/// From the top of a row to its baseline.
const BASELINE: i64 = 232;
const SIZE: i64 = 220;
const GAP: i64 = 120;
/// The thickest bar; the thinnest, and the thinnest that shows what is on hand.
const THICK: (i64, i64, i64) = (250, 30, 70);
/// How near two lines of steps may stand.
const APART: i64 = 50;

/// The picture of some lots.
pub fn lay_out(family: &Family, speech: &Speech) -> Picture {
    let (span, rows) = rows(&family.lots);
    let mut sheet = Sheet {
        speech,
        y: 0,
        picture: Picture {
            width: WIDTH,
            ..Picture::default()
        },
    };
    let says = sheet.says(summary(&rows, speech));
    sheet.paragraph(&says);
    sheet.picture.says = says;
    if !rows.is_empty() {
        sheet.key();
        let chart = Chart::of(family, &rows);
        let top = sheet.y + PITCH;
        for (nth, row) in rows.iter().enumerate() {
            if row.on_hand > Grams::ZERO {
                let y = top + PITCH * nth as i64;
                sheet.bar(0, y + 10, (WIDTH, PITCH - 20), Fill::Row);
            }
        }
        sheet.heads(&chart, top + PITCH * rows.len() as i64);
        let thickest = rows.iter().filter(|row| !row.is_start);
        let thickest = thickest.map(|row| row.made).max();
        let thickest = thickest.or_else(|| rows.iter().map(|row| row.made).max());
        sheet.y = top;
        for row in &rows {
            let of = sheet.row(row, span);
            sheet.bars(row, &chart, thickest.unwrap_or_default());
            sheet.after(row, of);
            sheet.y += PITCH;
        }
        if span == Span::Lot {
            sheet.steps(&rows, &chart, top);
        }
        sheet.places(family);
    }
    sheet.picture.height = sheet.y + GAP;
    sheet.picture
}

struct Sheet<'a> {
    speech: &'a Speech,
    y: i64,
    picture: Picture,
}

/// How a text stands.
#[derive(Clone, Copy, Default)]
struct Look {
    bold: bool,
    dim: bool,
}

const BOLD: Look = Look {
    bold: true,
    dim: false,
};
const DIM: Look = Look {
    bold: false,
    dim: true,
};
const PLAIN: Look = Look {
    bold: false,
    dim: false,
};

/// The width of a text.
fn width(text: &str, bold: bool) -> i64 {
    let weight = if bold { Weight::Bold } else { Weight::Regular };
    weight.face().width(text, Length::from_um(SIZE)).um()
}

impl Sheet<'_> {
    fn says(&self, says: impl Into<Says>) -> String {
        self.speech.say(&says.into())
    }

    fn bar(&mut self, x: i64, y: i64, (w, h): (i64, i64), fill: Fill) {
        let area = Area { x, y, w, h };
        self.picture.items.push(Item::Bar { area, fill });
    }

    /// A text from `x` on, cut where it is wider than it may be; where it ends.
    fn text(&mut self, x: i64, text: &str, most: i64, look: Look) -> i64 {
        let shown = cut(text, most, look.bold);
        let width = width(&shown, look.bold);
        self.picture.items.push(Item::Text(Line {
            x,
            baseline: self.y + BASELINE,
            width,
            whole: (shown != text).then(|| text.to_owned()),
            text: shown,
            bold: look.bold,
            dim: look.dim,
        }));
        x + width
    }

    /// A text of as many lines as it needs.
    fn paragraph(&mut self, text: &str) {
        let mut line = String::new();
        for word in text.split(' ') {
            let more = if line.is_empty() {
                word.to_owned()
            } else {
                format!("{line} {word}")
            };
            if width(&more, true) > WIDTH && !line.is_empty() {
                self.text(0, &line, WIDTH, BOLD);
                self.y += PITCH;
                line = word.to_owned();
            } else {
                line = more;
            }
        }
        self.text(0, &line, WIDTH, BOLD);
        self.y += PITCH;
    }

    /// What the fills mean.
    fn key(&mut self) {
        let mut x = 0;
        let keys = [
            (Fill::Gone, PictureSays::KeyGone),
            (Fill::OnHand, PictureSays::KeyOnHand),
            (Fill::Held, PictureSays::KeyHeld),
        ];
        for (fill, says) in keys {
            self.bar(x, self.y + 80, (360, 160), fill);
            let says = self.says(says);
            x = self.text(x + 440, &says, WIDTH, PLAIN) + 300;
        }
        let says = self.says(PictureSays::KeyWeight);
        self.text(x, &says, WIDTH - x, DIM);
        self.y += PITCH;
    }

    /// The heads of the columns, and the lines of days.
    fn heads(&mut self, chart: &Chart, bottom: i64) {
        for (x, says, most) in [
            (0, PictureSays::Made, CHART.0 - GAP),
            (ON_HAND, PictureSays::OnHand, WIDTH - ON_HAND),
        ] {
            let says = self.says(says);
            self.text(x, &says, most, BOLD);
        }
        let marks = chart.marks();
        let short = chart.days() <= 21;
        let mut free = CHART.0;
        for day in marks {
            let x = chart.x(day.and_time(chrono::NaiveTime::MIN));
            let from = (x, self.y + PITCH);
            self.picture.items.push(Item::Line {
                from,
                to: (x, bottom),
                heavy: None,
            });
            let text = if short {
                day.day().to_string()
            } else {
                self.speech.date(day)
            };
            let wide = width(&text, false);
            if x >= free && x + wide <= CHART.1 + GAP {
                free = self.text(x, &text, wide, DIM) + GAP;
            }
        }
        let (from, to) = ((CHART.1, self.y + PITCH), (CHART.1, bottom));
        self.picture.items.push(Item::Line {
            from,
            to,
            heavy: Some(true),
        });
    }

    /// What stands before the bar; answers how what follows it stands.
    fn row(&mut self, row: &Row, span: Span) -> Look {
        let is_here = row.on_hand > Grams::ZERO;
        let look = if is_here { BOLD } else { PLAIN };
        if row.is_first {
            let day = match span {
                Span::Lot | Span::Day => self.speech.day(row.day),
                Span::Week | Span::Month => {
                    let day = self.speech.date(row.day);
                    self.says(PictureSays::Since { day })
                }
                Span::Year => row.day.year().to_string(),
            };
            let x = self.text(0, &day, NAME - GAP, BOLD) + 60;
            let step = self.says(row.step.says());
            if NAME - GAP - x > SIZE {
                self.text(x, &step, NAME - GAP - x, PLAIN);
            }
        }
        let weight = self.speech.grams(row.made);
        let from = WEIGHT - width(&weight, look.bold);
        self.text(from, &weight, WEIGHT - from, look);
        let names = row.names.join(", ");
        let name = match &row.code {
            Some(_) => names,
            None => self.says(PictureSays::Group {
                lots: row.lots,
                products: names,
            }),
        };
        let at = self.picture.items.len();
        self.text(NAME, &name, from - GAP - NAME, look);
        // The code of a lot is told by its name.
        if let (Some(code), Some(Item::Text(line))) = (&row.code, self.picture.items.get_mut(at)) {
            line.whole = Some(format!("{code} {name}"));
        }
        look
    }

    fn bars(&mut self, row: &Row, chart: &Chart, thickest: Grams) {
        let thick = |weight: Grams, least: i64| {
            let most = i128::from(thickest.milligrams().max(1));
            let drawn = i128::from(THICK.0) * i128::from(weight.milligrams()) / most;
            i64::try_from(drawn)
                .unwrap_or(THICK.0)
                .clamp(least, THICK.0)
        };
        let x = chart.x(row.from).min(CHART.1 - THICK.1);
        let end = row.to.map_or(CHART.1, |to| chart.x(to)).max(x + THICK.1);
        let middle = self.y + PITCH / 2;
        let high = thick(row.made, THICK.1);
        self.bar(x, middle - high / 2, (end - x, high), Fill::Gone);
        if row.on_hand <= Grams::ZERO {
            return;
        }
        let high = thick(row.on_hand, THICK.2);
        let share = |of: Grams| {
            let part = i128::from(of.milligrams()) * i128::from(end - x);
            i64::try_from(part / i128::from(row.on_hand.milligrams())).unwrap_or_default()
        };
        let held = share(row.held).clamp(0, end - x);
        if held < end - x {
            self.bar(x, middle - high / 2, (end - x - held, high), Fill::OnHand);
        }
        if held > 0 {
            self.bar(end - held, middle - high / 2, (held, high), Fill::Held);
        }
    }

    /// What is on hand and where, or where it went.
    fn after(&mut self, row: &Row, look: Look) {
        let most = WIDTH - ON_HAND;
        if row.on_hand > Grams::ZERO {
            let (weight, lots) = (row.on_hand, row.lots_on_hand);
            let text = match (row.places.as_slice(), row.code.is_some()) {
                (_, false) => self.says(PictureSays::InLots { weight, lots }),
                ([place], true) => format!("{} {place}", self.speech.grams(weight)),
                (places, true) => self.says(PictureSays::InPlaces {
                    weight,
                    places: places.len(),
                }),
            };
            self.text(ON_HAND, &text, most, look);
            return;
        }
        let shown = |account: &&Account| {
            !matches!(account, Account::Used | Account::Moved | Account::Noted)
        };
        let went = row
            .went
            .iter()
            .filter(shown)
            .map(|account| self.says(account.says()));
        let went: Vec<String> = went.collect();
        let text = match row.code {
            None => self.says(PictureSays::AllGone),
            Some(_) => went.join(", "),
        };
        if !text.is_empty() {
            self.text(ON_HAND, &text, most, DIM);
        }
    }

    /// From what went into a step, a dot each, down to the first row of what it made.
    fn steps(&mut self, rows: &[Row], chart: &Chart, top: i64) {
        let middle = |nth: usize| top + PITCH * nth as i64 + PITCH / 2;
        let mut taken: Vec<(i64, i64, i64)> = Vec::new();
        for (nth, row) in rows.iter().enumerate().filter(|(_, row)| row.is_first) {
            let Some(step) = row.made_by else { continue };
            let into = rows.iter().enumerate();
            let into = into.filter(|(_, other)| other.used_in.contains(&step));
            let into: Vec<i64> = into.map(|(other, _)| middle(other)).collect();
            let (Some(first), Some(last)) = (into.iter().min(), into.iter().max()) else {
                continue;
            };
            let (from, to) = (*first.min(&middle(nth)), *last.max(&middle(nth)));
            let mut x = chart.x(row.from);
            while taken
                .iter()
                .any(|(at, above, below)| (at - x).abs() < APART && *above < to && from < *below)
                && x + APART < CHART.1
            {
                x += APART;
            }
            taken.push((x, from, to));
            self.picture.items.push(Item::Line {
                from: (x, from),
                to: (x, to),
                heavy: Some(false),
            });
            let dots = into.into_iter().map(|y| Item::Dot { x, y });
            self.picture.items.extend(dots);
        }
    }

    /// Where what is on hand is, place by place.
    fn places(&mut self, family: &Family) {
        let mut found: std::collections::BTreeMap<&str, (Grams, usize)> = Default::default();
        for (place, left) in family.lots.iter().flat_map(|lot| &lot.places) {
            let of = found.entry(place).or_default();
            *of = (of.0 + *left, of.1 + 1);
        }
        if found.is_empty() {
            return;
        }
        self.y += PITCH / 2;
        let says = self.says(PictureSays::NowAt);
        self.text(0, &says, WIDTH, BOLD);
        self.y += PITCH;
        let mut found: Vec<_> = found.into_iter().collect();
        found.sort_by_key(|(place, (left, _))| (std::cmp::Reverse(*left), *place));
        let most = found.first().map_or(Grams::ZERO, |(_, (left, _))| *left);
        for (place, (left, lots)) in found {
            let says = self.says(PictureSays::Place {
                place: place.to_owned(),
                lots,
            });
            let weight = self.speech.grams(left);
            let from = WEIGHT - width(&weight, true);
            self.text(from, &weight, WEIGHT - from, BOLD);
            self.text(0, &says, from - GAP, PLAIN);
            let wide = i128::from(CHART.1 - CHART.0) * i128::from(left.milligrams());
            let wide = wide / i128::from(most.milligrams().max(1));
            let wide = i64::try_from(wide).unwrap_or_default().max(THICK.1);
            self.bar(CHART.0, self.y + 80, (wide, 160), Fill::OnHand);
            self.y += PITCH;
        }
    }
}

/// A text that is no wider than it may be: cut at a letter, with dots.
fn cut(text: &str, most: i64, bold: bool) -> String {
    if width(text, bold) <= most {
        return text.to_owned();
    }
    let mut fits = String::new();
    let mut shown = String::new();
    for letter in text.chars() {
        shown.push(letter);
        let shorter = format!("{}…", shown.trim_end_matches([' ', ',']));
        if width(&shorter, bold) > most {
            break;
        }
        fits = shorter;
    }
    fits
}
