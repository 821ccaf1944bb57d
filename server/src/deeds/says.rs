//! What is said of deeds where they are taken in.

use domain::code::LotCode;
use domain::messages;
use domain::says::Says;

messages! {
    /// What is said of a step that cures.
    CureDeedSays in "cure-deed" {
        Caution "caution",
        Refused "refused" { findings: Vec<Says> },
    }
}

messages! {
    /// What is said of a step that heats.
    HeatDeedSays in "heat-deed" {
        Short "short" { findings: Vec<Says> },
    }
}

messages! {
    /// What is said of pork that is eaten uncooked.
    TrichinaeDeedSays in "trichinae-deed" {
        Short "short" { findings: Vec<Says> },
    }
}

messages! {
    /// What is said of food that readings show to keep by itself.
    StableSays in "stable" {
        Of "of" { lot: LotCode, says: Says },
    }
}
