//! The closed vocabularies of curing.

use crate::words::words;

words! {
    /// How the cure gets into the meat. The handbook has two ways to count an immersion
    /// (`us-H5`, `us-H6`); which of them the kitchen uses is part of its method.
    Method {
        Dry = "dry",
        EquilibriumDry = "equilibrium-dry",
        EquilibriumBrine = "equilibrium-brine",
        ImmersionPickUp = "immersion-pick-up",
        ImmersionEquilibrium = "immersion-equilibrium",
        Pumped = "pumped",
        Comminuted = "comminuted",
    }
}

impl Method {
    /// Is the meat rubbed or bagged with dry cure, without water?
    pub const fn is_dry(self) -> bool {
        matches!(self, Method::Dry | Method::EquilibriumDry)
    }

    /// Does only a part of a weighed pickle go into the meat?
    pub const fn takes_part_of_a_pickle(self) -> bool {
        matches!(self, Method::Pumped | Method::ImmersionPickUp)
    }

    /// Is there a pickle of its own, weighed apart from the meat?
    pub const fn has_pickle(self) -> bool {
        self.takes_part_of_a_pickle() || matches!(self, Method::ImmersionEquilibrium)
    }
}

words! {
    /// What is cured, as the limits divide it. The traditional ones have their own rules in
    /// Europe (`canada-eu-uk-12.3` to `12.10`).
    Class {
        Bacon = "bacon", WholeMuscle = "whole-muscle", Comminuted = "comminuted",
        DrySausage = "dry-sausage", Sterilised = "sterilised", InfantFood = "infant-food",
        WiltshireBacon = "wiltshire-bacon", WiltshireHam = "wiltshire-ham",
        CuredTongue = "cured-tongue", DryCuredBacon = "dry-cured-bacon",
        DryCuredHam = "dry-cured-ham", Jamon = "jamon", JambonSec = "jambon-sec",
        Rohschinken = "rohschinken", JelliedMeat = "jellied-meat",
        ImmersedBacon = "immersed-bacon", SpreadableSausage = "spreadable-sausage",
        Preparation = "preparation", NamedPreparation = "named-preparation",
        PortugueseSalted = "portuguese-salted", SmokedReindeer = "smoked-reindeer",
        RipenedSausage = "ripened-sausage", SaucissonSec = "saucisson-sec",
        CzechSalami = "czech-salami", SwedishChristmas = "swedish-christmas",
    }
}

impl Class {
    /// Is it belly, so that a rind on it takes next to no cure?
    pub const fn is_bacon(self) -> bool {
        matches!(
            self,
            Class::Bacon | Class::WiltshireBacon | Class::DryCuredBacon | Class::ImmersedBacon
        )
    }

    /// What it is by kind: bacon, ground or whole. The salted bellies, chops and feet of Portugal count as bacon; food for
    /// infants is a kind of its own everywhere (`us-N9`).
    pub const fn kind(self, method: Method) -> Class {
        let ground = self.is_ground() || self.is_either() && matches!(method, Method::Comminuted);
        match self {
            Class::InfantFood => Class::InfantFood,
            Class::PortugueseSalted => Class::Bacon,
            _ if self.is_bacon() => Class::Bacon,
            _ if ground => Class::Comminuted,
            _ => Class::WholeMuscle,
        }
    }

    /// Is it chopped or ground?
    pub const fn is_ground(self) -> bool {
        matches!(
            self,
            Class::Comminuted
                | Class::DrySausage
                | Class::SpreadableSausage
                | Class::RipenedSausage
                | Class::SaucissonSec
                | Class::CzechSalami
        )
    }

    /// May it be whole or ground?
    pub const fn is_either(self) -> bool {
        matches!(
            self,
            Class::Sterilised
                | Class::InfantFood
                | Class::Preparation
                | Class::NamedPreparation
                | Class::SwedishChristmas
        )
    }

    /// Is it a ham that ages for months, for which nitrite alone is not made?
    pub const fn ages_long(self) -> bool {
        matches!(
            self,
            Class::DryCuredHam | Class::Jamon | Class::JambonSec | Class::Rohschinken
        )
    }
}

words! {
    /// The metal in a curing salt.
    Alkali { Sodium = "sodium", Potassium = "potassium", }
}

words! {
    /// What parts per million are counted as. The same meat has 120 ppm as sodium nitrite and
    /// 80 ppm as nitrite ion.
    Basis {
        SodiumNitrite = "sodium-nitrite", PotassiumNitrite = "potassium-nitrite",
        NitriteIon = "nitrite-ion", SodiumNitrate = "sodium-nitrate",
        PotassiumNitrate = "potassium-nitrate", NitrateIon = "nitrate-ion",
    }
}

impl Basis {
    /// Is it a nitrite, not a nitrate?
    pub const fn is_nitrite(self) -> bool {
        matches!(
            self,
            Basis::SodiumNitrite | Basis::PotassiumNitrite | Basis::NitriteIon
        )
    }
}

words! {
    /// When the parts per million are counted: what goes in, or what a laboratory still finds.
    Stage { Ingoing = "ingoing", Residual = "residual", }
}

words! {
    /// The scale that a salometer is marked in. They all say degrees.
    Salometer {
        At60F = "60F", At38F = "38F", QuarterSalt = "25-percent",
    }
}

words! {
    /// The accuracy class on a balance's plate (`additions-B5`).
    ScaleClass { One = "I", Two = "II", Three = "III", Four = "IIII", }
}
