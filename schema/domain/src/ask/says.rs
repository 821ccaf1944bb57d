//! What is said to a guest, and what stands behind it.

use crate::messages;
use crate::says::{Arg, Texts};

messages! {
    /// What a guest asks about, where no other word of ours says it.
    TopicSays in "ask-topic" {
        Alcohol "alcohol",
        Nitrite "nitrite",
        Raw "raw",
        Gluten "gluten",
    }
}

messages! {
    /// By what it is known, or why it is not.
    AskSays in "ask" {
        Is "is" { what: Arg },
        Has "has" { what: Arg, by: Texts },
        HasIn "has-in" { what: Arg, by: Texts, through: Texts },
        MayContain "may-contain" { what: Arg, by: Texts },
        NotEntered "not-entered" { what: Arg, by: Texts },
        Vague "vague" { what: Arg, by: Texts },
        Unknown "unknown" { what: Arg, by: Texts },
        NotProven "not-proven" { what: Arg },
    }
}
