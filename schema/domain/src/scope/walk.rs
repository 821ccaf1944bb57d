//! From where a question begins to everything that it reaches: what is made of it, and, where that is asked,
//! what shared a bench or a machine with it. It ends when nothing new is reached, in whatever order it went.

use super::When;
use super::start::{Onto, Seed};
use super::window::{self, Window, windows_of};
use super::world::{Happened, World};
use crate::lot::{DeedId, LotId, PackId, PlaceId};
use crate::words::{Account, words};
use chrono::{DateTime, Utc};
use std::collections::{BTreeMap, BTreeSet, HashMap, VecDeque};

words! {
    /// How far a question goes: to what is made of it; also to what shared a bench or a machine before it was
    /// cleaned.
    Spreads { Lineage = "lineage", Contact = "contact", }
}

/// How a question goes on from where it begins.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Question {
    /// How far.
    pub spreads: Spreads,
    /// From when on windows count (in).
    pub contact_from: Option<DateTime<Utc>>,
    /// Until when they count (out).
    pub contact_until: Option<DateTime<Utc>>,
    /// The lots that a person leaves out.
    pub without: BTreeSet<LotId>,
}

words! {
    /// The sorts of reason.
    How {
        Named = "named", MadeOf = "made-of", SharedContact = "shared-contact", WasThere = "was-there",
        DoneBy = "done-by",
    }
}

/// Why a lot is affected.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Because {
    /// How.
    pub how: How,
    /// The lot through which.
    pub of: Option<LotId>,
    /// Where.
    pub place: Option<PlaceId>,
    /// From when on; none is from the beginning.
    pub from: Option<DateTime<Utc>>,
    /// Until when; none is: no clean-down yet.
    pub until: Option<DateTime<Utc>>,
    /// The lot's own doing.
    pub deed: Option<DeedId>,
}

impl Because {
    /// A reason without more.
    pub const fn of(how: How) -> Because {
        Because {
            how,
            of: None,
            place: None,
            from: None,
            until: None,
            deed: None,
        }
    }
}

/// What of a lot is affected.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Affected {
    /// Is all of it affected since its birth?
    pub whole: bool,
    /// Its affected packs, and from when on.
    pub packs: BTreeMap<PackId, When>,
    /// Why, as it was reached.
    pub because: Vec<Because>,
}

/// Everything that was reached.
pub type Reached = BTreeMap<LotId, Affected>;

/// What matters and was not loaded.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Lacks {
    /// Deeds whose lots are not known.
    pub deeds: BTreeSet<DeedId>,
    /// Windows whose doings are not known.
    pub windows: BTreeSet<Window>,
}

enum Task {
    Pack(PackId),
    Window(Window),
}

struct Walk<'a> {
    world: &'a World,
    question: &'a Question,
    reached: Reached,
    opened: HashMap<Window, LotId>,
    tasks: VecDeque<Task>,
    lacks: Lacks,
}

/// Everything that the seeds reach.
///
/// # Errors
/// What it lacks: load that, and ask again.
pub fn walk(world: &World, question: &Question, seeds: &[Seed]) -> Result<Reached, Lacks> {
    let mut walk = Walk {
        world,
        question,
        reached: Reached::new(),
        opened: HashMap::new(),
        tasks: VecDeque::new(),
        lacks: Lacks::default(),
    };
    for seed in seeds {
        match seed.onto {
            Onto::Lot(lot) => walk.whole(lot, seed.because),
            Onto::Pack(pack, since) => walk.pack(pack, since, seed.because),
        }
    }
    while let Some(task) = walk.tasks.pop_front() {
        match task {
            Task::Pack(pack) => walk.onward(pack),
            Task::Window(window) => walk.shared(window),
        }
    }
    match walk.lacks == Lacks::default() {
        true => Ok(walk.reached),
        false => Err(walk.lacks),
    }
}

impl Walk<'_> {
    /// A lot is affected with all its packs since birth.
    fn whole(&mut self, lot: LotId, because: Because) {
        let Some(of) = self.world.lots.get(&lot) else {
            return;
        };
        if self.question.without.contains(&lot) {
            return;
        }
        let affected = self.reached.entry(lot).or_default();
        // Once all of it is, more contact says nothing new; what it is made of does.
        let is_new = !affected.whole || because.how != How::SharedContact;
        if is_new && !affected.because.contains(&because) {
            affected.because.push(because);
        }
        if affected.whole {
            return;
        }
        affected.whole = true;
        for pack in &of.packs {
            affected.packs.insert(pack.id, When::BIRTH);
            self.tasks.push_back(Task::Pack(pack.id));
        }
        let made = &self.world.deeds[&of.made_by];
        if let Some(place) = made.place.filter(|_| made.makes_there()) {
            self.open(made.id, place, lot);
        }
    }

    /// A pack is affected from a moment on.
    fn pack(&mut self, pack: PackId, since: When, because: Because) {
        let Some((lot, _)) = self.world.pack(pack) else {
            return;
        };
        if self.question.without.contains(&lot.id) {
            return;
        }
        let affected = self.reached.entry(lot.id).or_default();
        let earlier = affected.packs.get(&pack).is_none_or(|known| since < *known);
        if !earlier {
            return;
        }
        affected.packs.insert(pack, since);
        if !affected.because.contains(&because) {
            affected.because.push(because);
        }
        self.tasks.push_back(Task::Pack(pack));
    }

    /// What was made of an affected pack from its moment on, and where it was.
    fn onward(&mut self, pack: PackId) {
        let Some((lot, life)) = self.world.pack(pack) else {
            return;
        };
        let since = self.reached[&lot.id].packs[&pack];
        let since = |of: &&Happened| self.world.when(of) >= since;
        let happened: Vec<Happened> = life.happened.iter().filter(since).copied().collect();
        for of in happened {
            if of.account == Account::Used {
                self.made_of(lot.id, of.deed);
            }
            if let Some(place) = self.world.where_done(&of) {
                self.open(of.deed, place, lot.id);
            }
        }
    }

    fn made_of(&mut self, lot: LotId, deed: DeedId) {
        let Some(made) = self.world.made_by.get(&deed) else {
            self.lacks.deeds.insert(deed);
            return;
        };
        for made in made.clone() {
            let because = Because {
                of: Some(lot),
                deed: Some(deed),
                ..Because::of(How::MadeOf)
            };
            self.whole(made, because);
        }
    }

    /// An affected pack was in a doing: the windows in which that stands are affected.
    fn open(&mut self, deed: DeedId, place: PlaceId, lot: LotId) {
        if self.question.spreads != Spreads::Contact {
            return;
        }
        let doing = &self.world.deeds[&deed];
        let Some(range) = windows_of(doing, place, &self.world.cleaned) else {
            return;
        };
        for nth in range {
            let window = Window { place, nth };
            self.opened.entry(window).or_insert_with(|| {
                self.tasks.push_back(Task::Window(window));
                lot
            });
        }
    }

    /// Everything in an affected window.
    fn shared(&mut self, window: Window) {
        let Some(doings) = self.world.windows.get(&window) else {
            self.lacks.windows.insert(window);
            return;
        };
        let cut = (self.question.contact_from, self.question.contact_until);
        let (from, until) = window.bounds(&self.world.cleaned);
        let because = Because {
            of: self.opened.get(&window).copied(),
            place: Some(window.place),
            from: from.max(cut.0),
            until: [until, cut.1].into_iter().flatten().min(),
            ..Because::of(How::SharedContact)
        };
        for deed in doings {
            let doing = &self.world.deeds[deed];
            if !window::is_in_cut(doing, window, &self.world.cleaned, cut) {
                continue;
            }
            let because = Because {
                deed: Some(*deed),
                ..because
            };
            self.done_in(*deed, window.place, because);
        }
    }

    fn done_in(&mut self, deed: DeedId, place: PlaceId, because: Because) {
        let doing = &self.world.deeds[&deed];
        if doing.place == Some(place) && doing.makes_there() {
            for made in self.world.made_by.get(&deed).cloned().unwrap_or_default() {
                self.whole(made, because);
            }
        }
        let when = doing.when();
        for pack in self.world.touched(deed) {
            let Some((lot, life)) = self.world.pack(pack) else {
                continue;
            };
            let mut own = life.happened.iter().filter(|of| of.deed == deed);
            let was_there = own.any(|of| self.world.where_done(of) == Some(place));
            let is_left = self.world.left_after(life, when) > crate::grams::Grams::ZERO;
            if was_there && lot.has_species && is_left {
                self.pack(pack, when, because);
            }
        }
    }
}
