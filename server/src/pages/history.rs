//! What was done with a lot, in words.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Caller;
use crate::ids::shown_id;
use crate::read::names::Names;
use chrono::TimeDelta;
use domain::family::{self, LotView};
use domain::grams::Grams as Weight;
use domain::measure::Temperature;
use domain::right::Right;
use domain::says::Arg;
use domain::words::{Account, DeedKind, Quantity};
use rust_decimal::Decimal;

/// A line of the history.
pub struct Line {
    /// When.
    pub at: String,
    /// What.
    pub what: String,
    /// How much.
    pub grams: String,
    /// Who.
    pub by: String,
    /// Was it voided?
    pub voided: bool,
    /// The deed's id, where whoever reads it may undo it still.
    pub undo: Option<String>,
}

/// How long an undo stands beside a deed; later it is a void, by its own call.
const UNDONE_WITHIN: TimeDelta = TimeDelta::days(7);

/// The lines of a lot's history, the oldest first, as somebody reads them.
pub fn lines(view: &LotView<'_>, names: &Names, app: &Caller<'_>) -> Vec<Line> {
    let words = Words::of(names);
    let who = &app.who;
    let may = |step: &family::Line<'_>| {
        let own = step.by == who.name && who.may(Right::Sell);
        let lately = app.now() - step.at < UNDONE_WITHIN;
        !step.voided && lately && (own || who.may(Right::Void)) && is_undone_here(step.kind)
    };
    let line = |step: &family::Line<'_>| Line {
        at: words.minute(step.at, names.zone()),
        what: what(&words, step.kind, step.account),
        grams: words.or_dash(step.grams),
        by: step.by.to_owned(),
        voided: step.voided,
        undo: may(step).then(|| shown_id(step.uid)),
    };
    view.lines().iter().map(line).collect()
}

/// Is it undone beside its line? What stops food or lets it go has pages of its own.
fn is_undone_here(kind: DeedKind) -> bool {
    use DeedKind::*;
    !matches!(
        kind,
        Void | Correct | Dispose | Hold | HoldRelease | Incident | ConfirmRow | Print | Release
    )
}

/// `Used: grind`, `Sold`, `Received`; a lot without an account was made by it.
fn what(words: &Words, kind: DeedKind, account: Option<Account>) -> String {
    use DeedKind::*;
    let deed = || words.say(kind.says());
    let Some(account) = account else {
        return match kind {
            Receive => words.t("page-lot-received"),
            _ => words.say(PageSays::MadeBy { deed: deed() }),
        };
    };
    let done = || words.headed(account.says());
    match (kind, account) {
        (Sell | Serve | Discard | Ship | Return | TakeBack | Move, _) => done(),
        (_, Account::Used) => words.say(PageSays::UsedFor { deed: deed() }),
        (_, Account::Noted) => words.headed(kind.says()),
        _ => words.say(PageSays::Otherwise {
            account: done(),
            deed: deed(),
        }),
    }
}

/// A reading, in words.
pub struct Reading {
    /// When.
    pub at: String,
    /// What was measured.
    pub what: String,
    /// How much.
    pub value: String,
}

/// A lot's readings, the oldest first; amounts of money in a currency.
pub fn readings(view: &LotView<'_>, names: &Names, currency: &str) -> Vec<Reading> {
    let words = Words::of(names);
    let told = |reading: &family::LotReading| {
        let (key, value) = quantity(&words, reading.quantity, reading.millionths, currency);
        Reading {
            at: words.minute(reading.at, names.zone()),
            what: words.t(key),
            value,
        }
    };
    view.of.readings.iter().map(told).collect()
}

/// What was read, with what it is called.
pub fn value(words: &Words, of: Quantity, millionths: i64, currency: &str) -> String {
    let (key, value) = quantity(words, of, millionths, currency);
    format!("{}\u{a0}{value}", words.t(key))
}

/// What a quantity is called, and how much so many millionths of its unit are.
fn quantity(
    words: &Words,
    quantity: Quantity,
    millionths: i64,
    currency: &str,
) -> (&'static str, String) {
    use Quantity::*;
    let value = Decimal::new(millionths, 6).normalize();
    let plain = || words.0.number(value);
    let celsius = || words.0.arg(&Arg::from(Temperature::celsius(value)));
    let fahrenheit = || words.0.arg(&Arg::from(Temperature::fahrenheit(value)));
    let minutes = || {
        words.0.arg(&Arg::Length(TimeDelta::milliseconds(
            millionths * 60 / 1_000,
        )))
    };
    let rounded = |digits| words.0.number(value.round_dp(digits).normalize());
    let percent = || {
        words.say(PageSays::Percent {
            percent: rounded(2),
        })
    };
    let ppm = || format!("{}\u{a0}ppm", rounded(1));
    match quantity {
        Grams => {
            let grams = Weight::from_milligrams(millionths / 1_000);
            ("page-reading-weight", words.grams(grams))
        }
        Celsius => ("page-reading-temperature", celsius()),
        Fahrenheit => ("page-reading-temperature", fahrenheit()),
        BrineFahrenheit => ("page-reading-brine-temperature", fahrenheit()),
        HoldMinutes => ("page-reading-held", minutes()),
        BoiledMinutes => ("page-reading-boiled", minutes()),
        BrineCelsius => ("page-reading-brine-temperature", celsius()),
        Ph => ("page-reading-ph", plain()),
        WaterActivity => ("page-reading-water-activity", plain()),
        Salometer60F => ("page-reading-salometer-60f", plain()),
        Salometer38F => ("page-reading-salometer-38f", plain()),
        NitritePercent => ("page-reading-nitrite", percent()),
        NitratePercent => ("page-reading-nitrate", percent()),
        PotassiumNitritePercent => ("page-reading-potassium-nitrite", percent()),
        PotassiumNitratePercent => ("page-reading-potassium-nitrate", percent()),
        CureSaltPercent => ("page-reading-salt", percent()),
        CureSugarPercent => ("page-reading-sugar", percent()),
        CureWaterPercent => ("page-reading-water", percent()),
        NitritePpm => ("page-reading-nitrite", ppm()),
        NitratePpm => ("page-reading-nitrate", ppm()),
        ResidualNitritePpm => ("page-reading-residual-nitrite", ppm()),
        ResidualNitratePpm => ("page-reading-residual-nitrate", ppm()),
        SaltPercent => ("page-reading-salt", percent()),
        PriceMinor => {
            let paid = words.money(millionths / 1_000_000, currency);
            ("page-reading-price", paid)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use words::{Language, Speech};

    #[test]
    fn a_deed_is_told_once() {
        let words = Words(Speech::in_language(Language::English));
        let what = |kind, account| what(&words, kind, account);
        assert_eq!(what(DeedKind::Sell, Some(Account::Sold)), "Sold");
        assert_eq!(what(DeedKind::Grind, Some(Account::Used)), "Used: grind");
        assert_eq!(what(DeedKind::Turn, Some(Account::Noted)), "Turn");
        assert_eq!(what(DeedKind::Receive, None), "Received");
    }

    #[test]
    fn a_reading_has_its_unit() {
        let words = Words(Speech::in_language(Language::French));
        let told = |of, value| quantity(&words, of, value, "CAD").1;
        assert_eq!(told(Quantity::Celsius, 3_400_000), "3,4\u{a0}°C");
        assert_eq!(told(Quantity::Ph, 5_300_000), "5,3");
        assert_eq!(told(Quantity::PriceMinor, 1_250_000_000), "12,50\u{a0}CAD");
    }
}
