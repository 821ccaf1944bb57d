//! What the thumb does with a pack: each word has its own acts, the likeliest first.

use super::basket::Basket;
use super::managers::managers;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Caller;
use domain::counter::{Known, ScanView};
use domain::grams::Grams;
use domain::lot::Pack;
use domain::right::Right;
use domain::words::{Being, State, Verdict};
use rust_decimal::Decimal;
use serde_json::{Number, Value, json};

/// One act under the thumb.
pub struct Act {
    /// Its words.
    pub says: String,
    /// What follows from it, small below.
    pub small: Option<String>,
    /// Is it the likeliest?
    pub first: bool,
    /// What it is.
    pub does: Does,
}

/// What an act is.
pub enum Does {
    /// It leads somewhere.
    Goes(String),
    /// It is a call of the API: where it is sent, and its body.
    Deed(&'static str, String),
    /// It is several departures.
    Sells(String),
    /// It puts the cursor into the box.
    Types,
    /// It takes a photo.
    Photo,
    /// It is only said: whom to call.
    Says,
}

/// What may be done with what was scanned; without a scan, with what the guest has already.
pub fn acts(app: &Caller<'_>, words: &Words, scan: Option<&ScanView>, basket: &Basket) -> Vec<Act> {
    let found = Found { app, words, basket };
    let Some(scan) = scan else {
        return match basket.packs {
            0 => Vec::new(),
            _ => found.sold().into_iter().collect(),
        };
    };
    let Some(known) = scan.known.as_ref() else {
        return found.of_unknown();
    };
    let mut acts = match scan.answer.verdict {
        Verdict::Sell | Verdict::SellToday => found.of_sellable(known),
        Verdict::Hold => vec![found.call_manager(), found.see_why(known)],
        Verdict::Pull => found.of_past(known),
        Verdict::NotForSale => found.of_not_for_sale(known),
        Verdict::Gone => found.of_gone(known),
        Verdict::Unknown => found.of_unknown(),
    };
    found.back_to_basket(&mut acts);
    let led = acts.iter().any(|act| act.first);
    if let Some(first) = acts.first_mut().filter(|_| !led) {
        first.first = true;
    }
    acts
}

struct Found<'a> {
    app: &'a Caller<'a>,
    words: &'a Words,
    basket: &'a Basket,
}

impl Found<'_> {
    fn may(&self, right: Right) -> bool {
        self.app.who.may(right)
    }

    fn act(&self, key: &str, does: Does) -> Act {
        Act {
            says: self.words.t(key),
            small: None,
            first: false,
            does,
        }
    }

    /// Where the next pack for the same guest is scanned.
    fn next(&self, with: &str) -> Act {
        let path = match with.is_empty() {
            true => "/counter".to_owned(),
            false => format!("/counter?with={with}"),
        };
        self.act("page-counter-next", Does::Goes(path))
    }

    /// What the guest has already is not lost over a pack that cannot be sold: the way back to it.
    fn back_to_basket(&self, acts: &mut Vec<Act>) {
        let way = format!("/counter?with={}", self.basket.with_before);
        let leads = |act: &Act| matches!(&act.does, Does::Goes(path) if *path == way);
        let sells = |act: &Act| matches!(act.does, Does::Sells(_));
        if self.basket.with_before.is_empty() || acts.iter().any(|act| leads(act) || sells(act)) {
            return;
        }
        // A wrong scan is commoner than a pack that comes back: the way on is the button that a thumb finds.
        acts.truncate(1);
        acts.iter_mut().for_each(|act| act.first = false);
        acts.push(Act {
            first: true,
            ..self.act("page-counter-back", Does::Goes(way))
        });
    }

    fn sold(&self) -> Option<Act> {
        let deeds = self
            .basket
            .deeds
            .clone()
            .filter(|_| self.may(Right::Sell))?;
        let packs = self.basket.packs;
        Some(Act {
            says: match packs {
                1 => self.words.t("page-sold"),
                _ => self.words.say(PageSays::SoldAll { packs }),
            },
            small: self.basket.total.clone().filter(|_| packs > 1),
            first: true,
            does: Does::Sells(deeds),
        })
    }

    fn of_sellable(&self, known: &Known) -> Vec<Act> {
        // A lot of several packs is not sold whole: the pack that the guest takes is scanned, or chosen on the page.
        if known.pack.is_none() {
            return vec![self.next(&self.basket.with_before)];
        }
        let next = self.act(
            "page-counter-next-same",
            Does::Goes(format!("/counter?with={}", self.basket.with_all)),
        );
        [Some(next), self.sold()].into_iter().flatten().collect()
    }

    /// Who may let it go.
    fn call_manager(&self) -> Act {
        Act {
            says: self.words.t("page-counter-call"),
            small: managers(self.app),
            first: false,
            does: Does::Says,
        }
    }

    fn see_why(&self, known: &Known) -> Act {
        let pack = known.pack.filter(|_| known.lot.pack_count > 1);
        let pack = pack.map_or_else(String::new, |pack| format!("&pack={pack}"));
        let path = format!("/lots/{}?why=counter{pack}", known.lot.code);
        self.act("page-counter-why", Does::Goes(path))
    }

    fn of_past(&self, known: &Known) -> Vec<Act> {
        let left = known.pack().filter(|pack| !pack.now.left.is_none_left());
        let mut acts = Vec::new();
        if let Some(pack) = left.filter(|_| self.may(Right::Sell)) {
            acts.push(self.elsewhere(known, pack, "discard", "page-counter-other-why"));
            acts.push(self.discard(known, pack, "page-why-past"));
        } else {
            acts.push(self.see_why(known));
        }
        acts
    }

    fn discard(&self, known: &Known, pack: &Pack, why: &str) -> Act {
        let body = json!({
            "kind": "discard", "lot": known.lot.code.to_string(), "packs": [pack.number],
            "why": self.words.t(why),
        });
        let weight = pack.now.left;
        Act {
            says: self.words.t("page-counter-take-off"),
            small: Some(self.words.say(PageSays::CounterDiscard { weight })),
            first: true,
            does: Does::Deed("/api/departures", body.to_string()),
        }
    }

    /// An act that has a page of its own.
    fn elsewhere(&self, known: &Known, pack: &Pack, act: &str, key: &str) -> Act {
        let path = format!("/lots/{}/{act}?packs={}", known.lot.code, pack.number);
        self.act(key, Does::Goes(path))
    }

    fn of_not_for_sale(&self, known: &Known) -> Vec<Act> {
        let pack = known.pack();
        let frozen = pack.filter(|pack| pack.now.state == State::Frozen && self.may(Right::Work));
        let back = pack.filter(|pack| pack.now.taken_back && self.may(Right::Sell));
        // Three are too many for one thumb: why is one of them only where nothing can be done about it.
        let thaw = frozen.map(|pack| self.elsewhere(known, pack, "thaw", "page-counter-thaw"));
        let done = thaw
            .or_else(|| back.map(|pack| self.discard(known, pack, "page-counter-came-back-why")));
        let mut acts = vec![done.unwrap_or_else(|| self.see_why(known))];
        acts.push(Act {
            first: acts.iter().all(|act| !act.first),
            ..self.next(&self.basket.with_before)
        });
        acts
    }

    fn of_gone(&self, known: &Known) -> Vec<Act> {
        let lot = known.lot.code.to_string();
        let Some(pack) = known.pack() else {
            return vec![self.see_why(known)];
        };
        let mut acts = Vec::new();
        if pack.now.being == Being::Sold && self.may(Right::Sell) {
            let why = self.words.t("page-counter-came-back-why");
            let body = json!({ "lot": lot, "pack": pack.number, "why": why });
            let deed = Does::Deed("/api/take-backs", body.to_string());
            acts.push(self.act("page-counter-came-back", deed));
        }
        // What was thrown away is looked into before anybody says that it never left.
        if pack.now.being == Being::Discarded {
            acts.push(self.see_why(known));
        }
        if self.may(Right::Work) {
            let body = json!({
                "lot": lot, "packs": [{ "pack": pack.number, "grams": figure(pack.made) }],
            });
            let deed = Does::Deed("/api/counts", body.to_string());
            acts.push(Act {
                small: Some(self.words.grams(pack.made)),
                ..self.act("page-counter-never-left", deed)
            });
        }
        if acts.is_empty() {
            acts.push(self.see_why(known));
        }
        acts
    }

    fn of_unknown(&self) -> Vec<Act> {
        vec![
            Act {
                first: true,
                ..self.act("page-counter-type", Does::Types)
            },
            self.act("page-counter-photo", Does::Photo),
        ]
    }
}

/// A weight as the API takes it: grams, a number.
fn figure(weight: Grams) -> Value {
    let text = Decimal::new(weight.milligrams(), 3).normalize().to_string();
    serde_json::from_str::<Number>(&text).map_or(Value::Null, Value::Number)
}
