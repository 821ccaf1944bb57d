//! What is due on beef that blades or needles went through: the word in its name, and how it is cooked.

use super::gate;
use super::phrases::{LabelWords, Phrases};
use super::retail::languages;
use super::writer::{Said, Writer};
use domain::duties::tenderised::{TenderisedWording, check_cooking, instructed, table};
use domain::heat::HeatTable;
use domain::rows::Finding;
use domain::statement::{NoticeKind, notice};
use labels::Field;
use rust_decimal::{Decimal, RoundingStrategy};
use words::capital;

/// The rule of the place, where the food is such beef.
fn rule<'a>(writer: &Writer<'a>) -> Option<&'a TenderisedWording> {
    let wording = writer.law().duties.tenderised.as_ref();
    wording.filter(|_| gate::is_tenderised_beef(writer))
}

/// The table that it is cooked by, where the label has to tell how and the law has no words for that.
fn cooked_by<'a>(writer: &Writer<'a>) -> Option<&'a HeatTable> {
    let heat = &writer.law().heat;
    let of_place = heat.code_year.as_ref().map(|(year, _)| *year);
    let year = writer.kitchen.entry.code_year.or(of_place);
    table(rule(writer)?, heat, year.unwrap_or_default())
}

/// Words of which its label has one, where the place leaves the choice.
pub fn one_of<'a>(writer: &Writer<'a>) -> Vec<&'a str> {
    let words = rule(writer).map(|rule| rule.one_of.iter().map(String::as_str));
    words.into_iter().flatten().collect()
}

/// How it is cooked, in one language: as the kitchen has shown, else by the figures of the place.
pub fn instructions(writer: &Writer<'_>, phrases: &Phrases) -> Option<String> {
    let table = cooked_by(writer)?;
    let told = writer.product.standard.cooking.as_ref();
    let (core, held) = instructed(told, table);
    let own = told.map(|told| told.method.in_language(phrases.language));
    let own = own.filter(|own| !own.is_empty());
    let method = own.map_or_else(|| phrases.text("label-cook-method"), str::to_owned);
    let method = capital(method.trim_end_matches('.'));
    // Never cooler than the row on the scale that it is not printed on.
    let up =
        |degrees: Decimal| degrees.round_dp_with_strategy(0, RoundingStrategy::ToPositiveInfinity);
    let (fahrenheit, celsius) = (up(core.in_fahrenheit()), up(core.in_celsius()));
    Some(phrases.say(match held.is_zero() {
        true => LabelWords::CookAtOnce {
            method,
            fahrenheit,
            celsius,
        },
        false => LabelWords::CookAndHold {
            method,
            fahrenheit,
            celsius,
            hold: held.into(),
        },
    }))
}

/// What stands against the way to cook it that the kitchen tells.
pub fn against(writer: &Writer<'_>) -> Option<Finding> {
    let told = writer.product.standard.cooking.as_ref()?;
    check_cooking(told, cooked_by(writer)?, &writer.law().rows)
}

/// The word before the name, where the name lacks it and the law fixes it in that language.
pub fn name(writer: &Writer<'_>, said: &mut Said) {
    let choice = one_of(writer);
    let name = said.0.get(&Field::Name).cloned().unwrap_or_default();
    let has = |words: &&str| name.to_lowercase().contains(words);
    let words = notice(&writer.law().statements, NoticeKind::MechanicallyTenderized);
    let fixed = words.filter(|_| writer.first.language == "en");
    if let (false, Some(words)) = (choice.is_empty() || choice.iter().any(has), fixed) {
        let words = capital(words.in_language(writer.first.language));
        said.say(Field::Name, format!("{words} {name}"));
    }
}

/// What stands beside the caution, in the words that the law fixes: each language's in its own place, and not
/// again what the name says already.
pub fn of_pack(writer: &Writer<'_>, said: &mut Said) {
    if !gate::is_tenderised_beef(writer) {
        return;
    }
    let lines = gate::must_say(writer);
    let rules = &writer.law().statements;
    let notice = notice(rules, NoticeKind::MechanicallyTenderized);
    let printed: Vec<String> = [Field::Name, Field::SecondName]
        .iter()
        .filter_map(|field| said.0.get(field))
        .map(|name| name.to_lowercase())
        .collect();
    let is_named = |words: &str| printed.iter().any(|name| name.contains(words));
    let choice = one_of(writer);
    let told = |language: &str| {
        let first = writer.first.language;
        let second = writer.second.as_ref().map(|second| second.language);
        let is_here = |of: &str| of == language || language == first && Some(of) != second;
        let lines = lines
            .iter()
            .filter(|(of, words)| is_here(of) && !is_named(words));
        // As a sentence; the gate reads past the capital.
        let sentence = |words: &str| format!("{}.", capital(words.trim_end_matches('.')));
        let lines: Vec<String> = lines.map(|(_, words)| sentence(words)).collect();
        lines.join(" ")
    };
    for (phrases, fields) in languages(writer) {
        let mut words = told(phrases.language);
        let in_name = choice.iter().any(|words| is_named(words));
        if let Some(notice) = notice.filter(|_| lines.is_empty() && !in_name)
            && phrases.language == writer.first.language
        {
            words = format!("{}.", capital(notice.in_language(phrases.language)));
        }
        let before = said.0.get(&fields.caution).cloned().unwrap_or_default();
        let cooking = instructions(writer, &phrases).unwrap_or_default();
        let all = [before, words, cooking];
        let all: Vec<String> = all.into_iter().filter(|text| !text.is_empty()).collect();
        said.say(fields.caution, all.join(" "));
    }
}
