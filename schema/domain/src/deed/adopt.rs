//! A pot without a label is taken in: as the pack that is missing, or as a lot of which nobody knows the history.

use super::count;
use super::draw::{numbered, weight};
use super::says::AdoptSays;
use crate::code::LotCode;
use crate::condition::{Condition, ConditionSays};
use crate::dates::{Because, Later, Rule};
use crate::grams::Grams;
use crate::lot::{BirthDate, Event, Lot, Pack, PackNow, Past, PlaceId, What};
use crate::moment::Moment;
use crate::origin::Origin;
use crate::plan::{Birth, PackChange, Plan, Reason};
use crate::product::Product;
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::stop::{Cause, StopSays};
use crate::supplied::Contents;
use crate::words::{Account, Being, State, Topic};
use chrono::{DateTime, Utc};
use chrono_tz::Tz;

/// A pot as it was found.
#[derive(Debug)]
pub struct Pot<'a> {
    /// What people take it for.
    pub product: &'a Product,
    /// What it weighs.
    pub grams: Grams,
    /// Where it is put.
    pub place: PlaceId,
    /// When it was found.
    pub moment: &'a Moment,
}

/// It is the pack that was counted as missing: its grams come back, as a count would find them, and it is
/// where the pot is.
///
/// # Errors
/// Another product, a pack that is not missing, or more in it than it ever held.
pub fn missing(pot: &Pot<'_>, lot: &Lot, number: u32, zone: Tz) -> Result<Plan> {
    let pack = numbered(lot, number, "is")?;
    if lot.product.code != pot.product.code {
        let detail = AdoptSays::OtherProduct {
            pack: lot.shown(number),
            product: lot.product.name("en").to_owned(),
        };
        return Err(Refusal::cannot_be("product", detail));
    }
    if pack.now.being != Being::Missing {
        let detail = AdoptSays::NotMissing {
            pack: lot.shown(number),
            being: pack.now.being,
        };
        return Err(Refusal::new(RefusalKind::Clash, "is", detail));
    }
    let found = count::CountedPack {
        pack: number,
        grams: Some(pot.grams),
    };
    if count::is_too_heavy(pack, pot.grams) {
        let says = AdoptSays::Heavier {
            pack: lot.shown(number),
            made: pack.made,
            grams: pot.grams,
        };
        return Err(Refusal::cannot_be("grams", says));
    }
    // The count's fields are not those of this deed.
    let at_field = |mut refusal: Refusal| {
        let field = refusal.field.as_deref().map(|field| match field {
            "lot" => "is".to_owned(),
            packs if packs.starts_with("packs") => "grams".to_owned(),
            other => other.to_owned(),
        });
        refusal.field = field;
        refusal
    };
    let mut plan = count::plan(lot, &[found], pot.moment, zone, false).map_err(at_field)?;
    let moved = What::Moved {
        place: Some(pot.place),
        state: None,
    };
    let event = Event::new(moved, pot.moment);
    // After it was found: what the pack lived through has one event more by then.
    let mut counted = plan.changes.iter().map(|change| (change.now, change.grams));
    let moved = counted.next_back().and_then(|(now, grams)| {
        let count = Event::new(What::Took(Account::Unexplained, grams), pot.moment);
        let past = pack.past.clone().map(|past| Past {
            events: [past.events, vec![count]].concat(),
            ..past
        });
        let found = Pack {
            now,
            past,
            ..pack.clone()
        };
        found.after(&event, lot.later)
    });
    plan.changes.extend(moved.map(|now| PackChange {
        lot: lot.id,
        pack: pack.id,
        account: Account::Moved,
        grams: Grams::ZERO,
        place: Some(pot.place),
        state: None,
        now,
        whole_pack: false,
    }));
    plan.warnings.push(
        AdoptSays::PrintAgain {
            pack: lot.shown(number),
        }
        .into(),
    );
    Ok(plan)
}

/// Where everything with a species in it comes from: nobody knows, so it is as meat that was bought in.
pub fn origin(product: &Product) -> Origin {
    match product.species {
        Some(_) => Origin::BOUGHT_MEAT,
        None => Origin::NoSpecies,
    }
}

/// Nobody has said which allergens are in it. That ends when somebody says it, and by no other word: who lets the
/// pot go has not told what is in it.
fn not_told(contents: &Contents, at: DateTime<Utc>) -> Option<Cause> {
    contents.told.is_none().then(|| contents_unknown(at))
}

/// The stop of what nobody has told the contents of.
pub(super) fn contents_unknown(at: DateTime<Utc>) -> Cause {
    let because = Because {
        says: AdoptSays::NotTold.into(),
        rule: Rule::Practice(ConditionSays::ProofRule.into()),
    };
    Cause::failed(Topic::Contents, because, at)
}

/// Nobody knows what it is: a new lot that is never ready, that is used today or not at all, and that goes
/// nowhere until a person says by name what becomes of it. `contents` are what the lists give its product,
/// and what somebody says of it: else what may be in it is not known.
///
/// # Errors
/// A weight that cannot be.
pub fn unknown(
    pot: &Pot<'_>,
    product_key: i32,
    code: LotCode,
    contents: &Contents,
    why: &str,
) -> Result<Plan> {
    weight(pot.grams, "grams")?;
    let (product, day) = (pot.product, pot.moment.day);
    let practice = |says: AdoptSays| Because {
        says: says.into(),
        rule: Rule::Practice(ConditionSays::ProofRule.into()),
    };
    let (condition, is) = match product.raw {
        true => (Condition::RAW, AdoptSays::TakenAsRaw),
        false => (Condition::TREATED, AdoptSays::TakenAsTreated),
    };
    // Nobody knows how old it is. Common practice, no source: today is the last day that it may have. What
    // stands on the shelf without a rule has no day either.
    let keeps = product.storage == State::Ambient && product.keeping.usual.is_none();
    let use_by = (!keeps).then_some(day);
    let later = Later::of(product.keeping.usual);
    let mut reasons = Reason::all(Topic::Condition, [practice(is)]);
    reasons.extend(Reason::all(
        Topic::Date,
        use_by.map(|_| practice(AdoptSays::AgeUnknown)),
    ));
    let stop = Cause::failed(
        Topic::History,
        practice(AdoptSays::Found {
            why: why.to_owned(),
        }),
        pot.moment.at,
    );
    let warning = StopSays::UnknownHistory {
        says: stop.because.says.clone(),
    };
    let mut stops = vec![stop.into()];
    stops.extend(not_told(contents, pot.moment.at).map(Into::into));
    Ok(Plan {
        warnings: vec![warning.into()],
        births: vec![Birth {
            code,
            product: product_key,
            grams: pot.grams,
            origin: origin(product),
            allergens: contents.allergens(product),
            may_contain: contents.may_contain.clone(),
            supplied: Some(contents.supplied.clone()),
            species: product.species.into_iter().collect(),
            born: PackNow::new(
                pot.grams,
                pot.place,
                product.storage,
                BirthDate {
                    use_by,
                    later,
                    was_frozen: product.storage == State::Frozen,
                },
                day,
            ),
            later,
            condition,
            packaging: None,
            reasons,
            stops,
            packs: vec![pot.grams],
            note: None,
        }],
        ..Plan::default()
    })
}
