//! The one place where stops are asked.

use super::{Cause, NewStop, Placed, Stop, StopSays, made_ahead, on};
use crate::dates::{Because, Rule};
use crate::deed::draw::Draw;
use crate::lot::{Lot, LotId, Pack};
use crate::moment::Moment;
use crate::plan::Reason;
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::says::Says;
use crate::words::{StopKind, Topic};
use chrono::{DateTime, NaiveDate, Utc};

/// What is to be done with a pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Act {
    /// Something is made of it.
    Use {
        /// Does a cured piece go on in its cure, or is it cooked?
        cure_goes_on: bool,
        /// What the step puts right: it proves what was missing.
        puts_right: Option<Topic>,
        /// Is all that is made of it waste again?
        to_waste: bool,
    },
    /// It is sold, served or shipped.
    Leave {
        /// Does its label go with it, to somebody who reads it? What is served leaves its label here.
        labelled: bool,
    },
    /// It is put out for sale.
    Counter,
    /// It gets a label for a customer.
    Label,
}

impl Act {
    /// Does a stop stand in its way?
    pub fn is_blocked_by(self, stop: StopKind, topic: Topic) -> bool {
        use StopKind::*;
        match (self, stop) {
            (_, Voided | Held) => true,
            (Act::Counter, _) => false,
            // In the kitchen the record is asked, not the label; a new label is how it ends.
            (act, WrongLabel) => act == Act::Leave { labelled: true },
            (Act::Use { puts_right, .. }, Failed | UnknownHistory) => puts_right != Some(topic),
            (Act::Use { cure_goes_on, .. }, NotReleased) => !cure_goes_on,
            (Act::Use { to_waste, .. }, Waste) => !to_waste,
            // What is made of it needs its own proof: its condition follows from that of its parts. How warm
            // they stood does not show in it.
            (Act::Use { .. }, NotProven) => topic == Topic::Cold,
            // It goes on in its cure, and what is made of it waits as well.
            (Act::Use { .. }, NotConfirmed) => false,
            _ => true,
        }
    }
}

/// What was done although a stop stood: it goes on record, and stays flagged.
#[derive(Debug, Default)]
pub struct Passed {
    /// For the one who did it.
    pub warnings: Vec<Says>,
    /// The flag, on each lot that was drawn on.
    pub reasons: Vec<(LotId, Reason)>,
    /// What is made of it inherits these.
    pub inherited: Vec<NewStop>,
}

/// Asks the stops of everything that is drawn on, at the deed's own moment. `field` names where a
/// draw stands in the request.
///
/// # Errors
/// A stop stands in the way of the act, and the deed is not recorded as it happened.
pub fn ask(
    draws: &[Draw<'_>],
    act: Act,
    moment: &Moment,
    as_it_happened: bool,
    field: impl Fn(&Draw<'_>) -> String,
) -> Result<Passed> {
    let mut passed = Passed::default();
    for draw in draws {
        let mut stops = on(draw.lot, Some(draw.pack), moment.at, moment.day);
        stops.extend(made_ahead(draw.lot, moment.recorded_at));
        stops.retain(|stop| act.is_blocked_by(stop.kind, stop.topic));
        for stop in stops {
            let pack = draw.lot.shown(draw.pack.number);
            if !as_it_happened {
                return Err(refused(pack, &stop, field(draw)));
            }
            pass(&mut passed, draw.lot.id, pack, stop, moment);
        }
        entered_after(&mut passed, draw, act, moment);
    }
    Ok(passed)
}

/// What is entered after a stop was placed, and dated before it, is taken; but nobody can see on the shelf that it
/// was done before, so what was made keeps the stop until somebody lets it go who may. What a recall holds it
/// reaches by itself.
fn entered_after(passed: &mut Passed, draw: &Draw<'_>, act: Act, moment: &Moment) {
    let (then, now) = (moment.at, moment.recorded_at);
    let of_pack = |placed: &&Placed| placed.is_on(Some(draw.pack.id)) && placed.incident.is_none();
    let since =
        |placed: &&Placed| placed.stands(now) && !placed.stands(then) && placed.cause.since > then;
    let placed = draw.lot.stops.iter().filter(of_pack).filter(since);
    let blocks = |placed: &&Placed| {
        let stop = placed.cause.told();
        matches!(placed.cause.kind, StopKind::Failed | StopKind::Held)
            && act.is_blocked_by(stop.kind, stop.topic)
    };
    for placed in placed.filter(blocks) {
        let pack = draw.lot.shown(draw.pack.number);
        let stop = placed.cause.told().says;
        let flag = Says::from(StopSays::EnteredAfter { pack, stop });
        if !passed.warnings.contains(&flag) {
            passed.warnings.push(flag.clone());
        }
        let because = Because {
            says: flag,
            rule: placed.cause.because.rule.clone(),
        };
        let topic = Topic::Stop;
        passed
            .reasons
            .push((draw.lot.id, Reason { topic, because }));
        if !passed
            .inherited
            .iter()
            .any(|of| of.root == Some(placed.root))
        {
            passed.inherited.push(NewStop {
                cause: placed.cause.clone(),
                root: Some(placed.root),
                incident: None,
            });
        }
    }
}

/// What is held is refused before anything else that stands in the way.
///
/// # Errors
/// A hold stands on a pack that is drawn on, at the deed's own moment.
pub fn held(
    draws: &[Draw<'_>],
    moment: &Moment,
    field: impl Fn(&Draw<'_>) -> String,
) -> Result<()> {
    for draw in draws {
        let stops = on(draw.lot, Some(draw.pack), moment.at, moment.day);
        if let Some(stop) = stops.iter().find(|stop| stop.kind == StopKind::Held) {
            let pack = draw.lot.shown(draw.pack.number);
            return Err(refused(pack, stop, field(draw)));
        }
    }
    Ok(())
}

/// The same of packs that are not drawn on, whether or not anything is left of them.
///
/// # Errors
/// A hold stands on one of them.
pub fn held_at_all(lot: &Lot, numbers: impl Iterator<Item = u32>, moment: &Moment) -> Result<()> {
    for number in numbers {
        let stops = on(lot, lot.pack(number), moment.at, moment.day);
        if let Some(stop) = stops.iter().find(|stop| stop.kind == StopKind::Held) {
            return Err(refused(lot.shown(number), stop, "lot".into()));
        }
    }
    Ok(())
}

/// The stop that stands in the way of a label for a customer, if one does.
pub fn of_label(lot: &Lot, pack: &Pack, at: DateTime<Utc>, day: NaiveDate) -> Option<Stop> {
    let stops = on(lot, Some(pack), at, day).into_iter();
    let mut stops = stops.chain(made_ahead(lot, at));
    stops.find(|stop| Act::Label.is_blocked_by(stop.kind, stop.topic))
}

/// May a label call a pack ready to eat? Where the record proves it, and nothing stands against the pack: a label that was
/// wrong is put right by the next one.
pub fn is_called_ready(lot: &Lot, pack: &Pack, at: DateTime<Utc>, day: NaiveDate) -> bool {
    let stops = on(lot, Some(pack), at, day).into_iter();
    let mut stops = stops.chain(made_ahead(lot, at));
    lot.is_called_ready() && !stops.any(|stop| stop.kind != StopKind::WrongLabel)
}

fn refused(pack: String, stop: &Stop, field: String) -> Refusal {
    let kind = match stop.kind {
        StopKind::Held => RefusalKind::Held,
        StopKind::NotReleased => RefusalKind::NotReleased,
        StopKind::PastDay => RefusalKind::Limit,
        StopKind::Failed
        | StopKind::UnknownHistory
        | StopKind::NotProven
        | StopKind::NotConfirmed
        | StopKind::CameBack
        | StopKind::Waste
        | StopKind::WrongLabel => RefusalKind::Stopped,
        StopKind::Voided => RefusalKind::Voided,
    };
    let says = match stop.root {
        Some(_) => StopSays::Refused {
            pack,
            stop: stop.says.clone(),
        }
        .into(),
        None => stop.says.clone(),
    };
    Refusal {
        rows: stop.rows.clone().into(),
        ..Refusal::new(kind, field, says)
    }
}

fn pass(passed: &mut Passed, lot: LotId, pack: String, stop: Stop, moment: &Moment) {
    let (says, rule, root, incident) = (stop.says, Rule::Rows(stop.rows), stop.root, stop.incident);
    let flag = Says::from(StopSays::Passed {
        pack: pack.clone(),
        stop: says.clone(),
    });
    passed.warnings.push(flag.clone());
    let because = Because {
        says: flag,
        rule: rule.clone(),
    };
    let topic = Topic::Stop;
    passed.reasons.push((lot, Reason { topic, because }));
    let kind = match stop.kind {
        StopKind::Held => StopKind::Held,
        _ => StopKind::Failed,
    };
    // One of a sort is enough: of several lines, only a person ends it, on what it is on. But each hold stands
    // by itself.
    let same = |of: &&mut NewStop| {
        (of.cause.kind, of.cause.topic) == (kind, stop.topic)
            && (kind != StopKind::Held || of.root == root)
    };
    match passed.inherited.iter_mut().find(same) {
        Some(known) if known.root == root => return,
        Some(known) => {
            known.root = None;
            return;
        }
        None => {}
    }
    let says = match root {
        Some(_) => says,
        None => StopSays::Inherited { pack, stop: says }.into(),
    };
    passed.inherited.push(NewStop {
        cause: Cause {
            kind,
            topic: stop.topic,
            because: Because { says, rule },
            since: moment.at,
        },
        root,
        incident,
    });
}
