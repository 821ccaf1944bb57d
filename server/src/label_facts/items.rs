//! The items that a customer's pack must tell, as the texts of a label hold them: which are due, which are told, and
//! whether a template has room for them.

use super::net;
use super::writer::Writer;
use domain::family::{Frozen, frozen};
use domain::gate::{GateSays, LabelItem, PackTrait, Told, required};
use domain::rows::{Finding, Gravity};
use domain::words::{Packaging, ProductKind, State};
use labels::{Facts, Field, Template};
use std::collections::BTreeSet;

/// The texts that tell an item in the first language, and those that tell it in the second: one of them is enough.
fn fields(item: LabelItem) -> (&'static [Field], &'static [Field]) {
    use Field as F;
    match item {
        LabelItem::Name => (&[F::Name], &[F::SecondName]),
        LabelItem::List => (&[F::Ingredients], &[F::SecondIngredients]),
        LabelItem::Allergens => (&[F::Allergens], &[F::SecondAllergens]),
        LabelItem::Net => (&[F::Net], &[F::Net]),
        LabelItem::Date => (&[F::UseBy, F::UseByShort], &[F::UseBy, F::UseByShort]),
        LabelItem::Storage => (&[F::Storage], &[F::SecondStorage]),
        LabelItem::Business => (&[F::Business], &[F::Business]),
        LabelItem::Lot => (&[F::Lot], &[F::Lot]),
        LabelItem::SafeHandling => (&[F::HandlingHeading], &[F::HandlingHeading]),
        LabelItem::Caution => (&[F::Caution], &[F::SecondCaution]),
        LabelItem::Cooking => (&[F::Cooking], &[F::SecondCooking]),
        LabelItem::Frozen => (&[F::Frozen], &[F::Frozen]),
        LabelItem::Thawed => (&[F::Thawed], &[F::SecondThawed]),
        LabelItem::Composition => (&[F::Composition], &[F::SecondComposition]),
        LabelItem::UnitPrice => (&[F::UnitPrice], &[F::UnitPrice]),
        LabelItem::Price => (&[F::Price], &[F::Price]),
    }
}

/// What makes items due on a pack.
pub fn traits(writer: &Writer<'_>, number: u32, facts: &Facts) -> BTreeSet<PackTrait> {
    use PackTrait as T;
    let (product, stated) = (writer.product, &writer.view.stated);
    let now = &writer.pack(number).now;
    let meat = product.species.is_some() || !writer.lot.species.is_empty();
    let ready = !product.raw && product.is_controlled();
    let once = frozen(writer.view.of, number, writer.kitchen.zone) == Frozen::Once;
    let minced = writer.law().statements.composition.is_some() && writer.is_minced();
    let all = [
        (T::Several, !stated.is_single),
        (T::Allergens, !stated.allergens.is_empty()),
        (T::Meat, meat),
        (T::Raw, product.raw),
        (T::ReadyToEat, ready),
        (T::Chilled, now.state == State::Chilled),
        (T::Frozen, now.state == State::Frozen),
        (T::Thawed, once && now.state == State::Chilled),
        (T::WithoutAir, writer.lot.packaging.is_some()),
        (
            T::ProtectiveAtmosphere,
            writer.lot.packaging == Some(Packaging::ModifiedAtmosphere),
        ),
        (T::Minced, minced),
        (
            T::Preparation,
            product.raw && product.kind == ProductKind::Mixed,
        ),
        (T::Weighed, net::is_weighed(writer, number)),
        (T::Priced, facts.text(Field::Price).is_some()),
    ];
    let held = all.into_iter().filter(|(_, holds)| *holds);
    held.map(|(one, _)| one).collect()
}

/// The items that a label tells.
pub fn told(writer: &Writer<'_>, facts: &Facts) -> Told {
    let mut told = Told::default();
    let says = |any: &[Field]| any.iter().any(|field| facts.text(*field).is_some());
    for item in LabelItem::ALL {
        let (first, second) = fields(*item);
        told.first.extend(says(first).then_some(*item));
        // Where both languages say the same, it stands there once.
        let same = says(first) && is_alike(writer, *item);
        told.second.extend((says(second) || same).then_some(*item));
    }
    // Where the list shows the allergens, it tells them.
    if writer.law().statements.allergens.emphasised.is_some() && says(&[Field::Ingredients]) {
        told.first.insert(LabelItem::Allergens);
        told.second
            .extend(says(&[Field::SecondIngredients]).then_some(LabelItem::Allergens));
    }
    // A name that says what there is to know of allergens needs no statement beside it.
    if writer.view.stated.contains.is_empty() {
        told.first.insert(LabelItem::Allergens);
        told.second.insert(LabelItem::Allergens);
    }
    told
}

/// Does an item say the same in both languages, and so stands once?
fn is_alike(writer: &Writer<'_>, item: LabelItem) -> bool {
    let Some(second) = &writer.second else {
        return true;
    };
    let names = writer.product.label_names();
    let name = |language: &str| names.get(language);
    match item {
        LabelItem::Name => {
            let (one, other) = (name(writer.first.language), name(second.language));
            one.is_some() && one == other
        }
        LabelItem::Storage | LabelItem::Thawed => true,
        _ => false,
    }
}

/// A kitchen that has not said where it is: its labels name it, and no place. It is told at set-up too.
pub fn no_address(writer: &Writer<'_>, traits: &BTreeSet<PackTrait>) -> Option<Finding> {
    let mut due = required(writer.law(), traits);
    let due = due.find(|due| due.item == LabelItem::Business)?;
    let lacks = writer.kitchen.entry.address.is_none();
    lacks.then(|| Finding::new(Gravity::Warn, GateSays::NoAddress, [due.row.clone()]))
}

/// Names that a label would have in another language than its own, where the place wants that language: the food's own,
/// and those of what is in it.
pub fn unnamed(writer: &Writer<'_>) -> Vec<Finding> {
    let rules = &writer.law().statements;
    let mut found = Vec::new();
    let languages = std::iter::once(&writer.first).chain(&writer.second);
    let languages = languages.map(|phrases| phrases.language);
    for language in languages.filter(|language| rules.wants_language(language)) {
        let row = rules.languages.iter().map(|(row, _)| row.clone());
        let language_of = || language.to_owned();
        if !writer.product.label_names().contains_key(language) {
            let name = writer.product.label_name(language).to_owned();
            let language = language_of();
            let says = GateSays::NotNamed { language, name };
            found.push(Finding::new(Gravity::Warn, says, row.clone()));
        }
        if let Some(name) = writer.view.stated.unnamed.get(language) {
            let (language, name) = (language_of(), name.clone());
            let says = GateSays::PartNotNamed { language, name };
            found.push(Finding::new(Gravity::Warn, says, row));
        }
    }
    found
}

/// Has a template room for everything that a pack must tell, and for what these facts tell of it?
pub fn covers(
    template: &Template,
    writer: &Writer<'_>,
    number: u32,
    facts: &Facts,
) -> Result<(), LabelItem> {
    let traits = traits(writer, number, facts);
    for due in required(writer.law(), &traits) {
        let (first, second) = fields(due.item);
        let says = |field: &&Field| facts.text(**field).is_some();
        // What is told only by what another item tells has no text of its own.
        if first.iter().any(|field| says(&field)) && !template.holds(first) {
            return Err(due.item);
        }
        if due.each_language && second.iter().any(|field| says(&field)) && !template.holds(second) {
            return Err(due.item);
        }
    }
    Ok(())
}
