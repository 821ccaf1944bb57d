//! What is wrong at a printer, for a tired cook: what it is, and what to do.

use super::capabilities::Capabilities;
use super::client::Failure;
use domain::words::PrintState;

/// Why a printer cannot print now, if it cannot. Its warnings are no reason to wait.
pub fn trouble(name: &str, printer: &Capabilities) -> Option<String> {
    let grave = |reason: &&String| !reason.ends_with("-warning") && !reason.ends_with("-report");
    let reasons: Vec<&str> = printer
        .reasons
        .iter()
        .filter(grave)
        .map(|reason| reason.trim_end_matches("-error"))
        .collect();
    let known = TROUBLES
        .iter()
        .find(|(words, _)| words.iter().any(|word| reasons.contains(word)));
    let says = match known {
        Some((_, says)) => (*says).to_owned(),
        None if printer.stopped() && reasons.is_empty() => {
            "has stopped and does not say why: see what it shows, the queue goes on by itself."
                .into()
        }
        None if printer.stopped() => format!(
            "has stopped ({}): see what it shows, the queue goes on by itself.",
            reasons.join(", ").replace('-', " ")
        ),
        None if printer.accepting == Some(false) => {
            "takes no labels now: see what it shows, the queue goes on by itself.".into()
        }
        None => return None,
    };
    Some(format!("The printer “{name}” {says}"))
}

/// Keywords of RFC 8011 5.4.12 and PWG 5100.9, and our words; the first that fits is told.
const TROUBLES: [(&[&str], &str); 8] = [
    (
        &["media-jam"],
        "is jammed: clear it, then look which labels came out. The queue goes on by itself.",
    ),
    (
        &["media-empty", "media-needed", "input-tray-missing"],
        "is out of labels: put in a roll, the queue goes on by itself.",
    ),
    (
        &["cover-open", "door-open", "interlock-open"],
        "is open: close it, the queue goes on by itself.",
    ),
    (
        &["marker-supply-empty", "toner-empty", "developer-empty"],
        "is out of ribbon: put one in, the queue goes on by itself.",
    ),
    (
        &["output-area-full"],
        "has no room for more labels: take out what is printed, the queue goes on by itself.",
    ),
    (
        &["spool-area-full"],
        "has its memory full: wait a little, the queue goes on by itself.",
    ),
    (
        &["paused", "moving-to-paused"],
        "is paused: press its button, the queue goes on by itself.",
    ),
    (
        &["offline", "shutdown", "connecting-to-device", "timed-out"],
        "is off or not connected: switch it on, the queue goes on by itself.",
    ),
];

/// A printer that gives no good answer.
pub fn no_answer(name: &str, failure: &Failure) -> String {
    match failure {
        Failure::Unreached(_) => format!(
            "The printer “{name}” does not answer: see that it is switched on and on the network. The labels wait, and the queue goes on by itself."
        ),
        Failure::Lost(_) => format!(
            "The printer “{name}” was asked and gave no answer that can be read: see what it shows. The labels wait, and the queue goes on by itself."
        ),
        Failure::Said { words, .. } => format!(
            "The printer “{name}” says: {words}. The labels wait, and the queue goes on by itself."
        ),
    }
}

/// A printer that breaks labels off while they are sent to it.
pub fn stumbled(name: &str) -> String {
    format!(
        "The printer “{name}” does not take a label whole: its memory may be full, or the line to it bad. It is tried again by itself."
    )
}

/// A printer's state in a word or two.
pub fn state(printer: &Capabilities) -> &'static str {
    match printer.state {
        Some(3) => "ready",
        Some(4) => "printing",
        Some(5) => "stopped",
        _ => "does not say",
    }
}

/// A label's state in words.
pub const fn of_print(state: PrintState) -> &'static str {
    use PrintState::*;
    match state {
        Waiting => "waits for the printer",
        Sending => "is being sent to the printer",
        Sent => "the printer has it",
        Printed => "came out",
        Unsure => "nobody knows whether it came out: look, and say",
        Refused => "the printer does not take it",
        Cancelled => "cancelled before it was printed",
        Spoilt => "did not come out",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn printer(state: i32, reasons: &[&str]) -> Capabilities {
        Capabilities {
            state: Some(state),
            reasons: reasons.iter().map(|reason| (*reason).to_owned()).collect(),
            accepting: Some(true),
            ..Capabilities::default()
        }
    }

    #[test]
    fn trouble_says_what_to_do() {
        assert_eq!(
            trouble("Bench", &printer(3, &["media-empty-error"])).unwrap(),
            "The printer “Bench” is out of labels: put in a roll, the queue goes on by itself."
        );
        assert!(
            trouble("Bench", &printer(5, &[]))
                .unwrap()
                .contains("has stopped")
        );
        assert!(
            trouble("Bench", &printer(5, &["fuser-over-temp"]))
                .unwrap()
                .contains("fuser over temp")
        );
        assert_eq!(
            trouble(
                "Bench",
                &printer(3, &["media-low-warning", "toner-empty-report"])
            ),
            None
        );
        assert_eq!(trouble("Bench", &printer(4, &[])), None);
    }
}
