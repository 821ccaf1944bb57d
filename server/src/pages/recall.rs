//! The recall: what they said on the phone, what that reaches and why, and the hold, in at most four acts.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::incidents::Standing;
use crate::read::names::Names;
use crate::read::scope::{Found, Named};
use crate::read::seek::{self, Thing};
use crate::read::{incidents, scope};
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::grams::Grams;
use domain::incident::Hazard;
use domain::scope::{InScope, Spreads};
use serde::Deserialize;
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
    scope: Option<Scope>,
    /// Is it a drill that begins?
    drill: bool,
    /// Was one just begun?
    begun: bool,
    /// Recalls that are open, and the last that were closed.
    incidents: Vec<Line>,
}

/// Something that may be meant.
struct Choice {
    path: String,
    name: String,
    more: String,
}

/// What it reaches.
struct Scope {
    head: String,
    /// How much is on hand, how much was sold.
    says: String,
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

/// A recall that is there.
struct Line {
    number: String,
    says: String,
    drill: bool,
    open: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    q: Option<String>,
    lot: Option<String>,
    animal: Option<String>,
    spreads: Option<String>,
    /// Any word: a drill is to begin.
    drill: Option<String>,
    /// The deed that was just done.
    did: Option<String>,
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
    let named = match (&asked.lot, &asked.animal) {
        (Some(lot), _) => Some(Named::Lot(lot.clone())),
        (None, Some(animal)) => Some(Named::Animal(animal.clone())),
        (None, None) => None,
    };
    let scope = match named {
        Some(named) => {
            let (found, body) = scope::of(app, conn, &named, spreads, drill)?;
            Some(reached(
                &words, &names, &found, &named, spreads, body, drill,
            ))
        }
        None => None,
    };
    let choices = match q.is_empty() {
        true => Vec::new(),
        false => choices(app, conn, &words, &names, &q, drill)?,
    };
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
        begun: asked.did.is_some(),
        words,
        q,
        choices,
        drill,
        scope,
    })
}

/// Lots and animals that may be meant.
fn choices(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    names: &Names,
    said: &str,
    drill: bool,
) -> Result<Vec<Choice>> {
    let also = if drill { "&drill=yes" } else { "" };
    let found = seek::seek(app, conn, said)?;
    let mut choices = Vec::new();
    for thing in &found.things {
        match thing {
            Thing::Lot(lot, _) => choices.push(Choice {
                path: format!("/recall?lot={}{also}", lot.code),
                name: names.product(&lot.product),
                more: [Some(lot.code.shown()), lot.note.clone()]
                    .into_iter()
                    .flatten()
                    .collect::<Vec<_>>()
                    .join(", "),
            }),
            Thing::Animal(animal) => {
                let from = PageSays::From {
                    what: words.headed(animal.species.says()),
                    farm: names.farm(&animal.farm),
                };
                let number = animal.carcass.as_deref().or(animal.tag.as_deref());
                let name = format!("{} {}", words.say(from), number.unwrap_or_default());
                let day = animal.killed_on;
                choices.push(Choice {
                    path: format!("/recall?animal={}{also}", crate::ids::shown_id(&animal.uid)),
                    name: name.trim().to_owned(),
                    more: words.say(PageSays::Killed { day }),
                });
            }
            _ => {}
        }
    }
    // The animal comes before the lots that came in of it: it is what they name.
    choices.sort_by_key(|choice| !choice.path.contains("animal="));
    Ok(choices)
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
    let also = if drill { "&drill=yes" } else { "" };
    let way = |to: Spreads, key: &str| Way {
        path: format!("/recall?{}&spreads={}{also}", named.query(), to.as_str()),
        says: words.t(key),
        chosen: to == spreads,
    };
    Scope {
        head: words.say(PageSays::RecallLots {
            lots: scope.lots.len(),
        }),
        says: words.say(PageSays::RecallOnHand {
            lots: on_hand.len(),
            weight: totals.on_hand,
            sold: totals.sold_packs,
        }),
        button: match drill {
            true => words.t("page-recall-drill-begin"),
            false => words.say(PageSays::RecallHold {
                lots: on_hand.len(),
                weight: totals.on_hand,
            }),
        },
        body,
        hazards: Hazard::ALL
            .iter()
            .map(|hazard| (hazard.as_str(), words.headed(hazard.says())))
            .collect(),
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

fn line(words: &Words, names: &Names, of: &Standing) -> Line {
    let says = PageSays::RecallStands {
        at: words.minute(of.told_at, names.zone()),
        by: of.told_by.clone(),
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
