//! A step at the bench: what goes in, what comes out.

use super::{Draft, Told};
use serde_json::{Value, json};

/// A step.
#[derive(Clone)]
pub struct StepOfDay(pub(super) Draft);

impl Told for StepOfDay {
    fn draft(&mut self) -> &mut Draft {
        &mut self.0
    }
}

impl StepOfDay {
    /// Elsewhere than at the bench.
    pub fn place(self, place: &str) -> StepOfDay {
        self.with("place", place)
    }

    /// All of a lot goes in.
    pub fn of(self, lot: &str) -> StepOfDay {
        self.input(json!({ "lot": lot }))
    }

    /// So many grams of a lot go in.
    pub fn of_grams(self, lot: &str, grams: impl Into<Value>) -> StepOfDay {
        self.input(json!({ "lot": lot, "grams": grams.into() }))
    }

    /// A pack of a lot goes in.
    pub fn of_pack(self, lot: &str, pack: impl Into<Value>) -> StepOfDay {
        self.input(json!({ "lot": lot, "pack": pack.into() }))
    }

    /// So many grams of a product come out, in one pack.
    pub fn into(self, product: &str, grams: impl Into<Value>) -> StepOfDay {
        self.output(json!({ "product": product, "grams": grams.into() }))
    }

    /// So many grams of a product come out, in packs of about the same weight.
    pub fn into_packs(self, product: &str, grams: u64, packs: u32) -> StepOfDay {
        self.output(json!({ "product": product, "grams": grams, "pack_count": packs }))
    }

    /// Of the output that was named last: `packaging`, `state`, `place`.
    ///
    /// # Panics
    /// None was named yet.
    pub fn which(mut self, field: &str, value: impl Into<Value>) -> StepOfDay {
        let outputs = self.0.body["outputs"].as_array_mut();
        let last = outputs.and_then(|outputs| outputs.last_mut());
        last.expect("an output")[field] = value.into();
        self
    }

    /// The core was that warm for so many minutes.
    pub fn held(self, celsius: f64, minutes: u32) -> StepOfDay {
        self.with(
            "readings",
            json!({ "celsius": celsius, "hold_minutes": minutes }),
        )
    }

    fn input(self, input: Value) -> StepOfDay {
        self.push("inputs", input)
    }

    fn output(self, output: Value) -> StepOfDay {
        self.push("outputs", output)
    }

    fn push(mut self, list: &str, item: Value) -> StepOfDay {
        let list = self.0.body[list].as_array_mut();
        list.expect("a list since the step began").push(item);
        self
    }
}
