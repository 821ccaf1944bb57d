//! What is wrong with a file, and where.

use std::fmt;

/// A file that cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bad {
    /// Which file.
    pub file: String,
    /// What is wrong, and where in it.
    pub says: String,
}

impl Bad {
    /// Something that is wrong in a file still to be named.
    pub fn new(says: impl Into<String>) -> Bad {
        Bad {
            file: String::new(),
            says: says.into(),
        }
    }

    /// The same, in that file.
    pub fn in_file(self, file: &str) -> Bad {
        Bad {
            file: file.to_owned(),
            ..self
        }
    }
}

impl fmt::Display for Bad {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.file, self.says)
    }
}

impl std::error::Error for Bad {}
