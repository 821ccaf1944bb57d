//! What can go wrong, and how it is answered: RFC 9457 problem documents. HTTP comes last.

use crate::log::Refused;
use crate::problems::{ServiceSays, TitleSays};
use actix_web::http::{StatusCode, header};
use actix_web::{HttpResponse, ResponseError};
use domain::refusal::{Refusal, RefusalKind};
use domain::right::Right;
use domain::rows::Finding;
use domain::says::Says;
use serde::Serialize;
use store::db::MayRetry;
use words::{Language, Speech};

/// An error on its way out.
#[derive(Debug)]
pub enum Error {
    /// The domain does not take the deed.
    Refused(Refusal),
    /// The request is wrong before the domain is asked, or the record forbids it.
    Problem(Box<Problem>),
    /// The database.
    Store(store::Error),
}

/// A result of a request.
pub type Result<T> = std::result::Result<T, Error>;

/// What is wrong, not yet in anybody's language.
#[derive(Debug, Clone)]
pub struct Problem {
    /// What sort of problem: `not-enough`.
    pub slug: String,
    /// The sort, in words.
    pub title: Says,
    /// The HTTP status.
    pub status: StatusCode,
    /// What is wrong here, and what would do.
    pub detail: Says,
    /// The field at fault: `inputs[0].grams`.
    pub field: Option<String>,
    /// For a void: the deeds that stand in the way, newest first.
    pub in_the_way: Vec<Blocker>,
    /// For a limit, a stop or a label: the rows that it breaks.
    pub rows: Vec<String>,
    /// May it be recorded all the same, as it happened, where it was done?
    pub may_be_told: bool,
    /// The right that is missing.
    pub right: Option<Right>,
    /// In how many seconds the same may do.
    pub again_in: Option<usize>,
}

/// In how many seconds a service that cannot answer may be asked again.
const SOON: usize = 2;

/// A problem document.
#[derive(Debug, Clone, Serialize, utoipa::ToSchema)]
#[schema(as = Problem)]
pub struct ProblemRead {
    /// What sort of problem: `/problems/not-enough`.
    #[serde(rename = "type")]
    pub kind: String,
    /// The sort, in words.
    pub title: String,
    /// The HTTP status.
    pub status: u16,
    /// What is wrong here, and what would do, in the caller's language.
    pub detail: String,
    /// The key of `detail`: it is the same in every language.
    pub key: String,
    /// The field at fault: `inputs[0].grams`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<String>,
    /// For a void: the deeds that stand in the way, newest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub in_the_way: Vec<Blocker>,
    /// For a limit, a stop or a label: the rows that it breaks.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub rows: Vec<String>,
    /// If it was done all the same: the same request with `as_it_happened` and a note is taken.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub may_be_told: bool,
    /// The right that is missing: `lift`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Option<String>,
}

impl ProblemRead {
    /// A problem as a caller reads it.
    pub fn new(problem: &Problem, speech: &Speech) -> ProblemRead {
        ProblemRead {
            kind: format!("/problems/{}", problem.slug),
            title: speech.say(&problem.title),
            status: problem.status.as_u16(),
            detail: speech.say(&problem.detail),
            key: problem.detail.key().to_owned(),
            field: problem.field.clone(),
            in_the_way: problem.in_the_way.clone(),
            rows: problem.rows.clone(),
            may_be_told: problem.may_be_told,
            right: problem.right.map(|right| right.to_string()),
        }
    }
}

/// A deed that stands in the way of a void.
#[derive(Debug, Clone, Serialize, utoipa::ToSchema)]
pub struct Blocker {
    /// The deed's id.
    pub id: String,
    /// What it was.
    pub kind: String,
    /// When it ended.
    pub at: String,
    /// All of that in words, with who did it.
    pub says: String,
}

impl Problem {
    /// A problem of a sort.
    pub fn new(
        status: StatusCode,
        slug: &str,
        title: impl Into<Says>,
        detail: impl Into<Says>,
    ) -> Problem {
        Problem {
            slug: slug.to_owned(),
            title: title.into(),
            status,
            detail: detail.into(),
            field: None,
            in_the_way: Vec::new(),
            rows: Vec::new(),
            may_be_told: false,
            right: None,
            again_in: (status == StatusCode::SERVICE_UNAVAILABLE).then_some(SOON),
        }
    }

    /// The same, about a field.
    pub fn at(mut self, field: impl Into<String>) -> Problem {
        self.field = Some(field.into());
        self
    }
}

impl Error {
    /// 422: a value that cannot be.
    pub fn cannot_be(field: impl Into<String>, detail: impl Into<Says>) -> Error {
        Refusal::cannot_be(field, detail).into()
    }

    /// 409: a label that is not made, with a title and the reason.
    pub fn label_refused(title: impl Into<Says>, detail: impl Into<Says>) -> Error {
        Problem::new(StatusCode::CONFLICT, "label-refused", title, detail).into()
    }

    /// 409: the label is refused by a rule, whose rows it names.
    pub fn label_against(title: impl Into<Says>, detail: impl Into<Says>, of: &Finding) -> Error {
        Problem {
            rows: of.rows.iter().map(ToString::to_string).collect(),
            ..Problem::new(StatusCode::CONFLICT, "label-refused", title, detail)
        }
        .into()
    }

    /// 404: nothing by that name.
    pub fn not_found(detail: impl Into<Says>) -> Error {
        let title = TitleSays::NotFound;
        Problem::new(StatusCode::NOT_FOUND, "not-found", title, detail).into()
    }

    /// 409: it contradicts what is on record.
    pub fn clash(field: impl Into<String>, detail: impl Into<Says>) -> Error {
        Refusal::new(RefusalKind::Clash, field, detail).into()
    }

    /// The problem document of this error. Details of the database stay in the log.
    pub fn problem(&self) -> Problem {
        match self {
            Error::Problem(problem) => (**problem).clone(),
            Error::Refused(refusal) => {
                let (status, slug, title) = of_refusal(refusal.kind);
                Problem {
                    field: refusal.field.clone(),
                    rows: refusal.rows.iter().map(ToString::to_string).collect(),
                    may_be_told: refusal.kind.may_be_told(),
                    ..Problem::new(status, slug, title, refusal.detail.clone())
                }
            }
            Error::Store(error) => of_store(error),
        }
    }
}

fn of_refusal(kind: RefusalKind) -> (StatusCode, &'static str, TitleSays) {
    use RefusalKind::*;
    let conflict = |slug, title| (StatusCode::CONFLICT, slug, title);
    match kind {
        CannotBe => (
            StatusCode::UNPROCESSABLE_ENTITY,
            "cannot-be",
            TitleSays::CannotBe,
        ),
        NeverIssued => (
            StatusCode::NOT_FOUND,
            "never-issued",
            TitleSays::NeverIssued,
        ),
        NotEnough => conflict("not-enough", TitleSays::NotEnough),
        Voided => conflict("voided", TitleSays::Voided),
        InTheWay => conflict("in-the-way", TitleSays::InTheWay),
        Clash => conflict("clash", TitleSays::Clash),
        Missing => conflict("missing", TitleSays::Missing),
        NotReleased | NotReady => conflict("not-released", TitleSays::NotReleased),
        Limit => (StatusCode::UNPROCESSABLE_ENTITY, "limit", TitleSays::Limit),
        Stopped => conflict("stopped", TitleSays::Stopped),
        Held => conflict("held", TitleSays::Held),
    }
}

fn of_store(error: &store::Error) -> Problem {
    let busy = |slug: &str, title: TitleSays, detail: ServiceSays| {
        Problem::new(StatusCode::SERVICE_UNAVAILABLE, slug, title, detail)
    };
    match error {
        store::Error::Full(_) => busy(
            "database-full",
            TitleSays::DatabaseFull,
            ServiceSays::DatabaseFull,
        ),
        store::Error::Broken(_) => Problem::new(
            StatusCode::INTERNAL_SERVER_ERROR,
            "damaged",
            TitleSays::Damaged,
            ServiceSays::Damaged,
        ),
        store::Error::Disk(_) => busy(
            "database-disk",
            TitleSays::DatabaseDisk,
            ServiceSays::DatabaseDisk,
        ),
        store::Error::ReadOnly(_) => busy(
            "database-read-only",
            TitleSays::DatabaseReadOnly,
            ServiceSays::DatabaseReadOnly,
        ),
        store::Error::Gone(_) => busy(
            "database-gone",
            TitleSays::DatabaseGone,
            ServiceSays::DatabaseGone,
        ),
        store::Error::Damaged(_) => {
            busy("database-damaged", TitleSays::Damaged, ServiceSays::Damaged)
        }
        store::Error::Locked(_) => busy(
            "database-locked",
            TitleSays::DatabaseLocked,
            ServiceSays::DatabaseLocked,
        ),
        store::Error::Emptied(_) => busy(
            "database-emptied",
            TitleSays::DatabaseEmptied,
            ServiceSays::DatabaseEmptied,
        ),
        _ => busy(
            "database-away",
            TitleSays::DatabaseAway,
            ServiceSays::DatabaseAway,
        ),
    }
}

impl From<Refusal> for Error {
    fn from(refusal: Refusal) -> Error {
        Error::Refused(refusal)
    }
}

impl From<Problem> for Error {
    fn from(problem: Problem) -> Error {
        Error::Problem(Box::new(problem))
    }
}

impl From<store::Error> for Error {
    fn from(error: store::Error) -> Error {
        Error::Store(error)
    }
}

impl MayRetry for Error {
    fn is_conflict(&self) -> bool {
        matches!(self, Error::Store(error) if error.is_conflict())
    }

    fn of_store(&self) -> Option<&store::Error> {
        match self {
            Error::Store(error) => Some(error),
            _ => None,
        }
    }
}

impl std::fmt::Display for Error {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let speech = Speech::in_language(Language::English);
        let problem = ProblemRead::new(&self.problem(), &speech);
        match &problem.field {
            Some(field) => write!(f, "{}: {field}: {}", problem.title, problem.detail),
            None => write!(f, "{}: {}", problem.title, problem.detail),
        }
    }
}

impl std::error::Error for Error {}

impl ResponseError for Error {
    fn status_code(&self) -> StatusCode {
        self.problem().status
    }

    fn error_response(&self) -> HttpResponse {
        if let Error::Store(error) = self {
            tracing::error!("{error}");
        }
        // In English: whoever asked for another language is answered anew at the door.
        respond(&self.problem(), &Speech::in_language(Language::English))
    }
}

/// A problem document as a response.
pub fn respond(problem: &Problem, speech: &Speech) -> HttpResponse {
    let status = problem.status;
    let mut response = HttpResponse::build(status);
    if let Some(seconds) = problem.again_in {
        response.insert_header((header::RETRY_AFTER, seconds.to_string()));
    }
    let body = serde_json::to_string(&ProblemRead::new(problem, speech)).unwrap_or_default();
    let mut response = response.content_type("application/problem+json").body(body);
    response.extensions_mut().insert(Refused::from(problem));
    response
}
