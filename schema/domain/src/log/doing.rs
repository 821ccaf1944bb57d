//! What is known of a deed that stands in a log.

use crate::grams::Grams;
use crate::heat::Bath;
use crate::lot::{DeedId, LotId, PlaceId};
use crate::measure::Temperature;
use crate::plan::Reason;
use crate::quantity::Quantity;
use crate::stop::Cause;
use crate::words::{Account, Addition, DeedKind, Disposal};
use chrono::{DateTime, NaiveDate, Utc};
use rust_decimal::Decimal;

/// A deed, with everything that it wrote down.
#[derive(Debug, Clone)]
pub struct Doing {
    /// Its key.
    pub deed: DeedId,
    /// Its id.
    pub uid: Vec<u8>,
    /// What it was.
    pub kind: DeedKind,
    /// When it ended.
    pub at: DateTime<Utc>,
    /// When it began, where that was told.
    pub began_at: Option<DateTime<Utc>>,
    /// The kitchen's day of it.
    pub day: NaiveDate,
    /// Entered later than it happened: then when.
    pub entered: Option<DateTime<Utc>>,
    /// Who.
    pub by: String,
    /// Where.
    pub place: Option<PlaceId>,
    /// A word about it.
    pub note: Option<String>,
    /// The lots that it made.
    pub made: Vec<LotId>,
    /// What it drew on, changed or noted.
    pub drew: Vec<Drawn>,
    /// What instruments showed.
    pub read: Vec<Read>,
    /// The points of its log, the earliest first.
    pub points: Vec<CorePoint>,
    /// Why what it made is as it is.
    pub reasons: Vec<(LotId, Reason)>,
    /// The stops that it placed, those that were inherited left out.
    pub stops: Vec<(LotId, Cause)>,
    /// The stops that it ended.
    pub ended: Vec<Ended>,
    /// What was added without a lot of its own.
    pub added: Vec<(Addition, Grams)>,
    /// What it lost, of a step.
    pub loss: Option<Grams>,
    /// What it told in words of its own.
    pub told: Told,
    /// The deed that it voids or corrects.
    pub upon: Option<Upon>,
    /// What a check of a probe showed.
    pub probe: Option<ProbeShown>,
    /// What voided it.
    pub undone: Option<UndoneBy>,
    /// What corrected it.
    pub corrected: Vec<CorrectedBy>,
}

impl Doing {
    /// What it was, when, and by whom; nothing else is known of it yet.
    pub fn bare(
        deed: DeedId,
        kind: DeedKind,
        at: DateTime<Utc>,
        day: NaiveDate,
        by: String,
    ) -> Doing {
        Doing {
            deed,
            uid: Vec::new(),
            kind,
            at,
            began_at: None,
            day,
            entered: None,
            by,
            place: None,
            note: None,
            made: Vec::new(),
            drew: Vec::new(),
            read: Vec::new(),
            points: Vec::new(),
            reasons: Vec::new(),
            stops: Vec::new(),
            ended: Vec::new(),
            added: Vec::new(),
            loss: None,
            told: Told::default(),
            upon: None,
            probe: None,
            undone: None,
            corrected: Vec::new(),
        }
    }
}

/// Something that a deed did with a pack.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Drawn {
    /// The lot.
    pub lot: LotId,
    /// The pack's number.
    pub pack: u32,
    /// Where the grams went.
    pub account: Account,
    /// How much.
    pub grams: Grams,
}

/// A reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Read {
    /// Of which lot, if of one.
    pub lot: Option<LotId>,
    /// What was measured.
    pub quantity: Quantity,
    /// In millionths of its unit.
    pub millionths: i64,
    /// The probe's code.
    pub probe: Option<String>,
}

impl Read {
    /// The temperature of food or a place, if it is one.
    pub fn temperature(&self) -> Option<Temperature> {
        match self.quantity {
            Quantity::Celsius => Some(Temperature::celsius(self.figure())),
            Quantity::Fahrenheit => Some(Temperature::fahrenheit(self.figure())),
            _ => None,
        }
    }

    /// The figure in its unit.
    pub fn figure(&self) -> Decimal {
        Decimal::new(self.millionths, 6).normalize()
    }
}

/// A point of a log of temperatures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CorePoint {
    /// When.
    pub at: DateTime<Utc>,
    /// How warm.
    pub read: Temperature,
    /// The probe's code.
    pub probe: Option<String>,
}

/// What a deed told in fields that the record keeps as they were asked.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Told {
    /// To whom, or from whom it came back.
    pub to: Option<String>,
    /// Why.
    pub why: Option<String>,
    /// The paper.
    pub document: Option<String>,
    /// Who saw it.
    pub witness: Option<String>,
    /// How it was disposed of.
    pub disposal: Option<Disposal>,
    /// The row that a cook was held against.
    pub heat_standard: Option<String>,
    /// The way to cool that was chosen.
    pub cooling_plan: Option<String>,
    /// What spoke for pork that is eaten uncooked.
    pub treated: Vec<TreatedAs>,
}

/// What was told against trichinae.
#[derive(Debug, Clone, PartialEq)]
pub enum TreatedAs {
    /// It was frozen.
    Frozen {
        /// The warmest that it was.
        read: Temperature,
        /// For how many hours.
        hours: u32,
        /// How thick it is, in millimetres.
        thickness: Option<Decimal>,
    },
    /// It was heated.
    Heated {
        /// The core.
        read: Temperature,
        /// For how many minutes.
        minutes: Decimal,
    },
    /// It was cured and dried by a method.
    Dried {
        /// Which.
        method: String,
        /// The casing, in millimetres.
        casing: Option<Decimal>,
    },
    /// A paper says that it needs nothing.
    Certificate {
        /// Which way.
        way: String,
        /// The paper.
        paper: String,
    },
}

/// A stop that ended.
#[derive(Debug, Clone, PartialEq)]
pub struct Ended {
    /// Of which lot.
    pub lot: LotId,
    /// Why it had stood.
    pub cause: Cause,
    /// How it ended.
    pub how: Disposal,
}

/// The deed that another voids or corrects.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Upon {
    /// What it was.
    pub kind: DeedKind,
    /// When.
    pub at: DateTime<Utc>,
    /// Who.
    pub by: String,
    /// The lots that it made or touched.
    pub lots: Vec<LotId>,
}

/// What a probe showed in its bath.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProbeShown {
    /// The probe's code.
    pub probe: String,
    /// In what.
    pub bath: Bath,
    /// What it showed.
    pub read: Temperature,
}

/// What voided a deed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UndoneBy {
    /// Who.
    pub by: String,
    /// When.
    pub at: DateTime<Utc>,
    /// Why.
    pub why: String,
}

/// What corrected a deed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CorrectedBy {
    /// Who.
    pub by: String,
    /// When.
    pub at: DateTime<Utc>,
}

impl Doing {
    /// The lots that it made, else those that it touched or read, each once.
    pub fn lots(&self) -> Vec<LotId> {
        let mut lots = self.made.clone();
        if lots.is_empty() {
            lots.extend(self.drew.iter().map(|drawn| drawn.lot));
            lots.extend(self.read.iter().filter_map(|read| read.lot));
            lots.extend(self.stops.iter().map(|(lot, _)| *lot));
            lots.extend(self.ended.iter().map(|ended| ended.lot));
            lots.extend(self.reasons.iter().map(|(lot, _)| *lot));
            lots.extend(self.upon.iter().flat_map(|upon| upon.lots.iter().copied()));
        }
        let mut seen = std::collections::BTreeSet::new();
        lots.retain(|lot| seen.insert(*lot));
        lots
    }

    /// What went into it, lot by lot.
    pub fn used(&self) -> Vec<(LotId, Grams)> {
        let mut used: Vec<(LotId, Grams)> = Vec::new();
        for drawn in self.drew.iter().filter(|of| of.account == Account::Used) {
            match used.iter_mut().find(|(lot, _)| *lot == drawn.lot) {
                Some((_, grams)) => *grams += drawn.grams,
                None => used.push((drawn.lot, drawn.grams)),
            }
        }
        used
    }

    /// What was read of a quantity, the last.
    pub fn last(&self, quantity: Quantity) -> Option<Decimal> {
        let mut of = self.read.iter().rev();
        of.find(|read| read.quantity == quantity).map(Read::figure)
    }

    /// The temperatures that were read once, not in a log.
    pub fn temperatures(&self) -> Vec<Temperature> {
        self.read.iter().filter_map(Read::temperature).collect()
    }

    /// The codes of the probes that were read, each once.
    pub fn probes(&self) -> Vec<&str> {
        let readings = self.read.iter().filter_map(|read| read.probe.as_deref());
        let points = self
            .points
            .iter()
            .filter_map(|point| point.probe.as_deref());
        let mut probes: Vec<&str> = readings.chain(points).collect();
        probes.sort_unstable();
        probes.dedup();
        probes
    }
}
