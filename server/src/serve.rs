//! Starting the service, and what stands around every request.

use crate::app::App;
use crate::copies::timetable;
use crate::printing::Printing;
use crate::who::permit::only;
use crate::{door, log, log_file, pages, pulse, routes};
use actix_web::http::KeepAlive;
use actix_web::middleware::from_fn;
use actix_web::rt::signal::unix::{SignalKind, signal};
use actix_web::{App as Actix, HttpServer, web};
use domain::right::Right;
use rustix::process::{Resource, Rlimit, getrlimit, setrlimit};
use rustls::ServerConfig;
use std::future::Future;
use std::net::TcpListener;
use std::pin::pin;
use std::time::Duration;

/// How many connections are open at once, where the machine lets us have so many.
const CONNECTIONS: u64 = 1_000;
/// Files that are not connections: the database, the log, printers.
const OTHER_FILES: u64 = 128;
/// How long the first line and the headers of a request may take.
const HEAD: Duration = Duration::from_secs(5);
/// How long an open connection may ask for nothing.
const IDLE: Duration = Duration::from_secs(15);
/// How many threads wait for the database, printers and drawings: the rooms have fewer seats.
const THREADS: usize = 30;
/// How long requests that are under way may take at the end, in seconds.
const FAREWELL: u64 = 10;

/// Serves until the process is told to stop.
///
/// # Errors
/// The listener fails.
pub async fn run(
    app: App,
    listener: TcpListener,
    tls: Option<ServerConfig>,
    workers: usize,
) -> std::io::Result<()> {
    let app = web::Data::new(app);
    pulse::feel(&app);
    log_file::settle(&app);
    timetable::keep_up(&app);
    let printing = Printing::start(app.clone());
    let server = HttpServer::new(move || {
        Actix::new()
            .app_data(app.clone())
            .app_data(web::PayloadConfig::new(crate::body::LARGEST))
            .wrap(from_fn(door::guard))
            .wrap(from_fn(log::each))
            .configure(|config| routes::api().register(config))
            .configure(pages::register)
            .default_service(only(Right::Anyone, web::to(pages::nothing_here)))
    })
    .workers(workers)
    .max_connections(connections(workers))
    .client_request_timeout(HEAD)
    // What nobody reads is read to its bound at the door, and no further.
    .client_disconnect_timeout(Duration::ZERO)
    .keep_alive(KeepAlive::Timeout(IDLE))
    .worker_max_blocking_threads(THREADS)
    .shutdown_timeout(FAREWELL)
    .tls_handshake_timeout(HEAD)
    .shutdown_signal(told_to_stop()?);
    let server = match tls {
        Some(tls) => server.listen_rustls_0_23(listener, tls)?,
        None => server.listen(listener)?,
    };
    let served = server.run().await;
    printing.stop();
    served
}

/// Ctrl-C and a polite end are the same: what is under way is finished.
fn told_to_stop() -> std::io::Result<impl Future<Output = ()>> {
    let (mut interrupt, mut terminate) = (
        signal(SignalKind::interrupt())?,
        signal(SignalKind::terminate())?,
    );
    Ok(async move {
        let (told, asked) = (pin!(interrupt.recv()), pin!(terminate.recv()));
        futures_util::future::select(told, asked).await;
    })
}

/// A file that reaches its limit ends no process: the write fails, and is told as it is. The handler
/// stays for as long as the process lives.
///
/// # Errors
/// The machine knows no such signal.
pub fn outlive_full_files() -> std::io::Result<()> {
    const SIGXFSZ: i32 = 25;
    signal(SignalKind::from_raw(SIGXFSZ)).map(drop)
}

/// How many connections each worker takes: never so many that a file for the database is missing.
fn connections(workers: usize) -> usize {
    let limit = getrlimit(Resource::Nofile);
    let wanted = CONNECTIONS + OTHER_FILES;
    let had = limit.current.unwrap_or(u64::MAX);
    let may = limit.maximum.unwrap_or(u64::MAX).min(wanted).max(had);
    let raised = Rlimit {
        current: Some(may),
        maximum: limit.maximum,
    };
    let files = match had < wanted && setrlimit(Resource::Nofile, raised).is_ok() {
        true => may,
        false => had,
    };
    let all = files.saturating_sub(OTHER_FILES).clamp(64, CONNECTIONS);
    usize::try_from(all).unwrap_or(64).div_ceil(workers)
}
