//! Readings of a lot or a place; one with grams sets a one-pack lot's weight.

use super::facts::{Facts, clash};
use super::says::MeasureSays;
use super::{DeedHeader, Done, perform, stable};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::asked::{ReadingAsked, ReadingsAsked, Salometer, SalometerScale};
use crate::wire::cures::decimal;
use crate::wire::{Number, Weight};
use domain::code::LotCode;
use domain::condition::Condition;
use domain::cure;
use domain::deed::{draw, weigh};
use domain::lot::Lot;
use domain::measure::Percent;
use domain::plan::{Plan, Reason};
use domain::says::Says;
use domain::words::{DeedKind, Quantity, StableBy, Topic};
use store::measurements::{self, Measurement};
use store::packs::PackChoice;

/// Readings, checked.
pub struct Readings(Vec<Measurement>);

impl Readings {
    /// The readings of a deed that takes them along.
    ///
    /// # Errors
    /// 422 where a reading cannot be.
    pub fn of(asked: Option<&ReadingsAsked>, field: &str) -> Result<Readings> {
        let Some(asked) = asked else {
            return Ok(Readings(Vec::new()));
        };
        read(
            asked.celsius,
            asked.ph,
            asked.water_activity,
            asked.salometer.as_ref(),
            field,
        )
    }
}

/// Each quantity with what an instrument in a kitchen can show; the bounds are plain sense, no law's.
fn read(
    celsius: Option<Number>,
    ph: Option<Number>,
    aw: Option<Number>,
    brine: Option<&Salometer>,
    field: &str,
) -> Result<Readings> {
    let plain = |least, most| MeasureSays::Between { least, most };
    let celsius_is = |least, most| MeasureSays::BetweenCelsius { least, most };
    let parts = |least, most| MeasureSays::BetweenParts { least, most };
    let mut readings = Vec::new();
    let mut within = |quantity: Quantity,
                      name: &str,
                      value: Option<Number>,
                      least: i64,
                      most: i64,
                      says: fn(i64, i64) -> MeasureSays| {
        let Some(Number(millionths)) = value else {
            return Ok(());
        };
        if millionths < least * 1_000_000 || millionths > most * 1_000_000 {
            return Err(Error::cannot_be(
                format!("{field}{name}"),
                says(least, most),
            ));
        }
        readings.push(Measurement {
            quantity,
            millionths,
        });
        Ok(())
    };
    within(Quantity::Celsius, "celsius", celsius, -90, 350, celsius_is)?;
    within(Quantity::Ph, "ph", ph, 0, 14, plain)?;
    within(Quantity::WaterActivity, "water_activity", aw, 0, 1, parts)?;
    if let Some(brine) = brine {
        let quantity = match brine.scale {
            SalometerScale::Sixty => Quantity::Salometer60F,
            SalometerScale::ThirtyEight => Quantity::Salometer38F,
        };
        within(
            quantity,
            "salometer.degrees",
            Some(brine.degrees),
            0,
            100,
            plain,
        )?;
        within(
            Quantity::BrineCelsius,
            "salometer.celsius",
            brine.celsius,
            -25,
            110,
            celsius_is,
        )?;
    }
    Ok(Readings(readings))
}

/// Keeps the readings of a deed.
///
/// # Errors
/// The database is away or full.
pub fn keep(facts: &mut Facts<'_, '_>, readings: &Readings, lot: Option<i32>) -> Result<()> {
    let place = facts.place.map(|place| place.0);
    Ok(measurements::insert(
        facts.tx,
        facts.deed,
        lot,
        place,
        &readings.0,
    )?)
}

/// Keeps numbers of each lot that a deed made.
///
/// # Errors
/// The database is away or full.
pub fn keep_of_each(
    facts: &mut Facts<'_, '_>,
    numbers: &[Measurement],
    codes: &[LotCode],
) -> Result<()> {
    for code in codes {
        if let Some(lot) = store::lots::by_code(facts.tx.conn, code)? {
            measurements::insert(facts.tx, facts.deed, Some(lot.id), None, numbers)?;
        }
    }
    Ok(())
}

/// What a salometer's degrees mean, and whether its scale misleads.
fn brine(facts: &Facts<'_, '_>, salometer: Option<&Salometer>) -> Result<Vec<Says>> {
    let Some(salometer) = salometer else {
        return Ok(Vec::new());
    };
    let scale = match salometer.scale {
        SalometerScale::Sixty => cure::Salometer::At60F,
        SalometerScale::ThirtyEight => cure::Salometer::At38F,
    };
    let rules = &facts.law().cures;
    let read = cure::read_salometer(decimal(salometer.degrees), scale, rules)
        .map_err(|refusal| refusal.within("salometer."))?;
    let found = read.findings.into_iter().map(|finding| finding.says);
    let salt = Percent::new(read.percent.number().round_dp(2));
    let says = MeasureSays::Brine { salt }.into();
    Ok(std::iter::once(says).chain(found).collect())
}

/// What readings show of a lot, and no longer show, is what it is from now on.
fn shown_stable(
    facts: &mut Facts<'_, '_>,
    lot: &Lot,
    condition: Condition,
    plan: &mut Plan,
) -> Result<()> {
    let stable = stable::by_last_readings(facts, lot)?;
    let by = match condition.stable {
        None | Some(StableBy::Readings) => stable.as_ref().map(|stable| stable.by),
        known => known,
    };
    if by != condition.stable {
        plan.conditions.push((lot.id, condition.and_stable(by)));
        let links = stable.into_iter().map(|stable| stable.because);
        let links = Reason::all(Topic::Condition, links).into_iter();
        plan.reasons.extend(links.map(|link| (lot.id, link)));
    }
    Ok(())
}

/// Records a reading.
///
/// # Errors
/// Whatever the contract refuses of a reading.
pub fn take(app: &Caller<'_>, asked: &ReadingAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Measure,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: asked.place.as_ref(),
        note: asked.note.as_ref(),
    };
    let mut readings = read(
        asked.celsius,
        asked.ph,
        asked.water_activity,
        asked.salometer.as_ref(),
        "",
    )?;
    if asked.lot.is_none() && asked.place.is_none() {
        return Err(Error::cannot_be("lot", MeasureSays::OfWhat));
    }
    if readings.0.is_empty() && asked.grams.is_none() {
        return Err(Error::cannot_be("celsius", MeasureSays::Empty));
    }
    if let Some(Weight(grams)) = asked.grams {
        readings.0.push(Measurement {
            quantity: Quantity::Grams,
            millionths: grams.milligrams().saturating_mul(1_000),
        });
    }
    perform(app, header, asked, |facts| {
        let Some(text) = &asked.lot else {
            if asked.grams.is_some() {
                return Err(Error::cannot_be("grams", MeasureSays::PlaceNotWeighed));
            }
            keep(facts, &readings, None)?;
            let mut done =
                facts.record(asked.id.0.to_string(), DeedKind::Measure, &Plan::default())?;
            done.said.extend(brine(facts, asked.salometer.as_ref())?);
            return Ok(done);
        };
        let named = facts.named(&text.0, "lot")?;
        let lot = facts.lot(&named.code, PackChoice::OnHand)?;
        draw::not_voided(&lot, "lot")?;
        facts
            .moment
            .not_before(lot.made_at, &lot.code, facts.kitchen.zone)?;
        let mut plan = match asked.grams {
            Some(Weight(grams)) => weigh::plan(&lot, grams, &facts.moment, facts.kitchen.zone)?,
            None => Plan::default(),
        };
        if asked.grams.is_none() && lot.on_hand().next().is_none() {
            let lot = lot.code.clone();
            return Err(clash("lot", MeasureSays::NothingLeft { lot }));
        }
        keep(facts, &readings, Some(lot.id.0))?;
        if let Some(condition) = lot.condition
            && (asked.ph.is_some() || asked.water_activity.is_some())
        {
            shown_stable(facts, &lot, condition, &mut plan)?;
        }
        let mut done = facts.record(asked.id.0.to_string(), DeedKind::Measure, &plan)?;
        done.said.extend(brine(facts, asked.salometer.as_ref())?);
        done.lost_grams = plan.changes.first().map(|change| Weight(change.grams));
        Ok(done)
    })
}
