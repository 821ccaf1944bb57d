//! What is said of a label and of the truth.

use crate::grams::Grams;
use crate::messages;
use crate::says::{Arg, Says};
use chrono::NaiveDate;

messages! {
    /// What a label says, or what is true.
    ClaimSays in "claim" {
        Day "day" { date: NaiveDate },
        NoDay "no-day",
        These "these" { names: Arg },
        Nothing "nothing",
        MayBe "may-be" { names: Arg },
        NothingMay "nothing-may",
        Weight "weight" { grams: Grams },
        Name "name" { name: String },
        Differs "differs" { about: Says, printed: Says, now: Says },
    }
}
