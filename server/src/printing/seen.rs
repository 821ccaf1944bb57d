//! What each printer answered when it was asked last, as long as the service runs: by that a label is shown as it will
//! come out, before anybody prints it. Nothing is printed by it.

use super::capabilities::Capabilities;
use super::paper;
use labels::Template;
use std::collections::BTreeMap;
use std::sync::{Arc, PoisonError, RwLock};

/// The printers that answered, by code.
#[derive(Debug, Default)]
pub struct Seen(RwLock<BTreeMap<String, Arc<Capabilities>>>);

impl Seen {
    /// A printer answered.
    pub fn note(&self, code: &str, answer: &Capabilities) {
        let mut seen = self.0.write().unwrap_or_else(PoisonError::into_inner);
        seen.insert(code.to_owned(), Arc::new(answer.clone()));
    }

    /// What a printer answered last; nothing where nobody asked it yet.
    pub fn of(&self, code: &str) -> Option<Arc<Capabilities>> {
        let seen = self.0.read().unwrap_or_else(PoisonError::into_inner);
        seen.get(code).cloned()
    }
}

/// The labels that a printer is for: those that its entry names, else those of which it has the paper.
pub fn labels_for(
    only: &[String],
    printer: &Capabilities,
    templates: &BTreeMap<String, Template>,
) -> Vec<String> {
    if !only.is_empty() {
        return only.to_vec();
    }
    let fitting = templates.values();
    let fitting = fitting.filter(|template| paper::has(printer, template));
    fitting.map(|template| template.name().to_owned()).collect()
}
