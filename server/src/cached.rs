//! What is read once and never changes, by its key.

use crate::error::Result;
use std::collections::HashMap;
use std::sync::{Arc, PoisonError, RwLock};

/// What is known of a key; loaded if nobody has asked before.
///
/// # Errors
/// Whatever `load` says.
pub fn cached<T>(
    cache: &RwLock<HashMap<i32, Arc<T>>>,
    key: i32,
    load: impl FnOnce() -> Result<T>,
) -> Result<Arc<T>> {
    if let Some(known) = cache
        .read()
        .unwrap_or_else(PoisonError::into_inner)
        .get(&key)
    {
        return Ok(known.clone());
    }
    let loaded = Arc::new(load()?);
    cache
        .write()
        .unwrap_or_else(PoisonError::into_inner)
        .insert(key, loaded.clone());
    Ok(loaded)
}
