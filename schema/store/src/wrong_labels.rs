//! Packs whose last label says what is no longer true: the mark that a scan reads, and what moves it.
//!
//! The mark is kept with the pack, because a scan may not load a family to know. It is judged anew where
//! something can have changed: what a deed did to a pack (`of_packs`, for every plan, and
//! every void), what is true of a lot (`of_lots`, after [`set_truths`]), and a label that came out (`print_runs::change`).

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::packs::PackRow;
use crate::prints::PrintRow;
use crate::tables::{kept_texts, label_truths, lots, packs, print_runs, prints, wrong_labels};
use crate::{insert_rows, kept, on_each, said};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use domain::claims::{Claims, PrintedLabel, TrueNow, Untrue, WrongLabel, untrue};
use domain::grams::Grams;
use domain::lot::PackId;
use domain::words::{Being, LabelFact, PrintState};
use serde_json::{Value, json};
use std::collections::{BTreeMap, HashMap};

/// A pack with a wrong label as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = wrong_labels, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct WrongLabelRow {
    pub id: i32,
    pub lot_id: i32,
    pub print_id: i32,
    pub untrue: String,
    pub since: NaiveDateTime,
}

impl WrongLabelRow {
    /// What is not so.
    pub fn untrue(&self) -> Result<Vec<Untrue>> {
        let bad = || Error::bad_row("wrong_labels", self.id, "does not say what is untrue");
        let all: Vec<Value> = serde_json::from_str(&self.untrue).map_err(|_| bad())?;
        let one = |value: &Value| {
            let about = value.get("about")?.as_str().and_then(LabelFact::parse)?;
            Some(Untrue {
                about,
                printed: said::read(value.get("printed")?).ok()?,
                now: said::read(value.get("now")?).ok()?,
            })
        };
        let all: Option<Vec<Untrue>> = all.iter().map(one).collect();
        all.ok_or_else(bad)
    }

    fn mark(&self) -> Result<WrongLabel> {
        Ok(WrongLabel {
            pack: PackId(self.id),
            since: self.since.and_utc(),
            untrue: self.untrue()?,
        })
    }
}

/// The marks of some lots' packs, by lot.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_each(conn: &mut Conn, lots: &[i32]) -> Result<HashMap<i32, Vec<WrongLabel>>> {
    let mut found: HashMap<i32, Vec<WrongLabel>> = HashMap::new();
    if lots.is_empty() {
        return Ok(found);
    }
    let rows: Vec<WrongLabelRow> = wrong_labels::table
        .filter(wrong_labels::lot_id.eq_any(lots))
        .order(wrong_labels::id)
        .select(WrongLabelRow::as_select())
        .load(conn)?;
    for row in rows {
        found.entry(row.lot_id).or_default().push(row.mark()?);
    }
    Ok(found)
}

/// Every mark with its pack and its print, by lot and pack.
pub fn all(conn: &mut Conn) -> Result<Vec<(WrongLabelRow, PackRow, PrintRow)>> {
    Ok(wrong_labels::table
        .inner_join(packs::table.on(packs::id.eq(wrong_labels::id)))
        .inner_join(prints::table.on(prints::id.eq(wrong_labels::print_id)))
        .order((wrong_labels::lot_id, packs::number))
        .select((
            WrongLabelRow::as_select(),
            PackRow::as_select(),
            PrintRow::as_select(),
        ))
        .load(conn)?)
}

/// The lots with such a pack that holds something.
pub fn lots_on_hand(conn: &mut Conn) -> Result<Vec<i32>> {
    Ok(wrong_labels::table
        .inner_join(packs::table.on(packs::id.eq(wrong_labels::id)))
        .filter(packs::left_mg.gt(0))
        .select(wrong_labels::lot_id)
        .distinct()
        .load(conn)?)
}

/// Of some lots those that a label was ever printed of, with what a new one would claim.
pub fn truths(conn: &mut Conn, lots: &[i32]) -> Result<HashMap<i32, Claims>> {
    let rows: Vec<(i32, String)> = label_truths::table
        .inner_join(kept_texts::table.on(kept_texts::id.eq(label_truths::claims_id)))
        .filter(label_truths::id.eq_any(lots))
        .select((label_truths::id, kept_texts::text))
        .load(conn)?;
    let read = |(lot, text): (i32, String)| Ok((lot, claims(lot, &text)?));
    rows.into_iter().map(read).collect()
}

/// Every lot that a label was ever printed of, in order.
pub fn printed_lots(conn: &mut Conn) -> Result<Vec<i32>> {
    Ok(label_truths::table
        .order(label_truths::id)
        .select(label_truths::id)
        .load(conn)?)
}

fn claims(about: i32, text: &str) -> Result<Claims> {
    let bad = || Error::Broken(format!("the claims kept for {about} do not read"));
    Claims::parse(text).ok_or_else(bad)
}

/// Of some lots those that a label was ever printed of, in order.
pub fn printed_of(conn: &mut Conn, lots: &[i32]) -> Result<Vec<i32>> {
    let mut found = Vec::new();
    for some in lots.chunks(KEYS_AT_ONCE) {
        let some: Vec<i32> = label_truths::table
            .filter(label_truths::id.eq_any(some))
            .select(label_truths::id)
            .load(conn)?;
        found.extend(some);
    }
    found.sort_unstable();
    found.dedup();
    Ok(found)
}

/// Writes down what new labels of some lots would claim; is that news of one that had another before? So
/// many lots as the caller holds at once: a few statements for all.
pub fn set_truths(tx: &mut Tx<'_>, now: &[(i32, Claims)]) -> Result<bool> {
    let texts: Vec<String> = now.iter().map(|(_, claims)| claims.to_string()).collect();
    let kept = kept::keep_all(tx, &texts)?;
    let lots: Vec<i32> = now.iter().map(|(lot, _)| *lot).collect();
    let known: HashMap<i32, i32> = label_truths::table
        .filter(label_truths::id.eq_any(&lots))
        .select((label_truths::id, label_truths::claims_id))
        .load::<(i32, i32)>(tx.conn)?
        .into_iter()
        .collect();
    let pairs = lots.iter().copied().zip(kept);
    let other = pairs.filter(|(lot, text)| known.get(lot) != Some(text));
    let other: Vec<TruthRow> = other
        .map(|(id, claims_id)| TruthRow { id, claims_id })
        .collect();
    let gone: Vec<i32> = other.iter().map(|row| row.id).collect();
    let gone: Vec<i32> = gone
        .into_iter()
        .filter(|id| known.contains_key(id))
        .collect();
    if !gone.is_empty() {
        diesel::delete(label_truths::table.filter(label_truths::id.eq_any(&gone)))
            .execute(tx.conn)?;
    }
    insert_rows!(tx.conn, label_truths::table, &other);
    Ok(!gone.is_empty())
}

#[derive(Debug, Insertable)]
#[diesel(table_name = label_truths, treat_none_as_default_value = false)]
struct TruthRow {
    id: i32,
    claims_id: i32,
}

/// Judges the labels of all packs of some lots anew, from a moment on.
pub fn of_lots(tx: &mut Tx<'_>, lots: &[i32], at: NaiveDateTime) -> Result<()> {
    let all: Vec<i32> = prints::table
        .filter(prints::lot_id.eq_any(lots))
        .select(prints::pack_id)
        .distinct()
        .order(prints::pack_id)
        .load(tx.conn)?;
    of_packs(tx, &all, at)
}

/// The pack of a print, its lot locked.
pub(crate) fn lock_pack(tx: &mut Tx<'_>, print: i32) -> Result<i32> {
    let (lot, pack): (i32, i32) = prints::table
        .find(print)
        .select((prints::lot_id, prints::pack_id))
        .get_result(tx.conn)?;
    crate::lots::lock_keys(tx, &[lot])?;
    Ok(pack)
}

/// How many keys one statement asks for.
const KEYS_AT_ONCE: usize = 10_000;

/// How many packs are judged at a time.
pub(crate) const AT_ONCE: usize = 500;

/// Judges the labels of packs anew, from a moment on.
pub fn of_packs(tx: &mut Tx<'_>, all: &[i32], at: NaiveDateTime) -> Result<()> {
    for some in all.chunks(AT_ONCE) {
        let judged = judge(tx.conn, some)?;
        if judged.packs.is_empty() {
            continue;
        }
        let had: Vec<WrongLabelRow> = wrong_labels::table
            .filter(wrong_labels::id.eq_any(some))
            .select(WrongLabelRow::as_select())
            .load(tx.conn)?;
        let had: HashMap<i32, &WrongLabelRow> = had.iter().map(|row| (row.id, row)).collect();
        let mut rows: Vec<WrongLabelRow> = Vec::new();
        let mut gone: Vec<i32> = Vec::new();
        for pack in &judged.packs {
            let known = had.get(&pack.id);
            match &pack.wrong {
                Some((print, untrue)) => {
                    let same = known.filter(|had| (had.print_id, &had.untrue) == (*print, untrue));
                    if same.is_none() {
                        gone.extend(known.map(|had| had.id));
                        rows.push(WrongLabelRow {
                            id: pack.id,
                            lot_id: pack.lot,
                            print_id: *print,
                            untrue: untrue.clone(),
                            since: known.map_or(at, |had| had.since.min(at)),
                        });
                    }
                }
                None => gone.extend(known.map(|had| had.id)),
            }
        }
        diesel::delete(wrong_labels::table.filter(wrong_labels::id.eq_any(gone)))
            .execute(tx.conn)?;
        on_each!(&mut *tx.conn, c => diesel::insert_into(wrong_labels::table).values(&rows).execute(c)?);
        // Only lots so noted are looked up by a scan. It is noted as soon as a label that may still come
        // out would be wrong: a printer that brings it out later changes no lot.
        let noted = judged.packs.iter().filter(|pack| pack.look);
        let noted: Vec<i32> = noted.map(|pack| pack.lot).collect();
        let unnoted = lots::id.eq_any(noted).and(lots::stopped.eq(false));
        diesel::update(lots::table.filter(unnoted))
            .set(lots::stopped.eq(true))
            .execute(tx.conn)?;
    }
    Ok(())
}

/// What was found of some packs: those that were ever printed.
pub(crate) struct Judged {
    pub(crate) packs: Vec<JudgedPack>,
}

pub(crate) struct JudgedPack {
    pub(crate) id: i32,
    lot: i32,
    /// The print that is wrong, and in what, as it is kept.
    pub(crate) wrong: Option<(i32, String)>,
    /// Is there anything for a scan to look for?
    look: bool,
}

pub(crate) fn judge(conn: &mut Conn, some: &[i32]) -> Result<Judged> {
    // A label that was refused, cancelled or spoilt is on no pack. The newest first.
    let counts: Vec<&str> = PrintState::ALL
        .iter()
        .filter(|state| state.counts())
        .map(|state| state.as_str())
        .collect();
    let printed: Vec<(PrintRow, String)> = prints::table
        .inner_join(print_runs::table.on(print_runs::id.eq(prints::id)))
        .filter(
            prints::pack_id
                .eq_any(some)
                .and(prints::claims_id.is_not_null()),
        )
        .filter(print_runs::state.eq_any(counts))
        .order((prints::pack_id, prints::id.desc()))
        .select((PrintRow::as_select(), print_runs::state))
        .load(conn)?;
    let mut judged = Judged { packs: Vec::new() };
    if printed.is_empty() {
        return Ok(judged);
    }
    let mut texts: Vec<i32> = printed
        .iter()
        .filter_map(|(row, _)| row.claims_id)
        .collect();
    texts.sort_unstable();
    texts.dedup();
    let texts: Vec<(i32, String)> = kept_texts::table
        .filter(kept_texts::id.eq_any(texts))
        .select((kept_texts::id, kept_texts::text))
        .load(conn)?;
    let texts: Result<HashMap<i32, Claims>> = texts
        .into_iter()
        .map(|(id, text)| Ok((id, claims(id, &text)?)))
        .collect();
    let texts = texts?;
    let mut lots: Vec<i32> = printed.iter().map(|(row, _)| row.lot_id).collect();
    lots.dedup();
    let truths = truths(conn, &lots)?;
    let mut of_pack: BTreeMap<i32, Vec<(PrintRow, PrintState)>> = BTreeMap::new();
    for (row, state) in printed {
        let state = PrintState::parse(&state)
            .ok_or_else(|| Error::bad_row("print_runs", row.id, "unknown state"))?;
        of_pack.entry(row.pack_id).or_default().push((row, state));
    }
    let keys: Vec<i32> = of_pack.keys().copied().collect();
    for pack in crate::packs::by_keys(conn, &keys)? {
        let of = of_pack.remove(&pack.id).unwrap_or_default();
        judged.packs.push(judge_pack(&pack, &of, &texts, &truths)?);
    }
    Ok(judged)
}

/// What is wrong with a pack's label. It bears the last one that came out, or one that perhaps came out
/// after it: of these none may be wrong. `of` has the newest first.
fn judge_pack(
    pack: &PackRow,
    of: &[(PrintRow, PrintState)],
    texts: &HashMap<i32, Claims>,
    truths: &HashMap<i32, Claims>,
) -> Result<JudgedPack> {
    let mut judged = JudgedPack {
        id: pack.id,
        lot: pack.lot_id,
        wrong: None,
        look: false,
    };
    let being = Being::parse(&pack.being)
        .ok_or_else(|| Error::bad_row("packs", pack.id, "unknown being"))?;
    // Of a lot that was voided the label says something else than what is there, whatever it says.
    if being == Being::Void {
        return Ok(judged);
    }
    let now = TrueNow {
        use_by: pack.use_by,
        left: matches!(being, Being::OnHand | Being::Open)
            .then(|| Grams::from_milligrams(pack.left_mg)),
        claims: truths.get(&pack.lot_id),
    };
    for (print, state) in of {
        let Some(claims) = print.claims_id.and_then(|id| texts.get(&id)) else {
            continue;
        };
        if claims.beside {
            continue;
        }
        let label = PrintedLabel {
            use_by: print.use_by,
            net: print.net_mg.map(Grams::from_milligrams),
            claims: claims.clone(),
        };
        let wrong = untrue(&label, now);
        judged.look |= !wrong.is_empty();
        let out = matches!(state, PrintState::Printed | PrintState::Unsure);
        if out && !wrong.is_empty() && judged.wrong.is_none() {
            judged.wrong = Some((print.id, kept_untrue(&wrong)));
        }
        if *state == PrintState::Printed {
            break;
        }
    }
    Ok(judged)
}

fn kept_untrue(all: &[Untrue]) -> String {
    let one = |untrue: &Untrue| {
        json!({
            "about": untrue.about.as_str(),
            "printed": said::write(&untrue.printed),
            "now": said::write(&untrue.now),
        })
    };
    Value::from(all.iter().map(one).collect::<Vec<_>>()).to_string()
}
