//! What is said of costs and prices that cannot be.

use super::Money;
use crate::messages;
use crate::says::Arg;

messages! {
    /// What is said of costs and prices.
    PriceSays in "cost" {
        NoCost "no-cost",
        NoWeight "no-weight",
        NothingSells "nothing-sells",
        TooMuchToShare "too-much-to-share" { cost: Money },
        PriceCannotBe "price-cannot-be" { price: Arg },
        TooMuchMoney "too-much-money" { amount: Arg },
    }
}

impl From<Money> for Arg {
    fn from(money: Money) -> Arg {
        Arg::Money(money.amount())
    }
}
