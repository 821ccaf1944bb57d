//! What a deed had been asked, with what is known to be right of it.

use crate::error::Result;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use store::corrections::CorrectionRow;
use store::deeds::DeedRow;

/// The fields of a JSON object as the record keeps it.
///
/// # Errors
/// The record is damaged.
pub fn fields(text: &str) -> Result<Map<String, Value>> {
    serde_json::from_str(text).map_err(|error| crate::app::damaged(&error))
}

/// What a deed asked, with the fields that were corrected since.
///
/// # Errors
/// The record is damaged.
pub fn effective(deed: &DeedRow, corrections: &[CorrectionRow]) -> Result<Map<String, Value>> {
    let mut asked = fields(&deed.request)?;
    for correction in corrections.iter().filter(|of| of.deed_id == deed.id) {
        for (field, value) in fields(&correction.now)? {
            match value.is_null() {
                true => asked.remove(&field),
                false => asked.insert(field, value),
            };
        }
    }
    Ok(asked)
}

/// The same, as the call reads it.
///
/// # Errors
/// The record is damaged.
pub fn request<T: DeserializeOwned>(asked: &Map<String, Value>) -> Result<T> {
    // Read from text, as it came: numbers are decimals there.
    let text = Value::Object(asked.clone()).to_string();
    serde_json::from_str(&text).map_err(|error| crate::app::damaged(&error))
}
