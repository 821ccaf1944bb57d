//! Writing a plan down. The plan leaves no choice: this only turns it into rows.

use crate::chain::rows::{AdditionRow, StepRow};
use crate::conditions;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::lots::{self, LotRow, contents, joined, life, write_origin};
use crate::packs::{self, PackRow};
use crate::prepared::Prepared;
use crate::reasons;
use crate::stops;
use crate::tables::{additions, deeds, lots as lots_table, pack_events, steps, voids};
use crate::wrong_labels;
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use domain::grams::Grams;
use domain::lot::{Event, LotId, PackNow, PlaceId, What};
use domain::moment::Moment;
use domain::plan::{Birth, PackChange, Plan};
use domain::words::{Account, DeedKind, State};
use std::collections::BTreeMap;

/// Something that happened to a pack, as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = pack_events, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct PackEventRow {
    pub id: i32,
    pub deed_id: i32,
    pub lot_id: i32,
    pub pack_id: i32,
    pub seq: i32,
    pub account: String,
    pub mg: i64,
    pub whole_pack: bool,
    pub place_id: Option<i32>,
    pub state: Option<String>,
    pub day: NaiveDate,
}

impl PackEventRow {
    /// The domain's event, of a deed that was done at a moment.
    pub fn event(&self, at: NaiveDateTime) -> Result<Event> {
        let bad = |what| Error::bad_row("pack_events", self.id, what);
        let account = Account::parse(&self.account).ok_or_else(|| bad("unknown account"))?;
        let grams = Grams::from_milligrams(self.mg);
        let what = match account {
            Account::Moved => What::Moved {
                place: self.place_id.map(PlaceId),
                state: match &self.state {
                    Some(word) => Some(State::parse(word).ok_or_else(|| bad("unknown state"))?),
                    None => None,
                },
            },
            Account::Noted => What::Noted,
            Account::TakenBack => What::TakenBack(grams),
            account => What::Took(account, grams),
        };
        Ok(Event {
            what,
            day: self.day,
            at: at.and_utc(),
        })
    }
}

/// Writes a plan down under a deed that was inserted before; the lots made come back in order.
pub fn plan(tx: &mut Tx<'_>, deed: i32, moment: &Moment, plan: &Plan) -> Result<Vec<LotRow>> {
    if let Some(balance) = &plan.balance {
        let row = StepRow {
            id: deed,
            loss_mg: balance.loss.milligrams(),
            animal_mg: balance.with_animal.milligrams(),
        };
        diesel::insert_into(steps::table)
            .values(&row)
            .execute(tx.conn)?;
        tx.seal(deed, &row);
        for (what, grams) in &balance.added {
            let row = AdditionRow {
                id: tx.ids.one(tx.conn)?,
                deed_id: deed,
                what: what.as_str().to_owned(),
                mg: grams.milligrams(),
            };
            diesel::insert_into(additions::table)
                .values(&row)
                .execute(tx.conn)?;
            tx.seal(deed, &row);
        }
    }
    changes(tx, deed, moment, &plan.changes)?;
    let links = plan.reasons.iter().map(|(lot, reason)| (lot.0, reason));
    reasons::insert(tx, deed, links.collect())?;
    let placed = plan.stops.iter();
    let placed: Vec<_> = placed
        .map(|(lot, pack, stop)| (lot.0, *pack, stop))
        .collect();
    stops::place(tx, deed, &placed)?;
    stops::end(tx, deed, &plan.ends)?;
    conditions::change(tx, deed, &plan.conditions)?;
    births(tx, deed, moment, &plan.births)
}

fn changes(tx: &mut Tx<'_>, deed: i32, moment: &Moment, changes: &[PackChange]) -> Result<()> {
    let mut by_lot: BTreeMap<LotId, Vec<&PackChange>> = BTreeMap::new();
    for change in changes {
        by_lot.entry(change.lot).or_default().push(change);
    }
    let ids = tx.ids.take(tx.conn, changes.len())?;
    let mut ids = ids.into_iter();
    let mut rows = Vec::with_capacity(changes.len());
    let mut now = Vec::with_capacity(changes.len());
    for (lot, changes) in by_lot {
        let first = add_to_totals(tx, lot, &changes)?;
        for (change, seq) in changes.into_iter().zip(first..) {
            now.push((change.pack, change.now));
            rows.push(PackEventRow {
                id: ids.next().expect("one id for each change"),
                deed_id: deed,
                lot_id: lot.0,
                pack_id: change.pack.0,
                seq,
                account: change.account.as_str().to_owned(),
                mg: change.grams.milligrams(),
                whole_pack: change.whole_pack,
                place_id: change.place.map(|place| place.0),
                state: change.state.map(|state| state.as_str().to_owned()),
                day: moment.day,
            });
        }
    }
    let printed = packs::set_all(tx.conn, &now)?;
    insert_rows!(tx.conn, pack_events::table, &rows);
    tx.seal_all(deed, &rows);
    wrong_labels::of_packs(tx, &printed, moment.at.naive_utc())
}

/// Adds changes to their lot's totals; the number of the first of them in the lot's order comes back.
fn add_to_totals(tx: &mut Tx<'_>, lot: LotId, changes: &[&PackChange]) -> Result<i32> {
    use lots_table::dsl::*;
    let sum = |account: Account| -> i64 {
        let of = changes.iter().filter(|change| change.account == account);
        of.map(|change| change.grams).sum::<Grams>().milligrams()
    };
    let out: i64 = Account::ALL
        .iter()
        .filter(|account| **account != Account::TakenBack)
        .map(|account| sum(*account))
        .sum();
    let whole = changes.iter().filter(|change| change.whole_pack).count() as i32;
    let count = changes.len() as i32;
    let update = diesel::update(lots.find(lot.0))
        .set((
            seq.eq(seq + count),
            on_hand_mg.eq(on_hand_mg + (sum(Account::TakenBack) - out)),
            used_mg.eq(used_mg + sum(Account::Used)),
            sold_mg.eq(sold_mg + sum(Account::Sold)),
            sold_packs.eq(sold_packs + whole),
            served_mg.eq(served_mg + sum(Account::Served)),
            discarded_mg.eq(discarded_mg + sum(Account::Discarded)),
            shipped_mg.eq(shipped_mg + sum(Account::Shipped)),
            returned_mg.eq(returned_mg + sum(Account::Returned)),
            lost_mg.eq(lost_mg + sum(Account::Lost)),
            unexplained_mg.eq(unexplained_mg + sum(Account::Unexplained)),
            taken_back_mg.eq(taken_back_mg + sum(Account::TakenBack)),
        ))
        .returning(seq);
    let after: i32 = Prepared(update).get_result(tx.conn)?;
    Ok(after - count)
}

fn births(tx: &mut Tx<'_>, deed: i32, moment: &Moment, births: &[Birth]) -> Result<Vec<LotRow>> {
    let ids = tx.ids.take(tx.conn, births.len())?;
    let rows: Vec<LotRow> = births
        .iter()
        .zip(&ids)
        .map(|(birth, id)| lot_row(*id, deed, moment, birth))
        .collect();
    lots::insert(tx, deed, &rows)?;
    let mut pack_ids = tx
        .ids
        .take(tx.conn, births.iter().map(|birth| birth.packs.len()).sum())?
        .into_iter();
    let mut pack_rows = Vec::with_capacity(pack_ids.len());
    for (birth, lot) in births.iter().zip(ids) {
        for (made, number) in birth.packs.iter().zip(1..) {
            let id = pack_ids.next().expect("one id for each pack");
            pack_rows.push(PackRow::new(
                id,
                lot,
                number,
                *made,
                &PackNow {
                    left: *made,
                    ..birth.born
                },
            ));
        }
    }
    packs::insert(tx, deed, &pack_rows)?;
    let links = births.iter().zip(&rows).flat_map(|(birth, row)| {
        let of_lot = birth.reasons.iter();
        of_lot.map(|reason| (row.id, reason))
    });
    reasons::insert(tx, deed, links.collect())?;
    let placed = births.iter().zip(&rows).flat_map(|(birth, row)| {
        let of_lot = birth.stops.iter();
        of_lot.map(|stop| (row.id, None, stop))
    });
    stops::place(tx, deed, &placed.collect::<Vec<_>>())?;
    Ok(rows)
}

fn lot_row(id: i32, deed: i32, moment: &Moment, birth: &Birth) -> LotRow {
    let (origin, animal) = write_origin(birth.origin);
    LotRow {
        id,
        code: birth.code.as_str().to_owned(),
        deed_id: deed,
        version_id: birth.product,
        made_at: moment.at.naive_utc(),
        made_mg: birth.grams.milligrams(),
        pack_count: birth.packs.len() as i32,
        origin: origin.to_owned(),
        animal_id: animal,
        allergens: contents(
            &birth.allergens,
            &birth.may_contain,
            birth.supplied.as_ref(),
        ),
        species: joined(birth.species.iter().map(|word| word.as_str())),
        note: birth.note.clone(),
        born_place_id: birth.born.place.0,
        born_state: birth.born.state.as_str().to_owned(),
        born_use_by: birth.born.use_by,
        born_days_left: birth.born.days_left,
        voided: false,
        seq: 1,
        on_hand_mg: birth.grams.milligrams(),
        used_mg: 0,
        sold_mg: 0,
        sold_packs: 0,
        served_mg: 0,
        discarded_mg: 0,
        shipped_mg: 0,
        returned_mg: 0,
        lost_mg: 0,
        unexplained_mg: 0,
        taken_back_mg: 0,
        later: Some(life(birth.condition, &birth.later)),
        packaging: birth
            .packaging
            .map(|packaging| packaging.as_str().to_owned()),
        stopped: !birth.stops.is_empty(),
    }
}

/// A deed in a lot's history, with what it did to the lot.
#[derive(Debug, Clone)]
pub struct HistoryRow {
    /// The deed's id.
    pub uid: Vec<u8>,
    /// What it was.
    pub kind: String,
    /// When it ended, UTC.
    pub at: NaiveDateTime,
    /// Who.
    pub person: String,
    /// Was it voided?
    pub voided: bool,
    /// `made` for the deed that made the lot, else the account.
    pub account: String,
    /// How many milligrams, over all packs.
    pub mg: i64,
}

/// A lot's history: the deed that made it, then everything that was done with it, in order.
pub fn history(conn: &mut Conn, lot: i32, made_by: i32) -> Result<Vec<HistoryRow>> {
    type Event = (
        i32,
        Vec<u8>,
        String,
        NaiveDateTime,
        String,
        Option<i32>,
        String,
        i64,
    );
    let of_lot: Vec<Event> = pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
        .filter(pack_events::lot_id.eq(lot))
        .order(pack_events::seq)
        .select((
            pack_events::deed_id,
            deeds::uid,
            deeds::kind,
            deeds::at,
            deeds::person,
            voids::id.nullable(),
            pack_events::account,
            pack_events::mg,
        ))
        .load(conn)?;
    let birth: (Vec<u8>, String, NaiveDateTime, String, Option<i32>) = deeds::table
        .left_join(voids::table.on(voids::deed_id.eq(deeds::id)))
        .filter(deeds::id.eq(made_by))
        .select((
            deeds::uid,
            deeds::kind,
            deeds::at,
            deeds::person,
            voids::id.nullable(),
        ))
        .get_result(conn)?;
    let (uid, kind, at, person, voided) = birth;
    let mut history = vec![HistoryRow {
        uid,
        kind,
        at,
        person,
        voided: voided.is_some(),
        account: "made".into(),
        mg: 0,
    }];
    let mut last = None;
    for (deed, uid, kind, at, person, voided, account, mg) in of_lot {
        match history
            .last_mut()
            .filter(|row| last == Some(deed) && row.account == account)
        {
            Some(row) => row.mg += mg,
            None => history.push(HistoryRow {
                uid,
                kind,
                at,
                person,
                voided: voided.is_some(),
                account,
                mg,
            }),
        }
        last = Some(deed);
    }
    Ok(history)
}

/// Was the lot released, by a deed that was not voided?
pub fn is_released(conn: &mut Conn, lot: i32) -> Result<bool> {
    let release = pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
        .filter(pack_events::lot_id.eq(lot).and(voids::id.is_null()))
        .filter(deeds::kind.eq(DeedKind::Release.as_str()))
        .select(pack_events::id)
        .limit(1);
    Ok(!release.load::<i32>(conn)?.is_empty())
}

/// What a step used: lots and milligrams.
pub fn used_by(conn: &mut Conn, deed: i32) -> Result<Vec<(i32, i64)>> {
    Ok(pack_events::table
        .filter(pack_events::deed_id.eq(deed))
        .filter(pack_events::account.eq(Account::Used.as_str()))
        .order(pack_events::id)
        .select((pack_events::lot_id, pack_events::mg))
        .load(conn)?)
}
