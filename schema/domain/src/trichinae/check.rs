//! Is pork that will be eaten uncooked safe from trichinae?

use super::freezing::Freezing;
use super::heating::Heating;
use super::process::Process;
use super::rules::{Rules, Way};
use crate::heat::Judgement;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity, Rows};

/// What speaks for a lot.
#[derive(Debug, Clone, PartialEq)]
pub enum Proof {
    /// Fresh pork, or bacon, that is normally cooked before it is eaten.
    NormallyCooked,
    /// It was treated.
    Treated(Treatment),
    /// It needs no treatment, and this paper says so.
    Certified {
        /// Why.
        way: Way,
        /// The number or name of the certificate.
        paper: String,
    },
}

/// A treatment.
#[derive(Debug, Clone, PartialEq)]
pub enum Treatment {
    /// By heat.
    Heated(Heating),
    /// By cold.
    Frozen(Freezing),
    /// By salt, smoke and drying.
    Cured(Box<Process>),
}

/// Is it enough? What is missing is said with its row, in days where time would do.
///
/// # Errors
/// A value that cannot be, or one that is needed and missing.
pub fn check(proof: &Proof, rules: &Rules, rows: &Rows) -> Result<Judgement> {
    match proof {
        Proof::NormallyCooked => Ok(normally_cooked(rules)),
        Proof::Treated(Treatment::Heated(heating)) => heating.judge(rules, rows),
        Proof::Treated(Treatment::Frozen(freezing)) => freezing.judge(rules, rows),
        Proof::Treated(Treatment::Cured(process)) => process.judge(rules, rows),
        Proof::Certified { way, paper } => certified(*way, paper, rules, rows),
    }
}

fn normally_cooked(rules: &Rules) -> Judgement {
    match &rules.normally_cooked {
        Some(row) => Judgement::enough(Finding::note(
            "It is normally cooked before it is eaten, so it needs no treatment. It must not look \
             ready to eat.",
            [row.clone()],
        )),
        None => Judgement::decide(Finding::new(
            Gravity::Warn,
            "No row of this place frees it from treatment. A person decides.",
            [],
        )),
    }
}

fn certified(way: Way, paper: &str, rules: &Rules, rows: &Rows) -> Result<Judgement> {
    if paper.trim().is_empty() {
        let detail = "Give the number of the test or the certificate; without it nobody can look.";
        return Err(Refusal::cannot_be("paper", detail));
    }
    let Some(other) = rules.other_ways.iter().find(|other| other.way == way) else {
        let says = format!(
            "No row of this place takes {:?} in place of a treatment. A person decides.",
            way.as_str()
        );
        return Ok(Judgement::decide(Finding::new(Gravity::Warn, says, [])));
    };
    let says = format!("No treatment is needed: {} ({paper}).", way.as_str());
    let gravity = match rows.is_confirmed(&other.row) {
        true => Gravity::Note,
        false => Gravity::Warn,
    };
    Ok(Judgement::enough(Finding::new(
        gravity,
        says,
        [other.row.clone()],
    )))
}
