//! Food that stood warm in a cook and never got hot, by the hours of each place.

use chrono::DateTime;
use chrono_tz::Tz;
use domain::heat::{CoreReading, Log, stood_warm};
use domain::measure::Temperature;
use domain::words::Profile;

/// Readings in minutes and whole degrees Celsius; the row that they break, if one.
#[track_caller]
fn check(place: Profile, readings: &[(i64, i32)], row: Option<&str>) {
    let law = law::shipped().unwrap();
    let reading = |(minutes, degrees): &(i64, i32)| CoreReading {
        at: DateTime::from_timestamp(minutes * 60, 0).unwrap(),
        core: Temperature::celsius(*degrees),
    };
    let log = Log::new(readings.iter().map(reading).collect(), Tz::UTC).unwrap();
    let found = stood_warm(&log, &law.laws.of(place).heat);
    let rows = found.map(|found| found.rows[0].to_string());
    assert_eq!(rows.as_deref(), row, "{place:?} {readings:?}");
}

#[test]
fn a_night_at_45_degrees_breaks_the_hours_of_every_place() {
    let night = [(0, 3), (120, 40), (840, 45)];
    check(Profile::Us, &night, Some("us-T8"));
    check(Profile::Ca, &night, Some("canada-eu-uk-7.4"));
    check(Profile::Eu, &night, Some("trade-3-failure"));
    check(Profile::Uk, &night, Some("confirmed-X-UK-4"));
}

#[test]
fn the_edge_is_that_of_the_row() {
    // us-T8: at most 4 h. Canada 7.4: 2 h. X-UK-4: less than 4 h.
    check(Profile::Us, &[(0, 3), (240, 45)], None);
    check(Profile::Us, &[(0, 3), (241, 45)], Some("us-T8"));
    check(Profile::Ca, &[(0, 3), (120, 45)], None);
    check(Profile::Ca, &[(0, 3), (121, 45)], Some("canada-eu-uk-7.4"));
    check(Profile::Uk, &[(0, 3), (239, 45)], None);
    check(Profile::Uk, &[(0, 3), (240, 45)], Some("confirmed-X-UK-4"));
}

#[test]
fn what_got_hot_is_not_judged_by_it() {
    check(Profile::Us, &[(0, 3), (400, 60), (500, 75)], None);
}
