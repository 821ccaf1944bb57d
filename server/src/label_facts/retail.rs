//! What stands on a pack for a customer, under the law of the kitchen's place.

use super::phrases::{LabelWords, Phrases};
use super::uncured;
use super::writer::{Said, Writer};
use super::{mark, net, tenderised};
use crate::error::Result;
use domain::family::Frozen;
use domain::naming;
use domain::statement::{NoticeKind, notice};
use domain::words::{Packaging, ProductKind, State};
use labels::{Field, Readiness};
use words::capital;

/// What all packs of a lot have in common.
pub fn of_lot(writer: &Writer<'_>, said: &mut Said) -> Result<()> {
    for (phrases, fields) in languages(writer) {
        statement(writer, &phrases, fields, said);
        let cooking = &writer.product.cooking;
        if let Some(text) = cooking.get(phrases.language) {
            said.say(fields.cooking, text.clone());
        }
        let made = writer.made();
        let text = mark::packed(writer, made, phrases.language);
        let day = || phrases.short_date(made);
        let own = || phrases.say(LabelWords::Made { day: day() });
        said.say(fields.made, text.unwrap_or_else(own));
        if let Some(cure) = &writer.view.cured {
            said.say(fields.cure, phrases.cured(&cure.with));
        }
    }
    if let Some(second) = &writer.second
        && said.0.contains_key(&Field::Kind)
    {
        let words = match writer.readiness() {
            Some(Readiness::Raw) => second.text("label-raw"),
            _ => second.text("label-ready-to-eat"),
        };
        let both = said
            .0
            .get(&Field::Kind)
            .map(|first| format!("{first} / {words}"));
        // Two languages by law, or one line for each in the kitchen's own choice.
        if writer.law().statements.wants_language(second.language) {
            said.say(Field::Kind, both.unwrap_or_default());
        }
    }
    composition(writer, said);
    handling(writer, said);
    uncured::of_lot(writer, said)?;
    tenderised::name(writer, said);
    said.say(Field::Origin, origin_of(writer));
    said.say(Field::Business, business(writer));
    Ok(())
}

/// What differs from pack to pack.
pub fn of_pack(writer: &Writer<'_>, said: &mut Said, number: u32, state: Frozen) {
    writer.customers_date(said, number);
    said.say(Field::Net, net::told(writer, number));
    net::price(writer, said, number);
    for (phrases, fields) in languages(writer) {
        storage(writer, &phrases, fields, number, said);
        if state == Frozen::Once {
            let law = writer.law();
            if let Some(words) = notice(&law.statements, NoticeKind::Thawed) {
                said.say(fields.thawed, words.in_language(phrases.language));
            }
        }
    }
    tenderised::of_pack(writer, said);
    // Where the law fixes one wording only, both languages would say the same.
    if said.0.get(&Field::Thawed) == said.0.get(&Field::SecondThawed) {
        said.0.remove(&Field::SecondThawed);
    }
    if said.0.get(&Field::Storage) == said.0.get(&Field::SecondStorage) {
        said.0.remove(&Field::SecondStorage);
    }
    if let Frozen::Since(day) = state {
        let each = languages(writer);
        let told = each
            .iter()
            .map(|(phrases, _)| mark::frozen(writer, day, phrases));
        said.say(Field::Frozen, told.collect::<Vec<_>>().join("\u{a0}/ "));
    }
}

/// The fields of one language.
#[derive(Clone, Copy)]
pub(super) struct Fields {
    ingredients: Field,
    allergens: Field,
    cure: Field,
    storage: Field,
    pub(super) caution: Field,
    cooking: Field,
    made: Field,
    thawed: Field,
}

const FIRST: Fields = Fields {
    ingredients: Field::Ingredients,
    allergens: Field::Allergens,
    cure: Field::Cure,
    storage: Field::Storage,
    caution: Field::Caution,
    cooking: Field::Cooking,
    made: Field::Made,
    thawed: Field::Thawed,
};

const SECOND: Fields = Fields {
    ingredients: Field::SecondIngredients,
    allergens: Field::SecondAllergens,
    cure: Field::SecondCure,
    storage: Field::SecondStorage,
    caution: Field::SecondCaution,
    cooking: Field::SecondCooking,
    made: Field::SecondMade,
    thawed: Field::SecondThawed,
};

/// Each language of the kitchen with its fields.
pub(super) fn languages(writer: &Writer<'_>) -> Vec<(Phrases, Fields)> {
    let second = writer.second.map(|phrases| (phrases, SECOND));
    std::iter::once((writer.first, FIRST))
        .chain(second)
        .collect()
}

/// The ingredient list and the allergen statement.
fn statement(writer: &Writer<'_>, phrases: &Phrases, fields: Fields, said: &mut Said) {
    let stated = &writer.view.stated;
    let language = phrases.language;
    let list = stated.ingredients.get(language).map_or("", String::as_str);
    let species = stated
        .species
        .get(language)
        .map_or(String::new(), |note| format!(" {}.", capital(note)));
    let title = stated.titles.get(language);
    let own = || phrases.text("label-ingredients");
    let title = title.map_or_else(own, String::clone);
    // A food of one thing has no list: its name says it, and what animals are in it is said all the same.
    let text = match stated.is_single {
        true => species.trim().to_owned(),
        // A title alone is no list: it is lacking.
        false if list.is_empty() => String::new(),
        false => format!("{title} {list}.{species}"),
    };
    said.say(fields.ingredients, text);
    // Nothing where the list itself makes them stand out.
    let contains = stated.contains.get(language).cloned().unwrap_or_default();
    let contains = match stated.may_contain.get(language) {
        // The one never stands for the other (`us-A10`).
        Some(may) if !contains.is_empty() => format!("{}. {may}", contains.trim_end_matches('.')),
        Some(may) => may.clone(),
        None => contains,
    };
    said.say(fields.allergens, contains);
}

/// How it is kept, in the law's words where it has some; what must be done before it is eaten.
fn storage(writer: &Writer<'_>, phrases: &Phrases, fields: Fields, number: u32, said: &mut Said) {
    let place = writer.kitchen.entry.profile.0;
    let rules = &writer.app.law.laws.of(place).statements;
    let state = writer.pack(number).now.state;
    let kind = match state {
        State::Frozen => Some(NoticeKind::KeepFrozen),
        State::Chilled => Some(NoticeKind::KeepRefrigerated),
        _ => None,
    };
    let words = |kind| notice(rules, kind).map(|words| words.in_language(phrases.language));
    let laws = kind.and_then(words).map(str::to_owned);
    let mut text = laws.unwrap_or_else(|| phrases.storage(state));
    if is_roasted(writer)
        && let Some(words) = words(NoticeKind::CookedStorage)
    {
        text = words.to_owned();
    }
    if writer.lot.packaging == Some(Packaging::ModifiedAtmosphere)
        && let Some(words) = words(NoticeKind::ProtectiveAtmosphere)
    {
        text = format!("{text}. {}", capital(words));
    }
    if let Some(held) = without_air(writer, phrases, state) {
        text = format!("{text}. {held}");
    }
    said.say(fields.storage, text);
    if writer.product.raw && !has_panel(writer) {
        let must = words(NoticeKind::MustBeCooked).unwrap_or("");
        let caution = match must.is_empty() {
            true => phrases.text("label-caution-raw"),
            false => format!("{}.", capital(must)),
        };
        said.say(fields.caution, caution);
    }
}

/// Is it meat that is ready to eat and that its name calls roasted or the like, where the place has words on how such
/// meat is kept (`canada-eu-uk-2.17`)?
fn is_roasted(writer: &Writer<'_>) -> bool {
    let product = writer.product;
    let ready = product.kind == ProductKind::Cooked && product.species.is_some() && !product.raw;
    let words = &writer.law().statements.roasted;
    let says = |name: &String| {
        let name = name.to_lowercase();
        let mut of_it = name.split(|letter: char| !letter.is_alphanumeric());
        of_it.any(|word| words.iter().any(|known| known == word))
    };
    ready && product.label_names().values().any(says)
}

/// What minced meat tells of its fat and its collagen, where the place asks for it.
fn composition(writer: &Writer<'_>, said: &mut Said) {
    let law = writer.law();
    if law.statements.composition.is_none() || !writer.is_minced() {
        return;
    }
    let facts = naming::NameFacts::of_lot(&writer.reading.family, writer.view.of, writer.lists());
    let second = writer.second.as_ref();
    let languages = [
        (Some(&writer.first), Field::Composition),
        (second, Field::SecondComposition),
    ];
    for (phrases, field) in languages {
        if let Some(phrases) = phrases
            && let Some(text) = naming::composition(&facts, law, phrases.language)
        {
            said.say(field, format!("{}.", capital(&text)));
        }
    }
}

/// How a chilled pack without air is held and when it is thrown away, where the place asks for that.
fn without_air(writer: &Writer<'_>, phrases: &Phrases, state: State) -> Option<String> {
    writer.lot.packaging?;
    let law = writer.law();
    let words = notice(&law.statements, NoticeKind::WithoutAir)?;
    let days = law.dates.vacuum.as_ref()?.days_for(writer.product)?;
    (state == State::Chilled).then(|| {
        let words = words.in_language(phrases.language);
        words.replace("{}", &days.to_string())
    })
}

/// Is the panel on safe handling due? Raw meat and poultry where the place has one (`us` 4.2).
fn has_panel(writer: &Writer<'_>) -> bool {
    let rules = &writer.law().statements;
    let meat = writer.product.species.is_some() || !writer.lot.species.is_empty();
    writer.product.raw && meat && notice(rules, NoticeKind::SafeHandlingHeading).is_some()
}

/// The panel on safe handling, in the words that the law fixes.
fn handling(writer: &Writer<'_>, said: &mut Said) {
    if !has_panel(writer) {
        return;
    }
    let rules = &writer.law().statements;
    let parts = [
        (Field::HandlingHeading, NoticeKind::SafeHandlingHeading),
        // A kitchen that packs for its own counter is not under inspection.
        (Field::HandlingWhy, NoticeKind::SafeHandlingExempt),
        (Field::HandlingKeep, NoticeKind::SafeHandlingKeep),
        (Field::HandlingApart, NoticeKind::SafeHandlingSeparate),
        (Field::HandlingCook, NoticeKind::SafeHandlingCook),
        (Field::HandlingHot, NoticeKind::SafeHandlingHot),
    ];
    for (field, kind) in parts {
        if let Some(words) = notice(rules, kind) {
            said.say(field, words.in_language(writer.first.language));
        }
    }
}

/// Where the animals of fresh meat lived and died, where the place asks for it and the lists know it.
fn origin_of(writer: &Writer<'_>) -> String {
    let reading = writer.reading;
    let sources = domain::gate::sources(&reading.family, writer.view.of, writer.lists());
    let language = writer.first.language;
    let lot = writer.lot.code.to_string();
    let entry = &writer.kitchen.entry;
    let worked = domain::gate::WorkedIn {
        country: entry.country.as_ref().map(|country| country.0.as_str()),
        number: entry.establishment.as_ref().map(|number| number.0.as_str()),
        minced: writer.is_minced(),
    };
    let (product, law) = (writer.product, writer.law());
    domain::gate::origin_lines(product, &sources, &lot, worked, law, language).join(". ")
}

/// Who made it and where; with the approval number where the place has words for it and the kitchen has one.
fn business(writer: &Writer<'_>) -> String {
    let entry = &writer.kitchen.entry;
    let address = entry.address.as_ref().map_or(String::new(), |address| {
        format!(", {}", address.0.replace('\n', ", "))
    });
    let number = approval_number(writer).map_or(String::new(), |number| format!(". {number}"));
    format!("{}{address}{number}", entry.name.0)
}

fn approval_number(writer: &Writer<'_>) -> Option<String> {
    let entry = &writer.kitchen.entry;
    let (country, number) = entry.country.as_ref().zip(entry.establishment.as_ref())?;
    let words = notice(&writer.law().statements, NoticeKind::ApprovalNumber)?;
    let words = words.in_language(writer.first.language);
    Some(words.replacen("{}", &format!("{} {}", country.0, number.0), 1))
}
