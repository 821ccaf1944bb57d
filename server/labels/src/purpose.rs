//! What a label is for.

use schemars::JsonSchema;
use serde::Deserialize;

/// What a label is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Purpose {
    /// A carcass or a box that comes in.
    Receiving,
    /// A tub or a shelf of the kitchen's own.
    Kitchen,
    /// A piece that hangs or lies in salt.
    Curing,
    /// What is frozen.
    Freezer,
    /// A pack for a customer.
    Retail,
    /// A pack that is sold where it was packed.
    DirectSale,
    /// What is stopped.
    Hold,
}

impl Purpose {
    /// Every purpose.
    pub const ALL: [Purpose; 7] = [
        Purpose::Receiving,
        Purpose::Kitchen,
        Purpose::Curing,
        Purpose::Freezer,
        Purpose::Retail,
        Purpose::DirectSale,
        Purpose::Hold,
    ];
}
