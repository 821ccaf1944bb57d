//! A second service beside another.

use crate::house::{House, start};
use std::io::BufReader;
use std::process::{Child, ChildStdout};

/// A second service over the same record, ended when it is dropped.
pub struct Neighbour(
    Child,
    #[allow(dead_code, reason = "kept open")] BufReader<ChildStdout>,
);

impl Neighbour {
    /// Starts it.
    pub fn of(house: &House) -> Neighbour {
        let (child, printed, _) = start(&house.database, &[]);
        Neighbour(child, printed)
    }
}

impl Drop for Neighbour {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}
