//! Printing by IPP: labels that were asked for go to their printer, once, and what became of each is
//! written down.
//!
//! Reading order: [`domain::print`] (what is known of a label, and what may be done next), [`address`],
//! [`mod@line`] with [`pinned`] and [`fingerprint`] (an encrypted one), [`client`] with [`capabilities`], `job` and `values` (what a printer is asked, and what it says),
//! [`mod@format`], [`kept`], [`before`] and [`reprint`] (the document, from what was kept), [`desk`] (one printer's queue) with
//! `send` (one label's way), `owner` (who this process is), [`words`] (what is wrong, for a tired cook), and here: one desk for each
//! printer that has something to do.

pub mod address;
pub mod before;
mod bell;
pub mod capabilities;
pub mod client;
pub mod desk;
pub mod fingerprint;
pub mod format;
mod job;
pub mod kept;
pub mod line;
mod owner;
pub mod paper;
pub mod pinned;
pub mod reprint;
pub mod says;
pub mod seen;
mod send;
pub mod trial;
mod values;
pub mod words;

pub use bell::Bell;

use crate::app::App;
use actix_web::web::Data;
use desk::{Desk, Patience, Then};
use owner::Owner;
use std::collections::HashMap;
use std::thread::{self, JoinHandle};
use std::time::Duration;
use store::print_runs;

/// How often another process's new labels are looked for; our own ring the bell.
const ROUNDS: Duration = Duration::from_secs(2);
/// How long the end of the service waits for a printer's answer. What is cut then is picked up at
/// the next start, as after a power cut.
const FAREWELL: Duration = Duration::from_secs(4);

/// All who print, while the service runs.
pub struct Printing {
    app: Data<App>,
    foreman: Option<JoinHandle<()>>,
}

impl Printing {
    /// Opens a desk for every printer that has something to do, now and later.
    pub fn start(app: Data<App>) -> Printing {
        let shared = app.clone();
        let foreman = thread::Builder::new()
            .name("printing".into())
            .spawn(move || lead(&shared));
        if let Err(error) = &foreman {
            tracing::error!("nothing is printed: {error}");
        }
        Printing {
            app,
            foreman: foreman.ok(),
        }
    }

    /// Ends it: no new label is begun.
    pub fn stop(mut self) {
        self.app.bell.close();
        let Some(foreman) = self.foreman.take() else {
            return;
        };
        let nap = Duration::from_millis(20);
        for _ in 0..FAREWELL.as_millis() / nap.as_millis() {
            if foreman.is_finished() {
                let _ = foreman.join();
                return;
            }
            thread::sleep(nap);
        }
    }
}

/// Opens desks as they are needed, until everybody is sent home.
fn lead(app: &Data<App>) {
    let owner = Owner::myself(app.now());
    let mut complained = None;
    let mut desks: HashMap<i32, JoinHandle<()>> = HashMap::new();
    while !app.bell.closing() {
        let heard = app.bell.times();
        desks.retain(|_, desk| !desk.is_finished());
        match app.store.look(print_runs::busy_printers) {
            Ok(busy) => {
                for printer in busy {
                    desks.entry(printer).or_insert_with(|| {
                        let (app, owner) = (app.clone(), owner.clone());
                        thread::spawn(move || attend(&app, printer, &owner))
                    });
                }
            }
            // Once, and not every two seconds while the database is away.
            Err(error) => {
                let says = Some(error.to_string());
                if complained != says {
                    tracing::error!("printing: {error}");
                    complained = says;
                }
            }
        }
        app.bell.wait(heard, ROUNDS);
    }
    for desk in desks.into_values() {
        let _ = desk.join();
    }
}

/// One printer, until nothing is left to do.
fn attend(app: &App, printer: i32, owner: &Owner) {
    let mut desk = Desk::new(app, printer, owner);
    let mut looks = Patience::new(Duration::from_millis(50), Duration::from_secs(1));
    let mut trouble = Patience::new(Duration::from_secs(1), Duration::from_secs(30));
    while !app.bell.closing() {
        let heard = app.bell.times();
        let wait = match desk.round() {
            Ok(Then::GoHome) => {
                desk.leave();
                // Whoever asked for a label just now is not left waiting for the next round.
                return app.bell.ring();
            }
            Ok(Then::LeaveIt) => return,
            Ok(Then::GoOn) => {
                looks.calm();
                trouble.calm();
                continue;
            }
            Ok(Then::Again) => continue,
            Ok(Then::LookAgain) => {
                trouble.calm();
                looks.this_time()
            }
            Ok(Then::Wait) => trouble.this_time(),
            Err(error) => {
                tracing::error!("printing: {error}");
                trouble.this_time()
            }
        };
        app.bell.wait(heard, wait);
    }
    desk.leave();
}
