//! What stands on a picture. Lengths are tenths of a pixel, whole.

/// A picture, laid out.
#[derive(Debug, Default)]
pub struct Picture {
    /// Its width.
    pub width: i64,
    /// Its height.
    pub height: i64,
    /// What it shows, for those who hear it.
    pub says: String,
    /// What stands on it, what lies below first.
    pub items: Vec<Item>,
}

/// Something on it.
#[derive(Debug)]
pub enum Item {
    /// A filled box.
    Bar {
        /// Where.
        area: Area,
        /// With what.
        fill: Fill,
    },
    /// A line; of a day, of a step, or, heavy, of now.
    Line {
        /// One end.
        from: (i64, i64),
        /// The other.
        to: (i64, i64),
        /// None is the faintest.
        heavy: Option<bool>,
    },
    /// What went into a step.
    Dot {
        /// Its middle.
        x: i64,
        /// Its middle.
        y: i64,
    },
    /// A text.
    Text(Line),
}

/// With what a box is filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fill {
    /// The ground of a row with something on hand.
    Row,
    /// Weight that was made.
    Gone,
    /// Weight that is on hand.
    OnHand,
    /// Weight on hand that may not leave.
    Held,
}

/// A box.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Area {
    /// Its left edge.
    pub x: i64,
    /// Its upper edge.
    pub y: i64,
    /// Its width.
    pub w: i64,
    /// Its height.
    pub h: i64,
}

/// A line of text.
#[derive(Debug)]
pub struct Line {
    /// Where it begins.
    pub x: i64,
    /// Its baseline.
    pub baseline: i64,
    /// How wide it is.
    pub width: i64,
    /// As it stands there.
    pub text: String,
    /// In bold?
    pub bold: bool,
    /// In grey?
    pub dim: bool,
    /// All of it, where it was cut.
    pub whole: Option<String>,
}
