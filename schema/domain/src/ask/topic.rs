//! What a guest can ask about.

use super::says::TopicSays;
use crate::lot::Lot;
use crate::product::Product;
use crate::says::{Says, Texts};
use crate::statement::SpeciesRules;
use crate::words::{Allergen, Species};

/// What a guest asks about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Topic {
    /// An animal.
    Species(Species),
    /// Wine, beer, spirits.
    Alcohol,
    /// Nitrite or nitrate.
    Nitrite,
    /// Must it be cooked before it is eaten?
    Raw,
    /// The grains that have gluten.
    Gluten,
    /// An allergen; the word of a group is the whole group.
    Allergen(Allergen),
}

/// The words of groups, with the first and the last of each in the order of the vocabulary.
const GROUPS: [(Allergen, Allergen); 4] = [
    (Allergen::Almond, Allergen::TreeNut),
    (Allergen::Anchovy, Allergen::Fish),
    (Allergen::Crab, Allergen::Crustacean),
    (Allergen::Clam, Allergen::Mollusc),
];

/// Who asks about the first must not have the second: spelt is a wheat and triticale is one with rye
/// (`canada-eu-uk-9.4`, `canada-eu-uk-3`), and a paper that says wheat may mean spelt.
const KIN: [(Allergen, Allergen); 4] = [
    (Allergen::Wheat, Allergen::Spelt),
    (Allergen::Spelt, Allergen::Wheat),
    (Allergen::Wheat, Allergen::Triticale),
    (Allergen::Rye, Allergen::Triticale),
];

impl Topic {
    /// Everything that can be asked about.
    pub fn all() -> impl Iterator<Item = Topic> {
        let species = Species::ALL.iter().copied().map(Topic::Species);
        let others = [Topic::Alcohol, Topic::Nitrite, Topic::Raw, Topic::Gluten];
        let allergens = Allergen::ALL.iter().copied().map(Topic::Allergen);
        species.chain(others).chain(allergens)
    }

    /// As a program writes it.
    pub fn as_str(self) -> &'static str {
        match self {
            Topic::Species(species) => species.as_str(),
            Topic::Allergen(allergen) => allergen.as_str(),
            Topic::Alcohol => "alcohol",
            Topic::Nitrite => "nitrite",
            Topic::Raw => "raw",
            Topic::Gluten => "gluten",
        }
    }

    /// The one so written.
    pub fn parse(text: &str) -> Option<Topic> {
        Topic::all().find(|topic| topic.as_str() == text)
    }

    /// For a reader: an animal by the name of its meat.
    pub fn says(self, species: &SpeciesRules) -> Says {
        match self {
            Topic::Species(of) => match species.meat(of) {
                Some(meat) => Says::named(&Texts::new(meat.clone())),
                None => of.says(),
            },
            Topic::Allergen(allergen) => allergen.says(),
            Topic::Alcohol => TopicSays::Alcohol.into(),
            Topic::Nitrite => TopicSays::Nitrite.into(),
            Topic::Raw => TopicSays::Raw.into(),
            Topic::Gluten => TopicSays::Gluten.into(),
        }
    }

    /// Does it mean an allergen? That which has a whole group's word has one of the group as well.
    pub(super) fn means(self, allergen: Allergen) -> bool {
        use Allergen::{Barley, Oats, Rye, Spelt, Triticale, Wheat};
        match self {
            Topic::Gluten => {
                matches!(allergen, Wheat | Spelt | Rye | Barley | Oats | Triticale)
            }
            Topic::Allergen(asked) => {
                let of_group = |(first, group): &(Allergen, Allergen)| {
                    asked == *group && (*first..=*group).contains(&allergen)
                };
                // A paper that only says "fish" may mean the very one that is asked about.
                let collective = |(first, group): &(Allergen, Allergen)| {
                    allergen == *group && (*first..=*group).contains(&asked)
                };
                let is_kin = KIN.contains(&(asked, allergen));
                let of_group = GROUPS.iter().any(of_group);
                asked == allergen || is_kin || of_group || GROUPS.iter().any(collective)
            }
            Topic::Species(_) | Topic::Alcohol | Topic::Nitrite | Topic::Raw => false,
        }
    }

    /// Is it about allergens?
    pub(super) fn is_allergen(self) -> bool {
        matches!(self, Topic::Allergen(_) | Topic::Gluten)
    }

    /// Does the record of a lot itself say yes?
    pub(super) fn is_of_lot(self, lot: &Lot) -> bool {
        let allergens = || lot.allergens.iter().any(|of| self.means(*of));
        match self {
            Topic::Species(species) => lot.species.contains(&species),
            Topic::Nitrite => lot
                .product
                .cured
                .uncured
                .as_ref()
                .is_some_and(|uncured| uncured.natural.is_some()),
            _ => allergens(),
        }
    }

    /// Does a maker say that it may be in there unasked?
    pub(super) fn may_be_in(self, lot: &Lot) -> bool {
        lot.perhaps().iter().any(|of| self.means(*of))
    }

    /// Does an entry of the list say yes?
    pub(super) fn is_of_product(self, product: &Product) -> bool {
        match self {
            Topic::Species(species) => product.species == Some(species),
            _ => product.allergens.iter().any(|of| self.means(*of)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_asks_about_wheat_is_told_of_spelt_and_triticale() {
        use Allergen::{Barley, Rye, Spelt, Triticale, Wheat};
        let means = |asked, has| Topic::Allergen(asked).means(has);
        for (asked, has) in [
            (Wheat, Spelt),
            (Spelt, Wheat),
            (Wheat, Triticale),
            (Rye, Triticale),
        ] {
            assert!(means(asked, has), "{asked:?} of {has:?}");
        }
        for (asked, has) in [
            (Barley, Spelt),
            (Rye, Wheat),
            (Wheat, Rye),
            (Triticale, Wheat),
        ] {
            assert!(!means(asked, has), "{asked:?} of {has:?}");
        }
    }
}
