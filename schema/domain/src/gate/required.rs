//! What a customer's pack must tell, item by item, as the place's data has it; and what of that a label
//! does not tell.

use super::GateSays;
use crate::law::Law;
use crate::rows::{Finding, RowId};
use crate::words::words;
use std::collections::BTreeSet;

words! {
    /// What a customer's pack tells.
    LabelItem {
        Name = "name", List = "list", Allergens = "allergens", Net = "net", Date = "date", Storage = "storage",
        Business = "business", Lot = "lot", SafeHandling = "safe-handling", Caution = "caution",
        Cooking = "cooking", Frozen = "frozen", Thawed = "thawed", Composition = "composition",
        UnitPrice = "unit-price", Price = "price",
    }
}

words! {
    /// What makes such an item due.
    PackTrait {
        Several = "several-things", Allergens = "allergens", Meat = "meat", Raw = "raw",
        ReadyToEat = "ready-to-eat", Chilled = "chilled", Frozen = "frozen", Thawed = "thawed",
        WithoutAir = "without-air", ProtectiveAtmosphere = "protective-atmosphere", Minced = "minced",
        Preparation = "preparation", Weighed = "weighed", Priced = "priced",
    }
}

/// An item that a place asks for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Required {
    /// The item.
    pub item: LabelItem,
    /// Of packs that have all of these; of all packs where there is none.
    pub when: BTreeSet<PackTrait>,
    /// In each of the languages that the place wants, and not in the first alone.
    pub each_language: bool,
    /// Where it comes from.
    pub row: RowId,
}

/// What is due on a pack with these traits.
pub fn required<'a>(
    law: &'a Law,
    traits: &'a BTreeSet<PackTrait>,
) -> impl Iterator<Item = &'a Required> {
    let all = law.statements.required.iter();
    all.filter(|required| required.when.is_subset(traits))
}

/// The items that a label tells, by how many languages.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Told {
    /// In the first language, or in figures that every language has.
    pub first: BTreeSet<LabelItem>,
    /// In the second, or in both at once.
    pub second: BTreeSet<LabelItem>,
}

/// What is due and is not told. A second language is looked at where the place wants it.
pub fn check_required(
    law: &Law,
    traits: &BTreeSet<PackTrait>,
    told: &Told,
    second: Option<&str>,
) -> Vec<Finding> {
    let wanted = second.filter(|language| law.statements.wants_language(language));
    let mut found: Vec<Finding> = Vec::new();
    for due in required(law, traits) {
        let item = due.item;
        let says = match (told.first.contains(&item), wanted) {
            (false, _) => GateSays::Lacks { item },
            (true, Some(language)) if due.each_language && !told.second.contains(&item) => {
                GateSays::LacksIn {
                    item,
                    language: language.to_owned(),
                }
            }
            (true, _) => continue,
        };
        let finding = Finding::against(&law.rows, &due.row, says);
        // Two rows that ask for the same: the one that refuses is told.
        match found.iter_mut().find(|of| of.says == finding.says) {
            Some(known) if finding.refuses() => *known = finding,
            Some(_) => {}
            None => found.push(finding),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rows::Row;
    use crate::says::Texts;
    use crate::words::Mark;

    fn law(languages: bool) -> Law {
        let mut law = Law::default();
        for (id, mark) in [("read", Mark::Read), ("unread", Mark::Memory)] {
            law.rows.insert(Row {
                id: RowId::new(id),
                says: Texts::from(id),
                also: Vec::new(),
                cite: None,
                sources: Vec::new(),
                mark,
                only_in: None,
                from: None,
                until: None,
            });
        }
        let due = |item, when: &[PackTrait], each_language, row| Required {
            item,
            when: when.iter().copied().collect(),
            each_language,
            row: RowId::new(row),
        };
        law.statements.required = vec![
            due(LabelItem::Name, &[], true, "read"),
            due(LabelItem::Net, &[], false, "read"),
            due(
                LabelItem::Thawed,
                &[PackTrait::Thawed, PackTrait::Meat],
                false,
                "unread",
            ),
            due(LabelItem::Date, &[PackTrait::Chilled], false, "unread"),
            due(
                LabelItem::Date,
                &[PackTrait::Chilled, PackTrait::Meat],
                false,
                "read",
            ),
        ];
        law.statements.languages =
            languages.then(|| (RowId::new("read"), vec!["en".to_owned(), "fr".to_owned()]));
        law
    }

    #[track_caller]
    fn check(
        law: &Law,
        traits: &[PackTrait],
        first: &[LabelItem],
        second: &[LabelItem],
        expected: &[(&str, bool)],
    ) {
        let told = Told {
            first: first.iter().copied().collect(),
            second: second.iter().copied().collect(),
        };
        let traits = traits.iter().copied().collect();
        let found = check_required(law, &traits, &told, Some("fr"));
        let keys: Vec<(&str, bool)> = found
            .iter()
            .map(|finding| (finding.says.key(), finding.refuses()))
            .collect();
        assert_eq!(keys, expected);
    }

    #[test]
    fn what_is_due_and_not_told_is_found() {
        use LabelItem::*;
        let one = law(false);
        check(&one, &[], &[Name, Net], &[], &[]);
        check(&one, &[], &[Name], &[], &[("gate-lacks", true)]);
        // What only an unread row asks is told and no more.
        let thawed = [PackTrait::Thawed, PackTrait::Meat];
        check(&one, &thawed, &[Name, Net], &[], &[("gate-lacks", false)]);
        check(&one, &[PackTrait::Thawed], &[Name, Net], &[], &[]);
        // Two rows that ask for the same: the one that refuses counts, and once.
        let chilled = [PackTrait::Chilled, PackTrait::Meat];
        check(&one, &chilled, &[Name, Net], &[], &[("gate-lacks", true)]);
    }

    #[test]
    fn a_second_language_counts_where_the_place_wants_it() {
        use LabelItem::*;
        check(&law(false), &[], &[Name, Net], &[], &[]);
        check(&law(true), &[], &[Name, Net], &[Name], &[]);
        check(
            &law(true),
            &[],
            &[Name, Net],
            &[],
            &[("gate-lacks-in", true)],
        );
    }
}
