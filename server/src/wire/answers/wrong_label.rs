//! Packs with wrong labels, as they are answered.

use super::instant;
use crate::read::wrong_labels::WrongPack;
use crate::wire::Weight;
use chrono_tz::Tz;
use domain::claims::Untrue;
use serde::Serialize;
use utoipa::ToSchema;
use words::Speech;

/// Packs whose last label says what is no longer true.
#[derive(Debug, Serialize, ToSchema)]
pub struct WrongLabelsRead {
    /// By lot and pack.
    pub packs: Vec<WrongLabelRead>,
}

/// A pack with such a label.
#[derive(Debug, Serialize, ToSchema)]
pub struct WrongLabelRead {
    /// The lot's code.
    pub lot: String,
    /// The pack.
    pub pack: u32,
    /// Both, for people.
    pub shown: String,
    /// The product's code.
    pub product: String,
    /// The code of the place where it is, or was last.
    pub place: String,
    /// What has become of it.
    pub is: String,
    /// What is left in it.
    pub left_grams: Weight,
    /// The number of the print that is wrong: `/api/prints/{print}`.
    pub print: i32,
    /// From when on it was.
    pub since: String,
    /// What of it is wrong.
    pub untrue: Vec<UntrueRead>,
}

/// One thing that a label says and that is not so.
#[derive(Debug, Serialize, ToSchema)]
pub struct UntrueRead {
    /// What it is about: `allergen`, `date`, `species`, `ingredient`, `weight`, `name`.
    pub about: String,
    /// What the label says.
    pub label_says: String,
    /// What is true.
    pub is_true: String,
    /// Both in a sentence.
    pub says: String,
    /// The key of `says`.
    pub key: String,
}

/// Packs with wrong labels, for a reader.
pub fn wrong_labels_read(packs: &[WrongPack], zone: Tz, speech: &Speech) -> WrongLabelsRead {
    let of = |wrong: &WrongPack| WrongLabelRead {
        lot: wrong.lot.code.to_string(),
        pack: wrong.pack.number,
        shown: wrong.lot.shown(wrong.pack.number),
        product: wrong.lot.product.code.clone(),
        place: wrong.place.clone(),
        is: wrong.pack.now.being.as_str().to_owned(),
        left_grams: Weight(wrong.pack.now.left),
        print: wrong.print,
        since: instant(wrong.since.naive_utc(), zone),
        untrue: wrong.untrue.iter().map(|of| untrue(of, speech)).collect(),
    };
    WrongLabelsRead {
        packs: packs.iter().map(of).collect(),
    }
}

fn untrue(of: &Untrue, speech: &Speech) -> UntrueRead {
    let says = of.says();
    UntrueRead {
        about: of.about.as_str().to_owned(),
        label_says: speech.say(&of.printed),
        is_true: speech.say(&of.now),
        key: says.key().to_owned(),
        says: speech.say(&says),
    }
}
