//! Looking up what the record says.

use crate::Caller;
use serde_json::Value;

impl Caller {
    /// What is at that address.
    ///
    /// # Panics
    /// Nothing is.
    #[track_caller]
    pub fn read(&self, path: &str) -> Value {
        self.get(path).expect(200).body
    }

    /// A lot in full.
    #[track_caller]
    pub fn lot(&self, code: &str) -> Value {
        self.read(&format!("/api/lots/{code}"))
    }

    /// Where it came from.
    #[track_caller]
    pub fn origins(&self, code: &str) -> Value {
        self.read(&format!("/api/lots/{code}/origins"))
    }

    /// Where it went.
    #[track_caller]
    pub fn descendants(&self, code: &str) -> Value {
        self.read(&format!("/api/lots/{code}/descendants"))
    }

    /// Why its date, its cure and its release are as they are.
    #[track_caller]
    pub fn why(&self, code: &str) -> Value {
        self.read(&format!("/api/lots/{code}/why"))
    }

    /// Any deed on record.
    #[track_caller]
    pub fn deed_on_record(&self, id: &str) -> Value {
        self.read(&format!("/api/steps/{id}"))
    }

    /// What a scan says: `sell`, `pull` …
    #[track_caller]
    pub fn verdict(&self, code: &str) -> Value {
        self.read(&format!("/api/scan?code={code}"))["verdict"].clone()
    }
}
