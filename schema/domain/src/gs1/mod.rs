//! GS1: trade item numbers, element strings, Digital Link addresses and the shop's own numbers.
//!
//! [`read()`] takes what cartons and scanners say, [`Message`] and [`DigitalLink`] write what our
//! labels say, [`in_store`] makes the thirteen digits that a shop's till reads. A [`Gtin`] is one
//! that may be used as such: nothing here makes a GS1 code out of a number that GS1 did not give.

mod carton;
mod check_digit;
mod form;
mod gtin;
pub mod in_store;
mod link;
mod message;
mod read;
mod says;

pub use carton::product_of;
pub use check_digit::{check_digit, check_digit_is_right, verifier_digit};
pub use gtin::Gtin;
pub use link::DigitalLink;
pub use message::{Contents, LastDay, Message};
pub use read::{Elements, read, strip_symbology};
pub use says::{NotAGtin, NotALink, NotAnElement, NotWritten};

/// The separator after an element of no predefined length: FNC1 in a symbol, this as scanners send it.
pub const GS: char = '\u{1d}';

/// Whether GS1 allows a character in a text: its set of 82 (`standards` 1.1).
pub fn in_set_82(character: char) -> bool {
    matches!(character, '!' | '"' | '%'..='?' | 'A'..='Z' | '_' | 'a'..='z')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn eighty_two_characters() {
        let all: String = (' '..='~').filter(|c| in_set_82(*c)).collect();
        assert_eq!(all.len(), 82);
        for no in [' ', '#', '$', '@', '~', '[', '^', '`', 'é', GS] {
            assert!(!in_set_82(no), "{no:?}");
        }
    }
}
