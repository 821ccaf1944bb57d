//! What the counter gets to see about a scanned pack: one word, and why.

use crate::code::LotCode;
use crate::lot::PackNow;
use crate::measure::Temperature;
use crate::messages;
use crate::says::{Says, Texts};
use crate::stability::LimitSays;
use crate::stop::Stop;
use crate::words::{Being, State, StopKind, Verdict};
use chrono::NaiveDate;

messages! {
    /// What the counter gets to see.
    VerdictSays in "verdict" {
        Elsewhere "elsewhere",
        Misread "misread",
        NotOurs "not-ours",
        Part "part" { lots: u32 },
        OfTheTill "of-the-till" { product: Texts },
        NeverIssued "never-issued" { lot: LotCode },
        NoSuchPack "no-such-pack" { lot: LotCode, packs: u32, pack: u32 },
        Voided "voided",
        NotReleased "not-released",
        NothingLeft "nothing-left",
        Missing "missing",
        Gone "gone" { being: Being },
        TakenBack "taken-back",
        Past "past" { date: NaiveDate },
        NotSoldHere "not-sold-here",
        LastDay "last-day" { date: NaiveDate },
        StandsWarm "stands-warm" { place: String, read: Temperature, limit: LimitSays },
        Good "good" { date: NaiveDate },
        Frozen "frozen",
        NoDate "no-date",
        NoLastDay "no-last-day",
        ClockInDoubt "clock-in-doubt",
        MadeAhead "made-ahead",
    }
}

/// The answer to a scan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScanVerdict {
    /// The word.
    pub verdict: Verdict,
    /// In a sentence.
    pub says: Says,
    /// Everything that led to it.
    pub reasons: Vec<Says>,
}

impl ScanVerdict {
    fn new(verdict: Verdict, says: impl Into<Says>) -> ScanVerdict {
        let says = says.into();
        ScanVerdict {
            verdict,
            reasons: vec![says.clone()],
            says,
        }
    }

    /// The same where the clock is in doubt, or was when the lot was made: then nothing may be sold by a date,
    /// and nothing is past its day by a clock that nobody trusts.
    pub fn doubted(self, says: VerdictSays) -> ScanVerdict {
        let by_its_day = self.verdict == Verdict::Pull && self.says != VerdictSays::Voided.into();
        match self.verdict {
            _ if by_its_day => ScanVerdict::new(Verdict::Hold, says),
            Verdict::Sell | Verdict::SellToday => {
                let mut held = ScanVerdict::new(Verdict::Hold, says);
                held.reasons.extend(self.reasons);
                held
            }
            _ => self,
        }
    }

    /// Nothing that this kitchen printed.
    pub fn unknown(says: impl Into<Says>) -> ScanVerdict {
        ScanVerdict::new(Verdict::Unknown, says)
    }

    /// The lot was voided: whatever carries its label is not what the label says.
    pub fn voided() -> ScanVerdict {
        ScanVerdict::new(Verdict::Pull, VerdictSays::Voided)
    }

    /// What stands in its way, in the words of the gravest, with all of them.
    pub fn stopped(stops: &[Stop]) -> Option<ScanVerdict> {
        // A pack of which only the day is over is answered by its date.
        let first = stops
            .first()
            .filter(|stop| stop.kind != StopKind::PastDay)?;
        let verdict = match first.kind {
            StopKind::Voided | StopKind::PastDay => Verdict::Pull,
            StopKind::Held
            | StopKind::Failed
            | StopKind::UnknownHistory
            | StopKind::NotProven
            | StopKind::NotConfirmed
            | StopKind::NotReleased
            | StopKind::WrongLabel => Verdict::Hold,
            StopKind::CameBack | StopKind::Waste => Verdict::NotForSale,
        };
        Some(ScanVerdict {
            verdict,
            says: counter_says(first),
            reasons: stops.iter().map(counter_says).collect(),
        })
    }

    /// The most cautious of several packs' answers; nothing left where there is none.
    pub fn most_cautious(answers: impl Iterator<Item = ScanVerdict>) -> ScanVerdict {
        let worst = answers.max_by_key(|answer| answer.verdict);
        worst.unwrap_or_else(|| ScanVerdict::new(Verdict::Gone, VerdictSays::NothingLeft))
    }
}

/// A stop in the words of the counter.
fn counter_says(stop: &Stop) -> Says {
    match stop.kind {
        StopKind::Voided => VerdictSays::Voided.into(),
        StopKind::NotReleased => VerdictSays::NotReleased.into(),
        StopKind::Held
        | StopKind::Failed
        | StopKind::UnknownHistory
        | StopKind::NotProven
        | StopKind::NotConfirmed
        | StopKind::CameBack
        | StopKind::PastDay
        | StopKind::Waste
        | StopKind::WrongLabel => stop.says.clone(),
    }
}

/// The answer for one pack.
pub fn of_pack(pack: &PackNow, for_sale: bool, has_rule: bool, today: NaiveDate) -> ScanVerdict {
    match pack.being {
        Being::Void => return ScanVerdict::voided(),
        Being::Missing => return ScanVerdict::new(Verdict::Hold, VerdictSays::Missing),
        Being::OnHand | Being::Open => {}
        being => return ScanVerdict::new(Verdict::Gone, VerdictSays::Gone { being }),
    }
    if pack.taken_back {
        return ScanVerdict::new(Verdict::NotForSale, VerdictSays::TakenBack);
    }
    match pack.use_by {
        Some(date) if date < today => {
            return ScanVerdict::new(Verdict::Pull, VerdictSays::Past { date });
        }
        _ if !for_sale => return ScanVerdict::new(Verdict::NotForSale, VerdictSays::NotSoldHere),
        Some(date) if date == today => {
            return ScanVerdict::new(Verdict::SellToday, VerdictSays::LastDay { date });
        }
        Some(date) => return ScanVerdict::new(Verdict::Sell, VerdictSays::Good { date }),
        None => {}
    }
    match (pack.state, has_rule) {
        (State::Frozen, true) => ScanVerdict::new(Verdict::NotForSale, VerdictSays::Frozen),
        (_, true) => ScanVerdict::new(Verdict::Hold, VerdictSays::NoDate),
        (_, false) => ScanVerdict::new(Verdict::Sell, VerdictSays::NoLastDay),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grams::Grams;
    use crate::lot::{BirthDate, PlaceId};

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
            BirthDate {
                use_by: date,
                ..BirthDate::default()
            },
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
    fn a_clock_in_doubt_neither_sells_nor_throws_away() {
        let doubted = |of: ScanVerdict| of.doubted(VerdictSays::ClockInDoubt);
        let date = "2026-06-25".parse().unwrap();
        for (verdict, says) in [
            (Verdict::Pull, VerdictSays::Past { date }),
            (Verdict::Sell, VerdictSays::Good { date }),
            (Verdict::SellToday, VerdictSays::LastDay { date }),
        ] {
            let told = doubted(ScanVerdict::new(verdict, says));
            assert_eq!(told.verdict, Verdict::Hold);
            assert_eq!(told.says, VerdictSays::ClockInDoubt.into());
        }
        assert_eq!(doubted(ScanVerdict::voided()), ScanVerdict::voided());
    }

    #[test]
    fn of_several_the_most_cautious() {
        let answers = [
            ScanVerdict::voided(),
            ScanVerdict::unknown(VerdictSays::NotOurs),
        ];
        assert_eq!(
            ScanVerdict::most_cautious(answers.into_iter()).verdict,
            Verdict::Unknown
        );
        assert_eq!(
            ScanVerdict::most_cautious(std::iter::empty()).verdict,
            Verdict::Gone
        );
    }
}
