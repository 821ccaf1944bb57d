//! The piece in the cure room that a lot is: its green weight, its weighings, where it is on its way.

use super::{Family, Relative};
use crate::cure_room::{self, CureRoomRules, Piece, PieceStage, PieceWeighing, Planned};
use crate::genealogy::Use;
use crate::grams::Grams;
use crate::lot::LotId;
use crate::moment::day_of;
use crate::product::Hung;
use crate::words::{DeedKind, Quantity};
use chrono::NaiveDate;
use chrono_tz::Tz;
use rust_decimal::Decimal;

/// The piece that a lot is, if it came out of a cure and has a rule for its release.
pub fn piece(family: &Family, lot: LotId, zone: Tz, rules: &CureRoomRules) -> Option<Piece> {
    let of = family.get(lot)?;
    let product = &of.lot.product;
    let hung = product.cured.hung.as_ref()?;
    let line = line(family, lot)?;
    let tag = of.note.clone().unwrap_or_else(|| of.lot.code.shown());
    let mut piece = Piece::hung(tag, line.green, line.in_salt);
    piece.product = product.code.clone();
    piece.rule = hung.release.clone();
    line.read_into(&mut piece, zone);
    let curve = hung.curve.as_deref();
    piece.curve = curve.and_then(|key| rules.curve(key)).cloned();
    piece.plan = planned(hung, &piece, rules);
    (piece.stage, piece.turned) = stage(of, &piece, zone);
    Some(piece)
}

/// The lots that a piece was, newest first, back to its cure.
pub(super) fn cured_line(family: &Family, lot: LotId) -> Option<Vec<&Relative>> {
    Some(line(family, lot)?.lots)
}

/// The lots that the piece was, newest first, back to the cure step.
pub(super) struct PastLots<'a> {
    pub(super) lots: Vec<&'a Relative>,
    pub(super) green: Grams,
    pub(super) in_salt: NaiveDate,
}

pub(super) fn line(family: &Family, mut lot: LotId) -> Option<PastLots<'_>> {
    let mut lots = Vec::new();
    loop {
        let of = family.get(lot)?;
        lots.push(of);
        let meat: Vec<_> = family
            .ancestry
            .uses_of(lot)
            .iter()
            .filter(|used| family.get(used.lot).is_some_and(Relative::has_species))
            .collect();
        let hung = |used: &&Use| {
            family
                .get(used.lot)
                .is_some_and(|of| of.lot.product.is_hung())
        };
        // A sausage is in its cure when the salted mince is made: nothing hung before it.
        let is_stuffed = matches!(of.made_by.kind, DeedKind::Grind | DeedKind::Mix)
            && of.lot.product.is_hung()
            && !meat.iter().any(hung);
        if of.made_by.kind == DeedKind::Cure || is_stuffed {
            let green: i64 = meat.iter().map(|used| used.milligrams).sum();
            return Some(PastLots {
                lots,
                green: Grams::from_milligrams(green),
                in_salt: of.made_by.day,
            });
        }
        match meat.as_slice() {
            [one] => lot = one.lot,
            _ => return None,
        }
    }
}

impl PastLots<'_> {
    /// What was weighed and measured of it.
    pub(super) fn read_into(&self, piece: &mut Piece, zone: Tz) {
        for reading in self.lots.iter().flat_map(|of| &of.readings) {
            match reading.quantity {
                Quantity::Grams => piece.weighings.push(PieceWeighing {
                    day: day_of(reading.at, zone),
                    grams: Grams::from_milligrams(reading.millionths / 1_000),
                }),
                Quantity::WaterActivity => {
                    piece.water_activity = Some(Decimal::new(reading.millionths, 6).normalize());
                }
                _ => {}
            }
        }
    }
}

fn planned(hung: &Hung, piece: &Piece, rules: &CureRoomRules) -> Vec<Planned> {
    let method = hung.salting.as_deref().and_then(|key| rules.method(key));
    let plan = method.map(|method| {
        let days = piece.rule.days;
        cure_room::plan(piece.in_salt, piece.green, None, method, days, rules)
    });
    plan.and_then(Result::ok).unwrap_or_default()
}

/// Where it is on its way, by what was done with it; and the kitchen's days on which it was turned.
fn stage(of: &Relative, piece: &Piece, zone: Tz) -> (PieceStage, Vec<NaiveDate>) {
    let by = |stage: PieceStage, kind: DeedKind| match kind {
        DeedKind::Rinse | DeedKind::Equalise => PieceStage::Equalising,
        DeedKind::Smoke => PieceStage::Smoking,
        DeedKind::Hang => PieceStage::Hanging,
        DeedKind::Release => PieceStage::Released,
        _ => stage,
    };
    let mut stage = match piece.weighings.is_empty() {
        _ if of.lot.released => PieceStage::Released,
        true => PieceStage::InSalt,
        // Somebody took it out of the salt to weigh it.
        false => PieceStage::Hanging,
    };
    let mut turned = Vec::new();
    if of.lot.voided {
        return (stage, turned);
    }
    stage = by(stage, of.made_by.kind);
    for did in of.steps().into_iter().filter(|did| !did.voided) {
        if did.kind == DeedKind::Turn {
            turned.push(day_of(did.at, zone));
        }
        stage = by(stage, did.kind);
    }
    (stage, turned)
}
