//! Countries that a label of fresh meat will tell and nobody entered: told where they can be entered, before anything
//! is packed.

use super::managers::managers;
use super::says::CountrySays;
use super::spoken::Words;
use crate::caller::Caller;
use crate::ids::shown_id;
use crate::lists::List;
use crate::read::LoadedFamily;
use domain::family::{Listed, Lists};
use domain::law::Law;
use domain::lot::LotId;
use domain::right::Right;
use domain::words::Species;

/// What is missing, and where it is entered.
#[derive(PartialEq, Eq)]
pub struct Missing {
    /// What.
    pub says: String,
    /// The page that enters it, for whoever may.
    pub path: Option<String>,
    /// The words of the link.
    pub act: String,
    /// Whom to ask, where the reader may not.
    pub ask: Option<String>,
}

/// Does a label of fresh meat of that animal tell its countries here (`canada-eu-uk-10.1`, `10.7`)?
pub fn asked(law: &Law, species: Species) -> bool {
    let rule = law.statements.origin.as_ref();
    let of_rule = rule.is_some_and(|rule| rule.species.contains(&species));
    of_rule || species == Species::Cattle && law.duties.origin.is_some()
}

/// The animals of which it does, for a page's scripts: `pig sheep`.
pub fn species_asked(law: &Law) -> String {
    let all = Species::ALL.iter().filter(|of| asked(law, **of));
    all.map(|of| of.as_str()).collect::<Vec<_>>().join(" ")
}

/// Where the entry of a list is changed.
pub fn entry(list: List, code: &str) -> String {
    let code: String = form_urlencoded::byte_serialize(code.as_bytes()).collect();
    format!("/lists/{}/{code}", list.as_str())
}

/// What is missing of the animals of a lot of raw meat; nothing where no label tells it.
pub fn missing(
    app: &Caller<'_>,
    words: &Words,
    reading: &LoadedFamily<'_>,
    id: LotId,
) -> Vec<Missing> {
    let Some(of) = reading.family.get(id) else {
        return Vec::new();
    };
    let lot = &of.lot;
    let told = lot.species.iter().any(|of| asked(reading.law, *of));
    if !lot.product.raw || !told || lot.voided {
        return Vec::new();
    }
    let lists: &Lists = &reading.standing.lists;
    let mut all: Vec<Missing> = Vec::new();
    for of in reading.family.youngest_first(id) {
        let source = of.source.as_ref();
        let animal = source.and_then(|source| source.animal.as_ref());
        let Some(animal) = animal.filter(|animal| asked(reading.law, animal.species)) else {
            continue;
        };
        let lacks = |entry: Option<&Listed>| entry.filter(|entry| entry.country.is_none()).cloned();
        if let Some(farm) = lacks(lists.farms.get(&animal.farm)) {
            let says = CountrySays::Farm { name: farm.name };
            all.push(of_entry(app, words, says, List::Farms, &animal.farm));
        }
        let number = animal.abattoir.as_ref();
        match number {
            Some(number) => {
                if let Some(abattoir) = lacks(lists.abattoirs.get(number)) {
                    let says = CountrySays::Abattoir {
                        name: abattoir.name,
                    };
                    all.push(of_entry(app, words, says, List::Abattoirs, number));
                }
            }
            None => {
                let may = app.who.may(Right::Correct);
                let lot = of.lot.code.shown();
                all.push(Missing {
                    path: may.then(|| format!("/animals/{}", shown_id(&animal.uid))),
                    says: words.say(CountrySays::NoAbattoir { lot }),
                    act: words.t("page-country-animal"),
                    ask: (!may).then(|| managers(app)).flatten(),
                });
            }
        }
    }
    let mut seen: Vec<Missing> = Vec::new();
    for one in all {
        if !seen.contains(&one) {
            seen.push(one);
        }
    }
    seen
}

fn of_entry(app: &Caller<'_>, words: &Words, says: CountrySays, list: List, code: &str) -> Missing {
    let may = app.who.may(Right::SetUp);
    Missing {
        says: words.say(says),
        path: may.then(|| entry(list, code)),
        act: words.t("page-country-enter"),
        ask: (!may).then(|| managers(app)).flatten(),
    }
}
