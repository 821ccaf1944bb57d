//! Where everything with a species in a lot comes from, as far as its code needs to know.

/// The animals in a lot, summed up. The full answer is a walk through the genealogy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Origin {
    /// Nothing with a species in it: salt, wine, water.
    NoSpecies,
    /// Everything with a species in it comes from this one source animal.
    One(AnimalId),
    /// Several animals, or bought-in meat.
    Mixed {
        /// Is any of it from an animal on record?
        animals: bool,
    },
}

/// A source animal's key in the record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct AnimalId(pub i32);

impl Origin {
    /// Bought-in meat: a species, but no animal on record.
    pub const BOUGHT_MEAT: Origin = Origin::Mixed { animals: false };

    /// The origin of what is made of both.
    pub fn with(self, other: Origin) -> Origin {
        match (self, other) {
            (Origin::NoSpecies, any) | (any, Origin::NoSpecies) => any,
            (Origin::One(one), Origin::One(two)) if one == two => self,
            _ => Origin::Mixed {
                animals: self.has_animal() || other.has_animal(),
            },
        }
    }

    /// Does any of it come from an animal on record?
    pub fn has_animal(self) -> bool {
        matches!(self, Origin::One(_) | Origin::Mixed { animals: true })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn any_origin() -> impl Strategy<Value = Origin> {
        prop_oneof![
            Just(Origin::NoSpecies),
            (1..4).prop_map(|id| Origin::One(AnimalId(id))),
            any::<bool>().prop_map(|animals| Origin::Mixed { animals }),
        ]
    }

    proptest! {
        #[test]
        fn the_order_of_mixing_does_not_matter(a in any_origin(), b in any_origin(), c in any_origin()) {
            prop_assert_eq!(a.with(b), b.with(a));
            prop_assert_eq!(a.with(b).with(c), a.with(b.with(c)));
            prop_assert_eq!(a.with(a), a);
            prop_assert_eq!(a.with(b).has_animal(), a.has_animal() || b.has_animal());
        }
    }
}
