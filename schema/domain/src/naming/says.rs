//! What is said of a food's name and standard beyond what each standard says itself.

use crate::duties::mince::MinceKind;
use crate::measure::Percent;
use crate::messages;
use crate::says::Arg;
use rust_decimal::Decimal;

messages! {
    /// What is said of a food's name and standard.
    NamingSays in "naming" {
        Qualifier "qualifier" { name: String },
        ProteinUnknown "protein-unknown" { least: Decimal },
        MeatProteinUnknown "meat-protein-unknown" { least: Decimal },
        MeatProteinUnsaid "meat-protein-unsaid" { percent: Percent },
        MinceUnknown "mince-unknown" { fat: Decimal, collagen: Decimal },
        NoNitriteIn "no-nitrite-in" { word: String },
        NoNitriteClaim "no-nitrite-claim" { words: String },
        NitriteDeclared "nitrite-declared" { what: String },
        NitriteByNature "nitrite-by-nature" { words: String, source: String },
        MoistureUnknown "moisture-unknown" { name: String, most: Decimal },
        NoProtein "no-protein",
        MoreThanWhole "more-than-whole" { sum: Decimal },
        Solution "solution" { percent: Percent },
        AddedWater "added-water" { percent: Percent, most: Percent },
        Unlisted "unlisted" { name: String },
        Denies "denies" { what: Arg },
        DeniesAnimal "denies-animal" { word: String, what: Arg },
        CalledCured "called-cured" { ppm: Decimal, least: Decimal },
        TellsAllergen "tells-allergen" { what: Arg },
        OtherAnimal "other-animal" { named: Arg, is: Arg },
        SayAnimal "say-animal" { what: Arg },
        NotAlone "not-alone" { named: Arg, others: Arg },
        SayUncured "say-uncured" { words: Arg },
        MinceElse "mince-else" { told: MinceKind, is: MinceKind },
        AddedElse "added-else" { told: Percent, weighed: Percent },
    }
}
