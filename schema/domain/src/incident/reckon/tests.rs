//! Missing and surplus stand apart, sums close, and what nobody looked for is not located.

use super::*;
use proptest::prelude::*;

/// Does it add up?
fn closes(sums: &CountSums) -> bool {
    let came = sums.book + sums.back + sums.surplus;
    came == sums.missing + sums.destroyed + sums.returned + sums.gone + sums.left
}

fn event(deed: i32, kind: DeedKind, account: Account, grams: i64) -> PackEvent {
    PackEvent {
        deed: DeedId(deed),
        kind,
        at: DateTime::from_timestamp(i64::from(deed), 0).unwrap(),
        place: None,
        account,
        grams: Grams::whole(grams),
        whole_pack: false,
        to: None,
    }
}

fn pack(id: i32, events: Vec<PackEvent>) -> PackTold {
    PackTold {
        id: PackId(id),
        number: id.unsigned_abs(),
        made: Grams::whole(250),
        born: PlaceId(1),
        events,
    }
}

fn reckoned(packs: &[PackTold]) -> Reckoned {
    reckon(
        std::iter::once((LotId(1), packs.iter().collect())),
        DeedId(10),
    )
}

#[test]
fn missing_and_surplus_stand_apart_and_nothing_is_forced_to_zero() {
    use Account::{Discarded, Noted, Sold, TakenBack, Unexplained};
    let packs = [
        pack(1, vec![event(11, DeedKind::Count, Unexplained, 250)]),
        pack(
            2,
            vec![
                event(3, DeedKind::Sell, Sold, 250),
                event(12, DeedKind::Count, Unexplained, -240),
            ],
        ),
        pack(
            3,
            vec![
                event(13, DeedKind::Count, Noted, 0),
                event(20, DeedKind::Dispose, Discarded, 250),
            ],
        ),
        pack(
            4,
            vec![
                event(4, DeedKind::Sell, Sold, 250),
                event(14, DeedKind::TakeBack, TakenBack, 250),
            ],
        ),
        // Sold before, and never seen again: nothing to count.
        pack(5, vec![event(4, DeedKind::Sell, Sold, 250)]),
    ];
    let of = reckoned(&packs);
    let grams = Grams::whole;
    assert_eq!(of.lots[0].packs.len(), 4);
    assert_eq!((of.sums.missing, of.sums.surplus), (grams(250), grams(240)));
    assert_eq!(
        (of.sums.book, of.sums.back, of.sums.destroyed),
        (grams(500), grams(250), grams(250))
    );
    assert!(closes(&of.sums), "{:?}", of.sums);
    let states: Vec<CountState> = of.lots[0].packs.iter().map(|pack| pack.state).collect();
    use CountState::{Found, Gone, Missing};
    assert_eq!(states, [Missing, Found, Gone, Found]);
    assert_eq!((of.to_count, of.uncounted), (2, 0));
    assert_eq!(of.counted, DateTime::from_timestamp(13, 0));
}

#[test]
fn what_nobody_looked_for_is_not_located() {
    let packs = [
        pack(1, vec![event(12, DeedKind::Move, Account::Moved, 0)]),
        pack(2, vec![]),
    ];
    let of = reckoned(&packs);
    assert_eq!((of.located, of.counted, of.waiting), (None, None, 1));
    assert_eq!(of.lots[0].packs[0].state, CountState::Seen);
    let of = reckoned(&packs[..1]);
    assert_eq!((of.located.is_some(), of.uncounted), (true, 1));
}

#[test]
fn found_again_is_there_and_both_counts_stay() {
    use Account::Unexplained;
    let packs = [pack(
        1,
        vec![
            event(11, DeedKind::Count, Unexplained, 250),
            event(12, DeedKind::Count, Unexplained, -250),
        ],
    )];
    let of = reckoned(&packs);
    assert_eq!(
        (of.sums.missing, of.sums.surplus),
        (Grams::whole(250), Grams::whole(250))
    );
    assert_eq!(of.sums.left, Grams::whole(250));
    assert!(closes(&of.sums), "{:?}", of.sums);
    assert_eq!(of.lots[0].packs[0].state, CountState::Found);
}

#[test]
fn where_it_was_destroyed_is_not_where_it_was_found() {
    use Account::{Discarded, Noted};
    let at = |place, event| PackEvent {
        place: Some(PlaceId(place)),
        ..event
    };
    let counted = at(7, event(11, DeedKind::Count, Noted, 0));
    let destroyed = at(9, event(12, DeedKind::Dispose, Discarded, 250));
    let of = reckoned(&[pack(1, vec![counted, destroyed])]);
    assert_eq!(of.lots[0].packs[0].found_at, Some(PlaceId(7)));
}

proptest! {
    #[test]
    fn sums_close_whatever_happened(
        happened in prop::collection::vec((0..7usize, 1i64..90, 1i32..30, any::<bool>()), 0..12)
    ) {
        use Account::*;
        let accounts = [Used, Sold, Discarded, Returned, TakenBack, Unexplained, Lost];
        let events = happened.iter().map(|(nth, grams, deed, found)| {
            let is_count = accounts[*nth] == Unexplained;
            let kind = if is_count { DeedKind::Count } else { DeedKind::Sell };
            let grams = if is_count && *found { -*grams } else { *grams };
            event(*deed, kind, accounts[*nth], grams)
        });
        let mut events: Vec<PackEvent> = events.collect();
        events.sort_by_key(|event| event.deed);
        let of = reckoned(&[pack(1, events.clone())]);
        prop_assert!(closes(&of.sums));
        let took: Grams = events.iter().map(PackEvent::took).sum();
        if let Some(lot) = of.lots.first() {
            prop_assert_eq!(lot.sums.left, Grams::whole(250) - took);
            let counted = events.iter().filter(|of| of.deed > DeedId(10) && of.account == Unexplained);
            let missed: Grams = counted.map(|of| of.grams).filter(|of| *of > Grams::ZERO).sum();
            prop_assert_eq!(lot.sums.missing, missed);
        }
    }
}
