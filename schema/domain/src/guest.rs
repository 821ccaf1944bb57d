//! What a guest is told of a pack who reads the code on it: first what stands in the way of eating it, without the
//! kitchen's reasons; then what its label says.

use crate::incident::Hazard;
use crate::lot::{Lot, Pack};
use crate::messages;
use crate::says::Says;
use crate::stop::{made_ahead, on};
use crate::words::StopKind;
use chrono::{DateTime, NaiveDate, Utc};

messages! {
    /// What a guest is told before anything else.
    GuestSays in "guest" {
        Residue "residue",
        Pathogen "pathogen",
        Allergen "allergen",
        ForeignBody "foreign-body",
        Temperature "temperature",
        Label "label",
        Other "other",
        AskFirst "ask-first",
        PastDay "past-day" { day: NaiveDate },
    }
}

/// What comes before everything else.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Notice {
    /// It is called back, and the manager lets guests know.
    Recalled(Hazard),
    /// Something stands in its way: the counter knows, and what its label says is not repeated.
    AskFirst,
    /// Its last day is over.
    PastDay(NaiveDate),
}

impl Notice {
    /// In a sentence.
    pub fn says(self) -> Says {
        match self {
            Notice::Recalled(Hazard::Residue) => GuestSays::Residue,
            Notice::Recalled(Hazard::Pathogen) => GuestSays::Pathogen,
            Notice::Recalled(Hazard::Allergen) => GuestSays::Allergen,
            Notice::Recalled(Hazard::ForeignBody) => GuestSays::ForeignBody,
            Notice::Recalled(Hazard::Temperature) => GuestSays::Temperature,
            Notice::Recalled(Hazard::Label) => GuestSays::Label,
            Notice::Recalled(Hazard::Other) => GuestSays::Other,
            Notice::AskFirst => GuestSays::AskFirst,
            Notice::PastDay(day) => GuestSays::PastDay { day },
        }
        .into()
    }

    /// Is what the label says shown besides? Not where it may be what is wrong.
    pub fn leaves_the_label(self) -> bool {
        matches!(self, Notice::PastDay(_))
    }
}

/// Is a lot anything that a guest may hold in their hands?
pub fn is_for_guests(lot: &Lot) -> bool {
    lot.product.sale.offered && !lot.waits_for_release()
}

/// What comes first of a pack, or of a lot of which no pack was named, at a moment of one of the kitchen's days.
/// `recalled` is for what a recall is that this is in and that guests are to know of.
pub fn notice(
    lot: &Lot,
    pack: Option<&Pack>,
    recalled: Option<Hazard>,
    now: DateTime<Utc>,
    today: NaiveDate,
) -> Option<Notice> {
    if let Some(hazard) = recalled {
        return Some(Notice::Recalled(hazard));
    }
    let mut stops = on(lot, pack, now, today).into_iter();
    let stops = &mut stops;
    if stops.any(|stop| stop.kind != StopKind::PastDay) || made_ahead(lot, now).is_some() {
        return Some(Notice::AskFirst);
    }
    // Also of what was sold: it lies in somebody's kitchen now.
    let last = pack.and_then(|pack| pack.now.use_by);
    let over = last.filter(|day| *day < today);
    over.map(Notice::PastDay)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lot::brief::tests::lot;
    use crate::words::Being;

    fn now() -> DateTime<Utc> {
        "2026-06-26T12:00:00Z".parse().unwrap()
    }

    fn told(lot: &Lot, recalled: Option<Hazard>) -> Option<Notice> {
        notice(lot, lot.pack(1), recalled, now(), now().date_naive())
    }

    #[test]
    fn a_recall_comes_before_everything() {
        let mut of = lot(&[(250, Some("2026-06-27"))]);
        assert_eq!(told(&of, None), None);
        of.voided = true;
        assert_eq!(told(&of, None), Some(Notice::AskFirst));
        let residue = Notice::Recalled(Hazard::Residue);
        assert_eq!(told(&of, Some(Hazard::Residue)), Some(residue));
        assert!(!residue.leaves_the_label() && !Notice::AskFirst.leaves_the_label());
    }

    #[test]
    fn a_sold_pack_is_past_its_day_as_one_on_hand_is() {
        let mut of = lot(&[(250, Some("2026-06-25"))]);
        let day = "2026-06-25".parse().unwrap();
        assert_eq!(told(&of, None), Some(Notice::PastDay(day)));
        of.packs[0].now.being = Being::Sold;
        assert_eq!(told(&of, None), Some(Notice::PastDay(day)));
        assert!(Notice::PastDay(day).leaves_the_label());
    }

    #[test]
    fn what_is_not_sold_is_nobodys_business() {
        let of = lot(&[(250, Some("2026-06-27"))]);
        assert_eq!(is_for_guests(&of), of.product.sale.offered);
        let mut own = of.clone();
        let mut product = (*own.product).clone();
        product.sale.offered = false;
        own.product = product.into();
        assert!(!is_for_guests(&own));
    }
}
