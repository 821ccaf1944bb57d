//! What came off an animal, or out of a cook, against what is usual.

use crate::app::App;
use crate::error::{Error, Result};
use crate::wire::Weight;
use crate::wire::cures::number;
use crate::wire::money::{YieldLine, YieldRead};
use domain::grams::Grams;
use domain::lot::LotId;
use domain::words::DeedKind;
use domain::yields::{self, Cooked, CutOut, Line, Verdict};
use store::lots::{self, LotRow};
use store::{Conn, deeds, trace};

/// The yield of a lot: of a carcass, what was cut off it; of a cooked lot, what came out.
///
/// # Errors
/// 422 where the list does not say how it is cut or cooked, or nothing was cut off it yet.
pub fn read(app: &App, conn: &mut Conn, row: &LotRow) -> Result<YieldRead> {
    let product = app.product(conn, row.version_id)?;
    let (of_grams, lines) = match (&product.cut_style, &product.process) {
        (Some(style), _) => cut_out(app, conn, row, style)?,
        (None, Some(process)) => cooked(app, conn, row, process)?,
        (None, None) => {
            let detail = format!(
                "The list does not say how {} is cut (cut_style) or cooked (process), so there is nothing to compare with.",
                product.name("en")
            );
            return Err(Error::cannot_be("code", detail));
        }
    };
    let line = |line: Line| YieldLine {
        name: line.name,
        grams: Weight(line.grams),
        amount: number(line.amount.round_dp(2)),
        expected: line.expected.map(|expected| number(expected.round_dp(2))),
        verdict: match line.verdict {
            Verdict::Usual => "usual",
            Verdict::Low => "low",
            Verdict::High => "high",
            Verdict::NoBand => "no-band",
            Verdict::NotWeighed => "not-weighed",
        }
        .to_owned(),
        says: words::Speech::default().say(&line.says),
        source: words::Speech::default().say(&app.law.trade_rows.source(&line.row)),
    };
    Ok(YieldRead {
        lot: row.code.clone(),
        of_grams: Weight(of_grams),
        lines: lines.into_iter().map(line).collect(),
    })
}

fn cut_out(app: &App, conn: &mut Conn, row: &LotRow, style: &str) -> Result<(Grams, Vec<Line>)> {
    let (mut hanging, mut pieces) = (Grams::ZERO, Vec::new());
    for done in store::record::history(conn, row.id, row.deed_id)? {
        let kind = DeedKind::parse(&done.kind);
        if done.voided
            || done.account != "used"
            || !matches!(kind, Some(DeedKind::BreakDown | DeedKind::Cut))
        {
            continue;
        }
        hanging += Grams::from_milligrams(done.mg);
        let uid: [u8; 16] = done.uid.as_slice().try_into().unwrap_or_default();
        let Some(deed) = deeds::by_uid(conn, &uid)? else {
            continue;
        };
        for made in lots::of_deed(conn, deed.id)? {
            let of = app.product(conn, made.version_id)?;
            let key = of.cut.clone().unwrap_or_else(|| of.code.clone());
            pieces.push((key, Grams::from_milligrams(made.made_mg)));
        }
    }
    let species = row.species()?.first().copied();
    let (Some(species), false) = (species, pieces.is_empty()) else {
        return Err(Error::cannot_be(
            "code",
            "Nothing was cut off it yet. Break it down first.",
        ));
    };
    let pieces: Vec<(&str, Grams)> = pieces
        .iter()
        .map(|(key, grams)| (key.as_str(), *grams))
        .collect();
    let asked = CutOut {
        species,
        style,
        hanging,
        pieces: &pieces,
    };
    Ok((hanging, yields::cut_out(&asked, &app.law.trade.yields)?))
}

fn cooked(app: &App, conn: &mut Conn, row: &LotRow, process: &str) -> Result<(Grams, Vec<Line>)> {
    let ancestry = trace::back(conn, row.id)?;
    let uses = ancestry.uses_of(LotId(row.id)).to_vec();
    let keys: Vec<i32> = uses.iter().map(|used| used.lot.0).collect();
    let rows = lots::by_keys(conn, &keys)?;
    let of_animal = |lot: i32| {
        rows.iter()
            .any(|row| row.id == lot && !row.species.is_empty())
    };
    let sum = |animal: bool| -> Grams {
        let of = uses.iter().filter(|used| of_animal(used.lot.0) == animal);
        of.map(|used| Grams::from_milligrams(used.milligrams)).sum()
    };
    let base = sum(true);
    let asked = Cooked {
        process,
        base,
        output: Grams::from_milligrams(row.made_mg),
        added: sum(false),
    };
    Ok((base, vec![yields::of_step(&asked, &app.law.trade.yields)?]))
}
