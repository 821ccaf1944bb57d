//! Walking the whole record past the domain's checker.

use crate::conn::Conn;
use crate::error::Result;
use crate::lots::LotRow;
use crate::on_each;
use crate::packs::PackRow;
use crate::tables::{answers, deeds, lots, pack_events, sources, voids};
use crate::voids::live_events;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Integer};
use domain::audit::{self, AuditFinding, StoredPack};
use domain::dates::Later;
use domain::grams::Grams;
use domain::lot::LotId;
use domain::origin::Origin;
use domain::words::{Account, Allergen, Being, DeedKind};
use std::collections::{BTreeSet, HashMap, HashSet};

/// Lots or deeds read at a time.
const CHUNK: i64 = 500;

/// What the walk saw.
#[derive(Debug, Default)]
pub struct Report {
    /// How many deeds.
    pub deeds: u64,
    /// How many lots.
    pub lots: u64,
    /// How many packs.
    pub packs: u64,
    /// Everything that is not as it must be.
    pub findings: Vec<AuditFinding>,
}

/// Reads the whole record. `later` says what can change the dates of a lot's packs after its birth. Where it is so
/// damaged that something does not read, that is the last finding: what was found before stands.
pub fn run(conn: &mut Conn, later: impl FnMut(&mut Conn, &LotRow) -> Result<Later>) -> Report {
    let mut report = Report::default();
    if let Err(error) = walk(conn, later, &mut report) {
        let finding = AuditFinding::new("the record", error.to_string());
        report.findings.push(finding);
    }
    report
}

fn walk(
    conn: &mut Conn,
    mut later: impl FnMut(&mut Conn, &LotRow) -> Result<Later>,
    report: &mut Report,
) -> Result<()> {
    let voided: HashSet<i32> = voids::table
        .select(voids::deed_id)
        .load(conn)?
        .into_iter()
        .collect();
    report.findings.extend(crate::print_audit::check(conn)?);
    report.findings.extend(crate::paper_audit::check(conn)?);
    check_deeds(conn, report)?;
    check_steps(conn, report)?;
    let mut origins: HashMap<i32, (Origin, i32)> = HashMap::new();
    let mut allergens: HashMap<i32, BothSorts> = HashMap::new();
    let mut last = 0;
    loop {
        let rows: Vec<LotRow> = lots::table
            .filter(lots::id.gt(last))
            .order(lots::id)
            .limit(CHUNK)
            .select(LotRow::as_select())
            .load(conn)?;
        let Some(end) = rows.last() else { break };
        last = end.id;
        for row in &rows {
            origins.insert(row.id, (row.origin()?, row.deed_id));
            allergens.insert(row.id, (row.allergens()?, row.may_contain()?));
        }
        check_lots(conn, &rows, &voided, &mut later, report)?;
    }
    check_family(conn, &origins, &allergens, &voided, report)?;
    report.findings.extend(crate::series_audit::check(conn)?);
    check_stops(conn, report)?;
    report.findings.extend(crate::condition_audit::check(conn)?);
    report
        .findings
        .extend(crate::wrong_label_audit::check(conn)?);
    Ok(())
}

/// A lot is marked where its condition changed or its label was wrong, and each stop reads.
fn check_stops(conn: &mut Conn, report: &mut Report) -> Result<()> {
    let wrong = crate::stops::checked::wrongly_marked(conn)?;
    let what =
        "is marked as stopped and nothing is there to look for, or has changed and is not marked";
    let wrong = wrong.iter();
    let found = wrong.map(|lot| AuditFinding::new(format!("lot {lot}"), what));
    report.findings.extend(found);
    for stop in crate::stops::checked::astray(conn)? {
        let what = "is of a deed, or on a lot, that is not there";
        let finding = AuditFinding::new(format!("stop {stop}"), what);
        report.findings.push(finding);
    }
    let stopped = crate::stops::stopped_lots(conn)?;
    crate::stops::of_lots(conn, &stopped)?;
    for (deed, lot) in crate::stops::checked::passed_unflagged(conn)? {
        let says = format!("passed a stop on lot {lot} and carries no flag");
        let finding = AuditFinding::new(format!("deed {deed}"), says);
        report.findings.push(finding);
    }
    for (incident, what) in crate::incidents::faults(conn)? {
        let finding = AuditFinding::new(format!("deed {incident}"), what);
        report.findings.push(finding);
    }
    Ok(())
}

fn check_deeds(conn: &mut Conn, report: &mut Report) -> Result<()> {
    report.deeds = deeds::table.count().get_result::<i64>(conn)?.unsigned_abs();
    let unanswered: Vec<i32> = deeds::table
        .left_join(answers::table.on(answers::id.eq(deeds::id)))
        .filter(answers::id.is_null())
        .select(deeds::id)
        .load(conn)?;
    report.findings.extend(
        unanswered
            .iter()
            .map(|deed| AuditFinding::new(format!("deed {deed}"), "was never answered")),
    );
    let void_of_void: Vec<i32> = voids::table
        .inner_join(deeds::table.on(deeds::id.eq(voids::deed_id)))
        .filter(deeds::kind.eq(DeedKind::Void.as_str()))
        .select(voids::id)
        .load(conn)?;
    report.findings.extend(
        void_of_void
            .iter()
            .map(|deed| AuditFinding::new(format!("deed {deed}"), "voids a void")),
    );
    Ok(())
}

#[derive(QueryableByName)]
struct StepSums {
    #[diesel(sql_type = Integer)]
    id: i32,
    #[diesel(sql_type = BigInt)]
    loss_mg: i64,
    #[diesel(sql_type = BigInt)]
    used: i64,
    #[diesel(sql_type = BigInt)]
    added: i64,
    #[diesel(sql_type = BigInt)]
    made: i64,
    #[diesel(sql_type = BigInt)]
    too_early: i64,
}

/// Conservation, and that nothing was used before it was made.
fn check_steps(conn: &mut Conn, report: &mut Report) -> Result<()> {
    let mut last = 0;
    loop {
        let sql = "SELECT steps.id, steps.loss_mg,
                CAST((SELECT COALESCE(SUM(mg), 0) FROM pack_events WHERE deed_id = steps.id AND account = 'used') AS BIGINT) AS used,
                CAST((SELECT COALESCE(SUM(mg), 0) FROM additions WHERE deed_id = steps.id) AS BIGINT) AS added,
                CAST((SELECT COALESCE(SUM(made_mg), 0) FROM lots WHERE deed_id = steps.id) AS BIGINT) AS made,
                (SELECT COUNT(*) FROM pack_events JOIN lots ON lots.id = pack_events.lot_id JOIN deeds ON deeds.id = steps.id
                    WHERE pack_events.deed_id = steps.id AND lots.made_at > deeds.at) AS too_early
            FROM steps WHERE steps.id > $1 ORDER BY steps.id LIMIT 500";
        let rows: Vec<StepSums> =
            on_each!(&mut *conn, c => sql_query(sql).bind::<Integer, _>(last).load(c)?);
        let Some(end) = rows.last() else {
            return Ok(());
        };
        last = end.id;
        for row in &rows {
            let about = format!("deed {}", row.id);
            let grams = Grams::from_milligrams;
            let finding = audit::step_balances(
                &about,
                grams(row.used),
                grams(row.added),
                grams(row.made),
                grams(row.loss_mg),
            );
            report.findings.extend(finding);
            if row.too_early > 0 {
                report
                    .findings
                    .push(AuditFinding::new(&about, "uses a lot before it was made"));
            }
        }
    }
}

fn check_lots(
    conn: &mut Conn,
    rows: &[LotRow],
    voided: &HashSet<i32>,
    later: &mut impl FnMut(&mut Conn, &LotRow) -> Result<Later>,
    report: &mut Report,
) -> Result<()> {
    let keys: Vec<i32> = rows.iter().map(|row| row.id).collect();
    let mut packs_of: HashMap<i32, Vec<PackRow>> = HashMap::new();
    for pack in crate::packs::of_lots(conn, &keys)? {
        packs_of.entry(pack.lot_id).or_default().push(pack);
    }
    let mut events_of: HashMap<i32, Vec<crate::voids::LiveEvent>> = HashMap::new();
    for event in live_events(conn, &keys)? {
        events_of.entry(event.row.lot_id).or_default().push(event);
    }
    for row in rows {
        report.lots += 1;
        report
            .findings
            .extend(audit::code_is_well_formed(&row.code));
        let (packs, events) = (
            packs_of.remove(&row.id).unwrap_or_default(),
            events_of.remove(&row.id).unwrap_or_default(),
        );
        report.packs += packs.len() as u64;
        let mut say = |says: &str| report.findings.push(AuditFinding::new(&row.code, says));
        if packs.iter().map(|pack| pack.made_mg).sum::<i64>() != row.made_mg {
            say("its packs do not sum to the lot");
        }
        if !packs.iter().map(|pack| pack.number).eq(1..=row.pack_count) {
            say("its packs are not numbered from 1");
        }
        if row.voided != voided.contains(&row.deed_id) {
            say("is voided and its deed is not, or the other way round");
        }
        if row.voided {
            if row.on_hand_mg != 0
                || packs
                    .iter()
                    .any(|pack| pack.being != Being::Void.as_str() || pack.left_mg != 0)
            {
                say("was voided and still holds something");
            }
            continue;
        }
        let rule = later(conn, row)?;
        let code = row
            .code()
            .map_or_else(|_| row.code.clone(), |code| code.shown());
        for pack in &packs {
            let of_pack = events
                .iter()
                .filter(|event| event.row.pack_id == pack.id)
                .map(|event| event.event());
            let stored = pack.pack()?;
            report.findings.extend(audit::pack_agrees(&StoredPack {
                shown: format!("{code}/{}", stored.number),
                born: row.born(stored.made)?,
                made: stored.made,
                later: rule,
                events: of_pack.collect::<Result<_>>()?,
                now: stored.now,
            }));
        }
        let all: Result<Vec<_>> = events.iter().map(|event| event.event()).collect();
        let (made, on_hand) = (
            Grams::from_milligrams(row.made_mg),
            Grams::from_milligrams(row.on_hand_mg),
        );
        report.findings.extend(audit::lot_reconciles(
            &row.code,
            made,
            on_hand,
            &row.totals(),
            &audit::totals(all?.into_iter()),
        ));
        if packs.iter().map(|pack| pack.left_mg).sum::<i64>() != row.on_hand_mg {
            report.findings.push(AuditFinding::new(
                &row.code,
                "its packs do not hold what the lot has on hand",
            ));
        }
        if row.sold_packs as usize != events.iter().filter(|event| event.row.whole_pack).count() {
            report.findings.push(AuditFinding::new(
                &row.code,
                "the packs sold do not count up",
            ));
        }
    }
    Ok(())
}

/// The allergens of a lot, and those that it may contain.
type BothSorts = (BTreeSet<Allergen>, BTreeSet<Allergen>);

/// No cycle, every lot reaches its sources, and each is of what its parts are of.
fn check_family(
    conn: &mut Conn,
    lots: &HashMap<i32, (Origin, i32)>,
    allergens: &HashMap<i32, BothSorts>,
    voided: &HashSet<i32>,
    report: &mut Report,
) -> Result<()> {
    let uses: Vec<(i32, i32)> = pack_events::table
        .filter(pack_events::account.eq(Account::Used.as_str()))
        .select((pack_events::deed_id, pack_events::lot_id))
        .load(conn)?;
    let mut parts: HashMap<i32, Vec<LotId>> = HashMap::new();
    for (deed, lot) in uses {
        parts.entry(deed).or_default().push(LotId(lot));
    }
    let received: HashSet<i32> = sources::table
        .filter(sources::is_current.eq(true))
        .select(sources::lot_id)
        .load(conn)?
        .into_iter()
        .collect();
    let made_of: HashMap<LotId, Vec<LotId>> = lots
        .iter()
        .map(|(lot, (_, deed))| (LotId(*lot), parts.get(deed).cloned().unwrap_or_default()))
        .collect();
    for lot in audit::cycle(&made_of) {
        report.findings.push(AuditFinding::new(
            format!("lot {}", lot.0),
            "came of itself",
        ));
    }
    for (lot, (origin, deed)) in lots {
        let parts = &made_of[&LotId(*lot)];
        if voided.contains(deed) {
            continue;
        }
        // What is in a part is in what is made of it, also where that was corrected since.
        let (has, may_have) = &allergens[lot];
        if let Some(gone) = parts.iter().find(|part| !lots.contains_key(&part.0)) {
            let says = format!("was made of lot {}, which is not on record", gone.0);
            let finding = AuditFinding::new(format!("lot {lot}"), says);
            report.findings.push(finding);
            continue;
        }
        let mut of_parts = parts.iter().map(|part| &allergens[&part.0]);
        let known = |(_, may): &BothSorts| {
            may.iter()
                .all(|of| has.contains(of) || may_have.contains(of))
        };
        let says = match () {
            () if of_parts.clone().any(|(of, _)| !of.is_subset(has)) => {
                Some("lacks an allergen of what went into it")
            }
            () if !of_parts.all(known) => {
                Some("lacks an allergen that what went into it may contain")
            }
            () => None,
        };
        if let Some(says) = says {
            let finding = AuditFinding::new(format!("lot {lot}"), says);
            report.findings.push(finding);
        }
        match (parts.is_empty(), received.contains(lot)) {
            (true, false) => report
                .findings
                .push(AuditFinding::new(format!("lot {lot}"), "has no source")),
            (false, true) => report.findings.push(AuditFinding::new(
                format!("lot {lot}"),
                "was received and made",
            )),
            (true, true) => {}
            (false, false) => {
                let of_parts = parts.iter().fold(Origin::NoSpecies, |origin, part| {
                    origin.with(lots[&part.0].0)
                });
                if of_parts != *origin {
                    report.findings.push(AuditFinding::new(
                        format!("lot {lot}"),
                        format!("is of {origin:?}, its parts of {of_parts:?}"),
                    ));
                }
            }
        }
    }
    Ok(())
}
