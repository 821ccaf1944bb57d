//! Who asks, and what they may do. Reading order: [`domain::right`] (the closed list), here (somebody),
//! [`known`] (everybody, kept in memory), [`secrets`] (words, tokens and PINs, and how they are kept),
//! [`permit`] (what every route asks), [`lockout`] (wrong PINs slow down), [`people`] and [`signing`] (what
//! changes), [`commands`] (the same on the terminal).

pub mod commands;
pub mod cookies;
pub mod known;
pub mod lockout;
pub mod people;
pub mod permit;
pub mod says;
pub mod secrets;
pub mod signing;

use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use actix_web::http::StatusCode;
use chrono::NaiveDateTime;
use domain::right::{Right, Role};
use known::Known;
use says::WhoSays;

/// Somebody who asks.
#[derive(Debug, Clone)]
pub struct Who {
    /// What they are.
    pub kind: Kind,
    /// Their name, as a deed keeps it.
    pub name: String,
    /// What they are in this kitchen.
    pub roles: Vec<Role>,
    /// The language they read, if they said so.
    pub language: Option<words::Language>,
    /// In which units they read weights, if they said so.
    pub mass: Option<words::Mass>,
    /// In which units they read temperatures, if they said so.
    pub heat: Option<words::Heat>,
}

/// What somebody is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Kind {
    /// The program itself: the demo's story, a bench.
    House,
    /// Nobody who has signed in.
    Nobody,
    /// A person who signed in on a device.
    Person {
        /// Their key.
        id: i32,
        /// The device.
        device: String,
    },
    /// A program with a token.
    Token {
        /// Its key.
        id: i32,
        /// May it speak for others?
        speaks: bool,
    },
}

impl Who {
    /// The program itself.
    pub fn house() -> Who {
        Who::of(Kind::House, "", Vec::new())
    }

    /// Nobody who has signed in.
    pub fn nobody() -> Who {
        Who::of(Kind::Nobody, "", Vec::new())
    }

    /// Somebody by name.
    pub fn of(kind: Kind, name: &str, roles: Vec<Role>) -> Who {
        Who {
            kind,
            name: name.to_owned(),
            roles,
            language: None,
            mass: None,
            heat: None,
        }
    }

    /// A way of speaking, in the units that they read.
    pub fn in_own_units(&self, speech: words::Speech) -> words::Speech {
        words::Speech {
            mass: self.mass.unwrap_or(speech.mass),
            heat: self.heat.unwrap_or(speech.heat),
            ..speech
        }
    }

    /// Is it nobody?
    pub fn is_nobody(&self) -> bool {
        self.kind == Kind::Nobody
    }

    /// May they do that?
    pub fn may(&self, right: Right) -> bool {
        match self.kind {
            Kind::House => true,
            Kind::Nobody => right == Right::Anyone,
            Kind::Token { speaks, .. } if right == Right::Speak => speaks,
            _ => self.roles.iter().any(|role| role.may(right)),
        }
    }

    /// Refuses who may not.
    ///
    /// # Errors
    /// 401 for nobody, 403 with the right that is missing.
    pub fn need(&self, right: Right) -> Result<()> {
        if self.may(right) {
            return Ok(());
        }
        if self.is_nobody() {
            let (title, detail) = (TitleSays::SignIn, WhoSays::SignIn);
            return Err(Problem::new(StatusCode::UNAUTHORIZED, "sign-in", title, detail).into());
        }
        let name = self.name.clone();
        let detail = WhoSays::Right { name, right };
        let mut problem = Problem::new(StatusCode::FORBIDDEN, "right", TitleSays::Right, detail);
        problem.right = Some(right);
        Err(problem.into())
    }

    /// Is what `person` did theirs to take back, when they say that they are `by`? A program that speaks for
    /// others has done nothing but what stands under its own name.
    pub fn is_own(&self, person: &str, by: &str) -> bool {
        let speaks = matches!(self.kind, Kind::Token { .. }) && by != self.name;
        person == by && !by.is_empty() && !speaks
    }

    /// Whose name a deed gets that says it was done by `by`, or by nobody in particular.
    ///
    /// # Errors
    /// 403 for another's name, unless they were signed in on the same device at that moment, or whoever
    /// asks may speak for others. 422 where the program itself names nobody.
    pub fn signs(&self, by: Option<&str>, at: NaiveDateTime, known: &Known) -> Result<String> {
        let Some(by) = by else {
            return match self.kind {
                Kind::House | Kind::Nobody => Err(Error::cannot_be("by", WhoSays::ByWhom)),
                _ => Ok(self.name.clone()),
            };
        };
        let waited = || match &self.kind {
            Kind::Person { device, .. } => known.was_signed_in(by, device, at),
            _ => false,
        };
        if by == self.name || self.may(Right::Speak) || waited() {
            return Ok(by.to_owned());
        }
        let detail = WhoSays::OtherName {
            name: self.name.clone(),
            by: by.to_owned(),
        };
        let mut problem = Problem::new(StatusCode::FORBIDDEN, "by", TitleSays::Right, detail);
        problem.right = Some(Right::Speak);
        Err(problem.at("by").into())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(who: &Who, by: Option<&str>, signs: std::result::Result<&str, u16>) {
        let signed = who.signs(by, NaiveDateTime::default(), &Known::default());
        let signed = signed.map_err(|error| error.problem().status.as_u16());
        assert_eq!(signed.as_deref(), signs.as_deref(), "{who:?} {by:?}");
    }

    fn token(speaks: bool) -> Kind {
        Kind::Token { id: 1, speaks }
    }

    #[test]
    fn a_program_that_speaks_for_others_owns_none_of_their_deeds() {
        let device = String::new();
        let jo = Who::of(Kind::Person { id: 1, device }, "Jo", vec![Role::Cook]);
        let script = Who::of(token(true), "till", vec![Role::Counter]);
        assert!(jo.is_own("Jo", "Jo") && !jo.is_own("Oda", "Jo") && !jo.is_own("", ""));
        assert!(script.is_own("till", "till"));
        assert!(!script.is_own("Oda", "Oda") && !script.is_own("Oda", "till"));
    }

    #[test]
    fn a_deed_has_the_name_of_who_did_it() {
        let device = String::new();
        let oda = Who::of(Kind::Person { id: 1, device }, "Oda", vec![Role::Manager]);
        check(&oda, None, Ok("Oda"));
        check(&oda, Some("Oda"), Ok("Oda"));
        check(&oda, Some("Jo"), Err(403));
        let script = Who::of(token(true), "script", vec![Role::Cook]);
        check(&script, Some("Jo"), Ok("Jo"));
        check(&script, None, Ok("script"));
        let till = Who::of(token(false), "till", vec![Role::Manager]);
        check(&till, Some("Jo"), Err(403));
        check(&till, Some("till"), Ok("till"));
        check(&till, None, Ok("till"));
        check(&Who::house(), None, Err(422));
    }

    #[test]
    fn nobody_may_nothing_and_a_cook_lifts_no_stop() {
        let refused = |who: &Who, right| {
            who.need(right)
                .map_err(|error| error.problem().status.as_u16())
        };
        assert_eq!(refused(&Who::nobody(), Right::See), Err(401));
        let cook = Who::of(token(true), "c", vec![Role::Cook]);
        assert_eq!(refused(&cook, Right::Work), Ok(()));
        assert_eq!(refused(&cook, Right::Lift), Err(403));
    }
}
