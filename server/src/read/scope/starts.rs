//! Where a scope begins: what was said, found on record.

use super::{begins, outside};
use crate::app::App;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::lists::standing::Standing;
use crate::named::named;
use crate::read::says::QuerySays;
use crate::wire::Line;
use crate::wire::scope::{ScopeAsked, StartAsked};
use chrono::{DateTime, Days, Utc};
use domain::lot::LotId;
use domain::moment::on_clock;
use domain::refusal::{Refusal, RefusalKind};
use domain::says::Says;
use domain::scope::{KnownOnceAs, Outside, ScopeSays, Sought, SourceFact, Start, sought};
use store::Conn;
use store::scope::{FactFilter, facts};
use uuid::Uuid;

/// What was found.
#[derive(Default)]
pub struct Starts {
    /// Where it begins.
    pub starts: Vec<Start>,
    /// What was named and is not affected, with the reason.
    pub outside: Vec<Outside>,
}

/// The most that one question begins with.
const MOST: usize = 10_000;

impl Starts {
    /// Finds them.
    ///
    /// # Errors
    /// 422 for what cannot be, 404 for what never was.
    pub fn read(
        app: &App,
        conn: &mut Conn,
        standing: &Standing,
        asked: &ScopeAsked,
        field: &str,
    ) -> Result<Starts> {
        let field = format!("{field}start");
        if asked.start.is_empty() {
            return Err(Error::cannot_be(field, ScopeSays::NoStart));
        }
        if asked.start.len() > MOST {
            let says = crate::deeds::says::DeedSays::TooMany { most: MOST as u32 };
            return Err(Error::cannot_be(field, says));
        }
        let mut starts = Starts::default();
        let mut lots = Vec::new();
        for (nth, start) in asked.start.iter().enumerate() {
            let field = format!("{field}[{nth}]");
            match which(start, &field)? {
                Which::Lot(lot) => lots.push((lot, format!("{field}.lot"))),
                Which::Animal(id) => starts.animal(conn, standing, id, &field)?,
                Which::Facts => starts.facts(conn, standing, start, &field)?,
                Which::Supplier => starts.supplier(conn, standing, start, &field)?,
                Which::Product(code) => {
                    let (from, until) = time(start, standing, &field)?;
                    if !standing.lists.products.contains_key(code) {
                        let says = List::Products.lacks_or_another(code);
                        return Err(Error::cannot_be(format!("{field}.product"), says));
                    }
                    let (from, until) = (from.naive_utc(), until.naive_utc());
                    let of = store::scope::of_product(conn, code, from, until)?;
                    starts.lots(of.into_iter().map(LotId).collect());
                }
                Which::Place(code) => {
                    let (from, until) = time(start, standing, &field)?;
                    let place = crate::deeds::facts::place(
                        &standing.lists,
                        code,
                        &format!("{field}.place"),
                    )?;
                    starts.starts.push(Start::Place { place, from, until });
                }
                Which::By(person) => {
                    let (from, until) = time(start, standing, &field)?;
                    if !store::scope::did_anything(conn, person)? {
                        let person = person.to_owned();
                        let field = format!("{field}.by");
                        return Err(Error::cannot_be(field, ScopeSays::Nobody { person }));
                    }
                    let person = person.to_owned();
                    starts.starts.push(Start::By {
                        person,
                        from,
                        until,
                    });
                }
            }
        }
        starts.named(app, conn, &lots)?;
        Ok(starts)
    }

    fn lots(&mut self, lots: Vec<LotId>) {
        self.starts.push(Start::Lots(lots));
    }

    /// Lots that are named by their codes, all in one statement.
    fn named(&mut self, app: &App, conn: &mut Conn, all: &[(&Line, String)]) -> Result<()> {
        let ours = app.ours();
        let codes = all
            .iter()
            .map(|(lot, field)| Ok((named(&lot.0, field, &ours)?.code, field)))
            .collect::<Result<Vec<_>>>()?;
        let spelt: Vec<&str> = codes.iter().map(|(code, _)| code.as_str()).collect();
        let rows = store::scope::lots_of_codes(conn, &spelt)?;
        let mut lots = Vec::with_capacity(rows.len());
        for (code, field) in &codes {
            let row = rows.binary_search_by_key(&code.as_str(), |row| row.code.as_str());
            let row = row.ok().map(|at| &rows[at]);
            let row = row.ok_or_else(|| Refusal::never_issued(field.as_str(), code))?;
            match row.voided {
                true => {
                    let lot = code.clone();
                    self.outside
                        .push(outside(code.clone(), ScopeSays::Voided { lot }));
                }
                false => lots.push(LotId(row.id)),
            }
        }
        if !lots.is_empty() {
            self.lots(lots);
        }
        Ok(())
    }

    fn animal(
        &mut self,
        conn: &mut Conn,
        standing: &Standing,
        id: &Line,
        field: &str,
    ) -> Result<()> {
        let never = || {
            let says = QuerySays::NoAnimal { id: id.0.clone() };
            Refusal::new(RefusalKind::NeverIssued, format!("{field}.animal"), says)
        };
        let uid = Uuid::parse_str(&id.0).map_err(|_| never())?;
        let animal = store::animals::by_uid(conn, uid.as_bytes())?.ok_or_else(never)?;
        let known = facts(conn, FactFilter::Animal(animal.id))?;
        let (lots, once) = sought(&known, &Sought::default());
        self.outside
            .extend(once.iter().map(|known| known_once(known, standing)));
        self.lots(lots);
        Ok(())
    }

    fn facts(
        &mut self,
        conn: &mut Conn,
        standing: &Standing,
        start: &StartAsked,
        field: &str,
    ) -> Result<()> {
        let text = |line: &Option<Line>| line.as_ref().map(|line| line.0.clone());
        let said = Sought {
            farm: text(&start.farm).map(|farm| farm.to_uppercase()),
            killed_on: start.killed_on.map(|day| day.0),
            killed_from: start.killed_from.map(|day| day.0),
            killed_until: start.killed_until.map(|day| day.0),
            carcass: text(&start.carcass),
            tag: text(&start.tag),
            supplier: None,
            supplier_lot: None,
        };
        if let Some((from, until)) = said.killed_from.zip(said.killed_until)
            && until <= from
        {
            let field = format!("{field}.killed_until");
            return Err(Error::cannot_be(field, ScopeSays::EndsFirst));
        }
        let after = said
            .killed_on
            .and_then(|day| day.checked_add_days(Days::new(1)));
        let filter = FactFilter::Killed {
            farm: said.farm.as_deref(),
            from: said.killed_on.max(said.killed_from),
            until: after.or(said.killed_until),
        };
        let known = facts(conn, filter)?;
        let (lots, once) = sought(&known, &said);
        if lots.is_empty() && once.is_empty() {
            let says = ScopeSays::NoAnimal;
            return Err(Refusal::new(RefusalKind::NeverIssued, field, says).into());
        }
        self.outside
            .extend(once.iter().map(|known| known_once(known, standing)));
        self.lots(lots);
        Ok(())
    }

    fn supplier(
        &mut self,
        conn: &mut Conn,
        standing: &Standing,
        start: &StartAsked,
        field: &str,
    ) -> Result<()> {
        let needs = |of: &str| Error::cannot_be(format!("{field}.{of}"), ScopeSays::Needs);
        let supplier = start.supplier.as_ref().ok_or_else(|| needs("supplier"))?;
        let number = start.supplier_lot.as_ref();
        let number = number.ok_or_else(|| needs("supplier_lot"))?;
        let supplier = supplier.0.to_uppercase();
        let said = Sought {
            supplier: Some(supplier.clone()),
            supplier_lot: Some(number.0.clone()),
            ..Sought::default()
        };
        let (lots, once) = sought(&facts(conn, FactFilter::Supplier(&supplier))?, &said);
        if lots.is_empty() && once.is_empty() {
            let number = number.0.clone();
            let says = ScopeSays::NoSupplierLot { supplier, number };
            let field = format!("{field}.supplier_lot");
            return Err(Refusal::new(RefusalKind::NeverIssued, field, says).into());
        }
        self.outside
            .extend(once.iter().map(|known| known_once(known, standing)));
        self.lots(lots);
        Ok(())
    }
}

enum Which<'a> {
    Lot(&'a Line),
    Animal(&'a Line),
    Facts,
    Supplier,
    Product(&'a str),
    Place(&'a str),
    By(&'a str),
}

/// Which of the ways to begin it is: exactly one.
fn which<'a>(start: &'a StartAsked, field: &str) -> Result<Which<'a>> {
    let facts = start.farm.is_some()
        || start.killed_on.is_some()
        || start.killed_from.is_some()
        || start.killed_until.is_some()
        || start.carcass.is_some()
        || start.tag.is_some();
    let supplier = start.supplier.is_some() || start.supplier_lot.is_some();
    let all = [
        start.lot.as_ref().map(Which::Lot),
        start.animal.as_ref().map(Which::Animal),
        facts.then_some(Which::Facts),
        supplier.then_some(Which::Supplier),
        start.product.as_ref().map(|code| Which::Product(&code.0)),
        start.place.as_ref().map(|code| Which::Place(&code.0)),
        start.by.as_ref().map(|by| Which::By(&by.0)),
    ];
    let mut given = all.into_iter().flatten();
    let (Some(one), None) = (given.next(), given.next()) else {
        return Err(Error::cannot_be(field, ScopeSays::WhichStart));
    };
    let over_time = matches!(one, Which::Product(_) | Which::Place(_) | Which::By(_));
    if !over_time && (start.from.is_some() || start.until.is_some()) {
        return Err(Error::cannot_be(field, ScopeSays::WhichStart));
    }
    Ok(one)
}

fn time(
    start: &StartAsked,
    standing: &Standing,
    field: &str,
) -> Result<(DateTime<Utc>, DateTime<Utc>)> {
    let needs = |of: &str| Error::cannot_be(format!("{field}.{of}"), ScopeSays::Needs);
    let from = start.from.ok_or_else(|| needs("from"))?;
    let until = start.until.ok_or_else(|| needs("until"))?;
    let zone = standing.kitchen.zone;
    let (from, until) = (begins(from, zone), begins(until, zone));
    match until <= from {
        true => {
            let field = format!("{field}.until");
            Err(Error::cannot_be(field, ScopeSays::EndsFirst))
        }
        false => Ok((from, until)),
    }
}

/// A lot that matches only by what was known of it until that was corrected.
fn known_once(known: &KnownOnceAs, standing: &Standing) -> Outside {
    let fact = &known.fact;
    let (by, at) = fact.corrected.clone().unwrap_or_default();
    let at = on_clock(at, standing.kitchen.zone);
    let known = known_as(fact);
    Outside {
        lot: fact.code.clone(),
        animal: None,
        why: ScopeSays::KnownAs { known, by, at }.into(),
    }
}

fn known_as(fact: &SourceFact) -> Says {
    let text = |text: &Option<String>| text.clone().unwrap_or_default();
    match fact.killed_on {
        Some(killed) => ScopeSays::OfAnimal {
            farm: text(&fact.farm),
            killed,
            number: fact
                .carcass
                .clone()
                .or(fact.tag.clone())
                .unwrap_or_else(|| "—".to_owned()),
        },
        None => ScopeSays::OfSupplier {
            supplier: text(&fact.supplier),
            number: text(&fact.supplier_lot),
        },
    }
    .into()
}
