//! What each list checks of its entries, beyond the types of their fields.

use super::entry::{Entry, List};
use super::says::ListSays;
use super::standing::Standing;
use crate::app::App;
use crate::deeds::degrees;
use crate::error::{Error, Result};
use crate::printing::address::PrinterAddress;
use crate::printing::says::AddressSays;
use crate::wire::lists::{
    AbattoirEntry, FarmEntry, PlaceEntry, PrinterEntry, ProbeEntry, ProductEntry, RecipeEntry,
    SupplierEntry,
};
use domain::code::HouseCode;
use domain::condition::is_of_that_sort;
use domain::cure::CureRules;
use domain::deed::draw::weight;
use domain::gs1::Gtin;
use domain::naming::{self, NameFacts};
use domain::rows::{Finding, Gravity};
use store::{Conn, Tx, entries};

/// Takes a house code for its owner, for ever.
///
/// # Errors
/// 409 where somebody else has or had it; 422 where it is not a house code.
pub fn take_house_code(tx: &mut Tx<'_>, code: &str, owner: &str) -> Result<()> {
    if HouseCode::parse(code).is_none() {
        let code = code.to_owned();
        return Err(Error::cannot_be("code", ListSays::NoHouseCode { code }));
    }
    match entries::house_code_owner(tx.conn, code)? {
        Some(known) if known == owner => Ok(()),
        Some(known) => {
            let code = code.to_owned();
            let detail = match known.strip_prefix("farm ") {
                Some(farm) => ListSays::CodeOfFarm {
                    code,
                    farm: farm.to_owned(),
                },
                None => ListSays::CodeOfKitchen { code },
            };
            Err(Error::clash("code", detail))
        }
        None => Ok(entries::take_house_code(tx, code, owner)?),
    }
}

impl Entry for FarmEntry {
    const LIST: List = List::Farms;

    fn code(&self) -> &str {
        &self.code.0
    }

    fn search(&self) -> String {
        format!("{} {}", self.code.0, self.name.0)
    }

    fn settle(&self, tx: &mut Tx<'_>) -> Result<()> {
        take_house_code(tx, &self.code.0, &format!("farm {}", self.code.0))
    }
}

impl Entry for AbattoirEntry {
    const LIST: List = List::Abattoirs;

    fn code(&self) -> &str {
        &self.number.0
    }

    fn search(&self) -> String {
        format!("{} {}", self.number.0, self.name.0)
    }
}

impl Entry for SupplierEntry {
    const LIST: List = List::Suppliers;

    fn code(&self) -> &str {
        &self.code.0
    }

    fn search(&self) -> String {
        format!("{} {}", self.code.0, self.name.0)
    }
}

impl Entry for PlaceEntry {
    const LIST: List = List::Places;

    fn code(&self) -> &str {
        &self.code.0
    }

    fn search(&self) -> String {
        format!("{} {}", self.code.0, self.name.0)
    }
}

impl Entry for PrinterEntry {
    const LIST: List = List::Printers;

    fn code(&self) -> &str {
        &self.code.0
    }

    fn search(&self) -> String {
        format!("{} {}", self.code.0, self.name.0)
    }

    fn check(&self, _: &mut Tx<'_>) -> Result<()> {
        PrinterAddress::of(self).map(|_| ()).map_err(|says| {
            let field = match says {
                AddressSays::NotEncrypted { .. } => "certificate",
                _ => "address",
            };
            Error::cannot_be(field, says)
        })
    }
}

impl Entry for ProbeEntry {
    const LIST: List = List::Probes;

    fn code(&self) -> &str {
        &self.code.0
    }

    fn search(&self) -> String {
        format!("{} {}", self.code.0, self.name.0)
    }
}

impl Entry for ProductEntry {
    const LIST: List = List::Products;

    fn code(&self) -> &str {
        &self.code.0
    }

    fn search(&self) -> String {
        let names = self.names.values().chain(self.customer_names.values());
        let names: Vec<&str> = names.map(|name| name.0.as_str()).collect();
        format!("{} {}", self.code.0, names.join(" "))
    }

    fn check(&self, _: &mut Tx<'_>) -> Result<()> {
        if self.names.is_empty() {
            return Err(Error::cannot_be("names", ListSays::NoName));
        }
        for (texts, field) in [
            (&self.names, "names"),
            (&self.customer_names, "customer_names"),
            (&self.cooking, "cooking"),
        ] {
            for language in texts.keys() {
                language_tag(&language.0, field)?;
            }
        }
        for (keep, field) in [
            (self.keep, "keep.days"),
            (self.keep_if_stable, "keep_if_stable.days"),
        ] {
            if let Some(keep) = keep.filter(|keep| !(1..=MOST_DAYS).contains(&keep.days)) {
                let detail = ListSays::KeepDays {
                    days: keep.days,
                    most: MOST_DAYS,
                };
                return Err(Error::cannot_be(field, detail));
            }
        }
        let cured = self.cure.as_ref().and_then(|cure| cure.days);
        if let Some(days) = cured.filter(|days| !(1..=MOST_CURED).contains(days)) {
            let most = MOST_CURED;
            return Err(Error::cannot_be(
                "cure.days",
                ListSays::CureDays { days, most },
            ));
        }
        let natural = self.stable_as.map(|word| word.0);
        let of_animal = self.species.is_some();
        if let Some(natural) = natural.filter(|of| !is_of_that_sort(*of, self.kind.0, of_animal)) {
            let says = natural.says();
            let detail = ListSays::NotOfThatSort { says };
            return Err(Error::cannot_be("stable_as", detail));
        }
        if let Some(salt) = &self.curing_salt {
            let strength = salt.strength();
            // A list that gives no strength leaves it to each bag.
            if strength.is_told() {
                strength.of_bag(&CureRules::default(), "curing_salt")?;
            }
        }
        if let Some(gtin) = &self.gtin {
            Gtin::parse(&gtin.0).map_err(|why| Error::cannot_be("gtin", why))?;
        }
        if let Some(standard) = &self.standard {
            standard.told().check()?;
            if let Some(cooking) = &standard.cooking {
                let (field, told) = ("standard.cooking.", (cooking.celsius, cooking.fahrenheit));
                if degrees::temperature(told.0, told.1, degrees::BATH, field)?.is_none() {
                    let field = format!("{field}fahrenheit");
                    return Err(Error::cannot_be(field, ListSays::NoCookingDegrees));
                }
            }
        }
        Ok(())
    }

    fn warnings(&self, app: &App, conn: &mut Conn) -> Result<Vec<Finding>> {
        let standing = app.standing(conn)?;
        let law = app.laws(&standing.confirmed);
        let product = self.product();
        let facts = NameFacts::listed(&product, &standing.lists);
        // It is listed already: a figure that cannot be is a warning like any other.
        let found = naming::check(&facts, law.of(standing.kitchen.entry.profile.0))
            .unwrap_or_else(|refusal| vec![Finding::new(Gravity::Warn, refusal.detail, [])]);
        let mut found: Vec<Finding> = found.into_iter().map(Finding::warned).collect();
        if let Some(hung) = &product.cured.hung {
            // Nobody told its fat: as lean as can be dries out most.
            let fat = product.standard.fat.unwrap_or_default();
            let never = app.law.trade.cure_room.never_reached(&hung.release, fat);
            found.extend(never.unwrap_or_default());
        }
        let packs = packs_as_before(conn, &self.code.0, &standing)?;
        let says = ListSays::PacksAsBefore { packs };
        found.extend((packs > 0).then(|| Finding::new(Gravity::Note, says, [])));
        Ok(found)
    }
}

/// How many packs on hand were made while the entry said otherwise: they keep that, and nobody would think so.
fn packs_as_before(conn: &mut Conn, code: &str, standing: &Standing) -> Result<usize> {
    let Some(now) = standing.versions.get(code) else {
        return Ok(0);
    };
    let mut packs = 0;
    let of_each = entries::packs_on_hand(conn, List::Products.as_str(), code)?;
    let body = of_each.iter().find(|of| of.version_id == *now);
    let body = match body {
        Some(of) => of.body.clone(),
        None => entries::version(conn, *now)?,
    };
    for of in of_each.iter().filter(|of| of.body != body) {
        packs += usize::try_from(of.packs).unwrap_or(0);
    }
    Ok(packs)
}

/// The most days that anything is kept.
const MOST_DAYS: u32 = 3_650;
/// The most days that anything lies in a cure (`trade-2.1-salt-most`).
const MOST_CURED: u32 = 120;
/// The most parts of a recipe.
const MOST_PARTS: usize = 200;
/// How deep recipes may be nested.
const MOST_DEPTH: u32 = 16;

/// Refuses what is not a language tag of two letters.
///
/// # Errors
/// 422.
pub fn language_tag(tag: &str, field: &str) -> Result<()> {
    if tag.len() == 2 && tag.bytes().all(|byte| byte.is_ascii_lowercase()) {
        return Ok(());
    }
    let tag = tag.to_owned();
    Err(Error::cannot_be(field, ListSays::NoLanguage { tag }))
}

impl Entry for RecipeEntry {
    const LIST: List = List::Recipes;

    fn code(&self) -> &str {
        &self.product.0
    }

    fn search(&self) -> String {
        self.product.0.clone()
    }

    fn check(&self, tx: &mut Tx<'_>) -> Result<()> {
        exists(tx, &self.product.0, "product")?;
        if self.parts.is_empty() || self.parts.len() > MOST_PARTS {
            let detail = ListSays::RecipeParts { most: MOST_PARTS };
            return Err(Error::cannot_be("parts", detail));
        }
        for (nth, part) in self.parts.iter().enumerate() {
            exists(tx, &part.product.0, &format!("parts[{nth}].product"))?;
            weight(part.grams.0, &format!("parts[{nth}].grams"))?;
            if reaches(tx, &part.product.0, &self.product.0, MOST_DEPTH)? {
                let detail = ListSays::RecipeInItself {
                    part: part.product.0.clone(),
                    product: self.product.0.clone(),
                };
                return Err(Error::cannot_be(format!("parts[{nth}].product"), detail));
            }
        }
        Ok(())
    }

    /// A recipe is where a product meets what it is made of.
    fn warnings(&self, app: &App, conn: &mut Conn) -> Result<Vec<Finding>> {
        let standing = app.standing(conn)?;
        let Some(product) = standing.lists.products.get(&self.product.0) else {
            return Ok(Vec::new());
        };
        let facts = NameFacts::listed(product, &standing.lists);
        let laws = app.laws(&standing.confirmed);
        let law = laws.of(standing.kitchen.entry.profile.0);
        let found = naming::unlisted(&facts, law);
        Ok(found.into_iter().map(Finding::warned).collect())
    }
}

fn exists(tx: &mut Tx<'_>, product: &str, field: &str) -> Result<()> {
    match entries::get(tx.conn, List::Products.as_str(), product)? {
        Some(_) => Ok(()),
        None => Err(Error::cannot_be(field, List::Products.lacks(product))),
    }
}

/// Does `product` have `sought` in it, through any nesting?
fn reaches(tx: &mut Tx<'_>, product: &str, sought: &str, depth: u32) -> Result<bool> {
    if product == sought {
        return Ok(true);
    }
    if depth == 0 {
        let detail = ListSays::RecipeTooDeep { most: MOST_DEPTH };
        return Err(Error::cannot_be("parts", detail));
    }
    let Some(row) = entries::get(tx.conn, List::Recipes.as_str(), product)? else {
        return Ok(false);
    };
    let recipe: RecipeEntry =
        serde_json::from_str(&row.body).map_err(|error| crate::app::damaged(&error))?;
    for part in &recipe.parts {
        if reaches(tx, &part.product.0, sought, depth - 1)? {
            return Ok(true);
        }
    }
    Ok(false)
}
