//! Whole and half carcasses by what they are called at the rail: "side" and "half" find what hangs, whatever the
//! kitchen's list calls it.

use super::{MOST, briefs, fold};
use crate::caller::Caller;
use crate::error::Result;
use crate::read::names::Names;
use crate::read::says::QuerySays;
use domain::lot::Brief;
use domain::words::ProductKind;
use store::Conn;
use store::list_lots::{self, LotSearch};

/// What a carcass is called besides, in the reader's language.
pub(super) fn words(names: &Names) -> String {
    fold(&names.speech.say(&QuerySays::CarcassWords.into()))
}

/// Is one of them that word?
pub(super) fn is_meant(names: &Names, word: &str) -> bool {
    words(names).split(' ').any(|known| known == word)
}

/// Is the product a carcass, or a half of one?
pub(super) fn is_one(names: &Names, code: &str) -> bool {
    let listed = names.standing.lists.products.get(code);
    listed.is_some_and(|product| product.kind == ProductKind::Carcass)
}

/// Those that something is left of, what came last first.
pub(super) fn lots(app: &Caller<'_>, conn: &mut Conn, names: &Names) -> Result<Vec<Brief>> {
    let products = names.products().into_iter();
    let carcasses = products.filter(|(code, _)| is_one(names, code));
    let sought = LotSearch {
        products: Some(carcasses.map(|(code, _)| code).collect()),
        on_hand: true,
        ..LotSearch::default()
    };
    let found = list_lots::list(conn, &sought, MOST as i64)?;
    let rows: Vec<_> = found.into_iter().map(|(row, _)| row).collect();
    briefs(app, conn, &rows)
}
