//! A lot's packs, those that are alike and in a row told once: `9–20`.

use super::format;
use crate::read::names::Names;
use crate::wire::answers::PackRead;
use chrono::NaiveDate;

/// Packs in a row that are all alike.
pub struct Run {
    /// Their numbers.
    pub numbers: String,
    /// How many they are.
    pub count: usize,
    /// What is left in each.
    pub left: String,
    /// Is anything?
    pub has: bool,
    /// What has become of them.
    pub is: String,
    /// Where they are.
    pub place: String,
    /// How they are kept.
    pub state: String,
    /// Their last day.
    pub use_by: String,
    /// How that stands to today.
    pub stands: Option<&'static str>,
}

/// The runs of some packs.
pub fn runs(packs: &[PackRead], names: &Names, today: NaiveDate) -> Vec<Run> {
    packs
        .chunk_by(alike)
        .map(|run| told(run, names, today))
        .collect()
}

fn alike(one: &PackRead, other: &PackRead) -> bool {
    one.left_grams == other.left_grams
        && one.is == other.is
        && one.place == other.place
        && one.state == other.state
        && one.use_by == other.use_by
        && one.days_left == other.days_left
}

fn told(run: &[PackRead], names: &Names, today: NaiveDate) -> Run {
    let (first, last) = (&run[0], &run[run.len() - 1]);
    let has = first.left_grams.0.milligrams() > 0;
    let use_by = first.use_by.map(|day| day.0);
    Run {
        numbers: if run.len() == 1 {
            first.pack.to_string()
        } else {
            format!("{}–{}", first.pack, last.pack)
        },
        count: run.len(),
        left: format::or_dash(&first.left_grams),
        has,
        is: format::headed(&first.is),
        place: names.place(&first.place),
        state: format::headed(&first.state),
        use_by: match (use_by, first.days_left) {
            (Some(day), _) => format::day(day),
            (None, Some(days)) => thawed(days),
            (None, None) => format::NONE.into(),
        },
        stands: use_by
            .filter(|_| has)
            .and_then(|day| format::standing(day, today)),
    }
}

/// What a frozen pack has instead of a date.
pub fn thawed(days: i32) -> String {
    let days = usize::try_from(days).unwrap_or(0);
    format!("{} once thawed", format::count(days, "day", "days"))
}
