//! The kitchen on the wire, as it is set up.

use super::lists::never_kept;
use super::{Day, HeatUnitsWord, Line, MassUnitsWord, Note, ProfileWord};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// The kitchen itself.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct KitchenEntry {
    /// Its code: 2 or 3 capital letters without I, L, O, U.
    pub code: Line,
    /// Its name.
    pub name: Line,
    /// Its address, as it stands on labels.
    pub address: Option<Note>,
    /// The country that it is in, two capital letters: `FR`, `GB`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub country: Option<Line>,
    /// The number that the authority approved it under, where it has one, without the country.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub establishment: Option<Line>,
    /// Its time zone: `America/New_York`. Days begin and end by it.
    pub time_zone: Line,
    /// The law that it labels under.
    pub profile: ProfileWord,
    /// The languages of its labels, the first one first.
    pub languages: Vec<Line>,
    /// How its people read weights; `metric` if left out. What is asked and answered stays in grams.
    pub weights: Option<MassUnitsWord>,
    /// How its people read temperatures; `celsius` if left out.
    pub temperatures: Option<HeatUnitsWord>,
    /// Its currency, three letters.
    pub currency: Line,
    /// The address that its codes hold.
    pub public_url: Option<Line>,
    /// Its GS1 company prefix, if it has one.
    pub gs1_prefix: Option<Line>,
    /// How the shop's own till numbers are written: `20PPPPPCVVVV price 2`, P for the product, C for
    /// the verifier, V for the price or the weight; `28PPPPPVVVVV weight 3`.
    pub till_layout: Option<Line>,
    /// Does the panel on safe handling stand on a second label of the pack, where the law has such a panel? No, if left
    /// out; a product may say otherwise.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub panel_apart: Option<bool>,
    /// The edition of the food code that its place has adopted; the last if left out.
    pub code_year: Option<u16>,
    /// May anybody scan, without signing in? No, if left out.
    pub open_scan: Option<bool>,
    /// Does ready food that is cooked anew with raw food keep its own last day? No if left out: it begins anew.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ready_keeps_its_day: Option<bool>,
    /// How many months may pass between two drills of a recall; 12 if left out, or fewer where its place says so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drill_every_months: Option<u32>,
    /// Approvals on file: variances, plan numbers.
    #[serde(default)]
    pub approvals: Vec<Approval>,
    /// Told when it is read; not looked at when it is sent back.
    #[serde(default, skip_serializing_if = "never_kept")]
    #[schema(read_only)]
    pub set_up: Option<bool>,
    /// The same: what somebody should still say.
    #[serde(default, skip_serializing_if = "never_kept")]
    #[schema(read_only)]
    pub missing: Option<Vec<String>>,
}

/// An approval on file.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Approval {
    /// For what: `curing`, `smoking`, `vacuum`, `cooling`, or of one product `ready:CODE`, `stable:CODE`.
    #[serde(rename = "for")]
    pub purpose: Line,
    /// Its number.
    pub number: Line,
    /// Until when, if it ends.
    pub until: Option<Day>,
}
