//! What labels claim: kept with each print, and judged anew where something of it may be otherwise now.

use crate::app::App;
use crate::error::Result;
use crate::label_facts::Prepared;
use crate::read::LoadedFamily;
use domain::claims::Claims;
use domain::family::{Lists, claims};
use domain::lot::LotId;
use labels::{Field, Purpose};
use store::Tx;
use store::family::Extent;
use store::{kept, wrong_labels};

/// How many lots are looked at together: their families are held in memory at once.
const AT_ONCE: usize = 1_000;

/// The labels of these lots may say something else now: what is in them, how they are called or when they
/// end was believed otherwise before `at`. Whatever changed it calls this once, with all the lots that it
/// judged anew, in its transaction and after it has written everything else; lots of which no label was
/// ever printed cost nothing. Of `lists` only farms and abattoirs are asked.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn may_say_else(
    app: &App,
    tx: &mut Tx<'_>,
    lists: &Lists,
    lots: &[i32],
    at: chrono::NaiveDateTime,
) -> Result<()> {
    for printed in wrong_labels::printed_of(tx.conn, lots)?.chunks(AT_ONCE) {
        let family = store::family::load(
            tx.conn,
            store::family::WalkStart::Keys(printed),
            Extent::ANCESTORS,
            app,
        )?;
        let known = printed.iter().filter_map(|lot| family.get(LotId(*lot)));
        let now: Vec<(i32, Claims)> = known
            .map(|of| (of.lot.id.0, claims(&family, of, lists)))
            .collect();
        wrong_labels::set_truths(tx, &now)?;
        wrong_labels::of_lots(tx, printed, at)?;
    }
    Ok(())
}

/// What the labels of a lot claim as they are printed, kept: the key of each one's claims, by purpose.
pub struct Kept {
    all: Claims,
    by_purpose: Vec<((Purpose, bool), i32)>,
}

impl Kept {
    /// Those of a lot that labels are just made of. What would be true of a new label is kept with the
    /// lot from then on.
    ///
    /// # Errors
    /// The database is away or full.
    pub fn of(
        tx: &mut Tx<'_>,
        reading: &LoadedFamily<'_>,
        lot: LotId,
        at: chrono::NaiveDateTime,
    ) -> Result<Kept> {
        let of = reading.family.get(lot);
        let of = of.ok_or_else(|| store::Error::bad_row("lots", lot.0, "is not there"))?;
        let all = claims(&reading.family, of, &reading.standing.lists);
        if wrong_labels::set_truths(tx, &[(lot.0, all.clone())])? {
            wrong_labels::of_lots(tx, &[lot.0], at)?;
        }
        Ok(Kept {
            all,
            by_purpose: Vec::new(),
        })
    }

    /// The key of what one label claims.
    ///
    /// # Errors
    /// The database is away or full.
    pub fn key(&mut self, tx: &mut Tx<'_>, label: &Prepared) -> Result<i32> {
        let told = label.facts.texts.get(&Field::Origin);
        let tells_origin = told.is_some_and(|text| !text.is_empty());
        let sort = (label.purpose, tells_origin);
        let known = self.by_purpose.iter().find(|(of, _)| *of == sort);
        if let Some((_, key)) = known {
            return Ok(*key);
        }
        let said = match label.purpose {
            Purpose::Retail | Purpose::DirectSale if tells_origin => self.all.clone(),
            Purpose::Retail | Purpose::DirectSale => self.all.without_origin(),
            Purpose::Kitchen | Purpose::Freezer | Purpose::Receiving => self.all.of_kitchen(),
            Purpose::Curing => self.all.of_tag(),
            Purpose::Hold => Claims::beside(),
        };
        let key = kept::keep(tx, &said.to_string())?;
        self.by_purpose.push((sort, key));
        Ok(key)
    }
}
