//! Who did it, and the words of who may do what.

use super::{Line, Vocabulary};
use serde::{Deserialize, Deserializer, Serialize};
use utoipa::openapi::RefOr;
use utoipa::openapi::schema::Schema;
use utoipa::{PartialSchema, ToSchema};

/// Who did it. Left out, it is who signed in.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct By(pub Option<Line>);

impl By {
    /// The name, if one was told.
    pub fn name(&self) -> Option<&str> {
        self.0.as_ref().map(|line| line.0.as_str())
    }

    /// Was none told? Then none is kept of the request.
    pub fn is_left_out(&self) -> bool {
        self.0.is_none()
    }
}

impl<'de> Deserialize<'de> for By {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        Option::deserialize(from).map(By)
    }
}

macro_rules! rights {
    ($($name:ident),+) => {$(
        impl Vocabulary for domain::right::$name {
            const SPELT: &'static [&'static str] = domain::right::$name::SPELT;
            const NAME: &'static str = stringify!($name);
            fn parse(text: &str) -> Option<Self> { domain::right::$name::parse(text) }
            fn as_str(self) -> &'static str { domain::right::$name::as_str(self) }
        }
    )+};
}
rights!(Right, Role);

impl PartialSchema for By {
    fn schema() -> RefOr<Schema> {
        Line::schema()
    }
}

impl ToSchema for By {}
