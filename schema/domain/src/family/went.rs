//! Where the weight of a lot went.

use crate::grams::Grams;
use std::ops::AddAssign;

/// What was made, and where it went: made + taken back = all the others.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Went {
    /// Its weight at birth.
    pub made: Grams,
    /// What customers brought back.
    pub taken_back: Grams,
    /// What went into other lots.
    pub used: Grams,
    /// What was sold.
    pub sold: Grams,
    /// How many packs were sold.
    pub sold_packs: i64,
    /// What was served.
    pub served: Grams,
    /// What was thrown away.
    pub discarded: Grams,
    /// What was shipped.
    pub shipped: Grams,
    /// What went back to its supplier.
    pub returned: Grams,
    /// What dried off, or was lost otherwise.
    pub lost: Grams,
    /// What is left.
    pub on_hand: Grams,
    /// What nobody can account for: missing positive, surplus negative.
    pub unexplained: Grams,
    /// What is missing of the packs of which something is.
    pub missing: Grams,
    /// What there is too much of in the packs of which there is.
    pub surplus: Grams,
}

impl AddAssign for Went {
    fn add_assign(&mut self, other: Went) {
        self.made += other.made;
        self.taken_back += other.taken_back;
        self.used += other.used;
        self.sold += other.sold;
        self.sold_packs += other.sold_packs;
        self.served += other.served;
        self.discarded += other.discarded;
        self.shipped += other.shipped;
        self.returned += other.returned;
        self.lost += other.lost;
        self.on_hand += other.on_hand;
        self.unexplained += other.unexplained;
        self.missing += other.missing;
        self.surplus += other.surplus;
    }
}
