//! Something arrives: an animal with its farm, kill date and carcass, or a carton that is scanned.

use super::bench::{self, DEGREES, Pick, Units, WEIGHT};
use super::bench_says::WorkSays;
use super::carcass_parts;
use super::countries::{self, species_asked};
use super::find::encoded;
use super::fitting;
use super::managers::not_yours;
use super::odd;
use super::says::PageSays;
use super::spoken::{ABATTOIR, Words};
use super::way_back::{leading, ours};
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::List;
use crate::read::names::Names;
use crate::read::seek::fold;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::cure::Strength;
use domain::family::{Listed, Lists};
use domain::moment::day_of;
use domain::product::Product;
use domain::right::Right;
use domain::words::{ProductKind, Species};
use serde::Deserialize;
use serde_json::json;
use std::collections::BTreeMap;
use store::Conn;

#[derive(Template)]
#[template(path = "receive.html")]
struct ReceivePage {
    words: Words,
    units: Units,
    of_animal: bool,
    body: String,
    products: Vec<Arrives>,
    farms: Vec<Pick>,
    abattoirs: Vec<Pick>,
    suppliers: Vec<Pick>,
    sides: Vec<Pick>,
    /// The animals whose labels tell their countries here.
    countries_of: String,
    places: Vec<Pick>,
    printers: Vec<Pick>,
    today: String,
    sentence: String,
    /// What the place calls a slaughterhouse.
    abattoir: String,
    may: bool,
    /// May the reader change the lists?
    sets_up: bool,
    /// Where a supplier and a product are added that are not among them.
    adds: [String; 2],
    /// Where the page goes when it is done, for whoever was led here; else to what came in.
    then: Option<String>,
    /// Who may not, and whom to ask.
    not_yours: Option<String>,
}

/// What may arrive. Of an animal `pick.more` is its species, else where it is put.
struct Arrives {
    pick: Pick,
    /// Do several come as one, by the head?
    is_bird: bool,
    /// Is it a part of an animal by its code, like the starter list's half pig?
    is_part: bool,
    /// The parts that it usually comes as.
    sides: String,
    /// The least and the most in grams, a head, that nobody asks about.
    usual: (i64, i64),
    /// How strong it is by the list, in per cent of nitrite and nitrate, if it is a curing salt.
    salt: Option<String>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// `bought`, else an animal.
    of: Option<String>,
    /// What arrives, where that is known already.
    product: Option<String>,
    /// Who supplies it, where they were just put on the list.
    supplier: Option<String>,
    /// Where whoever was led here goes back to.
    then: Option<String>,
}

impl Asked {
    /// The page as it is asked for: where whoever puts something on a list comes back to.
    fn here(&self) -> String {
        let mut here = match self.of.as_deref() {
            Some("bought") => "/receive?of=bought".to_owned(),
            _ => "/receive".to_owned(),
        };
        for (what, code) in [("product", &self.product), ("supplier", &self.supplier)] {
            if let Some(code) = code {
                let joint = if here.contains('?') { '&' } else { '?' };
                here = format!("{here}{joint}{what}={}", encoded(code));
            }
        }
        match ours(self.then.as_deref()) {
            Some(then) => leading(&here, then),
            None => here,
        }
    }
}

/// The page.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<ReceivePage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let standing = app.standing(conn)?;
    let lists = &standing.lists;
    let law = app.law.laws.of(standing.kitchen.entry.profile.0);
    let of_animal = asked.of.as_deref() != Some("bought");
    let today = day_of(app.now(), standing.kitchen.zone);
    let received = store::places::received_lately(conn)?;
    // A carcass hangs where there is a rail.
    let rail = lists.places.keys().find(|code| *code == "rail");
    let place = rail.filter(|_| of_animal).map(String::as_str);
    let any = || {
        let kept = lists.products.values();
        let mut carcasses = kept.filter(|of| of_animal && of.kind == ProductKind::Carcass);
        put_at(lists, carcasses.next()?, &received)
    };
    let last = || {
        let mut all = received.iter();
        let (_, place) = all.find(|(of, _)| is_carcass(lists, of) == of_animal)?;
        Some(lists.place_code(domain::lot::PlaceId(*place)))
    };
    let asked_for = asked
        .product
        .as_ref()
        .and_then(|code| lists.products.get(code));
    let place = match asked_for {
        Some(product) => place.or_else(|| put_at(lists, product, &received)),
        None => place.or_else(last).or_else(any),
    };
    let mut products = products(lists, &names, &words, of_animal, &received);
    for Arrives { pick, .. } in &mut products {
        pick.chosen = asked.product.as_ref() == Some(&pick.code);
        if !of_animal {
            let product = lists.products.get(&pick.code);
            let place = product.and_then(|product| put_at(lists, product, &received));
            pick.more = place.unwrap_or_default().to_owned();
        }
    }
    let printers = crate::read::prints::printers(conn)?;
    let printers = printers.into_iter().map(|of| Pick::of(&of.code, of.name));
    let units = Units::of(&words);
    Ok(ReceivePage {
        of_animal,
        body: match of_animal {
            true => json!({ "animal": {} }).to_string(),
            false => json!({ "bought": {} }).to_string(),
        },
        products,
        farms: lacking(listed(&lists.farms), &lists.farms, List::Farms),
        abattoirs: lacking(listed(&lists.abattoirs), &lists.abattoirs, List::Abattoirs),
        countries_of: species_asked(law),
        sets_up: app.who.may(Right::SetUp),
        suppliers: chosen(listed(&lists.suppliers), asked.supplier.as_deref()),
        adds: ["/lists/suppliers/new", "/lists/products/new"]
            .map(|new| leading(new, &asked.here())),
        then: ours(asked.then.as_deref()).map(str::to_owned),
        sides: carcass_parts::ALL
            .map(|side| Pick::of(side.as_str(), words.headed(side.says())))
            .into(),
        places: bench::places(&names, place),
        printers: printers.collect(),
        today: today.to_string(),
        sentence: words
            .say(match of_animal {
                true => WorkSays::ReceiveAnimal,
                false => WorkSays::ReceiveBought,
            })
            .replace("[degrees]", &format!("[readings.{}]", units.degrees)),
        abattoir: words.in_place(ABATTOIR, standing.kitchen.entry.profile.0),
        not_yours: not_yours(app, &words, Right::Work),
        may: app.who.may(Right::Work),
        units,
        words,
    })
}

/// Those without a country say where it is entered.
fn lacking(mut picks: Vec<Pick>, of: &BTreeMap<String, Listed>, list: List) -> Vec<Pick> {
    for pick in &mut picks {
        if of.get(&pick.code).is_some_and(|one| one.country.is_none()) {
            pick.more = countries::entry(list, &pick.code);
        }
    }
    picks
}

/// Where what arrives is put: where it was put last, or else what is kept as it is, raw or ready; never where it does
/// not belong.
fn put_at<'a>(lists: &'a Lists, product: &Product, received: &[(String, i32)]) -> Option<&'a str> {
    let is_alike = |of: &str| {
        let of = lists.products.get(of);
        of.is_some_and(|of| {
            (of.raw, of.species.is_some(), of.storage)
                == (product.raw, product.species.is_some(), product.storage)
                && (of.kind == ProductKind::Carcass) == (product.kind == ProductKind::Carcass)
        })
    };
    let place = |(_, place): &(String, i32)| lists.place_code(domain::lot::PlaceId(*place));
    let mut own = received.iter().filter(|(of, _)| *of == product.code);
    let alike = received.iter().filter(|(of, _)| is_alike(of));
    let alike: Vec<&str> = alike.map(place).collect();
    fitting::proposed(lists, product, own.next().map(place), &alike)
}

fn is_carcass(lists: &Lists, code: &str) -> bool {
    let product = lists.products.get(code);
    product.is_some_and(|product| product.kind == ProductKind::Carcass)
}

/// What may arrive: what arrived lately first, the rest by name. `more` is its species.
fn products(
    lists: &Lists,
    names: &Names,
    words: &Words,
    of_animal: bool,
    received: &[(String, i32)],
) -> Vec<Arrives> {
    let lately = |code: &str| received.iter().position(|(of, _)| of == code);
    let fits = lists.products.values().filter(|product| {
        let kind = product.kind == ProductKind::Carcass;
        // Pieces are bought in cartons, too; what is cured or cooked here is told under its own name.
        kind == of_animal && product.kind != ProductKind::Waste
    });
    let mut fits: Vec<(usize, Arrives)> = fits
        .map(|product| {
            let species = product.species.map_or("", |species| species.as_str());
            let sides = carcass_parts::usual(&product.code, product.species).iter();
            let pick = Pick {
                more: species.to_owned(),
                ..Pick::of(&product.code, names.product(&product.code))
            };
            let arrives = Arrives {
                pick,
                is_bird: product.species.is_some_and(Species::is_bird),
                is_part: carcass_parts::is_part(&product.code),
                usual: odd::usual(product),
                salt: product.curing_salt().map(|of| listed_strength(words, &of)),
                sides: sides
                    .map(|side| side.as_str())
                    .collect::<Vec<_>>()
                    .join(" "),
            };
            (lately(&product.code).unwrap_or(usize::MAX), arrives)
        })
        .collect();
    fits.sort_by_cached_key(|(lately, this)| (*lately, fold(&this.pick.name)));
    fits.into_iter().map(|(_, arrives)| arrives).collect()
}

/// The entries of a list by name; the only one is chosen.
fn listed(list: &BTreeMap<String, Listed>) -> Vec<Pick> {
    let only = list.len() == 1;
    let each = list.iter().map(|(code, entry)| Pick {
        chosen: only,
        ..Pick::of(code, entry.name.clone())
    });
    let mut all: Vec<Pick> = each.collect();
    all.sort_by_cached_key(|one| fold(&one.name));
    all
}

/// One of them chosen, where that is known already.
fn chosen(mut picks: Vec<Pick>, code: Option<&str>) -> Vec<Pick> {
    for pick in &mut picks {
        pick.chosen |= code == Some(pick.code.as_str());
    }
    picks
}

/// How strong a curing salt is by the list: nitrite, and nitrate where it has some.
fn listed_strength(words: &Words, strength: &Strength) -> String {
    let each = [strength.nitrite, strength.nitrate].into_iter().flatten();
    let told = each.map(|of| {
        let percent = words.0.number(of.number().normalize());
        words.say(PageSays::Percent { percent })
    });
    told.collect::<Vec<_>>().join(" + ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_adds_a_supplier_comes_back_to_what_was_received_and_further() {
        let asked = Asked {
            of: Some("bought".to_owned()),
            product: Some("salt".to_owned()),
            supplier: Some("PTS".to_owned()),
            then: Some("/make/cure?product=bacon".to_owned()),
        };
        let back = "/receive?of=bought&product=salt&supplier=PTS&then=/make/cure%3Fproduct%3Dbacon";
        assert_eq!(asked.here(), back);
        let elsewhere = Asked {
            then: Some("//evil.example".to_owned()),
            ..asked
        };
        assert_eq!(
            elsewhere.here(),
            "/receive?of=bought&product=salt&supplier=PTS"
        );
        assert_eq!(Asked::default().here(), "/receive");
    }
}
