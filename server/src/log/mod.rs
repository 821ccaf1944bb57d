//! The log: plain lines on standard error, one for each request. No body and no query stands in it.

mod lines;

pub use lines::LogGuard;

use crate::body::Received;
use crate::error::Problem;
use crate::metrics::{self, Answered};
use crate::who::Who;
use crate::world::Stopwatch;
use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::middleware::Next;
use actix_web::{Error, HttpMessage};
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

/// One line for each request, once its answer is known: no body, no query and no secret stands in it.
pub async fn each(
    request: ServiceRequest,
    next: Next<impl MessageBody>,
) -> Result<ServiceResponse<impl MessageBody>, Error> {
    let watch = Stopwatch::start();
    let method = request.method().clone();
    let response = next.call(request).await?;
    let took = watch.elapsed();
    let ms = format_args!("{:.1}", took.as_secs_f64() * 1e3).to_string();
    let route = response.request().match_pattern();
    let (route, path) = (route.as_deref(), response.request().path());
    let status = response.status().as_u16();
    let extensions = response.response().extensions();
    let deed = extensions.get::<LoggedDeed>();
    let refused = extensions.get::<Refused>();
    metrics::count(&Answered {
        method: method.as_str(),
        route,
        status,
        took,
        problem: refused.map(|refused| refused.slug.as_str()),
        deed: deed
            .filter(|deed| deed.fresh)
            .map(|deed| deed.kind.as_str()),
    });
    let brought = response.request().extensions();
    let person = brought.get::<Who>().filter(|who| !who.is_nobody());
    let person = person.map(|who| who.name.as_str());
    match refused {
        // The field is quoted: parts of it may be the caller's.
        Some(Refused { slug, field }) => {
            let id = brought.get::<Received>().and_then(Received::id);
            warn!(
                %method, path, status, %ms, route, problem = %slug, field = field.as_deref(),
                deed = id.map(tracing::field::display), person, "refused"
            );
        }
        None => info!(
            %method, path, status, %ms, route,
            deed = deed.map(|deed| tracing::field::display(deed.id)),
            kind = deed.map(|deed| deed.kind.as_str()),
            new = deed.map(|deed| deed.fresh),
            person,
            "answered"
        ),
    }
    drop(brought);
    drop(extensions);
    Ok(response)
}
