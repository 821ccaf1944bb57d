//! What may be chosen in a field of a list: words of the vocabularies, or keys of what the trade knows.

use super::bench::Pick;
use super::spoken::Words;
use crate::caller::Caller;
use crate::lists::fields::{Field, Sort};
use crate::read::seek::fold;
use domain::says::Texts;

/// What may be chosen: words of the vocabularies, or keys of what the trade knows.
pub fn choices(app: &Caller<'_>, words: &Words, field: &Field, value: &str) -> Vec<Pick> {
    let all: Vec<(String, String)> = match field.sort {
        Sort::One(choices) | Sort::Many(choices) => choices()
            .into_iter()
            .map(|(word, says)| (word.to_owned(), words.headed(says)))
            .collect(),
        Sort::Line => known_keys(app, words, field.name),
        _ => Vec::new(),
    };
    let chosen: Vec<&str> = value.lines().collect();
    let mut picks: Vec<Pick> = all
        .into_iter()
        .map(|(word, name)| Pick {
            chosen: chosen.contains(&word.as_str()),
            ..Pick::of(&word, name)
        })
        .collect();
    // Something of their own that stands there already stays to be chosen.
    if matches!(field.sort, Sort::Line) && !picks.is_empty() {
        let own = !value.is_empty() && !picks.iter().any(|pick| pick.chosen);
        picks.extend(own.then(|| Pick {
            chosen: true,
            ..Pick::of(value, value.to_owned())
        }));
    }
    picks
}

/// The keys that the facts of the trade have for a field.
fn known_keys(app: &Caller<'_>, words: &Words, field: &str) -> Vec<(String, String)> {
    let trade = &app.law.trade;
    let said = |text: &Texts| ::words::capital(text.in_language(words.lang()));
    let mut keys: Vec<(String, String)> = match field {
        "cut_style" => {
            let styles = trade.yields.styles.iter();
            styles
                .map(|one| (one.key.clone(), said(&one.name)))
                .collect()
        }
        "cut" => {
            let styles = trade.yields.styles.iter();
            let pieces = styles.flat_map(|style| {
                let of = words.say(style.species.says());
                let pieces = style.pieces.iter();
                pieces.map(move |piece| (piece.key.clone(), said(&piece.name), of.clone()))
            });
            let mut named: Vec<(String, String, Vec<String>)> = Vec::new();
            for (key, name, of) in pieces {
                match named.iter_mut().find(|(known, ..)| *known == key) {
                    Some((_, _, all)) if !all.contains(&of) => all.push(of),
                    Some(_) => {}
                    None => named.push((key, name, vec![of])),
                }
            }
            let named = named.into_iter();
            named
                .map(|(key, name, of)| (key, format!("{name} ({})", of.join(", "))))
                .collect()
        }
        "process" => {
            let steps = trade.yields.steps.iter();
            steps
                .map(|one| (one.key.clone(), said(&one.name)))
                .collect()
        }
        "release.curve" => {
            let curves = trade.cure_room.curves.iter();
            curves.map(|(key, _)| (key.clone(), key.clone())).collect()
        }
        "release.salting" | "cure.salting" => {
            let methods = trade.cure_room.methods.iter();
            methods
                .map(|one| (one.key.clone(), said(&one.name)))
                .collect()
        }
        _ => Vec::new(),
    };
    keys.sort_by_cached_key(|(_, name)| fold(name));
    keys
}
