//! The desk of one printer: all that happens to its labels happens here, one after the other.
//!
//! Every change is written down before the next thing is done, by `Desk::note`, which finds out
//! whether somebody else was faster. No question to a printer is asked inside a transaction.

use super::address::PrinterAddress;
use super::capabilities::Capabilities;
use super::client::{Client, Failure};
use super::owner::Owner;
use super::words;
use crate::app::{App, damaged};
use crate::error::Result;
use crate::wire::lists::PrinterEntry;
use chrono::TimeDelta;
use domain::print::Heard;
use domain::says::Says;
use domain::words::PrintState;
use std::time::Duration;
use store::print_runs::{self, RunRow};
use store::{entries, leases};

/// How long a lease lasts, in seconds.
const LEASE: i64 = 60;
/// It is renewed when less than this is left of it: always longer than the most patient question.
const RENEW: i64 = 40;
/// Labels looked at in one round.
const ROUND: i64 = 100;

/// What to do after a round.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Then {
    /// Nothing is left to do.
    GoHome,
    /// Another process does it.
    LeaveIt,
    /// The printer took or printed something: go on.
    GoOn,
    /// Something has moved, no label came further: look at once, and stay as patient as before.
    Again,
    /// The printer works: look again soon.
    LookAgain,
    /// Something is wrong at the printer: wait longer each time.
    Wait,
}

/// One printer's desk, in one process.
pub struct Desk<'a> {
    pub(super) app: &'a App,
    pub(super) printer: i32,
    owner: &'a Owner,
    leased_until: Option<chrono::NaiveDateTime>,
    told: Option<Option<Says>>,
    /// How many labels the printer may have at once: two keep it busy, and one if it says so.
    pub(super) at_once: usize,
}

/// What a round works with: the printer as its list entry has it now, and as it is.
pub(super) struct Round<'a> {
    pub name: &'a str,
    pub client: Client<'a>,
    pub printer: Capabilities,
}

impl<'a> Desk<'a> {
    /// A desk for a printer, run by this process.
    pub fn new(app: &'a App, printer: i32, owner: &'a Owner) -> Desk<'a> {
        Desk {
            app,
            printer,
            owner,
            leased_until: None,
            told: None,
            at_once: 2,
        }
    }

    /// One look at everything that is open, and one step further with it.
    ///
    /// # Errors
    /// The database is away, or something in it is damaged.
    pub fn round(&mut self) -> Result<Then> {
        if !self.holds_lease()? {
            return Ok(Then::LeaveIt);
        }
        let open = [PrintState::Sending, PrintState::Sent, PrintState::Waiting];
        let runs = self
            .app
            .store
            .look(|conn| print_runs::of_printer(conn, self.printer, &open, ROUND))?;
        if runs.is_empty() {
            self.tell(None)?;
            return Ok(Then::GoHome);
        }
        let body = self
            .app
            .store
            .look(|conn| entries::by_key(conn, self.printer))?;
        let entry: PrinterEntry = serde_json::from_str(&body).map_err(|error| damaged(&error))?;
        let name = &entry.name.0;
        let address = match PrinterAddress::of(&entry) {
            Ok(address) => address,
            Err(says) => return self.wrong(says.into()),
        };
        let client = Client::new(&address);
        let printer = match client.capabilities() {
            Ok(printer) => printer,
            Err(failure) => return self.wrong(words::no_answer(name, &failure).into()),
        };
        let round = Round {
            name,
            client,
            printer,
        };
        self.work(&round, runs)
    }

    fn work(&mut self, round: &Round<'_>, runs: Vec<RunRow>) -> Result<Then> {
        let mut moved = Moved::default();
        let mut under_way = 0;
        let mut waiting = Vec::new();
        for run in runs {
            let before = run.known()?.state;
            let run = match before {
                PrintState::Sending => self.resume(round, run)?,
                PrintState::Sent => self.follow(round, run)?,
                _ => {
                    waiting.push(run);
                    continue;
                }
            };
            let after = state(run.as_ref())?;
            moved.note(Some(before), after);
            under_way += usize::from(after.is_some_and(PrintState::is_on_its_way));
        }
        if let Some(trouble) = words::trouble(round.name, &round.printer) {
            return self.wrong(trouble.into());
        }
        if moved.put_back {
            return self.wrong(words::stumbled(round.name).into());
        }
        self.tell(None)?;
        for run in waiting {
            if under_way >= self.at_once || self.app.bell.closing() || !self.holds_lease()? {
                break;
            }
            let after = state(self.send(round, run)?.as_ref())?;
            if after == Some(PrintState::Waiting) {
                // Put off: the printer has as many as it takes.
                self.at_once = self.at_once.min(under_way.max(1));
                break;
            }
            moved.note(Some(PrintState::Waiting), after);
            under_way += usize::from(after.is_some_and(PrintState::is_on_its_way));
        }
        Ok(match (moved.any, moved.further) {
            (_, true) => Then::GoOn,
            (true, false) => Then::Again,
            (false, false) => Then::LookAgain,
        })
    }

    /// Writes down what was heard of a label. Nothing where somebody else was faster.
    pub(super) fn note(
        &self,
        run: &RunRow,
        heard: Heard,
        says: Option<&Says>,
        more: impl Fn(&mut RunRow),
    ) -> Result<Option<RunRow>> {
        let known = run.known()?;
        let mut next = run.with(known.after(heard));
        more(&mut next);
        if next == *run {
            return Ok(Some(run.clone()));
        }
        let at = self.app.now().naive_utc();
        self.app
            .store
            .write(|tx| Ok(print_runs::change(tx, run, &next, says, at)?))
    }

    /// Something is wrong: it is shown on the page, and tried again later.
    fn wrong(&mut self, trouble: Says) -> Result<Then> {
        self.tell(Some(trouble))?;
        Ok(Then::Wait)
    }

    fn tell(&mut self, trouble: Option<Says>) -> Result<()> {
        if self.told.as_ref() != Some(&trouble) {
            self.app.store.write(|tx| -> Result<()> {
                Ok(leases::note_trouble(
                    tx,
                    self.printer,
                    &self.owner.to_string(),
                    trouble.as_ref(),
                )?)
            })?;
            self.told = Some(trouble);
        }
        Ok(())
    }

    /// Takes the lease, or renews it well before a question could outlast it.
    pub(super) fn holds_lease(&mut self) -> Result<bool> {
        let now = self.app.now().naive_utc();
        if let Some(until) = self.leased_until
            && now + TimeDelta::seconds(RENEW) < until
            && until <= now + TimeDelta::seconds(LEASE)
        {
            return Ok(true);
        }
        let until = now + TimeDelta::seconds(LEASE);
        let had = self
            .app
            .store
            .look(|conn| leases::owner(conn, self.printer))?;
        let gone = had.filter(|had| self.owner.sees_gone(had));
        let myself = self.owner.to_string();
        let taken = self.app.store.write(|tx| -> Result<bool> {
            let gone = gone.as_deref();
            Ok(leases::take(tx, self.printer, &myself, gone, now, until)?)
        })?;
        self.leased_until = taken.then_some(until);
        Ok(taken)
    }

    /// Leaves the desk to whoever comes next.
    pub fn leave(&mut self) {
        if self.leased_until.take().is_none() {
            return;
        }
        let now = self.app.now().naive_utc();
        let left = self.app.store.write(|tx| -> Result<()> {
            Ok(leases::give_back(
                tx,
                self.printer,
                &self.owner.to_string(),
                now,
            )?)
        });
        if let Err(error) = left {
            tracing::error!("printing: {error}");
        }
    }
}

/// What has moved in a round.
#[derive(Debug, Default)]
struct Moved {
    any: bool,
    /// The printer took or printed a label.
    further: bool,
    /// A label that was being sent waits again.
    put_back: bool,
}

impl Moved {
    fn note(&mut self, before: Option<PrintState>, after: Option<PrintState>) {
        use PrintState::*;
        self.any |= before != after;
        self.further |= before != after && matches!(after, Some(Sent | Printed));
        self.put_back |= (before, after) == (Some(Sending), Some(Waiting));
    }
}

fn state(run: Option<&RunRow>) -> Result<Option<PrintState>> {
    Ok(run.map(RunRow::known).transpose()?.map(|known| known.state))
}

/// How long to wait: each time twice as long, within bounds.
#[derive(Debug, Clone, Copy)]
pub struct Patience {
    next: Duration,
    least: Duration,
    most: Duration,
}

impl Patience {
    /// From `least` to `most`.
    pub const fn new(least: Duration, most: Duration) -> Patience {
        Patience {
            next: least,
            least,
            most,
        }
    }

    /// This time.
    pub fn this_time(&mut self) -> Duration {
        let now = self.next;
        self.next = (now * 2).min(self.most);
        now
    }

    /// Back to the shortest.
    pub fn calm(&mut self) {
        self.next = self.least;
    }
}

/// What a printer's failure is about a job that it was asked for.
pub(super) fn knows_no_such_job(failure: &Failure) -> bool {
    matches!(failure, Failure::Said { status, .. } if Failure::no(*status) == super::client::No::NoSuchJob)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn patience_doubles_and_is_bounded() {
        let second = Duration::from_secs(1);
        let mut patience = Patience::new(second, 30 * second);
        let waits: Vec<u64> = (0..7).map(|_| patience.this_time().as_secs()).collect();
        assert_eq!(waits, [1, 2, 4, 8, 16, 30, 30]);
        patience.calm();
        assert_eq!(patience.this_time(), second);
    }
}
