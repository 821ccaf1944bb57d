//! Sending a label, following it to its end, and picking it up again after a cut.

use super::client::{Failure, No, Ticket};
use super::desk::{Desk, Round, knows_no_such_job};
use super::format::{Format, encode};
use super::job::PrinterJob;
use super::kept;
use super::says::PrintSays;
use crate::error::Result;
use domain::print::{Absence, Heard, JobState, absence, token};
use domain::says::Says;
use labels::PlacedLabel;
use store::print_runs::RunRow;
use store::said::kept as kept_says;
use store::{deeds, lots, prints};

/// A label ready to go.
struct PrintLetter {
    label: PlacedLabel,
    /// The id of the deed that asked for it.
    deed: String,
    /// Who asked.
    person: String,
    /// Its lot was voided since it was asked for.
    voided: Option<Says>,
}

impl PrintLetter {
    /// The label's size in hundredths of a millimetre.
    fn size(&self) -> (i32, i32) {
        let hundredths = |um: i64| i32::try_from((um + 5) / 10).unwrap_or(i32::MAX);
        (
            hundredths(self.label.width.um()),
            hundredths(self.label.tallest().um()),
        )
    }
}

impl Desk<'_> {
    /// Sends a label whose turn has come.
    pub(super) fn send(&mut self, round: &Round<'_>, run: RunRow) -> Result<Option<RunRow>> {
        let letter = self.letter(&run)?;
        if let Some(says) = letter.voided {
            return self.refuse(&run, &says);
        }
        let (x, y) = letter.size();
        let ready = || -> std::result::Result<_, Says> {
            let format = Format::choose(&round.printer.formats)?;
            let document = encode(format, &letter.label)?;
            Ok((format, document, round.printer.size_for(x, y)?))
        };
        let (format, document, size) = match ready() {
            Ok(ready) => ready,
            Err(says) => return self.refuse(&run, &says),
        };
        let attempt = run.attempt + 1;
        let name = token(&letter.deed, run.id, attempt);
        let turn = self.note(&run, Heard::Turn, None, |next| {
            next.attempt = attempt;
            next.token = Some(name.clone());
            next.job_id = None;
            next.out_at = None;
            next.printer_up = None;
            next.trouble = None;
            next.format = Some(format.mime().to_owned());
            next.document_hash = Some(store::kept::hash(&document));
        })?;
        let Some(turn) = turn else { return Ok(None) };
        let ticket = Ticket {
            name: &name,
            person: &letter.person,
            size,
            capabilities: &round.printer,
        };
        if !round.printer.creates_jobs {
            return self.print_at_once(round, turn, ticket, format, document);
        }
        match round.client.create_job(ticket) {
            Ok(job) => self.fill(round, turn, job, &letter.person, format, document),
            Err(failure) => self.not_made(&turn, &failure),
        }
    }

    /// Fills a job that was made and holds nothing yet. That the document goes out is on record
    /// before it does.
    fn fill(
        &mut self,
        round: &Round<'_>,
        run: RunRow,
        job: i32,
        person: &str,
        format: Format,
        document: Vec<u8>,
    ) -> Result<Option<RunRow>> {
        let Some(run) = self.goes_out(round, &run, Some(job))? else {
            return Ok(None);
        };
        if !self.holds_lease()? {
            return Ok(Some(run));
        }
        match round.client.send_document(job, person, format, document) {
            Ok(()) => self.note(&run, Heard::Taken, None, |_| {}),
            Err(Failure::Said { status, words }) => match Failure::no(status) {
                No::FilledAlready => self.note(&run, Heard::Taken, None, |_| {}),
                // Asked again in the next round: a job takes one document and no second.
                No::Later | No::NoSuchJob => Ok(Some(run)),
                No::Never => {
                    let _ = round.client.cancel(job);
                    self.refuse(&run, &Says::as_written(words))
                }
            },
            Err(Failure::Unreached(_) | Failure::Stranger { .. } | Failure::Lost(_)) => {
                Ok(Some(run))
            }
        }
    }

    /// Makes and fills a job at once. If the answer is lost, only the printer's own list can tell.
    fn print_at_once(
        &mut self,
        round: &Round<'_>,
        run: RunRow,
        ticket: Ticket<'_>,
        format: Format,
        document: Vec<u8>,
    ) -> Result<Option<RunRow>> {
        let Some(run) = self.goes_out(round, &run, None)? else {
            return Ok(None);
        };
        if !self.holds_lease()? {
            return Ok(Some(run));
        }
        match round.client.print_job(ticket, format, document) {
            Ok(job) => self.note(&run, Heard::Taken, None, |next| next.job_id = Some(job)),
            Err(failure) => self.not_made(&run, &failure),
        }
    }

    fn goes_out(
        &self,
        round: &Round<'_>,
        run: &RunRow,
        job: Option<i32>,
    ) -> Result<Option<RunRow>> {
        let at = self.app.now().naive_utc();
        self.note(run, Heard::GoesOut, None, |next| {
            next.job_id = job;
            next.printer_up = round.printer.up_time;
            next.out_at = Some(at);
        })
    }

    /// No job was made, or nobody knows whether one was.
    fn not_made(&mut self, run: &RunRow, failure: &Failure) -> Result<Option<RunRow>> {
        match failure {
            Failure::Unreached(_) | Failure::Stranger { .. } => {
                self.note(run, Heard::NotTaken, None, |_| {})
            }
            Failure::Lost(_) => Ok(Some(run.clone())),
            Failure::Said { status, words } => match Failure::no(*status) {
                No::Never => self.refuse(run, &Says::as_written(words)),
                _ => {
                    let says = Says::as_written(words);
                    self.note(run, Heard::NotTaken, Some(&says), |_| {})
                }
            },
        }
    }

    fn refuse(&self, run: &RunRow, says: &Says) -> Result<Option<RunRow>> {
        self.note(run, Heard::Refused, Some(says), |next| {
            next.trouble = Some(kept_says(says));
        })
    }

    /// Picks up a label that was being sent: after a lost answer, or a power cut.
    pub(super) fn resume(&mut self, round: &Round<'_>, run: RunRow) -> Result<Option<RunRow>> {
        if let Some(job) = run.job_id {
            return match round.client.job(job) {
                Ok(job) if job.is(run.token.as_deref()) => self.pick_up(round, run, &job),
                Ok(_) => self.vanished(round, &run, Absence::ProvesNothing),
                Err(failure) if knows_no_such_job(&failure) => {
                    self.vanished(round, &run, Absence::ProvesNothing)
                }
                Err(_) => Ok(Some(run)),
            };
        }
        let jobs = match round.client.jobs() {
            Ok(jobs) => jobs,
            Err(Failure::Said { .. }) => {
                return self.vanished(round, &run, Absence::ProvesNothing); // it makes no list
            }
            Err(_) => return Ok(Some(run)),
        };
        let found = jobs
            .iter()
            .find(|job| job.name.is_some() && job.is(run.token.as_deref()));
        match found {
            Some(job) => self.pick_up(round, run, job),
            None => {
                let absence = self.absence(round, &run, &jobs);
                self.vanished(round, &run, absence)
            }
        }
    }

    fn pick_up(
        &mut self,
        round: &Round<'_>,
        run: RunRow,
        job: &PrinterJob,
    ) -> Result<Option<RunRow>> {
        if job.stands() != JobState::UnderWay {
            return self.ended(round, &run, job);
        }
        // Made at once it is filled; made first, it is if the printer says so.
        if run.perhaps_out && (run.job_id.is_none() || job.is_filled()) {
            let id = Some(job.id);
            return self.note(&run, Heard::Taken, None, |next| next.job_id = id);
        }
        let letter = self.letter(&run)?;
        let format = run.format.as_deref().and_then(Format::of_mime);
        let format = format.unwrap_or(Format::Pdf);
        match encode(format, &letter.label) {
            Ok(document) => self.fill(round, run, job.id, &letter.person, format, document),
            Err(says) => self.refuse(&run, &says.into()),
        }
    }

    /// Follows a label that the printer has to its end.
    pub(super) fn follow(&mut self, round: &Round<'_>, run: RunRow) -> Result<Option<RunRow>> {
        let Some(id) = run.job_id else {
            return self.vanished(round, &run, Absence::ProvesNothing);
        };
        match round.client.job(id) {
            Ok(job) if !job.is(run.token.as_deref()) => {
                self.vanished(round, &run, Absence::ProvesNothing)
            }
            Ok(job) if job.stands() != JobState::UnderWay => self.ended(round, &run, &job),
            Err(failure) if knows_no_such_job(&failure) => {
                self.vanished(round, &run, Absence::ProvesNothing)
            }
            Ok(_) | Err(_) => Ok(Some(run)),
        }
    }

    fn ended(&self, round: &Round<'_>, run: &RunRow, job: &PrinterJob) -> Result<Option<RunRow>> {
        let printer = round.name.to_owned();
        let says = match (job.stands(), job.message.clone()) {
            (JobState::BrokenOff { out: Some(0) }, None) => {
                Some(PrintSays::BrokenOffEmpty { printer })
            }
            (JobState::BrokenOff { out: Some(0) }, Some(words)) => {
                Some(PrintSays::BrokenOffEmptyWith { printer, words })
            }
            (JobState::BrokenOff { .. }, None) => Some(PrintSays::BrokenOff { printer }),
            (JobState::BrokenOff { .. }, Some(words)) => {
                Some(PrintSays::BrokenOffWith { printer, words })
            }
            (JobState::Completed | JobState::UnderWay, _) => None,
        };
        let says = says.map(Says::from);
        let stands = Heard::Job(job.stands());
        self.note(run, stands, says.as_ref(), |next| {
            let trouble = says.as_ref().filter(|_| next.state != "printed");
            next.trouble = trouble.map(kept_says);
        })
    }

    fn vanished(
        &self,
        round: &Round<'_>,
        run: &RunRow,
        absence: Absence,
    ) -> Result<Option<RunRow>> {
        let printer = round.name.to_owned();
        let says = Says::from(PrintSays::Vanished { printer });
        let unsure =
            run.known()?.after(Heard::NoJob(absence)).state == domain::words::PrintState::Unsure;
        let says = unsure.then_some(says);
        self.note(run, Heard::NoJob(absence), says.as_ref(), |next| {
            next.trouble = says.as_ref().map(kept_says);
        })
    }

    /// What it says that the printer does not list a label.
    fn absence(&self, round: &Round<'_>, run: &RunRow, jobs: &[PrinterJob]) -> Absence {
        let Some(out_at) = run.out_at else {
            return Absence::ProvesNothing;
        };
        let waited = (self.app.now().naive_utc() - out_at).num_seconds();
        let (then, now) = (run.printer_up, round.printer.up_time);
        // Two seconds for the rounding of either clock.
        let ran_on = then
            .zip(now)
            .is_some_and(|(then, now)| i64::from(now) + 2 >= i64::from(then) + waited);
        let from_before = |job: &PrinterJob| {
            job.created
                .zip(then)
                .is_some_and(|(made, then)| made < then)
        };
        absence(waited, ran_on, jobs.iter().any(from_before))
    }

    fn letter(&self, run: &RunRow) -> Result<PrintLetter> {
        self.app.store.read(|conn| {
            let print = prints::by_key(conn, run.id)?
                .ok_or_else(|| store::Error::bad_row("print_runs", run.id, "no such print"))?;
            let deed = deeds::by_keys(conn, &[print.row.deed_id])?.pop();
            let deed =
                deed.ok_or_else(|| store::Error::bad_row("prints", run.id, "no such deed"))?;
            let lot = lots::by_keys(conn, &[print.row.lot_id])?.pop();
            let voided = match lot.filter(|lot| lot.voided) {
                Some(lot) => Some(PrintSays::LotVoided { lot: lot.code()? }.into()),
                None => None,
            };
            Ok(PrintLetter {
                voided,
                label: kept::label(conn, &print.row)?,
                deed: crate::ids::shown_id(&deed.uid),
                person: deed.person,
            })
        })
    }
}
