//! What a class counts as in a place. Europe divides off what other places do not: there such a food is what it is
//! by kind (bacon, ground, whole), and the limits of that hold.

use super::{Class, Counts, CureRules, Method};
use crate::product::{CuredAs, Product};
use crate::rows::Rows;
use chrono::NaiveDate;

/// What ground meat is where a place divides preparations off: raw sausage that is sold raw, neither dried nor
/// heated, is a preparation there, whatever it is called (`confirmed-X-EU-4`). Whoever chose a class with rows of its
/// own has said what it is.
pub fn as_sold(cured: CuredAs, product: &Product, rules: &CureRules) -> CuredAs {
    let divides = rules
        .limits
        .iter()
        .any(|limit| limit.classes.contains(&Class::Preparation));
    let sold_raw = match cured.heated {
        Some(heated) => !heated,
        None => product.sale.offered,
    };
    let plain = cured.class == Class::Comminuted && !product.is_hung();
    match divides && plain && product.raw && sold_raw {
        true => CuredAs {
            class: Class::Preparation,
            ..cured
        },
        false => cured,
    }
}

/// What a class counts as in a place, for nitrite, for nitrate and for all else.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Here {
    nitrite: Class,
    nitrate: Class,
    other: Class,
}

impl Here {
    /// The class itself where a limit of the place names it, else its kind.
    pub fn of(
        rules: &CureRules,
        method: Method,
        class: Class,
        day: NaiveDate,
        rows: &Rows,
    ) -> Here {
        let kind = class.kind(method);
        let named = |is_such: &dyn Fn(Counts) -> bool| {
            let names = kind == class
                || rules.limits.iter().any(|limit| {
                    is_such(limit.counts)
                        && limit.classes.contains(&class)
                        && (limit.methods.is_empty() || limit.methods.contains(&method))
                        && limit.holds_on(day, rows)
                });
            if names { class } else { kind }
        };
        let salt = |nitrite: bool| {
            named(&|counts| matches!(counts, Counts::Salt(of) if of.is_nitrite() == nitrite))
        };
        Here {
            nitrite: salt(true),
            nitrate: salt(false),
            other: named(&|counts| !matches!(counts, Counts::Salt(_))),
        }
    }

    /// What it counts as for a limit on that.
    pub const fn class(&self, counts: Counts) -> Class {
        match counts {
            Counts::Salt(basis) if basis.is_nitrite() => self.nitrite,
            Counts::Salt(_) => self.nitrate,
            Counts::Both | Counts::Ascorbate => self.other,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cure::{Basis, CureLimit, Potassium, Stage, When};
    use crate::rows::Bound;
    use rust_decimal::Decimal;

    #[test]
    fn raw_sausage_that_is_sold_raw_is_a_preparation_where_a_place_has_them() {
        let limit = |class| CureLimit {
            bound: Bound::at_most("confirmed-X-EU-4", 0),
            counts: Counts::Salt(Basis::SodiumNitrite),
            stage: Stage::Ingoing,
            potassium: Potassium::SameWeight,
            tolerance: Decimal::ZERO,
            methods: Vec::new(),
            classes: vec![class],
            when: When::Always,
            doubt: false,
        };
        let check = |classes: &[Class], change: fn(&mut CuredAs, &mut Product), expected: Class| {
            let rules = CureRules {
                limits: classes.iter().map(|class| limit(*class)).collect(),
                ..CureRules::default()
            };
            let mut cured = CuredAs {
                class: Class::Comminuted,
                method: Method::Comminuted,
                heated: None,
                nitrite: None,
            };
            let mut product = Product {
                raw: true,
                ..Product::unnamed()
            };
            product.sale.offered = true;
            change(&mut cured, &mut product);
            assert_eq!(as_sold(cured, &product, &rules).class, expected);
        };
        let both = [Class::Comminuted, Class::Preparation];
        check(&both, |_, _| {}, Class::Preparation);
        check(&[Class::Comminuted], |_, _| {}, Class::Comminuted);
        check(
            &both,
            |cured, _| cured.heated = Some(true),
            Class::Comminuted,
        );
        check(&both, |_, of| of.raw = false, Class::Comminuted);
        check(&both, |_, of| of.sale.offered = false, Class::Comminuted);
        check(
            &both,
            |cured, of| (cured.heated, of.sale.offered) = (Some(false), false),
            Class::Preparation,
        );
        check(
            &both,
            |cured, _| cured.class = Class::DrySausage,
            Class::DrySausage,
        );
    }
}
