//! What one label says: ready-made texts by field, and the payloads of its codes.

use std::collections::BTreeMap;
use std::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

macro_rules! fields {
    ($($(#[$doc:meta])* $variant:ident = $text:literal,)*) => {
        /// A text that a label may carry. A closed set, the same in facts and templates.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
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
    /// Beside the name of what is usually cured with nitrite and here is not; at least half as high.
    NoNitrite = "no-nitrite",
    /// Beside such a name: that it is not preserved and how cold it must be; at least half as high.
    NotPreserved = "not-preserved",
    /// RAW, READY TO EAT and the like; its shape follows [`Readiness`].
    Kind = "kind",
    /// The words over the date, such as USE BY.
    UseByHeading = "use-by-heading",
    /// The date, ready-made: FRI 26 JUN 2026.
    UseBy = "use-by",
    /// The date for a small label: without its year where that goes without saying.
    UseByShort = "use-by-short",
    /// The words and the date in the second language, or a second date.
    SecondUseBy = "second-use-by",
    /// When and by whom it was made.
    Made = "made",
    /// The same in the second language.
    SecondMade = "second-made",
    /// When it was frozen.
    Frozen = "frozen",
    /// How long it keeps once it is thawed.
    OnceThawed = "once-thawed",
    /// A line on which the day of thawing is written by hand.
    ThawedOn = "thawed-on",
    /// That it was frozen before and is sold thawed.
    Thawed = "thawed",
    /// The same in the second language.
    SecondThawed = "second-thawed",
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
    /// The same in the second language.
    SecondCure = "second-cure",
    /// How to keep it.
    Storage = "storage",
    /// The same in the second language.
    SecondStorage = "second-storage",
    /// Handling or cooking words of caution.
    Caution = "caution",
    /// The same in the second language.
    SecondCaution = "second-caution",
    /// How it is cooked.
    Cooking = "cooking",
    /// The same in the second language.
    SecondCooking = "second-cooking",
    /// What is in it by figures: fat and collagen of minced meat.
    Composition = "composition",
    /// The same in the second language.
    SecondComposition = "second-composition",
    /// What a unit of weight costs.
    UnitPrice = "unit-price",
    /// What all of it costs.
    Price = "price",
    /// The heading of the panel on safe handling.
    HandlingHeading = "handling-heading",
    /// Why there is such a panel.
    HandlingWhy = "handling-why",
    /// Safe handling: keep and thaw cold.
    HandlingKeep = "handling-keep",
    /// Safe handling: keep apart and wash.
    HandlingApart = "handling-apart",
    /// Safe handling: cook.
    HandlingCook = "handling-cook",
    /// Safe handling: keep hot, chill leftovers.
    HandlingHot = "handling-hot",
    /// The lot code and pack number in clear type.
    Lot = "lot",
    /// That the bars hold the lot and not the pack. Set where it is so: the layout chooses what the bars hold.
    LotOnly = "lot-only",
    /// What a GS1 bar code holds, for the eye: `(01) … (10) …`. Set by the layout, which chooses the
    /// message.
    Hri = "hri",
    /// Where the animal came from.
    Origin = "origin",
    /// Who packed it, with address.
    Business = "business",
    /// Says that this is a reprint, and which.
    Reprint = "reprint",
    /// The thirteen digits under the code for the till.
    Till = "till",
    /// The farm, or whom it was bought from.
    From = "from",
    /// The day it was killed.
    Killed = "killed",
    /// Where it was killed, with its number.
    Abattoir = "abattoir",
    /// Carcass number, side and tag.
    Carcass = "carcass",
    /// The supplier's own lot.
    SupplierLot = "supplier-lot",
    /// When it came in and how cold it was.
    Received = "received",
    /// Its weight when the salt went on.
    Green = "green",
    /// When the salt went on.
    Salted = "salted",
    /// What must be met before it is released.
    Release = "release",
    /// The days of its turns.
    Turns = "turns",
    /// Why it is held.
    Why = "why",
    /// Since when, and who said so.
    Since = "since",
    /// Head of a column to be filled in by hand: the day.
    ColumnDay = "column-day",
    /// Head of a column to be filled in by hand: the weight.
    ColumnWeight = "column-weight",
    /// Head of a column to be filled in by hand: who.
    ColumnWho = "column-who",
}

impl fmt::Display for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// What must be done before it is eaten. It gives [`Field::Kind`] its shape, so that the two are told
/// apart without reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Readiness {
    /// To be cooked: a closed box.
    Raw,
    /// Eaten as it is: a line above and a line below.
    ReadyToEat,
}

/// Everything one label says. An absent or blank text is not printed.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Facts {
    /// Texts, ready-made in the label's language and order.
    pub texts: BTreeMap<Field, String>,
    /// Raw or ready to eat, where it is either.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub readiness: Option<Readiness>,
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
    /// The least height of the net weight's letters on the face of this pack, in micrometres: where the law asks for more
    /// than a template gives, the letters are as high as the law has it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub net_least_um: Option<i64>,
    /// Does the panel on safe handling stand on a second label of the same pack?
    #[serde(default, skip_serializing_if = "is_not")]
    pub panel_apart: bool,
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde hands the field over so"
)]
fn is_not(told: &bool) -> bool {
    !told
}

impl Facts {
    /// The text of a field, or nothing when it is absent or blank.
    pub fn text(&self, field: Field) -> Option<&str> {
        let text = self.texts.get(&field)?.trim();
        (!text.is_empty()).then_some(text)
    }
}
