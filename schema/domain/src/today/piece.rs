//! Pieces of the cure room, and what lies in a cure, that need a hand.

use super::{About, DoSays, Hand, Known, Sort, TodaySays, When};
use crate::cure_room::{RoomTask, Task};
use crate::family::PieceView;
use crate::lot::LotId;
use crate::says::Says;

pub(super) fn hands(known: &Known<'_>) -> Vec<Hand> {
    let pieces = known.pieces.iter();
    let mut hands: Vec<Hand> = pieces.flat_map(|piece| of_piece(known, piece)).collect();
    for view in known.lying {
        let due = view.due.iter();
        hands.extend(due.filter_map(|due| to_tend(known, view.lot, &view.piece.tag, due)));
    }
    hands
}

fn of_piece(known: &Known<'_>, view: &PieceView) -> Vec<Hand> {
    let Some(of) = known.family.get(view.lot) else {
        return Vec::new();
    };
    let (tag, name) = (&view.piece.tag, of.lot.product.named());
    let about = || About::Lot(of.lot.code.clone(), Vec::new());
    let says = || {
        Says::from(TodaySays::Piece {
            tag: tag.clone(),
            name: name.clone(),
        })
    };
    let mut hands = Vec::new();
    if let Some(alarm) = &view.alarm {
        let likely = view.likely.iter().map(|likely| likely.says.clone());
        hands.push(Hand {
            when: When::Now,
            sort: Sort::Alarm,
            about: about(),
            says: says(),
            more: std::iter::once(alarm.finding().says)
                .chain(likely)
                .collect(),
            act: DoSays::Look { what: tag.clone() }.into(),
        });
    }
    if view.may_be_released() {
        hands.push(Hand {
            when: When::Today,
            sort: Sort::Release,
            about: about(),
            says: says(),
            more: vec![TodaySays::Release.into()],
            act: DoSays::Sign { what: tag.clone() }.into(),
        });
    }
    // What may be released is not due for a look as well.
    let is_ready = view.may_be_released();
    let due = view.due.iter().filter(|due| !(is_ready && due.is_ready()));
    hands.extend(due.filter_map(|due| to_tend(known, view.lot, tag, due)));
    hands
}

/// A piece, or what lies in a cure, with something due.
fn to_tend(known: &Known<'_>, lot: LotId, tag: &str, due: &RoomTask) -> Option<Hand> {
    let of = known.family.get(lot)?;
    Some(Hand {
        when: When::Today,
        sort: Sort::Piece,
        about: About::Piece(of.lot.code.clone(), due.task),
        says: TodaySays::Piece {
            tag: tag.to_owned(),
            name: of.lot.product.named(),
        }
        .into(),
        more: vec![due.without_tag()],
        act: to_do(due.task, tag.to_owned()).into(),
    })
}

/// What is done with a piece, as its button says it.
fn to_do(task: Task, what: String) -> DoSays {
    match task {
        Task::Turn | Task::Overhaul => DoSays::Turn { what },
        Task::Rinse => DoSays::Rinse { what },
        Task::Equalise => DoSays::Equalise { what },
        Task::Hang => DoSays::Hang { what },
        Task::Weigh | Task::ReadyFrom | Task::ReadyBy => DoSays::Weigh { what },
        Task::Salt => DoSays::Look { what },
    }
}
