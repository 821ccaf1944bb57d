//! Whom to ask, where a right is missing.

use super::spoken::Words;
use crate::caller::Caller;
use crate::who::says::WhoSays;
use domain::right::{Right, Role};

/// The names of those who manage the kitchen; nothing where nobody does.
pub fn managers(app: &Caller<'_>) -> Option<String> {
    let known = app.people();
    let managers = known.people.iter();
    let managers = managers.filter(|one| one.row.active && one.roles.contains(&Role::Manager));
    let names: Vec<&str> = managers.map(|one| one.row.name.as_str()).collect();
    (!names.is_empty()).then(|| names.join(", "))
}

/// Who may not do it, what that is, and whom to ask; nothing where whoever reads it may.
pub fn not_yours(app: &Caller<'_>, words: &Words, right: Right) -> Option<String> {
    let name = app.who.name.clone();
    (!app.who.may(right)).then(|| match managers(app) {
        Some(names) => words.say(WhoSays::RightAsk { name, right, names }),
        None => words.say(WhoSays::Right { name, right }),
    })
}
