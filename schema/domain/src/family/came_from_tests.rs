//! What the record tells of the meat in a lot: frozen for how long, heated by what, come in as what.

use super::*;
use crate::lot::DeedId;
use crate::lot::brief::tests::lot;
use crate::product::Product;
use crate::words::{Account, DeedKind, ProductKind};
use chrono::{DateTime, TimeDelta, Utc};
use std::sync::Arc;

fn hour(hour: i64) -> DateTime<Utc> {
    DateTime::from_timestamp(1_772_000_000, 0).unwrap() + TimeDelta::hours(hour)
}

#[derive(Default)]
pub(super) struct Record(Family);

impl Record {
    pub(super) fn of(&mut self, lot: LotId) -> &mut Relative {
        self.0.lots.get_mut(&lot).unwrap()
    }

    /// A lot that was made of others at an hour; what came in is made of none.
    pub(super) fn made(&mut self, kind: DeedKind, at: i64, state: State, of: &[LotId]) -> LotId {
        let id = LotId(1 + self.0.lots.len() as i32);
        let mut lot = lot(&[(500, None)]);
        (lot.id, lot.made_by, lot.made_at) = (id, DeedId(id.0), hour(at));
        lot.species = [Species::Pig].into();
        lot.product = Arc::new(Product {
            kind: ProductKind::Cut,
            species: Some(Species::Pig),
            raw: true,
            ..Product::unnamed()
        });
        lot.condition = Some(crate::condition::Condition::RAW);
        let relative = Relative {
            note: None,
            went: Went::default(),
            made_by: MadeBy {
                uid: Vec::new(),
                kind,
                at: hour(at),
                day: hour(at).date_naive(),
                by: String::new(),
            },
            born_state: state,
            born_use_by: None,
            source: None,
            readings: Vec::new(),
            reasons: Vec::new(),
            history: Vec::new(),
            lot,
        };
        self.0.lots.insert(id, relative);
        let uses = of.iter().map(|part| crate::genealogy::Use {
            step: DeedId(id.0),
            lot: *part,
            milligrams: 1_000,
            has_animal: false,
        });
        let ancestry = &mut self.0.ancestry;
        ancestry.uses.insert(DeedId(id.0), uses.collect());
        ancestry.made_by.insert(id, DeedId(id.0));
        id
    }

    fn did(&mut self, lot: LotId, kind: DeedKind, at: i64, state: Option<State>) {
        let did = Did {
            deed: DeedId(1_000 + at as i32),
            uid: Vec::new(),
            kind,
            at: hour(at),
            day: hour(at).date_naive(),
            by: String::new(),
            voided: false,
            pack_made: crate::grams::Grams::ZERO,
            pack: 1,
            account: Account::Moved,
            grams: crate::grams::Grams::ZERO,
            state,
        };
        self.of(lot).history.push(did);
    }

    #[track_caller]
    fn check(&self, lot: LotId, until: i64, hours: i64) {
        let stood = stood_frozen(&self.0, lot, hour(until));
        assert_eq!(stood, TimeDelta::hours(hours), "{lot:?} until {until}");
    }
}

const CHILLED: State = State::Chilled;
const FROZEN: State = State::Frozen;

#[test]
fn meat_stood_frozen_for_as_long_as_the_record_has_it() {
    let mut record = Record::default();
    let side = record.made(DeedKind::Receive, 0, CHILLED, &[]);
    record.check(side, 500, 0);
    record.did(side, DeedKind::Move, 10, Some(FROZEN));
    record.check(side, 5, 0);
    record.check(side, 110, 100);
    record.did(side, DeedKind::Move, 210, Some(CHILLED));
    record.check(side, 500, 200);
    // What is made of it has that; what it stood frozen later than the step does not count.
    let cured = record.made(DeedKind::Cure, 110, CHILLED, &[side]);
    record.check(cured, 500, 100);
    record.did(cured, DeedKind::Move, 300, Some(FROZEN));
    record.check(cured, 350, 150);
    // Of two meats the one that stood shortest: one that never did is enough.
    let other = record.made(DeedKind::Receive, 100, CHILLED, &[]);
    let mixed = record.made(DeedKind::Mix, 400, CHILLED, &[side, other]);
    record.check(mixed, 500, 0);
    // It came in frozen; voided it never was.
    let bought = record.made(DeedKind::Receive, 0, FROZEN, &[]);
    record.check(bought, 48, 48);
    record.of(side).history[0].voided = true;
    record.check(side, 210, 0);
    // What was ready when it went in needs nothing.
    record.of(other).lot.condition = Some(crate::condition::Condition::ready(
        crate::words::ProvedBy::Heat,
    ));
    record.of(side).history[0].voided = false;
    record.check(mixed, 500, 200);
}

#[test]
fn heat_that_is_claimed_has_a_step() {
    let mut record = Record::default();
    let side = record.made(DeedKind::Receive, 0, CHILLED, &[]);
    let ham = record.made(DeedKind::Cure, 10, CHILLED, &[side]);
    assert_eq!(heat_on_record(&record.0, ham), HeatOnRecord::Never);
    record.did(side, DeedKind::Cook, 5, None);
    record.of(side).history[0].account = Account::Used;
    assert_eq!(heat_on_record(&record.0, ham), HeatOnRecord::Never);
    let smoked = record.made(DeedKind::Smoke, 20, CHILLED, &[ham]);
    assert_eq!(heat_on_record(&record.0, smoked), HeatOnRecord::Untold);
    let core = Temperature::celsius(30);
    record.0.cores.insert(DeedId(smoked.0), core);
    assert_eq!(heat_on_record(&record.0, smoked), HeatOnRecord::UpTo(core));
    record.did(smoked, DeedKind::Smoke, 25, None);
    assert_eq!(heat_on_record(&record.0, smoked), HeatOnRecord::Untold);
}

#[test]
fn raw_meat_that_came_in_without_an_animal_is_found_through_what_was_made_of_it() {
    let mut record = Record::default();
    let (pig, trim) = (
        record.made(DeedKind::Receive, 0, CHILLED, &[]),
        record.made(DeedKind::Receive, 7, CHILLED, &[]),
    );
    let mince = record.made(DeedKind::Grind, 9, CHILLED, &[pig, trim]);
    let unknown = |record: &Record| unknown_animal(&record.0, &[mince]).map(|of| of.lot.id);
    assert_eq!(unknown(&record), None);
    record.of(trim).lot.species.clear();
    assert_eq!(unknown(&record), Some(trim));
    let salmon = crate::words::Allergen::Salmon;
    record.of(trim).lot.allergens.insert(salmon);
    assert_eq!(unknown(&record), None, "fish is no meat");
    record.of(trim).lot.allergens.remove(&salmon);
    let came = came_in(&record.0, &[mince]).into_iter();
    let mut came: Vec<LotId> = came.map(|of| of.lot.id).collect();
    came.sort_unstable();
    assert_eq!(came, [pig, trim]);
    // What was proven ready before is not looked into.
    record.of(trim).lot.condition = Some(crate::condition::Condition::ready(
        crate::words::ProvedBy::Heat,
    ));
    assert_eq!(unknown(&record), None);
    assert_eq!(came_in(&record.0, &[mince]).len(), 1);
}
