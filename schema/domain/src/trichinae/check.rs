//! Is pork that will be eaten uncooked safe from trichinae?

use super::freezing::Freezing;
use super::heating::Heating;
use super::process::Process;
use super::rules::{TrichinaeRules, Way};
use super::says::ProofSays;
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
pub fn check(proof: &Proof, rules: &TrichinaeRules, rows: &Rows) -> Result<Judgement> {
    match proof {
        Proof::NormallyCooked => Ok(normally_cooked(rules)),
        Proof::Treated(Treatment::Heated(heating)) => heating.judge(rules, rows),
        Proof::Treated(Treatment::Frozen(freezing)) => freezing.judge(rules, rows),
        Proof::Treated(Treatment::Cured(process)) => process.judge(rules, rows),
        Proof::Certified { way, paper } => certified(*way, paper, rules, rows),
    }
}

fn normally_cooked(rules: &TrichinaeRules) -> Judgement {
    match &rules.normally_cooked {
        Some(row) => Judgement::enough(Finding::note(ProofSays::NormallyCooked, [row.clone()])),
        None => Judgement::decide(Finding::new(Gravity::Warn, ProofSays::NotFreed, [])),
    }
}

fn certified(way: Way, paper: &str, rules: &TrichinaeRules, rows: &Rows) -> Result<Judgement> {
    if paper.trim().is_empty() {
        return Err(Refusal::cannot_be("paper", ProofSays::NoPaper));
    }
    let Some(other) = rules.other_ways.iter().find(|other| other.way == way) else {
        let says = ProofSays::NotTaken { way };
        return Ok(Judgement::decide(Finding::new(Gravity::Warn, says, [])));
    };
    let says = ProofSays::NoneNeeded {
        way,
        paper: paper.to_owned(),
    };
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
