//! A printer for stories: it speaks IPP over a socket of its own, and does wrong what it is told to.
//!
//! What came out of it is on its [`Printer::paper`], which nothing takes back.

use ipp::attribute::IppAttribute;
use ipp::model::{DelimiterTag, IppVersion, Operation, StatusCode};
use ipp::parser::IppParser;
use ipp::reader::IppReader;
use ipp::request::IppRequestResponse;
use ipp::value::IppValue;
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Cursor, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

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

#[derive(Debug, Clone)]
struct Job {
    id: i32,
    name: String,
    state: i32,
    out: Option<i32>,
    filled: bool,
    created: i32,
    document: Vec<u8>,
    format: String,
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

struct Inside {
    manners: Manners,
    jobs: Vec<Job>,
    next: i32,
    started: Instant,
    paper: Vec<Sheet>,
    asked: Vec<Operation>,
}

/// A printer for stories.
pub struct Printer {
    inside: Arc<Mutex<Inside>>,
    port: u16,
    on: Option<Arc<Mutex<bool>>>,
}

impl Default for Manners {
    fn default() -> Manners {
        Manners {
            sizes: vec![(5100, 5100), (6200, 10000), (6200, 15000)],
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
        };
        printer.switch_on();
        printer
    }

    /// Its address for the list of printers.
    pub fn address(&self) -> String {
        format!("ipp://127.0.0.1:{}/ipp/print", self.port)
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
        std::thread::spawn(move || {
            for call in listener.incoming() {
                if !*lock(&on) {
                    return;
                }
                let inside = inside.clone();
                std::thread::spawn(move || call.map(|call| answer(call, &inside)));
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
/// It is none of ours.
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

fn answer(mut call: TcpStream, inside: &Mutex<Inside>) -> Option<()> {
    let mut reader = BufReader::new(call.try_clone().ok()?);
    let body = body(&mut reader)?;
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
    call.write_all(&bytes).ok()
}

/// The body of an HTTP request, whole or in chunks.
fn body(reader: &mut impl BufRead) -> Option<Vec<u8>> {
    let mut line = || -> Option<String> {
        let mut line = String::new();
        (reader.read_line(&mut line).ok()? > 0).then(|| line.trim_end().to_owned())
    };
    let mut length = None;
    loop {
        let header = line()?.to_lowercase();
        if header.is_empty() {
            break;
        }
        if let Some(told) = header.strip_prefix("content-length:") {
            length = told.trim().parse().ok();
        }
    }
    let mut body = Vec::new();
    if let Some(length) = length {
        body.resize(length, 0);
        reader.read_exact(&mut body).ok()?;
        return Some(body);
    }
    loop {
        let mut head = String::new();
        reader.read_line(&mut head).ok()?;
        let length = usize::from_str_radix(head.trim(), 16).ok()?;
        let start = body.len();
        body.resize(start + length, 0);
        reader.read_exact(&mut body[start..]).ok()?;
        let mut end = String::new();
        reader.read_line(&mut end).ok()?;
        if length == 0 {
            return Some(body);
        }
    }
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

impl Inside {
    fn act(&mut self, operation: Operation, request: IppRequestResponse) -> IppRequestResponse {
        let id = request.header().request_id;
        let respond = |status| {
            IppRequestResponse::new_response(IppVersion::v1_1(), status, id).expect("a response")
        };
        let asked = |name: &str| {
            let group = request
                .attributes()
                .first_of(DelimiterTag::OperationAttributes);
            group
                .and_then(|group| group.get(name))
                .map(|attribute| attribute.value().to_string())
        };
        match operation {
            Operation::GetPrinterAttributes => {
                let mut response = respond(StatusCode::SuccessfulOk);
                for (name, value) in self.described() {
                    add(&mut response, DelimiterTag::PrinterAttributes, name, value);
                }
                response
            }
            Operation::GetJobs if !self.manners.lists_jobs => {
                respond(StatusCode::ServerErrorOperationNotSupported)
            }
            Operation::GetJobs => {
                let ended = asked("which-jobs").as_deref() == Some("completed");
                let mut response = respond(StatusCode::SuccessfulOk);
                for job in self.jobs.iter().filter(|job| (job.state >= 7) == ended) {
                    let mut group =
                        ipp::attribute::IppAttributeGroup::new(DelimiterTag::JobAttributes);
                    for (name, value) in job.described() {
                        let attribute = IppAttribute::with_name(name, value).expect("a name");
                        group.attributes_mut().push(attribute);
                    }
                    response.attributes_mut().groups_mut().push(group);
                }
                response
            }
            Operation::CreateJob | Operation::PrintJob => {
                if !self.manners.reasons.is_empty() {
                    return respond(StatusCode::ServerErrorBusy);
                }
                if self.manners.refuses_size {
                    return respond(StatusCode::ClientErrorAttributesOrValuesNotSupported);
                }
                let job = Job {
                    id: self.next,
                    name: asked("job-name").unwrap_or_default(),
                    state: 3,
                    out: Some(0),
                    filled: false,
                    created: self.up_time(),
                    document: Vec::new(),
                    format: String::new(),
                };
                self.next += 1;
                self.jobs.push(job.clone());
                if operation == Operation::PrintJob {
                    self.fill(job.id, asked("document-format"), request);
                }
                let mut response = respond(StatusCode::SuccessfulOk);
                for (name, value) in job.described() {
                    add(&mut response, DelimiterTag::JobAttributes, name, value);
                }
                response
            }
            Operation::SendDocument => {
                let job: i32 = asked("job-id").and_then(|id| id.parse().ok()).unwrap_or(0);
                match self.jobs.iter().find(|known| known.id == job) {
                    None => respond(StatusCode::ClientErrorNotFound),
                    Some(known) if known.filled || known.state >= 7 => {
                        respond(StatusCode::ClientErrorNotPossible)
                    }
                    Some(_) => {
                        let format = asked("document-format");
                        self.fill(job, format, request);
                        respond(StatusCode::SuccessfulOk)
                    }
                }
            }
            Operation::GetJobAttributes => {
                let job: i32 = asked("job-id").and_then(|id| id.parse().ok()).unwrap_or(0);
                let Some(job) = self.jobs.iter().find(|known| known.id == job) else {
                    return respond(StatusCode::ClientErrorNotFound);
                };
                let mut response = respond(StatusCode::SuccessfulOk);
                for (name, value) in job.described() {
                    add(&mut response, DelimiterTag::JobAttributes, name, value);
                }
                response
            }
            _ => respond(StatusCode::ServerErrorOperationNotSupported),
        }
    }

    fn up_time(&self) -> i32 {
        i32::try_from(self.started.elapsed().as_secs()).unwrap_or(0) + 1
    }

    fn fill(&mut self, id: i32, format: Option<String>, request: IppRequestResponse) {
        let mut document = Vec::new();
        let _ = request.into_payload().read_to_end(&mut document);
        let job = self
            .jobs
            .iter_mut()
            .find(|job| job.id == id)
            .expect("made before");
        (job.filled, job.document, job.format) = (true, document, format.unwrap_or_default());
        if self.manners.breaks_off.0 > 0 {
            self.manners.breaks_off.0 -= 1;
            // Of a job that is broken off without a number nobody knows; here nothing came out.
            (job.state, job.out) = (8, self.manners.breaks_off.1);
        } else if self.manners.holds {
            job.state = 5;
        } else {
            job.print(&mut self.paper);
        }
    }

    fn described(&self) -> Vec<(&'static str, IppValue)> {
        let manners = &self.manners;
        let keyword = |word: &str| IppValue::new_keyword(word).expect("a keyword");
        let mut operations = vec![
            Operation::PrintJob,
            Operation::CancelJob,
            Operation::GetJobAttributes,
            Operation::GetJobs,
            Operation::GetPrinterAttributes,
        ];
        if manners.creates_jobs {
            operations.extend([Operation::CreateJob, Operation::SendDocument]);
        }
        let size = |(x, y): &(i32, i32)| {
            let members = [("x-dimension", *x), ("y-dimension", *y)];
            IppValue::Collection(
                members
                    .map(|(name, number)| {
                        (name.try_into().expect("a name"), IppValue::Integer(number))
                    })
                    .into(),
            )
        };
        let reasons = match manners.reasons.is_empty() {
            true => vec![keyword("none")],
            false => manners
                .reasons
                .iter()
                .map(|reason| keyword(reason))
                .collect(),
        };
        let formats = manners.formats.iter();
        let formats = formats.map(|mime| IppValue::new_mime_media_type(*mime).expect("a type"));
        vec![
            (
                "printer-state",
                IppValue::Enum(if manners.reasons.is_empty() { 3 } else { 5 }),
            ),
            ("printer-state-reasons", IppValue::Array(reasons)),
            ("printer-is-accepting-jobs", IppValue::Boolean(true)),
            ("printer-up-time", IppValue::Integer(self.up_time())),
            (
                "document-format-supported",
                IppValue::Array(formats.collect()),
            ),
            (
                "media-size-supported",
                IppValue::Array(manners.sizes.iter().map(size).collect()),
            ),
            (
                "printer-resolution-supported",
                IppValue::Resolution {
                    cross_feed: manners.dpi,
                    feed: manners.dpi,
                    units: 3,
                },
            ),
            (
                "operations-supported",
                IppValue::Array(
                    operations
                        .into_iter()
                        .map(|one| IppValue::Enum(one as i32))
                        .collect(),
                ),
            ),
        ]
    }
}

impl Job {
    fn print(&mut self, paper: &mut Vec<Sheet>) {
        (self.state, self.out) = (9, Some(1));
        paper.push(Sheet {
            token: self.name.clone(),
            document: self.document.clone(),
            format: self.format.clone(),
        });
    }

    fn described(&self) -> Vec<(&'static str, IppValue)> {
        let name = IppValue::new_name_without_language(&*self.name).expect("a name");
        let mut all = vec![
            ("job-id", IppValue::Integer(self.id)),
            ("job-name", name),
            ("job-state", IppValue::Enum(self.state)),
            ("time-at-creation", IppValue::Integer(self.created)),
        ];
        all.extend(
            self.out
                .map(|out| ("job-impressions-completed", IppValue::Integer(out))),
        );
        all
    }
}

fn add(response: &mut IppRequestResponse, group: DelimiterTag, name: &str, value: IppValue) {
    let attribute = IppAttribute::with_name(name, value).expect("a name");
    response.attributes_mut().add(group, attribute);
}
