//! A thread that puts the log of a record on SQLite into its file, so that no deed has to and nobody waits for it.

use crate::app::App;
use crate::copies::gently;
use std::sync::{Arc, mpsc};
use std::thread;
use std::time::Duration;

/// How often: what a busy kitchen records in between goes onto the disk in a blink.
const EVERY: Duration = Duration::from_millis(500);

/// Puts the log into the file again and again until the service ends. What is long in it is put away behind all others:
/// after a copy that is all that was recorded meanwhile, and at full speed a deed would wait for the disk until it is done.
pub fn settle(app: &Arc<App>) {
    let (mut settler, mut ender) = match app.store.log_settler() {
        Ok(Some(both)) => both,
        Ok(None) => return,
        Err(error) => {
            return tracing::error!("deeds put the log into the file themselves: {error}");
        }
    };
    let (time_to_end, ends) = mpsc::sync_channel::<()>(0);
    let app = app.clone();
    begin("log", move || {
        gently::go_behind();
        while !app.bell.closing() {
            thread::sleep(EVERY);
            match settler.settle() {
                Ok(true) => drop(time_to_end.send(())),
                Ok(false) => {}
                Err(error) => later(&error),
            }
        }
    });
    begin("log end", move || {
        for () in ends {
            ender.end().unwrap_or_else(|error| later(&error));
        }
    });
}

fn later(error: &store::Error) {
    tracing::debug!("the log stays as it is for now: {error}");
}

fn begin(name: &str, work: impl FnOnce() + Send + 'static) {
    if let Err(error) = thread::Builder::new().name(name.into()).spawn(work) {
        tracing::error!("deeds put the log into the file themselves: {error}");
    }
}
