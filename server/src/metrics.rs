//! Figures for whoever watches the service, in the open text format: how many requests, how they were
//! answered, how long they took, and whether the record is well.

use crate::pulse;
use std::collections::BTreeMap;
use std::fmt::Write;
use std::sync::{LazyLock, Mutex, PoisonError};
use std::time::Duration;

/// Up to how many seconds, for each step of the table of durations.
const STEPS: [f64; 8] = [0.001, 0.005, 0.02, 0.1, 0.5, 2.0, 10.0, 60.0];

static COUNTED: LazyLock<Mutex<Counted>> = LazyLock::new(Mutex::default);

#[derive(Default)]
struct Counted {
    /// By method, route and status.
    requests: BTreeMap<(String, String, u16), u64>,
    /// By method and route.
    seconds: BTreeMap<(String, String), Durations>,
    /// By the sort of problem.
    refusals: BTreeMap<String, u64>,
    /// By kind; only those that were recorded just now.
    deeds: BTreeMap<&'static str, u64>,
}

#[derive(Default)]
struct Durations {
    steps: [u64; STEPS.len()],
    count: u64,
    sum: f64,
}

/// A request that was answered.
pub struct Answered<'a> {
    /// The method.
    pub method: &'a str,
    /// The route, with its parts in braces; nothing where there is none.
    pub route: Option<&'a str>,
    /// The status.
    pub status: u16,
    /// How long it took.
    pub took: Duration,
    /// The sort of problem, if it was refused.
    pub problem: Option<&'a str>,
    /// The kind of deed, if it recorded one.
    pub deed: Option<&'static str>,
}

/// Counts a request.
pub fn count(answered: &Answered<'_>) {
    let mut counted = COUNTED.lock().unwrap_or_else(PoisonError::into_inner);
    // A method may be anything that a caller makes up; the table is not to grow with it.
    let method = match answered.method {
        "GET" | "HEAD" | "POST" | "PUT" | "DELETE" | "OPTIONS" => answered.method,
        _ => "other",
    };
    let route = answered.route.unwrap_or("none");
    let key = (method.to_owned(), route.to_owned());
    *counted
        .requests
        .entry((key.0.clone(), key.1.clone(), answered.status))
        .or_default() += 1;
    let seconds = answered.took.as_secs_f64();
    let durations = counted.seconds.entry(key).or_default();
    for (step, most) in durations.steps.iter_mut().zip(STEPS) {
        *step += u64::from(seconds <= most);
    }
    durations.count += 1;
    durations.sum += seconds;
    if let Some(problem) = answered.problem {
        *counted.refusals.entry(problem.to_owned()).or_default() += 1;
    }
    if let Some(deed) = answered.deed {
        *counted.deeds.entry(deed).or_default() += 1;
    }
}

/// All figures.
pub fn text() -> String {
    let mut out = String::new();
    let counted = COUNTED.lock().unwrap_or_else(PoisonError::into_inner);
    head(
        &mut out,
        "gambrel_requests_total",
        "counter",
        "Requests that were answered.",
    );
    for ((method, route, status), number) in &counted.requests {
        let _ = writeln!(
            out,
            "gambrel_requests_total{{method=\"{method}\",route=\"{route}\",status=\"{status}\"}} {number}"
        );
    }
    head(
        &mut out,
        "gambrel_request_seconds",
        "histogram",
        "How long answers took.",
    );
    for ((method, route), durations) in &counted.seconds {
        let labels = format!("method=\"{method}\",route=\"{route}\"");
        for (number, most) in durations.steps.iter().zip(STEPS) {
            let _ = writeln!(
                out,
                "gambrel_request_seconds_bucket{{{labels},le=\"{most}\"}} {number}"
            );
        }
        let (count, sum) = (durations.count, durations.sum);
        let _ = writeln!(
            out,
            "gambrel_request_seconds_bucket{{{labels},le=\"+Inf\"}} {count}"
        );
        let _ = writeln!(out, "gambrel_request_seconds_sum{{{labels}}} {sum}");
        let _ = writeln!(out, "gambrel_request_seconds_count{{{labels}}} {count}");
    }
    head(
        &mut out,
        "gambrel_refusals_total",
        "counter",
        "Requests that were refused, by sort.",
    );
    for (problem, number) in &counted.refusals {
        let _ = writeln!(
            out,
            "gambrel_refusals_total{{problem=\"{problem}\"}} {number}"
        );
    }
    head(
        &mut out,
        "gambrel_deeds_total",
        "counter",
        "Deeds that were recorded, by kind.",
    );
    for (kind, number) in &counted.deeds {
        let _ = writeln!(out, "gambrel_deeds_total{{kind=\"{kind}\"}} {number}");
    }
    head(
        &mut out,
        "gambrel_record_well",
        "gauge",
        "1 where the record can be read and written.",
    );
    let well = u8::from(pulse::trouble().is_none());
    let _ = writeln!(out, "gambrel_record_well {well}");
    out
}

fn head(out: &mut String, name: &str, kind: &str, says: &str) {
    let _ = writeln!(out, "# HELP {name} {says}\n# TYPE {name} {kind}");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_counted_is_told_in_the_open_format() {
        count(&Answered {
            method: "BREW",
            route: Some("/api/lots/{code}"),
            status: 418,
            took: Duration::from_millis(3),
            problem: Some("method"),
            deed: Some("receive"),
        });
        let text = text();
        for line in [
            "gambrel_requests_total{method=\"other\",route=\"/api/lots/{code}\",status=\"418\"} 1",
            "gambrel_request_seconds_bucket{method=\"other\",route=\"/api/lots/{code}\",le=\"0.001\"} 0",
            "gambrel_request_seconds_bucket{method=\"other\",route=\"/api/lots/{code}\",le=\"0.005\"} 1",
            "gambrel_refusals_total{problem=\"method\"} 1",
            "gambrel_deeds_total{kind=\"receive\"} 1",
        ] {
            assert!(text.lines().any(|told| told == line), "{line} in {text}");
        }
    }
}
