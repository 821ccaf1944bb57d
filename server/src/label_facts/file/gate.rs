//! A label from a file is held to the law too: what is for a customer may go on a pack, whoever drew it.

use crate::config::LabelArgs;
use crate::label_facts::heights;
use crate::wire::Weight;
use domain::gate::{LabelTexts, of_texts};
use domain::grams::Grams;
use domain::law::Law;
use domain::rows::{Finding, RowId};
use domain::says::Says;
use domain::words::Profile;
use labels::{Facts, Field, Purpose, Template};
use law::Shipped;
use words::Speech;

/// What a customer's label is held to.
#[derive(Debug)]
pub struct Gate {
    law: Shipped,
    place: Option<Profile>,
    grams: Option<Grams>,
    meat: bool,
    specimen: bool,
}

/// What is wrong with a label.
#[derive(Debug, Default)]
pub struct Told {
    /// What forbids it for sale.
    pub forbids: Vec<String>,
    /// What is to be looked at: rows that nobody has read, and what the facts leave open.
    pub warns: Vec<String>,
}

impl Gate {
    /// What is asked for on the command line.
    ///
    /// # Errors
    /// In words: a place or a weight that cannot be.
    pub fn new(args: &LabelArgs, law: Shipped) -> Result<Gate, String> {
        let place = args.place.as_deref().map(|word| {
            Profile::parse(word).ok_or_else(|| {
                let places = Profile::SPELT.join(", ");
                format!("{word:?} is no place here. Places are: {places}.")
            })
        });
        let grams = args.grams.as_deref().map(|text| {
            let weight: Result<Weight, _> = serde_json::from_str(text);
            let cannot_be = |_| format!("--grams {text} is no weight in grams: 250 or 62.5");
            weight.map(|weight| weight.0).map_err(cannot_be)
        });
        Ok(Gate {
            law,
            place: place.transpose()?,
            grams: grams.transpose()?,
            meat: !args.without_meat,
            specimen: args.specimen,
        })
    }

    /// Asks the law of each place, item by item; nothing where the label is not for a customer.
    pub fn ask(&self, facts: &Facts, template: &Template) -> Told {
        let mut told = Told::default();
        if !matches!(template.purpose(), Purpose::Retail | Purpose::DirectSale) {
            return told;
        }
        let all = self.law.laws.places.iter();
        let asked = all.filter(|(place, _)| match self.place {
            Some(named) => named == **place,
            None => template.serves(place.as_str()),
        });
        for (place, law) in asked {
            for (item, finding) in self.found(facts, template, law) {
                let says = Speech::default().say(&finding.with_sources(&law.rows));
                let rows: Vec<&str> = finding.rows.iter().map(RowId::as_str).collect();
                let line = format!("{item}: {says} [{place}: {}]", rows.join(", "));
                match finding.refuses() {
                    true => told.forbids.push(line),
                    false => told.warns.push(line),
                }
            }
            if law.statements.net.is_some()
                && self.grams.is_none()
                && facts.text(Field::Net).is_some()
            {
                let line = format!("{}: not held against a weight; give --grams", Field::Net);
                told.warns.push(line);
            }
        }
        told
    }

    /// May a label be drawn that a law forbids for sale?
    pub fn is_for_show(&self) -> bool {
        self.specimen
    }

    fn found(&self, facts: &Facts, template: &Template, law: &Law) -> Vec<(String, Finding)> {
        let mut found = Vec::new();
        for (field, text) in &facts.texts {
            let texts = LabelTexts {
                meat: self.meat,
                all: vec![text],
                ..LabelTexts::default()
            };
            add(&mut found, &field.to_string(), of_texts(&texts, law));
        }
        for field in [Field::Allergens, Field::SecondAllergens] {
            let Some(text) = facts.text(field) else {
                continue;
            };
            // In which language it is, no fact tells: it has to be right in one of them.
            let in_language = |language| contains(without_may(text, law), language, law);
            let mut all = [in_language("en"), in_language("fr")];
            all.sort_by_key(Vec::len);
            let [best, _] = all;
            add(&mut found, &field.to_string(), best);
        }
        if let Some((net, grams)) = facts.text(Field::Net).zip(self.grams) {
            let texts = LabelTexts {
                net: Some((net, grams)),
                ..LabelTexts::default()
            };
            add(&mut found, &Field::Net.to_string(), of_texts(&texts, law));
        }
        add(
            &mut found,
            template.name(),
            heights::check(template, law, None),
        );
        found
    }
}

fn add(found: &mut Vec<(String, Finding)>, item: &str, more: Vec<Finding>) {
    let more = more.into_iter().map(|finding| (item.to_owned(), finding));
    found.extend(more);
}

fn contains(statement: &str, language: &str, law: &Law) -> Vec<Finding> {
    let texts = LabelTexts {
        contains: vec![(language, statement)],
        ..LabelTexts::default()
    };
    match statement.is_empty() {
        true => Vec::new(),
        false => of_texts(&texts, law),
    }
}

/// What it may contain stands behind what it contains, and never for it (`us-A10`).
fn without_may<'a>(statement: &'a str, law: &Law) -> &'a str {
    let rules = law.statements.contains.as_ref();
    let title = rules.and_then(|rules| rules.may_contain.as_ref());
    let ends = ["en", "fr"].into_iter().filter_map(|language| {
        let title = title?.in_language(language);
        statement.find(title)
    });
    ends.min().map_or(statement, |end| statement[..end].trim())
}

/// The label with a mark that nobody misses: where a reprint's stands, else before the name. Its codes are
/// no pack's.
pub fn as_specimen(facts: &Facts, template: &Template) -> Facts {
    let mark = Speech::default().say(&Says::from(super::super::phrases::LabelWords::Specimen));
    let mut marked = facts.clone();
    let has_mark = template.fields().any(|field| field == Field::Reprint);
    let (field, text) = match (has_mark, facts.text(Field::Name)) {
        (true, _) => (Field::Reprint, mark.clone()),
        (false, Some(name)) => (Field::Name, format!("{mark}: {name}")),
        (false, None) => (Field::Name, mark.clone()),
    };
    marked.texts.insert(field, text);
    // Where a lot's code would stand, and in the codes: no pack is called so.
    let no_lot = "SPECIMEN".to_owned();
    marked.texts.insert(Field::Lot, no_lot.clone());
    marked.qr.clone_from(&no_lot);
    marked.linear = no_lot;
    marked.gs1 = Vec::new();
    marked.ean13 = None;
    marked.texts.remove(&Field::Till);
    marked
}
