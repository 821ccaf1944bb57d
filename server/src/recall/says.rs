//! What the report of an incident says besides what people said.

use chrono::{NaiveDate, NaiveDateTime};
use domain::grams::Grams;
use domain::incident::Hazard;
use domain::messages;
use domain::says::Arg;

messages! {
    /// What stands on a report, and over the columns of its record.
    ReportSays in "report" {
        Title "title" { number: String },
        DrillTitle "drill-title" { number: String },
        ToldBy "told-by" { by: String, at: NaiveDateTime, hazard: Arg },
        ToldAtOnly "told-at-only" { at: NaiveDateTime, hazard: Arg },
        AsOf "as-of" { at: NaiveDateTime },
        Book "book" { lots: usize, packs: usize, weight: Grams },
        Found "found" { missing: Grams, surplus: Grams, back: Grams },
        Ended "ended" { destroyed: Grams, returned: Grams, gone: Grams, left: Grams },
        Open "open" { uncounted: usize, packs: usize },
        ScopeDigest "scope-digest" { digest: String },
        RecordDigest "record-digest" { digest: String },
        Anchor "anchor" { line: String },
        Clock "clock", What "what", When "when", After "after",
        Later "later" { hours: i64, minutes: i64 }, AtOnce "at-once", NotKnownYet "not-known-yet",
        Lots "lots", Lot "lot", Because "because", Went "went", Since "since",
        SumBook "sum-book", SumMissing "sum-missing", SumSurplus "sum-surplus", SumBack "sum-back",
        SumDestroyed "sum-destroyed", SumReturned "sum-returned", SumGone "sum-gone", SumLeft "sum-left",
        DisposedSoFar "disposed-so-far" { weight: Grams },
        Made "made", OnHand "on-hand",
        Agrees "agrees", NotCounted "not-counted" { packs: usize }, StillThere "still-there" { weight: Grams },
        Differences "differences", Pack "pack", Place "place", FoundAt "found-at" { place: String },
        Opened "opened", NoDifference "no-difference",
        Disposals "disposals", Weight "weight", Witness "witness", Document "document", Who "who",
        Discarded "discarded", Returned "returned", Released "released", PutRight "put-right", Reworked "reworked",
        NoDisposals "no-disposals",
        People "people", Farm "farm", Abattoir "abattoir", Supplier "supplier", Customer "customer",
        ToldAt "told-at", NotTold "not-told", Answered "answered", NoPeople "no-people", HowMuch "how-much",
        Sold "sold", Hour "hour" { day: NaiveDate, from: u32, until: u32 }, Packs "packs" { packs: usize },
        Buyers "buyers", NothingSold "nothing-sold",
        Outside "outside", NothingOutside "nothing-outside",
        Decisions "decisions", Begun "begun", Scoped "scoped", Shown "shown", Hidden "hidden", Closed "closed",
        Disposed "disposed",
        Notices "notices", ToCustomers "to-customers", OnShelf "on-shelf",
        Picture "picture",
        Signatures "signatures", Name "name", Signature "signature", Day "day",
        SignLead "sign-lead", SignCount "sign-count", SignWitness "sign-witness", SignAuthority "sign-authority",
        PageOf "page-of" { page: Arg, of: Arg },
        Entry "entry", EntryReceived "entry-received", EntryMade "entry-made", EntryShipped "entry-shipped",
        EntrySold "entry-sold", EntryOnHand "entry-on-hand", EntryDestroyed "entry-destroyed",
        EntryReturned "entry-returned", EntryMissing "entry-missing",
        Grams "grams", From "from", FromAddress "from-address", FromLot "from-lot", KilledOn "killed-on",
        To "to", InputLot "input-lot", Input "input", InputGrams "input-grams", Responsible "responsible",
        Moment "moment", NumberOfPacks "number-of-packs",
        WithRows "with-rows" { heading: Arg, rows: String },
    }
}

impl ReportSays {
    /// Who told it, when, and what it is about; an empty name is of somebody whom nobody noted yet, and so is a hazard
    /// that is none of those that are known.
    pub fn told(by: &str, at: NaiveDateTime, hazard: Hazard) -> ReportSays {
        let hazard = Arg::from(match hazard {
            Hazard::Other => ReportSays::NotKnownYet.into(),
            known => known.says(),
        });
        match by {
            "" => ReportSays::ToldAtOnly { at, hazard },
            by => ReportSays::ToldBy {
                by: by.to_owned(),
                at,
                hazard,
            },
        }
    }

    /// How long after the call, from whole seconds: what was done in the same minute was done at once.
    pub fn later(seconds: i64) -> ReportSays {
        match seconds / 60 {
            0 => ReportSays::AtOnce,
            minutes => ReportSays::Later {
                hours: minutes / 60,
                minutes: minutes % 60,
            },
        }
    }
}

messages! {
    /// What customers are told, and what stands on the shelf.
    NoticeSays in "notice" {
        Title "title" { place: String },
        What "what" { kitchen: String, names: String },
        Codes "codes" { codes: String },
        SoldOn "sold-on" { day: NaiveDate },
        SoldBetween "sold-between" { from: NaiveDate, until: NaiveDate },
        Why "why" { hazard: String },
        Deed "deed",
        AtHome "at-home",
        Ask "ask" { kitchen: String, address: String },
        Shelf "shelf" { names: String },
        ShelfDeed "shelf-deed",
        Drill "drill",
    }
}
