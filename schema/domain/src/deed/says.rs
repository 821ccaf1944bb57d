//! What is said of deeds: why one is not taken, and what to look at where it is.

use crate::code::LotCode;
use crate::grams::Grams;
use crate::measure::Percent;
use crate::messages;
use crate::says::{Says, Texts};
use crate::words::{Being, Disposal, Side, Species, StepKind};
use chrono::NaiveDate;
use rust_decimal::Decimal;

messages! {
    /// What is said of drawing on packs.
    DrawSays in "draw" {
        NoPack "no-pack",
        PackTwice "pack-twice" { pack: u32 },
        Voided "voided" { lot: LotCode },
        NoSuchPack "no-such-pack" { lot: LotCode, packs: u32, pack: u32 },
        WhichPack "which-pack" { lot: LotCode, packs: String },
        Missing "missing" { pack: String },
        Emptied "emptied" { pack: String, being: Being },
        NothingLeft "nothing-left" { lot: LotCode },
        NotEnough "not-enough" { pack: String, left: Grams, asked: Grams },
        NoWeight "no-weight" { grams: Grams, none: Grams },
        TooHeavy "too-heavy" { grams: Grams, most: Grams },
    }
}

messages! {
    /// What is said of a step.
    StepSays in "step" {
        CannotFill "cannot-fill" { grams: Grams, packs: u32 },
        PacksSum "packs-sum" { sum: Grams, lot: Grams },
        PackCount "pack-count" { most: u32, packs: i64 },
        TooManyPacks "too-many-packs" { most: u32 },
        DriedAsRaw "dried-as-raw" { product: Texts },
        NothingIn "nothing-in",
        TooManyInputs "too-many-inputs" { inputs: usize, most: usize },
        TooManyOutputs "too-many-outputs" { outputs: usize, most: usize },
        MakesSomething "makes-something" { kind: StepKind },
        NamedTwice "named-twice" { pack: String },
        TwoScalesApart "two-scales-apart" { percent: Decimal, bound: Grams, inputs: Grams, grams: Grams },
        MoreOut "more-out" { out: Grams, inputs: Grams },
        LessThanNothing "less-than-nothing",
        Frozen "frozen" { pack: String },
        TwoScales "two-scales" { grams: Grams },
    }
}

messages! {
    /// Something that went in, as it stands in a sentence.
    PartSays in "part" {
        Of "of" { product: Texts, pack: String },
    }
}

messages! {
    /// What is said of a receipt.
    ReceiveSays in "receive" {
        KilledLater "killed-later" { killed: NaiveDate, received: NaiveDate },
        KilledLongAgo "killed-long-ago" { killed: NaiveDate, received: NaiveDate },
        Head "head" { head: u32 },
        NewAnimal "new-animal",
        RawOnTheList "raw-on-the-list" { product: Texts },
        SupplierPast "supplier-past" { date: NaiveDate },
        NotTold "not-told" { product: Texts },
        OtherSpecies "other-species" { product: String, species: Species, animal: Species },
        SideKnown "side-known" { side: Side, lot: LotCode },
    }
}

messages! {
    /// What is said of a departure.
    DepartSays in "depart" {
        TakenBack "taken-back" { pack: String },
        ToNobody "to-nobody",
    }
}

messages! {
    /// What is said of a count.
    CountSays in "count" {
        Nothing "nothing",
        Twice "twice" { pack: u32 },
        TooMuch "too-much" { pack: String, made: Grams, grams: Grams },
        Heavier "heavier" { pack: String, made: Grams, grams: Grams },
        Unexplained "unexplained" { pack: String, gap: Grams },
        WasGone "was-gone" { pack: String, being: Being },
        WasUsed "was-used" { pack: String },
        WasMissing "was-missing" { pack: String },
        Found "found" { pack: String, being: Being },
        GoneAlready "gone-already" { pack: String, being: Being },
    }
}

messages! {
    /// What is said of a correction.
    CorrectSays in "correct" {
        AsKnown "as-known",
    }
}

messages! {
    /// What is said of the deed that releases a piece.
    ReleaseDeedSays in "release-deed" {
        NoRule "no-rule" { lot: LotCode },
        Already "already" { lot: LotCode },
        Released "released" { day: NaiveDate, by: String, days: u32 },
        ReleasedLighter "released-lighter" { day: NaiveDate, by: String, days: u32, loss: Percent },
        Rule "rule",
    }
}

messages! {
    /// What is said of a pot without a label.
    AdoptSays in "adopt" {
        OtherProduct "other-product" { pack: String, product: String },
        Heavier "heavier" { pack: String, made: Grams, grams: Grams },
        NotMissing "not-missing" { pack: String, being: Being },
        PrintAgain "print-again" { pack: String },
        TakenAsRaw "taken-as-raw",
        TakenAsTreated "taken-as-treated",
        AgeUnknown "age-unknown",
        Found "found" { why: String },
        NotTold "not-told",
        NotTheContents "not-the-contents",
    }
}

messages! {
    /// What is said of a move.
    MoveSays in "move" {
        Nowhere "nowhere",
        TooWarm "too-warm" { lot: LotCode, product: Texts },
        CoolsUnseen "cools-unseen",
        RawTooWarm "raw-too-warm" { lot: LotCode, product: Texts },
    }
}

messages! {
    /// What is said of a pack that comes back.
    TakeBackSays in "take-back" {
        NotSold "not-sold" { pack: String, being: Being },
        TooMuch "too-much" { pack: String, away: Grams, grams: Grams },
        CameBack "came-back" { pack: String },
    }
}

messages! {
    /// What is said of a void.
    VoidSays in "void" {
        OfVoid "of-void",
        OfPrint "of-print",
        OfSettlement "of-settlement",
        OfCancellation "of-cancellation",
        OfHold "of-hold",
        OfThinning "of-thinning",
        OfIncident "of-incident",
        VoidedBefore "voided-before",
        UsedSince "used-since",
        CorrectedSince "corrected-since",
        PackUsedSince "pack-used-since" { pack: String },
    }
}

messages! {
    /// What is said of a weighing.
    WeighSays in "weigh" {
        SeveralPacks "several-packs" { lot: LotCode, packs: u32 },
        Heavier "heavier" { lot: LotCode, before: Grams, grams: Grams },
    }
}

messages! {
    /// What is said of a disposition.
    DisposeSays in "dispose" {
        NoWitness "no-witness",
        NothingStands "nothing-stands" { lot: LotCode },
        ContentsNotTold "contents-not-told" { lot: LotCode },
        Left "left" { what: Disposal, by: String, witness: String, why: String },
        LetGo "let-go" { what: Disposal, by: String, why: String, stop: Says },
        Rule "rule",
    }
}

messages! {
    /// What is said of letting a hold go.
    HoldSays in "hold" {
        NoHold "no-hold" { lot: LotCode },
        MadeSince "made-since" { lots: String },
    }
}
