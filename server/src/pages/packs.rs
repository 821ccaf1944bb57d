//! A lot's packs, those that are alike and in a row told once: `9–20`.

use super::says::PageSays;
use super::spoken::{NONE, Words};
use crate::read::names::Names;
use crate::wire::answers::PackRead;
use chrono::NaiveDate;

/// Packs in a row that are all alike.
pub struct Run {
    /// Their numbers, in words.
    pub title: String,
    /// How many they are, where they are several.
    pub alike: Option<String>,
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
    pub stands: Option<String>,
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
    let words = Words::of(names);
    let packs = run.len();
    let numbers = match packs {
        1 => first.pack.to_string(),
        _ => format!("{}–{}", first.pack, last.pack),
    };
    Run {
        title: words.say(PageSays::Run { packs, numbers }),
        alike: (packs > 1).then(|| words.say(PageSays::Alike { packs })),
        left: words.or_dash(&first.left_grams),
        has,
        is: words.headed("Being", &first.is),
        place: names.place(&first.place),
        state: words.headed("State", &first.state),
        use_by: match (use_by, first.days_left) {
            (Some(day), _) => words.day(day),
            (None, Some(days)) => words.once_thawed(days),
            (None, None) => NONE.into(),
        },
        stands: use_by
            .filter(|_| has)
            .and_then(|day| words.standing(day, today)),
    }
}
