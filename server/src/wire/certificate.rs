//! The fingerprint of a certificate on the wire.

use super::says::{ValueSays, fault};
use crate::printing::fingerprint::Fingerprint;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use utoipa::openapi::RefOr;
use utoipa::openapi::schema::{ObjectBuilder, Schema, SchemaType, Type};
use utoipa::{PartialSchema, ToSchema};

/// The SHA-256 fingerprint of a certificate, in any of the forms that tools show it in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Certificate(pub Fingerprint);

impl<'de> Deserialize<'de> for Certificate {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let read = Fingerprint::parse(&text).map(Certificate);
        read.ok_or_else(|| fault(ValueSays::NoFingerprint { text }))
    }
}

impl Serialize for Certificate {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(&self.0)
    }
}

impl PartialSchema for Certificate {
    fn schema() -> RefOr<Schema> {
        ObjectBuilder::new()
            .schema_type(SchemaType::new(Type::String))
            .description(Some(
                "SHA-256 of the certificate: sha256: and 64 hexadecimal digits",
            ))
            .into()
    }
}

impl ToSchema for Certificate {}
