//! The line to a printer: one question, one answer of a bounded length, in a bounded time. It goes to the
//! address that was configured and nowhere else: a printer that sends us on is not followed.

use super::address::PrinterAddress;
use super::client::Failure;
use super::pinned::{Pinned, Seen};
use ipp::parser::IppParser;
use ipp::prelude::{IppRequestResponse, Uri};
use std::io::{ErrorKind, Read};
use std::panic::AssertUnwindSafe;
use std::sync::Arc;
use std::time::Duration;
use ureq::unversioned::resolver::DefaultResolver;
use ureq::unversioned::transport::{Connector, TcpConnector};
use ureq::{Agent, SendBody};

/// How long it may take until somebody listens.
const CONNECT: Duration = Duration::from_secs(3);
/// The most that a printer's answer may hold, in bytes.
const LONGEST: u64 = 64 << 10;
/// The port where none is named (RFC 8010 4).
const PORT: u16 = 631;

/// Sends a question and reads the answer.
///
/// # Errors
/// There is none, or none that can be read.
pub fn ask(
    address: &PrinterAddress,
    question: IppRequestResponse,
    limit: Duration,
) -> Result<IppRequestResponse, Failure> {
    let config = Agent::config_builder()
        .timeout_connect(Some(CONNECT))
        .timeout_global(Some(limit))
        .max_redirects(0)
        .max_redirects_will_error(false)
        .http_status_as_error(false)
        .max_response_header_size(LONGEST as usize)
        .user_agent("gambrel")
        // Whatever the machine's environment says: a printer is on the kitchen's own network.
        .proxy(None)
        .build();
    let seen = Arc::new(Seen::default());
    let agent: Agent = match address.is_encrypted() {
        false => config.into(),
        true => {
            let pinned = Pinned {
                pin: address.certificate(),
                seen: seen.clone(),
            };
            let line = TcpConnector::default().chain(pinned);
            Agent::with_parts(config, line, DefaultResolver::default())
        }
    };
    let mut question = question.into_read();
    let sent = agent
        .post(http(address.uri(), address.is_encrypted()))
        .header("content-type", "application/ipp")
        .send(SendBody::from_reader(&mut question));
    let answer = sent.map_err(|error| match seen.certificate() {
        Some(seen) if address.certificate() != Some(seen) => Failure::Stranger {
            seen,
            pinned: address.certificate(),
        },
        _ if address.is_encrypted() && !seen.was_open() => Failure::Unreached(error.to_string()),
        _ => failure(&error),
    })?;
    let status = answer.status().as_u16();
    match status {
        200..=299 => {}
        // The web server in front of the printer turned the question away, unread.
        300..=499 => return Err(Failure::Unreached(format!("HTTP status {status}"))),
        _ => return Err(Failure::Lost(format!("HTTP status {status}"))),
    }
    let mut body = Vec::new();
    let mut reader = answer.into_body().into_reader().take(LONGEST + 1);
    let read = reader.read_to_end(&mut body);
    read.map_err(|error| Failure::Lost(error.to_string()))?;
    if body.len() as u64 > LONGEST {
        return Err(Failure::Lost("its answer is longer than 64 KB".into()));
    }
    read_answer(&body)
}

/// Reads what a printer sent.
///
/// # Errors
/// It is no answer of IPP.
pub fn read_answer(body: &[u8]) -> Result<IppRequestResponse, Failure> {
    let parser = IppParser::new(std::io::Cursor::new(body.to_vec()));
    // The library trusts the lengths that stand in an answer, and panics where one leads out of it.
    let read = std::panic::catch_unwind(AssertUnwindSafe(|| parser.parse()));
    let read = read.map_err(|_| Failure::Lost("its answer is no answer of IPP".into()))?;
    read.map_err(|error| Failure::Lost(error.to_string()))
}

/// Where HTTP goes for an address of IPP.
fn http(address: &Uri, encrypted: bool) -> String {
    let scheme = if encrypted { "https" } else { "http" };
    let host = address.host().unwrap_or_default();
    let port = address.port_u16().unwrap_or(PORT);
    let path = address.path_and_query().map_or("/", |path| path.as_str());
    format!("{scheme}://{host}:{port}{path}")
}

/// How far a question got that had no answer.
fn failure(error: &ureq::Error) -> Failure {
    let words = error.to_string();
    match error {
        ureq::Error::HostNotFound
        | ureq::Error::ConnectionFailed
        | ureq::Error::Timeout(ureq::Timeout::Resolve | ureq::Timeout::Connect) => {
            Failure::Unreached(words)
        }
        ureq::Error::Io(io) => match io.kind() {
            ErrorKind::ConnectionRefused
            | ErrorKind::HostUnreachable
            | ErrorKind::NetworkUnreachable
            | ErrorKind::AddrNotAvailable => Failure::Unreached(words),
            _ => Failure::Lost(words),
        },
        _ => Failure::Lost(words),
    }
}
