//! A kitchen's day in few words: deeds are asked as they are spoken of, and read back as they are looked up.
//!
//! `caller.receive("pig-half").grams(45_000).from(farm("BRC").carcass("0608-17")).by("Oda Marsh").done()`
//!
//! Only what a story says is sent; tests of bad input write their JSON themselves.

mod look;
mod others;
mod receipt;
mod step;

pub use others::Deed;
pub use receipt::{Animal, Receipt, bought, farm};
pub use step::StepOfDay;

use crate::{Answer, Caller};
use serde_json::{Value, json};

/// A deed before it is asked: where it goes and what is said so far.
#[derive(Clone)]
pub struct Draft {
    caller: Caller,
    path: String,
    body: Value,
}

impl Draft {
    fn new(caller: &Caller, path: &str, body: Value) -> Draft {
        Draft {
            caller: caller.clone(),
            path: path.to_owned(),
            body,
        }
    }
}

/// What can be said of every deed.
pub trait Told: Sized {
    /// What is said so far.
    fn draft(&mut self) -> &mut Draft;

    /// Whatever has no word of its own here.
    fn with(mut self, field: &str, value: impl Into<Value>) -> Self {
        self.draft().body[field] = value.into();
        self
    }

    /// Under that id, as a device that asks twice does.
    fn id(self, id: &str) -> Self {
        self.with("id", id)
    }

    /// When it happened, RFC 3339.
    fn at(self, moment: impl Into<String>) -> Self {
        self.with("at", moment.into())
    }

    /// Who did it; else it is the cook.
    fn by(self, name: &str) -> Self {
        self.with("by", name)
    }

    /// A remark.
    fn note(self, text: &str) -> Self {
        self.with("note", text)
    }

    /// So many grams.
    fn grams(self, grams: impl Into<Value>) -> Self {
        self.with("grams", grams)
    }

    /// Asks for it, whether it succeeds or not.
    fn ask(mut self) -> Answer {
        let Draft { caller, path, body } = self.draft().clone();
        caller.deed(&path, body)
    }

    /// Does it; the answer.
    ///
    /// # Panics
    /// It is refused.
    #[track_caller]
    fn done(self) -> Answer {
        self.ask().expect(201)
    }

    /// Does it; the code of the first lot that it made.
    ///
    /// # Panics
    /// It is refused, or makes nothing.
    #[track_caller]
    fn made(self) -> String {
        self.done().code(0)
    }

    /// Asks for it, and is refused; the problem in words.
    ///
    /// # Panics
    /// It is done, or refused otherwise.
    #[track_caller]
    fn refused(self, status: u16, field: impl Into<Option<&'static str>>) -> String {
        let answer = self.ask().refused(status, field);
        answer.body["detail"]
            .as_str()
            .unwrap_or_default()
            .to_owned()
    }
}

impl Caller {
    /// Something comes in, onto the rail.
    pub fn receive(&self, product: &str) -> Receipt {
        let body = json!({ "place": "rail", "product": product });
        Receipt(Draft::new(self, "/api/receipts", body))
    }

    /// A step at the bench.
    pub fn step(&self, kind: &str) -> StepOfDay {
        let body = json!({ "kind": kind, "place": "bench", "inputs": [], "outputs": [] });
        StepOfDay(Draft::new(self, "/api/steps", body))
    }

    /// A lot or a part of it leaves: `sell`, `serve`, `discard` …
    pub fn depart(&self, kind: &str, lot: &str) -> Deed {
        let body = json!({ "kind": kind, "lot": lot });
        Deed(Draft::new(self, "/api/departures", body))
    }

    /// It is sold.
    pub fn sell(&self, lot: &str) -> Deed {
        self.depart("sell", lot)
    }

    /// It is served.
    pub fn serve(&self, lot: &str) -> Deed {
        self.depart("serve", lot)
    }

    /// It goes to another place.
    pub fn carry(&self, lot: &str, to: &str) -> Deed {
        let body = json!({ "lot": lot, "to": to });
        Deed(Draft::new(self, "/api/moves", body))
    }

    /// It is measured.
    pub fn measure(&self, lot: &str) -> Deed {
        Deed(Draft::new(self, "/api/readings", json!({ "lot": lot })))
    }

    /// A cured piece is released.
    pub fn release(&self, lot: &str) -> Deed {
        Deed(Draft::new(self, "/api/releases", json!({ "lot": lot })))
    }

    /// Packs of it are counted at the counter.
    pub fn count(&self, lot: &str) -> Deed {
        Deed(Draft::new(
            self,
            "/api/counts",
            json!({ "place": "case", "lot": lot }),
        ))
    }

    /// A sold pack comes back.
    pub fn take_back(&self, lot: &str, pack: impl Into<Value>) -> Deed {
        let body = json!({ "lot": lot, "pack": pack.into() });
        Deed(Draft::new(self, "/api/take-backs", body))
    }

    /// A deed was a mistake.
    pub fn void(&self, deed: &str) -> Deed {
        let path = format!("/api/steps/{deed}/void");
        Deed(Draft::new(self, &path, json!({ "why": "a mistake" })))
    }

    /// What a receipt said of the animal was wrong.
    pub fn correct(&self, receipt: &str) -> Deed {
        let body = json!({ "step": receipt, "why": "a mistake" });
        Deed(Draft::new(self, "/api/corrections", body))
    }
}
