//! What is said to a guest: never without what nobody knows.

use super::*;
use crate::cure::Strength;
use crate::family::{KnownSource, MadeBy, SourceAnimal, Went};
use crate::genealogy::Use;
use crate::grams::Grams;
use crate::lot::DeedId;
use crate::lot::brief::tests::lot;
use crate::product::{InCure, Product};
use crate::statement::SpeciesName;
use crate::supplied::{Supplied, SuppliedPart};
use crate::words::{Allergen, DeedKind, Natural, ProductKind, State};
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

fn words(words: &[&str]) -> NamedBy {
    NamedBy {
        words: [("en".into(), words.iter().map(ToString::to_string).collect())].into(),
        ..NamedBy::default()
    }
}

fn rules() -> AskRules {
    AskRules {
        single: words(&["butter", "black pepper"]),
        alcohol: words(&["wine", "brandy"]),
        perhaps_alcohol: words(&["soy sauce", "flavouring"]),
        nitrite: words(&["nitrite"]),
        natural_nitrite: words(&["celery powder"]),
        any_animal: words(&["gelatine"]),
    }
}

fn species_rules() -> SpeciesRules {
    let texts = |text: &str| BTreeMap::from([("en".to_owned(), text.to_owned())]);
    SpeciesRules {
        names: vec![SpeciesName {
            species: Species::Pig,
            meat: texts("pork"),
            fat: texts("pork fat"),
            told_by: [("en".to_owned(), vec!["pork".to_owned()])].into(),
        }],
        ..SpeciesRules::default()
    }
}

fn product(name: &str, kind: ProductKind) -> Product {
    Product {
        code: name.to_lowercase(),
        names: Arc::new([("en".to_owned(), name.to_owned())].into()),
        kind,
        ..Product::unnamed()
    }
}

/// A record that grows by what comes in and what is made of it.
#[derive(Default)]
struct Record {
    family: Family,
}

impl Record {
    fn put(&mut self, product: Product, kind: DeedKind) -> LotId {
        let id = LotId(1 + self.family.lots.len() as i32);
        let mut of = lot(&[(500, None)]);
        of.id = id;
        of.made_by = DeedId(id.0);
        of.allergens = product.allergens.clone();
        of.species = product.species.into_iter().collect();
        of.product = Arc::new(product);
        let at = of.made_at;
        let relative = Relative {
            note: None,
            went: Went::default(),
            made_by: MadeBy {
                uid: Vec::new(),
                kind,
                at,
                day: at.date_naive(),
                by: String::new(),
            },
            born_state: State::Chilled,
            born_use_by: None,
            source: None,
            readings: Vec::new(),
            reasons: Vec::new(),
            history: Vec::new(),
            lot: of,
        };
        self.family.lots.insert(id, relative);
        id
    }

    /// Something bought, of which the pack declares nothing.
    fn bought(&mut self, product: Product) -> LotId {
        self.declared(product, Supplied::default())
    }

    fn declared(&mut self, product: Product, supplied: Supplied) -> LotId {
        let id = self.put(product, DeedKind::Receive);
        self.at(id).lot.supplied = Some(supplied);
        id
    }

    fn animal(&mut self, species: Species) -> LotId {
        let carcass = Product {
            species: Some(species),
            raw: true,
            ..product("Carcass", ProductKind::Carcass)
        };
        let id = self.put(carcass, DeedKind::Receive);
        let killed_on = self.at(id).lot.made_at.date_naive();
        self.at(id).source = Some(KnownSource {
            animal: Some(SourceAnimal {
                key: 1,
                uid: Vec::new(),
                farm: "BRC".into(),
                species,
                killed_on,
                abattoir: None,
                carcass: None,
                tag: None,
                head: 1,
            }),
            side: None,
            supplier: None,
            supplier_lot: None,
        });
        id
    }

    fn at(&mut self, id: LotId) -> &mut Relative {
        self.family.lots.get_mut(&id).expect("it was put there")
    }

    /// Something made of others: allergens and animals go down as the record has it.
    fn made(&mut self, name: &str, of: &[LotId]) -> LotId {
        let id = self.put(product(name, ProductKind::Cooked), DeedKind::Cook);
        for part in of {
            let part = self.family.lots[part].lot.clone();
            let lot = &mut self.at(id).lot;
            lot.allergens.extend(part.allergens);
            lot.may_contain.extend(part.may_contain);
            lot.species.extend(part.species);
        }
        let uses = of.iter().map(|part| Use {
            step: DeedId(id.0),
            lot: *part,
            milligrams: 1_000,
            has_animal: false,
        });
        let ancestry = &mut self.family.ancestry;
        ancestry.uses.insert(DeedId(id.0), uses.collect());
        ancestry.made_by.insert(id, DeedId(id.0));
        id
    }

    fn answer(&self, lot: LotId, topics: &[Topic]) -> Answered {
        let (rules, species) = (rules(), species_rules());
        let topics = topics.iter().copied().collect();
        Asker::new(&self.family, &rules, &species).answer(lot, &topics)
    }

    #[track_caller]
    fn check(&self, lot: LotId, topic: Topic, told: Told, because: &str) {
        let answer = self.answer(lot, &[topic]);
        let said: Vec<String> = answer.because.iter().map(ToString::to_string).collect();
        assert_eq!(answer.told, told, "{topic:?}: {said:?}");
        assert!(
            said.join("; ").contains(because),
            "{said:?} has no {because}"
        );
    }
}

const PORK: Topic = Topic::Species(Species::Pig);
const MILK: Topic = Topic::Allergen(Allergen::Milk);

fn listed(name: &str, allergens: &[Allergen]) -> Product {
    Product {
        allergens: allergens.iter().copied().collect(),
        ..product(name, ProductKind::Ingredient)
    }
}

fn by_nature(name: &str, nature: Natural) -> Product {
    let mut of = listed(name, &[]);
    of.keeping.stable_as = Some(nature);
    of
}

#[test]
fn pork_in_the_stock_is_pork_in_the_lamb_that_it_braised() {
    let mut record = Record::default();
    let (lamb, pig) = (record.animal(Species::Sheep), record.animal(Species::Pig));
    let wine = record.bought(by_nature("Red wine", Natural::Wine));
    let stock = record.made("Pork stock", &[pig]);
    let braised = record.made("Braised shoulder", &[lamb, stock, wine]);
    record.check(braised, PORK, Told::Yes, "Pork stock");
    record.check(braised, Topic::Alcohol, Told::Yes, "ask-has");
    record.check(braised, Topic::Nitrite, Told::No, "");
    record.check(braised, MILK, Told::No, "");
    let (rules, species) = (rules(), species_rules());
    let animals = Asker::new(&record.family, &rules, &species).animals(braised);
    assert_eq!(animals, ([Species::Pig, Species::Sheep].into(), true));
    let both = record.answer(braised, &[MILK, PORK]);
    assert_eq!((both.told, both.because.len()), (Told::Yes, 1));
}

#[test]
fn what_nobody_entered_is_not_known() {
    let mut record = Record::default();
    let harissa = record.bought(listed("Harissa", &[]));
    for topic in [MILK, PORK, Topic::Alcohol, Topic::Nitrite, Topic::Gluten] {
        record.check(harissa, topic, Told::NotKnown, "ask-not-entered");
    }
    let sausage = record.made("Merguez", &[harissa]);
    record.check(sausage, MILK, Told::NotKnown, "Harissa");
    // Its allergens were entered, and so its animal; whether it has alcohol was not.
    let soy = record.bought(listed("Soy sauce", &[Allergen::Soy, Allergen::Wheat]));
    record.check(soy, MILK, Told::No, "");
    record.check(soy, PORK, Told::No, "");
    record.check(soy, Topic::Gluten, Told::Yes, "ask-is");
    record.check(soy, Topic::Alcohol, Told::NotKnown, "ask-vague");
    // A ready-made thing without parts tells nothing, whatever its entry says.
    let pie = Product {
        allergens: [Allergen::Wheat].into(),
        ..product("Pie", ProductKind::Cooked)
    };
    let pie = record.bought(pie);
    record.check(pie, PORK, Told::NotKnown, "ask-not-entered");
    record.check(pie, MILK, Told::NotKnown, "ask-not-entered");
    // A lot of the time before what was supplied was kept goes by its entry, no further.
    record.at(harissa).lot.supplied = None;
    record.check(harissa, PORK, Told::NotKnown, "ask-not-entered");
}

#[test]
fn a_pack_that_declares_what_is_in_it_is_believed() {
    let mut record = Record::default();
    let by_pack = |text: &str, language: &str| Supplied {
        ingredients: [(language.to_owned(), text.to_owned())].into(),
        ..Supplied::default()
    };
    let of = |record: &mut Record, text: &str, language: &str| {
        record.declared(
            product("Paste", ProductKind::Mixed),
            by_pack(text, language),
        )
    };
    let paste = of(&mut record, "Peppers, PORK fat, white wine", "en");
    record.check(paste, PORK, Told::Yes, "ask-is");
    record.check(paste, Topic::Alcohol, Told::Yes, "ask-is");
    record.check(paste, Topic::Nitrite, Told::No, "");
    let paste = of(&mut record, "peppers, gelatine, celery powder", "en");
    record.check(paste, PORK, Told::NotKnown, "ask-vague");
    record.check(paste, Topic::Nitrite, Told::Yes, "ask-is");
    record.check(paste, MILK, Told::No, "");
    // A list in a language that we have no words of tells nothing.
    let paste = of(&mut record, "peperoni, strutto", "it");
    record.check(paste, PORK, Told::NotKnown, "ask-not-entered");
    let told = Supplied {
        allergens_by_pack: true,
        ..Supplied::default()
    };
    let paste = record.declared(product("Paste", ProductKind::Mixed), told);
    record.check(paste, MILK, Told::No, "");
    record.check(paste, PORK, Told::NotKnown, "ask-not-entered");
}

#[test]
fn a_recipe_of_the_list_is_looked_into() {
    let mut record = Record::default();
    let wine = Arc::new(by_nature("Wine", Natural::Wine));
    record.family.listed.insert(1, wine);
    let salt = Arc::new(by_nature("Salt", Natural::Salt));
    record.family.listed.insert(2, salt);
    let part = |version| SuppliedPart {
        version,
        grams: Grams::whole(10),
        parts: Vec::new(),
    };
    let recipe = |versions: &[i32]| Supplied {
        recipe: versions.iter().copied().map(part).collect(),
        ..Supplied::default()
    };
    let sauce = || product("Sauce", ProductKind::Mixed);
    let with = record.declared(sauce(), recipe(&[2, 1]));
    record.check(with, Topic::Alcohol, Told::Yes, "ask-is");
    let without = record.declared(sauce(), recipe(&[2]));
    record.check(without, Topic::Alcohol, Told::No, "");
    // A part that the list has no more.
    let lost = record.declared(sauce(), recipe(&[2, 3]));
    record.check(lost, PORK, Told::NotKnown, "ask-not-entered");
}

#[test]
fn what_cures_has_nitrite_and_a_bag_without_a_word_is_not_known() {
    let mut record = Record::default();
    let bag = |strength| {
        let mut of = listed("Curing salt", &[]);
        of.part.in_cure = Some(InCure::CuringSalt(strength));
        of
    };
    let cure = record.bought(bag(Strength::nitrite(6)));
    record.check(cure, Topic::Nitrite, Told::Yes, "ask-is");
    record.check(cure, PORK, Told::No, "");
    let unknown = record.bought(bag(Strength::unknown()));
    record.check(unknown, Topic::Nitrite, Told::NotKnown, "ask-not-entered");
    let pig = record.animal(Species::Pig);
    let bacon = record.made("Bacon", &[pig, cure]);
    record.check(bacon, Topic::Nitrite, Told::Yes, "Curing salt");
}

#[test]
fn a_pot_that_nobody_knows_is_not_known_and_so_is_what_is_made_of_it() {
    let mut record = Record::default();
    let pot = record.put(product("Pork stock", ProductKind::Stock), DeedKind::Adopt);
    record.at(pot).lot.supplied = Some(Supplied {
        allergens_by_pack: true,
        ..Supplied::default()
    });
    let soup = record.made("Soup", &[pot]);
    for lot in [pot, soup] {
        for topic in [MILK, PORK, Topic::Alcohol, Topic::Nitrite] {
            record.check(lot, topic, Told::NotKnown, "ask-unknown");
        }
    }
    // A part that is not on record is no reason to say without.
    let torn = record.made("Torn", &[]);
    let uses = vec![Use {
        step: DeedId(torn.0),
        lot: LotId(999),
        milligrams: 1,
        has_animal: false,
    }];
    record.family.ancestry.uses.insert(DeedId(torn.0), uses);
    record.check(torn, MILK, Told::NotKnown, "ask-unknown");
}

#[test]
fn what_may_be_in_it_is_not_without() {
    let mut record = Record::default();
    let nuts = record.bought(by_nature("Cashews", Natural::Nuts));
    record.at(nuts).lot.may_contain = [Allergen::Almond].into();
    let curry = record.made("Curry", &[nuts]);
    let almond = Topic::Allergen(Allergen::Almond);
    record.check(curry, almond, Told::NotKnown, "ask-may-contain");
    let any_nut = Topic::Allergen(Allergen::TreeNut);
    record.check(curry, any_nut, Told::NotKnown, "ask-may-contain");
    record.check(curry, MILK, Told::No, "");
    // A paper that only says fish may mean the very fish.
    let fish = record.bought(listed("Sauce", &[Allergen::Fish]));
    record.check(fish, Topic::Allergen(Allergen::Cod), Told::Yes, "ask-is");
}

#[test]
fn every_topic_reads_back() {
    for topic in Topic::all() {
        assert_eq!(Topic::parse(topic.as_str()), Some(topic));
    }
    assert_eq!(Topic::parse("kosher"), None);
}

#[test]
fn nothing_asked_is_nothing_known() {
    let mut record = Record::default();
    let pig = record.animal(Species::Pig);
    assert_eq!(record.answer(pig, &[]).told, Told::NotKnown);
    record.check(pig, Topic::Raw, Told::Yes, "ask-is");
}

proptest! {
    /// Whatever is made of what: what holds something unknown is never without, and what holds it has it.
    #[test]
    fn not_known_never_becomes_without(steps in prop::collection::vec(prop::collection::vec(0usize..12, 1..5), 1..12)) {
        let mut record = Record::default();
        // Known to be without, not known, and with it.
        let mut truth: Vec<(LotId, Told)> = vec![
            (record.bought(by_nature("Salt", Natural::Salt)), Told::No),
            (record.bought(listed("Harissa", &[])), Told::NotKnown),
            (record.animal(Species::Pig), Told::Yes),
            (record.animal(Species::Sheep), Told::No),
            (record.put(product("Pot", ProductKind::Stock), DeedKind::Adopt), Told::NotKnown),
        ];
        for step in steps {
            let parts: Vec<(LotId, Told)> = step.iter().map(|nth| truth[nth % truth.len()]).collect();
            let lots: Vec<LotId> = parts.iter().map(|(lot, _)| *lot).collect();
            let told = parts.iter().map(|(_, told)| *told).max().unwrap();
            truth.push((record.made("Pot of parts", &lots), told));
        }
        let (rules, species) = (rules(), species_rules());
        let mut asker = Asker::new(&record.family, &rules, &species);
        for (lot, told) in truth {
            prop_assert_eq!(asker.answer(lot, &[PORK].into()).told, told);
        }
    }
}
