//! What lies in its cure and is smoked or cooked afterwards: when it is turned, and when it comes out.

use super::Family;
use super::piece::line;
use crate::cure_room::{
    self, CureRoomRules, Piece, PieceStage, Planned, RoomTask, SaltTime, SaltingMethod, Span, Task,
};
use crate::lot::LotId;
use crate::moment::day_of;
use crate::product::Lies;
use crate::words::DeedKind;
use chrono::NaiveDate;
use chrono_tz::Tz;

/// A lot in its cure as it is shown on a day.
#[derive(Debug, Clone)]
pub struct LyingView {
    /// The lot.
    pub lot: LotId,
    /// Its tag, its green weight, its calendar.
    pub piece: Piece,
    /// What is to be done.
    pub due: Vec<RoomTask>,
    /// The day for which it is shown.
    pub today: NaiveDate,
}

impl LyingView {
    /// Days since it went in salt.
    pub fn days(&self) -> u32 {
        self.piece.age(self.today).unwrap_or(0)
    }

    /// Is it out of its cure?
    pub fn is_out(&self) -> bool {
        self.piece.stage != PieceStage::InSalt
    }

    /// The day it comes out.
    pub fn ready(&self) -> Option<NaiveDate> {
        let mut planned = self.piece.plan.iter();
        planned
            .find(|planned| planned.task == Task::Rinse)
            .map(|planned| planned.day)
    }

    /// The next day after this one on which it is turned.
    pub fn turned_next(&self) -> Option<Planned> {
        let turns = |planned: &&Planned| matches!(planned.task, Task::Turn | Task::Overhaul);
        let mut planned = self.piece.plan.iter().filter(turns);
        planned.find(|planned| planned.day > self.today).copied()
    }
}

/// Those of some lots that lie in a cure by a calendar, the longest in salt first. The family has to be
/// loaded with the ancestors of these lots.
pub fn lying(
    family: &Family,
    lots: impl IntoIterator<Item = LotId>,
    zone: Tz,
    today: NaiveDate,
    rules: &CureRoomRules,
) -> Vec<LyingView> {
    let mut found: Vec<LyingView> = lots
        .into_iter()
        .filter_map(|lot| {
            let piece = in_cure(family, lot, zone, rules)?;
            let due = cure_room::due(std::slice::from_ref(&piece), today, rules);
            Some(LyingView {
                lot,
                due,
                today,
                piece,
            })
        })
        .collect();
    found.sort_by_key(|view| (view.piece.in_salt, view.lot));
    found
}

fn in_cure(family: &Family, lot: LotId, zone: Tz, rules: &CureRoomRules) -> Option<Piece> {
    let of = family.get(lot)?;
    let product = &of.lot.product;
    let lies = product.cured.lies.as_ref().filter(|_| !product.is_hung())?;
    let line = line(family, lot)?;
    let tag = of.note.clone().unwrap_or_else(|| of.lot.code.shown());
    let mut piece = Piece::hung(tag, line.green, line.in_salt);
    piece.product = product.code.clone();
    piece.stage = PieceStage::InSalt;
    line.read_into(&mut piece, zone);
    let done = of.steps().into_iter().filter(|did| !did.voided);
    for did in done {
        match did.kind {
            DeedKind::Turn => piece.turned.push(day_of(did.at, zone)),
            DeedKind::Rinse | DeedKind::Equalise | DeedKind::Hang => {
                piece.stage = PieceStage::Equalising;
            }
            _ => {}
        }
    }
    piece.plan = calendar(lies, &piece, rules);
    Some(piece)
}

/// Its calendar: turned, out of the cure, and then once on the scale. Nothing where nobody said how long.
fn calendar(lies: &Lies, piece: &Piece, rules: &CureRoomRules) -> Vec<Planned> {
    let way = lies.salting.as_deref().and_then(|key| rules.method(key));
    let own = lies.days.map(|days| SaltTime::For(Span::Days(days)));
    let Some(salt) = own.or(way.map(|way| way.salt)) else {
        return Vec::new();
    };
    let method = SaltingMethod {
        key: String::new(),
        name: way.map(|way| way.name.clone()).unwrap_or_default(),
        salt,
        overhaul: way.map(|way| way.overhaul.clone()).unwrap_or_default(),
        turn_every: way.and_then(|way| way.turn_every),
        rinse: true,
        equalise: None,
        hang: None,
        rows: Vec::new(),
    };
    let planned = cure_room::plan(piece.in_salt, piece.green, None, &method, None, rules);
    let mut planned = planned.unwrap_or_default();
    // Where nothing equalises, the day it would hang is the day it comes out: it is weighed then.
    for line in &mut planned {
        if line.task == Task::Hang {
            line.task = Task::Weigh;
        }
    }
    planned
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grams::Grams;
    use crate::rows::RowId;
    use crate::says::Texts;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn rules() -> CureRoomRules {
        CureRoomRules {
            methods: vec![SaltingMethod {
                key: "dry-bacon".into(),
                name: Texts::from("dry bacon"),
                salt: SaltTime::For(Span::Days(14)),
                overhaul: Vec::new(),
                turn_every: Some(1),
                rinse: true,
                equalise: None,
                hang: None,
                rows: vec![RowId::new("trade-2.1-dry-bacon")],
            }],
            ..CureRoomRules::default()
        }
    }

    fn check(days: Option<u32>, on: &str, turned: &[&str], is_out: bool, due: &[Task]) {
        let rules = rules();
        let lies = Lies {
            salting: Some("dry-bacon".into()),
            days,
        };
        let mut piece = Piece::hung("B-1", Grams::whole(7_000), day("2026-06-11"));
        piece.stage = match is_out {
            true => PieceStage::Equalising,
            false => PieceStage::InSalt,
        };
        piece.turned = turned.iter().map(|text| day(text)).collect();
        piece.plan = calendar(&lies, &piece, &rules);
        let found = cure_room::due(&[piece], day(on), &rules);
        let tasks: Vec<Task> = found.iter().map(|due| due.task).collect();
        assert_eq!(tasks, due, "{days:?} {on} {turned:?}");
    }

    #[test]
    fn it_is_turned_each_day_until_it_comes_out_and_then_weighed() {
        check(None, "2026-06-11", &[], false, &[]);
        check(None, "2026-06-12", &[], false, &[Task::Turn]);
        check(None, "2026-06-12", &["2026-06-12"], false, &[]);
        check(None, "2026-06-13", &["2026-06-12"], false, &[Task::Turn]);
        check(None, "2026-06-25", &[], false, &[Task::Rinse]);
        check(None, "2026-06-25", &[], true, &[Task::Weigh]);
        // The house's own eleven days, within the seven to fourteen of the row (`trade-2.1-dry-bacon`).
        check(Some(11), "2026-06-21", &[], false, &[Task::Turn]);
        check(Some(11), "2026-06-22", &[], false, &[Task::Rinse]);
    }
}
