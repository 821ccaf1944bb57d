//! What a class counts as in a place. Europe divides off what other places do not: there such a food is what it is
//! by kind (bacon, ground, whole), and the limits of that hold.

use super::{Class, Counts, CureRules, Method};
use crate::rows::Rows;
use chrono::NaiveDate;

/// What a class counts as in a place, for nitrite, for nitrate and for all else.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Here {
    nitrite: Class,
    nitrate: Class,
    other: Class,
}

impl Here {
    /// The class itself where a limit of the place names it, else its kind.
    pub fn of(
        rules: &CureRules,
        method: Method,
        class: Class,
        day: NaiveDate,
        rows: &Rows,
    ) -> Here {
        let kind = class.kind(method);
        let named = |is_such: &dyn Fn(Counts) -> bool| {
            let names = kind == class
                || rules.limits.iter().any(|limit| {
                    is_such(limit.counts)
                        && limit.classes.contains(&class)
                        && (limit.methods.is_empty() || limit.methods.contains(&method))
                        && limit.holds_on(day, rows)
                });
            if names { class } else { kind }
        };
        let salt = |nitrite: bool| {
            named(&|counts| matches!(counts, Counts::Salt(of) if of.is_nitrite() == nitrite))
        };
        Here {
            nitrite: salt(true),
            nitrate: salt(false),
            other: named(&|counts| !matches!(counts, Counts::Salt(_))),
        }
    }

    /// What it counts as for a limit on that.
    pub const fn class(&self, counts: Counts) -> Class {
        match counts {
            Counts::Salt(basis) if basis.is_nitrite() => self.nitrite,
            Counts::Salt(_) => self.nitrate,
            Counts::Both | Counts::Ascorbate => self.other,
        }
    }
}
