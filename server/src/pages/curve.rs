//! A piece's loss over its days, drawn: what is usual as a pale band, what was weighed as a thick line, what must be met
//! as broken lines, the day on which it may be ready as a mark on the axis. Down is lost.

use super::bench_says::BenchSays;
use super::says::PageSays;
use super::spoken::Words;
use domain::cure_room::CureRoomRules;
use domain::family::PieceView;
use domain::measure::Percent;
use domain::says::Arg;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// The field in which the lines run, in the picture's own units.
const LEFT: i64 = 64;
const RIGHT: i64 = 386;
const TOP: i64 = 22;
const LOW: i64 = 214;
const WIDE: i64 = 400;
const HIGH: i64 = 280;

/// In how many parts the curve is drawn.
const PARTS: i64 = 24;

/// Steps that the axis of days may have.
const STEPS: [i64; 9] = [2, 5, 10, 20, 30, 60, 90, 180, 360];

/// What the axes reach.
struct Axes {
    days: i64,
    /// In hundredths of a per cent.
    loss: i64,
}

impl Axes {
    fn x(&self, day: i64) -> i64 {
        LEFT + day.clamp(0, self.days) * (RIGHT - LEFT) / self.days
    }

    fn y(&self, loss: i64) -> i64 {
        TOP + loss.clamp(0, self.loss) * (LOW - TOP) / self.loss
    }

    fn points(&self, of: impl IntoIterator<Item = (i64, i64)>) -> String {
        let at = |(day, loss)| format!("{},{}", self.x(day), self.y(loss));
        of.into_iter().map(at).collect::<Vec<_>>().join(" ")
    }
}

fn hundredths(of: Percent) -> i64 {
    let hundredths = of.number() * Decimal::ONE_HUNDRED;
    hundredths.round().to_i64().unwrap_or(0)
}

/// The picture of a piece; nothing where there is neither a curve nor a weighing.
pub fn draw(words: &Words, view: &PieceView, rules: &CureRoomRules) -> String {
    let own: Vec<(i64, i64)> = view
        .weighed()
        .into_iter()
        .map(|(of, lost)| ((of.day - view.piece.in_salt).num_days(), hundredths(lost)))
        .collect();
    if own.is_empty() && view.piece.curve.is_none() {
        return String::new();
    }
    let rule = &view.piece.rule;
    let target = rule.loss.map(hundredths);
    let axes = axes(view, &own, target);
    let band = rules
        .band
        .as_ref()
        .map_or(0, |band| hundredths(Percent::new(band.value)));
    let mut drawn = String::new();
    if let Some(curve) = &view.piece.curve {
        let at = |part: i64| {
            let day = axes.days * part / PARTS;
            let lost = curve.loss_on(u32::try_from(day).unwrap_or(0));
            (day, hundredths(lost))
        };
        let off = |by: i64| move |part| (at(part).0, at(part).1 + by);
        let edge = (0..=PARTS)
            .map(off(-band))
            .chain((0..=PARTS).rev().map(off(band)));
        let (edge, line) = (axes.points(edge), axes.points((0..=PARTS).map(at)));
        drawn += &format!(
            "<polygon class=\"band\" points=\"{edge}\"/><polyline class=\"usual\" points=\"{line}\"/>"
        );
    }
    drawn += &grid(words, &axes);
    if let Some(target) = target {
        let (y, says) = (
            axes.y(target),
            BenchSays::Target {
                percent: percent(target),
            },
        );
        drawn += &format!(
            "<path class=\"aim\" d=\"M{LEFT} {y}H{RIGHT}\"/><text class=\"b\" x=\"{}\" y=\"{}\">{}</text>",
            LEFT + 8,
            y + 23,
            words.say(says)
        );
    }
    if let Some(days) = rule.days {
        let x = axes.x(i64::from(days));
        drawn += &format!(
            "<path class=\"aim\" d=\"M{x} {TOP}V{LOW}\"/><text class=\"b\" x=\"{}\" y=\"{}\" text-anchor=\"end\">{}</text>",
            x - 8,
            TOP + 16,
            words.say(BenchSays::Days { days })
        );
    }
    drawn += &ready(words, &axes, view);
    drawn += &weighed(words, &axes, &own);
    let (days, loss) = own.last().copied().unwrap_or((axes.days, 0));
    let says = PageSays::Curve {
        days: u32::try_from(days).unwrap_or(0),
        loss: Decimal::new(loss, 2).round_dp(1),
    };
    format!(
        "<svg class=\"curve\" viewBox=\"0 0 {WIDE} {HIGH}\" role=\"img\" aria-label=\"{}\">{drawn}</svg>",
        words.say(says)
    )
}

/// The first day on which it may be ready, counted from the salt.
fn ready_day(view: &PieceView) -> Option<i64> {
    let ready = view.earliest()?;
    Some((ready - view.piece.in_salt).num_days()).filter(|day| *day > 0)
}

/// That day on the axis, by its date.
fn ready(words: &Words, axes: &Axes, view: &PieceView) -> String {
    let (Some(of), Some(day)) = (ready_day(view), view.earliest()) else {
        return String::new();
    };
    // With its year the day is two thirds as wide as the picture: the words end where the axis does, wherever the mark is.
    format!(
        "<path class=\"gate\" d=\"M{} {LOW}l9 -9l9 9l-9 9z\"/><text class=\"b\" x=\"{RIGHT}\" y=\"{}\" text-anchor=\"end\">{}</text>",
        axes.x(of) - 9,
        LOW + 56,
        words.say(BenchSays::ReadyFor {
            nth: u32::try_from(of).unwrap_or(0),
            day,
        })
    )
}

fn percent(hundredths: i64) -> Arg {
    Arg::Tenths(Decimal::new(hundredths, 2).round_dp(1))
}

/// The axes hold what is wanted, what was weighed, and a little more.
fn axes(view: &PieceView, own: &[(i64, i64)], target: Option<i64>) -> Axes {
    let last = own.last().map_or(0, |(day, _)| *day);
    let wanted = i64::from(view.piece.rule.days.unwrap_or(0));
    let by_curve = view.piece.curve.as_ref().zip(view.piece.rule.loss);
    let by_curve = by_curve.and_then(|(curve, loss)| curve.day_of(loss)?.ceil().to_i64());
    let ready = ready_day(view).unwrap_or(0);
    let days = last
        .max(wanted)
        .max(ready)
        .max(by_curve.unwrap_or(0))
        .max(8)
        * 6
        / 5;
    let most = own.iter().map(|(_, loss)| *loss).max().unwrap_or(0);
    let loss = most.max(target.unwrap_or(0)).max(900);
    Axes {
        days,
        loss: (loss / 1_000 + 1) * 1_000,
    }
}

fn grid(words: &Words, axes: &Axes) -> String {
    let mut drawn = String::new();
    for loss in (0..=axes.loss).step_by(1_000) {
        let y = axes.y(loss);
        let percent = PageSays::Percent {
            percent: (loss / 100).to_string(),
        };
        drawn += &format!(
            "<path class=\"grid\" d=\"M{LEFT} {y}H{RIGHT}\"/><text x=\"{}\" y=\"{}\" text-anchor=\"end\">{}</text>",
            LEFT - 8,
            y + 6,
            words.say(percent)
        );
    }
    let step = STEPS.into_iter().find(|step| axes.days / step < 4);
    let step = usize::try_from(step.unwrap_or(axes.days)).unwrap_or(1);
    for day in (0..=axes.days).step_by(step) {
        let x = axes.x(day);
        let says = match day {
            0 => words.say(BenchSays::Day { day: 0 }),
            day => day.to_string(),
        };
        drawn += &format!(
            "<path class=\"tick\" d=\"M{x} {LOW}v8\"/><text x=\"{x}\" y=\"{}\" text-anchor=\"middle\">{says}</text>",
            LOW + 28
        );
    }
    drawn + &format!("<path class=\"axes\" d=\"M{LEFT} {TOP}V{LOW}H{RIGHT}\"/>")
}

/// The piece's own weighings, the last one with its figure.
fn weighed(words: &Words, axes: &Axes, own: &[(i64, i64)]) -> String {
    let Some((day, loss)) = own.last().copied() else {
        return String::new();
    };
    let all = || std::iter::once((0, 0)).chain(own.iter().copied());
    let dots: String = all()
        .map(|(day, loss)| {
            format!(
                "<circle cx=\"{}\" cy=\"{}\" r=\"7\"/>",
                axes.x(day),
                axes.y(loss)
            )
        })
        .collect();
    let (x, y) = (axes.x(day), axes.y(loss));
    // Beside it where there is room to the one side or the other, else in the middle.
    let (at, anchor) = match x {
        ..160 => (x + 18, "start"),
        160..=300 => (x, "middle"),
        _ => (x - 18, "end"),
    };
    let says = words.say(BenchSays::Lost {
        percent: percent(loss),
    });
    // Below the line, or above it where it is near the foot.
    let below = match (y > LOW - 48, anchor) {
        (true, "middle") => y - 24,
        (true, _) => y - 14,
        (false, "middle") => y + 38,
        (false, _) => y + 28,
    };
    format!(
        "<polyline class=\"own\" points=\"{}\"/><g class=\"dots\">{dots}<circle class=\"last\" cx=\"{x}\" cy=\"{y}\" r=\"13\"/></g>\
         <text class=\"b\" x=\"{at}\" y=\"{below}\" text-anchor=\"{anchor}\">{says}</text>",
        axes.points(all())
    )
}
