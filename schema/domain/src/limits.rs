//! Every bound of the record, declared once: the checks and the messages follow from these.
//!
//! The figures are the contract's own, not a law's.

use crate::grams::Grams;

/// The heaviest weight that one field may give.
pub const HEAVIEST: Grams = Grams::whole(2_000_000);
/// The most inputs of one step.
pub const MOST_INPUTS: usize = 200;
/// The most outputs of one step.
pub const MOST_OUTPUTS: usize = 200;
/// The most packs of one lot, and of all lots of one step together.
pub const MOST_PACKS: u32 = 9_999;
/// How far ahead of the clock a time may be: two devices never agree exactly.
pub const CLOCK_SLACK_MINUTES: i64 = 2;
/// How far back a deed may be entered without a note that says why.
pub const DAYS_BACK_WITHOUT_NOTE: i64 = 7;
/// How long ago an animal may have been killed when it arrives: frozen meat is not kept for longer, and
/// a code tells the year by its last two digits.
pub const KILLED_DAYS_AGO: i64 = 3 * 366;
/// The most that two scales may differ by, in thousandths of the inputs.
pub const SCALE_DIFFERENCE_THOUSANDTHS: i64 = 5;
/// The most that a weighing may be above the weight before it, in thousandths.
pub const WEIGHING_GAIN_THOUSANDTHS: i64 = 10;
