//! What the counter gets to see about a scanned pack.

use crate::app::App;
use crate::error::Result;
use crate::lists::kitchen::Kitchen;
use crate::pulse;
use crate::read::lot_of;
use domain::code::NotACode;
use domain::counter::ScanView;
use domain::gs1::{self, in_store::Layout};
use domain::heat::beyond;
use domain::measure::Temperature;
use domain::says::Says;
use domain::scanned::{self, Scanned};
use domain::stop;
use domain::today::suffers;
use domain::verdict::VerdictSays;
use domain::words::Verdict;
use store::lots::LotRow;
use store::packs::PackChoice;
use store::{Conn, lots, places};

/// The verdict on whatever was scanned. There is always one.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn scan(app: &App, conn: &mut Conn, kitchen: &Kitchen, text: &str) -> Result<ScanView> {
    let (code, number) = match scanned::read(text, &app.ours()) {
        Scanned::Lot { code, pack } => (code, pack),
        Scanned::Elsewhere(_) => return Ok(ScanView::unknown(VerdictSays::Elsewhere)),
        Scanned::Unreadable(why) => {
            if let Some(known) = of_the_till(app, conn, kitchen, text)? {
                return Ok(known);
            }
            let lots = match why {
                NotACode::Pattern => u32::try_from(near(conn, text)?.len()).unwrap_or(u32::MAX),
                NotACode::CheckCharacter => 0,
            };
            return Ok(match lots {
                0 => ScanView::unreadable(&why),
                lots => ScanView::unknown(VerdictSays::Part { lots }),
            });
        }
    };
    let Some(row) = lots::by_code(conn, &code)? else {
        return Ok(ScanView::unknown(VerdictSays::NeverIssued { lot: code }));
    };
    let wanted = match number {
        Some(number) => PackChoice::Numbers(vec![i32::try_from(number).unwrap_or(-1)]),
        None => PackChoice::OnHand,
    };
    let lot = lot_of(app, conn, row, &wanted)?;
    let ahead = stop::made_ahead(&lot, app.now()).is_some();
    let mut view = ScanView::of(lot, number, app.now(), kitchen.zone);
    if pulse::clock_doubt().is_some() {
        view.answer = view.answer.doubted(VerdictSays::ClockInDoubt);
    } else if ahead {
        view.answer = view.answer.doubted(VerdictSays::MadeAhead);
    } else if let Some(warns) = stands_warm(app, conn, kitchen, &view)? {
        view.answer.reasons.push(warns);
    }
    Ok(view)
}

/// Where a pack that may be sold stands, it was too warm when it was read last. One warm reading stops nothing: somebody
/// looks at it.
fn stands_warm(
    app: &App,
    conn: &mut Conn,
    kitchen: &Kitchen,
    view: &ScanView,
) -> Result<Option<Says>> {
    let sells = matches!(view.answer.verdict, Verdict::Sell | Verdict::SellToday);
    let pack = view.known.as_ref().filter(|_| sells);
    let pack = pack.and_then(|known| Some((&known.lot, known.pack()?)));
    let Some((lot, pack)) = pack else {
        return Ok(None);
    };
    let Some(of) = places::read_last(conn, pack.now.place.0)? else {
        return Ok(None);
    };
    let standing = app.standing_seen(conn)?;
    let code = standing.lists.place_code(pack.now.place);
    let law = app.laws(&standing.confirmed).of(kitchen.entry.profile.0);
    let read = Temperature::read(of.quantity, of.millionths);
    let place = standing.lists.places.get(code).zip(read);
    let broken = place.and_then(|(place, read)| {
        let broken = beyond(place.bounds, place.keeps_food, read, &law.heat)?;
        Some((place.name.clone(), broken))
    });
    Ok(broken
        .filter(|(_, broken)| suffers(lot, pack, broken))
        .map(|(place, broken)| {
            let (read, limit) = (broken.read, broken.limit);
            VerdictSays::StandsWarm { place, read, limit }.into()
        }))
}

/// The lots that somebody may mean who typed a part of a code, the newest first.
///
/// # Errors
/// The database is away.
pub fn near(conn: &mut Conn, text: &str) -> Result<Vec<LotRow>> {
    // A pack's number after a part of a code is that of each.
    let code = text.split_once('/').map_or(text, |(code, _)| code);
    match scanned::part(code) {
        Some(part) => Ok(lots::with_part(conn, &part, MOST_NEAR)?),
        None => Ok(Vec::new()),
    }
}

/// The most lots that a part of a code is looked up for.
const MOST_NEAR: i64 = 24;

/// The shop's own number for its till: it names a product, and no pack of it.
fn of_the_till(
    app: &App,
    conn: &mut Conn,
    kitchen: &Kitchen,
    text: &str,
) -> Result<Option<ScanView>> {
    let layout = kitchen.entry.till_layout.as_ref();
    let layout = layout.and_then(|text| text.0.parse::<Layout>().ok());
    let digits = gs1::strip_symbology(text.trim());
    let Some(Ok(read)) = layout.map(|layout| layout.decode(digits)) else {
        return Ok(None);
    };
    let standing = app.standing(conn)?;
    let mut products = standing.lists.products.values();
    let product = products.find(|of| of.sale.till_number == Some(read.item));
    Ok(product.map(|product| {
        let product = product.named();
        ScanView::unknown(VerdictSays::OfTheTill { product })
    }))
}
