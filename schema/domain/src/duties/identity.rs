//! Foods whose name stands for a standard of what is in them: fat, water, meat, what must be in it, and how
//! much it may weigh by what its meat weighed.

use super::names::{Part, says, words_of};
use crate::measure::Percent;
use crate::messages;
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
use crate::says::Arg;
use crate::words::{Species, words};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};

words! {
    /// Whose meat is in it, as a standard parts it.
    MeatOf { Pig = "pig", BirdOrRabbit = "bird-or-rabbit", Other = "other", }
}

messages! {
    /// What is said of a food whose name stands for a standard.
    IdentitySays in "identity" {
        Fat "fat" { word: String, fat: Percent, most: Decimal },
        FatUnknown "fat-unknown" { word: String, most: Decimal },
        Water "water" { word: String, water: Percent, most: Decimal },
        Together "together" { word: String, percent: Percent, most: Decimal },
        Meat "meat" { word: String, meat: Percent, least: Decimal },
        Weight "weight" { word: String, percent: Percent, most: Decimal },
        Organ "organ" { word: String, organ: String, percent: Percent, least: Decimal },
        Lacks "lacks" { word: String, one: String },
        SayToo "say-too" { word: String, add: String },
        OneAnimal "one-animal" { word: String, meat: String },
        OtherAnimal "other-animal" { word: String, others: Arg },
        Without "without" { word: String, what: String },
        FatAsSuch "fat-as-such" { word: String },
        HasOrgan "has-organ" { word: String, organ: String, least: Decimal },
        HasOneOf "has-one-of" { word: String, one: String },
        WholeAnimal "whole-animal" { word: String, parts: Arg },
    }
}

/// The standard of one name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Identity {
    /// Where it stands.
    pub row: RowId,
    /// The words or phrases that call it up, in lower case.
    pub words: Vec<String>,
    /// Phrases with which it is another food.
    pub unless: Vec<String>,
    /// Of raw food only, of food that is not raw only, or of both.
    pub raw: Option<bool>,
    /// Of food with such meat only; of all where it is empty.
    pub of: Vec<MeatOf>,
    /// Fat, in percent of the food.
    pub fat: Option<Bound>,
    /// Added water, in percent of all that goes in.
    pub water: Option<Bound>,
    /// Added water, in percent of the finished food.
    pub water_left: Option<Bound>,
    /// Fat and added water together, in percent of the finished food.
    pub together: Option<Bound>,
    /// Meat, in percent of all that goes in.
    pub meat: Option<Bound>,
    /// The finished weight, in percent of that of the fresh meat.
    pub weight: Option<Bound>,
    /// An organ, as words begin, and how much of it there is, in percent of all that goes in.
    pub organ: Option<(String, Bound)>,
    /// What must be in it: of each line at least one.
    pub needs: Vec<Vec<String>>,
    /// What is not in it, as the words of its name begin.
    pub without: Vec<String>,
    /// Is there no fat as such in it?
    pub no_fat_as_such: bool,
    /// Of the meat of these animals alone, unless the name tells the other too.
    pub only: Vec<Species>,
    /// Does the name tell the animal where its meat is of one alone?
    pub single: bool,
    /// Does the name say that all of the animal is in it, as it grew?
    pub whole_animal: bool,
    /// The word that the name has besides where nitrite went in.
    pub with_nitrite: Option<String>,
}

/// The parts of a side that a whole animal cannot be without. Common practice, no source.
const OF_A_WHOLE: [Part; 4] = [Part::HindLeg, Part::Shoulder, Part::Loin, Part::Belly];

impl Identity {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let all = [
            &mut self.fat,
            &mut self.water,
            &mut self.water_left,
            &mut self.together,
            &mut self.meat,
            &mut self.weight,
        ];
        let organ = self.organ.as_mut().map(|(_, bound)| bound);
        all.into_iter().flatten().chain(organ).collect()
    }
}

/// A food with a name, as far as its figures are known.
#[derive(Debug, Clone, Default)]
pub struct FoodOfThatName<'a> {
    /// Its name in English.
    pub name: &'a str,
    /// Is it sold raw?
    pub raw: bool,
    /// Whose meat is in it.
    pub of: Option<MeatOf>,
    /// The animals whose meat is in it.
    pub species: BTreeSet<Species>,
    /// The parts of animals in it; `None` stands for one that nobody knows.
    pub parts: BTreeSet<Option<Part>>,
    /// Is something in it of which nobody knows what is in that?
    pub is_open: bool,
    /// Has nobody entered what is in it?
    pub no_recipe: bool,
    /// Did fat as such go in?
    pub fat_in: bool,
    /// Fat in it, as measured.
    pub fat: Option<Percent>,
    /// Added water of all that went in.
    pub water: Option<Percent>,
    /// Added water of the finished weight.
    pub water_left: Option<Percent>,
    /// Meat of all that went in.
    pub meat: Option<Percent>,
    /// The finished weight, in percent of that of the fresh meat.
    pub weight: Option<Percent>,
    /// The organs in it by name, and how much of all that went in they are.
    pub organs: BTreeMap<String, Percent>,
    /// The names of what went in; `None` stands for something that nobody knows the parts of.
    pub ingredients: BTreeSet<Option<String>>,
    /// Did nitrite or nitrate go in?
    pub nitrite: bool,
}

/// The words for the meat of an animal in a name, in English and French. Common practice, no source.
fn meat_words(animal: Species) -> &'static [&'static str] {
    match animal {
        Species::Cattle => &["beef", "veal", "bœuf", "boeuf", "veau"],
        Species::Pig => &["pork", "ham", "porc", "jambon"],
        Species::Sheep => &["lamb", "mutton", "agneau", "mouton"],
        Species::Goat => &["goat", "kid", "chèvre", "chevreau"],
        Species::Horse => &["horse", "cheval"],
        Species::Boar => &["boar", "wild boar", "sanglier"],
        Species::Chicken => &["chicken", "poulet", "poule"],
        Species::Turkey => &["turkey", "dinde"],
        Species::Duck => &["duck", "canard"],
        Species::Goose => &["goose", "oie"],
        Species::Rabbit => &["rabbit", "lapin"],
        Species::Deer => &["venison", "deer", "cerf", "chevreuil"],
        Species::Bison => &["bison", "buffalo"],
        Species::GuineaFowl => &["guinea fowl", "pintade"],
        Species::Quail => &["quail", "caille"],
        Species::Pheasant => &["pheasant", "faisan"],
        Species::Partridge => &["partridge", "perdrix"],
        Species::Pigeon => &["pigeon"],
    }
}

/// What stands against the name; of the standards with the longest words that it has.
pub fn check_identity(all: &[Identity], rows: &Rows, food: &FoodOfThatName<'_>) -> Vec<Finding> {
    let name = words_of(food.name);
    let called = all.iter().filter_map(|identity| {
        let word = identity.words.iter().find(|word| says(&name, word))?;
        let other = identity.unless.iter().any(|phrase| says(&name, phrase));
        let is_for = identity.raw.is_none_or(|raw| raw == food.raw);
        let of_it = identity.of.is_empty() || food.of.is_some_and(|of| identity.of.contains(&of));
        (is_for && of_it && !other).then_some((identity, word))
    });
    let mut found = Vec::new();
    for (identity, word) in called {
        found.extend(against(identity, word, rows, &name, food));
    }
    found
}

fn against(
    of: &Identity,
    word: &str,
    rows: &Rows,
    name: &[String],
    food: &FoodOfThatName<'_>,
) -> Vec<Finding> {
    let word = || word.to_owned();
    let broken = |bound: &Option<Bound>, percent: Option<Percent>| {
        let bound = bound.as_ref()?;
        let percent = percent?;
        (!bound.allows(percent.number())).then_some((percent, bound.value))
    };
    let water = food.water_left.unwrap_or_default().number();
    let together = food.fat.map(|fat| Percent::new(fat.number() + water));
    type Says = fn(String, Percent, Decimal) -> IdentitySays;
    let bounds: [(&Option<Bound>, Option<Percent>, Says); 6] = [
        (&of.fat, food.fat, |word, fat, most| IdentitySays::Fat {
            word,
            fat,
            most,
        }),
        (&of.water, food.water, |word, water, most| {
            IdentitySays::Water { word, water, most }
        }),
        (&of.water_left, food.water_left, |word, water, most| {
            IdentitySays::Water { word, water, most }
        }),
        (&of.together, together, |word, percent, most| {
            IdentitySays::Together {
                word,
                percent,
                most,
            }
        }),
        (&of.meat, food.meat, |word, meat, least| {
            IdentitySays::Meat { word, meat, least }
        }),
        (&of.weight, food.weight, |word, percent, most| {
            IdentitySays::Weight {
                word,
                percent,
                most,
            }
        }),
    ];
    let mut said: Vec<IdentitySays> = bounds
        .into_iter()
        .filter_map(|(bound, percent, says)| {
            let (percent, value) = broken(bound, percent)?;
            Some(says(word(), percent, value))
        })
        .collect();
    if let Some(add) = of.with_nitrite.as_ref().filter(|_| food.nitrite)
        && !says(name, add)
    {
        said.push(IdentitySays::SayToo {
            word: word(),
            add: add.clone(),
        });
    }
    let mut warned: Vec<IdentitySays> = Vec::new();
    if of.no_fat_as_such && food.fat_in {
        said.push(IdentitySays::FatAsSuch { word: word() });
    }
    said.extend(foreign(of, food).map(|what| IdentitySays::Without { word: word(), what }));
    let told = |animal: &Species| meat_words(*animal).iter().any(|meat| says(name, meat));
    let mut animals = food.species.iter();
    if let (Some(one), None, true) = (animals.next(), animals.next(), of.single && !food.is_open)
        && !told(one)
    {
        said.push(IdentitySays::OneAnimal {
            word: word(),
            meat: meat_words(*one)[0].to_owned(),
        });
    }
    let others = food.species.iter().filter(|_| !of.only.is_empty());
    let others = others.filter(|animal| !of.only.contains(animal) && !told(animal));
    let others: Vec<Arg> = others.map(|animal| Arg::from(*animal)).collect();
    if !others.is_empty() {
        said.push(IdentitySays::OtherAnimal {
            word: word(),
            others: Arg::All(others),
        });
    }
    if let (Some((organ, least)), Some(_)) = (&of.organ, food.meat) {
        let is_it = |name: &str| {
            words_of(name)
                .iter()
                .any(|word| word.starts_with(organ.as_str()))
        };
        let of_it = food.organs.iter().filter(|(name, _)| is_it(name));
        let sum: Decimal = of_it.map(|(_, percent)| percent.number()).sum();
        if food.no_recipe {
            warned.push(IdentitySays::HasOrgan {
                word: word(),
                organ: organ.clone(),
                least: least.value,
            });
        } else if !least.allows(sum) {
            said.push(IdentitySays::Organ {
                word: word(),
                organ: organ.clone(),
                percent: Percent::new(sum),
                least: least.value,
            });
        }
    }
    let against = |says| Finding::against(rows, &of.row, says);
    let mut found: Vec<Finding> = said.into_iter().map(against).collect();
    found.extend(warned.into_iter().map(|says| against(says).warned()));
    let has = |one: &String| {
        let mut known = food.ingredients.iter().flatten();
        known.any(|name| {
            words_of(name)
                .iter()
                .any(|word| word.starts_with(one.as_str()))
        })
    };
    found.extend(lacks_parts(of, rows, food, word()));
    for one_of in of.needs.iter().filter(|one_of| !one_of.iter().any(has)) {
        let (word, one) = (word(), one_of.join(", "));
        let says = match food.no_recipe {
            true => IdentitySays::HasOneOf { word, one },
            false => IdentitySays::Lacks { word, one },
        };
        let lacks = Finding::against(rows, &of.row, says);
        // It may be in what nobody knows the parts of.
        let unknown = food.ingredients.is_empty() || food.ingredients.contains(&None);
        found.push(if unknown { lacks.warned() } else { lacks });
    }
    if let (Some(fat), None) = (&of.fat, food.fat) {
        let says = IdentitySays::FatUnknown {
            word: word(),
            most: fat.value,
        };
        found.push(Finding::new(Gravity::Warn, says, [of.row.clone()]));
    }
    found
}

/// The first thing in it that does not belong there.
fn foreign(of: &Identity, food: &FoodOfThatName<'_>) -> Option<String> {
    let begins = |name: &str| {
        let words = words_of(name);
        let mut all = of.without.iter();
        all.any(|one| words.iter().any(|word| word.starts_with(one.as_str())))
    };
    let mut names = food.ingredients.iter().flatten();
    names.find(|name| begins(name)).cloned()
}

/// Called after the whole animal, and made of some of its parts: a warning, for the row has no band of what is
/// normal to one.
fn lacks_parts(
    of: &Identity,
    rows: &Rows,
    food: &FoodOfThatName<'_>,
    word: String,
) -> Option<Finding> {
    let known = !food.parts.is_empty() && !food.parts.contains(&None);
    let lacks = OF_A_WHOLE.iter();
    let lacks = lacks.filter(|part| !food.parts.contains(&Some(**part)));
    let lacks: Vec<Arg> = lacks.map(|part| Arg::from(*part)).collect();
    (of.whole_animal && known && !lacks.is_empty()).then(|| {
        let parts = Arg::All(lacks);
        Finding::against(rows, &of.row, IdentitySays::WholeAnimal { word, parts }).warned()
    })
}
