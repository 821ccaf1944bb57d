//! Whom to call: those that it came from, one step back, and businesses that it went to, one step forward; who of
//! them was told, and what they answered.

use super::facts::{LotFacts, PersonFacts, SourceFacts};
use super::gathered::Gathered;
use crate::app::App;
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::wire::Weight;
use crate::wire::answers::instant;
use chrono::NaiveDateTime;
use chrono_tz::Tz;
use domain::family::{Listed, origins};
use domain::incident::IncidentNote;
use domain::scope::{How, InScope};
use std::collections::{BTreeMap, HashMap};
use store::Conn;
use store::family::Extent;
use store::incident_life::{self as life, CameFrom};
use store::incidents::{ActRow, Done};

/// Where the lots came from.
#[derive(Default)]
pub(super) struct Sources {
    /// Each lot that was received.
    pub of: HashMap<i32, SourceFacts>,
    /// Whom to call.
    pub people: Vec<PersonFacts>,
}

/// The sources of an incident: of its lots that were received; where none was, of everything that went into those it
/// begins with.
pub(super) fn sources(
    app: &App,
    conn: &mut Conn,
    gathered: &Gathered,
    lots: &[&InScope],
    until: NaiveDateTime,
) -> Result<Sources> {
    let keys: Vec<i32> = lots.iter().map(|lot| lot.id.0).collect();
    let mut all = Sources {
        of: HashMap::new(),
        people: Vec::new(),
    };
    let mut people: BTreeMap<(&str, String), PersonFacts> = BTreeMap::new();
    for came in life::came_from(conn, &keys, until)? {
        let facts = source(gathered, &came);
        called(gathered, &mut people, &came);
        all.of.insert(came.lot_id, facts);
    }
    if people.is_empty() {
        let named = lots
            .iter()
            .filter(|lot| lot.because.iter().any(|of| of.how == How::Named));
        let named: Vec<i32> = named.map(|lot| lot.id.0).collect();
        let reading = LoadedFamily::load(app, conn, &named, Extent::ANCESTORS)?;
        for start in &reading.family.starts {
            let from = origins(&reading.family, *start);
            let animals = from.animals.iter().map(|share| CameFrom {
                lot_id: start.0,
                farm: Some(share.animal.farm.clone()),
                killed_on: Some(share.animal.killed_on),
                abattoir: share.animal.abattoir.clone(),
                carcass: share.animal.carcass.clone(),
                tag: share.animal.tag.clone(),
                supplier: None,
                supplier_lot: None,
            });
            let bought = from.bought.iter().map(|of| CameFrom {
                lot_id: start.0,
                farm: None,
                killed_on: None,
                abattoir: None,
                carcass: None,
                tag: None,
                supplier: of.supplier.clone(),
                supplier_lot: of.supplier_lot.clone(),
            });
            let came: Vec<CameFrom> = animals.chain(bought).collect();
            came.iter().for_each(|of| called(gathered, &mut people, of));
        }
    }
    all.people = people.into_values().collect();
    Ok(all)
}

/// What an animal, or a supplier's lot, is known by.
fn known_by(came: &CameFrom) -> Option<String> {
    let own = came.supplier_lot.clone();
    own.or(came.carcass.clone()).or(came.tag.clone())
}

fn source(gathered: &Gathered, came: &CameFrom) -> SourceFacts {
    let lists = &gathered.standing.lists;
    let (listed, name) = match (&came.farm, &came.supplier) {
        (Some(farm), _) => (lists.farms.get(farm), lists.farm(farm).to_owned()),
        (None, Some(code)) => (lists.suppliers.get(code), lists.supplier(code).to_owned()),
        (None, None) => (None, String::new()),
    };
    let abattoir = came.abattoir.as_ref();
    SourceFacts {
        name,
        address: listed.and_then(|listed| listed.address.clone()),
        lot: known_by(came),
        killed_on: came.killed_on.map(|day| day.to_string()),
        abattoir: abattoir.map(|number| format!("{}, {number}", lists.abattoir(number))),
        document: None,
    }
}

/// Whom to call about a lot that came in.
fn called<'a>(
    gathered: &Gathered,
    people: &mut BTreeMap<(&'a str, String), PersonFacts>,
    came: &CameFrom,
) {
    let lists = &gathered.standing.lists;
    let mut add = |role: &'a str, name: &str, listed: Option<&Listed>| {
        let person = people
            .entry((role, name.to_owned()))
            .or_insert_with(|| PersonFacts {
                role: role.to_owned(),
                name: name.to_owned(),
                address: listed.and_then(|listed| listed.address.clone()),
                phone: listed.and_then(|listed| listed.phone.clone()),
                ..nobody()
            });
        if let Some(lot) = known_by(came).filter(|lot| !person.lots.contains(lot)) {
            person.lots.push(lot);
        }
    };
    if let Some(farm) = &came.farm {
        add("farm", lists.farm(farm), lists.farms.get(farm));
    }
    if let Some(number) = &came.abattoir {
        add(
            "abattoir",
            lists.abattoir(number),
            lists.abattoirs.get(number),
        );
    }
    if let Some(code) = &came.supplier {
        add("supplier", lists.supplier(code), lists.suppliers.get(code));
    }
}

fn nobody() -> PersonFacts {
    PersonFacts {
        role: String::new(),
        name: String::new(),
        address: None,
        phone: None,
        lots: Vec::new(),
        grams: None,
        packs: None,
        last: None,
        told_at: None,
        answered: None,
    }
}

/// Businesses that any of it was shipped to.
pub(super) fn customers(lots: &[LotFacts], acts: &[(ActRow, Done)], zone: Tz) -> Vec<PersonFacts> {
    let mut all: BTreeMap<String, PersonFacts> = BTreeMap::new();
    for lot in lots {
        for shipped in &lot.shipped {
            let person = all
                .entry(shipped.to.to_lowercase())
                .or_insert_with(|| PersonFacts {
                    role: "customer".to_owned(),
                    name: shipped.to.clone(),
                    ..nobody()
                });
            if !person.lots.contains(&lot.shown) {
                person.lots.push(lot.shown.clone());
            }
            person.grams.get_or_insert(Weight::default()).0 += shipped.grams.0;
            *person.packs.get_or_insert(0) += 1;
            if person.last.as_ref().is_none_or(|last| *last < shipped.at) {
                person.last = Some(shipped.at.clone());
            }
        }
    }
    told(all.into_values().collect(), acts, zone)
}

/// When each was told, and what they answered: by the name that the note is about.
pub(super) fn told(
    mut people: Vec<PersonFacts>,
    acts: &[(ActRow, Done)],
    zone: Tz,
) -> Vec<PersonFacts> {
    for person in &mut people {
        let name = person.name.to_lowercase();
        let about = |act: &ActRow| {
            let whom = act
                .whom
                .as_deref()
                .unwrap_or_default()
                .trim()
                .to_lowercase();
            !whom.is_empty() && (name.contains(&whom) || whom.contains(&name) && !name.is_empty())
        };
        for (act, done) in acts.iter().filter(|(act, _)| about(act)) {
            match IncidentNote::parse(&act.kind) {
                Some(IncidentNote::Told) => {
                    let at = instant(done.at, zone);
                    person.told_at.get_or_insert(at);
                }
                Some(IncidentNote::Answered) => person.answered = Some(act.text.clone()),
                Some(
                    IncidentNote::Note
                    | IncidentNote::Caller
                    | IncidentNote::Reason
                    | IncidentNote::Hazard,
                )
                | None => {}
            }
        }
    }
    people
}
