//! Does a probe show the truth? It is held in melting ice and in boiling water, and again before its day.

use crate::measure::{Printed, Scale, Temperature};
use crate::messages;
use crate::moment::day_of;
use crate::rows::{Bound, Finding, Gravity};
use crate::words::words;
use chrono::{DateTime, Days, NaiveDate, Utc};
use chrono_tz::Tz;
use rust_decimal::Decimal;

words! {
    /// What a probe is checked in.
    Bath { Ice = "ice", Boiling = "boiling", }
}

messages! {
    /// What is said of a probe.
    ProbeSays in "probe" {
        Good "good" { probe: String, due: NaiveDate },
        Failed "failed" { probe: String, read: Temperature, right: Printed, bath: Bath, day: NaiveDate },
        Unchecked "unchecked" { probe: String },
        Overdue "overdue" { probe: String, due: NaiveDate },
    }
}

/// How probes are checked.
#[derive(Debug, Clone, PartialEq)]
pub struct ProbeRules {
    /// How warm melting ice is.
    pub ice: Printed,
    /// How hot water boils at the sea's level.
    pub boiling: Printed,
    /// How far it may be off, in degrees Celsius.
    pub within_celsius: Bound,
    /// The same in degrees Fahrenheit.
    pub within_fahrenheit: Bound,
    /// In how many days it is checked again.
    pub every_days: Bound,
}

impl ProbeRules {
    fn right(&self, bath: Bath) -> Printed {
        match bath {
            Bath::Ice => self.ice,
            Bath::Boiling => self.boiling,
        }
    }

    fn is_off(&self, check: &ProbeCheck) -> bool {
        let scale = check.read.scale();
        let within = match scale {
            Scale::Celsius => &self.within_celsius,
            Scale::Fahrenheit => &self.within_fahrenheit,
        };
        let figure = self.right(check.bath).on(scale);
        let off: Option<Decimal> = figure.map(|figure| (check.read.degrees() - figure).abs());
        off.is_none_or(|off| !within.allows(off))
    }
}

/// One check.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ProbeCheck {
    /// When.
    pub at: DateTime<Utc>,
    /// In what.
    pub bath: Bath,
    /// What it showed.
    pub read: Temperature,
}

/// What is to be said of a probe at a moment: the last check in each bath counts, and the later of them
/// sets the day. Nothing here stops anybody.
pub fn probed(
    probe: &str,
    checks: &[ProbeCheck],
    at: DateTime<Utc>,
    zone: Tz,
    rules: &ProbeRules,
) -> Finding {
    let row = [rules.every_days.row.clone()];
    let probe = probe.to_owned();
    let last = |bath: Bath| {
        let in_it = checks
            .iter()
            .filter(|check| check.bath == bath && check.at <= at);
        in_it.max_by_key(|check| check.at)
    };
    let last: Vec<&ProbeCheck> = Bath::ALL.iter().filter_map(|bath| last(*bath)).collect();
    let Some(latest) = last.iter().map(|check| check.at).max() else {
        return Finding::new(Gravity::Warn, ProbeSays::Unchecked { probe }, row);
    };
    if let Some(failed) = last.iter().find(|check| rules.is_off(check)) {
        let says = ProbeSays::Failed {
            probe,
            read: failed.read,
            right: rules.right(failed.bath),
            bath: failed.bath,
            day: day_of(failed.at, zone),
        };
        return Finding::new(Gravity::Warn, says, [rules.within_celsius.row.clone()]);
    }
    let days = Days::new(u64::from(rules.every_days.whole()));
    let due = day_of(latest, zone) + days;
    match day_of(at, zone) > due {
        true => Finding::new(Gravity::Warn, ProbeSays::Overdue { probe, due }, row),
        false => Finding::note(ProbeSays::Good { probe, due }, row),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rules() -> ProbeRules {
        ProbeRules {
            ice: Printed::both(0, 32),
            boiling: Printed::both(100, 212),
            within_celsius: Bound::at_most("x-1", 1),
            within_fahrenheit: Bound::at_most("x-1", 2),
            every_days: Bound::at_most("x-1", 7),
        }
    }

    fn noon(day: u64) -> DateTime<Utc> {
        "2026-06-01T12:00:00Z".parse::<DateTime<Utc>>().unwrap() + Days::new(day)
    }

    fn check(checks: &[(u64, Bath, Temperature)], key: &str) {
        let checks = checks.iter().map(|(day, bath, read)| ProbeCheck {
            at: noon(*day),
            bath: *bath,
            read: *read,
        });
        let checks: Vec<ProbeCheck> = checks.collect();
        let found = probed("p", &checks, noon(10), Tz::UTC, &rules());
        assert_eq!(found.says.key(), key, "{checks:?}");
        assert!(!found.refuses());
    }

    #[test]
    fn a_probe_is_good_until_its_day() {
        let (c, f) = (
            |of: i32| Temperature::celsius(of),
            |of: i32| Temperature::fahrenheit(of),
        );
        check(&[], "probe-unchecked");
        check(&[(11, Bath::Ice, c(0))], "probe-unchecked");
        check(&[(3, Bath::Ice, c(0))], "probe-good");
        check(&[(2, Bath::Ice, c(0))], "probe-overdue");
        check(
            &[(2, Bath::Ice, c(0)), (9, Bath::Boiling, c(99))],
            "probe-good",
        );
        // On its own scale: two degrees of Fahrenheit are more than one of Celsius.
        check(&[(9, Bath::Ice, c(1))], "probe-good");
        check(&[(9, Bath::Ice, c(2))], "probe-failed");
        check(&[(9, Bath::Ice, f(34))], "probe-good");
        check(&[(9, Bath::Ice, f(35))], "probe-failed");
        // What failed in one bath is not mended by the other.
        check(
            &[(8, Bath::Boiling, c(95)), (9, Bath::Ice, c(0))],
            "probe-failed",
        );
        check(&[(8, Bath::Ice, c(5)), (9, Bath::Ice, c(0))], "probe-good");
    }
}
