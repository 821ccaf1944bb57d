//! Which code goes into a place.

use domain::gs1::{Message, NotWritten};

use crate::facts::{Facts, Field};
use crate::length::Dpi;
use crate::placed::Code;
use crate::refusal::{CodeKind, Refusal};
use crate::template::{CodePlace, Template};
use crate::{code128, ean13, qr};

/// Whether every code that the facts insist on has a place.
pub(crate) fn check(facts: &Facts, template: &Template) -> Result<(), Refusal> {
    let bars = |kind| matches!(kind, CodeKind::Ean13 | CodeKind::Code128);
    if facts.ean13.is_some() && !template.codes().any(bars) {
        return Err(Refusal::NoCodePlace {
            code: CodeKind::Ean13,
        });
    }
    Ok(())
}

/// The facts with what is said in clear of the bars: the GS1 message that they hold (standards 1.3: it must be
/// provided for each symbol), and whether they hold the lot alone; nothing where the facts are right as they are.
pub(crate) fn in_clear(facts: &Facts, template: &Template, dpi: Dpi) -> Option<Facts> {
    let message = message(facts, template, dpi);
    let has = |wanted| template.fields().any(|field| field == wanted);
    let told = facts.text(Field::LotOnly).is_some() && has(Field::LotOnly);
    let wrongly = told && (message.is_some() || !holds_the_lot_alone(facts, template, dpi));
    if message.is_none() && !wrongly {
        return None;
    }
    let mut facts = facts.clone();
    if wrongly {
        facts.texts.remove(&Field::LotOnly);
    }
    if let Some(message) = message {
        let clear = message.bracketed().replace('(', " (").replace(')', ") ");
        facts.texts.insert(Field::Hri, clear.trim().to_owned());
    }
    Some(facts)
}

/// The GS1 message that the bars hold, if they hold one.
fn message(facts: &Facts, template: &Template, dpi: Dpi) -> Option<Message> {
    let place = template.code_place(CodeKind::Code128)?;
    messages(facts, template)?.find(|message| {
        code128::gs1(message, dpi).is_ok_and(|bars| bars.place(place.area, dpi).is_ok())
    })
}

/// Do our own bars hold the lot without its pack?
fn holds_the_lot_alone(facts: &Facts, template: &Template, dpi: Dpi) -> bool {
    let place = template.code_place(CodeKind::Code128);
    let ours = place.filter(|_| till_instead(facts, template).is_none());
    ours.is_some_and(|place| {
        let code = plain(&facts.linear, place, dpi);
        code.is_ok_and(|code| code.payload != facts.linear)
    })
}

/// The messages that could stand there; none on a label without room for them in clear, or where the
/// till's code stands instead.
fn messages<'a>(
    facts: &'a Facts,
    template: &Template,
) -> Option<impl Iterator<Item = Message> + 'a> {
    let clear = template.fields().any(|field| field == Field::Hri);
    (clear && till_instead(facts, template).is_none()).then(|| {
        let read = |text: &String| Message::parse(text).ok();
        facts.gs1.iter().filter_map(read)
    })
}

/// The code for the till, where it stands in the place of our own bar code: the template has no place
/// for both, and the square code names the lot.
fn till_instead<'a>(facts: &'a Facts, template: &Template) -> Option<&'a str> {
    let own_place = template.codes().any(|kind| kind == CodeKind::Ean13);
    facts.ean13.as_deref().filter(|_| !own_place)
}

/// Places the code that belongs there, or none where the facts need none.
pub(crate) fn place(
    place: &CodePlace,
    facts: &Facts,
    template: &Template,
    dpi: Dpi,
) -> Result<Option<Code>, Refusal> {
    if let Some(digits) = till_instead(facts, template).filter(|_| place.kind != CodeKind::Qr) {
        return ean13::bars(digits, dpi)?.place(place.area, dpi).map(Some);
    }
    match (place.kind, &facts.ean13) {
        (CodeKind::Qr, _) => qr::place(&facts.qr, place.area, place.level, dpi).map(Some),
        (CodeKind::Code128 | CodeKind::Gs1128, _) => linear(place, facts, template, dpi).map(Some),
        (CodeKind::Ean13, None) => Ok(None),
        (CodeKind::Ean13, Some(digits)) => {
            let bars = ean13::bars(digits, dpi)?;
            bars.place(place.area, dpi).map(Some)
        }
    }
}

/// The first GS1 message that fits, else the lot with its pack; on a narrow label the lot alone.
fn linear(
    place: &CodePlace,
    facts: &Facts,
    template: &Template,
    dpi: Dpi,
) -> Result<Code, Refusal> {
    for text in &facts.gs1 {
        if let Err(why) = Message::parse(text)
            && !matches!(why, NotWritten::TooLong { .. })
        {
            let text = text.clone();
            return Err(Refusal::NotGs1 { text, why });
        }
    }
    for message in messages(facts, template).into_iter().flatten() {
        match code128::gs1(&message, dpi)?.place(place.area, dpi) {
            Err(Refusal::CodeTooLarge { .. }) => {}
            placed => return placed,
        }
    }
    plain(&facts.linear, place, dpi)
}

/// The lot with its pack where its bars are thick enough to be read when they are worn, else the lot alone where that
/// is so; else what fits.
fn plain(linear: &str, place: &CodePlace, dpi: Dpi) -> Result<Code, Refusal> {
    let bars = |text: &str| code128::plain(text, dpi)?.place(place.area, dpi);
    let whole = bars(linear);
    let Some((lot, _)) = linear.split_once('/') else {
        return whole;
    };
    let thick = |code: &Result<Code, Refusal>| {
        let dots = code.as_ref().map(|code| code.dots);
        dots.is_ok_and(|dots| dots >= code128::dots_when_worn(dpi))
    };
    if thick(&whole) {
        return whole;
    }
    let alone = bars(lot);
    match (thick(&alone), whole) {
        (true, _) | (false, Err(Refusal::CodeTooLarge { .. })) => alone,
        (false, whole) => whole,
    }
}
