//! What the gate says beyond what each rule says itself.

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
    }
}
