//! Is pork that will be eaten uncooked safe from trichinae?

use super::freezing::Freezing;
use super::heating::Heating;
use super::process::Process;
use super::rules::{TrichinaeRules, Way};
use super::says::{ColdSays, ProofSays};
use crate::heat::Judgement;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity, Rows};
use crate::words::Species;
use chrono::TimeDelta;
use std::collections::BTreeSet;

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

/// Can it be of this meat? A certificate of a herd or of piglets speaks of domestic pigs and of no other animal
/// (`canada-eu-uk-13.1`, `canada-eu-uk-6.1`), and nothing was frozen for longer than its animal has been dead.
///
/// # Errors
/// As said.
pub fn can_be(
    proof: &Proof,
    species: &BTreeSet<Species>,
    dead_for: Option<TimeDelta>,
) -> Result<()> {
    match (proof, dead_for) {
        (Proof::Certified { way, .. }, _) if *way != Way::CarcassTested => {
            let mut carriers = species.iter().filter(|of| of.may_carry_trichinae());
            match carriers.find(|of| **of != Species::Pig) {
                None => Ok(()),
                Some(species) => {
                    let (way, species) = (*way, *species);
                    Err(Refusal::cannot_be(
                        "way",
                        ProofSays::OnlyOfPigs { way, species },
                    ))
                }
            }
        }
        (Proof::Treated(Treatment::Frozen(of)), Some(dead_for)) if of.held > dead_for => {
            let held = of.held;
            Err(Refusal::cannot_be(
                "held",
                ColdSays::LongerThanDead { held, dead_for },
            ))
        }
        _ => Ok(()),
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Temperature;
    use crate::trichinae::MeasuredAt;

    fn frozen(hours: i64) -> Proof {
        Proof::Treated(Treatment::Frozen(Freezing {
            measured: MeasuredAt::Room,
            at: Temperature::celsius(-30),
            held: TimeDelta::hours(hours),
            thickness: None,
            meat_at_start: None,
        }))
    }

    #[test]
    fn nothing_was_frozen_for_longer_than_its_animal_has_been_dead() {
        let pig = BTreeSet::from([Species::Pig]);
        let dead = Some(TimeDelta::days(6));
        assert!(can_be(&frozen(2000), &pig, dead).is_err());
        assert!(can_be(&frozen(144), &pig, dead).is_ok());
        assert!(can_be(&frozen(2000), &pig, None).is_ok());
    }

    #[test]
    fn a_herd_s_certificate_speaks_of_domestic_pigs() {
        use Species::*;
        let of = |way, species: &[Species]| {
            let paper = "T".to_owned();
            let species = species.iter().copied().collect();
            can_be(&Proof::Certified { way, paper }, &species, None)
        };
        for way in [Way::NegligibleRiskHerd, Way::Unweaned] {
            assert!(of(way, &[Pig]).is_ok());
            assert!(of(way, &[Pig, Cattle]).is_ok());
            for other in [Boar, Horse] {
                let refusal = of(way, &[Pig, other]).unwrap_err();
                assert_eq!(refusal.field.as_deref(), Some("way"));
            }
        }
        assert!(of(Way::CarcassTested, &[Boar, Horse]).is_ok());
    }
}
