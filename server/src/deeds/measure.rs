//! Readings of a lot or a place; one with grams sets a one-pack lot's weight.

use super::facts::{Facts, clash};
use super::receive::has_other_parts;
use super::says::MeasureSays;
use super::{DeedHeader, Done, degrees, found_warm, perform, place, probe, residual, stable};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::cures::decimal;
use crate::wire::readings::{ReadingAsked, ReadingsAsked, Salometer, SalometerScale};
use crate::wire::{Code, Number, Weight};
use domain::code::LotCode;
use domain::condition::Condition;
use domain::cure;
use domain::deed::{draw, weigh};
use domain::heat;
use domain::lot::Lot;
use domain::measure::{Percent, Temperature};
use domain::plan::{Plan, Reason};
use domain::refusal::Refusal;
use domain::says::Says;
use domain::words::{DeedKind, Quantity, State, Topic};
use std::collections::BTreeSet;
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
        let mut readings = Readings(Vec::new());
        let Some(asked) = asked else {
            return Ok(readings);
        };
        readings.degrees(asked.celsius, asked.fahrenheit, field)?;
        let minutes = [
            (Quantity::HoldMinutes, asked.hold_minutes, "hold_minutes"),
            (
                Quantity::BoiledMinutes,
                asked.boiled_minutes,
                "boiled_minutes",
            ),
        ];
        for (quantity, value, name) in minutes {
            readings.plain(
                quantity,
                value,
                (0, MOST_MINUTES),
                &format!("{field}{name}"),
            )?;
        }
        readings.rest(
            asked.ph,
            asked.water_activity,
            asked.salometer.as_ref(),
            field,
        )?;
        Ok(readings)
    }

    /// The readings of a lot or a place.
    ///
    /// # Errors
    /// 422 where a reading cannot be.
    pub fn of_lot(asked: &ReadingAsked) -> Result<Readings> {
        let mut readings = Readings(Vec::new());
        readings.degrees(asked.celsius, asked.fahrenheit, "")?;
        readings.rest(asked.ph, asked.water_activity, asked.salometer.as_ref(), "")?;
        for (quantity, found, name) in residual::found(asked) {
            readings.plain(quantity, found, (0, residual::MOST_PPM), name)?;
        }
        Ok(readings)
    }

    /// Each of them.
    pub fn all(self) -> Vec<Measurement> {
        self.0
    }

    fn degrees(
        &mut self,
        celsius: Option<Number>,
        fahrenheit: Option<Number>,
        field: &str,
    ) -> Result<()> {
        let read = degrees::temperature(celsius, fahrenheit, degrees::KITCHEN, field)?;
        let of = |read| degrees::kept(read, Quantity::Celsius, Quantity::Fahrenheit);
        self.0.extend(read.map(of));
        Ok(())
    }

    /// A number, with what an instrument in a kitchen can show; the bounds are plain sense, no law's.
    fn plain(
        &mut self,
        quantity: Quantity,
        value: Option<Number>,
        (least, most): (i64, i64),
        field: &str,
    ) -> Result<()> {
        let Some(Number(millionths)) = value else {
            return Ok(());
        };
        if millionths < least * 1_000_000 || millionths > most * 1_000_000 {
            let says = match quantity {
                Quantity::WaterActivity => MeasureSays::BetweenParts { least, most },
                _ => MeasureSays::Between { least, most },
            };
            return Err(Error::cannot_be(field, says));
        }
        self.0.push(Measurement {
            quantity,
            millionths,
        });
        Ok(())
    }

    fn rest(
        &mut self,
        ph: Option<Number>,
        aw: Option<Number>,
        brine: Option<&Salometer>,
        field: &str,
    ) -> Result<()> {
        self.plain(Quantity::Ph, ph, (0, 14), &format!("{field}ph"))?;
        let name = format!("{field}water_activity");
        self.plain(Quantity::WaterActivity, aw, (0, 1), &name)?;
        let Some(brine) = brine else {
            return Ok(());
        };
        let quantity = match brine.scale {
            SalometerScale::Sixty => Quantity::Salometer60F,
            SalometerScale::ThirtyEight => Quantity::Salometer38F,
        };
        let name = format!("{field}salometer.degrees");
        self.plain(quantity, Some(brine.degrees), (0, 100), &name)?;
        let (celsius, fahrenheit) = (brine.celsius, brine.fahrenheit);
        let name = format!("{field}salometer.");
        let read = degrees::temperature(celsius, fahrenheit, degrees::BRINE, &name)?;
        let of = |read| degrees::kept(read, Quantity::BrineCelsius, Quantity::BrineFahrenheit);
        self.0.extend(read.map(of));
        Ok(())
    }
}

/// A weight, as it is kept.
pub fn weighed(Weight(grams): Weight) -> Measurement {
    Measurement {
        quantity: Quantity::Grams,
        millionths: grams.milligrams().saturating_mul(1_000),
    }
}

/// A week: no pot stands longer.
const MOST_MINUTES: i64 = 7 * 24 * 60;

/// Keeps the readings of a deed.
///
/// # Errors
/// The database is away or full.
pub fn keep(
    facts: &mut Facts<'_, '_>,
    readings: &Readings,
    lot: Option<i32>,
    probe: Option<i32>,
) -> Result<()> {
    let place = facts.place.map(|place| place.0);
    let (tx, deed) = (&mut *facts.tx, facts.deed);
    measurements::insert_with(tx, deed, lot, place, &readings.0, probe)?;
    Ok(())
}

/// The probe of a reading, and what speaks against it.
///
/// # Errors
/// 422 where it is not in the list.
pub fn probe_of(
    facts: &mut Facts<'_, '_>,
    probe: Option<&Code>,
    field: &str,
) -> Result<(Option<i32>, Vec<Says>)> {
    let named: Vec<_> = probe
        .map(|probe| (probe, field.to_owned()))
        .into_iter()
        .collect();
    let (keys, said) = probe::named(facts, &named)?;
    Ok((keys.first().copied(), said))
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
    let now = condition.and_read(stable.as_ref());
    if now != condition {
        plan.conditions.push((lot.id, now));
        let links = stable.into_iter().map(|stable| stable.because);
        let links = Reason::all(Topic::Condition, links).into_iter();
        plan.reasons.extend(links.map(|link| (lot.id, link)));
    }
    Ok(())
}

/// What the law of the place says of the temperature at which a lot is held: a word, never a refusal.
pub(super) fn held_right(facts: &Facts<'_, '_>, read: Temperature, lot: &Lot) -> Result<Vec<Says>> {
    let law = facts.law();
    let seasoned = has_other_parts(facts, &lot.product);
    let states: BTreeSet<State> = lot.on_hand().map(|pack| pack.now.state).collect();
    let mut said = Vec::new();
    for state in states {
        let class = heat::class_kept(&lot.product, lot.condition(), state, seasoned);
        let Some(class) = class else { continue };
        let found = heat::kept(class, read, &law.heat, &law.rows).map_err(|refusal| Refusal {
            field: Some(degrees::field_of(read).to_owned()),
            ..refusal
        })?;
        let findings: Vec<Says> = { found.iter() }
            .map(|finding| finding.with_sources(&law.rows))
            .collect();
        if !findings.is_empty() {
            let (lot, product) = (lot.code.clone(), lot.product.named());
            said.push(
                MeasureSays::HeldWrong {
                    product,
                    lot,
                    findings,
                }
                .into(),
            );
        }
    }
    Ok(said)
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
    let mut readings = Readings::of_lot(asked)?;
    if asked.lot.is_none() && asked.place.is_none() {
        return Err(Error::cannot_be("lot", MeasureSays::OfWhat));
    }
    if readings.0.is_empty() && asked.grams.is_none() {
        return Err(Error::cannot_be("celsius", MeasureSays::Empty));
    }
    readings.0.extend(asked.grams.map(weighed));
    perform(app, header, asked, |facts| {
        let (probe, against) = probe_of(facts, asked.probe.as_ref(), "probe")?;
        let Some(text) = &asked.lot else {
            if asked.grams.is_some() {
                return Err(Error::cannot_be("grams", MeasureSays::PlaceNotWeighed));
            }
            keep(facts, &readings, None, probe)?;
            let (celsius, fahrenheit) = (asked.celsius, asked.fahrenheit);
            let read = degrees::temperature(celsius, fahrenheit, degrees::KITCHEN, "")?;
            let of_place = match (read, &asked.place) {
                (Some(read), Some(of)) => place::beyond(facts, &of.0, read)?,
                _ => Vec::new(),
            };
            let plan = match (read, &asked.place) {
                (Some(_), Some(of)) => found_warm::of_place(facts, &of.0)?,
                _ => Plan::default(),
            };
            let mut done = facts.record(asked.id.0.to_string(), DeedKind::Measure, &plan)?;
            done.said.extend(against);
            done.said.extend(of_place);
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
        keep(facts, &readings, Some(lot.id.0), probe)?;
        if let Some(condition) = lot.condition
            && (asked.ph.is_some() || asked.water_activity.is_some())
        {
            shown_stable(facts, &lot, condition, &mut plan)?;
        }
        residual::judge(facts, &lot, asked, &mut plan)?;
        let (celsius, fahrenheit) = (asked.celsius, asked.fahrenheit);
        let read = degrees::temperature(celsius, fahrenheit, degrees::KITCHEN, "")?;
        if let Some(read) = read {
            found_warm::judge(facts, &lot, read, &mut plan)?;
        }
        let mut done = facts.record(asked.id.0.to_string(), DeedKind::Measure, &plan)?;
        done.said.extend(against);
        done.said.extend(brine(facts, asked.salometer.as_ref())?);
        if let Some(read) = read {
            done.said.extend(held_right(facts, read, &lot)?);
        }
        done.lost_grams = plan.changes.first().map(|change| Weight(change.grams));
        Ok(done)
    })
}
