//! The words of this room.

use crate::words::words;

words! {
    /// The classes of food that a kitchen's cooking rule tells apart (`us-1.8`).
    Food {
        /// Whole muscle that was neither pierced nor pumped.
        Intact = "intact",
        /// Ground, injected or mechanically tenderised meat.
        Ground = "ground",
        /// Poultry, stuffed meat, and stuffing with meat in it.
        Poultry = "poultry",
        /// A whole roast of beef or pork, a cured one such as a ham among them.
        Roast = "roast",
        /// Raw animal food cooked by microwaves.
        Microwaved = "microwaved",
    }
}

words! {
    /// What brings the outside of meat into its middle; what needs more heat first.
    PiercedBy {
        /// Whoever cooked it says that it is stuffed.
        SaidStuffed = "said-stuffed",
        /// Something went into the cook with it that may fill it, and nobody says that it does not.
        Filled = "filled",
        /// It was stuffed, or is a stuffing itself: something that is no seasoning was put into it.
        Stuffed = "stuffed",
        /// It was ground.
        Ground = "ground",
        /// Brine was pumped into it.
        Pumped = "pumped",
        /// Blades or needles went through it.
        Bladed = "bladed",
    }
}

words! {
    /// What is held, thawed or received at a temperature.
    Holding {
        /// Cold food.
        Cold = "cold",
        /// Hot food.
        Hot = "hot",
        /// A roast that was properly cooked, held hot.
        HotRoast = "hot-roast",
        /// Barbecued, roasted or broiled meat that is ready to eat, held cold.
        BarbecuedCold = "barbecued-cold",
        /// The same, held hot.
        BarbecuedHot = "barbecued-hot",
        /// What is called refrigerated.
        Refrigerated = "refrigerated",
        /// Shell eggs that were not treated.
        Eggs = "eggs",
        /// Food as it comes in at the door.
        Receiving = "receiving",
        /// Raw meat at the door.
        ReceivingMeat = "receiving-meat",
        /// Raw poultry or rabbit at the door.
        ReceivingPoultry = "receiving-poultry",
        /// Raw offal at the door.
        ReceivingOffal = "receiving-offal",
        /// Raw meat with other things in it, at the door.
        ReceivingPreparation = "receiving-preparation",
        /// Raw mince with nothing else in it, at the door.
        ReceivingMince = "receiving-mince",
        /// What comes in frozen.
        ReceivingFrozen = "receiving-frozen",
        /// The water in which food thaws.
        ThawWater = "thaw-water",
        /// Ready-to-eat food while it thaws.
        ThawReadyToEat = "thaw-ready-to-eat",
        /// Fresh mince.
        Mince = "mince",
        /// Frozen mince.
        FrozenMince = "frozen-mince",
        /// A bath for cooking under vacuum.
        Bath = "bath",
        /// The same for chicken.
        ChickenBath = "chicken-bath",
        /// What was cooked under vacuum, stored.
        SousVideStore = "sous-vide-store",
    }
}
