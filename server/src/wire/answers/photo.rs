//! What was read in a photo, as the API answers it.

use crate::photo::codes::Code;
use serde::Serialize;
use utoipa::ToSchema;

/// What was read in a photo.
#[derive(Debug, Serialize, ToSchema)]
pub struct PhotoRead {
    /// The codes, the likeliest first; there is one at least.
    pub codes: Vec<PhotoCode>,
}

/// A code.
#[derive(Debug, Serialize, ToSchema)]
pub struct PhotoCode {
    /// What it holds, as `code` of a scan takes it.
    pub code: String,
    /// What it is: `qr`, `data-matrix`, `code-128`, `ean-13`, `ean-8`, `upc-a`.
    pub kind: String,
}

impl PhotoRead {
    /// Of codes.
    pub fn of(codes: Vec<Code>) -> PhotoRead {
        let codes = codes.into_iter().map(|code| PhotoCode {
            code: code.text,
            kind: code.kind.to_owned(),
        });
        PhotoRead {
            codes: codes.collect(),
        }
    }
}
