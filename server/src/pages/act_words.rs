//! What an act on a lot says and asks: its sentence, its right, the reasons that may be chosen.

use super::act::Choice;
use super::acts::ActKind;
use super::says::ActSays;
use super::spoken::Words;
use domain::right::Right;

/// Why something is thrown away.
pub(super) const WHYS: [&str; 5] = [
    "page-why-past",
    "page-why-spoilt",
    "page-why-opened",
    "page-why-dropped",
    "page-why-waste",
];

impl ActKind {
    /// The deed in words, before it is done.
    pub(super) fn sentence(self, name: String, lot: String) -> ActSays {
        match self {
            ActKind::Pack => ActSays::Pack { name, lot },
            ActKind::Move => ActSays::Move { name, lot },
            ActKind::Freeze => ActSays::Freeze { name, lot },
            ActKind::Thaw => ActSays::Thaw { name, lot },
            ActKind::Discard => ActSays::Discard { name, lot },
            ActKind::Serve => ActSays::Serve { name, lot },
            ActKind::Ship => ActSays::Ship { name, lot },
            ActKind::Return => ActSays::Return { name, lot },
            ActKind::TakeBack => ActSays::TakeBack { name, lot },
            ActKind::Count => ActSays::Count { name, lot },
        }
    }

    /// The right that the call asks.
    pub fn right(self) -> Right {
        match self {
            ActKind::Discard | ActKind::Serve | ActKind::Ship => Right::Sell,
            ActKind::Return | ActKind::TakeBack => Right::Sell,
            _ => Right::Work,
        }
    }

    /// The reasons that may be chosen, with the one that is known already; of what is past its day, that it is.
    pub(super) fn reasons(self, words: &Words, known: Option<&str>, is_past: bool) -> Vec<Choice> {
        let whys = self.whys().iter().enumerate();
        let choice = |(nth, key): (usize, &&str)| Choice {
            code: (*key).to_owned(),
            name: words.t(key),
            more: None,
            chosen: match known {
                Some(known) => known == *key,
                None => nth == 0 && self == ActKind::Discard && is_past,
            },
        };
        whys.map(choice).collect()
    }

    /// The keys of the reasons that may be chosen; none where it needs no reason.
    pub(super) fn whys(self) -> &'static [&'static str] {
        match self {
            ActKind::Discard => &WHYS,
            ActKind::Return => &[
                "page-why-too-warm",
                "page-why-not-ordered",
                "page-why-arrived-bad",
                "page-why-recalled",
            ],
            ActKind::TakeBack => &[
                "page-why-not-wanted",
                "page-why-not-right",
                "page-why-recalled",
            ],
            _ => &[],
        }
    }
}
