//! The log: plain lines on standard error, one for each request. No body and no query stands in it.

mod lines;

pub use lines::LogGuard;

use crate::error::Problem;
use crate::world::Stopwatch;
use actix_web::Error;
use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::middleware::Next;
use domain::words::DeedKind;
use tracing::level_filters::LevelFilter;
use tracing::{info, warn};
use tracing_subscriber::filter::Targets;
use tracing_subscriber::layer::SubscriberExt;
use tracing_subscriber::util::SubscriberInitExt;
use uuid::Uuid;

/// How much is logged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum, serde::Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// Nothing.
    Off,
    /// What is broken.
    Error,
    /// Refusals too.
    Warn,
    /// Every request.
    Info,
    /// What the libraries say besides.
    Debug,
}

/// Begins the log. It goes on until what comes back is dropped.
///
/// # Errors
/// In words: there is one already, or no thread for it.
pub fn start(level: Level) -> Result<LogGuard, String> {
    let (ours, others) = match level {
        Level::Off => (LevelFilter::OFF, LevelFilter::OFF),
        Level::Error => (LevelFilter::ERROR, LevelFilter::ERROR),
        Level::Warn => (LevelFilter::WARN, LevelFilter::WARN),
        Level::Info => (LevelFilter::INFO, LevelFilter::WARN),
        Level::Debug => (LevelFilter::DEBUG, LevelFilter::DEBUG),
    };
    let (lines, kept) =
        lines::open().map_err(|error| format!("the log cannot be written: {error}"))?;
    tracing_subscriber::fmt()
        .with_max_level(ours.max(others))
        .with_ansi(false)
        .with_target(false)
        .with_writer(lines)
        .finish()
        .with(
            Targets::new()
                .with_default(others)
                .with_target("gambrel", ours),
        )
        .try_init()
        .map_err(|error| error.to_string())?;
    Ok(kept)
}

/// What an answer says of a deed, for the log.
#[derive(Debug, Clone, Copy)]
pub struct LoggedDeed {
    /// Its id.
    pub id: Uuid,
    /// What it is.
    pub kind: DeedKind,
    /// Was it recorded just now, or before?
    pub fresh: bool,
}

/// What an answer says of a refusal, for the log.
#[derive(Debug, Clone)]
pub struct Refused {
    slug: String,
    field: Option<String>,
}

impl From<&Problem> for Refused {
    fn from(problem: &Problem) -> Refused {
        Refused {
            slug: problem.slug.clone(),
            field: problem.field.clone(),
        }
    }
}

/// One line for each request, once its answer is known.
pub async fn each(
    request: ServiceRequest,
    next: Next<impl MessageBody>,
) -> Result<ServiceResponse<impl MessageBody>, Error> {
    let watch = Stopwatch::start();
    let response = next.call(request).await?;
    let ms = format_args!("{:.1}", watch.milliseconds()).to_string();
    let (method, path) = (response.request().method(), response.request().path());
    let status = response.status().as_u16();
    let extensions = response.response().extensions();
    let deed = extensions.get::<LoggedDeed>();
    match extensions.get::<Refused>() {
        // The field is quoted: parts of it may be the caller's.
        Some(Refused { slug, field }) => {
            warn!(%method, path, status, %ms, problem = %slug, field = field.as_deref(), "refused");
        }
        None => info!(
            %method, path, status, %ms,
            deed = deed.map(|deed| tracing::field::display(deed.id)),
            kind = deed.map(|deed| deed.kind.as_str()),
            new = deed.map(|deed| deed.fresh),
            "answered"
        ),
    }
    drop(extensions);
    Ok(response)
}
