//! Incidents, as they are answered.

use super::{ScopeLotRead, ScopeRead};
use crate::deeds::DeedAnswer;
use crate::recall::Notice;
use crate::recall::facts::{
    DisposalFacts, IncidentFacts, PackFacts, PersonFacts, PlaceFacts, SoldFacts, SumsFacts,
};
use crate::wire::Weight;
use crate::wire::scope::ScopeAsked;
use domain::says::Says;
use serde::Serialize;
use utoipa::ToSchema;
use words::Speech;

/// What was done in an incident.
#[derive(Debug, Default, Serialize, ToSchema)]
pub struct IncidentDone {
    /// The id of this deed; of the first, that is the incident's.
    pub id: String,
    /// The incident's number.
    pub number: String,
    /// Is it a drill?
    pub drill: bool,
    /// Entered later than it happened.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub late: bool,
    /// How many packs it holds on hand, where this act held any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub held_packs: Option<usize>,
    /// What they weigh.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub held_grams: Option<Weight>,
    /// What is in scope.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scope_digest: Option<String>,
    /// The lots in scope.
    pub lots: Vec<ScopeLotRead>,
    /// Lots that this act holds and that were not held before.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub added: Vec<String>,
    /// Lots that it holds and that are no longer in scope: they are held until they are let go.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub left: Vec<String>,
    /// Nothing is wrong, but look.
    pub warnings: Vec<String>,
    /// The key of each warning.
    pub warning_keys: Vec<String>,
    /// What becomes of the two.
    #[serde(skip)]
    pub said: Vec<Says>,
}

impl DeedAnswer for IncidentDone {
    fn entered_late(&mut self, late: bool) {
        self.late = late;
    }

    fn also(&mut self, said: Vec<Says>) {
        self.said.extend(said);
    }

    fn tell(&mut self, speech: &Speech) {
        self.warnings = self.said.iter().map(|says| speech.say(says)).collect();
        self.warning_keys = self.said.iter().map(|says| says.key().to_owned()).collect();
    }
}

/// All incidents.
#[derive(Debug, Serialize, ToSchema)]
pub struct IncidentsRead {
    /// The newest first.
    pub incidents: Vec<IncidentBrief>,
}

/// An incident in short.
#[derive(Debug, Serialize, ToSchema)]
pub struct IncidentBrief {
    /// Its id.
    pub id: String,
    /// Its number.
    pub number: String,
    /// Who told it.
    pub told_by: String,
    /// When they told it.
    pub told_at: String,
    /// What it is about.
    pub hazard: String,
    /// Is it a drill?
    pub drill: bool,
    /// Does it hold what is in its scope?
    pub holds: bool,
    /// Is it open still?
    pub open: bool,
    /// Why.
    pub why: String,
}

/// An incident.
#[derive(Debug, Serialize, ToSchema)]
pub struct IncidentRead {
    /// In short.
    #[serde(flatten)]
    pub brief: IncidentBrief,
    /// Are guests told who read the code of a pack in scope?
    pub guests: bool,
    /// What was asked last.
    pub question: ScopeAsked,
    /// What that reaches now, with what was cleaned as it was known then.
    pub scope: ScopeRead,
    /// How many packs on hand stand under its holds.
    pub held_packs: usize,
    /// What they weigh.
    pub held_grams: Weight,
    /// Each act that said how far it goes.
    pub scopes: Vec<IncidentScopeRead>,
    /// Who was told, what they answered, what else was noted.
    pub notes: Vec<IncidentNoteRead>,
    /// What was done when, from the call on.
    pub milestones: Vec<MilestoneRead>,
    /// What was found, what is missing, what came back, place by place.
    pub count: CountRead,
    /// Whom to call one step back.
    pub sources: Vec<PersonFacts>,
    /// Whom to call one step forward: businesses that any of it was shipped to.
    pub customers: Vec<PersonFacts>,
    /// What was sold, by day and hour.
    pub sold: Vec<SoldFacts>,
    /// What became of what was held.
    pub disposals: Vec<DisposalFacts>,
    /// The text of the notice to customers and of that on the shelf, in each of the kitchen's languages.
    pub notices: Vec<Notice>,
}

/// The count of an incident: book + back + surplus = missing + destroyed + returned + gone + left.
#[derive(Debug, Serialize, ToSchema)]
pub struct CountRead {
    /// What became of everything since the call.
    #[serde(flatten)]
    pub sums: SumsFacts,
    /// How many packs there are to count.
    pub packs: usize,
    /// How many of them nobody has counted.
    pub uncounted_packs: usize,
    /// How many of them nobody has looked for.
    pub waiting_packs: usize,
    /// Where there is something to count, as one walks.
    pub places: Vec<PlaceFacts>,
    /// Each lot with something to count, or that came back.
    pub lots: Vec<CountLotRead>,
}

/// The count of a lot.
#[derive(Debug, Serialize, ToSchema)]
pub struct CountLotRead {
    /// Its code.
    pub code: String,
    /// Its code with hyphens, for the eye.
    pub shown: String,
    /// Its product.
    pub product: String,
    /// Its sums.
    #[serde(flatten)]
    pub sums: SumsFacts,
    /// Its packs.
    pub packs: Vec<PackFacts>,
}

impl CountRead {
    /// Of an incident.
    pub fn of(facts: &IncidentFacts) -> CountRead {
        let lots = facts.lots.iter().filter(|lot| !lot.packs.is_empty());
        CountRead {
            sums: facts.sums.clone(),
            packs: facts.to_count,
            uncounted_packs: facts.uncounted,
            waiting_packs: facts.waiting,
            places: facts.places.clone(),
            lots: lots
                .map(|lot| CountLotRead {
                    code: lot.code.clone(),
                    shown: lot.shown.clone(),
                    product: lot.product.clone(),
                    sums: lot.sums.clone(),
                    packs: lot.packs.clone(),
                })
                .collect(),
        }
    }
}

/// An act that said how far an incident goes.
#[derive(Debug, Serialize, ToSchema)]
pub struct IncidentScopeRead {
    /// The deed.
    pub id: String,
    /// When.
    pub at: String,
    /// Who.
    pub by: String,
    /// Of question and answer as they were then.
    pub digest: String,
    /// How many lots it reached then.
    pub lots: i32,
    /// Why.
    pub why: String,
}

/// A note of an incident.
#[derive(Debug, Serialize, ToSchema)]
pub struct IncidentNoteRead {
    /// The deed.
    pub id: String,
    /// When.
    pub at: String,
    /// Who noted it.
    pub by: String,
    /// `told`, `answered`, `note`, `shown`, `hidden`, `disposed` or `closed`.
    pub kind: String,
    /// Who was told, or who answered.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub whom: Option<String>,
    /// What.
    pub text: String,
}

/// What was done when.
#[derive(Debug, Serialize, ToSchema)]
pub struct MilestoneRead {
    /// `called`, `scoped`, `held`, `located`, `counted`, `told`, `disposed` or `closed`.
    pub what: String,
    /// In words.
    pub says: String,
    /// When.
    pub at: String,
    /// How many seconds after the call.
    pub seconds: i64,
}
