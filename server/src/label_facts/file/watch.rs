//! Makes a label anew whenever its template or its facts are saved, and says so.

use super::{Job, Texts};
use crate::world::{Clock, machine_zone};
use std::io::{self, Write};
use std::thread::sleep;
use std::time::Duration;

/// How often the files are looked at. A save shows after two looks: nobody has to wait, and a file
/// that is half written is left alone.
const PAUSE: Duration = Duration::from_millis(100);

/// Makes the label now and after each save, one line each. What is wrong is told and does not end
/// it: it goes on until it is stopped, or until nobody reads the lines any more.
///
/// Files are compared by what they say. They are small, and times of change are coarse.
pub fn run(job: &Job, told: &mut impl Write) {
    let mut made = job.read();
    let mut wanted = tell(job, &made, told);
    let mut last = job.read();
    while wanted.is_ok() {
        sleep(PAUSE);
        let now = job.read();
        if now == last && now != made {
            wanted = tell(job, &now, told);
            made = now;
        } else {
            last = now;
        }
    }
}

/// Makes the label and writes the line.
fn tell(job: &Job, texts: &Texts, told: &mut impl Write) -> io::Result<()> {
    let done = job.make(texts);
    let time = Clock::Machine.now().with_timezone(&machine_zone());
    let time = time.format("%H:%M:%S");
    match done {
        Ok(made) => {
            for warns in &made.warns {
                eprintln!("{time} {warns}");
            }
            writeln!(told, "{time} {}: ok, {}", job.template.name(), made.files)?;
        }
        Err(says) => writeln!(told, "{time} {says}")?,
    }
    told.flush()
}
