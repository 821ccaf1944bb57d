//! What is told of a scope: each lot with its affected packs and their sums, and what is outside.

use super::When;
use super::says::ScopeSays;
use super::start::Seed;
use super::walk::{Because, Lacks, Question, Reached, walk};
use super::world::{PackLife, World};
use crate::code::LotCode;
use crate::family::Went;
use crate::grams::Grams;
use crate::lot::{LotId, PackId, PlaceId};
use crate::says::Says;
use crate::words::Account;
use chrono::{DateTime, Utc};
use std::collections::{BTreeMap, BTreeSet};

/// An affected pack of which something is left.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScopePack {
    /// Its key.
    pub id: PackId,
    /// Its number.
    pub number: u32,
    /// What is left.
    pub left: Grams,
    /// Where it is.
    pub place: PlaceId,
    /// From when on it is affected.
    pub since: When,
}

/// An affected pack that was sold whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ScopeSold {
    /// Its number.
    pub number: u32,
    /// What was in it.
    pub grams: Grams,
    /// When it was sold.
    pub at: DateTime<Utc>,
}

/// A lot in scope.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InScope {
    /// Its key.
    pub id: LotId,
    /// Its code.
    pub code: LotCode,
    /// The code of its product.
    pub product: String,
    /// A word about it.
    pub note: Option<String>,
    /// Is all of it affected since its birth?
    pub whole: bool,
    /// How many of its packs are affected, used-up ones included.
    pub affected: usize,
    /// The affected packs, used-up ones included, each from a moment on.
    pub reached: Vec<(PackId, When)>,
    /// The affected packs of which something is left.
    pub packs: Vec<ScopePack>,
    /// The affected packs that were sold whole: those that `went` counts.
    pub sold: Vec<ScopeSold>,
    /// Where the weight of the affected packs went.
    pub went: Went,
    /// Why.
    pub because: Vec<Because>,
}

/// Something that is deliberately outside.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outside {
    /// The lot; none where it is an animal.
    pub lot: Option<LotCode>,
    /// The animal's id.
    pub animal: Option<Vec<u8>>,
    /// Why.
    pub why: Says,
}

/// The answer.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Scope {
    /// Each lot, the oldest first.
    pub lots: Vec<InScope>,
    /// Their sums.
    pub totals: Went,
    /// What is outside.
    pub outside: Vec<Outside>,
}

/// Asks a question of what was loaded. `without` gives the reason for each lot that a person leaves out.
///
/// # Errors
/// What it lacks.
pub fn tell(
    world: &World,
    question: &Question,
    seeds: &[Seed],
    without: &BTreeMap<LotId, String>,
) -> Result<Scope, Lacks> {
    let reached = walk(world, question, seeds)?;
    let mut scope = Scope::default();
    for (lot, affected) in &reached {
        let of = &world.lots[lot];
        let mut told = InScope {
            id: *lot,
            code: of.code.clone(),
            product: of.product.clone(),
            note: of.note.clone(),
            whole: affected.whole,
            affected: affected.packs.len(),
            reached: Vec::new(),
            packs: Vec::new(),
            sold: Vec::new(),
            went: Went::default(),
            because: affected.because.clone(),
        };
        for pack in &of.packs {
            let Some(since) = affected.packs.get(&pack.id) else {
                continue;
            };
            told.went += went(pack);
            let sold = pack.happened.iter().filter(|of| of.whole_pack);
            told.sold.extend(sold.map(|of| ScopeSold {
                number: pack.number,
                grams: of.grams,
                at: world.when(of).at,
            }));
            told.reached.push((pack.id, *since));
            if pack.left > Grams::ZERO {
                told.packs.push(ScopePack {
                    id: pack.id,
                    number: pack.number,
                    left: pack.left,
                    place: pack.place,
                    since: *since,
                });
            }
        }
        scope.totals += told.went;
        scope.lots.push(told);
    }
    left_out(world, question, seeds, without, &reached, &mut scope)?;
    made_before(world, &reached, &mut scope)?;
    Ok(scope)
}

/// Where the weight of a pack went.
fn went(pack: &PackLife) -> Went {
    let mut went = Went {
        made: pack.made,
        on_hand: pack.left,
        ..Went::default()
    };
    for of in &pack.happened {
        let account = match of.account {
            Account::Used => &mut went.used,
            Account::Sold => &mut went.sold,
            Account::Served => &mut went.served,
            Account::Discarded => &mut went.discarded,
            Account::Shipped => &mut went.shipped,
            Account::Returned => &mut went.returned,
            Account::Lost => &mut went.lost,
            Account::Unexplained => {
                // What was missed once and what was found too much stand apart.
                match of.grams > Grams::ZERO {
                    true => went.missing += of.grams,
                    false => went.surplus -= of.grams,
                }
                &mut went.unexplained
            }
            Account::TakenBack => &mut went.taken_back,
            Account::Moved | Account::Noted => continue,
        };
        *account += of.grams;
        went.sold_packs += i64::from(of.whole_pack);
    }
    went
}

/// Each lot that a person leaves out, and each that falls out with it.
fn left_out(
    world: &World,
    question: &Question,
    seeds: &[Seed],
    without: &BTreeMap<LotId, String>,
    reached: &Reached,
    scope: &mut Scope,
) -> Result<(), Lacks> {
    if without.is_empty() {
        return Ok(());
    }
    let whole = Question {
        without: BTreeSet::new(),
        ..question.clone()
    };
    let would = walk(world, &whole, seeds)?;
    let code = |lot: &LotId| world.lots.get(lot).map(|of| of.code.clone());
    for (lot, why) in without {
        scope.outside.push(Outside {
            lot: code(lot),
            animal: None,
            why: ScopeSays::LeftOut { why: why.clone() }.into(),
        });
    }
    let codes: Vec<String> = without
        .keys()
        .filter_map(|lot| Some(code(lot)?.shown()))
        .collect();
    let falls = would.keys().filter(|lot| !reached.contains_key(lot));
    for lot in falls.filter(|lot| !without.contains_key(lot)) {
        let lots = codes.join(", ");
        scope.outside.push(Outside {
            lot: code(lot),
            animal: None,
            why: ScopeSays::FallsOut { lots }.into(),
        });
    }
    Ok(())
}

/// What was made of a pack before it was affected.
fn made_before(world: &World, reached: &Reached, scope: &mut Scope) -> Result<(), Lacks> {
    let mut lacks = Lacks::default();
    let mut told: BTreeSet<LotId> = BTreeSet::new();
    for (lot, affected) in reached.iter().filter(|(_, affected)| !affected.whole) {
        let of = &world.lots[lot];
        for pack in &of.packs {
            let Some(since) = affected.packs.get(&pack.id) else {
                continue;
            };
            let before = pack.happened.iter().filter(|of| world.when(of) < *since);
            for used in before.filter(|of| of.account == Account::Used) {
                let Some(made) = world.made_by.get(&used.deed) else {
                    lacks.deeds.insert(used.deed);
                    continue;
                };
                for made in made.iter().filter(|made| !reached.contains_key(made)) {
                    let known = world.lots.get(made);
                    if let Some(made) = known.filter(|made| told.insert(made.id)) {
                        scope.outside.push(Outside {
                            lot: Some(made.code.clone()),
                            animal: None,
                            why: ScopeSays::MadeBefore {
                                lot: of.code.clone(),
                            }
                            .into(),
                        });
                    }
                }
            }
        }
    }
    match lacks == Lacks::default() {
        true => Ok(()),
        false => Err(lacks),
    }
}
