//! What the counter is told about a scanned pack: one word, and why.

use crate::lot::PackNow;
use crate::says::Says;
use crate::words::{Being, State, Verdict};
use chrono::NaiveDate;

/// The answer to a scan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// The word.
    pub verdict: Verdict,
    /// In a sentence.
    pub says: Says,
    /// Everything that led to it.
    pub reasons: Vec<Says>,
}

impl Answer {
    fn new(verdict: Verdict, says: impl Into<Says>) -> Answer {
        let says = says.into();
        Answer {
            verdict,
            reasons: vec![says.clone()],
            says,
        }
    }

    /// Nothing that this kitchen printed.
    pub fn unknown(says: impl Into<Says>) -> Answer {
        Answer::new(Verdict::Unknown, says)
    }

    /// The lot was voided: whatever carries its label is not what the label says.
    pub fn voided() -> Answer {
        Answer::new(
            Verdict::Pull,
            "This label was voided. Take it off the shelf.",
        )
    }

    /// A cured piece that nobody has released.
    pub fn not_released() -> Answer {
        Answer::new(
            Verdict::Hold,
            "This is still in its cure. Nothing of it is sold before it is released.",
        )
    }

    /// The most cautious of several packs' answers; nothing left where there is none.
    pub fn most_cautious(answers: impl Iterator<Item = Answer>) -> Answer {
        let worst = answers.max_by_key(|answer| answer.verdict);
        worst
            .unwrap_or_else(|| Answer::new(Verdict::Gone, "Nothing of this lot is left on record."))
    }
}

/// The answer for one pack.
pub fn of_pack(pack: &PackNow, for_sale: bool, has_rule: bool, today: NaiveDate) -> Answer {
    match pack.being {
        Being::Void => return Answer::voided(),
        Being::Missing => {
            return Answer::new(
                Verdict::Hold,
                "This pack was counted as missing. Keep it apart and tell the manager.",
            );
        }
        Being::OnHand | Being::Open => {}
        gone => {
            return Answer::new(
                Verdict::Gone,
                format!("On record this pack is {gone} already."),
            );
        }
    }
    if pack.taken_back {
        return Answer::new(
            Verdict::NotForSale,
            "A customer brought this pack back. It is never for sale again.",
        );
    }
    match pack.use_by {
        Some(date) if date < today => {
            return Answer::new(
                Verdict::Pull,
                format!("Its last day was {date}. Take it off the shelf."),
            );
        }
        _ if !for_sale => {
            return Answer::new(Verdict::NotForSale, "This is not sold at the counter.");
        }
        Some(date) if date == today => {
            return Answer::new(
                Verdict::SellToday,
                format!("Today, {date}, is its last day."),
            );
        }
        Some(date) => return Answer::new(Verdict::Sell, format!("Good until {date}.")),
        None => {}
    }
    match (pack.state, has_rule) {
        (State::Frozen, true) => Answer::new(
            Verdict::NotForSale,
            "Frozen, and so without a date. Thaw it and enter the thaw first.",
        ),
        (_, true) => Answer::new(
            Verdict::Hold,
            "It should have a date and has none. Ask the manager.",
        ),
        (_, false) => Answer::new(Verdict::Sell, "It has no last day."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::dates::Later;
    use crate::grams::Grams;
    use crate::lot::PlaceId;

    fn check(
        use_by: Option<&str>,
        change: impl Fn(&mut PackNow),
        for_sale: bool,
        expected: Verdict,
    ) {
        let today = "2026-06-26".parse().unwrap();
        let date = use_by.map(|date| date.parse().unwrap());
        let mut pack = PackNow::new(
            Grams::whole(250),
            PlaceId(1),
            State::Chilled,
            date,
            Later::default(),
            today,
        );
        change(&mut pack);
        assert_eq!(
            of_pack(&pack, for_sale, date.is_some(), today).verdict,
            expected
        );
    }

    #[test]
    fn one_word_each() {
        let as_is = |_: &mut PackNow| {};
        check(Some("2026-06-27"), as_is, true, Verdict::Sell);
        check(Some("2026-06-26"), as_is, true, Verdict::SellToday);
        check(Some("2026-06-25"), as_is, true, Verdict::Pull);
        check(Some("2026-06-25"), as_is, false, Verdict::Pull);
        check(Some("2026-06-27"), as_is, false, Verdict::NotForSale);
        check(None, as_is, true, Verdict::Sell);
        check(
            Some("2026-06-27"),
            |pack| pack.being = Being::Sold,
            true,
            Verdict::Gone,
        );
        check(
            Some("2026-06-27"),
            |pack| pack.being = Being::Missing,
            true,
            Verdict::Hold,
        );
        check(
            Some("2026-06-27"),
            |pack| pack.being = Being::Void,
            true,
            Verdict::Pull,
        );
        check(
            Some("2026-06-27"),
            |pack| pack.taken_back = true,
            true,
            Verdict::NotForSale,
        );
        check(
            Some("2026-06-27"),
            |pack| {
                pack.use_by = None;
                pack.state = State::Frozen
            },
            true,
            Verdict::NotForSale,
        );
        check(
            Some("2026-06-27"),
            |pack| pack.use_by = None,
            true,
            Verdict::Hold,
        );
    }

    #[test]
    fn of_several_the_most_cautious() {
        let answers = [Answer::voided(), Answer::unknown("x")];
        assert_eq!(
            Answer::most_cautious(answers.into_iter()).verdict,
            Verdict::Unknown
        );
        assert_eq!(
            Answer::most_cautious(std::iter::empty()).verdict,
            Verdict::Gone
        );
    }
}
