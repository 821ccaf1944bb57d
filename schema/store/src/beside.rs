//! Two long reads side by side, of one moment.

use crate::chain;
use crate::conn::Conn;
use crate::db::Store;
use crate::error::Error;
use std::panic;
use std::thread;

impl Store {
    /// Reads twice in a snapshot of the same moment, each on a connection and a thread of its own. Where there is only one
    /// connection, or something was recorded between the two, one goes after the other.
    ///
    /// # Errors
    /// Whatever the one or the other says, or the database being away.
    pub fn read_beside<A: Send, B, E: From<Error> + Send>(
        &self,
        one: impl FnOnce(&mut Conn) -> Result<A, E> + Send,
        other: impl FnOnce(&mut Conn) -> Result<B, E>,
    ) -> Result<(A, B), E> {
        self.read(|conn| {
            if self.connections() < 2 {
                return Ok((one(conn)?, other(conn)?));
            }
            // Whatever is recorded, the chain has another end after it.
            let moment = chain::anchor(conn)?;
            thread::scope(|scope| {
                let beside = scope.spawn(|| {
                    self.read(|conn| match chain::anchor(conn)? == moment {
                        true => one(conn).map(Ok),
                        false => Ok(Err(one)),
                    })
                });
                let other = other(conn);
                let one = beside
                    .join()
                    .unwrap_or_else(|why| panic::resume_unwind(why))?;
                let one = match one {
                    Ok(read) => read,
                    Err(one) => one(conn)?,
                };
                Ok((one, other?))
            })
        })
    }
}
