//! Waiting for the database, off the workers that answer the network.

use crate::error::{Error, Result};
use actix_web::web;

/// Runs something that may wait for the database, off the workers that answer the network.
///
/// # Errors
/// Whatever `f` says.
pub async fn blocking<T: Send + 'static>(
    f: impl FnOnce() -> Result<T> + Send + 'static,
) -> Result<T> {
    web::block(f)
        .await
        .map_err(|_| Error::from(store::Error::Away("the request was dropped".into())))?
}
