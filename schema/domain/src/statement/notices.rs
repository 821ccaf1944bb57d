//! Fixed words on a label: how it is kept, that it was frozen, how it is handled.

use super::says::StatementSays;
use super::{StatementRules, Wording};
use crate::rows::{Finding, RowId, Rows};
use crate::says::Arg;
use crate::words::Species;

/// What a notice is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the word says it")]
pub enum NoticeKind {
    KeepRefrigerated,
    KeepFrozen,
    KeepRefrigeratedOrFrozen,
    Perishable,
    /// Once frozen, sold thawed.
    Thawed,
    /// Some of it was frozen, all is sold thawed.
    PartlyThawed,
    /// Cooked meat that is kept cold or hot: the temperatures.
    CookedStorage,
    /// Packed without air: how it is held and when it is thrown away, `{}` for the days.
    WithoutAir,
    /// Packed in a gas that is not air.
    ProtectiveAtmosphere,
    /// Raw meat that looks ready to eat.
    MustBeCooked,
    /// Raw meat: the panel on safe handling, part by part.
    SafeHandlingHeading,
    SafeHandlingInspected,
    SafeHandlingExempt,
    SafeHandlingKeep,
    SafeHandlingSeparate,
    SafeHandlingCook,
    SafeHandlingHot,
    /// Beef that blades or needles went through.
    MechanicallyTenderized,
    /// How such beef is cooked.
    TenderizedCooking,
    /// How a steak of it is cooked besides.
    TenderizedSteak,
    /// Where the animal was kept, `{}` for the country.
    RearedIn,
    /// Where it was killed.
    SlaughteredIn,
    /// Born, reared and killed in one country.
    Origin,
    /// The number that the authority gave the kitchen, `{}` for country and number.
    ApprovalNumber,
}

impl NoticeKind {
    /// Every one, with its spelling.
    pub const ALL: [(NoticeKind, &'static str); 24] = {
        use NoticeKind::*;
        [
            (KeepRefrigerated, "keep-refrigerated"),
            (KeepFrozen, "keep-frozen"),
            (KeepRefrigeratedOrFrozen, "keep-refrigerated-or-frozen"),
            (Perishable, "perishable"),
            (Thawed, "thawed"),
            (PartlyThawed, "partly-thawed"),
            (CookedStorage, "cooked-storage"),
            (WithoutAir, "without-air"),
            (ProtectiveAtmosphere, "protective-atmosphere"),
            (MustBeCooked, "must-be-cooked"),
            (SafeHandlingHeading, "safe-handling-heading"),
            (SafeHandlingInspected, "safe-handling-inspected"),
            (SafeHandlingExempt, "safe-handling-exempt"),
            (SafeHandlingKeep, "safe-handling-keep"),
            (SafeHandlingSeparate, "safe-handling-separate"),
            (SafeHandlingCook, "safe-handling-cook"),
            (SafeHandlingHot, "safe-handling-hot"),
            (MechanicallyTenderized, "mechanically-tenderized"),
            (TenderizedCooking, "tenderized-cooking"),
            (TenderizedSteak, "tenderized-steak"),
            (RearedIn, "reared-in"),
            (SlaughteredIn, "slaughtered-in"),
            (Origin, "origin"),
            (ApprovalNumber, "approval-number"),
        ]
    };

    /// As it is spelt everywhere.
    pub fn as_str(self) -> &'static str {
        let spelt = NoticeKind::ALL.iter().find(|(kind, _)| *kind == self);
        spelt.map_or("", |(_, text)| text)
    }

    /// The one so spelt.
    pub fn parse(text: &str) -> Option<NoticeKind> {
        let found = NoticeKind::ALL.iter().find(|(_, spelt)| *spelt == text);
        found.map(|(kind, _)| *kind)
    }
}

/// A notice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// What it is for.
    pub kind: NoticeKind,
    /// The words.
    pub words: Wording,
}

/// The place's words for something, if it has them.
pub fn notice(rules: &StatementRules, kind: NoticeKind) -> Option<&Wording> {
    let found = rules.notices.iter().find(|notice| notice.kind == kind);
    found.map(|notice| &notice.words)
}

/// The fresh meat whose label tells where the animals lived and died.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OriginRules {
    /// Where that is said.
    pub row: RowId,
    /// The animals.
    pub species: Vec<Species>,
}

/// The words on where the animals of a piece of meat lived and died (`canada-eu-uk-10.1`, `10.2`).
///
/// One country for all three, and proven, is the short form. Nothing where the place has no such words.
pub fn origin(
    rules: &StatementRules,
    born: Option<&str>,
    reared: &str,
    slaughtered: &str,
    language: &str,
) -> Vec<String> {
    let words = |kind, country: &str| {
        notice(rules, kind).map(|words| words.in_language(language).replace("{}", country))
    };
    if born == Some(reared) && reared == slaughtered {
        return words(NoticeKind::Origin, reared).into_iter().collect();
    }
    let reared = words(NoticeKind::RearedIn, reared);
    let slaughtered = words(NoticeKind::SlaughteredIn, slaughtered);
    reared.into_iter().chain(slaughtered).collect()
}

/// Every language that the place wants on a label and that is not there.
pub fn check_languages(rules: &StatementRules, rows: &Rows, given: &[&str]) -> Option<Finding> {
    let (row, wanted) = rules.languages.as_ref()?;
    let missing: Vec<&str> = wanted
        .iter()
        .map(String::as_str)
        .filter(|language| !given.contains(language))
        .collect();
    (!missing.is_empty()).then(|| {
        let wanted = wanted.iter().map(|language| Arg::from(language.as_str()));
        let says = StatementSays::Languages {
            wanted: Arg::All(wanted.collect()),
            missing: missing.join(", "),
        };
        Finding::against(rows, row, says)
    })
}
