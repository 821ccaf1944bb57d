//! The deeds that need only a line each: a sale, a move, a reading, a count, a void, a correction.

use super::{Draft, Told};
use serde_json::{Value, json};

/// Such a deed.
#[derive(Clone)]
pub struct Deed(pub(super) Draft);

impl Told for Deed {
    fn draft(&mut self) -> &mut Draft {
        &mut self.0
    }
}

impl Deed {
    /// For that reason.
    pub fn why(self, text: &str) -> Deed {
        self.with("why", text)
    }

    /// One pack of the lot.
    pub fn pack(self, pack: impl Into<Value>) -> Deed {
        self.with("pack", pack)
    }

    /// Into the frost.
    pub fn frozen(self) -> Deed {
        self.with("state", "frozen")
    }

    /// That pack is not there.
    pub fn missing(self, pack: impl Into<Value>) -> Deed {
        self.with("packs", json!([{ "pack": pack.into(), "missing": true }]))
    }
}
