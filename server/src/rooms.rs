//! Waiting for the database, a printer or a drawing, off the workers that answer the network. Each kind
//! of work has a room of its own with so many seats: a full one makes nobody in another wait.

use crate::error::{Error, Problem, Result};
use crate::problems::{ServiceSays, TitleSays};
use crate::pulse;
use crate::world::Stopwatch;
use actix_web::http::StatusCode;
use actix_web::rt::time::timeout;
use actix_web::web;
use std::time::Duration;
use tokio::sync::Semaphore;

/// What kind of work it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Room {
    /// A scan: somebody stands at the counter.
    Scan,
    /// Reading the record.
    Read,
    /// Writing it.
    Write,
    /// Drawing labels, which takes the whole of a core.
    Draw,
    /// Asking a printer, which may be silent.
    Printer,
    /// Proving who somebody is, which takes the whole of a core.
    Sign,
    /// Reading a photo, which takes the whole of a core and no connection.
    Photo,
    /// A guest who reads a label: anybody may, so it takes no seat from who is at work.
    Guest,
}

/// How many connections to the database all rooms can need at once.
pub const CONNECTIONS: u32 = 30;

static SCAN: Semaphore = Semaphore::const_new(4);
static READ: Semaphore = Semaphore::const_new(8);
static WRITE: Semaphore = Semaphore::const_new(12);
static DRAW: Semaphore = Semaphore::const_new(1);
static PRINTER: Semaphore = Semaphore::const_new(4);
static SIGN: Semaphore = Semaphore::const_new(1);
static PHOTO: Semaphore = Semaphore::const_new(1);
static GUEST: Semaphore = Semaphore::const_new(2);

impl Room {
    fn seats(self) -> &'static Semaphore {
        match self {
            Room::Scan => &SCAN,
            Room::Read => &READ,
            Room::Write => &WRITE,
            Room::Draw => &DRAW,
            Room::Printer => &PRINTER,
            Room::Sign => &SIGN,
            Room::Photo => &PHOTO,
            Room::Guest => &GUEST,
        }
    }

    /// How long anybody waits for a seat.
    fn patience(self) -> Duration {
        Duration::from_millis(match self {
            Room::Scan => 1_000,
            Room::Guest => 3_000,
            Room::Read | Room::Printer | Room::Sign | Room::Photo => 5_000,
            Room::Write => 10_000,
            Room::Draw => 30_000,
        })
    }

    /// How long anything may take. The work goes on; whoever asked is told so.
    fn longest(self) -> Duration {
        Duration::from_secs(match self {
            Room::Scan => 5,
            Room::Guest => 10,
            Room::Read | Room::Printer | Room::Sign | Room::Photo => 30,
            Room::Write | Room::Draw => 60,
        })
    }
}

/// How often it is looked whether the database still lives, while something waits for it.
const LOOK: Duration = Duration::from_millis(500);

/// Reads the record.
///
/// # Errors
/// Whatever `f` says; 503 where the database does not answer.
pub async fn blocking<T: Send + 'static>(
    f: impl FnOnce() -> Result<T> + Send + 'static,
) -> Result<T> {
    within(Room::Read, f).await
}

/// Runs something in its room.
///
/// # Errors
/// Whatever `f` says; 503 where no seat becomes free, or the database does not answer.
pub async fn within<T: Send + 'static>(
    room: Room,
    f: impl FnOnce() -> Result<T> + Send + 'static,
) -> Result<T> {
    let (tell, told) = std::sync::mpsc::channel();
    // Nobody listens any more where it took too long.
    let work = Box::new(move || drop(tell.send(f())));
    seated(room, work).await?;
    told.try_recv().map_err(|_| away())?
}

/// The same for work of any kind: one function in the binary, not one for each route.
async fn seated(room: Room, work: Box<dyn FnOnce() + Send>) -> Result<()> {
    if pulse::is_late() {
        return Err(away());
    }
    let Ok(Ok(seat)) = timeout(room.patience(), room.seats().acquire()).await else {
        return Err(if pulse::is_late() { away() } else { busy() });
    };
    let watch = Stopwatch::start();
    let mut work = std::pin::pin!(web::block(move || {
        work();
        drop(seat);
    }));
    loop {
        match timeout(LOOK, &mut work).await {
            Ok(done) => return done.map_err(|_| away()),
            Err(_) if pulse::is_late() => return Err(away()),
            Err(_) if watch.elapsed() > room.longest() => return Err(busy()),
            Err(_) => {}
        }
    }
}

/// 503: the database does not answer.
fn away() -> Error {
    store::Error::Away("it has not answered for two seconds".into()).into()
}

/// 503: too much at once.
pub fn busy() -> Error {
    let status = StatusCode::SERVICE_UNAVAILABLE;
    Problem::new(status, "busy", TitleSays::Busy, ServiceSays::Busy).into()
}
