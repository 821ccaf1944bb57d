//! The condition of a lot that a step makes: folded from what went in and from what the step proves.

use super::stable::holds_no_water;
use super::{Condition, ConditionSays, Proven, Stable};
use crate::dates::{Because, Rule};
use crate::lot::LotId;
use crate::product::Product;
use crate::rows::RowId;
use crate::says::Says;
use crate::words::{ConditionKind, Natural, ProductKind, ProvedBy, StableBy, StepKind};

/// What went in, as far as a condition follows from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// Of which lot it is.
    pub lot: LotId,
    /// Its name, and how its label shows it.
    pub shown: Says,
    /// What it is.
    pub condition: Condition,
    /// Is there anything of an animal in it?
    pub of_animal: bool,
    /// Is it of an animal whose meat may carry trichinae?
    pub may_carry: bool,
    /// What sort of thing it is by its product.
    pub sort: ProductKind,
    /// What it is of the closed list of what keeps by nature, if it is.
    pub natural: Option<Natural>,
}

/// Times and temperatures that reach a row, or a pot that boiled.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeatProof {
    /// A row of the law, or common practice.
    pub by: ProvedBy,
    /// What was reached, in words.
    pub says: Says,
    /// The rows that it meets.
    pub rows: Vec<RowId>,
}

/// A lot that a step makes.
#[derive(Debug)]
pub struct Born<'a> {
    /// By which step.
    pub kind: StepKind,
    /// What it is.
    pub product: &'a Product,
    /// What went in.
    pub parts: &'a [Part],
    /// Was water added, or ice, or steam?
    pub watered: bool,
    /// The proof that its times and temperatures give, if they do.
    pub heat: Option<&'a HeatProof>,
    /// The number of an approval that says it is ready, if one holds on that day.
    pub approved: Option<&'a str>,
    /// What shows that no trichinae are in what went in, if that is shown.
    pub freed: Option<&'a [Because]>,
    /// What shows that it needs no control, beside what went in.
    pub stable: Option<&'a Stable>,
}

impl Born<'_> {
    /// What it is, and why. Only heat that reaches a row, a named approval or parts that are all ready
    /// make it ready; the step's name does not.
    pub fn condition(&self) -> Proven {
        let (is, because) = self.is();
        let mut because = vec![because];
        if is.by == ProvedBy::Approved {
            because.extend(self.freed.into_iter().flatten().cloned());
        }
        let stable = self.stable(is.is_ready(), &mut because);
        Proven {
            condition: is
                .and_stable(stable)
                .and_partly_cooked(self.is_partly_cooked()),
            because,
        }
    }

    fn is(&self) -> (Condition, Because) {
        if let Some(heat) = self.heat {
            let says = ConditionSays::Proven {
                says: heat.says.clone(),
            };
            let rule = match heat.rows.is_empty() {
                true => Rule::Practice(ConditionSays::ProofRule.into()),
                false => Rule::Rows(heat.rows.clone()),
            };
            let because = Because {
                says: says.into(),
                rule,
            };
            // What is listed as raw keeps by the days of raw food, and so is never ready: cook it into what is.
            return match self.product.raw {
                true => (Condition::treated(heat.by), because),
                false => (Condition::ready(heat.by), because),
            };
        }
        if let Some(number) = self.approved {
            let number = number.to_owned();
            let Some(part) = self.carrier() else {
                let says = ConditionSays::Approved { number };
                let because = Because::house(says, ConditionSays::ApprovalRule);
                return (Condition::ready(ProvedBy::Approved), because);
            };
            let part = part.shown.clone();
            let says = ConditionSays::ApprovedNotFreed { number, part };
            return (Condition::TREATED, practice(says));
        }
        let Some(part) = self.parts.iter().find(|part| !part.condition.is_ready()) else {
            let says = ConditionSays::PartsReady {
                kind: self.kind.into(),
            };
            return (Condition::ready(ProvedBy::Parts), practice(says));
        };
        let treats = matches!(
            self.kind,
            StepKind::Cure | StepKind::Smoke | StepKind::Cook | StepKind::Render | StepKind::Hang
        );
        let all_treated = self
            .parts
            .iter()
            .filter(|part| part.of_animal)
            .all(|part| part.condition.is != ConditionKind::Raw);
        if treats {
            let kind = self.kind.into();
            return (
                self.treated(),
                practice(ConditionSays::NothingProves { kind }),
            );
        }
        let says = ConditionSays::NotReadyPart {
            part: part.shown.clone(),
        };
        match all_treated {
            true => (self.treated(), practice(says)),
            false => (Condition::RAW, practice(says)),
        }
    }

    /// What nothing proves ready now. What was cooked through before stays so, whatever it is packed or smoked as.
    fn treated(&self) -> Condition {
        let is = |part: &Part| part.condition;
        let mut meat = self.parts.iter().filter(|part| part.of_animal).map(is);
        let through = meat.clone().find(|is| is.is_cooked_through());
        let all = meat.all(|is| is.is_ready() || is.is_cooked_through());
        let kept = through.filter(|_| all);
        kept.map_or(Condition::TREATED, |is| Condition::treated(is.by))
    }

    /// Does meat go in that was warmed and not proven, or is it warmed now? Heat that proves it ends that.
    fn is_partly_cooked(&self) -> bool {
        if self.heat.is_some() {
            return false;
        }
        let warms = matches!(self.kind, StepKind::Cook | StepKind::Render);
        let mut parts = self.parts.iter();
        parts.any(|part| {
            let is = part.condition;
            let is_meat = part.of_animal && !is.is_ready() && !is.is_cooked_through();
            part.condition.partly_cooked || warms && is_meat
        })
    }

    /// What went in that may carry trichinae, and nothing shows that it does not: an approval speaks of the dish, and
    /// not of the parasite (`us-6`, `canada-eu-uk-13.1`).
    fn carrier(&self) -> Option<&Part> {
        let carries = |part: &&Part| part.may_carry && !part.condition.is_ready();
        self.parts
            .iter()
            .find(carries)
            .filter(|_| self.freed.is_none())
    }

    /// Is it the fat of what was rendered? Then nothing but fat, skin on it or bones went in, and it was hot; what
    /// has meat in it keeps as meat does, whatever the list calls it (common practice, no source).
    fn is_rendered_fat(&self) -> bool {
        let hot = matches!(self.kind, StepKind::Cook | StepKind::Render);
        let is_fat = |part: &Part| {
            use ProductKind::*;
            matches!(part.sort, Fat | Bone) || part.condition.stable.is_some()
        };
        let mut meat = self.parts.iter().filter(|part| part.of_animal);
        hot && meat.all(is_fat)
    }

    fn stable(&self, is_ready: bool, because: &mut Vec<Because>) -> Option<StableBy> {
        if let Some(stable) = self.stable {
            because.push(stable.because.clone());
            return Some(stable.by);
        }
        // A fat is dry once it is rendered: beside what went in, nothing but the proof of the heat is asked.
        if self.product.kind == ProductKind::Rendered
            && is_ready
            && self.is_rendered_fat()
            && let Some(nature) = super::by_nature(self.product)
        {
            because.push(nature.because);
            return Some(nature.by);
        }
        let stable = |part: &Part| part.condition.stable.is_some();
        let all = !self.watered && self.parts.iter().all(stable);
        let keeps = all && keeps_together(self.parts);
        keeps.then(|| {
            because.push(practice(ConditionSays::PartsStable));
            StableBy::Parts
        })
    }
}

/// Does what keeps by itself keep together? What is dry or fat does, and what is one thing; a thing that holds water,
/// in oil or with what it wets, is another food than either (common practice, no source).
fn keeps_together(parts: &[Part]) -> bool {
    let Some(first) = parts.first() else {
        return true;
    };
    let is_dry = |part: &Part| match part.natural {
        Some(natural) => holds_no_water(natural),
        None => part.condition.stable == Some(StableBy::Parts),
    };
    let same = |part: &Part| part.natural.is_some() && part.natural == first.natural;
    let one_lot = parts.iter().all(|part| part.lot == first.lot);
    one_lot || parts.iter().all(same) || parts.iter().all(is_dry)
}

pub(super) fn practice(says: ConditionSays) -> Because {
    Because {
        says: says.into(),
        rule: Rule::Practice(ConditionSays::ProofRule.into()),
    }
}
