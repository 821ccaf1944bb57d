//! Labels without a record: one label from a file of facts.

use labels::{Dpi, Facts, Template, lay_out, pdf};
use std::path::Path;

/// One label from a file of facts, as PDF.
///
/// # Errors
/// In words: a file that cannot be read, a template that is not there, a text that does not fit.
pub fn make(facts: &Path, template: &str, dpi: u16) -> Result<Vec<u8>, String> {
    let read = |path: &Path| {
        std::fs::read_to_string(path)
            .map_err(|error| format!("{} cannot be read: {error}", path.display()))
    };
    let facts: Facts = serde_json::from_str(&read(facts)?)
        .map_err(|error| format!("{}: {error}", facts.display()))?;
    let dpi = Dpi::from_number(dpi).ok_or_else(|| format!("{dpi} dpi is not known; 203 or 300"))?;
    let mut known = super::templates::load(None)?.known;
    let template = match known.remove(template) {
        Some(template) => template,
        None if template.ends_with(".json") => {
            let json = read(Path::new(template))?;
            Template::parse(template, &json).map_err(|error| error.to_string())?
        }
        None => {
            let names: Vec<&str> = known.keys().map(String::as_str).collect();
            return Err(format!(
                "there is no label {template:?}; labels are {}, or give a .json file",
                names.join(", ")
            ));
        }
    };
    let placed = lay_out(&facts, &template, dpi).map_err(|refusal| refusal.to_string())?;
    pdf(&[placed]).map_err(|error| error.to_string())
}
