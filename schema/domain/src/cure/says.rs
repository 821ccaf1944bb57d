//! What is said of a cure: what cannot be, what goes in, and what a place allows.

use super::{Basis, Class, Method, Salometer};
use crate::grams::Grams;
use crate::measure::Percent;
use crate::messages;
use crate::says::{Arg, Says, Texts};
use rust_decimal::Decimal;

messages! {
    /// What is said of a cure that cannot be, or that is to be looked at.
    CureSays in "cure" {
        WeightCannotBe "weight-cannot-be" { grams: Grams, none: Grams, most: Grams },
        NoMeat "no-meat",
        ClassAndMethod "class-and-method" { class: Class, method: Method },
        WaterInDry "water-in-dry",
        PickleParts "pickle-parts" { pickle: Grams, parts: Grams },
        PickleDrawn "pickle-drawn" { pickle: Grams, drawn: Grams },
        TakenMore "taken-more" { said: Percent, weighed: Percent },
        RindOnly "rind-only",
        SaltCannotBe "salt-cannot-be" { salt: Percent },
        PercentCannotBe "percent-cannot-be" { percent: Decimal },
        Fraction "fraction" { percent: Decimal, meant: Decimal },
        NoStrength "no-strength",
        NothingCures "nothing-cures",
        StrongerThanSold "stronger-than-sold" { nitrite: Percent, most: Percent },
        StrengthTooMuch "strength-too-much" { nitrite: Percent, nitrate: Percent },
        MethodNoMeat "method-no-meat" { method: Method },
        MethodNoPickle "method-no-pickle" { method: Method },
        MethodNoPump "method-no-pump" { method: Method },
        MethodNoPickUp "method-no-pick-up" { method: Method },
        MethodNoWater "method-no-water" { method: Method },
        PickleWeight "pickle-weight",
        SaltBrought "salt-brought" { brought: Grams, salt: Percent },
        NoRoomForWater "no-room-for-water",
        AimIngoing "aim-ingoing" { level: LevelSays },
        NotInSalt "not-in-salt" { basis: Basis },
        OtherThings "other-things" { from: Basis, to: Basis },
        PpmCannotBe "ppm-cannot-be" { ppm: Decimal },
        WentIn "went-in" { level: LevelSays },
        Weak "weak" { name: Texts, nitrite: Percent },
        Unusual "unusual" { nitrite: Percent, nitrate: Percent },
        NoNitrate "no-nitrate",
        TooLittleForScale "too-little-for-scale" { dose: Grams, division: Grams, error: Decimal, least: Grams },
        FinerScale "finer-scale" { meat: Grams, fine: Grams, division: Grams, error: Decimal },
    }
}

messages! {
    /// Parts per million, with what they are counted as and when.
    LevelSays in "cure-level" {
        Ingoing "ingoing" { ppm: Decimal, basis: Basis },
        Residual "residual" { ppm: Decimal, basis: Basis },
    }
}

messages! {
    /// What a limit counts, where it is no single salt.
    CountedSays in "cure-counted" {
        Both "both",
        Ascorbate "ascorbate",
        Nitrite "nitrite",
        Nitrate "nitrate",
    }
}

messages! {
    /// What goes in, against what is allowed.
    LimitSays in "cure-limit" {
        Broken "broken" { ppm: Decimal, what: Says, rule: AllowedSays },
        BrokenWouldDo "broken-would-do" { ppm: Decimal, what: Says, rule: AllowedSays, dose: DoseSays },
        AnyPlace "any-place" { ppm: Decimal, basis: Basis, most: Decimal, class: Class, method: Method },
        OnlyResidual "only-residual" { what: CountedSays, class: Class },
        NoneRead "none-read" { what: CountedSays, class: Class, method: Method },
        FinishedMost "finished-most" { most: Decimal, what: Says },
        Left "left" { ppm: Decimal, what: Says, most: Decimal, class: Class },
        LeftAsks "left-asks" { ppm: Decimal, what: Says, level: Decimal },
        Sets "sets" { nitrite: Decimal, ascorbate: Decimal, sets: Arg },
    }
}

messages! {
    /// What is allowed, of what.
    AllowedSays in "cure-allowed" {
        None "none" { food: FoodSays },
        Exactly "exactly" { ppm: Decimal, food: FoodSays },
        Most "most" { ppm: Decimal, food: FoodSays },
        Least "least" { ppm: Decimal, food: FoodSays },
    }
}

messages! {
    /// The product, its method, and on what else a limit depends.
    FoodSays in "cure-food" {
        Any "any" { class: Class, method: Method },
        Heated "heated" { class: Class, method: Method },
        NotHeated "not-heated" { class: Class, method: Method },
        KeepRefrigerated "keep-refrigerated" { class: Class, method: Method },
        CalledCured "called-cured" { class: Class, method: Method },
    }
}

messages! {
    /// How much of the curing salt would do.
    DoseSays in "cure-dose" {
        Just "just" { grams: Grams, used: Grams },
        AtMost "at-most" { grams: Grams, used: Grams },
        AtLeast "at-least" { grams: Grams, used: Grams },
    }
}

messages! {
    /// One set of figures for pumped bacon.
    SetSays in "cure-set" {
        Plain "plain" { nitrite: RangeSays, ascorbate: Decimal },
        Sugar "sugar" { nitrite: RangeSays, ascorbate: Decimal, sugar: Percent },
        Starter "starter" { nitrite: RangeSays, ascorbate: Decimal },
        SugarStarter "sugar-starter" { nitrite: RangeSays, ascorbate: Decimal, sugar: Percent },
    }
}

messages! {
    /// One figure, or from one to another.
    RangeSays in "cure-range" {
        One "one" { ppm: Decimal },
        From "from" { low: Decimal, high: Decimal },
    }
}

messages! {
    /// What is said of a brine.
    BrineSays in "brine" {
        DegreesCannotBe "degrees-cannot-be" { degrees: Decimal },
        NoScale "no-scale" { scale: Salometer },
        OtherScale "other-scale" { degrees: Decimal, percent: Percent, usual: Percent },
        ColdScale "cold-scale" { degrees: Decimal, usual: Percent },
        Saturated "saturated" { percent: Percent, most: Percent },
    }
}

messages! {
    /// What is said of a product that is made without nitrite.
    ClaimSays in "uncured" {
        NoneDue "none-due" { brine: Percent },
        BrineUnknown "brine-unknown" { least: Percent },
        CannotBe "cannot-be" { value: Decimal, most: Decimal },
        NitriteUsed "nitrite-used",
        NaturalSource "natural-source" { source: String },
        NoWording "no-wording",
        NotLikeCured "not-like-cured",
        NaturalWords "natural-words" { source: String, words: String, law: Says },
    }
}
