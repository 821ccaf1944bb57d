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

    /// JSON that cannot be read, without the words of programmers.
    pub fn json(error: &serde_json::Error) -> Bad {
        let (line, column) = (error.line(), error.column());
        if error.is_syntax() || error.is_eof() || error.is_io() {
            return Bad::new(format!(
                "this is no JSON, from line {line}, column {column} on"
            ));
        }
        let text = error.to_string();
        let text = text
            .rsplit_once(" at line ")
            .map_or(text.as_str(), |(says, _)| says);
        let plain = [
            ("unknown field", "there is no field"),
            ("unknown variant", "there is no word"),
            ("missing field", "there lacks the field"),
            ("duplicate field", "it is there twice: the field"),
            ("invalid type: ", "it is "),
            ("invalid value: ", "it is "),
            ("invalid length ", "its length is "),
            (", expected one of ", "; there are "),
            (", expected struct ", "; wanted is "),
            (", expected ", "; wanted is "),
            ("is string ", "is the text "),
            ("a sequence", "a list"),
            ("a map", "an object"),
            ("is u8", "is a whole number"),
            ("is u16", "is a whole number"),
            ("is u32", "is a whole number"),
            ("is i64", "is a whole number"),
            ("is usize", "is a whole number"),
        ];
        let says = plain.iter().fold(text.to_owned(), |says, (theirs, ours)| {
            says.replace(theirs, ours)
        });
        Bad::new(format!("line {line}, column {column}: {says}"))
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

#[cfg(test)]
mod tests {
    use super::*;

    fn check(json: &str, expected: &str) {
        #[derive(Debug, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        #[allow(dead_code, reason = "only parsed")]
        struct One {
            days: u32,
            rows: Vec<String>,
        }
        let error = serde_json::from_str::<One>(json).unwrap_err();
        assert_eq!(Bad::json(&error).says, expected, "{json}");
    }

    #[test]
    fn what_cannot_be_read_is_told_in_plain_words() {
        check("no [", "this is no JSON, from line 1, column 2 on");
        check("{", "this is no JSON, from line 1, column 1 on");
        check(
            "{\"x\":1}",
            "line 1, column 4: there is no field `x`; wanted is `days` or `rows`",
        );
        check(
            "{\"days\":\"two\"}",
            "line 1, column 13: it is the text \"two\"; wanted is a whole number",
        );
    }
}
