//! What a step says of its heat: temperatures, logs, a pot that boiled; and which products it is about.

use super::degrees;
use super::facts::Facts;
use super::pierced::Found;
use crate::error::Result;
use crate::wire::Number;
use crate::wire::asked::StepAsked;
use crate::wire::cures::decimal;
use chrono::TimeDelta;
use domain::condition::natural;
use domain::grams::Grams;
use domain::heat::{
    self, Cook, CookSays, Cooled, Food, HeatRecord, HeatVerdict, Heated, Judgement, Log, Pierced,
    PiercedBy,
};
use domain::lot::Lot;
use domain::measure::Percent;
use domain::moment::on_clock;
use domain::product::Product;
use domain::refusal::Refusal;
use domain::rows::{Finding, RowId};
use domain::says::Texts;
use domain::words::{Addition, Natural, ProductKind, Quantity, Species, State, StepKind};
use rust_decimal::Decimal;
use std::collections::BTreeSet;
use std::sync::Arc;

/// What a step says of its heat.
pub(super) struct HeatAsked<'a> {
    pub(super) asked: &'a StepAsked,
    pub(super) kind: StepKind,
    pub(super) lots: &'a [Lot],
    pub(super) products: &'a [Arc<Product>],
    /// What of the meat was ground, pumped or stuffed, where a product claims that none was or the cook says so.
    pub(super) found: Found,
}

impl HeatAsked<'_> {
    /// Was it cooked to be ready, and is that to be shown?
    pub(super) fn is_a_cook(&self) -> bool {
        let claims = self.products.iter().any(|of| claims(of));
        let heats = matches!(
            self.kind,
            StepKind::Cook | StepKind::Smoke | StepKind::Render
        );
        let named = self.asked.heat_standard.is_some() || self.boiled().is_some();
        heats && claims || named || self.warms() && self.has_core()
    }

    /// Is it a step that warms whatever goes in?
    fn warms(&self) -> bool {
        matches!(self.kind, StepKind::Cook | StepKind::Render)
    }

    /// Was the core measured?
    fn has_core(&self) -> bool {
        let readings = self.asked.readings.as_ref();
        let core = readings.is_some_and(|of| of.celsius.is_some() || of.fahrenheit.is_some());
        core || self.asked.log.is_some()
    }

    /// Is any of it said to be ready to eat?
    pub(super) fn claims_ready(&self) -> bool {
        self.products.iter().any(|of| !of.raw)
    }

    /// The products whose cook is judged, each once. What is listed as raw is, too: meat that was warmed is raw no
    /// more, and half cooked unless the heat was enough. Waste is nobody's food.
    pub(super) fn judged(&self) -> Vec<&Product> {
        let mut seen = BTreeSet::new();
        let each = self.products.iter().map(Arc::as_ref);
        let is_food = |of: &&Product| claims(of) || of.kind != ProductKind::Waste;
        let each = each.filter(is_food);
        each.filter(|of| seen.insert(of.code.as_str())).collect()
    }

    /// Does nothing break a limit where this was not cooked through: claims it neither heat nor to be ready, and
    /// is the cook held to no rule by its own words?
    pub(super) fn asks_nothing_of(&self, product: &Product) -> bool {
        let mut products = self.products.iter();
        let others = products.any(|of| claims(of));
        let named = self.asked.heat_standard.is_some() || self.boiled().is_some();
        !claims(product) && (others || !named)
    }

    /// Is anything measured that may prove it?
    pub(super) fn is_measured(&self) -> bool {
        let measured = self.asked.log.is_some() || self.asked.readings.is_some();
        measured && self.is_a_cook()
    }

    /// Does it claim to be whole muscle or a roast, or is it said to be stuffed?
    pub(super) fn may_be_pierced(&self) -> bool {
        let mut judged = self.products.iter();
        let whole = |of: &Arc<Product>| matches!(of.cooked_as, Some(Food::Intact | Food::Roast));
        judged.any(whole) || self.asked.stuffed == Some(true)
    }

    /// The whole piece that went in, if one did: a carcass always, a cut or a piece of offal where nothing
    /// liquid went in with it. What comes out as stock is what ran out of it, where as much liquid went in as is
    /// half of what came out; without, the list's word makes no stock of a piece (common practice, no source).
    fn piece(&self, product: &Product) -> Option<Texts> {
        use domain::words::ProductKind::*;
        let added = self.asked.added.iter().flatten();
        let added = added.filter(|of| of.what.0 != Addition::ScaleDifference);
        let added: Grams = added.map(|of| of.grams.0).sum();
        let is_water = |lot: &Lot| natural(&lot.product) == Some(Natural::Water);
        let mut lots = self.lots.iter();
        let poured = lots.any(|lot| lot.product.kind == Stock || is_water(lot));
        let out: Grams = self.asked.outputs.iter().map(|of| of.grams.0).sum();
        if product.kind == Stock && (poured || added + added >= out) {
            return None;
        }
        // In a pot a filling is as far from the water as the middle of any piece.
        let is_stuffed = self.asked.stuffed == Some(true);
        let liquid = (added > Grams::ZERO || poured) && !is_stuffed;
        let raw = self.lots.iter().filter(|lot| !lot.condition().is_ready());
        let mut whole = raw.filter(|lot| match lot.product.kind {
            Carcass => true,
            Cut | Offal | Cured => !liquid && !lot.species.is_empty(),
            _ => false,
        });
        whole.next().map(|lot| lot.product.named())
    }

    /// What is bladed as its own product says, whatever it came from.
    fn bladed(&self, product: &Product) -> Option<Pierced> {
        let is_bladed = product.standard.tenderised == Some(true);
        let lot = self.lots.iter().find(|lot| !lot.species.is_empty())?;
        is_bladed.then(|| Pierced {
            by: PiercedBy::Bladed,
            lot: lot.code.clone(),
            product: product.named(),
        })
    }

    /// Is anything in it not ready yet?
    pub(super) fn has_raw(&self) -> bool {
        self.lots.iter().any(|lot| !lot.condition().is_ready())
    }

    /// May what went in not stand warm for hours? What was cured comes up as slowly as its smoke.
    pub(super) fn may_not_stand_warm(&self) -> bool {
        let is_cured = |lot: &Lot| lot.product.kind == domain::words::ProductKind::Cured;
        self.has_raw() && !self.lots.iter().any(is_cured)
    }

    /// May a falling log be one of a cooling?
    pub(super) fn cools(&self) -> bool {
        self.kind == StepKind::Chill
            || self.asked.cooling_plan.is_some()
            || self.products.iter().any(|of| of.cooked_as.is_some())
    }

    /// Did it come out of the heat, and is it kept cold?
    pub(super) fn has_to_cool(&self) -> bool {
        let was_hot = |product: &Product| {
            use domain::words::ProductKind::*;
            let by_kind = matches!(product.kind, Cooked | Stock) && !product.raw;
            (product.cooked_as.is_some() || by_kind) && product.is_controlled()
        };
        match self.kind {
            StepKind::Chill => {
                let mut lots = self.lots.iter();
                lots.any(|lot| was_hot(&lot.product))
            }
            StepKind::Cook | StepKind::Smoke => {
                let mut made = self.products.iter().zip(&self.asked.outputs);
                made.any(|(product, output)| {
                    let state = output.state.map_or(product.storage, |state| state.0);
                    was_hot(product) && matches!(state, State::Chilled | State::Frozen)
                })
            }
            _ => false,
        }
    }

    /// How long a pot boiled: the longest that was entered.
    fn boiled(&self) -> Option<TimeDelta> {
        let readings = self.asked.readings.as_ref();
        let told = readings.and_then(|readings| readings.boiled_minutes);
        self.boiled_in_log().max(told.map(minutes))
    }

    /// How long it boiled by its log: a point of its own, which no reading before it speaks against.
    fn boiled_in_log(&self) -> Option<TimeDelta> {
        let of_log = self.asked.log.iter().flatten();
        let of_log = of_log.filter_map(|reading| reading.boiled_minutes);
        of_log.map(minutes).max()
    }

    /// The verdict on the cook, and the field that it is about; nothing where nothing was measured.
    pub(super) fn cooked(
        &self,
        facts: &Facts<'_, '_>,
        product: &Product,
        log: Option<&Log>,
    ) -> Result<Option<(HeatVerdict, String)>> {
        let law = facts.law();
        let readings = self.asked.readings.as_ref();
        let core = readings
            .map(|of| {
                degrees::temperature(of.celsius, of.fahrenheit, degrees::KITCHEN, "readings.")
            })
            .transpose()?
            .flatten();
        let held = readings.and_then(|readings| readings.hold_minutes);
        let held = held.map_or(TimeDelta::zero(), minutes);
        // What was over before all of it was there proves nothing.
        let there = self.there(facts);
        let part_of = |told: TimeDelta| {
            let there = there.as_ref();
            there.map_or(told, |there| there.part_of(told, facts.moment.at))
        };
        let seen = log.and_then(|log| match &there {
            Some(there) => there.of_log(log),
            None => Some(log.clone()),
        });
        let (boiled, boiled_in_log) = (self.boiled(), self.boiled_in_log());
        let is_cut = part_of(held) < held
            || boiled.is_some_and(|told| part_of(told) < told)
            || log.map(Log::first) != seen.as_ref().map(Log::first);
        let (held, boiled) = (part_of(held), boiled.map(part_of));
        let log = seen.as_ref();
        let (record, field) = match (log, core, boiled) {
            (Some(log), ..) => (HeatRecord::Logged(log), "log".to_owned()),
            (None, Some(core), _) => {
                let field = format!("readings.{}", degrees::field_of(core));
                (HeatRecord::Held(Cook { core, held }), field)
            }
            (None, None, Some(boiled)) => {
                let field = "readings.boiled_minutes".to_owned();
                (HeatRecord::Boiled(boiled), field)
            }
            (None, None, None) => return Ok(None),
        };
        let of_place = law.heat.code_year.as_ref().map(|(year, _)| *year);
        let code_year = facts.kitchen.entry.code_year.or(of_place);
        let species: BTreeSet<Species> = self
            .lots
            .iter()
            .flat_map(|lot| lot.species.iter().copied())
            .collect();
        let chosen = self.asked.heat_standard.as_ref();
        let chosen = chosen.map(|row| RowId::new(&row.0));
        let piece = self.piece(product);
        let pierced = self.found.pierced.clone();
        let pierced = pierced.or_else(|| self.bladed(product));
        let heated = Heated {
            record,
            food: product.cooked_as,
            species: &species,
            fat: self.asked.fat_percent.map(|fat| Percent::new(decimal(fat))),
            code_year: code_year.unwrap_or_default(),
            chosen: chosen.as_ref(),
            pierced: pierced.as_ref(),
            piece: piece.as_ref(),
            unknown: { self.found.unknown.as_ref() }.map(|(lot, product)| (lot, product)),
            is_approved: { &facts.kitchen }
                .approval("cooking", facts.moment.day)
                .is_some(),
        };
        let verdict = heat::prove(&heated, &law.heat, &law.rows);
        let verdict = verdict.map_err(|refusal| named(refusal, &field))?;
        if let (None, true, Some(boiled)) = (&verdict.proof, log.is_some(), boiled_in_log) {
            let record = HeatRecord::Boiled(part_of(boiled));
            let by_boil = heat::prove(&Heated { record, ..heated }, &law.heat, &law.rows);
            let by_boil = by_boil.map_err(|refusal| named(refusal, &field))?;
            if by_boil.proof.is_some() {
                return Ok(Some((by_boil, field)));
            }
        }
        let around = self.found.around.clone();
        let around = around.map(|(lot, product)| {
            let says = CookSays::NotStuffed { product, lot };
            Finding::note(says, [])
        });
        let came = there.filter(|_| is_cut);
        let came = came.and_then(|there| {
            let (lot, came) = (there.lot?, on_clock(there.at, facts.kitchen.zone));
            Some(Finding::note(CookSays::BeforeItCame { lot, came }, []))
        });
        let measured = (log, core.is_some(), held, boiled);
        let typed = { verdict.proof.as_ref() }.and_then(|_| self.typed_later(facts, measured));
        let judgement = verdict.judgement.with(around).with(came).with(typed);
        Ok(Some((
            HeatVerdict {
                judgement,
                ..verdict
            },
            field,
        )))
    }

    pub(super) fn cooled(&self, facts: &mut Facts<'_, '_>, log: &Log) -> Result<Option<Judgement>> {
        use domain::words::ProductKind::*;
        let law = facts.law();
        let of_lots = self.lots.iter().map(|lot| lot.product.kind);
        let is_cooked = self.kind != StepKind::Chill || { of_lots }
            .any(|kind| matches!(kind, Cooked | Stock | Rendered));
        let cooled = Cooled {
            log,
            nitrite_ppm: self.nitrite(facts)?,
            is_cooked,
            is_approved: facts
                .kitchen
                .approval("cooling", facts.moment.day)
                .is_some(),
        };
        let chosen = self.asked.cooling_plan.as_ref().map(|plan| plan.0.as_str());
        heat::cooled_by(&cooled, chosen, &law.heat, &law.rows).map_err(|refusal| {
            let field = refusal.field.as_deref();
            let field = match field {
                Some("plan") => "cooling_plan".to_owned(),
                field => format!("log.{}", field.unwrap_or_default()),
            };
            Refusal {
                field: Some(field),
                ..refusal
            }
            .into()
        })
    }

    /// The least nitrite that went into what is cooled; nothing where one of them has none on record.
    fn nitrite(&self, facts: &mut Facts<'_, '_>) -> Result<Option<Decimal>> {
        let mut least: Option<Decimal> = None;
        for lot in self.lots.iter().filter(|lot| !lot.species.is_empty()) {
            let read = facts.readings(lot.id)?;
            let of_cure = read.iter().rev();
            let mut of_cure = of_cure.filter(|(_, of, _)| *of == Quantity::NitritePpm);
            let Some((_, _, millionths)) = of_cure.next() else {
                return Ok(None);
            };
            let ppm = Decimal::new(*millionths, 6);
            least = Some(least.map_or(ppm, |least| least.min(ppm)));
        }
        Ok(least)
    }
}

pub(super) fn minutes(Number(millionths): Number) -> TimeDelta {
    TimeDelta::milliseconds(millionths.saturating_mul(60) / 1_000)
}

/// The refusal with the field as the caller wrote it.
fn named(refusal: Refusal, core: &str) -> Refusal {
    let field = match refusal.field.as_deref() {
        Some("held") => "readings.hold_minutes",
        Some("boiled") => "readings.boiled_minutes",
        Some("standard") => "heat_standard",
        Some("fat_percent") => "fat_percent",
        _ => core,
    };
    Refusal {
        field: Some(field.to_owned()),
        ..refusal
    }
}

/// Does it claim to be cooked, or ready to eat?
fn claims(product: &Product) -> bool {
    product.cooked_as.is_some() || !product.raw
}
