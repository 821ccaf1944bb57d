//! What the pages say of a figure, a day or a name. Texts that hold none are named where they stand.

use crate::label_facts::says::SizeOf;
use chrono::NaiveDate;
use domain::grams::Grams;
use domain::messages;
use domain::says::{Arg, Says};
use rust_decimal::Decimal;

messages! {
    /// What the pages say.
    PageSays in "page" {
        Packs "count-packs" { packs: usize },
        AsPrinted "as-printed" { printer: String, size: SizeOf },
        LabelOfRest "rest-on-label" { made: Grams, left: Grams },
        RecallLots "recall-lots" { lots: usize },
        RecallDays "recall-days" { first: NaiveDate, last: NaiveDate },
        RecallHeld "recall-held" { number: String, packs: usize, weight: Grams },
        RecallSince "recall-since" { by: String, at: String },
        RecallOnHand "recall-on-hand" { lots: usize, weight: Grams, sold: i64 },
        RecallHold "recall-hold" { lots: usize, weight: Grams },
        IncidentDispose "incident-dispose" { lots: usize, weight: Grams },
        IncidentDisposePacks "incident-dispose-packs" { lot: String },
        CountAt "count-at" { place: String, nth: usize, places: usize },
        CountFound "count-found" { found: usize, packs: usize, missing: usize },
        CountNext "count-next" { place: String },
        CountPlace "count-place" { place: String, found: usize, packs: usize, missing: usize },
        CountMissing "count-missing" { packs: String },
        CountNotHere "count-not-here" { packs: String },
        CountPack "count-pack" { pack: u32, weight: Grams },
        CountOutside "count-outside" { lot: String },
        CountWhich "count-which" { name: String, lot: String },
        CountSurplus "count-surplus" { name: String, pack: String },
        CountAgain "count-again" { name: String, pack: String, weight: Grams },
        CountElsewhere "count-elsewhere" { name: String, pack: String, place: String },
        CountOpened "count-opened" { name: String, pack: String, weight: Grams },
        CountThis "count-this" { name: String, pack: String, weight: Grams },
        AndMore "and-more" { what: String, more: String },
        DrillDue "drill-due" { day: NaiveDate },
        Minutes "minutes" { minutes: i64 },
        RecallStands "recall-stands" { at: String, by: String, packs: usize, weight: Grams },
        OnceThawed "once-thawed" { days: i32 },
        Percent "percent" { percent: String },
        ShareUnder "share-under" { percent: Decimal },
        Contains "contains" { allergens: String },
        MayContain "may-contain" { allergens: String },
        More "more" { more: usize },
        From "from" { what: String, farm: String },
        Killed "killed-on" { day: NaiveDate },
        Head "animals-head" { species: String, head: u32 },
        OnlyProduct "lots-only-product" { product: String },
        OnlyFarm "lots-only-farm" { farm: String },
        OnlyKilled "lots-only-killed" { day: Arg },
        OnlyBefore "lots-only-before" { day: Arg },
        OfMade "lot-of-made" { made: Grams },
        OfReceived "lot-of-received" { made: Grams },
        Run "lot-packs" { packs: usize, numbers: String },
        Alike "lot-alike" { packs: usize },
        MadeBy "lot-made-by" { deed: String },
        UsedFor "lot-used-for" { deed: String },
        Otherwise "lot-otherwise" { account: String, deed: String },
        TreeMore "tree-more" { more: usize },
        LotsInAll "forward-lots" { lots: usize, on_hand: usize },
        Missing "forward-missing" { weight: Grams },
        Surplus "forward-surplus" { weight: Grams },
        UndoAsk "undo-ask" { names: String },
        NoneThen "recall-none-then" { what: String, first: NaiveDate, last: NaiveDate },
        NoneKilled "recall-none-killed" { what: String, first: NaiveDate, last: NaiveDate },
        LeftOut "recall-left-out" { words: String },
        AskNone "ask-none-of" { name: String },
        AskWhat "ask-which" { names: String },
        DidTo "did-to" { deed: String, what: String, by: String, at: String },
        Things "things" { lots: usize, name: String },
        LotMissing "lot-missing" { packs: usize, numbers: String, weight: Grams },
        AskNothing "ask-nothing" { topics: String },
        Did "did" { deed: String, by: String, at: String },
        PaperOf "paper-of" { deed: String, at: String },
        PaperSize "paper-size" { form: String, kilobytes: Arg },
        PapersHow "papers-how" { most: usize },
        PapersKept "papers-kept" { papers: Arg, megabytes: Arg, thinned: Arg },
        Colon "colon" { of: String, says: String },
        TodayHands "today-hands" { hands: usize },
        PrintsWait "today-prints" { labels: usize },
        PrintsRefused "today-refused" { labels: usize },
        FoundNothing "found-nothing" { said: String },
        FoundSome "found-some" { said: String },
        Piece "cure-room-piece" { stage: String, days: u32, loss: Says },
        StageDay "cure-room-stage-day" { stage: String, days: u32 },
        LossExpected "cure-room-loss-expected" { loss: String, expected: String },
        Loss "cure-room-loss" { loss: String },
        NeverWeighed "cure-room-never-weighed",
        Curve "cure-room-curve" { days: u32, loss: Decimal },
        PrintOf "printing-lot" { name: String },
        CancelAll "printing-cancel-all" { labels: usize },
        On "printing-on" { printer: String, asked: String },
        Reprint "printing-reprint" { nth: u32 },
        LabelTells "wrong-labels-tells" { about: String, says: Says },
        ActOf "act-of" { act: String, name: String },
        KnownOnce "animal-known-once" { by: String, day: NaiveDate },
        NoAnimal "animal-unknown",
        NothingHere "nothing-here" { path: String },
        CounterContains "counter-contains" { allergens: String },
        CounterPack "counter-pack" { pack: u32 },
        CounterAnimal "counter-animal" { species: String, meat: String },
        CounterDiscard "counter-discard" { weight: Grams },
        CounterSold "counter-sold" { what: String, price: String },
        CounterSoldPlain "counter-sold-plain" { what: String },
        CounterTakenBack "counter-taken-back" { what: String },
        CounterDid "counter-did" { deed: String, what: String },
        CounterReady "counter-ready" { lot: String, much: String },
        PacksGone "packs-gone" { packs: String },
        TodayAsOf "today-as-of" { at: String },
        TodayReasons "today-reasons" { reasons: usize },
        MakeApart "make-apart" { lots: usize },
        CounterUntil "counter-until" { day: NaiveDate },
        CounterBy "counter-by" { by: String, at: String },
        SoldAll "counter-sold-all" { packs: usize },
        BasketTogether "counter-together" { allergens: String },
        BasketDropped "counter-dropped" { packs: String },
        AskAbout "ask-about" { topics: String },
        AskGroup "ask-group" { group: String, things: usize },
        AskNoWord "ask-no-word" { word: String },
        AskAt "ask-at" { at: String },
        AskStopped "ask-stopped" { things: usize },
        AskLine "ask-line" { packs: String, weight: Grams },
        AskHeldMore "ask-held-more" { packs: usize },
        AskHeldOf "ask-held-of" { packs: usize },
        Between "between" { low: Grams, high: Grams },
    }
}

messages! {
    /// Countries that a label will tell and nobody entered.
    CountrySays in "page-country" {
        Farm "farm" { name: String },
        Abattoir "abattoir" { name: String },
        NoAbattoir "no-abattoir" { lot: String },
    }
}

messages! {
    /// What is said while a kitchen is set up.
    SetUpSays in "page-setting" {
        Keeps "keeps" { days: u32, from: String },
        Nitrite "nitrite" { percent: String },
        StepOf "step-of" { step: usize, steps: usize },
        Has "has" { count: usize, names: String },
        GroupOf "group-of" { things: usize, listed: usize },
        Added "added" { products: usize },
        Zone "zone" { region: String, city: String },
    }
}

messages! {
    /// A deed as a sentence, before it is done; what is chosen stands in it by the name of its field.
    ActSays in "page-sentence" {
        Pack "pack" { name: String, lot: String },
        Move "move" { name: String, lot: String },
        Freeze "freeze" { name: String, lot: String },
        Thaw "thaw" { name: String, lot: String },
        Discard "discard" { name: String, lot: String },
        Serve "serve" { name: String, lot: String },
        Count "count" { name: String, lot: String },
        Ship "ship" { name: String, lot: String },
        Return "return" { name: String, lot: String },
        TakeBack "take-back" { name: String, lot: String },
        BreakDown "break-down" { name: String, lot: String },
    }
}

messages! {
    /// How many labels of a printer have come how far.
    CountSays in "page-printing-count" {
        Waiting "waiting" { labels: i64 },
        Sending "sending" { labels: i64 },
        Sent "sent" { labels: i64 },
        Printed "printed" { labels: i64 },
        Unsure "unsure" { labels: i64 },
        Refused "refused" { labels: i64 },
        Cancelled "cancelled" { labels: i64 },
        Spoilt "spoilt" { labels: i64 },
    }
}
