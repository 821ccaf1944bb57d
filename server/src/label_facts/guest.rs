//! What a pack's label says, in the language of a guest: the very texts of the label for a customer, and none that
//! the label does not have.

use super::writer::Writer;
use crate::app::App;
use crate::error::Result;
use crate::read::LoadedFamily;
use domain::lot::LotId;
use labels::{Field, Purpose};
use std::collections::BTreeMap;

/// The texts by field. The family has to be loaded with its ancestors and the pack.
///
/// # Errors
/// The record is damaged, or the label may not be printed as it is.
pub fn texts(
    app: &App,
    reading: &LoadedFamily<'_>,
    lot: LotId,
    number: u32,
    language: &str,
) -> Result<BTreeMap<Field, String>> {
    let writer = Writer::in_languages(app, reading, lot, &[language]);
    let mut writer = writer.ok_or_else(|| store::Error::bad_row("lots", lot.0, "is not there"))?;
    Ok(writer.facts(number, Purpose::Retail)?.texts)
}
