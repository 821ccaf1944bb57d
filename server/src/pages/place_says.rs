//! What the pages of places say, and the sentences of their deeds.

use domain::measure::Temperature;
use domain::messages;
use domain::says::Arg;

messages! {
    /// What the pages of places say.
    PlacePageSays in "page-place" {
        Head "head" { lots: usize, what: Arg },
        Carcasses "carcasses" { carcasses: usize },
        Pieces "pieces" { pieces: usize },
        Cleaned "cleaned" { at: String, by: String },
        CleanedLast "cleaned-last" { at: String, by: String },
        RawSince "raw-since" { at: String },
        ReadySince "ready-since" { at: String },
        Degrees "degrees" { at: Temperature },
        Checked "checked" { at: String, bath: String, read: Temperature },
        ColdLast "cold-last" { read: Temperature, at: String },
        Asks "asks" { limits: Arg },
        MissingPack "missing-pack" { pack: String, weight: String, place: String },
        More "more" { packs: usize },
        MoreLots "more-lots" { lots: usize },
    }
}

messages! {
    /// The deeds over a place as sentences, before they are done.
    PlaceWorkSays in "page-sentence" {
        Clean "clean-down" { place: String },
        Temperature "temperature" { place: String, field: &'static str },
        Failed "failed" { place: String, lots: usize },
        Moves "moves" { place: String },
        Thaws "thaws" { place: String },
        Discards "discards" { place: String },
        CountPlace "count-place" { place: String },
        AdoptMissing "adopt-missing" { name: String, lot: String },
        AdoptUnknown "adopt-unknown",
        ProbeCheck "probe-check" { field: &'static str },
    }
}
