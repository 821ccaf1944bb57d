//! What has to be written, by how the food comes to the customer.

use super::{Food, Sale};
use crate::rows::RowId;
use crate::says::Texts;

/// How allergens are declared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AllergenNotice {
    /// On the pack.
    OnPack,
    /// In writing: on the pack, a menu, a card or a sign.
    InWriting,
    /// In writing, or a sign says that one may ask.
    OnAsking,
    /// Nothing is asked; what is shown must still be true and whole.
    OnlyIfShown,
}

/// What has to be written in one way of selling.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaleDuty {
    /// The way of selling.
    pub sale: Sale,
    /// Is the ingredient list on the pack a duty? A list shown without that duty follows the same rules.
    pub ingredients: bool,
    /// How allergens are declared.
    pub allergens: AllergenNotice,
    /// What it is, for a screen.
    pub says: Texts,
    /// May the label say no more than that: neither weight nor date nor business?
    pub short_label: bool,
    /// Where it comes from.
    pub row: RowId,
}

impl SaleDuty {
    /// Must this food's pack carry an ingredient list? A food of one thing has none.
    pub fn asks_list_of(&self, food: &Food) -> bool {
        let single = matches!(food.parts.as_slice(), [] | [_]) && !is_compound(food);
        self.ingredients && !single
    }
}

fn is_compound(food: &Food) -> bool {
    food.parts.iter().any(|part| !part.parts.is_empty())
}
