//! Starting the service, and what stands around every request.

use crate::app::App;
use crate::error::{Error, Problem};
use crate::printing::Printing;
use crate::problems::{RequestSays, TitleSays};
use crate::{log, pages, routes};
use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::{StatusCode, header};
use actix_web::middleware::{Next, from_fn};
use actix_web::{App as Actix, HttpServer, web};
use std::net::TcpListener;
use words::Speech;

/// Serves until the process is told to stop.
///
/// # Errors
/// The listener fails.
pub async fn run(app: App, listener: TcpListener, workers: usize) -> std::io::Result<()> {
    let app = web::Data::new(app);
    let printing = Printing::start(app.clone());
    let served = HttpServer::new(move || {
        Actix::new()
            .app_data(app.clone())
            .app_data(web::PayloadConfig::new(crate::body::LARGEST))
            .wrap(from_fn(guard))
            .wrap(from_fn(log::each))
            .configure(|config| routes::api().register(config))
            .configure(pages::register)
            .default_service(web::to(pages::nothing_here))
    })
    .workers(workers)
    .worker_max_blocking_threads(16)
    .shutdown_timeout(5)
    .listen(listener)?
    .run()
    .await;
    printing.stop();
    served
}

/// Whatever goes wrong outside our own handlers is answered with a problem document too.
async fn guard(
    request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> std::result::Result<ServiceResponse<impl MessageBody>, actix_web::Error> {
    let api = request.path().starts_with("/api");
    let app = request.app_data::<web::Data<App>>().cloned();
    let asked = crate::caller::language(request.request());
    let speech = app.map_or_else(Speech::default, |app| app.speech_lately(asked));
    let response = next.call(request).await?;
    let error = response.response().error();
    if let Some(problem) = error
        .and_then(|error| error.as_error::<Error>())
        .map(Error::problem)
        && api
    {
        let mut anew = crate::error::respond(&problem, &speech);
        if let Some(allow) = response.headers().get("allow") {
            anew.headers_mut().insert(header::ALLOW, allow.clone());
        }
        let (request, _) = response.into_parts();
        return Ok(ServiceResponse::new(request, anew.map_into_boxed_body()));
    }
    let status = response.status();
    let told = response
        .headers()
        .get("content-type")
        .is_some_and(|kind| kind.as_bytes().starts_with(b"application/problem"));
    if api && status.is_client_error() && !told {
        let problem = Problem::new(status, slug(status), title(status), RequestSays::Unreadable);
        let (request, _) = response.into_parts();
        return Ok(ServiceResponse::new(
            request,
            crate::error::respond(&problem, &speech).map_into_boxed_body(),
        ));
    }
    Ok(response.map_into_boxed_body())
}

fn title(status: StatusCode) -> TitleSays {
    match status {
        StatusCode::NOT_FOUND => TitleSays::NotFound,
        StatusCode::METHOD_NOT_ALLOWED => TitleSays::Method,
        StatusCode::PAYLOAD_TOO_LARGE => TitleSays::TooLarge,
        _ => TitleSays::Unreadable,
    }
}

fn slug(status: StatusCode) -> &'static str {
    match status {
        StatusCode::NOT_FOUND => "not-found",
        StatusCode::METHOD_NOT_ALLOWED => "method",
        StatusCode::PAYLOAD_TOO_LARGE => "too-large",
        _ => "unreadable",
    }
}
