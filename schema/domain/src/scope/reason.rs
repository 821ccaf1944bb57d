//! The reason of a lot, in a sentence.

use super::says::ReasonSays;
use super::tell::InScope;
use super::walk::{Because, How};
use crate::family::Lists;
use crate::lot::LotId;
use std::collections::HashMap;

/// The lots of a scope by their keys.
pub type ByKey<'a> = HashMap<LotId, &'a InScope>;

/// Why a lot is in scope, in the words of a language's lists.
pub fn reason(of: &Because, lots: &ByKey<'_>, lists: &Lists, language: &str) -> Option<ReasonSays> {
    let through = of.of.and_then(|lot| lots.get(&lot));
    let place = || {
        of.place
            .map_or("", |place| lists.place_name(place))
            .to_owned()
    };
    Some(match of.how {
        How::Named => ReasonSays::Named,
        How::MadeOf => {
            let lot = through?;
            ReasonSays::MadeOf {
                lot: lot.code.clone(),
                product: lists.product(&lot.product, language).to_owned(),
            }
        }
        How::SharedContact => ReasonSays::SharedContact {
            place: place(),
            lot: through?.code.clone(),
        },
        How::WasThere => ReasonSays::WasThere { place: place() },
        How::DoneBy => ReasonSays::DoneBy,
    })
}
