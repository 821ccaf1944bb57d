//! Lengths, boxes and printer dots. Everything is a whole number of micrometres, from the top left.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Sub};

/// A length in whole micrometres. Never a bare float.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Length(i64);

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length(0);

    /// From whole micrometres.
    pub const fn from_um(um: i64) -> Length {
        Length(um)
    }

    /// From millimetres, to the nearest micrometre.
    pub fn mm(mm: f64) -> Length {
        Length((mm * 1000.0).round() as i64)
    }

    /// Whole micrometres.
    pub const fn um(self) -> i64 {
        self.0
    }

    /// Millimetres, for showing.
    pub fn to_mm(self) -> f64 {
        self.0 as f64 / 1000.0
    }

    /// PDF points (1/72 inch).
    pub fn to_pt(self) -> f32 {
        (self.0 as f64 * 72.0 / 25_400.0) as f32
    }
}

impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.2} mm", self.to_mm())
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0 + other.0)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        self.0 += other.0;
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0 - other.0)
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, by: i64) -> Length {
        Length(self.0 * by)
    }
}

impl Div<i64> for Length {
    type Output = Length;
    fn div(self, by: i64) -> Length {
        Length(self.0 / by)
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}

/// A box: top left corner, width, height; y grows downwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Area {
    /// Left edge.
    pub x: Length,
    /// Top edge.
    pub y: Length,
    /// Width.
    pub w: Length,
    /// Height.
    pub h: Length,
}

impl Area {
    /// The right edge.
    pub fn right(&self) -> Length {
        self.x + self.w
    }

    /// The bottom edge.
    pub fn bottom(&self) -> Length {
        self.y + self.h
    }

    /// Whether the insides of two boxes share a point; touching edges do not count.
    pub fn overlaps(&self, other: &Area) -> bool {
        self.x < other.right()
            && other.x < self.right()
            && self.y < other.bottom()
            && other.y < self.bottom()
    }

    /// Whether the other box lies wholly inside this one.
    pub fn holds(&self, other: &Area) -> bool {
        self.x <= other.x
            && self.y <= other.y
            && other.right() <= self.right()
            && other.bottom() <= self.bottom()
    }
}

impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [x, y, w, h] = [self.x, self.y, self.w, self.h].map(Length::to_mm);
        write!(f, "{x:.2},{y:.2} {w:.2}x{h:.2}")
    }
}

/// The print head: how many dots to the inch. The two usual ones (trade 5).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dpi {
    /// 203 dots per inch, 0.125 mm each.
    D203,
    /// 300 dots per inch, 0.085 mm each.
    D300,
}

impl Dpi {
    /// From the number printed on the machine.
    pub fn from_number(number: u16) -> Option<Dpi> {
        match number {
            203 => Some(Dpi::D203),
            300 => Some(Dpi::D300),
            _ => None,
        }
    }

    /// Dots per inch.
    pub fn number(self) -> u16 {
        match self {
            Dpi::D203 => 203,
            Dpi::D300 => 300,
        }
    }

    /// Where dot number `n` begins: rounded once, so that edges never drift.
    pub fn dots(self, n: i64) -> Length {
        let per_inch = i64::from(self.number());
        Length((n * 25_400 + per_inch / 2).div_euclid(per_inch))
    }

    /// How many whole dots lie within a length.
    pub fn whole_dots(self, length: Length) -> i64 {
        let mut n = length.0 * i64::from(self.number()) / 25_400;
        while self.dots(n + 1) <= length {
            n += 1;
        }
        n
    }

    /// The number of the first dot that begins at or after a place.
    pub fn first_dot(self, place: Length) -> i64 {
        let n = self.whole_dots(place);
        if self.dots(n) == place { n } else { n + 1 }
    }
}
