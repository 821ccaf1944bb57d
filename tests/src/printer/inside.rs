//! What the printer for stories does with each question.

use super::{Manners, Sheet};
use ipp::attribute::{IppAttribute, IppAttributeGroup};
use ipp::model::{DelimiterTag, IppVersion, Operation, StatusCode};
use ipp::request::IppRequestResponse;
use ipp::value::IppValue;
use std::io::Read;
use std::time::Instant;

/// A job that the printer knows.
#[derive(Debug, Clone)]
pub(super) struct Job {
    pub(super) id: i32,
    pub(super) name: String,
    pub(super) state: i32,
    pub(super) out: Option<i32>,
    pub(super) filled: bool,
    pub(super) created: i32,
    pub(super) document: Vec<u8>,
    pub(super) format: String,
}

/// All that is in the printer.
pub(super) struct Inside {
    pub(super) manners: Manners,
    pub(super) jobs: Vec<Job>,
    pub(super) next: i32,
    pub(super) started: Instant,
    pub(super) paper: Vec<Sheet>,
    pub(super) asked: Vec<Operation>,
}

impl Inside {
    /// Acts on a question; the answer.
    pub(super) fn act(
        &mut self,
        operation: Operation,
        request: IppRequestResponse,
    ) -> IppRequestResponse {
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
                    let mut group = IppAttributeGroup::new(DelimiterTag::JobAttributes);
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
    pub(super) fn print(&mut self, paper: &mut Vec<Sheet>) {
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
