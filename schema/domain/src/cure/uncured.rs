//! "Uncured", "No Nitrate or Nitrite Added": who may say so, who must, and how large.

use super::brine_percent;
use super::says::ClaimSays;
use crate::law::Law;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId};
use crate::says::{Says, Texts};
use crate::words::words;
use rust_decimal::Decimal;

words! {
    /// Where words stand on the label.
    Beside { BeforeName = "before-name", NextToName = "next-to-name", }
}

words! {
    /// What can free a product from a wording.
    Exception { Fo = "fo", Ph = "ph", Aw = "aw", }
}

/// A wording that the law fixes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClaimWords {
    /// Its row.
    pub row: RowId,
    /// The words, as the law has them.
    pub mandated: String,
    /// Where they stand.
    pub beside: Beside,
    /// The height of their letters over that of the product's name: 1 for the same.
    pub size: Decimal,
    /// Must they be in the name's own style of letter?
    pub same_style: bool,
    /// One of these frees from them.
    pub unless: Vec<(Exception, Bound)>,
    /// What follows them where nitrite comes with a natural ingredient, `[source]` for its name,
    /// with its row.
    pub natural: Option<(RowId, String)>,
}

/// A place's rules for the claim.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ClaimRules {
    /// The words that must be printed; none where the place has no rule for them.
    pub words: Vec<ClaimWords>,
    /// The brine concentration from which none of them is due, in per cent.
    pub no_wording: Option<Bound>,
    /// It must look and taste like the cured one.
    pub resemble: Option<RowId>,
    /// Any source of nitrite, a natural one too, stops the claim.
    pub any_source_blocks: Option<RowId>,
    /// The temperature that the words print and the one that the kitchen keeps are not the same.
    pub colder: Option<(RowId, Texts)>,
}

/// What is known of a product that is made without nitrite.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ClaimFacts {
    /// Is this sort of product normally cured with nitrite?
    pub normally_cured: bool,
    /// Does it look, taste and cut like the cured one?
    pub resembles: bool,
    /// Did nitrite or nitrate as such go in?
    pub nitrite_used: bool,
    /// A natural ingredient that brings nitrite: celery powder and the like.
    pub natural: Option<String>,
    /// Salt and water in the finished product, in one unit.
    pub salt_and_water: Option<(Decimal, Decimal)>,
    /// The sterilising value, in minutes.
    pub fo: Option<Decimal>,
    /// Acidity of a fermented or pickled product.
    pub ph: Option<Decimal>,
    /// Water activity of a dried product.
    pub aw: Option<Decimal>,
}

/// What the label must say, and what stands against it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Claim {
    /// The words to print, as they are to be printed.
    pub words: Vec<ClaimWords>,
    /// The brine concentration, where it is known.
    pub brine: Option<Percent>,
    /// What to look at; a refusal means that nothing of the claim is printed.
    pub findings: Vec<Finding>,
}

/// What the label of a product made without nitrite must say.
///
/// # Errors
/// A measured value cannot be: a pH of 46, a water activity of 92.
pub fn uncured(facts: &ClaimFacts, law: &Law) -> Result<Claim> {
    facts.check()?;
    let rules = &law.cures.claim;
    let mut findings = against(facts, law);
    let brine = facts
        .salt_and_water
        .map(|(salt, water)| brine_percent(salt, water));
    let salty = rules
        .no_wording
        .as_ref()
        .zip(brine)
        .filter(|(least, brine)| least.allows(brine.number()));
    if let Some((least, brine)) = salty {
        let says = ClaimSays::NoneDue { brine };
        findings.push(Finding::note(says, [least.row.clone()]));
    }
    let silent = facts.nitrite_used
        || !facts.normally_cured
        || salty.is_some()
        || findings.iter().any(Finding::refuses);
    let words: Vec<ClaimWords> = match silent {
        true => Vec::new(),
        false => rules
            .words
            .iter()
            .filter(|words| !is_freed(words, facts))
            .map(|words| worded(words, facts, law, &mut findings))
            .collect(),
    };
    if !words.is_empty() {
        if let (None, Some(least)) = (brine, &rules.no_wording) {
            let says = ClaimSays::BrineUnknown {
                least: Percent::new(least.value),
            };
            findings.push(Finding::note(says, [least.row.clone()]));
        }
        let colder = rules.colder.iter();
        findings.extend(colder.map(|(row, says)| Finding::note(Says::named(says), [row.clone()])));
    }
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.gravity));
    Ok(Claim {
        words,
        brine,
        findings,
    })
}

impl ClaimFacts {
    /// Each measured value between the ends of its scale.
    fn check(&self) -> Result<()> {
        let million = Decimal::from(1_000_000);
        let (salt, water) = self
            .salt_and_water
            .map_or((None, None), |(salt, water)| (Some(salt), Some(water)));
        for (field, value, most) in [
            ("fo", self.fo, million),
            ("ph", self.ph, Decimal::from(14)),
            ("aw", self.aw, Decimal::ONE),
            ("salt", salt, million),
            ("water", water, million),
        ] {
            if let Some(value) = value.filter(|value| *value < Decimal::ZERO || *value > most) {
                let says = ClaimSays::CannotBe { value, most };
                return Err(Refusal::cannot_be(field, says));
            }
        }
        Ok(())
    }
}

/// What stands against the claim.
fn against(facts: &ClaimFacts, law: &Law) -> Vec<Finding> {
    let rules = &law.cures.claim;
    let mut findings = Vec::new();
    if facts.nitrite_used {
        let row = rules.words.first().map(|words| words.row.clone());
        findings.push(Finding::new(Gravity::Refuse, ClaimSays::NitriteUsed, row));
        return findings;
    }
    if let (Some(source), Some(row)) = (&facts.natural, &rules.any_source_blocks) {
        let says = ClaimSays::NaturalSource {
            source: source.clone(),
        };
        findings.push(Finding::new(Gravity::Refuse, says, [row.clone()]));
    }
    if rules.words.is_empty() {
        findings.push(Finding::new(Gravity::Warn, ClaimSays::NoWording, []));
    }
    if let (Some(row), true, false) = (&rules.resemble, facts.normally_cured, facts.resembles) {
        findings.push(Finding::against(&law.rows, row, ClaimSays::NotLikeCured));
    }
    findings
}

fn is_freed(words: &ClaimWords, facts: &ClaimFacts) -> bool {
    words.unless.iter().any(|(exception, bound)| {
        let value = match exception {
            Exception::Fo => facts.fo,
            Exception::Ph => facts.ph,
            Exception::Aw => facts.aw,
        };
        value.is_some_and(|value| bound.allows(value))
    })
}

fn worded(
    words: &ClaimWords,
    facts: &ClaimFacts,
    law: &Law,
    findings: &mut Vec<Finding>,
) -> ClaimWords {
    let (Some(source), Some((row, natural))) = (&facts.natural, &words.natural) else {
        return words.clone();
    };
    let tail = natural.replace("[source]", source);
    let says = ClaimSays::NaturalWords {
        source: source.clone(),
        words: tail.clone(),
        law: law.rows.source(row),
    };
    findings.push(Finding::new(Gravity::Warn, says, [row.clone()]));
    ClaimWords {
        mandated: format!("{} {tail}", words.mandated),
        ..words.clone()
    }
}
