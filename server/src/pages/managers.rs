//! Whom to ask, where a right is missing.

use crate::caller::Caller;
use domain::right::Role;

/// The names of those who manage the kitchen; nothing where nobody does.
pub fn managers(app: &Caller<'_>) -> Option<String> {
    let known = app.people();
    let managers = known.people.iter();
    let managers = managers.filter(|one| one.row.active && one.roles.contains(&Role::Manager));
    let names: Vec<&str> = managers.map(|one| one.row.name.as_str()).collect();
    (!names.is_empty()).then(|| names.join(", "))
}
