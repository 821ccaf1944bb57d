//! What the counter is told about a scanned pack.

use crate::caller::Caller;
use crate::error::Result;
use crate::read::lot_of;
use crate::wire::Day;
use crate::wire::answers::ScanRead;
use domain::code::NotACode;
use domain::lot::{Lot, Pack};
use domain::moment::day_of;
use domain::scanned::{self, Scanned};
use domain::stop;
use domain::verdict::{self, Answer, VerdictSays};
use store::packs::Wanted;
use store::{Conn, lots};
use words::Speech;

/// The verdict on whatever was scanned. There is always one.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn scan(app: &Caller<'_>, conn: &mut Conn, text: &str) -> Result<ScanRead> {
    let kitchen = app.kitchen_lately(conn)?;
    let speech = app.speech(&kitchen);
    let unknown = |says: VerdictSays| Ok(told(Answer::unknown(says), None, None, &speech));
    let (code, number) = match scanned::read(text, &app.address(&kitchen)) {
        Scanned::Lot { code, pack } => (code, pack),
        Scanned::Elsewhere(_) => return unknown(VerdictSays::Elsewhere),
        Scanned::Unreadable(NotACode::CheckCharacter) => {
            return unknown(VerdictSays::Misread);
        }
        Scanned::Unreadable(NotACode::Pattern) => {
            return unknown(VerdictSays::NotOurs);
        }
    };
    let Some(row) = lots::by_code(conn, &code)? else {
        return unknown(VerdictSays::NeverIssued { lot: code });
    };
    let wanted = match number {
        Some(number) => Wanted::Numbers(vec![i32::try_from(number).unwrap_or(-1)]),
        None => Wanted::OnHand,
    };
    let lot = lot_of(app, conn, row, &wanted)?;
    let now = app.now();
    let today = day_of(now, kitchen.zone);
    let of = |pack: &Pack| {
        let stops = stop::on(&lot, Some(pack), now, today);
        let stops = Some(stops).filter(|_| pack.now.is_on_hand());
        if let Some(answer) = stops.and_then(|stops| Answer::stopped(&stops)) {
            return answer;
        }
        verdict::of_pack(
            &pack.now,
            lot.product.for_sale,
            lot.product.keep.is_some(),
            today,
        )
    };
    let pack = match number {
        Some(number) => match lot.pack(number) {
            Some(pack) => Some(pack),
            None => {
                return unknown(VerdictSays::NoSuchPack {
                    lot: code,
                    packs: lot.pack_count,
                    pack: number,
                });
            }
        },
        None => lot.packs.first().filter(|_| lot.pack_count == 1),
    };
    let answer = match pack {
        _ if lot.voided => Answer::voided(),
        Some(pack) => of(pack),
        None => Answer::most_cautious(lot.on_hand().map(of)),
    };
    let mut read = told(answer, Some(&lot), pack, &speech);
    read.name = Some(lot.product.name(speech.language.tag()).to_owned());
    Ok(read)
}

fn told(answer: Answer, lot: Option<&Lot>, pack: Option<&Pack>, speech: &Speech) -> ScanRead {
    let earliest = || lot?.on_hand().filter_map(|pack| pack.now.use_by).min();
    ScanRead {
        verdict: answer.verdict.as_str().to_owned(),
        says: speech.say(&answer.says),
        key: answer.says.key().to_owned(),
        reason_keys: answer
            .reasons
            .iter()
            .map(|says| says.key().to_owned())
            .collect(),
        reasons: answer.reasons.iter().map(|says| speech.say(says)).collect(),
        lot: lot.map(|lot| lot.code.to_string()),
        pack: pack.map(|pack| pack.number),
        product: lot.map(|lot| lot.product.code.clone()),
        name: None,
        use_by: match pack {
            Some(pack) => pack.now.use_by,
            None => earliest(),
        }
        .map(Day),
        allergens: lot.map_or(Vec::new(), |lot| {
            lot.allergens
                .iter()
                .map(|word| word.as_str().to_owned())
                .collect()
        }),
        raw: lot.map(|lot| lot.product.raw),
        price_minor: lot
            .zip(pack)
            .and_then(|(lot, pack)| lot.product.price_minor(pack.now.left)),
    }
}
