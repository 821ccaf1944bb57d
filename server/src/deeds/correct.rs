//! A wrong fact of a deed is corrected, also after its lots were used; all that follows from it is judged again.

use super::again::{self, effective};
use super::facts::{Facts, clash};
use super::perform::known_deed;
use super::says::{CorrectDeedSays, FactSays};
use super::{DeedAnswer, DeedHeader, Done, correct_read, correct_source, found_warm, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::asked::CorrectionAsked;
use domain::dates::Because;
use domain::deed::says::CorrectSays;
use domain::says::Says;
use domain::words::{DeedKind, StepKind};
use serde::Serialize;
use serde_json::{Map, Value};
use std::cell::RefCell;
use store::deeds::DeedRow;

/// What is wrong of a deed, and what is right.
#[derive(Default)]
pub struct Correcting {
    /// The fields as they were asked.
    pub was: Map<String, Value>,
    /// As they are right.
    pub now: Map<String, Value>,
    /// Which facts those are.
    pub facts: Vec<Says>,
}

impl Correcting {
    /// Notes that a field is otherwise.
    ///
    /// # Errors
    /// 422 where it is as it was known.
    pub fn field(
        &mut self,
        asked: &Map<String, Value>,
        field: &str,
        now: Value,
        fact: FactSays,
    ) -> Result<()> {
        let was = asked.get(field).cloned().unwrap_or(Value::Null);
        if was == now {
            return Err(Error::cannot_be(field, CorrectDeedSays::AsKnown));
        }
        self.was.insert(field.to_owned(), was);
        self.now.insert(field.to_owned(), now);
        let fact = Says::from(fact);
        if !self.facts.contains(&fact) {
            self.facts.push(fact);
        }
        Ok(())
    }

    /// What was asked, with what is right.
    pub fn applied(&self, asked: &Map<String, Value>) -> Map<String, Value> {
        let mut asked = asked.clone();
        asked.extend(self.now.clone());
        asked
    }
}

/// A value as the record keeps it: what is left out is not in it.
pub fn kept(asked: &impl Serialize) -> Result<Value> {
    let text = crate::wire::asked::canonical(asked);
    serde_json::from_str(&text).map_err(|error| crate::app::damaged(&error))
}

/// What a part of a correction comes to; where that part is as it was known, which is kept, the others still count.
///
/// # Errors
/// Whatever else is wrong with it.
pub fn unless_known<T>(part: Result<T>, known: &mut Option<Error>) -> Result<Option<T>> {
    match part {
        Err(error) if is_as_known(&error) => {
            known.get_or_insert(error);
            Ok(None)
        }
        part => part.map(Some),
    }
}

fn is_as_known(error: &Error) -> bool {
    let Error::Refused(refusal) = error else {
        return false;
    };
    let as_known = [
        Says::from(CorrectDeedSays::AsKnown),
        Says::from(CorrectSays::AsKnown),
    ];
    as_known.contains(&refusal.detail)
}

/// The fields of `now` put over those of `was`.
pub fn over(was: Option<&Value>, now: Value) -> Value {
    match (was, now) {
        (Some(Value::Object(was)), Value::Object(now)) => {
            let mut both = was.clone();
            for (field, value) in now {
                let value = over(was.get(&field), value);
                both.insert(field, value);
            }
            Value::Object(both)
        }
        (_, now) => now,
    }
}

/// Records a correction, or tells what it would change.
///
/// # Errors
/// 404 where there is no such deed; 409 where it has no such fact, or was voided; 422 where the fact cannot be.
pub fn take(app: &Caller<'_>, asked: &CorrectionAsked) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", CorrectDeedSays::HowKnown));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Correct,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref().or(Some(&asked.why)),
    };
    let only_try = asked.only_try.unwrap_or(false);
    let told: RefCell<Option<String>> = RefCell::new(None);
    let done = perform(app, header, asked, |facts| {
        let wrong = known_deed(facts.tx, asked.step, Some("step"))?;
        if store::deeds::voided_by(facts.tx.conn, wrong.id)?.is_some() {
            return Err(clash("step", CorrectDeedSays::Voided));
        }
        let read = match asked.readings.is_some() || asked.log.is_some() {
            true => store::again::roots(facts.tx.conn, wrong.id)?,
            false => Vec::new(),
        };
        let warm = found_warm::known(facts, &read)?;
        let (correcting, said) = correcting(facts, asked, &wrong)?;
        let text = |fields: Map<String, Value>| Value::Object(fields).to_string();
        let (was, now) = (text(correcting.was), text(correcting.now));
        store::corrections::insert(facts.tx, facts.deed, wrong.id, &was, &now)?;
        let judged = again::judge(facts, &wrong, None)?;
        if only_try {
            facts.tx.only_try();
        }
        let says = CorrectDeedSays::Corrected {
            by: facts.by.clone(),
            kind: wrong.kind()?,
            facts: correcting.facts,
            why: asked.why.0.clone(),
        };
        let because = Because::house(says, CorrectDeedSays::Rule);
        let uid = asked.id.0.to_string();
        let mut done = again::write(facts, uid, DeedKind::Correct, judged, &because)?;
        done.said.extend(said);
        found_warm::since(facts, &warm, &mut done)?;
        if !only_try {
            return Ok(done);
        }
        done.tried = true;
        done.tell(&facts.speech);
        let body = serde_json::to_string(&done)
            .map_err(|error| store::Error::Broken(error.to_string()))?;
        told.replace(Some(body));
        // Nothing that was written stays.
        Err(Error::cannot_be("try", CorrectDeedSays::Tried))
    });
    match told.into_inner() {
        Some(body) => Ok(Done {
            id: asked.id.0,
            kind: DeedKind::Correct,
            fresh: false,
            body,
        }),
        None => done,
    }
}

/// What is right of the deed; what a correction keeps beside that is written down here.
fn correcting(
    facts: &mut Facts<'_, '_>,
    asked: &CorrectionAsked,
    wrong: &DeedRow,
) -> Result<(Correcting, Vec<Says>)> {
    let known = store::corrections::of_deeds(facts.tx.conn, &[wrong.id])?;
    let before = effective(wrong, &known)?;
    let kind = wrong.kind()?;
    let of_source = asked.animal.is_some() || asked.bought.is_some() || asked.price_minor.is_some();
    let of_heat = asked.log.is_some()
        || asked.heat_standard.is_some()
        || asked.cooling_plan.is_some()
        || asked.fat_percent.is_some()
        || asked.stuffed.is_some();
    if !of_source && !of_heat && asked.readings.is_none() {
        return Err(Error::cannot_be("animal", CorrectDeedSays::Which));
    }
    let is_step = StepKind::parse(kind.as_str()).is_some();
    match kind {
        DeedKind::Receive if !of_heat => correct_source::of_receipt(facts, asked, wrong, &before),
        DeedKind::Adopt if !of_heat && is_of_pot(asked) => correct_source::of_pot(asked, &before),
        DeedKind::Measure if !of_heat && !of_source => {
            correct_read::of_reading(facts, asked, wrong, &before)
        }
        _ if is_step && !of_source => correct_read::of_step(facts, asked, wrong, &before),
        _ if of_source => Err(clash("step", CorrectDeedSays::OnlyReceipts { kind })),
        _ => Err(clash("step", CorrectDeedSays::NotOf { kind })),
    }
}

/// Does it say nothing of what a pot that nobody knew has not: an animal, readings, a price?
fn is_of_pot(asked: &CorrectionAsked) -> bool {
    asked.animal.is_none() && asked.readings.is_none() && asked.price_minor.is_none()
}
