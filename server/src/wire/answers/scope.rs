//! A scope, as it is answered.

use super::{Whereabouts, instant, shown_id};
use crate::wire::Weight;
use crate::wire::asked::canonical;
use crate::wire::scope::ScopeAsked;
use chrono_tz::Tz;
use domain::family::Lists;
use domain::scope::{Because, ByKey, InScope, Outside, Scope, reason};
use serde::Serialize;
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use std::io::{BufWriter, Write};
use utoipa::ToSchema;
use words::Speech;

/// What is affected, and why.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ScopeRead {
    /// Each lot, the oldest first.
    pub lots: Vec<ScopeLotRead>,
    /// The sums over the affected packs.
    pub totals: Whereabouts,
    /// What is deliberately outside.
    pub outside: Vec<OutsideRead>,
    /// Of question and answer: the same question of the same record gives the same.
    pub digest: String,
}

/// A lot in scope.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ScopeLotRead {
    /// Its code.
    pub code: String,
    /// Its code with hyphens, for the eye.
    pub shown: String,
    /// Its product.
    pub product: String,
    /// Is all of it affected since its birth?
    pub whole: bool,
    /// How many of its packs are affected, used-up ones included.
    pub affected_packs: usize,
    /// The affected packs of which something is left.
    pub packs: Vec<ScopePackRead>,
    /// Where the weight of the affected packs went.
    #[serde(flatten)]
    pub went: Whereabouts,
    /// Why it is in scope.
    pub because: Vec<ScopeBecause>,
    /// A word about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// An affected pack of which something is left.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ScopePackRead {
    /// Its number.
    pub pack: u32,
    /// What is left.
    pub left_grams: Weight,
    /// Where it is.
    pub place: String,
}

/// Why a lot is in scope.
#[derive(Debug, Clone, Default, Serialize, ToSchema)]
pub struct ScopeBecause {
    /// `named`, `made-of`, `shared-contact`, `was-there` or `done-by`.
    pub how: String,
    /// The lot through which: the direct input, or an affected lot that was there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub of: Option<String>,
    /// Where.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// From when on; left out = from the beginning.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<String>,
    /// Until when; left out = no clean-down yet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<String>,
    /// The lot's own doing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deed: Option<String>,
    /// In words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub says: Option<String>,
}

/// Something that is deliberately outside.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct OutsideRead {
    /// The lot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lot: Option<String>,
    /// The animal's id.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub animal: Option<String>,
    /// Why.
    pub why: String,
    /// The key of `why`.
    pub key: String,
}

/// What a scope is told with.
pub struct Telling<'a> {
    /// What things are called.
    pub lists: &'a Lists,
    /// The kitchen's time zone.
    pub zone: Tz,
    /// How the caller is spoken to.
    pub speech: Speech,
    /// The ids of the deeds that are named.
    pub deeds: &'a HashMap<i32, Vec<u8>>,
}

impl ScopeRead {
    /// The answer to a question.
    pub fn of(asked: &ScopeAsked, scope: &Scope, telling: &Telling<'_>) -> ScopeRead {
        let codes: ByKey<'_> = scope.lots.iter().map(|lot| (lot.id, lot)).collect();
        let mut read = ScopeRead {
            lots: scope
                .lots
                .iter()
                .map(|lot| telling.lot(lot, &codes))
                .collect(),
            totals: Whereabouts::of(&scope.totals),
            outside: scope.outside.iter().map(outside).collect(),
            digest: String::new(),
        };
        // Before any sentence is in it: the same in every language.
        read.digest = digest(asked, &read);
        let mut said = HashMap::new();
        for (lot, told) in scope.lots.iter().zip(&mut read.lots) {
            for (because, told) in lot.because.iter().zip(&mut told.because) {
                // What one step made of a lot is there for one reason, which is put into words once.
                let same = (because.how.as_str(), because.of, because.place);
                let says = said
                    .entry(same)
                    .or_insert_with(|| telling.says(because, &codes));
                told.says.clone_from(says);
            }
        }
        for (out, told) in scope.outside.iter().zip(&mut read.outside) {
            told.why = telling.speech.say(&out.why);
        }
        read
    }

    /// What is left of it, in packs and grams.
    pub fn on_hand(&self) -> (usize, Weight) {
        let packs = self.lots.iter().map(|lot| lot.packs.len()).sum();
        (packs, self.totals.on_hand_grams)
    }
}

/// The SHA-256 of a question and its answer. They are not put together first: an answer may have some thirty megabytes.
fn digest(asked: &ScopeAsked, read: &ScopeRead) -> String {
    let mut hash = Hashing(Sha256::new());
    hash.0.update(canonical(asked));
    hash.0.update("\n");
    let mut many = BufWriter::with_capacity(64 * 1024, &mut hash);
    let written = serde_json::to_writer(&mut many, read).map_err(std::io::Error::from);
    let written = written.and_then(|()| many.flush());
    debug_assert!(written.is_ok(), "what is hashed takes everything");
    drop(many);
    let hash = hash.0.finalize();
    hash.iter().map(|byte| format!("{byte:02x}")).collect()
}

struct Hashing(Sha256);

impl Write for Hashing {
    fn write(&mut self, some: &[u8]) -> std::io::Result<usize> {
        self.0.update(some);
        Ok(some.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

fn outside(of: &Outside) -> OutsideRead {
    OutsideRead {
        lot: of.lot.as_ref().map(ToString::to_string),
        animal: of.animal.as_deref().map(shown_id),
        why: String::new(),
        key: of.why.key().to_owned(),
    }
}

impl Telling<'_> {
    fn lot(&self, lot: &InScope, codes: &ByKey<'_>) -> ScopeLotRead {
        let pack = |pack: &domain::scope::ScopePack| ScopePackRead {
            pack: pack.number,
            left_grams: Weight(pack.left),
            place: self.lists.place_code(pack.place).to_owned(),
        };
        ScopeLotRead {
            code: lot.code.to_string(),
            shown: lot.code.shown(),
            product: lot.product.clone(),
            whole: lot.whole,
            affected_packs: lot.affected,
            packs: lot.packs.iter().map(pack).collect(),
            went: Whereabouts::of(&lot.went),
            because: lot
                .because
                .iter()
                .map(|of| self.because(of, codes))
                .collect(),
            note: lot.note.clone(),
        }
    }

    fn because(&self, of: &Because, codes: &ByKey<'_>) -> ScopeBecause {
        let time = |at: chrono::DateTime<chrono::Utc>| instant(at.naive_utc(), self.zone);
        let code = |lot| codes.get(&lot).map(|lot| lot.code.to_string());
        let deed = |deed: domain::lot::DeedId| self.deeds.get(&deed.0).map(|uid| shown_id(uid));
        ScopeBecause {
            how: of.how.as_str().to_owned(),
            of: of.of.and_then(code),
            place: of
                .place
                .map(|place| self.lists.place_code(place).to_owned()),
            from: of.from.map(time),
            until: of.until.map(time),
            deed: of.deed.and_then(deed),
            says: None,
        }
    }

    fn says(&self, of: &Because, codes: &ByKey<'_>) -> Option<String> {
        let says = reason(of, codes, self.lists, self.speech.language.tag())?;
        Some(self.speech.say(&says.into()))
    }
}
