//! What one label says: ready-made texts by field, and the payloads of its codes.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Serialize};

macro_rules! fields {
    ($($(#[$doc:meta])* $variant:ident = $text:literal,)*) => {
        /// A text that a label may carry. A closed set, the same in facts and templates.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "kebab-case")]
        pub enum Field {
            $($(#[$doc])* $variant,)*
        }

        impl Field {
            /// Every field, in the order of declaration.
            pub const ALL: &'static [Field] = &[$(Field::$variant,)*];

            /// The name as in JSON.
            pub fn as_str(self) -> &'static str {
                match self {
                    $(Field::$variant => $text,)*
                }
            }
        }
    };
}

fields! {
    /// What sort of label it is, such as HOLD or RECEIVED.
    Heading = "heading",
    /// The product's name.
    Name = "name",
    /// The name in the second language.
    SecondName = "second-name",
    /// RAW, READY TO EAT and the like; drawn in a ruled box.
    Kind = "kind",
    /// The words over the date, such as USE BY.
    UseByHeading = "use-by-heading",
    /// The date, ready-made: FRI 26 JUN 2026.
    UseBy = "use-by",
    /// The words over the date in the second language, or a second date.
    SecondUseBy = "second-use-by",
    /// When and by whom it was made.
    Made = "made",
    /// Net weight.
    Net = "net",
    /// The ingredient statement.
    Ingredients = "ingredients",
    /// The ingredient statement in the second language.
    SecondIngredients = "second-ingredients",
    /// The allergen statement.
    Allergens = "allergens",
    /// The allergen statement in the second language.
    SecondAllergens = "second-allergens",
    /// How it was cured.
    Cure = "cure",
    /// How to keep it.
    Storage = "storage",
    /// Handling or cooking words of caution.
    Caution = "caution",
    /// The lot code and pack number in clear type.
    Lot = "lot",
    /// Where the animal came from.
    Origin = "origin",
    /// Who packed it, with address.
    Business = "business",
    /// Says that this is a reprint, and which.
    Reprint = "reprint",
}

impl fmt::Display for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// Everything one label says. An absent or blank text is not printed.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Facts {
    /// Texts, ready-made in the label's language and order.
    pub texts: BTreeMap<Field, String>,
    /// What the QR code holds: the lot's public address. Printed in capitals.
    pub qr: String,
    /// What the Code 128 holds: lot code, with `/pack` where there is room.
    pub linear: String,
    /// GS1 element strings for the bar code, in brackets, the fullest first: the first that fits
    /// takes the place of the plain Code 128.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gs1: Vec<String>,
    /// The thirteen digits for the shop's till, where it sells by its own numbers.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ean13: Option<String>,
}

impl Facts {
    /// The text of a field, or nothing when it is absent or blank.
    pub fn text(&self, field: Field) -> Option<&str> {
        let text = self.texts.get(&field)?.trim();
        (!text.is_empty()).then_some(text)
    }
}
