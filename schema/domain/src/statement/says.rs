//! What is said of a statement: what is to be known or mended, and what has changed. The words that a
//! label prints stand in the law's files.

use super::{DateKind, Lettering};
use crate::grams::Grams;
use crate::measure::Percent;
use crate::messages;
use crate::says::{Arg, Texts};
use crate::words::Allergen;
use chrono::NaiveDate;
use rust_decimal::Decimal;

messages! {
    /// What is said of a statement.
    StatementSays in "statement" {
        SulphitesUnknown "sulphites-unknown" { most: Decimal },
        NameTheNut "name-the-nut" { allergen: Allergen },
        NameTheCrustacean "name-the-crustacean" { allergen: Allergen },
        NameTheMollusc "name-the-mollusc" { allergen: Allergen },
        NameTheFish "name-the-fish" { allergen: Allergen },
        Title "title" { title: String },
        Lacks "lacks" { names: String },
        Capitals "capitals" { entries: String },
        NoDateWords "no-date-words" { kind: DateKindSays },
        DateBefore "date-before" { day: NaiveDate, from: NaiveDate },
        KitchenDate "kitchen-date" { kind: DateKindSays },
        NoDateForm "no-date-form" { language: String },
        MayNotSay "may-not-say" { words: String, instead: String },
        LettersLow "letters-low" { what: LetteringSays, printed: Decimal, least: Decimal },
        NetTitle "net-title" { title: String },
        NetWrong "net-wrong" { text: String, grams: Grams },
        Languages "languages" { wanted: Arg, missing: String },
        AddedWater "added-water" { percent: Percent, most: Percent },
        NoRawMeat "no-raw-meat",
        NoSolution "no-solution",
        NoBringer "no-bringer" { allergens: Arg },
        CureUnlisted "cure-unlisted" { name: Texts },
        NoSpice "no-spice" { name: Texts },
        DeclaredElsewhere "declared-elsewhere" { language: String, text: String },
    }
}

messages! {
    /// A kind of date, as it stands in a sentence.
    DateKindSays in "date-kind" {
        UseBy "use-by",
        BestBefore "best-before",
        DiscardBy "discard-by",
        PackedOn "packed-on",
        FrozenOn "frozen-on",
        PreparedOn "prepared-on",
    }
}

impl From<DateKind> for DateKindSays {
    fn from(kind: DateKind) -> DateKindSays {
        match kind {
            DateKind::UseBy => DateKindSays::UseBy,
            DateKind::BestBefore => DateKindSays::BestBefore,
            DateKind::DiscardBy => DateKindSays::DiscardBy,
            DateKind::PackedOn => DateKindSays::PackedOn,
            DateKind::FrozenOn => DateKindSays::FrozenOn,
            DateKind::PreparedOn => DateKindSays::PreparedOn,
        }
    }
}

messages! {
    /// What letters say, as it stands in a sentence.
    LetteringSays in "lettering" {
        Label "label",
        IngredientList "ingredient-list",
        IngredientListByTable "ingredient-list-by-table",
        NetQuantity "net-quantity",
        Thawed "thawed",
        SafeHandling "safe-handling",
    }
}

impl From<Lettering> for LetteringSays {
    fn from(what: Lettering) -> LetteringSays {
        match what {
            Lettering::Label => LetteringSays::Label,
            Lettering::IngredientList => LetteringSays::IngredientList,
            Lettering::IngredientListByTable => LetteringSays::IngredientListByTable,
            Lettering::NetQuantity => LetteringSays::NetQuantity,
            Lettering::Thawed => LetteringSays::Thawed,
            Lettering::SafeHandling => LetteringSays::SafeHandling,
        }
    }
}

messages! {
    /// What is different from the last time.
    ChangeSays in "change" {
        NewAllergen "new-allergen" { allergen: Allergen, sources: Arg },
        NewAllergenUnknown "new-allergen-unknown" { allergen: Allergen },
        GoneAllergen "gone-allergen" { allergen: Allergen },
        NewIngredients "new-ingredients" { names: Texts },
        GoneIngredients "gone-ingredients" { names: Texts },
        Reordered "reordered",
        Source "source" { path: Texts },
        SourceLot "source-lot" { path: Texts, lot: String },
        SourceLots "source-lots" { path: Texts, lots: String },
    }
}
