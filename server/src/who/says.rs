//! What is said of people, of what they may do, and of signing in.

use domain::messages;
use domain::right::Right;

messages! {
    /// What is said of who asks.
    WhoSays in "who" {
        SignIn "sign-in",
        Right "right" { name: String, right: Right },
        RightAsk "right-ask" { name: String, right: Right, names: String },
        ByWhom "by-whom",
        OtherName "other-name" { name: String, by: String },
        NoPerson "no-person",
        NoLanguage "no-language" { tag: String },
        WrongPin "wrong-pin",
        Wait "wait" { seconds: usize },
        PinDigits "pin-digits",
        PinTooEasy "pin-too-easy",
        NameTaken "name-taken" { name: String },
        NoRole "no-role",
        LastManager "last-manager",
        TokenEnds "token-ends",
        NoToken "no-token",
        Origin "origin" { origin: String },
        NoOrigin "no-origin",
        Host "host" { host: String },
        PastProxy "past-proxy" { origin: String },
    }
}
