//! Figures, weights, temperatures, lengths of time and days, as a language writes them.

use crate::{Heat, Language, Mass, Speech};
use chrono::{Datelike, NaiveDate, NaiveDateTime, TimeDelta};
use domain::grams::Grams;
use domain::measure::{Printed, Scale, Temperature};
use rust_decimal::{Decimal, RoundingStrategy};

/// Between a number and its unit: they stay on one line.
const NO_BREAK: char = '\u{a0}';

/// Before a figure below nothing: no hyphen, which a line may break at.
const MINUS: &str = "\u{2212}";

/// Grams in an avoirdupois ounce, exactly (28.349 523 125; NIST Handbook 44, appendix C).
const OUNCE_MG: Decimal = Decimal::from_parts(2_579_719_349, 6, 0, false, 6);

/// A figure with the language's decimal sign, without zeros at its end.
pub fn number(language: Language, number: Decimal) -> String {
    signed(language, number.normalize().to_string())
}

/// A figure with so many decimals, rounded half away from zero.
pub fn decimals(language: Language, number: Decimal, places: u32) -> String {
    let rounded = number.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero);
    signed(language, format!("{rounded:.*}", places as usize))
}

/// The same text with the language's decimal sign, and with a minus sign that is no hyphen.
fn signed(language: Language, text: String) -> String {
    let text = text.replace('-', MINUS);
    match language {
        Language::English => text,
        Language::French => text.replace('.', ","),
    }
}

/// An amount of money, to the hundredth.
pub fn money(language: Language, amount: Decimal) -> String {
    signed(language, format!("{amount:.2}"))
}

/// A figure to the tenth, zero or not.
pub fn tenths(language: Language, number: Decimal) -> String {
    signed(language, format!("{number:.1}"))
}

/// A weight as a person says it. Nothing is rounded in metric units; ounces go to a tenth.
pub fn grams(speech: &Speech, grams: Grams) -> String {
    let milligrams = Decimal::from(grams.milligrams());
    match speech.mass {
        Mass::Metric if grams.milligrams().abs() < 1_000_000 => small(speech, milligrams),
        // Curing salt and spice lie on the small scale, and a tenth of an ounce is too coarse for them.
        Mass::Pounds if !milligrams.is_zero() && milligrams.abs() < OUNCE_MG => {
            small(speech, milligrams)
        }
        Mass::Metric => {
            let kilograms = milligrams / Decimal::from(1_000_000);
            format!("{}{NO_BREAK}kg", speech.number(kilograms))
        }
        Mass::Pounds => pounds(speech, milligrams),
    }
}

fn small(speech: &Speech, milligrams: Decimal) -> String {
    let grams = milligrams / Decimal::ONE_THOUSAND;
    format!("{}{NO_BREAK}g", speech.number(grams))
}

fn pounds(speech: &Speech, milligrams: Decimal) -> String {
    let tenth =
        |ounces: Decimal| ounces.round_dp_with_strategy(1, RoundingStrategy::MidpointAwayFromZero);
    let sign = if milligrams.is_sign_negative() {
        MINUS
    } else {
        ""
    };
    let ounces = tenth(milligrams.abs() / OUNCE_MG);
    let sixteen = Decimal::from(16);
    let pounds = (ounces / sixteen).trunc();
    let rest = ounces - pounds * sixteen;
    let rest_told = format!("{}{NO_BREAK}oz", speech.number(rest));
    if pounds.is_zero() {
        return format!("{sign}{rest_told}");
    }
    let pounds = format!("{sign}{}{NO_BREAK}lb", speech.number(pounds));
    match rest.is_zero() {
        true => pounds,
        false => format!("{pounds}{NO_BREAK}{rest_told}"),
    }
}

/// A temperature on the reader's scale: as it was read or printed there, else brought over; where that does not come
/// out even, to a hundredth, so that what a probe reads by the tenth stands on the right side of it, and the figure that
/// counts comes after it on its own scale.
pub fn temperature(speech: &Speech, printed: &Printed) -> String {
    let own = match speech.heat {
        Heat::Celsius => Scale::Celsius,
        Heat::Fahrenheit => Scale::Fahrenheit,
    };
    if let Some(degrees) = printed.on(own) {
        return on_scale(speech, own, degrees);
    }
    let given = printed.temperature();
    let (freezing, a_degree) = (Decimal::from(32), Decimal::new(18, 1));
    let degrees = match own {
        Scale::Celsius => (given.degrees() - freezing) / a_degree,
        Scale::Fahrenheit => given.degrees() * a_degree + freezing,
    };
    let degrees = degrees.round_dp(2).normalize();
    let told = on_scale(speech, own, degrees);
    match Temperature::new(own, degrees) == given {
        true => told,
        false => {
            let figure = on_scale(speech, given.scale(), given.degrees());
            format!("{told} ({figure})")
        }
    }
}

fn on_scale(speech: &Speech, scale: Scale, degrees: Decimal) -> String {
    let sign = match scale {
        Scale::Celsius => "°C",
        Scale::Fahrenheit => "°F",
    };
    format!("{}{NO_BREAK}{sign}", speech.number(degrees))
}

/// A temperature of which only the degrees Celsius are known, to a tenth.
pub fn celsius(speech: &Speech, degrees: Decimal) -> String {
    match speech.heat {
        Heat::Celsius => format!("{}{NO_BREAK}°C", speech.number(degrees.round_dp(1))),
        Heat::Fahrenheit => {
            let fahrenheit = degrees * Decimal::new(18, 1) + Decimal::from(32);
            format!("{}{NO_BREAK}°F", speech.number(fahrenheit.round_dp(1)))
        }
    }
}

/// A difference of temperatures.
pub fn celsius_apart(speech: &Speech, degrees: Decimal) -> String {
    match speech.heat {
        Heat::Celsius => format!("{}{NO_BREAK}°C", speech.number(degrees)),
        Heat::Fahrenheit => {
            let fahrenheit = (degrees * Decimal::new(18, 1)).round_dp(1);
            format!("{}{NO_BREAK}°F", speech.number(fahrenheit))
        }
    }
}

/// A length of time as a cook says it: `1 h 52 min`, `34 s`, `20 d 4 h`.
pub fn length(language: Language, length: TimeDelta) -> String {
    let seconds = length.num_seconds();
    let day = match language {
        Language::English => "d",
        Language::French => "j",
    };
    let parts = [
        (seconds / 86_400, day),
        (seconds / 3_600 % 24, "h"),
        (seconds / 60 % 60, "min"),
        (seconds % 60, "s"),
    ];
    let told: Vec<String> = parts
        .iter()
        .filter(|(count, _)| *count != 0)
        .map(|(count, unit)| format!("{count}{NO_BREAK}{unit}"))
        .collect();
    match told.is_empty() {
        true => format!("0{NO_BREAK}s"),
        false => told.join(" "),
    }
}

const DAYS: [[&str; 7]; 2] = [
    ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"],
    ["lun.", "mar.", "mer.", "jeu.", "ven.", "sam.", "dim."],
];
const MONTHS: [[&str; 12]; 2] = [
    [
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
    ],
    [
        "janv.", "févr.", "mars", "avr.", "mai", "juin", "juill.", "août", "sept.", "oct.", "nov.",
        "déc.",
    ],
];

/// A day with its weekday, the month in letters.
pub fn day(speech: &Speech, day: NaiveDate) -> String {
    let weekdays = DAYS[speech.language as usize];
    let weekday = weekdays[day.weekday().num_days_from_monday() as usize];
    format!("{weekday} {}", date(speech, day))
}

/// A moment by the kitchen's clock.
pub fn moment(speech: &Speech, moment: NaiveDateTime) -> String {
    let day = day(speech, moment.date());
    match speech.language {
        Language::English => format!("{day} {}", moment.format("%H:%M")),
        Language::French => {
            let (hour, minute) = (moment.format("%-H"), moment.format("%M"));
            format!("{day} à {hour}{NO_BREAK}h{NO_BREAK}{minute}")
        }
    }
}

/// A sentence that ends with a day ends with one full stop, also where the month is cut short by one.
pub fn one_full_stop(language: Language, text: String) -> String {
    let mut text = text;
    for month in MONTHS[language as usize]
        .iter()
        .filter(|month| month.ends_with('.'))
    {
        let twice = format!("{month}.");
        if text.contains(&twice) {
            text = text.replace(&twice, month);
        }
    }
    text
}

/// A day without its weekday.
pub fn date(speech: &Speech, day: NaiveDate) -> String {
    let month = MONTHS[speech.language as usize][day.month0() as usize];
    // French writes the first of a month as an ordinal.
    let number = match (speech.language, day.day()) {
        (Language::French, 1) => "1er".to_owned(),
        (_, number) => number.to_string(),
    };
    match speech.today {
        Some(today) if today.year() == day.year() => format!("{number} {month}"),
        _ => format!("{number} {month} {}", day.year()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reader(language: Language, mass: Mass, heat: Heat) -> Speech {
        Speech {
            language,
            mass,
            heat,
            today: NaiveDate::from_ymd_opt(2026, 6, 26),
        }
    }

    #[test]
    fn weights_read_as_a_person_says_them() {
        let check = |mass, milligrams, expected: &str| {
            let told = reader(Language::English, mass, Heat::Celsius)
                .grams(Grams::from_milligrams(milligrams));
            assert_eq!(told.replace(NO_BREAK, " "), expected);
        };
        check(Mass::Metric, 250_000, "250 g");
        check(Mass::Metric, 20_200, "20.2 g");
        check(Mass::Metric, 1_000_000, "1 kg");
        check(Mass::Metric, 1_125_000, "1.125 kg");
        check(Mass::Metric, 999_999, "999.999 g");
        check(Mass::Metric, -1_500_000, "\u{2212}1.5 kg");
        check(Mass::Metric, 0, "0 g");
        check(Mass::Pounds, 250_000, "8.8 oz");
        check(Mass::Pounds, 453_592, "1 lb");
        check(Mass::Pounds, 1_125_000, "2 lb 7.7 oz");
        check(Mass::Pounds, 0, "0 oz");
        check(Mass::Pounds, 13_010, "13.01 g");
        check(Mass::Pounds, 28_350, "1 oz");
        // 15.96 oz is a pound to the tenth, never "0 lb 16 oz".
        check(Mass::Pounds, 452_500, "1 lb");
    }

    #[test]
    fn an_ounce_is_28_349523125_grams() {
        assert_eq!(OUNCE_MG.to_string(), "28349.523125");
    }

    #[test]
    fn french_has_a_comma_and_its_own_days() {
        let french = reader(Language::French, Mass::Metric, Heat::Celsius);
        let told = french.grams(Grams::from_milligrams(1_125_000));
        assert_eq!(told.replace(NO_BREAK, " "), "1,125 kg");
        let day = |text: &str| french.day(text.parse().unwrap());
        assert_eq!(day("2026-06-26"), "ven. 26 juin");
        assert_eq!(day("2026-07-01"), "mer. 1er juill.");
        assert_eq!(day("2027-01-03"), "dim. 3 janv. 2027");
        let told = french.moment("2026-06-26T09:05:00".parse().unwrap());
        assert_eq!(told.replace(NO_BREAK, " "), "ven. 26 juin à 9 h 05");
        let told = |text: &str| one_full_stop(Language::French, text.to_owned());
        assert_eq!(
            told("Prêt le lun. 7 déc.. Pesez..."),
            "Prêt le lun. 7 déc. Pesez..."
        );
    }

    #[test]
    fn degrees_are_the_readers() {
        let told = |degrees, heat| {
            let reader = reader(Language::English, Mass::Metric, heat);
            celsius(&reader, degrees).replace(NO_BREAK, " ")
        };
        assert_eq!(told(Decimal::new(74, 0), Heat::Celsius), "74 °C");
        assert_eq!(told(Decimal::new(74, 0), Heat::Fahrenheit), "165.2 °F");
        let told = |printed: Printed, heat| {
            let reader = reader(Language::English, Mass::Metric, heat);
            temperature(&reader, &printed).replace(NO_BREAK, " ")
        };
        // 130 °F of a table, whoever reads it; 54.4 °C is less, and 54.5 °C is more.
        let table = Temperature::fahrenheit(130).into();
        assert_eq!(told(table, Heat::Celsius), "54.44 °C (130 °F)");
        assert_eq!(told(table, Heat::Fahrenheit), "130 °F");
        let read = Temperature::celsius(Decimal::new(544, 1)).into();
        assert_eq!(told(read, Heat::Celsius), "54.4 °C");
        assert_eq!(told(read, Heat::Fahrenheit), "129.92 °F");
        // What comes out even needs no second figure; what is printed twice is read as printed.
        let cold = Temperature::fahrenheit(41).into();
        assert_eq!(told(cold, Heat::Celsius), "5 °C");
        assert_eq!(told(Printed::both(68, 155), Heat::Celsius), "68 °C");
        assert_eq!(told(Printed::both(68, 155), Heat::Fahrenheit), "155 °F");
    }
}
