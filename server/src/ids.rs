//! Ids of deeds and animals, as they are written.

/// An id as it is written.
pub fn shown_id(uid: &[u8]) -> String {
    uuid::Uuid::from_slice(uid)
        .map(|id| id.to_string())
        .unwrap_or_default()
}
