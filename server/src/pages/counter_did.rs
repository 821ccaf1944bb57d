//! What was just done at the counter, with its undo: several deeds are undone in one tap.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Caller;
use crate::error::Result;
use crate::ids::shown_id;
use crate::lists::kitchen::Kitchen;
use domain::grams::Grams;
use domain::words::DeedKind;
use store::{Conn, deeds, lots, packs};
use uuid::Uuid;

/// The most deeds of one strip.
const MOST: usize = 40;

/// What was just done.
pub struct Did {
    /// What, and what it came to.
    pub says: String,
    /// By whom, when.
    pub by: String,
    /// The deeds' ids, to undo them by.
    pub ids: String,
    /// Were all of them undone?
    pub voided: bool,
    /// Does `says` tell that by itself?
    pub says_undone: bool,
    /// Where the page is once they are undone.
    pub then: String,
}

impl Did {
    /// The deeds that an address names; nothing where none of them is on record.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn of(
        app: &Caller<'_>,
        conn: &mut Conn,
        words: &Words,
        kitchen: &Kitchen,
        did: Option<&str>,
    ) -> Result<Option<Did>> {
        let uids = did.unwrap_or_default().split(',');
        let uids = uids.filter_map(|text| Uuid::parse_str(text.trim()).ok());
        let (mut done, mut stand, mut undone) = (Vec::new(), Vec::new(), None);
        for uid in uids.take(MOST) {
            let Some(deed) = deeds::by_uid(conn, uid.as_bytes())? else {
                continue;
            };
            match deeds::voided_by(conn, deed.id)? {
                Some(by) => undone = Some(by),
                None => stand.push(deed.clone()),
            }
            done.push(deed);
        }
        // What was taken back counts as nothing that was done; where all of it was, that is what is told.
        let voided = stand.is_empty();
        let ids: Vec<String> = stand.iter().map(|deed| shown_id(&deed.uid)).collect();
        if !voided {
            done = stand;
        }
        let Some(first) = done.first() else {
            return Ok(None);
        };
        let (mut names, mut touched) = (Vec::new(), Vec::new());
        // Of what has no price nobody knows what it came to, nor what all of it did.
        let mut price = Some(0);
        for deed in &done {
            for (row, pack, mg) in packs::of_deed(conn, deed.id)? {
                let row = lots::by_keys(conn, &[row])?.into_iter().next();
                let Some(row) = row else { continue };
                let product = app.product(conn, row.version_id)?;
                let weight = Grams::from_milligrams(mg.abs());
                let one = product.sale.price_minor(weight);
                price = price.zip(one).map(|(sum, one)| sum + one);
                names.push(product.name(words.lang()).to_owned());
                touched.push(format!("{}/{pack}", row.code));
            }
        }
        let sold = first.kind()? == DeedKind::Sell;
        let what = match names.as_slice() {
            [] => String::new(),
            [one] => one.clone(),
            several => words.packs(several.len()),
        };
        let price = price.filter(|minor| *minor > 0);
        let price = price.map(|minor| words.money(minor, &kitchen.entry.currency.0));
        let says = match (sold, price) {
            (true, _) if voided => words.say(PageSays::CounterTakenBack { what }),
            (true, Some(price)) => words.say(PageSays::CounterSold { what, price }),
            (true, None) => words.say(PageSays::CounterSoldPlain { what }),
            (false, _) => words.say(PageSays::CounterDid {
                deed: words.headed(first.kind()?.says()),
                what,
            }),
        };
        // Whoever took it back, and when: who sold it is no affair of anybody's any more.
        let (person, at) = match undone.filter(|_| voided) {
            Some(by) => (by.person, by.recorded_at),
            None => (first.person.clone(), first.at),
        };
        let by = PageSays::CounterBy {
            by: person,
            at: words.minute(at.and_utc(), kitchen.zone),
        };
        // Undone, one pack is on the screen again, and several are in the basket.
        let then = match touched.as_slice() {
            [one] => format!("/counter?code={one}"),
            several if sold => format!("/counter?with={}", several.join(",")),
            _ => "/counter".to_owned(),
        };
        Ok(Some(Did {
            says,
            by: words.say(by),
            ids: ids.join(" "),
            says_undone: voided && sold,
            voided,
            then,
        }))
    }
}
