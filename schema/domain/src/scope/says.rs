//! What is said of a scope.

use crate::code::LotCode;
use crate::messages;
use crate::says::Says;
use chrono::{NaiveDate, NaiveDateTime};

messages! {
    /// Why something is outside a scope, and what cannot be asked.
    ScopeSays in "scope" {
        LeftOut "left-out" { why: String },
        FallsOut "falls-out" { lots: String },
        MadeBefore "made-before" { lot: LotCode },
        Voided "voided" { lot: LotCode },
        Twin "twin" { number: String, killed: NaiveDate, farm: String },
        KnownAs "known-as" { known: Says, by: String, at: NaiveDateTime },
        OfAnimal "of-animal" { farm: String, killed: NaiveDate, number: String },
        OfSupplier "of-supplier" { supplier: String, number: String },
        NoStart "no-start",
        WhichStart "which-start",
        Needs "needs",
        EndsFirst "ends-first",
        NoAnimal "no-animal",
        NoSupplierLot "no-supplier-lot" { supplier: String, number: String },
        Nobody "nobody" { person: String },
        WhyLeftOut "why-left-out",
    }
}

messages! {
    /// Why a lot is in a scope.
    ReasonSays in "scope-because" {
        Named "named",
        MadeOf "made-of" { lot: LotCode, product: String },
        SharedContact "shared-contact" { place: String, lot: LotCode },
        WasThere "was-there" { place: String },
        DoneBy "done-by",
    }
}
