//! Many connections that ask over and over: one thread and one kept-alive connection each.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::thread;
use std::time::{Duration, Instant};

/// What a load saw.
pub struct Seen {
    /// Answers a second, over all connections.
    pub a_second: f64,
    /// How long each answer took, shortest first.
    pub took: Vec<Duration>,
}

impl Seen {
    /// The time within which so many of a hundred answers came.
    pub fn percentile(&self, percent: f64) -> Duration {
        let at = (self.took.len() as f64 * percent / 100.0) as usize;
        self.took[at.min(self.took.len() - 1)]
    }
}

/// Asks on that many connections until `lasts` is over. `path` tells the nth connection its mth path.
///
/// # Panics
/// An answer has another status, or a connection breaks.
pub fn load(
    address: SocketAddr,
    header: &str,
    connections: usize,
    lasts: Duration,
    status: u16,
    path: impl Fn(usize, usize) -> String + Sync,
) -> Seen {
    let start = Instant::now();
    let mut took: Vec<Duration> = thread::scope(|scope| {
        let path = &path;
        let asking: Vec<_> = (0..connections)
            .map(|nth| {
                scope.spawn(move || {
                    let path = |count| path(nth, count);
                    ask(address, header, start + lasts, status, path)
                })
            })
            .collect();
        asking
            .into_iter()
            .flat_map(|asking| asking.join().expect("a connection broke"))
            .collect()
    });
    let a_second = took.len() as f64 / start.elapsed().as_secs_f64();
    took.sort_unstable();
    Seen { a_second, took }
}

fn ask(
    address: SocketAddr,
    header: &str,
    until: Instant,
    status: u16,
    path: impl Fn(usize) -> String,
) -> Vec<Duration> {
    let mut stream = TcpStream::connect(address).expect("the service listens");
    stream.set_nodelay(true).expect("a socket option");
    let mut took = Vec::new();
    let mut buffer = vec![0; 16 << 10];
    loop {
        let asked = Instant::now();
        if asked >= until {
            return took;
        }
        let request = format!(
            "GET {} HTTP/1.1\r\nHost: {address}\r\n{header}\r\n",
            path(took.len())
        );
        stream.write_all(request.as_bytes()).expect("it listens");
        answer(&mut stream, &mut buffer, status);
        took.push(asked.elapsed());
    }
}

/// Reads one answer to its end.
fn answer(stream: &mut TcpStream, buffer: &mut [u8], status: u16) {
    let mut filled = 0;
    loop {
        let read = stream.read(&mut buffer[filled..]).expect("it answers");
        assert!(read > 0, "the service hung up, or the answer is too long");
        filled += read;
        if length(&buffer[..filled], status).is_some_and(|whole| filled >= whole) {
            return;
        }
    }
}

/// How long the answer is, head and body, once its head is there.
fn length(bytes: &[u8], status: u16) -> Option<usize> {
    let end = bytes.windows(4).position(|four| four == b"\r\n\r\n")?;
    let head = std::str::from_utf8(&bytes[..end]).expect("a head is ASCII");
    assert!(head.starts_with(&format!("HTTP/1.1 {status}")), "{head}");
    let body = head.lines().find_map(|line| {
        let (name, value) = line.split_once(':')?;
        name.eq_ignore_ascii_case("content-length")
            .then(|| value.trim().parse::<usize>().expect("a length is a number"))
    });
    Some(end + 4 + body.expect("the service tells lengths"))
}
