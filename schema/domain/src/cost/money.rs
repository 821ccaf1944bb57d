//! Money, in whole hundredths of whatever the kitchen counts in.

use super::says::PriceSays;
use crate::refusal::{Refusal, Result};
use crate::says::Arg;
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Sub};

/// Money in whole hundredths. What is for one kilogram is a [`Decimal`], so that nothing is lost.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Money(i64);

impl Money {
    /// None.
    pub const ZERO: Money = Money(0);

    /// From whole hundredths.
    pub const fn hundredths(hundredths: i64) -> Money {
        Money(hundredths)
    }

    /// As whole hundredths.
    pub const fn in_hundredths(self) -> i64 {
        self.0
    }

    /// From an amount, to the nearest hundredth; halves go up.
    ///
    /// # Errors
    /// More money than there is.
    pub fn rounded(amount: Decimal) -> Result<Money> {
        amount
            .checked_mul(Decimal::ONE_HUNDRED)
            .map(|amount| amount.round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero))
            .and_then(|amount| amount.to_i64())
            .map(Money)
            .ok_or_else(|| {
                let amount = Arg::Number(amount);
                Refusal::cannot_be("cost", PriceSays::TooMuchMoney { amount })
            })
    }

    /// As an amount.
    pub fn amount(self) -> Decimal {
        Decimal::new(self.0, 2)
    }
}

impl Add for Money {
    type Output = Money;
    fn add(self, other: Money) -> Money {
        Money(self.0 + other.0)
    }
}

impl Sub for Money {
    type Output = Money;
    fn sub(self, other: Money) -> Money {
        Money(self.0 - other.0)
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Money>>(amounts: I) -> Money {
        amounts.fold(Money::ZERO, Add::add)
    }
}

impl fmt::Display for Money {
    /// `55.53`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.2}", self.amount())
    }
}
