//! A label on its way through a printer: what is known of it, and what may be done next.
//!
//! Two promises are kept here. A label that may have come out is never sent again unless a person
//! says that it did not; and a label is never taken for printed unless the printer said so. Where
//! neither can be known the answer is [`PrintState::Unsure`], and only a person ends that.
//!
//! What is written down comes before what is done: [`Heard::GoesOut`] is on record before the first
//! byte of the document leaves, so that a power cut leaves "perhaps", never "no".

mod view;

pub use view::{PrintLeft, PrintView, trouble};

use crate::words::PrintState;

/// How often a printer may break a label off, with nothing printed, before that is a refusal.
pub const MOST_BROKEN_OFF: u32 = 3;

/// How soon after a document went out its absence from the printer's list says nothing: a slow
/// printer may still be reading it. Seconds; common practice, no source.
pub const TOO_EARLY_SECONDS: i64 = 10;

/// For how long a printer surely remembers a job that has ended, in seconds: half of what the
/// test printer of common print software keeps (one minute, measured).
pub const REMEMBERED_SECONDS: i64 = 30;

/// What is known of one label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KnownPrint {
    /// How far it has come.
    pub state: PrintState,
    /// May the printer hold its document, whole or in part?
    pub perhaps_out: bool,
    /// How often the printer broke it off with nothing printed.
    pub broken_off: u32,
}

/// How far the printer's list of jobs can be trusted about a job that is not in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Absence {
    /// The printer has run on since and remembers that far back: it never had the job.
    Proves,
    /// It may still be reading. Ask again.
    TooEarly,
    /// It was restarted, or forgets sooner, or makes no list.
    ProvesNothing,
}

/// What a printer says of a job (`job-state`, RFC 8011 5.3.7).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JobState {
    /// It waits, is held, is being printed or stands still: states 3 to 6.
    UnderWay,
    /// It was cancelled or broken off: 7, 8. With how many labels came out, if the printer says so.
    BrokenOff {
        /// Labels that came out.
        out: Option<u32>,
    },
    /// It is done: 9.
    Completed,
}

/// What was heard of a label: from the printer, from the line, or from a person.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Heard {
    /// Its turn has come.
    Turn,
    /// Its document is about to leave.
    GoesOut,
    /// The printer has its document.
    Taken,
    /// The printer has nothing of it, and said so; or it was never reached.
    NotTaken,
    /// The printer will never take it.
    Refused,
    /// The printer was asked for its job, which it knows.
    Job(JobState),
    /// The printer was asked for its job, which it does not know.
    NoJob(Absence),
    /// A person saw it.
    CameOut,
    /// A person looked, and it is not there.
    DidNotComeOut,
    /// A person wants it no more.
    Cancelled,
    /// What it is of was undone: there is nothing to put it on.
    Undone,
}

impl KnownPrint {
    /// A label that was just asked for.
    pub const ASKED: KnownPrint = KnownPrint {
        state: PrintState::Waiting,
        perhaps_out: false,
        broken_off: 0,
    };

    /// What is known after hearing that. What makes no sense in a state changes nothing.
    pub fn after(self, heard: Heard) -> KnownPrint {
        use PrintState::*;
        let to = |state| KnownPrint { state, ..self };
        let again = KnownPrint {
            state: Waiting,
            perhaps_out: false,
            ..self
        };
        match (self.state, heard) {
            (Waiting, Heard::Turn) => to(Sending),
            (Waiting, Heard::Cancelled | Heard::Undone) => to(Cancelled),
            // Its document has not left, and who is about to send it comes too late.
            (Sending, Heard::Undone) if !self.perhaps_out => to(Cancelled),
            (Waiting | Sending, Heard::Refused) => to(Refused),
            (Sending, Heard::GoesOut) => KnownPrint {
                perhaps_out: true,
                ..self
            },
            (Sending, Heard::Taken) if self.perhaps_out => to(Sent),
            (Sending, Heard::NotTaken) => again,
            // A job that was never given a document prints nothing, whatever becomes of it.
            (
                Sending,
                Heard::NoJob(_) | Heard::Job(JobState::Completed | JobState::BrokenOff { .. }),
            ) if !self.perhaps_out => again,
            // Broken off while it was being sent, as with a full memory: nothing is wrong with it.
            (Sending, Heard::Job(JobState::BrokenOff { out: Some(0) })) => again,
            (Sending, Heard::NoJob(Absence::Proves)) => again,
            (Sending, Heard::NoJob(Absence::ProvesNothing)) => to(Unsure),
            (Sent, Heard::NoJob(_)) => to(Unsure),
            (Sending | Sent, Heard::Job(JobState::Completed)) => to(Printed),
            (Sent, Heard::Job(JobState::BrokenOff { out: Some(0) })) => self.broken_off(again),
            (Sending | Sent, Heard::Job(JobState::BrokenOff { .. })) => to(Unsure),
            (Unsure, Heard::CameOut) => to(Printed),
            // A printer that says "completed" over a blank label is overruled by who sees it.
            (Unsure | Printed, Heard::DidNotComeOut) => to(Spoilt),
            _ => self,
        }
    }

    /// May it have come out, or may it still? Then whoever undoes what it is of has to look for it.
    pub const fn may_be_out(self) -> bool {
        match self.state {
            PrintState::Printed | PrintState::Unsure | PrintState::Sent => true,
            PrintState::Sending => self.perhaps_out,
            PrintState::Waiting | PrintState::Refused => false,
            PrintState::Cancelled | PrintState::Spoilt => false,
        }
    }

    fn broken_off(self, again: KnownPrint) -> KnownPrint {
        let broken_off = self.broken_off + 1;
        let state = match broken_off >= MOST_BROKEN_OFF {
            true => PrintState::Refused,
            false => again.state,
        };
        KnownPrint {
            state,
            broken_off,
            ..again
        }
    }
}

impl PrintState {
    /// Does it count as printed, or perhaps so, or on its way? Such a pack is printed again only if
    /// a person says why.
    pub const fn counts(self) -> bool {
        use PrintState::*;
        match self {
            Waiting | Sending | Sent | Printed | Unsure => true,
            Refused | Cancelled | Spoilt => false,
        }
    }

    /// Does the printer have it, or is it being sent there?
    pub const fn is_on_its_way(self) -> bool {
        matches!(self, PrintState::Sending | PrintState::Sent)
    }

    /// Is there still something to do for it without a person?
    pub const fn is_open(self) -> bool {
        matches!(
            self,
            PrintState::Waiting | PrintState::Sending | PrintState::Sent
        )
    }
}

/// The number of the next print of a pack: 0 for the first, from 1 on for reprints. `before` are
/// the numbers of those that count.
pub fn ordinal(before: impl IntoIterator<Item = u32>) -> u32 {
    before.into_iter().max().map_or(0, |last| last + 1)
}

/// The job's name at the printer: another one for each attempt, and nobody else's.
pub fn token(deed: &str, print: i32, attempt: i32) -> String {
    format!("gambrel-{deed}-{print}-{attempt}")
}

/// What absence from the printer's list says. `waited`: seconds since the document went out; `ran_on`:
/// the printer has not been restarted since; `reaches_back`: it lists a job from before.
pub fn absence(waited: i64, ran_on: bool, reaches_back: bool) -> Absence {
    if waited < 0 || !ran_on {
        // A clock that was set back proves nothing either.
        Absence::ProvesNothing
    } else if waited < TOO_EARLY_SECONDS {
        Absence::TooEarly
    } else if reaches_back || waited <= REMEMBERED_SECONDS {
        Absence::Proves
    } else {
        Absence::ProvesNothing
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A printer that never lies but may forget, break off, stall and lose answers.
    #[derive(Default)]
    struct Printer {
        /// Documents under way to it that nobody has an answer to.
        in_flight: u32,
        has_job: bool,
        has_document: bool,
        ended: Option<JobState>,
        copies: u32,
        /// Was anything of it ever forgotten in this attempt?
        forgot: bool,
    }

    impl Printer {
        fn forget(&mut self) {
            *self = Printer {
                copies: self.copies,
                forgot: true,
                ..Printer::default()
            };
        }

        fn fresh(&mut self) {
            *self = Printer {
                copies: self.copies,
                ..Printer::default()
            };
        }

        /// Something happens inside: a document arrives, a label is printed or broken off.
        fn works(&mut self, choice: u8) {
            if self.in_flight > 0 && choice.is_multiple_of(2) {
                self.in_flight -= 1;
                // A job takes one document and no second.
                self.has_document |= self.has_job && self.ended.is_none();
                return;
            }
            if self.has_document && self.ended.is_none() {
                let tells = !choice.is_multiple_of(3);
                self.ended = Some(match choice % 4 {
                    0 | 1 => {
                        self.copies += 1;
                        JobState::Completed
                    }
                    2 => {
                        self.copies += 1;
                        JobState::BrokenOff {
                            out: tells.then_some(1),
                        }
                    }
                    _ => JobState::BrokenOff {
                        out: tells.then_some(0),
                    },
                });
            }
        }

        fn says(&self) -> Heard {
            match (self.has_job, self.ended) {
                (false, _) => Heard::NoJob(match self.forgot {
                    true => Absence::ProvesNothing,
                    false if self.in_flight > 0 => Absence::TooEarly,
                    false => Absence::Proves,
                }),
                (true, None) => Heard::Job(JobState::UnderWay),
                (true, Some(ended)) => Heard::Job(ended),
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4_000))]

        /// Whatever happens, and whenever the program is killed between two lines: not twice, and
        /// never "printed" without a label, nor "not yet" with one.
        #[test]
        fn never_twice_and_never_lost(choices in proptest::collection::vec(0u8..=255, 0..80)) {
            let mut printer = Printer::default();
            let mut label = KnownPrint::ASKED;
            for choice in choices {
                printer.works(choice);
                if choice.is_multiple_of(17) {
                    printer.forget();
                }
                let (act, luck) = (choice % 5, choice / 5);
                label = match (label.state, act) {
                    // What it is of is undone.
                    (_, 4) if luck.is_multiple_of(11) => label.after(Heard::Undone),
                    (PrintState::Waiting, _) => {
                        printer.fresh();
                        label.after(Heard::Turn)
                    }
                    // A job is made; the answer may be lost.
                    (PrintState::Sending, 0) if !printer.has_job && !label.perhaps_out && !printer.forgot => {
                        printer.has_job = luck.is_multiple_of(2);
                        label
                    }
                    // The document goes; the answer may be lost, and the document may be slow.
                    (PrintState::Sending, 1 | 2) if printer.has_job => {
                        let label = label.after(Heard::GoesOut);
                        match luck % 4 {
                            0 if printer.ended.is_none() && !printer.has_document => {
                                printer.has_document = true;
                                label.after(Heard::Taken)
                            }
                            1 => { printer.in_flight += 1; label }
                            _ if printer.has_document => label.after(Heard::Taken),
                            _ => label,
                        }
                    }
                    (PrintState::Sending | PrintState::Sent, _) => label.after(printer.says()),
                    _ => label,
                };
                prop_assert!(printer.copies <= 1, "printed twice: {label:?}");
                prop_assert!(printer.copies == 0 || label.may_be_out(), "out, and not looked for: {label:?}");
                match label.state {
                    PrintState::Printed => prop_assert_eq!(printer.copies, 1),
                    PrintState::Waiting | PrintState::Refused | PrintState::Cancelled => {
                        prop_assert_eq!(printer.copies, 0);
                    }
                    _ => {}
                }
            }
        }

        /// Once a label is unsure, nothing that a printer says sends it again.
        #[test]
        fn only_a_person_ends_doubt(out in proptest::option::of(0u32..3), completed: bool) {
            let unsure = KnownPrint { state: PrintState::Unsure, perhaps_out: true, broken_off: 0 };
            let job = if completed { JobState::Completed } else { JobState::BrokenOff { out } };
            for heard in [Heard::Job(job), Heard::NotTaken, Heard::NoJob(Absence::Proves), Heard::Turn, Heard::Refused, Heard::Undone] {
                prop_assert_eq!(unsure.after(heard), unsure);
            }
            prop_assert_eq!(unsure.after(Heard::CameOut).state, PrintState::Printed);
            prop_assert_eq!(unsure.after(Heard::DidNotComeOut).state, PrintState::Spoilt);
        }
    }

    #[test]
    fn what_is_broken_off_three_times_is_refused() {
        let mut label = KnownPrint::ASKED;
        for nth in 1..=MOST_BROKEN_OFF {
            for heard in [Heard::Turn, Heard::GoesOut, Heard::Taken] {
                label = label.after(heard);
            }
            assert_eq!(label.state, PrintState::Sent);
            label = label.after(Heard::Job(JobState::BrokenOff { out: Some(0) }));
            assert_eq!(label.broken_off, nth);
        }
        assert_eq!(label.state, PrintState::Refused);
    }

    #[test]
    fn absence_is_believed_only_of_a_printer_that_would_know() {
        assert_eq!(absence(2, true, true), Absence::TooEarly);
        assert_eq!(absence(12, true, false), Absence::Proves);
        assert_eq!(absence(12, false, true), Absence::ProvesNothing);
        assert_eq!(absence(3_600, true, false), Absence::ProvesNothing);
        assert_eq!(absence(3_600, true, true), Absence::Proves);
        assert_eq!(absence(-5, true, true), Absence::ProvesNothing);
    }

    #[test]
    fn reprints_are_numbered_after_those_that_count() {
        assert_eq!(ordinal([]), 0);
        assert_eq!(ordinal([0, 2, 1]), 3);
        assert_eq!(
            token("019e0000-0000-7000-8000-000000000001", 7, 2),
            "gambrel-019e0000-0000-7000-8000-000000000001-7-2"
        );
    }
}
