//! What is wrong with a GS1 number, element, address or message.

use crate::grams::Grams;
use crate::messages;

messages! {
    /// Why a text is no GTIN.
    NotAGtin in "gtin" {
        /// Something else than digits.
        Digits "digits",
        /// Not 8, 12, 13 or 14 of them.
        Length "length" { length: usize },
        /// The last digit does not go with the others.
        CheckDigit "check-digit",
        /// Kept for use within a shop, a firm or a region.
        Restricted "restricted",
    }
}

messages! {
    /// What is wrong with an element string, or with one element of it.
    NotAnElement in "element" {
        Nothing "nothing",
        Length "length" { ai: String, value: String },
        Character "character" { ai: String, character: String },
        NotDigits "not-digits" { ai: String, value: String },
        CheckDigit "check-digit" { ai: String, value: String },
        NoDay "no-day" { ai: String, value: String },
        NoTime "no-time" { ai: String, value: String },
        Unknown "unknown" { ai: String },
        UnknownAt "unknown-at" { text: String },
        TwoThings "two-things" { ai: String },
        Twice "twice" { other: String, ai: String },
        OpenBracket "open-bracket",
        EndsEarly "ends-early",
        CutOff "cut-off" { ai: String },
        BadlyEncoded "badly-encoded" { text: String },
    }
}

messages! {
    /// Why there is no such address.
    NotALink in "link" {
        /// Nothing in it is a key: a lot alone is not a key.
        NoKey "no-key",
        /// An element stands where it must not.
        Place "place" { ai: String },
        /// A value is wrong.
        Value "value" { why: NotAnElement },
        /// Not an address at all.
        NoAddress "no-address",
    }
}

messages! {
    /// Why nothing was written.
    NotWritten in "gs1" {
        /// The number in it is no GTIN.
        Gtin "gtin" { why: NotAGtin },
        /// A lot that is empty, too long, or holds a character that it may not.
        Lot "lot" { lot: String, longest: usize },
        /// Goods by weight without a weight.
        WeightMissing "weight-missing",
        /// A weight beside a GTIN whose packs all weigh the same.
        WeightNotWanted "weight-not-wanted",
        /// Nothing, or a ton and more.
        WeightRange "weight-range" { none: Grams, most: Grams },
        /// A year that two digits would tell wrong.
        Year "year" { year: String },
        /// An element that must not stand without a GTIN.
        NoGtin "no-gtin" { ai: String },
        /// Two elements that must not stand together.
        NotTogether "not-together" { one: String, other: String },
        /// Too many characters for one symbol.
        TooLong "too-long" { longest: usize, length: usize },
        /// The text cannot be read.
        Unreadable "unreadable" { why: NotAnElement },
        /// It makes no address.
        Link "link" { why: NotALink },
    }
}

impl From<NotAGtin> for NotWritten {
    fn from(why: NotAGtin) -> Self {
        NotWritten::Gtin { why }
    }
}
