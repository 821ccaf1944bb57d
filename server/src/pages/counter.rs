//! The counter: one word that fills the screen, what it is of, and what the thumb does with it.

use super::basket::{self, Basket};
use super::counter_acts::{Act, Does, acts};
use super::counter_did::Did;
use super::counter_ready::{self, Ready};
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::kitchen::Kitchen;
use crate::read::{self, LoadedFamily};
use crate::rooms::{Room, within};
use crate::routes::any_query;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::ask::Asker;
use domain::counter::{self, ScanView};
use domain::lot::Pack;
use domain::lot::numbers::in_runs;
use domain::right::Right;
use domain::words::{Being, Verdict};
use serde::Deserialize;
use store::Conn;
use store::family::Extent;

/// From so many letters on a sentence under the word is set smaller.
const MUCH: usize = 110;

#[derive(Template)]
#[template(path = "counter.html")]
struct CounterPage {
    words: Words,
    /// What was scanned before for the same guest, as an address says it.
    with: String,
    answer: Option<Answer>,
    basket: Basket,
    /// What was just done.
    did: Option<Did>,
    acts: Vec<Act>,
    /// Which one it is, where the code names several.
    choices: Vec<Choice>,
    /// The numbers that are not among them.
    gone: Option<String>,
    /// Where nothing was scanned: what may be sold now.
    ready: Vec<Ready>,
    /// May whoever looks ask what is in everything?
    sees: bool,
}

/// What is said of a part of a code.
const PART: &str = "verdict-part";

/// What is said of what is no code of ours.
const NOT_OURS: &str = "verdict-not-ours";

/// The most that are offered to choose from.
const MOST_CHOICES: usize = 60;

/// A pack of the lot that was named, or a lot whose code has what was typed.
struct Choice {
    name: String,
    more: String,
    path: String,
}

/// The word, and what led to it.
pub struct Answer {
    /// The verdict as it is spelt: its shape, its edge and its sound go by it.
    verdict: String,
    word: String,
    /// Is it too long for the largest letters?
    long: bool,
    says: String,
    /// Is that much to read?
    much: bool,
    /// What else stands in its way.
    reasons: Vec<String>,
    asked: String,
    /// May it be sold? What is said besides is then a warning.
    sells: bool,
    /// Is it only a part of a code?
    is_part: bool,
    /// The one pack that it is of, as a deed names it: this device may have sold it, and nobody else knows yet.
    packed: Option<String>,
    pack: Option<Known>,
    /// Of a pack that is gone: how it can be here all the same, and what to do.
    gone: Option<String>,
}

/// What is known of what was scanned.
struct Known {
    /// Where its lot is told of, with the pack in the hand.
    path: String,
    name: String,
    /// Which pack of which lot, and how much is in it.
    which: String,
    allergens: String,
    kind: String,
    kind_class: &'static str,
    /// Animals that the name does not tell: each is shouted.
    shouted: Vec<String>,
    animals: String,
    /// Said where not all animals in it are known.
    animals_unknown: bool,
    price: Option<String>,
    whole_lot: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    code: Option<String>,
    /// Deeds that were just done, with commas between.
    did: Option<String>,
    /// Packs for the same guest, with commas between.
    with: Option<String>,
}

/// The verdict on what was scanned; without a code, the field alone.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::page(asking.speech(), ask(&request, asking).await)
}

async fn ask(request: &HttpRequest, asking: Asking) -> Result<CounterPage> {
    let asked: Asked = any_query(request)?;
    within(Room::Scan, move || {
        let app = asking.caller();
        app.store.look(|conn| {
            let kitchen = app.kitchen_lately(conn)?;
            read(&app, conn, &kitchen, &asked)
        })
    })
    .await
}

fn read(
    app: &Caller<'_>,
    conn: &mut Conn,
    kitchen: &Kitchen,
    asked: &Asked,
) -> Result<CounterPage> {
    let words = Words(app.speech(kitchen));
    let with = asked.with.as_deref().unwrap_or_default();
    let named = basket::packs(app, conn, kitchen, with)?;
    let dropped = named.says_dropped(&words);
    let mut packs = named.packs;
    let code = asked.code.as_deref().filter(|code| !code.trim().is_empty());
    let mut scan = None;
    let mut answer = None;
    let mut choices = Vec::new();
    if let Some(code) = code {
        let view = read::scan::scan(app, conn, kitchen, code)?;
        let mut told = answered(&words, &view, code, &kitchen.entry.currency.0);
        if let Some((told, known)) = told.pack.as_mut().zip(view.known.as_ref()) {
            with_animals(app, conn, &words, told, known)?;
        }
        choices = match &view.known {
            Some(known) => which_pack(&words, known, with),
            None if told.is_part => which_lot(app, conn, &words, code, with)?,
            None => Vec::new(),
        };
        answer = Some(told);
        scan = Some(view);
    }
    // What is scanned now is one more for the same guest, once.
    let before = packs.len();
    packs.extend(scan.as_ref().and_then(basket::sellable));
    basket::each_once(&mut packs);
    let did = Did::of(app, conn, &words, kitchen, asked.did.as_deref())?;
    let basket = Basket {
        dropped,
        ..Basket::of(&words, &packs, before, kitchen)
    };
    let ready = match answer {
        Some(_) => Vec::new(),
        None => counter_ready::lots(app, conn, &words, &basket.with_before)?,
    };
    Ok(CounterPage {
        ready,
        acts: acts(app, &words, scan.as_ref(), &basket),
        with: basket.with_before.clone(),
        gone: scan
            .as_ref()
            .and_then(|scan| scan.known.as_ref())
            .filter(|_| !choices.is_empty())
            .and_then(|known| not_there(&words, known)),
        choices,
        sees: app.who.may(Right::See),
        words,
        answer,
        basket,
        did,
    })
}

fn answered(words: &Words, scan: &ScanView, code: &str, currency: &str) -> Answer {
    let answer = &scan.answer;
    // A word without a figure is no code of anybody's.
    let is_name = answer.says.key() == NOT_OURS
        && code.chars().any(char::is_alphabetic)
        && !code.chars().any(|letter| letter.is_ascii_digit());
    let says = match is_name {
        true => words.t("page-counter-no-name"),
        false => words.say(answer.says.clone()),
    };
    let others = answer.reasons.iter().filter(|says| **says != answer.says);
    let is_part = scan.known.is_none() && answer.says.key() == PART;
    let sells = matches!(answer.verdict, Verdict::Sell | Verdict::SellToday);
    // A lot is not sold, a pack of it is: its word is which, not sell.
    let asks = sells
        && scan
            .known
            .as_ref()
            .is_some_and(|known| known.pack.is_none());
    let (word, verdict) = match (asks, is_part) {
        (true, _) => (words.t("page-counter-which-pack"), "choose".to_owned()),
        (_, true) => (words.t("page-counter-which-lot"), "choose".to_owned()),
        _ => (words.say(answer.verdict.says()), answer.verdict.to_string()),
    };
    Answer {
        long: asks
            || matches!(
                answer.verdict,
                Verdict::SellToday | Verdict::NotForSale | Verdict::Unknown
            ),
        word,
        verdict,
        sells,
        is_part,
        much: says.chars().count() > MUCH,
        says,
        reasons: others.map(|says| words.say(says.clone())).collect(),
        asked: code.trim().chars().take(80).collect(),
        packed: scan.known.as_ref().and_then(|known| {
            let pack = known.pack?;
            Some(format!("{}/{pack}", known.lot.code))
        }),
        pack: scan
            .known
            .as_ref()
            .map(|known| told(words, known, currency)),
        gone: (answer.verdict == Verdict::Gone).then(|| {
            let pack = scan.known.as_ref().and_then(counter::Known::pack);
            words.t(gone_how(pack.map(|pack| pack.now.being)))
        }),
    }
}

/// Only what was sold can have been brought back by a guest.
fn gone_how(being: Option<Being>) -> &'static str {
    match being {
        Some(Being::Discarded) => "page-counter-gone-discarded",
        Some(Being::Used | Being::Served | Being::Shipped | Being::Returned) => {
            "page-counter-gone-otherwise"
        }
        _ => "page-counter-gone-how",
    }
}

/// The packs of a lot that the record has on hand, where no one of them was named.
fn which_pack(words: &Words, known: &counter::Known, with: &str) -> Vec<Choice> {
    if known.pack.is_some() || known.lot.voided {
        return Vec::new();
    }
    let packs = known.lot.on_hand().take(MOST_CHOICES);
    let choice = |pack: &Pack| Choice {
        name: pack.number.to_string(),
        more: words.grams(pack.now.left),
        path: way(&format!("{}/{}", known.lot.code, pack.number), with),
    };
    packs.map(choice).collect()
}

/// The packs of that lot that are not there any more; their numbers lack among the choices.
fn not_there(words: &Words, known: &counter::Known) -> Option<String> {
    let there: Vec<u32> = known.lot.on_hand().map(|pack| pack.number).collect();
    let gone: Vec<u32> = (1..=known.lot.pack_count)
        .filter(|number| !there.contains(number))
        .collect();
    let packs = in_runs(&gone);
    (there.len() <= MOST_CHOICES && !gone.is_empty())
        .then(|| words.say(PageSays::PacksGone { packs }))
}

/// The lots whose code has the part that was typed.
fn which_lot(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    code: &str,
    with: &str,
) -> Result<Vec<Choice>> {
    let mut choices = Vec::new();
    for row in read::scan::near(conn, code)? {
        let product = app.product(conn, row.version_id)?;
        let lot = row.code()?;
        choices.push(Choice {
            name: lot.shown(),
            more: product.name(words.lang()).to_owned(),
            path: way(&lot.to_string(), with),
        });
    }
    Ok(choices)
}

/// Where the counter tells of that code, with what the guest has already.
fn way(code: &str, with: &str) -> String {
    match with.is_empty() {
        true => format!("/counter?code={code}"),
        false => format!("/counter?code={code}&with={with}"),
    }
}

fn told(words: &Words, known: &counter::Known, currency: &str) -> Known {
    let lot = &known.lot;
    let which = [
        Some(lot.code.shown()),
        known
            .pack
            .map(|pack| words.say(PageSays::CounterPack { pack })),
        known
            .pack()
            .filter(|pack| !pack.now.left.is_none_left())
            .map(|pack| words.grams(pack.now.left)),
    ];
    let which: Vec<String> = which.into_iter().flatten().collect();
    let price = known.price_minor().filter(|minor| *minor > 0);
    let pack = known.pack.filter(|_| lot.pack_count > 1);
    Known {
        path: match pack {
            Some(pack) => format!("/lots/{}?pack={pack}", lot.code),
            None => format!("/lots/{}", lot.code),
        },
        name: lot.product.name(words.lang()).to_owned(),
        which: which.join(", "),
        allergens: words.allergens_called(lot),
        kind: words.raw_or_ready(lot),
        kind_class: if lot.is_called_ready() { "ready" } else { "" },
        shouted: Vec::new(),
        animals: String::new(),
        animals_unknown: false,
        // An empty pack costs nothing, and has no price.
        price: price.map(|minor| words.money(minor, currency)),
        whole_lot: known.pack.is_none(),
    }
}

/// The animals in it, by everything that went in; those that its name does not tell are shouted.
fn with_animals(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    told: &mut Known,
    known: &counter::Known,
) -> Result<()> {
    let extent = Extent {
        packs: Some(&[]),
        ..Extent::ANCESTORS
    };
    let id = known.lot.id;
    let reading = LoadedFamily::load(app.app(), conn, &[id.0], extent)?;
    let rules = &reading.law.statements.species;
    let mut asker = Asker::new(&reading.family, &app.law.trade.ask, rules);
    let (animals, are_all) = asker.animals(id);
    let meat = |species| {
        let topic = domain::ask::Topic::Species(species);
        words.say(topic.says(rules))
    };
    let own = known.lot.product.species;
    let unsaid = animals.iter().filter(|species| {
        own != Some(**species) && !rules.tells(&told.name, **species, words.lang())
    });
    told.shouted = unsaid
        .map(|species| {
            words.say(PageSays::CounterAnimal {
                species: species.as_str().to_owned(),
                meat: meat(*species),
            })
        })
        .collect();
    // Its own animal first.
    let first = animals.iter().filter(|species| own == Some(**species));
    let others = animals.iter().filter(|species| own != Some(**species));
    let named: Vec<String> = first.chain(others).map(|species| meat(*species)).collect();
    told.animals = ::words::capital(&named.join(", "));
    told.animals_unknown = !are_all;
    Ok(())
}
