//! The events of some lots, from the deeds on record, as EPCIS has them.

use super::LoadedFamily;
use crate::app::App;
use crate::error::Result;
use crate::ids::shown_id;
use crate::wire::epcis::{self, Event, EventKind, Item};
use chrono::{DateTime, FixedOffset, Offset, Utc};
use chrono_tz::Tz;
use domain::family::{Did, Family, Relative};
use domain::grams::Grams;
use domain::lot::{DeedId, Lot};
use domain::words::{Account, DeedKind, StopKind};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use store::Conn;
use store::family::{Ancestors, Extent};
use store::trace;

/// How many lots are read at once: more than that no statement takes.
const MOST: usize = 5_000;

/// What is loaded of each: what went into it, and what else its step made.
const EXTENT: Extent = Extent {
    ancestors: Ancestors::Steps(1),
    siblings: true,
    ..Extent::ALONE
};

/// The events of a lot and of everything that was made of it, as a document.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_family(app: &App, conn: &mut Conn, start: i32) -> Result<Value> {
    let lots = trace::forward(conn, &[start])?.lots;
    let keys: BTreeSet<i32> = lots.iter().map(|lot| lot.id).chain([start]).collect();
    of_lots(app, conn, &keys)
}

/// The events of just some lots: those of a recall.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lots(app: &App, conn: &mut Conn, lots: &BTreeSet<i32>) -> Result<Value> {
    let standing = app.standing(conn)?;
    let writer = Writer {
        address: app.address(&standing.kitchen),
        zone: standing.kitchen.zone,
    };
    let keys: Vec<i32> = lots.iter().copied().collect();
    let mut found = BTreeMap::new();
    for some in keys.chunks(MOST) {
        let reading = LoadedFamily::load(app, conn, some, EXTENT)?;
        writer.events(&reading.family, &mut found);
    }
    let events: Vec<Event> = found.into_values().collect();
    let vocabulary = format!("{}/vocabulary/", writer.address);
    Ok(epcis::document(&events, &vocabulary, app.now()))
}

/// What orders events, and tells each from every other: when, of which deed, what of it.
type Key = (DateTime<Utc>, Vec<u8>, String);

struct Writer {
    address: String,
    zone: Tz,
}

impl Writer {
    fn events(&self, family: &Family, found: &mut BTreeMap<Key, Event>) {
        let ours = family.starts.iter().filter_map(|lot| family.get(*lot));
        for of in ours.filter(|of| !of.lot.voided) {
            self.made(family, of, found);
            self.packed(of, found);
            for did in of.history.iter().filter(|did| !did.voided) {
                self.did(&of.lot, did, found);
            }
            self.held(&of.lot, found);
        }
    }

    /// How it came to be: received, or made of others.
    fn made(&self, family: &Family, of: &Relative, found: &mut BTreeMap<Key, Event>) {
        let (lot, by) = (&of.lot, &of.made_by);
        let uses = family.ancestry.uses_of(lot.id);
        let item = |of: &Relative| self.item(&of.lot, of.made());
        let key = |what: &str| (by.at, by.uid.clone(), what.to_owned());
        if uses.is_empty() {
            let (biz_step, action) = match by.kind {
                DeedKind::Receive => ("receiving", "OBSERVE"),
                _ => ("commissioning", "ADD"),
            };
            let kind = EventKind::Object {
                items: vec![item(of)],
                action,
            };
            let mut event = self.event(kind, by.at, biz_step, None);
            self.tell(&mut event, by.kind, &by.uid);
            self.tell_source(&mut event, of);
            found.insert(key(&format!("received {}", lot.code)), event);
            return;
        }
        let mut inputs: BTreeMap<String, Grams> = BTreeMap::new();
        for used in uses {
            let class = family.get(used.lot).map(|of| self.class(&of.lot));
            *inputs.entry(class.unwrap_or_default()).or_default() +=
                Grams::from_milligrams(used.milligrams);
        }
        let inputs = inputs.into_iter().map(|(class, grams)| Item {
            class,
            grams: Some(grams),
        });
        let together = family.made.get(&DeedId(lot.made_by.0));
        let together = together
            .into_iter()
            .flatten()
            .filter_map(|lot| family.get(*lot));
        let mut outputs: Vec<Item> = together.filter(|of| !of.lot.voided).map(item).collect();
        if outputs.is_empty() {
            outputs.push(item(of));
        }
        outputs.sort_by(|one, other| one.class.cmp(&other.class));
        let kind = EventKind::Transformation {
            inputs: inputs.collect(),
            outputs,
        };
        // New lots of their own numbers (standards 3.4).
        let mut event = self.event(kind, by.at, "commissioning", None);
        self.tell(&mut event, by.kind, &by.uid);
        found.insert(key("made"), event);
    }

    /// Its packs, each a container of its own.
    fn packed(&self, of: &Relative, found: &mut BTreeMap<Key, Event>) {
        let (lot, by) = (&of.lot, &of.made_by);
        if by.kind != DeedKind::Pack {
            return;
        }
        for pack in &lot.packs {
            let parent = format!("{}/L/{}/{}", self.address, lot.code, pack.number);
            let items = vec![self.item(lot, pack.made)];
            let kind = EventKind::Aggregation { parent, items };
            let mut event = self.event(kind, by.at, "packing", Some("container_closed"));
            self.tell(&mut event, by.kind, &by.uid);
            let what = format!("packed {} {:06}", lot.code, pack.number);
            found.insert((by.at, by.uid.clone(), what), event);
        }
    }

    /// What was done with it since; lots of one deed stand together.
    fn did(&self, lot: &Lot, did: &Did, found: &mut BTreeMap<Key, Event>) {
        let Some((biz_step, action, disposition)) = what_it_was(did) else {
            return;
        };
        let key = (did.at, did.uid.clone(), format!("to {}", did.account));
        let event = found.entry(key).or_insert_with(|| {
            let kind = EventKind::Object {
                items: Vec::new(),
                action,
            };
            let mut event = self.event(kind, did.at, biz_step, disposition);
            self.tell(&mut event, did.kind, &did.uid);
            event
        });
        let EventKind::Object { items, .. } = &mut event.kind else {
            return;
        };
        let class = self.class(lot);
        let told = did.grams > Grams::ZERO;
        match items.iter_mut().find(|item| item.class == class) {
            Some(item) => {
                item.grams = match (item.grams, told) {
                    (Some(grams), true) => Some(grams + did.grams),
                    (grams, _) => grams,
                }
            }
            None => items.push(Item {
                class,
                grams: told.then_some(did.grams),
            }),
        }
    }

    /// The holds on it, those of a recall as such.
    fn held(&self, lot: &Lot, found: &mut BTreeMap<Key, Event>) {
        for placed in lot
            .stops
            .iter()
            .filter(|placed| placed.cause.kind == StopKind::Held)
        {
            let class = self.class(lot);
            let kind = EventKind::Object {
                items: vec![Item { class, grams: None }],
                action: "OBSERVE",
            };
            let recalled = placed.incident.is_some();
            let disposition = if recalled {
                "recalled"
            } else {
                "non_sellable_other"
            };
            let mut event = self.event(kind, placed.cause.since, "holding", Some(disposition));
            event.persists = recalled;
            let what = format!("held {} {}", lot.code, placed.incident.map_or(0, |of| of.0));
            found
                .entry((placed.cause.since, Vec::new(), what))
                .or_insert(event);
        }
    }

    fn event(
        &self,
        kind: EventKind,
        at: DateTime<Utc>,
        biz_step: &'static str,
        disposition: Option<&'static str>,
    ) -> Event {
        let local = at.with_timezone(&self.zone);
        let at: DateTime<FixedOffset> = local.with_timezone(&local.offset().fix());
        Event {
            kind,
            at,
            biz_step,
            disposition,
            persists: false,
            biz_location: Some(format!("{}/kitchen", self.address)),
            read_point: None,
            own: BTreeMap::new(),
        }
    }

    /// Our own word for it, and the deed that it is.
    fn tell(&self, event: &mut Event, kind: DeedKind, uid: &[u8]) {
        event
            .own
            .insert("deed", format!("urn:uuid:{}", shown_id(uid)));
        event.own.insert("kind", kind.to_string());
    }

    /// What came in with it.
    fn tell_source(&self, event: &mut Event, of: &Relative) {
        let Some(source) = &of.source else { return };
        let animal = source.animal.as_ref();
        let told = [
            ("farm", animal.map(|animal| animal.farm.clone())),
            (
                "killedOn",
                animal.map(|animal| animal.killed_on.to_string()),
            ),
            (
                "abattoir",
                animal.and_then(|animal| animal.abattoir.clone()),
            ),
            ("carcass", animal.and_then(|animal| animal.carcass.clone())),
            ("tag", animal.and_then(|animal| animal.tag.clone())),
            ("supplier", source.supplier.clone()),
            ("supplierLot", source.supplier_lot.clone()),
        ];
        let told = told
            .into_iter()
            .filter_map(|(key, value)| Some((key, value?)));
        event.own.extend(told);
    }

    fn item(&self, lot: &Lot, grams: Grams) -> Item {
        Item {
            class: self.class(lot),
            grams: Some(grams),
        }
    }

    /// A lot as an address: with the product's GTIN where it has one, else the one in its square code.
    fn class(&self, lot: &Lot) -> String {
        match &lot.product.sale.gtin {
            Some(gtin) => format!("https://id.gs1.org/01/{gtin}/10/{}", lot.code),
            None => format!("{}/L/{}", self.address, lot.code),
        }
    }
}

/// The standard's words for what was done (standards 3.4); none where a transformation tells it, or it is no event.
fn what_it_was(did: &Did) -> Option<(&'static str, &'static str, Option<&'static str>)> {
    Some(match did.account {
        Account::Sold => ("retail_selling", "DELETE", Some("retail_sold")),
        Account::Served => ("dispensing", "DELETE", Some("dispensed")),
        Account::Discarded => ("destroying", "DELETE", Some("destroyed")),
        Account::Shipped => ("shipping", "OBSERVE", Some("in_transit")),
        Account::Returned => ("shipping", "OBSERVE", Some("returned")),
        Account::TakenBack => ("receiving", "OBSERVE", Some("returned")),
        Account::Moved => ("storing", "OBSERVE", None),
        Account::Unexplained => ("stock_taking", "OBSERVE", None),
        Account::Noted if did.kind == DeedKind::Release => {
            ("inspecting", "OBSERVE", Some("conformant"))
        }
        Account::Used | Account::Lost | Account::Noted => return None,
    })
}
