//! Talking to a printer by IPP (RFC 8010, 8011). Every question has a time limit, and every failure
//! says how far the question may have got.

use super::address::PrinterAddress;
use super::capabilities::Capabilities;
use super::fingerprint::Fingerprint;
use super::format::Format;
use super::job::PrinterJob;
use super::values::first_number;
use ipp::prelude::*;
use std::io::Cursor;
use std::time::Duration;

/// For questions: a printer on the same network answers in much less.
const QUICK: Duration = Duration::from_secs(4);
/// For documents: a label is small, but so are the printers that read it.
const PATIENT: Duration = Duration::from_secs(30);

/// Why there is no good answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Failure {
    /// Nothing of the question arrived: nobody listens there.
    Unreached(String),
    /// It may have arrived, and no answer that can be read came back.
    Lost(String),
    /// Somebody answered with a certificate that is not the printer's: nothing was sent.
    Stranger {
        /// What was shown.
        seen: Fingerprint,
        /// What the printer is known by, if a manager has said so.
        pinned: Option<Fingerprint>,
    },
    /// The printer said no.
    Said {
        /// With this status (RFC 8011 appendix B).
        status: u16,
        /// And these words.
        words: String,
    },
}

/// What a printer's no means for a label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum No {
    /// Not now.
    Later,
    /// It has all of this job that it will take.
    FilledAlready,
    /// It knows no such job.
    NoSuchJob,
    /// Never.
    Never,
}

impl Failure {
    /// What a status means.
    pub fn no(status: u16) -> No {
        match status {
            // internal-error, service-unavailable, device-error, temporary-error,
            // not-accepting-jobs, busy, job-canceled; client-error-timeout.
            0x0500 | 0x0502 | 0x0504..=0x0508 | 0x0405 => No::Later,
            // not-possible; multiple-document-jobs-not-supported.
            0x0404 | 0x0509 => No::FilledAlready,
            // not-found, gone.
            0x0406 | 0x0407 => No::NoSuchJob,
            _ => No::Never,
        }
    }
}

impl std::fmt::Display for Failure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Failure::Unreached(words) | Failure::Lost(words) => f.write_str(words),
            Failure::Stranger { seen, .. } => write!(f, "another certificate: {seen}"),
            Failure::Said { words, .. } => f.write_str(words),
        }
    }
}

/// A printer to talk to.
pub struct Client<'a> {
    address: &'a PrinterAddress,
}

/// How a label is to be printed.
#[derive(Debug, Clone, Copy)]
pub struct Ticket<'a> {
    /// The job's name.
    pub name: &'a str,
    /// Who asked for it.
    pub person: &'a str,
    /// The printer's own measure of the label, in hundredths of a millimetre.
    pub size: (i32, i32),
    /// What the printer can do.
    pub capabilities: &'a Capabilities,
}

type Attributes = Vec<(DelimiterTag, IppAttribute)>;
type Answered<T> = Result<T, Failure>;

impl<'a> Client<'a> {
    /// A printer at an address.
    pub fn new(address: &'a PrinterAddress) -> Client<'a> {
        Client { address }
    }

    /// What it says of itself.
    ///
    /// # Errors
    /// It does not answer, or not as printers do.
    pub fn capabilities(&self) -> Answered<Capabilities> {
        let asked = vec![(
            DelimiterTag::OperationAttributes,
            keywords("requested-attributes", &Capabilities::ASKED)?,
        )];
        let answer = self.ask(Operation::GetPrinterAttributes, asked, None)?;
        let group = answer
            .attributes()
            .first_of(DelimiterTag::PrinterAttributes);
        let group = group.ok_or_else(|| Failure::Lost("it says nothing of itself".into()))?;
        Ok(Capabilities::read(group))
    }

    /// Makes a job that holds nothing yet, and prints nothing while it is so.
    ///
    /// # Errors
    /// None was made, or the answer was lost.
    pub fn create_job(&self, ticket: Ticket<'_>) -> Answered<i32> {
        let mut attributes = ticket.operation()?;
        attributes.extend(ticket.job()?);
        job_id(&self.ask(Operation::CreateJob, attributes, None)?)
    }

    /// Fills a job with its one document.
    ///
    /// # Errors
    /// It did not take it, or the answer was lost.
    pub fn send_document(
        &self,
        job: i32,
        person: &str,
        format: Format,
        document: Vec<u8>,
    ) -> Answered<()> {
        let operation = |attribute| (DelimiterTag::OperationAttributes, attribute);
        let attributes = vec![
            operation(named("job-id", IppValue::Integer(job))?),
            operation(user(person)?),
            operation(mime(format)?),
            operation(named("last-document", IppValue::Boolean(true))?),
        ];
        self.ask(Operation::SendDocument, attributes, Some(document))
            .map(|_| ())
    }

    /// Makes and fills a job at once, for printers that know no other way.
    ///
    /// # Errors
    /// It did not take it, or the answer was lost.
    pub fn print_job(
        &self,
        ticket: Ticket<'_>,
        format: Format,
        document: Vec<u8>,
    ) -> Answered<i32> {
        let mut attributes = ticket.operation()?;
        attributes.push((DelimiterTag::OperationAttributes, mime(format)?));
        attributes.extend(ticket.job()?);
        job_id(&self.ask(Operation::PrintJob, attributes, Some(document))?)
    }

    /// How a job stands.
    ///
    /// # Errors
    /// It knows no such job, or does not answer.
    pub fn job(&self, id: i32) -> Answered<PrinterJob> {
        let asked = vec![
            (
                DelimiterTag::OperationAttributes,
                named("job-id", IppValue::Integer(id))?,
            ),
            (
                DelimiterTag::OperationAttributes,
                keywords("requested-attributes", &PrinterJob::ASKED)?,
            ),
        ];
        let answer = self.ask(Operation::GetJobAttributes, asked, None)?;
        let group = answer.attributes().first_of(DelimiterTag::JobAttributes);
        group
            .and_then(PrinterJob::read)
            .ok_or_else(|| Failure::Lost("it tells no state of the label".into()))
    }

    /// All jobs that it knows: those under way, then those that have ended.
    ///
    /// # Errors
    /// It makes no such list, or does not answer.
    pub fn jobs(&self) -> Answered<Vec<PrinterJob>> {
        let mut jobs = Vec::new();
        for which in ["not-completed", "completed"] {
            let asked = vec![
                (
                    DelimiterTag::OperationAttributes,
                    keywords("which-jobs", &[which])?,
                ),
                (
                    DelimiterTag::OperationAttributes,
                    keywords("requested-attributes", &PrinterJob::ASKED)?,
                ),
            ];
            let answer = self.ask(Operation::GetJobs, asked, None)?;
            let groups = answer.attributes().groups_of(DelimiterTag::JobAttributes);
            jobs.extend(groups.filter_map(PrinterJob::read));
        }
        Ok(jobs)
    }

    /// Takes a job back, as far as it can be.
    ///
    /// # Errors
    /// It had ended, or it does not answer.
    pub fn cancel(&self, id: i32) -> Answered<()> {
        let asked = vec![(
            DelimiterTag::OperationAttributes,
            named("job-id", IppValue::Integer(id))?,
        )];
        self.ask(Operation::CancelJob, asked, None).map(|_| ())
    }

    fn ask(
        &self,
        operation: Operation,
        attributes: Attributes,
        document: Option<Vec<u8>>,
    ) -> Answered<IppRequestResponse> {
        let uri = self.address.uri().clone();
        let request = IppRequestResponse::new(IppVersion::v1_1(), operation, Some(uri));
        let mut request = request.map_err(|error| Failure::Unreached(error.to_string()))?;
        for (group, attribute) in attributes {
            request.attributes_mut().add(group, attribute);
        }
        let limit = match document {
            Some(_) => PATIENT,
            None => QUICK,
        };
        if let Some(document) = document {
            *request.payload_mut() = IppPayload::new(Cursor::new(document));
        }
        let answer = super::line::ask(self.address, request, limit)?;
        let status = answer.header().operation_or_status.cast_unsigned();
        if status <= 0x00ff {
            return Ok(answer);
        }
        let told = answer
            .attributes()
            .first_of(DelimiterTag::OperationAttributes)
            .map(|group| super::values::texts(group, "status-message"))
            .and_then(|texts| texts.into_iter().find(|text| !text.is_empty()));
        let words = told.unwrap_or_else(|| answer.header().status_code().to_string());
        Err(Failure::Said { status, words })
    }
}

impl Ticket<'_> {
    fn operation(&self) -> Answered<Attributes> {
        let name = IppValue::new_name_without_language(self.name).map_err(unspeakable)?;
        let all = [
            user(self.person)?,
            named("job-name", name)?,
            // Rather no label than another one: sizes are not to be substituted.
            named("ipp-attribute-fidelity", IppValue::Boolean(true))?,
        ];
        Ok(all
            .map(|one| (DelimiterTag::OperationAttributes, one))
            .into())
    }

    fn job(&self) -> Answered<Attributes> {
        let known = &self.capabilities.media_members;
        let mut members = vec![(
            "media-size",
            collection(vec![
                ("x-dimension", IppValue::Integer(self.size.0)),
                ("y-dimension", IppValue::Integer(self.size.1)),
            ])?,
        )];
        for margin in [
            "media-bottom-margin",
            "media-left-margin",
            "media-right-margin",
            "media-top-margin",
        ] {
            if known.is_empty() || known.iter().any(|name| name == margin) {
                members.push((margin, IppValue::Integer(0)));
            }
        }
        let mut all = vec![named("media-col", collection(members)?)?];
        if self.capabilities.scales_none {
            all.push(keywords("print-scaling", &["none"])?);
        }
        Ok(all
            .into_iter()
            .map(|one| (DelimiterTag::JobAttributes, one))
            .collect())
    }
}

fn job_id(answer: &IppRequestResponse) -> Answered<i32> {
    let group = answer.attributes().first_of(DelimiterTag::JobAttributes);
    group
        .and_then(|group| first_number(group, "job-id"))
        .ok_or_else(|| Failure::Lost("it took the label and gave it no number".into()))
}

fn named(name: &str, value: IppValue) -> Answered<IppAttribute> {
    IppAttribute::with_name(name, value).map_err(unspeakable)
}

fn user(person: &str) -> Answered<IppAttribute> {
    let name = IppValue::new_name_without_language(person).map_err(unspeakable)?;
    named("requesting-user-name", name)
}

fn mime(format: Format) -> Answered<IppAttribute> {
    let value = IppValue::new_mime_media_type(format.mime()).map_err(unspeakable)?;
    named("document-format", value)
}

fn keywords(name: &str, words: &[&str]) -> Answered<IppAttribute> {
    let values = words.iter().map(|word| IppValue::new_keyword(*word));
    let values: Vec<IppValue> = values.collect::<Result<_, _>>().map_err(unspeakable)?;
    named(name, IppValue::Array(values))
}

fn collection(members: Vec<(&str, IppValue)>) -> Answered<IppValue> {
    let members = members
        .into_iter()
        .map(|(name, value)| Ok((name.try_into().map_err(unspeakable)?, value)));
    Ok(IppValue::Collection(members.collect::<Answered<_>>()?))
}

/// A value that cannot be written in IPP: nothing was sent.
fn unspeakable(error: impl std::fmt::Display) -> Failure {
    Failure::Unreached(error.to_string())
}
