//! A printer for stories: it speaks IPP over a socket of its own, and does wrong what it is told to.
//!
//! What came out of it is on its [`Printer::paper`], which nothing takes back.

mod http;
mod inside;
mod tls;

use inside::Inside;
use ipp::model::Operation;
use ipp::parser::IppParser;
use ipp::reader::IppReader;
use std::collections::BTreeMap;
use std::io::{BufReader, Cursor, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};
use tls::Identity;

/// A label that came out.
#[derive(Debug, Clone)]
pub struct Sheet {
    /// The job's name.
    pub token: String,
    /// What was sent.
    pub document: Vec<u8>,
    /// What it was sent as.
    pub format: String,
}

/// How the printer behaves.
#[derive(Debug, Clone)]
pub struct Manners {
    /// Label sizes in hundredths of a millimetre.
    pub sizes: Vec<(i32, i32)>,
    /// Formats.
    pub formats: Vec<&'static str>,
    /// Dots per inch.
    pub dpi: i32,
    /// Does it know Create-Job?
    pub creates_jobs: bool,
    /// Does it list its jobs?
    pub lists_jobs: bool,
    /// Why it stands still, if it does.
    pub reasons: Vec<&'static str>,
    /// It takes jobs and prints none of them for now.
    pub holds: bool,
    /// It says no to any size.
    pub refuses_size: bool,
    /// It breaks the next so many jobs off, and tells this number of sheets (or none).
    pub breaks_off: (u32, Option<i32>),
    /// It acts on the next question of this kind, and the answer is lost.
    pub loses_answer: Option<Operation>,
    /// The next question of this kind is lost before it is read.
    pub loses_question: Option<Operation>,
}

/// A printer for stories.
pub struct Printer {
    inside: Arc<Mutex<Inside>>,
    port: u16,
    on: Option<Arc<Mutex<bool>>>,
    /// What it shows on an encrypted line, and nothing for a plain one.
    identity: Option<Arc<Mutex<Identity>>>,
}

impl Default for Manners {
    fn default() -> Manners {
        Manners {
            sizes: vec![(5100, 5100), (6200, 10000), (6200, 15000), (6200, 18000)],
            formats: vec!["application/pdf", "image/pwg-raster"],
            dpi: 203,
            creates_jobs: true,
            lists_jobs: true,
            reasons: Vec::new(),
            holds: false,
            refuses_size: false,
            breaks_off: (0, None),
            loses_answer: None,
            loses_question: None,
        }
    }
}

impl Printer {
    /// A printer that is switched on.
    pub fn new(manners: Manners) -> Printer {
        Printer::with(manners, None)
    }

    /// A printer that is switched on and speaks on an encrypted line only.
    pub fn encrypted(manners: Manners) -> Printer {
        Printer::with(manners, Some(Identity::new()))
    }

    fn with(manners: Manners, identity: Option<Identity>) -> Printer {
        let inside = Inside {
            manners,
            jobs: Vec::new(),
            next: 1,
            started: Instant::now(),
            paper: Vec::new(),
            asked: Vec::new(),
        };
        let mut printer = Printer {
            inside: Arc::new(Mutex::new(inside)),
            port: 0,
            on: None,
            identity: identity.map(|identity| Arc::new(Mutex::new(identity))),
        };
        printer.switch_on();
        printer
    }

    /// Its address for the list of printers.
    pub fn address(&self) -> String {
        let scheme = match self.identity {
            Some(_) => "ipps",
            None => "ipp",
        };
        format!("{scheme}://127.0.0.1:{}/ipp/print", self.port)
    }

    /// The fingerprint of its certificate, as an outside tool tells it.
    ///
    /// # Panics
    /// It has none.
    pub fn fingerprint(&self) -> String {
        lock(self.identity.as_ref().expect("an encrypted line")).fingerprint()
    }

    /// Gives it another certificate.
    ///
    /// # Panics
    /// It speaks on a plain line.
    pub fn change_certificate(&self) {
        *lock(self.identity.as_ref().expect("an encrypted line")) = Identity::new();
    }

    /// Changes its manners.
    pub fn change(&self, change: impl FnOnce(&mut Manners)) {
        change(&mut self.inside().manners);
    }

    /// What came out so far.
    pub fn paper(&self) -> Vec<Sheet> {
        self.inside().paper.clone()
    }

    /// How often each print came out, by its number.
    pub fn copies(&self) -> BTreeMap<i64, usize> {
        let mut copies = BTreeMap::new();
        for sheet in self.paper() {
            *copies.entry(print_of(&sheet.token)).or_default() += 1;
        }
        copies
    }

    /// How often it was asked that.
    pub fn times_asked(&self, operation: Operation) -> usize {
        let inside = self.inside();
        inside
            .asked
            .iter()
            .filter(|asked| **asked == operation)
            .count()
    }

    /// How many questions of any kind it was asked.
    pub fn questions(&self) -> usize {
        self.inside().asked.len()
    }

    /// Prints what it holds.
    pub fn go_on(&self) {
        let inside = &mut *self.inside();
        inside.manners.holds = false;
        for job in &mut inside.jobs {
            if job.filled && job.state < 7 {
                job.print(&mut inside.paper);
            }
        }
    }

    /// Forgets all jobs, as a small printer does after a while.
    pub fn forget(&self) {
        self.inside().jobs.clear();
    }

    /// Nobody listens any more.
    pub fn switch_off(&mut self) {
        if let Some(on) = self.on.take() {
            *lock(&on) = false;
            // Wakes the one who waits for calls.
            let _ = TcpStream::connect(("127.0.0.1", self.port));
            let gone = Instant::now() + Duration::from_secs(5);
            while TcpStream::connect(("127.0.0.1", self.port)).is_ok() && Instant::now() < gone {
                std::thread::sleep(Duration::from_millis(5));
            }
        }
    }

    /// Listens again, and remembers nothing but its paper.
    pub fn switch_on(&mut self) {
        let listener = TcpListener::bind(("127.0.0.1", self.port)).expect("the port is free");
        self.port = listener.local_addr().expect("bound").port();
        {
            let mut inside = self.inside();
            inside.jobs.clear();
            inside.next = 1;
            inside.started = Instant::now();
        }
        let on = Arc::new(Mutex::new(true));
        self.on = Some(on.clone());
        let inside = self.inside.clone();
        let identity = self.identity.clone();
        std::thread::spawn(move || {
            for call in listener.incoming() {
                if !*lock(&on) {
                    return;
                }
                let inside = inside.clone();
                let identity = identity.as_ref().map(|identity| lock(identity).clone());
                std::thread::spawn(move || {
                    let call = call.ok()?;
                    match identity {
                        None => answer(call, &inside),
                        Some(identity) => answer(identity.over(call), &inside),
                    }
                });
            }
        });
    }

    fn inside(&self) -> MutexGuard<'_, Inside> {
        lock(&self.inside)
    }
}

impl Drop for Printer {
    fn drop(&mut self) {
        self.switch_off();
    }
}

/// The print's number in a job's name.
///
/// # Panics
/// It is not one of ours.
pub fn print_of(token: &str) -> i64 {
    let number = token
        .rsplit('-')
        .nth(1)
        .and_then(|number| number.parse().ok());
    assert!(token.starts_with("gambrel-"), "{token}");
    number.unwrap_or_else(|| panic!("{token} names no print"))
}

fn lock<T>(of: &Mutex<T>) -> MutexGuard<'_, T> {
    of.lock().unwrap_or_else(PoisonError::into_inner)
}

fn answer(call: impl Read + Write, inside: &Mutex<Inside>) -> Option<()> {
    let mut reader = BufReader::new(call);
    let body = http::body(&mut reader)?;
    let mut call = reader.into_inner();
    let request = IppParser::new(IppReader::new(Cursor::new(body)))
        .parse()
        .ok()?;
    let operation = operation(request.header().operation_or_status)?;
    let mut inside = lock(inside);
    inside.asked.push(operation);
    if inside.manners.loses_question == Some(operation) {
        inside.manners.loses_question = None;
        return None;
    }
    let response = inside.act(operation, request);
    if inside.manners.loses_answer == Some(operation) {
        inside.manners.loses_answer = None;
        return None;
    }
    drop(inside);
    let bytes = response.to_bytes();
    let head = format!(
        "HTTP/1.1 200 OK\r\nContent-Type: application/ipp\r\nContent-Length: {}\r\nConnection: close\r\n\r\n",
        bytes.len()
    );
    call.write_all(head.as_bytes()).ok()?;
    call.write_all(&bytes).ok()?;
    call.flush().ok()
}

fn operation(number: i16) -> Option<Operation> {
    use Operation::*;
    [
        PrintJob,
        CreateJob,
        SendDocument,
        CancelJob,
        GetJobAttributes,
        GetJobs,
        GetPrinterAttributes,
    ]
    .into_iter()
    .find(|operation| *operation as i16 == number)
}
