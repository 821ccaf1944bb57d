//! Why there is no label.

use domain::code::LotCode;
use domain::gate::LabelItem;
use domain::messages;
use domain::says::Says;
use labels::{Purpose, Template};
use rust_decimal::Decimal;

messages! {
    /// Why there is no label.
    LabelSays in "label-refused" {
        NotLawful "not-lawful" { lot: LotCode, finding: Says },
        LanguageMissing "language-missing" { lot: LotCode, finding: Says },
        LettersTooLow "letters-too-low" { label: String, finding: Says },
        NoRoomFor "no-room-for" { label: String, lot: LotCode, item: LabelItem },
        NoneForIt "none-for-it" { purpose: PurposeSays, place: String, lot: LotCode },
        NotHeld "not-held" { label: String, size: SizeOf, lot: LotCode, why: Says, advice: Says },
        WouldHold "would-hold" { label: String, size: SizeOf },
        NoneHolds "none-holds",
        NotUncured "not-uncured" { lot: LotCode, why: Says },
        CuringSalt "curing-salt",
        NoSuchLabel "no-such-label" { label: String, labels: String },
        Voided "voided" { lot: LotCode },
        Dpi "dpi" { dpi: u16 },
        NoSuchPack "no-such-pack" { lot: LotCode, packs: u32, pack: u32 },
        NothingOnHand "nothing-on-hand" { lot: LotCode },
        NotTogether "not-together" { lot: LotCode },
    }
}

messages! {
    /// The sorts of refusal.
    LabelTitle in "label-title" {
        Stopped "stopped",
        NotLawful "not-lawful",
        LanguageMissing "language-missing",
        LettersTooLow "letters-too-low",
        NoneForIt "none-for-it",
        NotUncured "not-uncured",
    }
}

messages! {
    /// What a label is for.
    PurposeSays in "label-for" {
        Receiving "receiving",
        Kitchen "kitchen",
        Curing "curing",
        Freezer "freezer",
        Retail "retail",
        DirectSale "direct-sale",
        Hold "hold",
    }
}

impl From<Purpose> for PurposeSays {
    fn from(purpose: Purpose) -> PurposeSays {
        match purpose {
            Purpose::Receiving => PurposeSays::Receiving,
            Purpose::Kitchen => PurposeSays::Kitchen,
            Purpose::Curing => PurposeSays::Curing,
            Purpose::Freezer => PurposeSays::Freezer,
            Purpose::Retail => PurposeSays::Retail,
            Purpose::DirectSale => PurposeSays::DirectSale,
            Purpose::Hold => PurposeSays::Hold,
        }
    }
}

messages! {
    /// How large a label is, in millimetres.
    SizeOf in "label-size" {
        Label "is" { width: Decimal, height: Decimal },
    }
}

impl SizeOf {
    /// That of a label as it is laid out.
    pub fn of_placed(label: &labels::PlacedLabel) -> SizeOf {
        let mm = |length: labels::Length| Decimal::new(length.um(), 3).round_dp(1);
        SizeOf::Label {
            width: mm(label.width),
            height: mm(label.height),
        }
    }

    /// That of a template.
    pub fn of(template: &Template) -> SizeOf {
        let mm = |length: labels::Length| Decimal::new(length.um(), 3).round_dp(1);
        SizeOf::Label {
            width: mm(template.width()),
            height: mm(template.height()),
        }
    }
}
