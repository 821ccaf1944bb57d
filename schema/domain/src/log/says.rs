//! What a log says in words of ours.

use crate::code::LotCode;
use crate::grams::Grams;
use crate::measure::{Percent, Temperature};
use crate::messages;
use crate::says::{Arg, Texts};
use crate::words::{DeedKind, Disposal, Species};
use chrono::{NaiveDate, NaiveDateTime};
use rust_decimal::Decimal;

messages! {
    /// What is said in a log.
    LogsSays in "logs" {
        Percent "percent" { percent: Percent },
        Ppm "ppm" { ppm: Decimal },
        Millimetres "millimetres" { mm: Decimal },
        Material "material" { lot: LotCode, product: Texts, grams: Grams },
        Point "point" { at: NaiveDateTime, read: Temperature },
        NamedWith "named-with" { name: String, number: String },
        Animal "animal" { species: Species, killed: NaiveDate, number: Arg },
        AnimalUnnumbered "animal-unnumbered" { species: Species, killed: NaiveDate },
        Source "source" { product: Texts, lot: LotCode, from: Arg, day: NaiveDate },
        SourceAt "source-at" { product: Texts, lot: LotCode, from: Arg, address: String, day: NaiveDate },
        Nobody "nobody",
        CarriedNothing "carried-nothing",
        CarriedLot "carried-lot" { lot: LotCode, product: Texts },
        Added "added" { what: Arg, grams: Grams },
        WithProbe "with-probe" { probe: String, checked: NaiveDateTime },
        ProbeUnchecked "probe-unchecked" { probe: String },
        Checked "checked" { bath: Arg },
        NoneFound "none-found",
        LimitOfPlace "limit-of-place" { limit: Arg },
        FrozenAt "frozen-at" { read: Temperature, hours: u32 },
        HeatedTo "heated-to" { read: Temperature, minutes: Decimal },
        Certificate "certificate" { way: Arg, paper: String },
        DriedBy "dried-by" { method: String },
        Frozen "frozen",
        Heated "heated",
        Certified "certified",
        HerdCertified "herd-certified",
        Deed "deed" { kind: DeedKind, at: NaiveDateTime, by: String },
        Disposed "disposed" { how: Disposal },
        LetGo "let-go",
        StoppedBy "stopped-by",
    }
}
