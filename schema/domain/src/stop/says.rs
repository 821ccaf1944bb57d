//! What stops say.

use crate::code::LotCode;
use crate::messages;
use crate::rows::RowId;
use crate::says::{Says, Texts};
use chrono::NaiveDate;

messages! {
    /// Why something is stopped, and what to do.
    StopSays in "stop" {
        Voided "voided" { lot: LotCode },
        NotReleased "not-released" { lot: LotCode, product: Texts },
        NotProven "not-proven" { lot: LotCode, product: Texts },
        PartlyCooked "partly-cooked" { lot: LotCode, product: Texts },
        RoomNotProven "room-not-proven" { lot: LotCode, product: Texts },
        NoDate "no-date" { lot: LotCode, product: Texts },
        NoDatePiece "no-date-piece" { lot: LotCode, product: Texts },
        MadeAhead "made-ahead" { lot: LotCode },
        PastDay "past-day" { pack: String, date: NaiveDate },
        Waste "waste" { lot: LotCode, product: Texts },
        WrongLabel "wrong-label" { pack: String, untrue: Vec<Says> },
        UnknownHistory "unknown-history" { says: Says },
        NotConfirmed "not-confirmed" { row: RowId, text: Says },
        Held "held" { why: String },
        HeldFor "held-for" { number: String, why: String },
        HeldUnder "held-under" { number: String },
        HeldRule "held-rule",
        Broke "broke" { findings: Vec<Says> },
        BrokeForGood "broke-for-good" { findings: Vec<Says> },
        Refused "refused" { pack: String, stop: Says },
        Passed "passed" { pack: String, stop: Says },
        EnteredAfter "entered-after" { pack: String, stop: Says },
        Undated "undated" { lot: LotCode, product: Texts },
        UndatedPiece "undated-piece" { lot: LotCode, product: Texts },
        Inherited "inherited" { pack: String, stop: Says },
    }
}
