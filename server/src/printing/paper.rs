//! What a kitchen needs paper for: its labels by what they are for, the sizes that they come in, and which of these a
//! printer has.

use super::capabilities::{Capabilities, Size};
use super::says::PaperSays;
use crate::label_facts::says::PurposeSays;
use domain::family::Lists;
use domain::says::{Arg, Says};
use domain::words::Profile;
use labels::{Length, Purpose, Template};
use std::collections::BTreeMap;

/// Labels for one thing; one of them does.
pub struct Need<'a> {
    purpose: Purpose,
    templates: Vec<&'a Template>,
}

/// All that a kitchen under that law may want a label for, each with the labels that do.
pub fn needs(templates: &BTreeMap<String, Template>, place: Profile) -> Vec<Need<'_>> {
    // The short label for a customer stands in for the whole one where the place has one.
    let purposes = Purpose::ALL.into_iter();
    let purposes = purposes.filter(|purpose| *purpose != Purpose::DirectSale);
    let need = |purpose| Need {
        purpose,
        templates: templates
            .values()
            .filter(|of| of.serves(place.as_str()))
            .filter(|of| {
                of.purpose() == purpose
                    || purpose == Purpose::Retail && of.purpose() == Purpose::DirectSale
            })
            .collect(),
    };
    let all = purposes.map(need);
    all.filter(|need| !need.templates.is_empty()).collect()
}

/// Has it the paper of that label? One that says no sizes is believed to have each that is not cut.
pub fn has(printer: &Capabilities, template: &Template) -> bool {
    let (x, y) = (hundredths(template.width()), hundredths(template.height()));
    if template.on_its_paper() && printer.is_mute_on_sizes() {
        return false;
    }
    match template.shortest() {
        Some(shortest) => printer.cuts(x, hundredths(shortest), y),
        None => printer.size_for(x, y).is_ok(),
    }
}

/// What a printer has no paper for, of what this kitchen makes: nothing is cured or sold everywhere. Nothing, too, where
/// it does not say which sizes it has; of one that is for some labels, these.
pub fn lacks(
    needs: &[Need<'_>],
    printer: &Capabilities,
    only: &[String],
    lists: &Lists,
) -> Option<Says> {
    let products = || lists.products.values();
    let wanted = |need: &&Need<'_>| match need.purpose {
        Purpose::Retail => products().any(|product| product.sale.offered),
        Purpose::Curing => products().any(|product| product.is_hung()),
        _ => true,
    };
    let meant = |need: &&Need<'_>| {
        let for_it = |of: &&Template| only.iter().any(|name| name == of.name());
        only.is_empty() || need.templates.iter().any(for_it)
    };
    if printer.is_mute_on_sizes() {
        return None;
    }
    let lacking: Vec<Says> = needs
        .iter()
        .filter(wanted)
        .filter(meant)
        .filter(|need| need.had(printer).is_empty())
        .map(Need::says)
        .collect();
    let needs = Arg::Series(lacking.clone());
    (!lacking.is_empty()).then(|| PaperSays::Lacks { needs }.into())
}

impl<'a> Need<'a> {
    /// What it is for, and the sizes that do.
    pub fn says(&self) -> Says {
        PaperSays::Needs {
            purpose: self.purpose.into(),
            sizes: sizes(&self.templates),
        }
        .into()
    }

    /// The same of a printer that was asked and did not answer.
    pub fn says_unknown(&self) -> Says {
        PaperSays::Unknown {
            purpose: self.purpose.into(),
            sizes: sizes(&self.templates),
        }
        .into()
    }

    /// The same of a printer: which of them it has.
    pub fn says_of(&self, printer: &Capabilities) -> Says {
        let had = self.had(printer);
        let purpose = PurposeSays::from(self.purpose);
        match had.is_empty() {
            true => PaperSays::HasNone {
                purpose,
                sizes: sizes(&self.templates),
            },
            false => PaperSays::Has {
                purpose,
                sizes: sizes(&had),
            },
        }
        .into()
    }

    fn had(&self, printer: &Capabilities) -> Vec<&'a Template> {
        let all = self.templates.iter().copied();
        all.filter(|template| has(printer, template)).collect()
    }
}

fn hundredths(length: Length) -> i32 {
    i32::try_from(length.um() / 10).unwrap_or(i32::MAX)
}

/// Each size once, the small first.
pub(super) fn sizes(templates: &[&Template]) -> Arg {
    let mut all: Vec<(i64, Size)> = templates
        .iter()
        .map(|of| {
            let (x, y) = (hundredths(of.width()), hundredths(of.height()));
            let least = of.shortest().map_or(y, hundredths);
            (
                of.area_mm2(),
                Size {
                    x: x..=x,
                    y: least..=y,
                },
            )
        })
        .collect();
    all.sort_by_key(|(area, _)| *area);
    all.dedup_by(|(_, one), (_, other)| one == other);
    Arg::Any(all.iter().map(|(_, size)| size.says().into()).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::label_facts::templates;
    use words::{Language, Speech};

    #[test]
    fn a_printer_of_one_roll_says_what_it_has_no_paper_for() {
        let known = templates::load(None).expect("ours").known;
        let all = needs(&known, Profile::Eu);
        let tubs_alone = Capabilities {
            sizes: vec![Size {
                x: 5080..=5080,
                y: 5080..=5080,
            }],
            ..Capabilities::default()
        };
        let speech = Speech::in_language(Language::French);
        let told: Vec<String> = all
            .iter()
            .map(|of| speech.say(&of.says_of(&tubs_alone)))
            .collect();
        assert_eq!(
            told[0],
            "Pour ce qui arrive\u{a0}: il manque 102\u{a0}×\u{a0}76 ou 102\u{a0}×\u{a0}152\u{a0}mm."
        );
        assert_eq!(
            told[1],
            "Pour les bacs et les étagères de la cuisine\u{a0}: elle a 51\u{a0}×\u{a0}51\u{a0}mm."
        );
        let lists = Lists::default();
        let lacks = |only: &[String]| {
            let says = lacks(&all, &tubs_alone, only, &lists);
            says.map(|says| Speech::default().say(&says))
        };
        // Nothing is cured or sold there yet.
        assert_eq!(
            lacks(&[]).expect("it lacks some"),
            "It says that it has no paper for: what comes in: 102 x 76 or 102 x 152 mm; what is frozen: 76 x 57 or \
             102 x 76 mm; what is on hold: 102 x 76 mm. Put in such a roll before you print these, or print them on \
             another printer."
        );
        assert_eq!(lacks(&["tub".to_owned()]), None, "it is for tubs alone");
        let mute = Capabilities::default();
        assert!(super::lacks(&all, &mute, &[], &lists).is_none());
    }
}
