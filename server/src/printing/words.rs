//! What is wrong at a printer, for a tired cook: what it is, and what to do.

use super::capabilities::Capabilities;
use super::client::Failure;
use super::says::{PrinterSays, PrinterStateSays};

/// Why a printer cannot print now, if it cannot. Its warnings are no reason to wait.
pub fn trouble(name: &str, printer: &Capabilities) -> Option<PrinterSays> {
    let grave = |reason: &&String| !reason.ends_with("-warning") && !reason.ends_with("-report");
    let reasons: Vec<&str> = printer
        .reasons
        .iter()
        .filter(grave)
        .map(|reason| reason.trim_end_matches("-error"))
        .collect();
    let fits = |(words, _): &&(&[&str], OfPrinter)| words.iter().any(|word| reasons.contains(word));
    let more = || STOPPED.iter().filter(|_| printer.stopped()).find(fits);
    let known = TROUBLES.iter().find(fits).or_else(more);
    let name = name.to_owned();
    Some(match known {
        Some((_, says)) => says(name),
        None if printer.stopped() && reasons.is_empty() => {
            PrinterSays::StoppedMute { printer: name }
        }
        None if printer.stopped() => PrinterSays::Stopped {
            printer: name,
            reasons: reasons.join(", ").replace('-', " "),
        },
        None if printer.accepting == Some(false) => PrinterSays::TakesNone { printer: name },
        None => return None,
    })
}

/// What to say of a printer of a name.
type OfPrinter = fn(String) -> PrinterSays;

/// Keywords of RFC 8011 5.4.12 and PWG 5100.9, and what we say; the first that fits is shown.
const TROUBLES: [(&[&str], OfPrinter); 8] = [
    (&["media-jam"], |printer| PrinterSays::Jammed { printer }),
    (
        &["media-empty", "media-needed", "input-tray-missing"],
        |printer| PrinterSays::OutOfLabels { printer },
    ),
    (&["cover-open", "door-open", "interlock-open"], |printer| {
        PrinterSays::Open { printer }
    }),
    (
        &["marker-supply-empty", "toner-empty", "developer-empty"],
        |printer| PrinterSays::OutOfRibbon { printer },
    ),
    (&["output-area-full"], |printer| PrinterSays::NoRoom {
        printer,
    }),
    (&["spool-area-full"], |printer| PrinterSays::MemoryFull {
        printer,
    }),
    (&["paused", "moving-to-paused"], |printer| {
        PrinterSays::Paused { printer }
    }),
    (
        &["offline", "shutdown", "connecting-to-device", "timed-out"],
        |printer| PrinterSays::Off { printer },
    ),
];

/// More of them, which are a reason to wait only of a printer that has stopped: some print on with them.
const STOPPED: [(&[&str], OfPrinter); 8] = [
    (&["separation-cutter-jam", "trimmer-jam"], |printer| {
        PrinterSays::Jammed { printer }
    }),
    (&["input-media-tray-empty", "input-tray-empty"], |printer| {
        PrinterSays::OutOfLabels { printer }
    }),
    (&["input-cover-open", "output-cover-open"], |printer| {
        PrinterSays::Open { printer }
    }),
    (&["marker-supply-missing"], |printer| {
        PrinterSays::OutOfRibbon { printer }
    }),
    (&["marker-waste-full", "opc-life-over"], |printer| {
        PrinterSays::WornPart { printer }
    }),
    (&["fuser-over-temp", "fuser-under-temp"], |printer| {
        PrinterSays::WrongHeat { printer }
    }),
    (&["hold-new-jobs", "deactivated", "power-down"], |printer| {
        PrinterSays::Paused { printer }
    }),
    (
        &["resuming", "stopping", "testing", "warming-up"],
        |printer| PrinterSays::Busy { printer },
    ),
];

/// A printer that gives no good answer.
pub fn no_answer(name: &str, failure: &Failure) -> PrinterSays {
    let printer = name.to_owned();
    match failure {
        Failure::Unreached(_) => PrinterSays::NoAnswer { printer },
        Failure::Lost(_) => PrinterSays::BadAnswer { printer },
        Failure::Stranger { seen, pinned } => match pinned {
            None => PrinterSays::NoPin {
                printer,
                seen: seen.shown(),
            },
            Some(pinned) => PrinterSays::Stranger {
                printer,
                seen: seen.shown(),
                pinned: pinned.shown(),
            },
        },
        Failure::Said { status, words } => answered(printer, *status, words),
    }
}

/// A printer that said no: what its status means (RFC 8011 appendix B), or its own words.
fn answered(printer: String, status: u16, words: &str) -> PrinterSays {
    match status {
        // server-error-service-unavailable, -temporary-error, -busy; client-error-timeout.
        0x0502 | 0x0505 | 0x0507 | 0x0405 => PrinterSays::Busy { printer },
        // server-error-not-accepting-jobs, -printer-is-deactivated.
        0x0506 | 0x050a => PrinterSays::TakesNone { printer },
        // client-error-forbidden, -not-authenticated, -not-authorized.
        0x0401..=0x0403 => PrinterSays::Locked { printer },
        _ => PrinterSays::Answers {
            printer,
            words: words.to_owned(),
        },
    }
}

/// A printer that breaks labels off while they are sent to it.
pub fn stumbled(name: &str) -> PrinterSays {
    PrinterSays::Stumbles {
        printer: name.to_owned(),
    }
}

/// A printer's state in a word or two; one that lacks paper for some of the labels is not ready for all.
pub fn state(printer: &Capabilities, lacks: bool) -> PrinterStateSays {
    match printer.state {
        Some(3) if lacks => PrinterStateSays::ReadyForSome,
        Some(3) => PrinterStateSays::Ready,
        Some(4) => PrinterStateSays::Printing,
        Some(5) => PrinterStateSays::Stopped,
        _ => PrinterStateSays::DoesNotSay,
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
        let printer_is = "Bench".to_owned();
        assert_eq!(
            trouble("Bench", &printer(3, &["media-empty-error"])),
            Some(PrinterSays::OutOfLabels {
                printer: printer_is.clone()
            })
        );
        assert_eq!(
            trouble("Bench", &printer(5, &[])),
            Some(PrinterSays::StoppedMute {
                printer: printer_is.clone()
            })
        );
        assert_eq!(
            trouble("Bench", &printer(5, &["fuser-over-temp"])),
            Some(PrinterSays::WrongHeat {
                printer: printer_is.clone()
            })
        );
        // One that prints on with it is not waited for.
        assert_eq!(trouble("Bench", &printer(3, &["fuser-over-temp"])), None);
        assert_eq!(
            trouble("Bench", &printer(5, &["com.example-lid-gone"])),
            Some(PrinterSays::Stopped {
                printer: printer_is.clone(),
                reasons: "com.example lid gone".into()
            })
        );
        let said = |status, words: &str| {
            let words = words.to_owned();
            no_answer("Bench", &Failure::Said { status, words })
        };
        assert_eq!(
            said(0x0507, "server-error-busy"),
            PrinterSays::Busy {
                printer: printer_is.clone()
            }
        );
        assert_eq!(
            said(0x0400, "Bad request"),
            PrinterSays::Answers {
                printer: printer_is,
                words: "Bad request".into()
            }
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
