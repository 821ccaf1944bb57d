//! The rules of a place on what a label says.

use super::{
    AbsenceRules, AllergenRules, ContainsRules, DateRules, HeightStep, ListRules, MetricNet,
    NetRules, Notice, OriginRules, Sale, SaleDuty, SpeciesRules, WaterRules, Wording,
};
use crate::gate::Required;
use crate::rows::{Bound, RowId};

/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct StatementRules {
    /// The ingredient list.
    pub list: Option<ListRules>,
    /// Allergens.
    pub allergens: AllergenRules,
    /// The allergen statement.
    pub contains: Option<ContainsRules>,
    /// Animals.
    pub species: SpeciesRules,
    /// Words that say that something is not in it.
    pub absence: AbsenceRules,
    /// Added water.
    pub water: Option<WaterRules>,
    /// What has to be written, by the way of selling.
    pub due: Vec<SaleDuty>,
    /// Dates.
    pub dates: DateRules,
    /// Fixed words.
    pub notices: Vec<Notice>,
    /// The fresh meat whose label tells where the animals lived and died.
    pub origin: Option<OriginRules>,
    /// The languages of a label, where the place says so.
    pub languages: Option<(RowId, Vec<String>)>,
    /// Heights of letters, the smallest panels first.
    pub heights: Vec<HeightStep>,
    /// How the net weight is printed.
    pub net: Option<NetRules>,
    /// How it is printed in grams and kilograms, where the place says.
    pub metric_net: Option<MetricNet>,
    /// The row by which the share of a solution in raw meat is told.
    pub solution: Option<RowId>,
    /// What a customer's pack tells, item by item.
    pub required: Vec<Required>,
    /// The words of a name that speak of meat held hot or cold, where the place has words on how that is kept.
    pub roasted: Vec<String>,
    /// The words on what is in minced meat, where the place has some.
    pub composition: Option<Wording>,
}

impl StatementRules {
    /// What has to be written in a way of selling, if the place says.
    pub fn due(&self, sale: Sale) -> Option<&SaleDuty> {
        self.due.iter().find(|due| due.sale == sale)
    }

    /// May a pack that was put up where it is sold have a label that says less?
    pub fn short_label_here(&self) -> bool {
        self.due(Sale::PackedHere)
            .is_some_and(|due| due.short_label)
    }

    /// Does the place want that language on a label?
    pub fn wants_language(&self, language: &str) -> bool {
        let wanted = self.languages.iter().flat_map(|(_, wanted)| wanted);
        wanted.into_iter().any(|tag| tag == language)
    }

    /// Every single number that a house may make stricter.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut bounds: Vec<&mut Bound> = Vec::new();
        let up_to = [
            self.allergens.sulphites_undeclared.as_mut(),
            self.water.as_mut().map(|law| &mut law.unsaid),
        ];
        bounds.extend(up_to.into_iter().flatten().map(|limit| &mut limit.bound));
        if let Some(list) = &mut self.list {
            bounds.extend(list.tail.as_mut().map(|tail| &mut tail.at_most));
            bounds.extend(list.last.as_mut().map(|last| &mut last.spices_at_most));
        }
        bounds.extend(self.dates.undated_from.as_mut());
        for step in &mut self.heights {
            bounds.push(&mut step.height);
            bounds.extend(step.leading.as_mut());
        }
        bounds
    }
}
