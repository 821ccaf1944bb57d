//! The closed vocabularies: each word is spelt once, here, for code, API, store and screen.

/// Declares a closed set of words and how each is spelt.
macro_rules! words {
    ($(#[$about:meta])* $name:ident { $($(#[$each:meta])* $word:ident = $spelt:literal,)+ }) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$each])* #[allow(missing_docs, reason = "the word says it")] $word,)+ }

        impl $name {
            /// Every word, in the order of the vocabulary.
            pub const ALL: &'static [$name] = &[$($name::$word,)+];
            /// Every spelling, in the same order.
            pub const SPELT: &'static [&'static str] = &[$($spelt,)+];

            /// As it is spelt everywhere.
            pub const fn as_str(self) -> &'static str {
                match self { $($name::$word => $spelt,)+ }
            }

            /// Each word's key in the message catalogue, in the same order.
            pub const KEYS: &'static [(&'static str, &'static [&'static str])] =
                &[$((concat!(stringify!($name), "-", $spelt), &[]),)+];

            /// The word for a reader, in their language.
            pub const fn says(self) -> $crate::says::Says {
                match self {
                    $($name::$word => $crate::says::Says::key_only(concat!(stringify!($name), "-", $spelt)),)+
                }
            }

            /// The word so spelt, if it is one of ours.
            pub fn parse(text: &str) -> Option<$name> {
                match text { $($spelt => Some($name::$word),)+ _ => None }
            }
        }

        impl From<$name> for $crate::says::Arg {
            fn from(word: $name) -> $crate::says::Arg {
                $crate::says::Arg::from(word.says())
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.as_str())
            }
        }
    };
}

pub(crate) use words;

pub use crate::paper::PaperKind;
pub use crate::quantity::Quantity;

words! {
    /// What sort of thing a product is.
    ProductKind {
        Carcass = "carcass", Cut = "cut", Trim = "trim", Fat = "fat", Bone = "bone", Offal = "offal",
        Cured = "cured", Cooked = "cooked", Rendered = "rendered", Stock = "stock", Mixed = "mixed",
        Ingredient = "ingredient", Waste = "waste",
    }
}

impl ProductKind {
    /// Is it made of several things, so that a supplier's other lot may change what is in it?
    pub const fn has_parts(self) -> bool {
        use ProductKind::*;
        matches!(self, Cooked | Cured | Mixed | Rendered | Stock)
    }
}

words! {
    /// The units in which a kitchen's people read weights.
    MassUnits { Metric = "metric", Pounds = "pounds", }
}

words! {
    /// The units in which a kitchen's people read temperatures.
    HeatUnits { Celsius = "celsius", Fahrenheit = "fahrenheit", }
}

words! {
    /// The animal a product is of.
    Species {
        Pig = "pig", Cattle = "cattle", Sheep = "sheep", Goat = "goat", Horse = "horse",
        Deer = "deer", Bison = "bison", Boar = "boar", Rabbit = "rabbit", Chicken = "chicken",
        Turkey = "turkey", Duck = "duck", Goose = "goose", GuineaFowl = "guinea-fowl",
        Quail = "quail", Pheasant = "pheasant", Partridge = "partridge", Pigeon = "pigeon",
    }
}

impl Species {
    /// Is it a bird?
    pub const fn is_bird(self) -> bool {
        use Species::*;
        matches!(
            self,
            Chicken | Turkey | Duck | Goose | GuineaFowl | Quail | Pheasant | Partridge | Pigeon
        )
    }
}

words! {
    /// An allergen by its source: every nut, fish, crustacean and mollusc by name, because the law
    /// of some places asks for the name (`us` 2, `canada-eu-uk` 3 and 9). The collective words are
    /// for goods whose paper says no more.
    Allergen {
        Milk = "milk", Egg = "egg", Peanut = "peanut", Soy = "soy", Sesame = "sesame",
        Mustard = "mustard", Celery = "celery", Lupin = "lupin", Sulphites = "sulphites",
        Wheat = "wheat", Spelt = "spelt", Rye = "rye", Barley = "barley", Oats = "oats",
        Triticale = "triticale",
        Almond = "almond", BrazilNut = "brazil-nut", Cashew = "cashew", Hazelnut = "hazelnut",
        Macadamia = "macadamia", Pecan = "pecan", PineNut = "pine-nut", Pistachio = "pistachio",
        Walnut = "walnut", TreeNut = "tree-nut",
        Anchovy = "anchovy", Bass = "bass", Cod = "cod", Flounder = "flounder", Haddock = "haddock",
        Hake = "hake", Herring = "herring", Mackerel = "mackerel", Pollock = "pollock",
        Salmon = "salmon", Sardine = "sardine", Sole = "sole", Trout = "trout", Tuna = "tuna",
        Fish = "fish",
        Crab = "crab", Crayfish = "crayfish", Lobster = "lobster", Prawn = "prawn", Shrimp = "shrimp",
        Crustacean = "crustacean",
        Clam = "clam", Mussel = "mussel", Octopus = "octopus", Oyster = "oyster",
        Scallop = "scallop", Snail = "snail", Squid = "squid", Mollusc = "mollusc",
    }
}

words! {
    /// How a pack is kept.
    State { Chilled = "chilled", Frozen = "frozen", Ambient = "ambient", Hot = "hot", }
}

words! {
    /// What has become of a pack.
    Being {
        OnHand = "on-hand", Open = "open", Used = "used", Sold = "sold", Served = "served",
        Discarded = "discarded", Shipped = "shipped", Returned = "returned", Missing = "missing",
        Void = "void",
    }
}

words! {
    /// What a place is for. Clean-downs are about `contact` places.
    PlaceKind { Storage = "storage", Contact = "contact", Heat = "heat", Counter = "counter", }
}

words! {
    /// The steps that take inputs, and make lots or note that something was done to them.
    StepKind {
        BreakDown = "break-down", Cut = "cut", Cure = "cure", Turn = "turn", Rinse = "rinse",
        Equalise = "equalise", Hang = "hang", Smoke = "smoke", Cook = "cook", Chill = "chill",
        Grind = "grind", Mix = "mix", Render = "render", Portion = "portion", Pack = "pack",
    }
}

impl StepKind {
    /// May this step stand without outputs, as a note that it was done? The piece stays the lot
    /// that it was: a ham turned in its salt is the same ham.
    pub const fn may_make_nothing(self) -> bool {
        use StepKind::*;
        matches!(self, Turn | Rinse | Equalise | Hang | Chill)
    }

    /// Does this step only part what went in, and do nothing else to it?
    pub const fn parts_only(self) -> bool {
        matches!(self, StepKind::Cut | StepKind::Portion | StepKind::Pack)
    }
}

words! {
    /// Every deed that the record can hold.
    DeedKind {
        Receive = "receive",
        BreakDown = "break-down", Cut = "cut", Cure = "cure", Turn = "turn", Rinse = "rinse",
        Equalise = "equalise", Hang = "hang", Smoke = "smoke", Cook = "cook", Chill = "chill",
        Grind = "grind", Mix = "mix", Render = "render", Portion = "portion", Pack = "pack",
        Move = "move", Sell = "sell", Serve = "serve", Discard = "discard", Ship = "ship",
        Return = "return", TakeBack = "take-back", Measure = "measure", Count = "count", Release = "release",
        CleanDown = "clean-down", CheckProbe = "check-probe", PlaceFailed = "place-failed", Void = "void", Correct = "correct",
        Dispose = "dispose", Adopt = "adopt", ConfirmRow = "confirm-row", Hold = "hold", HoldRelease = "hold-release",
        Incident = "incident", IncidentScope = "incident-scope", IncidentNote = "incident-note",
        IncidentGuests = "incident-guests", IncidentClose = "incident-close",
        Print = "print", SettlePrint = "settle-print", CancelPrint = "cancel-print",
        Paper = "paper", Thin = "thin",
    }
}

words! {
    /// How far a label has come on its way through a printer.
    PrintState {
        Waiting = "waiting", Sending = "sending", Sent = "sent", Printed = "printed",
        Unsure = "unsure", Refused = "refused", Cancelled = "cancelled", Spoilt = "spoilt",
    }
}

impl From<StepKind> for DeedKind {
    fn from(step: StepKind) -> DeedKind {
        DeedKind::parse(step.as_str()).expect("every step kind is a deed kind of the same spelling")
    }
}

words! {
    /// How a pack leaves.
    DepartureKind {
        Sell = "sell", Serve = "serve", Discard = "discard", Ship = "ship", Return = "return",
    }
}

words! {
    /// Where a pack's grams went, or came back from. `moved` changes where or how it is kept only.
    Account {
        Used = "used", Sold = "sold", Served = "served", Discarded = "discarded",
        Shipped = "shipped", Returned = "returned", Lost = "lost", Unexplained = "unexplained",
        TakenBack = "taken-back", Moved = "moved", Noted = "noted",
    }
}

words! {
    /// What a step may add without a lot of its own. Everything else edible is an input lot.
    Addition { Water = "water", Ice = "ice", Steam = "steam", ScaleDifference = "scale-difference", }
}

words! {
    /// The event a keeping rule counts from.
    KeepFrom {
        Made = "made", Received = "received", Packed = "packed", Opened = "opened",
        Thawed = "thawed", Cooked = "cooked",
    }
}

words! {
    /// Which part of a carcass a received lot is.
    Side {
        Left = "left", Right = "right", Whole = "whole",
        LeftFore = "left-fore", LeftHind = "left-hind", RightFore = "right-fore", RightHind = "right-hind",
    }
}

words! {
    /// How a pack is closed, where air was taken out of it.
    Packaging { Vacuum = "vacuum", ModifiedAtmosphere = "modified-atmosphere", }
}

words! {
    /// What an ingredient is in a cure.
    CurePart {
        Salt = "salt", Sugar = "sugar", Ascorbate = "ascorbate", Erythorbate = "erythorbate",
        Starter = "starter",
    }
}

words! {
    /// What a reason is about.
    Topic { Date = "date", Cure = "cure", Heat = "heat", Release = "release", Yield = "yield", Stop = "stop", Cooling = "cooling", Cold = "cold", Condition = "condition", Correction = "correction", History = "history", Confirmation = "confirmation", Contents = "contents", Proof = "proof", CameBack = "came-back", }
}

words! {
    /// What food is by what happened to it, the least first.
    ConditionKind {
        /// As it comes from the animal, or bought raw.
        Raw = "raw",
        /// Something was done to it that proves no kill: salted, smoked, warmed.
        Treated = "treated",
        /// Proven ready to eat.
        Ready = "ready",
    }
}

words! {
    /// What proves that food is ready to eat.
    ProvedBy {
        /// Nothing does.
        Nothing = "nothing",
        /// Times and temperatures that reach a row of the law.
        Heat = "heat",
        /// A pot that boiled: common practice, no source.
        Boiled = "boiled",
        /// The supplier, on the pack or on paper.
        Declared = "declared",
        /// The product list as it stood, for what holds nothing of an animal.
        Listed = "listed",
        /// A cure and drying that a person released by its rule.
        Released = "released",
        /// A named approval of the authority.
        Approved = "approved",
        /// Everything in it was ready.
        Parts = "parts",
        /// A person with the right let it go, by name and with a reason.
        Person = "person",
    }
}

words! {
    /// What is stable by what it is: a closed list, common practice without a source.
    Natural {
        Salt = "salt", Sugar = "sugar", Honey = "honey", Spice = "spice", CuringSalt = "curing-salt",
        Vinegar = "vinegar", Wine = "wine", Spirits = "spirits", Beer = "beer", Oil = "oil",
        RenderedFat = "rendered-fat", DryGoods = "dry-goods", Bread = "bread", Nuts = "nuts",
        Produce = "produce", SaltedCasing = "salted-casing", Water = "water",
    }
}

words! {
    /// What shows that food keeps without time and temperature control.
    StableBy {
        /// What it is: salt, sugar, dry spice, wine, vinegar, rendered fat …
        Nature = "nature",
        /// Readings that reach a row of the law.
        Readings = "readings",
        /// A named approval of the authority.
        Approved = "approved",
        /// Everything in it is stable, and no water was added.
        Parts = "parts",
    }
}

words! {
    /// Why something may not go on its way, the gravest first.
    StopKind {
        /// The making was voided: what carries the label is not what it says.
        Voided = "voided",
        /// A person stopped it, until a person with the right lets it go.
        Held = "held",
        /// A limit was broken, until a person disposes of it.
        Failed = "failed",
        /// Nobody knows what happened to it, until a person disposes of it.
        UnknownHistory = "unknown-history",
        /// Said to be ready to eat, or to keep, and nothing on record shows it.
        NotProven = "not-proven",
        /// Cured under a limit that nobody has confirmed, until a named person does so for the kitchen.
        NotConfirmed = "not-confirmed",
        /// A customer had it, until a person disposes of it.
        CameBack = "came-back",
        /// A cured piece that nobody has released.
        NotReleased = "not-released",
        /// Its last day is over.
        PastDay = "past-its-day",
        /// It was thrown away as waste, and is no food any more.
        Waste = "waste",
        /// Its last label says what is no longer true, until it is printed anew.
        WrongLabel = "wrong-label",
    }
}

words! {
    /// What a label can be wrong about, what may hurt somebody first.
    LabelFact {
        Allergen = "allergen", Date = "date", Species = "species", Ingredient = "ingredient",
        Weight = "weight", Origin = "origin", Name = "name",
    }
}

words! {
    /// How a person disposes of what is stopped.
    Disposal {
        Discarded = "discarded", Returned = "returned", Released = "released", PutRight = "put-right",
    }
}

words! {
    /// The law that a kitchen labels under.
    Profile { Us = "us", Ca = "ca", Eu = "eu", Uk = "uk", }
}

words! {
    /// One word for the counter, from the least to the most cautious.
    Verdict {
        Sell = "sell", SellToday = "sell-today", NotForSale = "not-for-sale", Gone = "gone",
        Pull = "pull", Hold = "hold", Unknown = "unknown",
    }
}

words! {
    /// How far a row of the facts is confirmed. Only what was read may stop somebody.
    Mark {
        Read = "READ", SecondHand = "READ-2", Memory = "MEMORY", Derived = "DERIVED",
        CommonPractice = "common practice, no source", House = "house",
        Kitchen = "confirmed by the kitchen",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_reads_back() {
        assert!(
            Allergen::ALL
                .iter()
                .all(|word| Allergen::parse(word.as_str()) == Some(*word))
        );
        assert!(
            StepKind::ALL
                .iter()
                .all(|word| DeedKind::from(*word).as_str() == word.as_str())
        );
        assert_eq!(Species::parse("Pig"), None);
    }
}
