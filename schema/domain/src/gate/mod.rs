//! What stands against a customer's label: asked of every label that leaves, by paper, by printer, on the
//! screen and from a file.
//!
//! [`of_lot`] asks what the record knows of the food: its name and standard, where its meat comes from.
//! [`of_texts`] reads the texts as they will be printed. What breaks a confirmed row refuses the label;
//! what breaks a row that nobody has read, and what the record cannot know, is printed and warned of.
//! [`required()`] is what the place's data asks of such a pack, item by item: [`check_required`] holds what is
//! told against it, and a template that has no room for what is due is not taken.

mod beef;
mod origin;
mod required;
mod says;
#[cfg(test)]
mod tests;
mod texts;

pub use origin::{Raised, WorkedIn, origin_lines, sources};
pub use required::{LabelItem, PackTrait, Required, Told, check_required, required};
pub use says::GateSays;
pub use texts::{LabelTexts, of_texts};

use crate::family::{Family, Lists, Relative};
use crate::law::Law;
use crate::naming::{self, NameFacts};
use crate::rows::{Finding, Gravity};

/// What stands against a customer's label of a lot, by what the record knows. The family has to be loaded
/// with its ancestors.
pub fn of_lot(family: &Family, of: &Relative, lists: &Lists, law: &Law) -> Vec<Finding> {
    let facts = NameFacts::of_lot(family, of, lists);
    let mut found = match naming::check(&facts, law) {
        Ok(found) => found,
        // A figure that cannot be was typed before figures were looked at.
        Err(refusal) => vec![Finding::new(Gravity::Warn, refusal.detail, [])],
    };
    let sources = sources(family, of, lists);
    found.extend(origin::check(&facts, &sources, law));
    found.extend(beef::check(&facts, &sources, of.made_by.day, law));
    found.retain(|finding| finding.gravity > Gravity::Note);
    found
}
