//! The lots of an incident as they are drawn now: of what its scope loaded, so that nothing is loaded twice.

use super::{facts, gather};
use crate::app::App;
use crate::error::Result;
use crate::lists::standing::Standing;
use crate::pictures::Drawn;
use crate::read::scope::{self, Looked};
use chrono::{DateTime, Utc};
use chrono_tz::Tz;
use domain::family::Went;
use domain::grams::Grams;
use domain::lot::PlaceId;
use domain::moment::on_clock;
use domain::scope::{How, InScope, World};
use domain::words::Account;
use std::collections::{BTreeMap, BTreeSet};
use store::Conn;
use store::incidents::{self, IncidentRow};

/// The lots, named in a language, and the kitchen's clock.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(super) fn lots(
    app: &App,
    conn: &mut Conn,
    row: &IncidentRow,
    language: &str,
) -> Result<(Vec<Drawn>, Tz)> {
    let scopes = incidents::scopes(conn, row.id)?;
    let (last, said) = scopes.last().ok_or_else(|| gather::not_begun(row))?;
    let question = gather::question(last)?;
    let Looked {
        scope,
        world,
        standing,
        ..
    } = scope::look(app, conn, &question, "", Some(said.recorded_at))?;
    let of = Drawing {
        world: &world,
        standing: &standing,
        language,
        holds: row.holds && !row.drill,
    };
    let lots = scope.lots.iter().filter_map(|lot| of.lot(lot)).collect();
    Ok((lots, standing.kitchen.zone))
}

struct Drawing<'a> {
    world: &'a World,
    standing: &'a Standing,
    language: &'a str,
    holds: bool,
}

impl Drawing<'_> {
    fn lot(&self, lot: &InScope) -> Option<Drawn> {
        let zone = self.standing.kitchen.zone;
        let made_by = self.world.lots.get(&lot.id)?.made_by;
        // A lot is made when its deed was done.
        let made = self.world.deeds.get(&made_by)?;
        let (gone_at, used_in) = self.went_when(lot);
        let left = lot.went.on_hand;
        Some(Drawn {
            code: lot.code.shown(),
            name: self.name(lot),
            made_at: on_clock(made.at, zone),
            step: made.kind,
            made_by: made_by.0,
            is_start: lot.because.iter().any(|of| of.how == How::Named),
            made: lot.went.made,
            on_hand: left,
            held: if self.holds { left } else { Grams::ZERO },
            gone_at: gone_at
                .filter(|_| left == Grams::ZERO)
                .map(|at| on_clock(at, zone)),
            places: self.places(lot),
            went: went(&lot.went),
            used_in: used_in.into_iter().collect(),
        })
    }

    fn name(&self, lot: &InScope) -> String {
        let product = self.standing.lists.products.get(&lot.product);
        let name = product.map_or_else(
            || lot.product.clone(),
            |product| facts::in_language(&product.names, self.language, &lot.product),
        );
        match &lot.note {
            Some(note) => format!("{name} ({note})"),
            None => name,
        }
    }

    /// When something last went out of its affected packs, and the deeds that used any of them.
    fn went_when(&self, lot: &InScope) -> (Option<DateTime<Utc>>, BTreeSet<i32>) {
        let (mut last, mut used_in) = (None, BTreeSet::new());
        let packs = lot.reached.iter();
        let packs = packs.filter_map(|(pack, _)| self.world.pack(*pack));
        for of in packs.flat_map(|(_, pack)| &pack.happened) {
            if of.took() > Grams::ZERO {
                last = last.max(Some(self.world.when(of).at));
            }
            if of.account == Account::Used {
                used_in.insert(of.deed.0);
            }
        }
        (last, used_in)
    }

    /// Where what is left is, the place of most first.
    fn places(&self, lot: &InScope) -> Vec<(String, Grams)> {
        let mut places: BTreeMap<PlaceId, Grams> = BTreeMap::new();
        for pack in &lot.packs {
            *places.entry(pack.place).or_default() += pack.left;
        }
        let mut places: Vec<(PlaceId, Grams)> = places.into_iter().collect();
        places.sort_by_key(|(place, left)| (std::cmp::Reverse(*left), *place));
        let named = |(place, left)| (self.standing.lists.place_name(place).to_owned(), left);
        places.into_iter().map(named).collect()
    }
}

/// Where any of it went.
fn went(went: &Went) -> Vec<Account> {
    let all = [
        (Account::Used, went.used),
        (Account::Sold, went.sold),
        (Account::Served, went.served),
        (Account::Discarded, went.discarded),
        (Account::Shipped, went.shipped),
        (Account::Returned, went.returned),
        (Account::Lost, went.lost),
        (Account::Unexplained, went.unexplained),
    ];
    let all = all.into_iter().filter(|(_, grams)| *grams > Grams::ZERO);
    all.map(|(account, _)| account).collect()
}
