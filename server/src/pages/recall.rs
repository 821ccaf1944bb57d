//! The recall: what they said on the phone, what that reaches and why, and the hold, in at most four acts.

use super::recall_days::Over;
use super::recall_named::{Asked, Begins, Choice, called, choices};
use super::recall_sold::{self, Sold};
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::incidents::Standing;
use crate::read::names::Names;
use crate::read::scope::{Found, Named};
use crate::read::seek;
use crate::read::{incidents, scope};
use actix_web::http::StatusCode;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::grams::Grams;
use domain::incident::Hazard;
use domain::scope::{How, InScope, Spreads};
use std::collections::BTreeSet;
use store::Conn;

#[derive(Template)]
#[template(path = "recall.html")]
struct Recall {
    words: Words,
    q: String,
    /// What was typed fits nothing.
    none: Option<String>,
    /// What it may be.
    choices: Vec<Choice>,
    /// Words that name nothing of what was found.
    left_out: Option<String>,
    /// Over which days, where that is to be said first.
    over: Option<Over>,
    scope: Option<Scope>,
    /// Is it a drill that begins?
    drill: bool,
    /// The one that was just begun, with what it holds.
    begun: Option<Begun>,
    /// Recalls that are open, and the last that were closed.
    incidents: Vec<Line>,
}

/// What it reaches.
struct Scope {
    /// What it begins with.
    about: String,
    /// How many lots are affected.
    head: String,
    /// How much is on hand, how much was sold.
    says: String,
    /// Which packs that was, and when.
    sold: Vec<Sold>,
    /// Are those too many to be read at a glance?
    sold_much: bool,
    /// What the deed asks, but for who told it and why.
    body: String,
    button: String,
    hazards: Vec<(&'static str, String)>,
    /// The same question, as far, or further.
    ways: Vec<Way>,
    on_hand: Vec<Row>,
    gone: Vec<Row>,
    outside: Vec<(Option<String>, String)>,
    figures: Vec<(String, String)>,
}

struct Way {
    path: String,
    says: String,
    chosen: bool,
}

struct Row {
    code: String,
    shown: String,
    name: String,
    left: String,
    place: String,
    because: String,
}

/// A recall that was just begun.
struct Begun {
    number: String,
    id: String,
    /// `Held: 53 packs, 26.247 kg`.
    head: String,
    says: String,
    holds: bool,
}

/// A recall that is there.
struct Line {
    number: String,
    says: String,
    drill: bool,
    open: bool,
}

/// The recall.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, recall).await
}

fn recall(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<Recall> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let q = asked.q.clone().unwrap_or_default();
    let spreads = asked.spreads.as_deref().and_then(Spreads::parse);
    let spreads = spreads.unwrap_or(Spreads::Lineage);
    let drill = asked.drill.is_some();
    let (mut scope, mut over) = (None, None);
    match asked.begins(words.0.today.unwrap_or_default())? {
        Begins::Nowhere => {}
        Begins::Over(field, code, days) => {
            over = Some(Over::of(&words, &names, conn, (field, &code), days, drill)?);
        }
        Begins::With(named) => {
            let found = scope::of(app, conn, &named, spreads, drill);
            let is_nothing = match &found {
                Ok((found, _)) => found.scope.lots.is_empty(),
                Err(error) => error.problem().status == StatusCode::NOT_FOUND,
            };
            // Nothing on record over those days is not to say that nothing is here.
            if let Some((field, code, days)) = named.over().filter(|_| is_nothing) {
                let none = Over::none(&words, &names, field, code, days);
                let of = Over::of(&words, &names, conn, (field, code), days, drill)?;
                over = Some(Over {
                    none: Some(none),
                    ..of
                });
            } else {
                let (found, body) = found?;
                let about = called(&words, &names, conn, &named)?;
                let reached = reached(&words, &names, &found, &named, spreads, body, drill);
                scope = Some(reached.about(about, &words, &names, &found));
            }
        }
    }
    let sought = match q.is_empty() {
        true => seek::Sought::default(),
        false => seek::seek(app, conn, &q)?,
    };
    let choices = choices(&words, &names, &sought.things, drill);
    let left_out = (!choices.is_empty() && !sought.left_out.is_empty()).then(|| {
        words.say(PageSays::LeftOut {
            words: sought.left_out.join(" "),
        })
    });
    let told = asked.did.is_some() || scope.is_none();
    let incidents = match told {
        true => incidents::standing(conn)?,
        false => Vec::new(),
    };
    Ok(Recall {
        none: (!q.is_empty() && choices.is_empty())
            .then(|| words.say(PageSays::FoundNothing { said: q.clone() })),
        incidents: incidents
            .iter()
            .map(|of| line(&words, &names, of))
            .collect(),
        begun: incidents
            .first()
            .filter(|_| asked.did.is_some())
            .map(|of| begun(&words, &names, of)),
        words,
        q,
        choices,
        left_out,
        drill,
        over,
        scope,
    })
}

fn reached(
    words: &Words,
    names: &Names,
    found: &Found,
    named: &Named,
    spreads: Spreads,
    body: String,
    drill: bool,
) -> Scope {
    let scope = &found.scope;
    let by_key = found.by_key();
    let row = |lot: &InScope| {
        let places: BTreeSet<String> = lot
            .packs
            .iter()
            .map(|pack| names.place_of(pack.place))
            .collect();
        let because = lot.because.first();
        let because = because.and_then(|of| found.because(of, &by_key, words.lang()));
        Row {
            code: lot.code.to_string(),
            shown: lot.code.shown(),
            name: match &lot.note {
                Some(note) => format!("{}, {note}", names.product(&lot.product)),
                None => names.product(&lot.product),
            },
            left: words.grams(lot.went.on_hand),
            place: places.into_iter().collect::<Vec<_>>().join(", "),
            because: because.map_or_else(String::new, |says| words.say(says)),
        }
    };
    let (on_hand, gone): (Vec<&InScope>, Vec<&InScope>) =
        scope.lots.iter().partition(|lot| !lot.packs.is_empty());
    let totals = &scope.totals;
    let figures = [
        ("page-recall-sold", totals.sold),
        ("page-recall-served", totals.served),
        ("page-recall-discarded", totals.discarded),
        ("page-recall-shipped", totals.shipped),
        ("page-recall-unexplained", totals.unexplained),
    ];
    let figures = figures.iter().filter(|(_, grams)| *grams != Grams::ZERO);
    let sold = recall_sold::sold(words, names, &scope.lots);
    let also = if drill { "&drill=yes" } else { "" };
    let way = |to: Spreads, key: &str| Way {
        path: format!("/recall?{}&spreads={}{also}", named.query(), to.as_str()),
        says: words.t(key),
        chosen: to == spreads,
    };
    Scope {
        about: String::new(),
        head: words.say(PageSays::RecallLots {
            lots: scope.lots.len(),
        }),
        says: words.say(PageSays::RecallOnHand {
            lots: on_hand.len(),
            weight: totals.on_hand,
            sold: totals.sold_packs,
        }),
        sold_much: sold.len() > recall_sold::AT_A_GLANCE,
        sold,
        button: match drill {
            true => words.t("page-recall-drill-begin"),
            false => words.say(PageSays::RecallHold {
                lots: on_hand.len(),
                weight: totals.on_hand,
            }),
        },
        body,
        hazards: hazards(words),
        ways: vec![
            way(Spreads::Lineage, "page-recall-lineage"),
            way(Spreads::Contact, "page-recall-contact"),
        ],
        on_hand: on_hand.into_iter().map(row).collect(),
        gone: gone.into_iter().map(row).collect(),
        outside: scope
            .outside
            .iter()
            .map(|out| {
                (
                    out.lot.as_ref().map(|lot| lot.shown()),
                    words.say(out.why.clone()),
                )
            })
            .collect(),
        figures: figures
            .map(|(key, grams)| (words.t(key), words.grams(*grams)))
            .collect(),
    }
}

impl Scope {
    /// With what it begins with, as it is called: of a lot that is its product, its code and where it came from.
    fn about(self, about: (String, String), words: &Words, names: &Names, found: &Found) -> Scope {
        let (mut name, more) = about;
        if let ([lot], true) = (starts(found).as_slice(), more.is_empty()) {
            name = words.say(PageSays::AndMore {
                what: names.product(&lot.product),
                more: lot.code.shown(),
            });
        }
        let about = match more.is_empty() {
            true => name,
            false => format!("{name}, {more}"),
        };
        Scope { about, ..self }
    }
}

/// The lots that were named.
fn starts(found: &Found) -> Vec<&InScope> {
    let named = |lot: &&InScope| lot.because.iter().any(|of| of.how == How::Named);
    found.scope.lots.iter().filter(named).collect()
}

/// What it may be about: what nobody knows yet comes first, so that no choice is made by haste.
pub(super) fn hazards(words: &Words) -> Vec<(&'static str, String)> {
    let unknown = (
        Hazard::Other.as_str(),
        words.t("page-recall-hazard-unknown"),
    );
    let known = Hazard::ALL.iter().filter(|of| **of != Hazard::Other);
    let known = known.map(|hazard| (hazard.as_str(), words.headed(hazard.says())));
    std::iter::once(unknown).chain(known).collect()
}

/// Who told it, or that nobody noted it yet.
fn told_by(words: &Words, of: &Standing) -> String {
    match of.told_by.is_empty() {
        true => words.t("page-recall-no-name"),
        false => of.told_by.clone(),
    }
}

fn begun(words: &Words, names: &Names, of: &Standing) -> Begun {
    let head = PageSays::RecallHeld {
        number: of.number.clone(),
        packs: of.packs,
        weight: of.weight,
    };
    Begun {
        number: of.number.clone(),
        id: of.id.clone(),
        head: match of.drill {
            true => of.number.clone(),
            false => words.say(head),
        },
        says: words.say(PageSays::RecallSince {
            by: told_by(words, of),
            at: words.minute(of.began_at, names.zone()),
        }),
        holds: !of.drill && of.packs > 0,
    }
}

fn line(words: &Words, names: &Names, of: &Standing) -> Line {
    let says = PageSays::RecallStands {
        at: words.minute(of.told_at, names.zone()),
        by: told_by(words, of),
        packs: of.packs,
        weight: of.weight,
    };
    Line {
        number: of.number.clone(),
        says: words.say(says),
        drill: of.drill,
        open: of.open,
    }
}
