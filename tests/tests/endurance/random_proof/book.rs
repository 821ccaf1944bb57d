//! What was done, as it is believed now, and what follows from it by brute force: what may be ready, which dates
//! bind, what nobody may get without a word.

use chrono::{DateTime, Utc};
use std::collections::{BTreeMap, BTreeSet};

/// How hot a cook was.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Heat {
    /// Nobody measured, or it was far from enough.
    Nothing,
    /// 145 °F and no more than half a minute: enough for whole meat alone (`us-1.8`).
    Whole,
    /// Enough for whatever there is.
    Enough,
}

/// Where a lot comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Root {
    Animal,
    /// Bought; is it food of an animal?
    Bought {
        of_animal: bool,
    },
    /// A pot that nobody knows.
    Adopted,
    /// Made here.
    Made,
}

/// A fact that a correction may say otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fact {
    Heat(Heat),
    Stuffed(Option<bool>),
    Ready(bool),
}

/// A deed.
#[derive(Debug, Clone)]
pub struct Deed {
    pub id: String,
    pub voided: bool,
    /// The lot of which it says a fact anew, and the fact.
    pub says: Option<(String, Fact)>,
}

/// A lot.
#[derive(Debug, Clone)]
pub struct Lot {
    pub deed: usize,
    pub root: Root,
    pub product: &'static str,
    pub step: &'static str,
    pub inputs: Vec<(String, i64)>,
    /// How many grams of each pack are left, as far as anybody knows.
    pub packs: Vec<i64>,
    /// From when on it stood where, by the deed that put it there.
    pub stood: Vec<(usize, DateTime<Utc>, &'static str)>,
    /// The facts as they were told first.
    pub heat: Heat,
    pub stuffed: Option<bool>,
    pub ready: bool,
    /// What was read of it, by which deed: when, and whether that was too warm.
    pub read: Vec<(usize, DateTime<Utc>, bool)>,
    /// Was it ever let go by a person?
    pub let_go: bool,
    /// The packs that a customer had, by the take-back.
    pub back: Vec<(usize, usize)>,
}

/// Everything.
#[derive(Default)]
pub struct Book {
    pub deeds: Vec<Deed>,
    pub lots: BTreeMap<String, Lot>,
    pub order: Vec<String>,
    /// When which place was warm, by its deed.
    pub warm: Vec<(usize, &'static str, DateTime<Utc>, DateTime<Utc>)>,
}

/// What holds of the lots now.
pub struct Held<'a> {
    pub ready: BTreeMap<&'a str, bool>,
    /// Was it cooked so that whatever was raw in it is killed?
    pub killed: BTreeSet<&'a str>,
}

impl Book {
    pub fn is_void(&self, code: &str) -> bool {
        self.deeds[self.lots[code].deed].voided
    }

    /// The last fact of its sort that anybody told of a lot and nobody took back.
    fn told<T>(&self, code: &str, first: T, of: impl Fn(Fact) -> Option<T>) -> T {
        let said = self.deeds.iter().filter(|deed| !deed.voided);
        let said = said.filter_map(|deed| deed.says.as_ref());
        let said = said.filter(|(lot, _)| lot == code);
        said.filter_map(|(_, fact)| of(*fact))
            .last()
            .unwrap_or(first)
    }

    fn heat(&self, code: &str) -> Heat {
        self.told(code, self.lots[code].heat, |fact| match fact {
            Fact::Heat(heat) => Some(heat),
            _ => None,
        })
    }

    fn stuffed(&self, code: &str) -> Option<bool> {
        self.told(code, self.lots[code].stuffed, |fact| match fact {
            Fact::Stuffed(stuffed) => Some(stuffed),
            _ => None,
        })
    }

    fn of_animal(&self, code: &str) -> bool {
        self.lots[code].root != Root::Bought { of_animal: false }
    }

    /// What it was made of, all the way back, itself too.
    pub fn line(&self, code: &str) -> BTreeSet<String> {
        let mut open = vec![code.to_owned()];
        let mut seen = BTreeSet::new();
        while let Some(code) = open.pop() {
            if seen.insert(code.clone()) {
                open.extend(self.lots[&code].inputs.iter().map(|(lot, _)| lot.clone()));
            }
        }
        seen
    }

    /// Is something that is no seasoning in the raw meat that went into it, and nobody says that it fills nothing?
    fn is_stuffed(&self, code: &str, ready: &BTreeMap<&str, bool>) -> bool {
        let lot = &self.lots[code];
        if !matches!(lot.step, "cook" | "mix") {
            return false;
        }
        let sum = |of: &dyn Fn(&str) -> bool| -> i64 {
            let parts = lot.inputs.iter().filter(|(lot, _)| of(lot));
            parts.map(|(_, grams)| grams).sum()
        };
        let meat = sum(&|of| self.of_animal(of) && !ready[of]);
        let bread = sum(&|of| !self.of_animal(of));
        match self.stuffed(code) {
            Some(said) => said && meat > 0,
            None => meat > 0 && bread * 50 > meat,
        }
    }

    /// What may be ready, at the most.
    pub fn held(&self) -> Held<'_> {
        let mut held = Held {
            ready: BTreeMap::new(),
            killed: BTreeSet::new(),
        };
        for code in &self.order {
            let lot = &self.lots[code];
            let is_ready = match lot.root {
                Root::Animal | Root::Adopted => false,
                Root::Bought { of_animal: false } => true,
                Root::Bought { of_animal: true } => self.told(code, lot.ready, |fact| match fact {
                    Fact::Ready(ready) => Some(ready),
                    _ => None,
                }),
                Root::Made => {
                    let killed = lot.step == "cook" && self.is_enough(code, &held.ready);
                    if killed {
                        held.killed.insert(code);
                    }
                    killed || lot.inputs.iter().all(|(lot, _)| held.ready[lot.as_str()])
                }
            };
            held.ready.insert(code, is_ready || lot.let_go);
        }
        held
    }

    fn is_enough(&self, code: &str, ready: &BTreeMap<&str, bool>) -> bool {
        match self.heat(code) {
            Heat::Nothing => false,
            Heat::Enough => true,
            Heat::Whole => {
                let line = self.line(code);
                let ground = line.iter().any(|of| self.lots[of].step == "grind");
                let mut before = line.iter().filter(|of| *of != code);
                let stuffed = before.any(|of| self.is_stuffed(of, ready));
                let whole = self.lots[code].product == "fillet";
                whole && !ground && !stuffed && !self.is_stuffed(code, ready)
            }
        }
    }

    /// Does anything unknown, or anything that a customer had, stand behind it that nobody let go?
    pub fn is_tainted(&self, code: &str) -> bool {
        let line = self.line(code);
        let let_go = line.iter().any(|of| self.lots[of].let_go);
        let unknown = |of: &String| self.lots[of].root == Root::Adopted && !self.is_void(of);
        !let_go && line.iter().any(unknown)
    }

    /// Is there nothing in it but what keeps anywhere? Warmth does it no harm.
    pub fn keeps_anywhere(&self, code: &str) -> bool {
        self.line(code).iter().all(|of| {
            matches!(
                self.lots[of].root,
                Root::Made | Root::Bought { of_animal: false }
            )
        })
    }

    /// Did a customer have that pack?
    pub fn was_back(&self, code: &str, pack: usize) -> bool {
        let mut back = self.lots[code].back.iter();
        back.any(|(of, deed)| *of == pack && !self.deeds[*deed].voided)
    }

    /// The longest time, in minutes, from one warm reading of a lot to another with nothing cold in between. How what
    /// comes out of the heat cools is another matter.
    pub fn found_warm_minutes(&self, code: &str) -> i64 {
        let lot = &self.lots[code];
        if lot.step == "cook" {
            return 0;
        }
        let counts = |(deed, ..): &&(usize, DateTime<Utc>, bool)| !self.deeds[*deed].voided;
        let (mut since, mut most) = (None, 0);
        for (_, at, warm) in lot.read.iter().filter(counts) {
            since = warm.then(|| since.unwrap_or(*at));
            most = most.max(since.map_or(0, |since| (*at - since).num_minutes()));
        }
        most
    }

    /// For how many minutes a lot was warm for sure: the times in which its place was, from beginning to end of
    /// which it stood there.
    pub fn warm_minutes(&self, code: &str) -> i64 {
        let stood = self.lots[code].stood.iter();
        let stood: Vec<_> = stood
            .filter(|(deed, ..)| !self.deeds[*deed].voided)
            .collect();
        let mut spells = Vec::new();
        for (deed, place, from, until) in &self.warm {
            let mut before = stood.iter().filter(|(_, at, _)| at <= from);
            let there = before.next_back().is_some_and(|(.., at)| at == place);
            let moved = stood.iter().any(|(_, at, _)| at > from && at <= until);
            if !self.deeds[*deed].voided && there && !moved {
                spells.push((*from, *until));
            }
        }
        spells.sort_unstable();
        let mut reached = None;
        let mut minutes = 0;
        for (from, until) in spells {
            let from = reached.map_or(from, |reached: DateTime<Utc>| reached.max(from));
            minutes += (until - from).num_minutes().max(0);
            reached = reached.max(Some(until));
        }
        minutes
    }
}
