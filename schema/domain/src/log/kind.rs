//! Which logs there are, and what stands in each.

use crate::words::{DeedKind, words};

words! {
    /// A log.
    LogKind {
        Receiving = "receiving", Grinding = "grinding", Batches = "batches", Cooking = "cooking",
        Cooling = "cooling", Curing = "curing", Trichinae = "trichinae", CleanDowns = "clean-downs",
        Temperatures = "temperatures", Corrections = "corrections", Departures = "departures",
    }
}

words! {
    /// A column of a log. The order is that in which they stand.
    Column {
        At = "at", Began = "began", Step = "step", Place = "place", By = "by",
        Lot = "lot", Product = "product", Weight = "weight", Packs = "packs", UseBy = "use-by",
        Materials = "materials", CarriedOver = "carried-over", Added = "added", Loss = "loss",
        From = "from", FromAddress = "from-address", Establishments = "establishments",
        SupplierLots = "supplier-lots", ProducedOn = "produced-on", Animals = "animals",
        Reference = "reference", SentOn = "sent-on", ReceivedOn = "received-on", Sources = "sources",
        Document = "document", Responsible = "responsible",
        Temperature = "temperature", Hottest = "hottest", Held = "held", Boiled = "boiled",
        CooledFrom = "cooled-from", CooledTo = "cooled-to", Chart = "chart", Limit = "limit",
        Probe = "probe", Standard = "standard",
        CleanedBefore = "cleaned-before", CleanedAfter = "cleaned-after", Worked = "worked",
        Salt = "salt", Nitrite = "nitrite", Nitrate = "nitrate", Brine = "brine", Ph = "ph",
        WaterActivity = "water-activity", Residual = "residual",
        Method = "method", Casing = "casing", Actual = "actual", Certificate = "certificate",
        Deviation = "deviation", Correction = "correction",
        About = "about", Wrong = "wrong", Done = "done", Why = "why", Witness = "witness",
        To = "to", ToAddress = "to-address", ToTelephone = "to-telephone", Carrier = "carrier",
        Found = "found", Note = "note",
    }
}

words! {
    /// What belongs together, where a page is too narrow for every column: the heading under which it stands.
    Group { When = "when", What = "what", Whence = "whence", Checks = "checks", Whereto = "whereto", Remarks = "remarks", }
}

impl LogKind {
    /// The deeds that stand in it.
    pub const fn deeds(self) -> &'static [DeedKind] {
        use DeedKind::*;
        match self {
            LogKind::Receiving => &[Receive],
            LogKind::Grinding => &[Grind],
            LogKind::Batches => &[
                BreakDown, Cut, Cure, Smoke, Cook, Chill, Grind, Mix, Render, Portion, Pack, Rinse,
                Equalise, Hang, Turn,
            ],
            LogKind::Cooking => &[Cook, Smoke, Render],
            LogKind::Cooling => &[Cook, Chill, Smoke, Render],
            LogKind::Curing => &[Cure, Turn, Rinse, Equalise, Smoke, Hang, Release, Measure],
            LogKind::Trichinae => &[Release, Dispose],
            LogKind::CleanDowns => &[CleanDown],
            LogKind::Temperatures => &[Measure, PlaceFailed, CheckProbe],
            LogKind::Corrections => &[
                PlaceFailed,
                Void,
                Correct,
                Dispose,
                Hold,
                HoldRelease,
                Incident,
                IncidentScope,
            ],
            LogKind::Departures => &[Sell, Serve, Discard, Ship, Return, TakeBack],
        }
    }

    /// Does it list deeds of any kind that placed a stop, besides its own?
    pub const fn lists_stops(self) -> bool {
        matches!(self, LogKind::Corrections)
    }

    /// Does a deed stand in it only if it made a lot?
    pub const fn wants_lots(self) -> bool {
        matches!(self, LogKind::Batches)
    }

    /// Its columns, in order.
    pub const fn columns(self) -> &'static [Column] {
        use Column::*;
        match self {
            LogKind::Receiving => &[
                At,
                Place,
                By,
                Lot,
                Product,
                Weight,
                Packs,
                UseBy,
                From,
                FromAddress,
                Establishments,
                SupplierLots,
                ProducedOn,
                Animals,
                Reference,
                SentOn,
                Document,
                Responsible,
                Temperature,
                Probe,
                Found,
                Note,
            ],
            LogKind::Grinding => &[
                At,
                Began,
                Place,
                By,
                Lot,
                Product,
                Weight,
                Materials,
                CarriedOver,
                Establishments,
                SupplierLots,
                ProducedOn,
                Animals,
                CleanedBefore,
                CleanedAfter,
                Temperature,
                Probe,
                Found,
                Note,
            ],
            LogKind::Batches => &[
                At,
                Began,
                Step,
                Place,
                By,
                Lot,
                Product,
                Weight,
                Packs,
                UseBy,
                Materials,
                Added,
                Loss,
                Sources,
                Responsible,
                Found,
                Note,
            ],
            LogKind::Cooking => &[
                At, Began, Step, Place, By, Lot, Product, Weight, Hottest, Held, Boiled, Chart,
                Probe, Standard, Found, Note,
            ],
            LogKind::Cooling => &[
                At, Began, Step, Place, By, Lot, Product, Weight, CooledFrom, CooledTo, Chart,
                Probe, Standard, Found, Note,
            ],
            LogKind::Curing => &[
                At,
                Step,
                Place,
                By,
                Lot,
                Product,
                Weight,
                Materials,
                Salt,
                Nitrite,
                Nitrate,
                Brine,
                Ph,
                WaterActivity,
                Residual,
                Temperature,
                Found,
                Note,
            ],
            LogKind::Trichinae => &[
                At,
                Step,
                By,
                Lot,
                Product,
                Weight,
                Method,
                Salt,
                Casing,
                Chart,
                Limit,
                Actual,
                Certificate,
                Deviation,
                Correction,
                Found,
                Note,
            ],
            LogKind::CleanDowns => &[At, Place, By, CleanedBefore, Worked, Note],
            LogKind::Temperatures => &[
                At,
                Step,
                Place,
                By,
                Lot,
                Product,
                Temperature,
                Limit,
                Chart,
                Probe,
                Found,
                Note,
            ],
            LogKind::Corrections => &[
                At, Step, Place, By, Lot, Product, About, Wrong, Done, Why, Witness, Document,
            ],
            LogKind::Departures => &[
                At,
                Step,
                By,
                Lot,
                Product,
                Weight,
                Packs,
                To,
                ToAddress,
                ToTelephone,
                Carrier,
                From,
                FromAddress,
                ReceivedOn,
                Sources,
                Responsible,
                Why,
                Found,
                Note,
            ],
        }
    }
}

impl Column {
    /// Under which heading it stands where a page is narrow.
    pub const fn group(self) -> Group {
        use Column::*;
        match self {
            At | Began | Step | Place | By => Group::When,
            Lot | Product | Weight | Packs | UseBy | Loss | Responsible | About => Group::What,
            Materials | CarriedOver | Added | From | FromAddress | Establishments
            | SupplierLots | ProducedOn | Animals | Reference | SentOn | ReceivedOn | Sources
            | Document => Group::Whence,
            Temperature | Hottest | Held | Boiled | CooledFrom | CooledTo | Chart | Limit
            | Probe | Standard | CleanedBefore | CleanedAfter | Worked | Salt | Nitrite
            | Nitrate | Brine | Ph | WaterActivity | Residual | Method | Casing | Actual
            | Certificate => Group::Checks,
            To | ToAddress | ToTelephone | Carrier => Group::Whereto,
            Deviation | Correction | Wrong | Done | Why | Witness | Found | Note => Group::Remarks,
        }
    }
}
