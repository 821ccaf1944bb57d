//! What was done although a limit forbids it: taken as it happened, with a note.

use super::facts::Facts;
use super::says::DeedSays;
use crate::error::{Error, Result};
use crate::wire::Note;
use domain::dates::{Because, Rule};
use domain::refusal::Refusal;
use domain::rows::{Finding, RowId};
use domain::says::Says;
use domain::stop::{Cause, NewStop, StopSays};
use domain::words::Topic;

/// Is a deed recorded as it happened, although a limit was broken?
///
/// # Errors
/// 422 where it is, and nothing says what happened.
pub fn as_it_happened(as_it_happened: Option<bool>, note: Option<&Note>) -> Result<bool> {
    let told = as_it_happened.unwrap_or(false);
    if told && note.is_none_or(|note| note.0.is_empty()) {
        return Err(Error::cannot_be("note", DeedSays::WhatHappened));
    }
    Ok(told)
}

/// A limit that was broken: the stop that follows where the deed is recorded as it happened.
///
/// # Errors
/// 422 `limit` with the numbers and the rows, where it is not.
pub fn broken(
    facts: &Facts<'_, '_>,
    field: &str,
    topic: Topic,
    says: impl Into<Says>,
    findings: &[Finding],
    as_it_happened: bool,
) -> Result<NewStop> {
    let rows = findings.iter().flat_map(|finding| finding.rows.clone());
    let mut each: Vec<RowId> = Vec::new();
    for row in rows {
        if !each.contains(&row) {
            each.push(row);
        }
    }
    let rule = Rule::Rows(each);
    if !as_it_happened {
        let says = says.into();
        return Err(Refusal::limit(field, &Because { says, rule }).into());
    }
    let of = &facts.law().rows;
    let findings = findings.iter().map(|finding| finding.with_sources(of));
    let findings = findings.collect();
    // Too little heat is made good by more; what went in, or stood warm, is not.
    let says = match topic {
        Topic::Heat => StopSays::Broke { findings },
        _ => StopSays::BrokeForGood { findings },
    };
    let says = says.into();
    Ok(Cause::failed(topic, Because { says, rule }, facts.moment.at).into())
}
