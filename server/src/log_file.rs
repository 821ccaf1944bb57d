//! A thread that puts the log of a record on SQLite into its file, so that no deed has to and nobody waits for it.

use crate::app::App;
use std::sync::Arc;
use std::thread;
use std::time::Duration;

/// How often: what a busy kitchen records in between goes onto the disk in a blink.
const EVERY: Duration = Duration::from_millis(500);

/// Puts the log into the file again and again until the service ends.
pub fn settle(app: &Arc<App>) {
    let mut settler = match app.store.log_settler() {
        Ok(Some(settler)) => settler,
        Ok(None) => return,
        Err(error) => {
            return tracing::error!("deeds put the log into the file themselves: {error}");
        }
    };
    let app = app.clone();
    let started = thread::Builder::new().name("log".into()).spawn(move || {
        while !app.bell.closing() {
            thread::sleep(EVERY);
            if let Err(error) = settler.settle() {
                tracing::debug!("the log stays as it is for now: {error}");
            }
        }
    });
    if let Err(error) = started {
        tracing::error!("deeds put the log into the file themselves: {error}");
    }
}
