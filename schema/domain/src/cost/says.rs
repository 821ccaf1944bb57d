//! What is said of costs and prices that cannot be.

use super::Money;
use crate::grams::Grams;
use crate::messages;
use crate::says::Arg;

messages! {
    /// What is said of costs and prices.
    PriceSays in "cost" {
        NoBought "no-bought",
        NoUsable "no-usable",
        NoCooked "no-cooked",
        NoCost "no-cost",
        ByProductBelowNothing "by-product-below-nothing",
        PartsHeavier "parts-heavier" { grams: Grams },
        ByProductsDear "by-products-dear" { worth: Money, cost: Money },
        BelowNothing "below-nothing",
        NoOutput "no-output",
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
