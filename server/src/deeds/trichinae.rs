//! Pork that is eaten without cooking: the treatment or paper that makes it safe, given at its release.

use super::degrees::{KITCHEN, field_of, temperature};
use super::facts::Facts;
use super::says::TrichinaeDeedSays;
use super::{trichinae_claimed, trichinae_record};
use crate::error::{Error, Result};
use crate::lists::List;
use crate::read::trace;
use crate::wire::Number;
use crate::wire::cures::{TrichinaeAsked, decimal};
use crate::wire::lists::FarmEntry;
use crate::wire::says::ValueSays;
use chrono::{NaiveDate, TimeDelta};
use domain::dates::{Because, Rule};
use domain::heat::Answer;
use domain::lot::Lot;
use domain::measure::{Percent, Temperature};
use domain::refusal::Refusal;
use domain::says::{Arg, Says};
use domain::stop::Cause;
use domain::trichinae::{
    self, Freezing, Heating, Length, MeasuredAt, MethodSays, Proof, StageOnRecord, Treatment, Way,
};
use domain::words::{Species, Topic};
use std::collections::BTreeSet;
use store::entries;
use store::lots::LotRow;

/// What speaks for a piece, as links of the chain of its release; nothing for what no species in it
/// brings trichinae to, or what is cooked before it is eaten.
///
/// # Errors
/// 422 where nothing does, or the treatment given is not enough: with what is missing.
pub fn proof(
    facts: &mut Facts<'_, '_>,
    asked: Option<&TrichinaeAsked>,
    lot: &Lot,
    row: &LotRow,
) -> Result<Vec<Because>> {
    if !lot.species.iter().any(|of| of.may_carry_trichinae()) {
        return Ok(Vec::new());
    }
    let mut on_record: Option<Says> = None;
    let told = match asked {
        Some(asked) => {
            let mut told = proofs(asked)?;
            if let Some(dried) = &asked.dried {
                let (process, stages) = trichinae_record::process(facts, dried, row)?;
                let salt = process.salting.dry.unwrap_or(Percent::new(0));
                let stages = stages.iter().map(StageOnRecord::says).collect();
                on_record = Some(MethodSays::OnRecord { salt, stages }.into());
                told.push(Proof::Treated(Treatment::Cured(Box::new(process))));
            }
            told
        }
        None if lot.product.raw => vec![Proof::NormallyCooked],
        None => certified(facts, row)?,
    };
    if told.is_empty() {
        let of = lot.species.iter().filter(|of| of.may_carry_trichinae());
        let species: Vec<Arg> = of.map(|species| Arg::from(*species)).collect();
        let (lot, species) = (lot.code.clone(), Arg::All(species));
        let detail = TrichinaeDeedSays::NothingSpeaks { lot, species };
        return Err(Error::cannot_be("trichinae", detail));
    }
    let law = facts.law();
    let wild = &law.trichinae.tested_species;
    let wild = wild.iter().any(|species| lot.species.contains(species));
    let tested = |proof: &Proof| {
        let way = Way::CarcassTested;
        matches!(proof, Proof::Certified { way: of, .. } if *of == way)
    };
    if let (true, false, Some(row)) = (
        wild && !lot.product.raw,
        told.iter().any(tested),
        &law.trichinae.tested_only,
    ) {
        let source = law.rows.source(row);
        let lot = lot.code.clone();
        let detail = TrichinaeDeedSays::TestedOnly { lot, source };
        return Err(Error::cannot_be("trichinae", detail));
    }
    let mut chain = Vec::new();
    let dead_for = dead_for(facts, row)?;
    for proof in &told {
        trichinae::can_be(proof, &lot.species, dead_for)
            .map_err(|refusal| named(refusal, proof))?;
        let judged = trichinae::check(proof, &law.trichinae, &law.rows)
            .map_err(|refusal| named(refusal, proof))?;
        let links = judged.findings.iter().map(Because::finding);
        if judged.answer == Answer::Short {
            let findings = judged.findings.iter();
            let findings = findings.map(|finding| finding.with_sources(&law.rows));
            // What the record showed stands beside what is missing.
            let findings = findings.chain(on_record.clone()).collect();
            return Err(Error::cannot_be(
                "trichinae",
                TrichinaeDeedSays::Short { findings },
            ));
        }
        chain.extend(links);
    }
    trichinae_claimed::stands(facts, &told, row)?;
    chain.extend(on_record.map(|says| Because::house(says, TrichinaeDeedSays::RecordRule)));
    Ok(chain)
}

/// Was something cooked of meat for which only the test of its carcass speaks? What is said of it, and the stop
/// that it is where somebody has read the row. Of what was ready before that was asked when it became so.
pub fn untested(facts: &Facts<'_, '_>, lots: &[Lot]) -> Option<(Says, Option<Cause>)> {
    let law = facts.law();
    let row = law.trichinae.tested_only.as_ref()?;
    let of = |lot: &Lot| {
        let mut tested = law.trichinae.tested_species.iter();
        let species = tested.find(|species| lot.species.contains(*species))?;
        Some((lot.code.clone(), *species))
    };
    let mut raw = lots.iter().filter(|lot| !lot.condition().is_ready());
    let (lot, species) = raw.find_map(of)?;
    let source = law.rows.source(row);
    if !law.rows.is_confirmed(row) {
        let says = TrichinaeDeedSays::UntestedUnread {
            lot,
            species,
            source,
        };
        return Some((says.into(), None));
    }
    let says = Says::from(TrichinaeDeedSays::Untested {
        lot,
        species,
        source,
    });
    let rule = Rule::Rows(vec![row.clone()]);
    let because = Because {
        says: says.clone(),
        rule,
    };
    let cause = Cause::failed(Topic::Proof, because, facts.moment.at);
    Some((says, Some(cause)))
}

/// Does a stop stand on a lot that only the test of a carcass ends?
pub fn waits_for_test(facts: &Facts<'_, '_>, lot: &Lot) -> bool {
    let row = facts.law().trichinae.tested_only.as_ref();
    row.is_some_and(|row| {
        let mut stops = lot.stops.iter();
        stops.any(|placed| {
            placed.stands(facts.moment.at) && placed.cause.because.rows().contains(row)
        })
    })
}

/// The refusal with the field as the caller wrote it.
pub(super) fn named(refusal: Refusal, proof: &Proof) -> Refusal {
    let within = match proof {
        Proof::NormallyCooked => "trichinae",
        Proof::Certified { .. } => "trichinae.certificate",
        Proof::Treated(Treatment::Heated(_)) => "trichinae.heated",
        Proof::Treated(Treatment::Cured(_)) => "trichinae.dried",
        Proof::Treated(_) => "trichinae.frozen",
    };
    let field = match refusal.field.as_deref() {
        Some("casing") => "casing_mm",
        Some("piece") => "piece_mm",
        Some("mass") => "mass_mm",
        Some("heaviest") => "heaviest_grams",
        _ if within == "trichinae.dried" => "method",
        Some("thickness") => "thickness_mm",
        Some("held") if within == "trichinae.heated" => "minutes",
        Some("held") => "hours",
        Some("paper") => "paper",
        Some("way") => "way",
        _ => scale_of(proof),
    };
    Refusal {
        field: Some(format!("{within}.{field}")),
        ..refusal
    }
}

/// The field of its temperature.
fn scale_of(proof: &Proof) -> &'static str {
    match proof {
        Proof::Treated(Treatment::Frozen(Freezing { at, .. })) => field_of(*at),
        Proof::Treated(Treatment::Heated(Heating { core, .. })) => field_of(*core),
        _ => "celsius",
    }
}

/// For how long the animal that was killed last has been dead, in days begun: nothing where no
/// animal of it is known.
fn dead_for(facts: &mut Facts<'_, '_>, row: &LotRow) -> Result<Option<TimeDelta>> {
    let origins = trace::origins(facts.app, facts.tx.conn, row)?;
    let last = origins.animals.iter().map(|of| of.animal.killed_on).max();
    let days = |killed: NaiveDate| (facts.moment.day - killed).num_days() + 1;
    Ok(last.map(|killed| TimeDelta::days(days(killed))))
}

/// What shows that no trichinae are in the raw meat that goes into a step, for what is approved to be eaten raw:
/// the certificates of the farms that it is all from. Nothing where one part has none, or is no domestic pig.
///
/// # Errors
/// The database is away.
pub fn freed(facts: &mut Facts<'_, '_>, lots: &[Lot]) -> Result<Option<Vec<Because>>> {
    let mut chain = Vec::new();
    for lot in lots {
        let carries = lot.species.iter().any(|of| of.may_carry_trichinae());
        if !carries || lot.condition().is_ready() {
            continue;
        }
        let Some(row) = store::lots::by_code(facts.tx.conn, &lot.code)? else {
            return Ok(None);
        };
        let proofs = certified(facts, &row)?;
        let law = facts.law();
        for proof in &proofs {
            let judged = trichinae::can_be(proof, &lot.species, None)
                .and_then(|()| trichinae::check(proof, &law.trichinae, &law.rows));
            match judged {
                Ok(judged) if judged.is_enough() => {
                    chain.extend(judged.findings.iter().map(Because::finding));
                }
                _ => return Ok(None),
            }
        }
        if proofs.is_empty() {
            return Ok(None);
        }
    }
    Ok(Some(chain))
}

/// The certificates of the farms that all its pigs are from; none where one has none, or where some of its meat is of
/// no animal on record.
fn certified(facts: &mut Facts<'_, '_>, row: &LotRow) -> Result<Vec<Proof>> {
    let origins = trace::origins(facts.app, facts.tx.conn, row)?;
    // Of one part nobody knows the farm: the papers of the others say nothing of it.
    if !origins.untraced.is_empty() {
        return Ok(Vec::new());
    }
    let pigs = origins
        .animals
        .iter()
        .filter(|of| of.animal.species == Species::Pig);
    let farms: BTreeSet<&str> = pigs.map(|of| of.animal.farm.as_str()).collect();
    let mut proofs = Vec::new();
    for farm in farms {
        let entry = entries::get(facts.tx.conn, List::Farms.as_str(), farm)?;
        let farm: Option<FarmEntry> = entry.and_then(|row| serde_json::from_str(&row.body).ok());
        match farm.and_then(|farm| farm.trichinae_certificate) {
            Some(paper) => proofs.push(Proof::Certified {
                way: Way::NegligibleRiskHerd,
                paper: paper.0,
            }),
            None => return Ok(Vec::new()),
        }
    }
    Ok(proofs)
}

/// A temperature on either scale; one must be told.
fn degrees(
    celsius: Option<Number>,
    fahrenheit: Option<Number>,
    field: &str,
) -> Result<Temperature> {
    let told = temperature(celsius, fahrenheit, KITCHEN, field)?;
    told.ok_or_else(|| {
        let says = TrichinaeDeedSays::NoDegrees;
        Error::cannot_be(format!("{field}celsius"), says)
    })
}

fn proofs(asked: &TrichinaeAsked) -> Result<Vec<Proof>> {
    let mut proofs = Vec::new();
    if let Some(frozen) = &asked.frozen {
        proofs.push(Proof::Treated(Treatment::Frozen(Freezing {
            measured: match frozen.in_the_meat.unwrap_or(false) {
                true => MeasuredAt::Centre,
                false => MeasuredAt::Room,
            },
            at: degrees(frozen.celsius, frozen.fahrenheit, "trichinae.frozen.")?,
            held: TimeDelta::minutes(i64::from(frozen.hours) * 60),
            thickness: frozen
                .thickness_mm
                .map(|mm| Length::millimetres(decimal(mm))),
            meat_at_start: None,
        })));
    }
    if let Some(heated) = &asked.heated {
        proofs.push(Proof::Treated(Treatment::Heated(Heating {
            core: degrees(heated.celsius, heated.fahrenheit, "trichinae.heated.")?,
            held: Some(TimeDelta::seconds(
                decimal(heated.minutes)
                    .try_into()
                    .map_or(0, |minutes: i64| minutes * 60),
            )),
            come_up: None,
            is_cured: true,
            thickness: None,
            chilled_after: None,
        })));
    }
    if let Some(certificate) = &asked.certificate {
        let way = Way::ALL
            .iter()
            .find(|way| way.as_str() == certificate.way.0);
        let way = way.ok_or_else(|| {
            let known: Vec<&str> = Way::ALL.iter().map(|way| way.as_str()).collect();
            let detail = ValueSays::NoneOf {
                text: certificate.way.0.clone(),
                words: known.join(", "),
            };
            Error::cannot_be("trichinae.certificate.way", detail)
        })?;
        proofs.push(Proof::Certified {
            way: *way,
            paper: certificate.paper.0.clone(),
        });
    }
    Ok(proofs)
}
