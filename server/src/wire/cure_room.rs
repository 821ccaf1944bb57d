//! What the service answers about the cure room.

use super::answers::{BecauseRead, FindingRead};
use super::{Day, Number, Weight};
use serde::Serialize;
use utoipa::ToSchema;

/// Everything that hangs or lies in salt.
#[derive(Debug, Serialize, ToSchema)]
pub struct CureRoomRead {
    /// The pieces, the oldest first.
    pub pieces: Vec<PieceRead>,
    /// What lies in its cure by a calendar and does not hang afterwards, the oldest first.
    pub lying: Vec<LyingRead>,
}

/// Something in its cure.
#[derive(Debug, Serialize, ToSchema)]
pub struct LyingRead {
    /// Its lot.
    pub lot: String,
    /// The lot's code for the eye.
    pub shown: String,
    /// What its tag says.
    pub tag: String,
    /// Its product's name.
    pub name: String,
    /// The day it went in salt.
    pub in_salt: Day,
    /// Days since then.
    pub days: u32,
    /// Was it taken out of its cure?
    pub is_out: bool,
    /// The day it comes out.
    pub ready: Option<Day>,
    /// What is to be done today.
    pub due: Vec<String>,
    /// Its calendar.
    pub plan: Vec<PlannedRead>,
}

/// One piece.
#[derive(Debug, Serialize, ToSchema)]
pub struct PieceRead {
    /// Its lot.
    pub lot: String,
    /// The lot's code for the eye.
    pub shown: String,
    /// What its tag says.
    pub tag: String,
    /// Its product's name.
    pub name: String,
    /// Where it is on its way: `in-salt`, `equalising`, `smoking`, `hanging`, `released`.
    pub stage: String,
    /// Its weight before the salt.
    pub green_grams: Weight,
    /// The day it went in salt.
    pub in_salt: Day,
    /// Days since then.
    pub days: u32,
    /// Its weighings, the oldest first.
    pub weighings: Vec<WeighingRead>,
    /// What it has lost of its green weight at the last weighing, in per cent.
    pub loss_percent: Option<Number>,
    /// What its curve expects it to have lost today, in per cent.
    pub expected_loss_percent: Option<Number>,
    /// The curve: days from the first salt and per cent lost.
    pub curve: Vec<CurvePoint>,
    /// What looks wrong about its weighings.
    pub alarms: Vec<FindingRead>,
    /// Whose tag it may be, where its weight fits another piece better.
    pub likely_tag: Option<String>,
    /// When it may be ready: a range, in words.
    pub forecast: String,
    /// Not before this day.
    pub earliest: Option<Day>,
    /// May it be released today?
    pub may_be_released: bool,
    /// Every number of its rule that is not met.
    pub missing: Vec<String>,
    /// What is to be done today.
    pub due: Vec<String>,
    /// Its calendar.
    pub plan: Vec<PlannedRead>,
}

/// A weighing.
#[derive(Debug, Serialize, ToSchema)]
pub struct WeighingRead {
    /// The day.
    pub day: Day,
    /// The weight.
    pub grams: Weight,
    /// Lost by then, in per cent of the green weight.
    pub loss_percent: Number,
}

/// A point of a curve.
#[derive(Debug, Serialize, ToSchema)]
pub struct CurvePoint {
    /// Days from the first salt.
    pub day: u32,
    /// Lost by then, in per cent of the green weight.
    pub loss_percent: Number,
}

/// A line of a calendar.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlannedRead {
    /// The day.
    pub day: Day,
    /// What is to be done.
    pub task: String,
}

/// How a lot was cured.
#[derive(Debug, Serialize, ToSchema)]
pub struct CureRead {
    /// The lot that was cured: itself, or one that it came from.
    pub lot: String,
    /// Nitrite that went in, as sodium nitrite, in parts per million.
    pub nitrite_ppm: Number,
    /// Nitrate that went in, as sodium nitrate, in parts per million.
    pub nitrate_ppm: Number,
    /// Salt, in per cent.
    pub salt_percent: Number,
    /// Why: the links of the chain.
    pub because: Vec<BecauseRead>,
}

/// A cure that was worked out; nothing is recorded.
#[derive(Debug, Serialize, ToSchema)]
pub struct CurePlanRead {
    /// Curing salt to weigh.
    pub curing_salt_grams: Weight,
    /// Plain salt to weigh, less what the curing salt brings.
    pub salt_grams: Weight,
    /// Sugar to weigh.
    pub sugar_grams: Weight,
    /// Water.
    pub water_grams: Weight,
    /// Nitrite that goes in, as sodium nitrite, in parts per million.
    pub nitrite_ppm: Number,
    /// Nitrate that goes in, as sodium nitrate, in parts per million.
    pub nitrate_ppm: Number,
    /// All salt, in per cent.
    pub salt_percent: Number,
    /// May it be done?
    pub allowed: bool,
    /// What is to be known or mended.
    pub findings: Vec<FindingRead>,
    /// To be read before anybody weighs.
    pub caution: String,
}
