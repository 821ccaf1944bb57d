//! What is said of a yield.

use crate::grams::Grams;
use crate::measure::Percent;
use crate::messages;
use crate::says::Texts;
use crate::words::Species;
use rust_decimal::Decimal;

messages! {
    /// What is said of an animal that was cut up.
    CutOutSays in "cut-out" {
        NoStyles "no-styles" { species: Species },
        NoSuchStyle "no-such-style" { style: String, species: Species, known: String },
        NoHanging "no-hanging",
        PieceWeight "piece-weight" { piece: String, grams: Grams },
        NotWeighed "not-weighed" { piece: Texts, expected: Percent },
        Unusual "unusual" { piece: Texts, part: Percent, low: Decimal, high: Decimal },
        Usual "usual" { piece: Texts, part: Percent, low: Decimal, high: Decimal },
        Plain "plain" { piece: Texts, part: Percent },
        Beside "beside" { piece: String, part: Percent },
        MoreThanHung "more-than-hung" { grams: Grams, part: Percent },
        LeftOut "left-out" { grams: Grams, part: Percent },
        Dripped "dripped" { grams: Grams, part: Percent },
        Loss "loss",
    }
}

messages! {
    /// What is said of what came out of a cook, a smoke, a pot.
    StepYieldSays in "step-yield" {
        Unknown "unknown" { process: String },
        NoBase "no-base" { of: Texts },
        NoOutput "no-output",
        Added "added",
        Percent "percent" { name: Texts, amount: Decimal, of: Texts },
        PercentUsual "percent-usual" { name: Texts, amount: Decimal, of: Texts, low: Decimal, high: Decimal },
        PercentUnusual "percent-unusual" { name: Texts, amount: Decimal, of: Texts, low: Decimal, high: Decimal },
        Litres "litres" { name: Texts, amount: Decimal, of: Texts },
        LitresUsual "litres-usual" { name: Texts, amount: Decimal, of: Texts, low: Decimal, high: Decimal },
        LitresUnusual "litres-unusual" { name: Texts, amount: Decimal, of: Texts, low: Decimal, high: Decimal },
    }
}
