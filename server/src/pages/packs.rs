//! A lot's packs, those that are alike and in a row told once: `9–20`.

use super::says::PageSays;
use super::spoken::{NONE, Words};
use crate::read::names::Names;
use chrono::NaiveDate;
use domain::lot::Pack;

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
pub fn runs(packs: &[Pack], names: &Names, today: NaiveDate) -> Vec<Run> {
    packs
        .chunk_by(Pack::is_like)
        .map(|run| told(run, names, today))
        .collect()
}

fn told(run: &[Pack], names: &Names, today: NaiveDate) -> Run {
    let (first, last) = (&run[0], &run[run.len() - 1]);
    let now = &first.now;
    let has = !now.left.is_none_left();
    let words = Words::of(names);
    let packs = run.len();
    let numbers = match packs {
        1 => first.number.to_string(),
        _ => format!("{}–{}", first.number, last.number),
    };
    Run {
        title: words.say(PageSays::Run { packs, numbers }),
        alike: (packs > 1).then(|| words.say(PageSays::Alike { packs })),
        left: words.or_dash(now.left),
        has,
        is: words.headed(now.being.says()),
        place: names.place_of(now.place),
        state: words.headed(now.state.says()),
        use_by: match (now.use_by, now.days_frozen()) {
            (Some(day), _) => words.day(day),
            (None, Some(days)) => words.once_thawed(days),
            (None, None) => NONE.into(),
        },
        stands: now
            .use_by
            .filter(|_| has)
            .and_then(|day| words.standing(day, today)),
    }
}
