//! The family of a lot: back to every source, forward to all that came of it, with shares of weight.
//!
//! A share is information only: any share above zero is in scope. For each step, the inputs that have
//! any source animal are weighed by the grams used, their own shares are carried through, and the
//! result is normalised. Water and bought-in lots don't dilute it.

use crate::lot::{DeedId, LotId};
use crate::origin::AnimalId;
use std::collections::hash_map::Entry;
use std::collections::{BTreeMap, HashMap, HashSet, VecDeque};

/// So much of a lot, used in a step. Several packs of one lot may be several uses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Use {
    /// The step.
    pub step: DeedId,
    /// The lot that went in.
    pub lot: LotId,
    /// Milligrams used.
    pub milligrams: i64,
    /// Has the lot any source animal?
    pub has_animal: bool,
}

/// The part of the record that a walk back needs: the lot and all its ancestors.
#[derive(Debug, Default)]
pub struct Ancestry {
    /// The step that made each lot.
    pub made_by: HashMap<LotId, DeedId>,
    /// The uses of each such step.
    pub uses: HashMap<DeedId, Vec<Use>>,
}

/// Where a walk back ends.
#[derive(Debug, Clone, PartialEq)]
pub struct WalkEnd {
    /// A received lot.
    pub lot: LotId,
    /// Its share of the animals' weight in the lot asked about; 0 for lots without animal.
    pub share: f64,
    /// One shortest path: from the received lot up to, and without, the lot asked about.
    pub via: Vec<LotId>,
}

impl Ancestry {
    /// Every received lot that `lot` came of. A lot that was itself received is its own root.
    pub fn roots(&self, lot: LotId) -> Vec<WalkEnd> {
        let paths = self.shortest_paths(lot);
        let shares = self.shares(lot);
        let mut roots: Vec<WalkEnd> = paths
            .keys()
            .filter(|ancestor| self.uses_of(**ancestor).is_empty())
            .map(|root| WalkEnd {
                lot: *root,
                share: shares.get(root).copied().unwrap_or(0.0),
                via: path(&paths, *root, lot),
            })
            .collect();
        roots.sort_by(|one, other| {
            other
                .share
                .total_cmp(&one.share)
                .then(one.lot.cmp(&other.lot))
        });
        roots
    }

    /// What went into a lot; nothing for a received one.
    pub fn uses_of(&self, lot: LotId) -> &[Use] {
        self.made_by
            .get(&lot)
            .and_then(|step| self.uses.get(step))
            .map_or(&[], Vec::as_slice)
    }

    /// Each ancestor, and the descendant through which it was first met: breadth first, so shortest.
    fn shortest_paths(&self, lot: LotId) -> HashMap<LotId, LotId> {
        let mut towards = HashMap::from([(lot, lot)]);
        let mut queue = VecDeque::from([lot]);
        while let Some(child) = queue.pop_front() {
            for used in self.uses_of(child) {
                if let Entry::Vacant(first_met) = towards.entry(used.lot) {
                    first_met.insert(child);
                    queue.push_back(used.lot);
                }
            }
        }
        towards
    }

    /// The share of every ancestor: weight flows from the lot asked about towards its sources.
    fn shares(&self, lot: LotId) -> HashMap<LotId, f64> {
        let mut shares = HashMap::from([(lot, 1.0)]);
        for child in self.descendants_first(lot) {
            let share = shares.get(&child).copied().unwrap_or(0.0);
            let with_animal = || self.uses_of(child).iter().filter(|used| used.has_animal);
            let total: i64 = with_animal().map(|used| used.milligrams).sum();
            for used in with_animal() {
                *shares.entry(used.lot).or_default() +=
                    share * used.milligrams as f64 / total as f64;
            }
        }
        shares
    }

    /// The lot and its ancestors, each after every descendant of it. Not recursive: a pot that is
    /// topped up for years makes a very deep family.
    pub fn descendants_first(&self, lot: LotId) -> Vec<LotId> {
        let mut done: HashMap<LotId, bool> = HashMap::new();
        let mut order = Vec::new();
        let mut stack = vec![lot];
        while let Some(top) = stack.last().copied() {
            match done.get(&top) {
                Some(_) => {
                    stack.pop();
                    if done.insert(top, true) == Some(false) {
                        order.push(top);
                    }
                }
                None => {
                    done.insert(top, false);
                    stack.extend(
                        self.uses_of(top)
                            .iter()
                            .map(|used| used.lot)
                            .filter(|lot| !done.contains_key(lot)),
                    );
                }
            }
        }
        order.reverse();
        order
    }
}

fn path(towards: &HashMap<LotId, LotId>, root: LotId, lot: LotId) -> Vec<LotId> {
    let mut via = Vec::new();
    let mut at = root;
    while at != lot {
        via.push(at);
        at = towards[&at];
    }
    via
}

/// So much of a lot that is in scope, used in a step on the way forward.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Onward {
    /// The lot that went in.
    pub lot: LotId,
    /// The step that it went into.
    pub step: DeedId,
    /// Milligrams of it used there.
    pub milligrams: i64,
    /// Milligrams of everything with a source animal used there.
    pub step_milligrams: i64,
}

/// The share of the starting lots in each step that any of them reached; what a step made has its
/// step's share. `starts` are whole: share 1. `made` says which step made each lot on the way.
///
/// The graph has no cycles; were one there, the steps on it would have no share.
pub fn shares_forward(
    starts: &[LotId],
    made: &[(LotId, DeedId)],
    onward: &[Onward],
) -> HashMap<DeedId, f64> {
    let starts: HashSet<LotId> = starts.iter().copied().collect();
    let mut waiting: HashMap<DeedId, usize> = HashMap::with_capacity(made.len());
    let mut uses: HashMap<LotId, Vec<&Onward>> = HashMap::with_capacity(onward.len());
    for used in onward {
        *waiting.entry(used.step).or_default() += 1;
        uses.entry(used.lot).or_default().push(used);
    }
    let mut outputs: HashMap<DeedId, Vec<LotId>> = HashMap::with_capacity(waiting.len());
    // A starting lot stays whole, even where it came of another starting lot.
    for (lot, step) in made.iter().filter(|(lot, _)| !starts.contains(lot)) {
        outputs.entry(*step).or_default().push(*lot);
    }
    let mut shares: HashMap<DeedId, f64> = HashMap::with_capacity(waiting.len());
    let mut ready: Vec<(LotId, f64)> = starts.iter().map(|start| (*start, 1.0)).collect();
    while let Some((lot, share)) = ready.pop() {
        for used in uses.get(&lot).map_or(&[][..], Vec::as_slice) {
            let whole = used.step_milligrams;
            let part = if whole == 0 {
                0.0
            } else {
                share * used.milligrams as f64 / whole as f64
            };
            let step_share = shares.entry(used.step).or_default();
            *step_share += part;
            let left = waiting.get_mut(&used.step).expect("counted above");
            *left -= 1;
            if *left == 0 {
                ready.extend(
                    outputs
                        .get(&used.step)
                        .into_iter()
                        .flatten()
                        .map(|lot| (*lot, *step_share)),
                );
            }
        }
    }
    shares
}

/// Sums the shares of an animal's received lots.
pub fn by_animal(roots: &[(AnimalId, f64)]) -> BTreeMap<AnimalId, f64> {
    let mut shares = BTreeMap::new();
    for (animal, share) in roots {
        *shares.entry(*animal).or_insert(0.0) += share;
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A family as text: `a 3 + b* 1 -> c`, one step a line; a star marks a lot without any animal.
    fn family(text: &str) -> Ancestry {
        let mut ancestry = Ancestry::default();
        for (nth, line) in text
            .lines()
            .enumerate()
            .filter(|(_, line)| !line.is_empty())
        {
            let step = DeedId(nth as i32 + 1);
            let (inputs, outputs) = line.split_once("->").unwrap();
            let input = |input: &str| {
                let (name, grams) = input.trim().split_once(' ').unwrap();
                let milligrams = grams.trim().parse().unwrap();
                Use {
                    step,
                    lot: lot(name),
                    milligrams,
                    has_animal: !name.ends_with('*'),
                }
            };
            ancestry
                .uses
                .insert(step, inputs.split('+').map(input).collect());
            ancestry
                .made_by
                .extend(outputs.split_whitespace().map(|child| (lot(child), step)));
        }
        ancestry
    }

    fn lot(name: &str) -> LotId {
        LotId(i32::from(name.as_bytes()[0]))
    }

    fn name(lot: &LotId) -> char {
        lot.0 as u8 as char
    }

    fn check(text: &str, of: &str, expected: &str) {
        let shown: Vec<String> = family(text)
            .roots(lot(of))
            .iter()
            .map(|root| {
                format!(
                    "{} {:.3} {}",
                    name(&root.lot),
                    root.share,
                    root.via.iter().map(name).collect::<String>()
                )
            })
            .collect();
        assert_eq!(shown.join(", "), expected);
    }

    #[test]
    fn a_received_lot_is_its_own_root() {
        check("", "a", "a 1.000 ");
    }

    #[test]
    fn shares_follow_the_weights_of_what_has_an_animal() {
        check(
            "a 3 + b 1 + s* 9 -> c",
            "c",
            "a 0.750 a, b 0.250 b, s 0.000 s",
        );
        check(
            "a 3 + b 1 -> c\nc 2 + a 2 -> d",
            "d",
            "a 0.875 a, b 0.125 bc",
        );
    }

    #[test]
    fn rework_goes_round_without_end_and_stays_right() {
        check(
            "a 1 + b 1 -> c\nc 1 + b 1 -> d\nd 1 + b 1 -> e",
            "e",
            "b 0.875 b, a 0.125 acd",
        );
    }

    #[test]
    fn a_very_deep_family_does_not_overflow() {
        let mut ancestry = Ancestry::default();
        for nth in 1..200_000 {
            ancestry.made_by.insert(LotId(nth), DeedId(nth));
            let used = Use {
                step: DeedId(nth),
                lot: LotId(nth - 1),
                milligrams: 1,
                has_animal: true,
            };
            ancestry.uses.insert(DeedId(nth), vec![used]);
        }
        let roots = ancestry.roots(LotId(199_999));
        assert_eq!(
            (roots.len(), roots[0].lot, roots[0].via.len()),
            (1, LotId(0), 199_999)
        );
    }

    proptest! {
        /// Back and forward must agree, and the shares of all roots sum to 1.
        #[test]
        fn back_and_forward_agree(steps in prop::collection::vec(
            (prop::collection::vec((any::<prop::sample::Index>(), 1i64..5_000), 1..4), 1usize..3), 1..25,
        )) {
            let mut lots: Vec<LotId> = (0..4).map(LotId).collect();
            let mut ancestry = Ancestry::default();
            for (nth, (inputs, outputs)) in steps.iter().enumerate() {
                let step = DeedId(nth as i32);
                let used = |(at, milligrams): &(prop::sample::Index, i64)| {
                    Use { step, lot: lots[at.index(lots.len())], milligrams: *milligrams, has_animal: true }
                };
                ancestry.uses.insert(step, inputs.iter().map(used).collect());
                for _ in 0..*outputs {
                    let child = LotId(lots.len() as i32);
                    ancestry.made_by.insert(child, step);
                    lots.push(child);
                }
            }
            let last = *lots.last().unwrap();
            let roots = ancestry.roots(last);
            prop_assert!((roots.iter().map(|root| root.share).sum::<f64>() - 1.0).abs() < 1e-9);
            for root in roots {
                let share = forward_share(root.lot, last, &ancestry, &lots);
                prop_assert!((share - root.share).abs() < 1e-9, "{share} and {}", root.share);
            }
        }
    }

    fn forward_share(start: LotId, of: LotId, ancestry: &Ancestry, lots: &[LotId]) -> f64 {
        let mut reached = vec![start];
        for lot in lots {
            let touched = ancestry
                .uses_of(*lot)
                .iter()
                .any(|used| reached.contains(&used.lot));
            if touched && !reached.contains(lot) {
                reached.push(*lot);
            }
        }
        let made: Vec<_> = reached[1..]
            .iter()
            .map(|lot| (*lot, ancestry.made_by[lot]))
            .collect();
        let onward: Vec<Onward> = ancestry
            .uses
            .values()
            .flat_map(|uses| {
                uses.iter()
                    .map(|used| (used, uses.iter().map(|used| used.milligrams).sum()))
            })
            .filter(|(used, _)| reached.contains(&used.lot))
            .map(|(used, step_milligrams)| Onward {
                lot: used.lot,
                step: used.step,
                milligrams: used.milligrams,
                step_milligrams,
            })
            .collect();
        let shares = shares_forward(&[start], &made, &onward);
        if of == start {
            1.0
        } else {
            shares.get(&ancestry.made_by[&of]).copied().unwrap_or(0.0)
        }
    }
}
