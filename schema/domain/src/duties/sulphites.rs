//! Sulphites in raw meat: a few sausages may have them, and burger meat with vegetables or cereals.

use super::names::{says, words_of};
use super::says::AnimalSays;
use crate::rows::{Finding, Gravity, RowId};

/// Which raw meat may have sulphites.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SulphitesInMeat {
    /// Where it stands.
    pub row: RowId,
    /// The names that may, in lower case.
    pub names: Vec<String>,
}

impl SulphitesInMeat {
    /// What is to be said of raw meat with sulphites of these names (`confirmed-X-EU-5`): a warning, for nobody
    /// knows how much is in it, and a little of a wine counts as none.
    pub fn check(&self, names: &[&str]) -> Option<Finding> {
        let may = |name: &&str| {
            let name = words_of(name);
            self.names.iter().any(|word| says(&name, word))
        };
        let warned = || Finding::new(Gravity::Warn, AnimalSays::Sulphites, [self.row.clone()]);
        (!names.iter().any(may)).then(warned)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(names: &[&str], warns: bool) {
        let rule = SulphitesInMeat {
            row: RowId::new("a-row"),
            names: vec!["breakfast sausage".into(), "longaniza fresca".into()],
        };
        assert_eq!(rule.check(names).is_some(), warns, "{names:?}");
    }

    #[test]
    fn a_sausage_with_sulphites_warns_unless_it_is_one_that_may() {
        check(&["Pork sausage", "Saucisse de porc"], true);
        check(&["Breakfast sausage"], false);
        check(&["Pork sausage", "Longaniza fresca"], false);
        check(&["Sausage for a late breakfast"], true);
    }
}
