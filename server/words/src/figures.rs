//! Figures, temperatures, lengths of time and days, as a language writes them.

use crate::{Heat, Language, Speech};
use chrono::{Datelike, NaiveDate, NaiveDateTime, TimeDelta};
use domain::measure::{Printed, Scale, Temperature};
use rust_decimal::{Decimal, RoundingStrategy};

/// Between a number and its unit: they stay on one line.
pub const NO_BREAK: char = '\u{a0}';

/// Before a figure below nothing: no hyphen, which a line may break at.
pub const MINUS: &str = "\u{2212}";

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

/// A temperature on the reader's scale: as it was read or printed there, else brought over; where that does not come
/// out even, the figure that counts comes after it on its own scale. Cold is then told to the tenth that a thermometer
/// shows. What is reached by heat is told to a hundredth, so that what a probe reads by the tenth stands on the right
/// side of it: who reads 54.4 °C has not reached 130 °F.
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
    let places = match given.in_fahrenheit() < HOT {
        true => 1,
        false => 2,
    };
    let away = RoundingStrategy::MidpointAwayFromZero;
    let degrees = degrees.round_dp_with_strategy(places, away).normalize();
    let told = on_scale(speech, own, degrees);
    match Temperature::new(own, degrees) == given {
        true => told,
        false => {
            let figure = on_scale(speech, given.scale(), given.degrees());
            format!("{told} ({figure})")
        }
    }
}

/// From here on a temperature is one of heat, in degrees Fahrenheit (40 °C): no cold is as warm, and no cook as cold.
const HOT: Decimal = Decimal::from_parts(104, 0, 0, false, 0);

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
    format!("{weekday}{} {}", comma(speech), date(speech, day))
}

/// What stands after a weekday and before a year in the United States, but for labels.
fn comma(speech: &Speech) -> &'static str {
    match speech.is_american() && !speech.on_label {
        true => ",",
        false => "",
    }
}

/// A moment by the kitchen's clock.
pub fn moment(speech: &Speech, moment: NaiveDateTime) -> String {
    let day = day(speech, moment.date());
    match speech.language {
        Language::English if speech.is_american() => {
            let (hour, half) = (moment.format("%-I:%M"), moment.format("%P"));
            format!("{day}{} {hour}{NO_BREAK}{half}", comma(speech))
        }
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
    let year = match speech.today {
        Some(today) if today.year() == day.year() => None,
        _ => Some(day.year()),
    };
    match (speech.is_american(), year) {
        (true, None) => format!("{month} {number}"),
        (true, Some(year)) => format!("{month} {number}{} {year}", comma(speech)),
        (false, None) => format!("{number} {month}"),
        (false, Some(year)) => format!("{number} {month} {year}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Mass;
    use domain::grams::Grams;
    use domain::words::Profile;

    fn reader(language: Language, mass: Mass, heat: Heat) -> Speech {
        Speech {
            language,
            mass,
            heat,
            today: NaiveDate::from_ymd_opt(2026, 6, 26),
            place: None,
            on_label: false,
        }
    }

    #[test]
    fn a_clock_has_twelve_hours_and_the_month_stands_first_in_the_united_states_alone() {
        let told = |place, language, at: &str| {
            let reader = Speech {
                place,
                ..reader(language, Mass::Pounds, Heat::Fahrenheit)
            };
            reader.moment(at.parse().unwrap()).replace(NO_BREAK, " ")
        };
        let (us, english) = (Some(Profile::Us), Language::English);
        let afternoon = "2026-06-26T15:40:00";
        assert_eq!(told(us, english, afternoon), "Fri, Jun 26, 3:40 pm");
        let midnight = "2026-06-26T00:05:00";
        assert_eq!(told(us, english, midnight), "Fri, Jun 26, 12:05 am");
        let next_year = told(us, english, "2027-01-03T09:00:00");
        assert_eq!(next_year, "Sun, Jan 3, 2027, 9:00 am");
        let label = Speech {
            on_label: true,
            ..reader(english, Mass::Pounds, Heat::Fahrenheit)
        };
        let label = Speech { place: us, ..label };
        assert_eq!(label.day("2027-01-03".parse().unwrap()), "Sun Jan 3 2027");
        let canada = Some(Profile::Ca);
        assert_eq!(told(canada, english, afternoon), "Fri 26 Jun 15:40");
        let french = told(us, Language::French, afternoon);
        assert_eq!(french, "ven. 26 juin à 15 h 40");
    }

    #[test]
    fn a_cold_row_is_told_as_a_thermometer_shows_it() {
        let told = |printed: Printed, heat| {
            let reader = reader(Language::English, Mass::Metric, heat);
            temperature(&reader, &printed).replace(NO_BREAK, " ")
        };
        let row = Temperature::fahrenheit(38).into();
        assert_eq!(told(row, Heat::Fahrenheit), "38 °F");
        assert_eq!(told(row, Heat::Celsius), "3.3 °C (38 °F)");
        let read = Temperature::celsius(Decimal::new(33, 1)).into();
        assert_eq!(told(read, Heat::Celsius), "3.3 °C");
        assert_eq!(told(read, Heat::Fahrenheit), "37.9 °F (3.3 °C)");
        let freezer = Temperature::celsius(-18).into();
        assert_eq!(told(freezer, Heat::Fahrenheit), "\u{2212}0.4 °F");
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
