//! What is said of approvals, batches, places of rearing, marks, records and sales. What is said of
//! names and of standards stands beside them.

use super::approvals::Work;
use super::banned::BannedFrom;
use super::beef::Shared;
use super::sale::Head;
use crate::grams::Grams;
use crate::measure::Percent;
use crate::messages;
use crate::says::Texts;
use chrono::NaiveDate;
use rust_decimal::Decimal;

messages! {
    /// What is said of a percentage that cannot be.
    PercentSays in "percent" {
        CannotBe "cannot-be" { percent: Percent },
        PartOfOne "part-of-one" { percent: Decimal, meant: Decimal },
    }
}

messages! {
    /// What is said of work that needs a paper.
    ApprovalSays in "approval" {
        Ended "ended" { number: String, work: Work, until: NaiveDate },
        Needed "needed" { work: Work, needs: Texts },
        NeededIn "needed-in" { place: Texts, work: Work, needs: Texts },
    }
}

messages! {
    /// What is said of parts of an animal.
    AnimalSays in "animal" {
        Banned "banned" { part: String, named: String, from: BannedFrom },
        Sulphites "sulphites",
    }
}

messages! {
    /// What is said of what shares a batch.
    BatchSays in "batch" {
        BeefOneDay "beef-one-day",
        BeefUnknown "beef-unknown" { what: Shared },
        BeefDiffers "beef-differs" { what: Shared, one: String, other: String },
        BeefSeveral "beef-several" { what: Shared, count: usize, most: u32 },
        BeefKillDays "beef-kill-days",
    }
}

messages! {
    /// What is said of records.
    RecordSays in "record" {
        GiveLastDay "give-last-day",
    }
}

messages! {
    /// What is said of listed foods.
    ListedSays in "listed" {
        NoSales "no-sales",
        SellsLittle "sells-little",
        NotListed "not-listed",
        Inspected "inspected",
        AfterKillStep "after-kill-step",
        FarmPack "farm-pack",
        FarmItself "farm-itself",
        OtherShop "other-shop",
        Served "served",
        LeavesList "leaves-list",
        KillStep "kill-step",
        ShippedOn "shipped-on",
    }
}

messages! {
    /// What is said of the weight of a sale.
    SaleSays in "sale" {
        NoWeight "no-weight" { weight: Grams },
        MoreThanRetail "more-than-retail" { weight: Grams, head: Head, most: Grams },
    }
}
