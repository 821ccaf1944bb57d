//! What has to be written, by how the food comes to the customer.

use super::{Food, Sale};
use crate::rows::RowId;

/// How allergens are told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Telling {
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
pub struct Due {
    /// The way of selling.
    pub sale: Sale,
    /// Is the ingredient list on the pack a duty? Shown of one's own will it follows the same rules.
    pub ingredients: bool,
    /// How allergens are told.
    pub allergens: Telling,
    /// What it is, for a screen.
    pub says: String,
    /// Where it comes from.
    pub row: RowId,
}

impl Due {
    /// Must this food's pack carry an ingredient list? A food of one thing has none.
    pub fn asks_list_of(&self, food: &Food) -> bool {
        let single = matches!(food.parts.as_slice(), [] | [_]) && !is_compound(food);
        self.ingredients && !single
    }
}

fn is_compound(food: &Food) -> bool {
    food.parts.iter().any(|part| !part.parts.is_empty())
}
