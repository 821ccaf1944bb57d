//! What the core says: a key of the message catalogue and its arguments, never a sentence.
//!
//! Each area declares what it can say with [`messages!`](crate::messages), beside the code that
//! says it. The sentences stand in the catalogue, one text file a language; the edge renders them for
//! whoever reads, in their language and units. [`Says`] is what travels and what the record keeps.

mod areas;
mod arg;
mod macros;
mod texts;
mod written;

pub use areas::{AREAS, VOCABULARIES};
pub use arg::Arg;
pub use texts::{Texts, said};

use std::borrow::Cow;

/// A message: a key of the catalogue and its arguments by name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Says {
    key: Cow<'static, str>,
    args: Vec<(Cow<'static, str>, Arg)>,
}

/// What an area can say: each key with the names of its arguments.
pub type Keys = &'static [(&'static str, &'static [&'static str])];

/// The key of what is not ours to say: a name, somebody's own words, a sentence that an older
/// version kept.
pub const AS_WRITTEN: &str = "as-written";

impl Says {
    /// A message without arguments.
    pub const fn key_only(key: &'static str) -> Says {
        Says {
            key: Cow::Borrowed(key),
            args: Vec::new(),
        }
    }

    /// A message of the catalogue.
    pub fn new(key: &'static str, args: Vec<(&'static str, Arg)>) -> Says {
        let args = args
            .into_iter()
            .map(|(name, arg)| (Cow::Borrowed(name), arg));
        Says {
            key: Cow::Borrowed(key),
            args: args.collect(),
        }
    }

    /// A message as the record kept it.
    pub fn kept(key: String, args: Vec<(String, Arg)>) -> Says {
        let args = args.into_iter().map(|(name, arg)| (Cow::Owned(name), arg));
        Says {
            key: Cow::Owned(key),
            args: args.collect(),
        }
    }

    /// A name that the data has in several languages.
    pub fn named(name: &Texts) -> Says {
        Says::new(AS_WRITTEN, vec![("text", Arg::Texts(name.clone()))])
    }

    /// Somebody's own words, the same in every language.
    pub fn as_written(text: impl Into<String>) -> Says {
        Says::new(AS_WRITTEN, vec![("text", Arg::Text(text.into()))])
    }

    /// The key: it never changes, whatever the language.
    pub fn key(&self) -> &str {
        &self.key
    }

    /// The arguments, in the order in which they were declared.
    pub fn args(&self) -> impl Iterator<Item = (&str, &Arg)> {
        self.args.iter().map(|(name, arg)| (name.as_ref(), arg))
    }

    /// The argument of that name.
    pub fn arg(&self, name: &str) -> Option<&Arg> {
        self.args().find(|(of, _)| *of == name).map(|(_, arg)| arg)
    }
}
