//! Where the record is: known from the address's scheme, never by trial.

use crate::error::{Error, Result};
use std::path::PathBuf;

/// Where the record is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Address {
    /// A SQLite file.
    Sqlite(PathBuf),
    /// A PostgreSQL URL.
    Postgres(String),
}

impl Address {
    /// Reads a path, `sqlite:PATH`, or `postgres://…`. The scheme alone decides.
    ///
    /// # Errors
    /// An empty address or an unknown scheme.
    pub fn parse(text: &str) -> Result<Address> {
        let unknown = |scheme: &str| {
            Err(Error::Address(format!(
                "{scheme:?} is not a database this program knows. Give a file's path, sqlite:PATH or postgres://…"
            )))
        };
        match text.split_once(':') {
            Some(("postgres" | "postgresql", rest)) if rest.starts_with("//") => {
                Ok(Address::Postgres(text.to_owned()))
            }
            Some(("sqlite", path)) if !path.is_empty() => Ok(Address::Sqlite(path.into())),
            Some((scheme, rest)) if rest.starts_with("//") => unknown(scheme),
            Some(("sqlite" | "postgres" | "postgresql", _)) => unknown(text),
            _ if text.trim().is_empty() => unknown(text),
            _ => Ok(Address::Sqlite(text.into())),
        }
    }

    /// Which engine it is, in a word.
    pub fn engine(&self) -> &'static str {
        match self {
            Address::Sqlite(_) => "sqlite",
            Address::Postgres(_) => "postgresql",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scheme_alone_decides() {
        let parse = |text| Address::parse(text).map_err(|error| error.to_string());
        assert_eq!(
            parse("sqlite:/tmp/a.db").unwrap(),
            Address::Sqlite("/tmp/a.db".into())
        );
        assert_eq!(
            parse("kitchen.db").unwrap(),
            Address::Sqlite("kitchen.db".into())
        );
        assert_eq!(parse("postgres://u@h/d").unwrap().engine(), "postgresql");
        for wrong in [
            "",
            "postgress://h/d",
            "mysql://h/d",
            "postgres:h",
            "sqlite:",
        ] {
            assert!(parse(wrong).is_err(), "{wrong}");
        }
    }
}
