//! Check values of ingredient lists, allergens, date words, notices and heights.
//!
//! A food is written `trim/maigre:767@pig|spice:8~spice[salt:3|fennel:1]|ale:70+barley+wheat`: name (and
//! French name), grams, then `+allergen`, `~nature`, `@species`, `#additive`, `&lot`, `!` for what the name
//! speaks of, and parts in brackets. Emphasis comes out between stars.

use super::Input;
use domain::grams::Grams;
use domain::ingredients::{self, Ingredient, Nature};
use domain::law::Law;
use domain::rows::{Finding, Gravity};
use domain::says::Arg;
use domain::statement::{self, DateKind, Food, Lettering, NoticeKind, Runs, Sale, StatementStyle};
use domain::words::{Allergen, Profile, Species};
use law::Shipped;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeSet;

pub fn run(task: &str, input: &Input, shipped: &Shipped) -> String {
    let place = Profile::parse(input.text("place")).expect("a place");
    let law = shipped.laws.of(place);
    let rules = &law.statements;
    let language = input.maybe("in").unwrap_or("en");
    match task {
        "list" | "contains" | "may-contain" | "species" | "declared" | "findings" => {
            written(task, input, law, language)
        }
        "check-contains" => {
            let (allergens, text) = (words(input.text("allergens")), input.text("text"));
            let findings = statement::check_contains(rules, &law.rows, &allergens, text, language);
            found(&findings)
        }
        "changes" => {
            let (before, after) = (food(input, "before"), food(input, "after"));
            let change = statement::changes(&before, &after);
            change.map_or("none".into(), |change| {
                let says = Arg::Sentences(change.says());
                words::Speech::default().arg(&says)
            })
        }
        "date" => date(input, law),
        "dates-due" => dates_due(input, law),
        "due" => {
            let sale = Sale::parse(input.text("sale")).expect("a way of selling");
            let due = rules.due(sale).expect("it is there");
            let list = if due.ingredients { "list" } else { "no list" };
            format!("{list}, {:?}", due.allergens)
        }
        "words" => found(&statement::check_words(
            rules,
            &law.rows,
            input.text("text"),
        )),
        "notice" => {
            let kind = NoticeKind::parse(input.text("kind")).expect("a notice");
            let words = statement::notice(rules, kind);
            words.map_or("none".into(), |words| {
                words.in_language(language).to_owned()
            })
        }
        "origin" => {
            let (reared, killed) = (input.text("reared"), input.text("slaughtered"));
            statement::origin(rules, input.maybe("born"), reared, killed, language).join(" / ")
        }
        "languages" => {
            let given: Vec<&str> = input.text("given").split(',').collect();
            let finding = statement::check_languages(rules, &law.rows, &given);
            found(finding.as_slice())
        }
        "height" => {
            let what = Lettering::parse(input.text("what")).expect("letters");
            let height = statement::letter_height(rules, what, input.get("cm2"));
            height.map_or("none".into(), |height| {
                let leading = height.leading.map(|leading| format!(", lines {leading}"));
                format!("{} mm{}", height.millimetres, leading.unwrap_or_default())
            })
        }
        "check-height" => {
            let what = Lettering::parse(input.text("what")).expect("letters");
            let finding =
                statement::check_height(rules, &law.rows, what, input.get("cm2"), input.get("mm"));
            found(finding.as_slice())
        }
        "last-day" => {
            let kind = rules.dates.last_day();
            kind.map_or("the house's words", DateKind::as_str).into()
        }
        "short-label" => yes_or_no(rules.short_label_here()),
        "label-origin" => {
            let species = Species::parse(input.text("of")).expect("an animal");
            let of = rules.origin.as_ref().map(|origin| &origin.species);
            yes_or_no(of.is_some_and(|all| all.contains(&species)))
        }
        "net-told" => {
            let grams = Grams::whole(input.get("grams"));
            let told = rules.net.as_ref().map(|rules| rules.text_of(grams, true));
            told.map_or("silent".into(), |told| told.replace('\u{a0}', " "))
        }
        "net-metric" => {
            let rules = rules.metric_net.as_ref().expect("there is a rule");
            let told = rules.told(Grams::from_milligrams(input.get("milligrams")));
            told.milligrams().to_string()
        }
        "net-weight" => {
            let text = input.text("text");
            let pounds: Decimal = input.get("pounds");
            let milligrams = (pounds * Decimal::new(45_359_237, 2)).round();
            let grams = Grams::from_milligrams(milligrams.to_i64().expect("a weight"));
            let finding = statement::check_net_weight(rules, &law.rows, text, grams);
            found(finding.as_slice())
        }
        "solution" => {
            let grams = |key: &str| Grams::whole(input.get(key));
            match statement::solution_percent(grams("solution"), grams("meat")) {
                Ok(percent) => percent.to_string(),
                Err(refusal) => format!("cannot be: {}", refusal.field.unwrap_or_default()),
            }
        }
        _ => panic!("no task {task}"),
    }
}

fn written(task: &str, input: &Input, law: &Law, language: &str) -> String {
    let food = food(input, "parts");
    let style = StatementStyle {
        merged: input.maybe("style") == Some("merged"),
        small_last: input.maybe("style") != Some("by-weight"),
    };
    let written = statement::write(&law.statements, &law.rows, &food, &[language], style);
    let one = &written.languages[language];
    match task {
        "list" => starred(&one.list),
        "contains" => starred(&one.contains),
        "may-contain" => starred(&one.may_contain),
        "species" => one.species.clone().unwrap_or("none".into()),
        "declared" => {
            let words: Vec<&str> = written.allergens.iter().map(|word| word.as_str()).collect();
            if words.is_empty() {
                "none".into()
            } else {
                words.join(",")
            }
        }
        _ => found(&written.findings),
    }
}

fn date(input: &Input, law: &Law) -> String {
    let kind = DateKind::parse(input.text("kind")).expect("a kind of date");
    let day = input.get("day");
    let ask = statement::DateAsk {
        kind,
        day,
        from: input.try_get("from").unwrap_or(day),
        reader: match input.maybe("reader") {
            Some("kitchen") => statement::Reader::Kitchen,
            _ => statement::Reader::Customer,
        },
        short: input.maybe("short") == Some("yes"),
    };
    let languages: Vec<&str> = input.maybe("in").unwrap_or("en").split(',').collect();
    match statement::date_mark(&law.statements, &law.rows, &ask, &languages) {
        Ok(mark) if mark.findings.is_empty() => mark.text,
        Ok(mark) => found(&mark.findings),
        Err(refusal) => format!("cannot be: {}", refusal.field.unwrap_or_default()),
    }
}

fn dates_due(input: &Input, law: &Law) -> String {
    let packing = statement::DatePacking {
        packed_here: input.text("packed") == "here",
        days: input.get("days"),
        perishable: input.maybe("perishable") == Some("yes"),
        at_room_temperature: input.maybe("room") == Some("yes"),
    };
    let needed = statement::dates_due(&law.statements, &packing);
    let names = |kinds: &[DateKind]| {
        let kinds: Vec<&str> = kinds.iter().map(|kind| kind.as_str()).collect();
        kinds.join(" + ")
    };
    if needed.kinds.is_empty() {
        return "none".into();
    }
    let storage = if needed.storage { " + storage" } else { "" };
    let instead = match needed.instead.as_slice() {
        [] => String::new(),
        kinds => format!(", or {}", names(kinds)),
    };
    format!("{}{storage}{instead}", names(&needed.kinds))
}

/// `ok`, or the gravity and row of each finding.
fn found(findings: &[Finding]) -> String {
    let one = |finding: &Finding| {
        let gravity = match finding.gravity {
            Gravity::Note => "note",
            Gravity::Warn => "warn",
            Gravity::Refuse => "refuse",
        };
        let rows: Vec<&str> = finding.rows.iter().map(|row| row.as_str()).collect();
        format!("{gravity} {}", rows.join(" "))
    };
    match findings {
        [] => "ok".into(),
        findings => findings.iter().map(one).collect::<Vec<_>>().join(", "),
    }
}

fn yes_or_no(answer: bool) -> String {
    if answer { "yes" } else { "no" }.into()
}

fn starred(runs: &Runs) -> String {
    let one = |run: &statement::TextRun| match run.strong {
        true => format!("*{}*", run.text),
        false => run.text.clone(),
    };
    match runs.is_empty() {
        true => "none".into(),
        false => runs.iter().map(one).collect(),
    }
}

fn words(text: &str) -> BTreeSet<Allergen> {
    let words = text.split(',').filter(|word| !word.is_empty());
    words
        .map(|word| Allergen::parse(word).unwrap_or_else(|| panic!("no allergen {word}")))
        .collect()
}

fn food(input: &Input, key: &str) -> Food {
    let inputs = input.maybe(key).map_or(Vec::new(), |text| {
        let mut rest = text;
        let parts = parts(&mut rest);
        assert!(rest.is_empty(), "left over: {rest}");
        parts
    });
    Food {
        name: input.maybe("name").unwrap_or_default().to_owned(),
        names: std::sync::Arc::new(
            input
                .maybe("name")
                .map(|name| ("en".to_owned(), name.to_owned()))
                .into_iter()
                .collect(),
        ),
        parts: ingredients::of_step("the food itself", inputs),
        allergens: input.maybe("allergens").map(words).unwrap_or_default(),
        sulphites_ppm: input.try_get("sulphites"),
        may_contain: input.maybe("may").map(words).unwrap_or_default(),
        species: input
            .maybe("of")
            .map(|text| Species::parse(text).expect("an animal")),
        finished: input.try_get("finished").map(Grams::whole),
        ..Food::default()
    }
}

fn parts(text: &mut &str) -> Vec<Ingredient> {
    let mut parts = vec![part(text)];
    while let Some(rest) = text.strip_prefix('|') {
        *text = rest;
        parts.push(part(text));
    }
    parts
}

fn part(text: &mut &str) -> Ingredient {
    let mut take = |ends: &[char]| {
        let end = text.find(ends).unwrap_or(text.len());
        let (taken, rest) = text.split_at(end);
        *text = rest;
        taken
    };
    const MARKS: [char; 9] = ['+', '~', '@', '#', '&', '!', '[', ']', '|'];
    let names = take(&[':']);
    let grams: Decimal = take(&MARKS)[1..].parse().expect("grams");
    let (english, french) = names.split_once('/').unwrap_or((names, names));
    let mut one = Ingredient {
        product: english.to_owned(),
        names: std::sync::Arc::new(
            [("en", english), ("fr", french)]
                .map(|(tag, name)| (tag.into(), name.into()))
                .into(),
        ),
        grams: Grams::from_milligrams((grams * Decimal::ONE_THOUSAND).try_into().expect("whole")),
        ..Ingredient::default()
    };
    loop {
        let mark = text.chars().next();
        match mark {
            Some('!') => {
                one.in_name = true;
                *text = &text[1..];
            }
            Some('[') => {
                *text = &text[1..];
                one.parts = parts(text);
                *text = text.strip_prefix(']').expect("a closing bracket");
            }
            Some(mark @ ('+' | '~' | '@' | '#' | '&')) => {
                let rest = &text[1..];
                let end = rest.find(&MARKS[..]).unwrap_or(rest.len());
                let (word, rest) = rest.split_at(end);
                *text = rest;
                match mark {
                    '+' => one.allergens.extend(words(word)),
                    '~' => one.nature = Nature::parse(word).expect("a nature"),
                    '@' => one.species = Some(Species::parse(word).expect("an animal")),
                    '#' => one.additive = Some(word.to_owned()),
                    _ => one.lots.push(word.to_owned()),
                }
            }
            _ => return one,
        }
    }
}
