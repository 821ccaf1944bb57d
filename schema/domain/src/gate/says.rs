//! What the gate says beyond what each rule says itself.

use super::LabelItem;
use crate::messages;

messages! {
    /// What is said of a customer's label.
    GateSays in "gate" {
        OriginUnknown "origin-unknown",
        BeefUnknown "beef-unknown",
        NoDate "no-date",
        NoList "no-list",
        NoTenderised "no-tenderised" { words: String },
        NoTenderisedName "no-tenderised-name" { one_of: String },
        Lacks "lacks" { item: LabelItem },
        LacksIn "lacks-in" { item: LabelItem, language: String },
        NotNamed "not-named" { language: String, name: String },
        PartNotNamed "part-not-named" { language: String, name: String },
        ForKitchen "for-kitchen",
        NoAddress "no-address",
    }
}
