//! Labels as PDF: one page a label, or many on a sheet; a long row of them in parts.

use super::reads::known;
use super::{Api, query};
use crate::app::App;
use crate::error::{Error, Result};
use crate::label_facts::{self, Drawn, MOST, Wanted};
use crate::named::named;
use crate::problems::{LabelsSays, TitleSays};
use crate::read::LoadedFamily;
use crate::rooms::{Room, within};
use ::labels::{Length, PlacedLabel, SheetRefusal};
use actix_web::{HttpRequest, HttpResponse, HttpResponseBuilder, web};
use domain::lot::LotId;
use domain::right::Right;
use domain::rows::{Finding, RowId};
use rust_decimal::Decimal;
use serde::Deserialize;
use std::collections::BTreeSet;
use store::Conn;
use store::family::Extent;

/// Adds them.
pub fn add(api: &mut Api) {
    api.get(
        "/api/lots/{code}/labels.pdf",
        Right::See,
        "The labels of its packs, to look at: nothing is recorded (`Label-Recorded: no`); those that go on packs are asked of `POST /api/label-documents` or `POST /api/prints`",
        web::get().to(of_lot),
    )
    .query("packs", "Which: 1,2,5-9; those on hand if left out")
    .query("template", "Which label")
    .query("together", "One tag for all pieces of a lot that hangs, to be weighed together: true")
    .query("dpi", "Which printer: 203 or 300")
    .query("part", "Which part of more than 100 labels: 1, 2 …")
    .query("sheet", "Many on a sheet: letter or a4")
    .query(
        "skip",
        "Places at the start of the first sheet that are used up",
    )
    .answers_file("application/pdf", "One page a label, or a sheet of many");
    api.get(
        "/api/lots/{code}/label-facts.json",
        Right::See,
        "What the label of a pack says, as whoever designs labels needs it",
        web::get().to(facts_of_lot),
    )
    .query("packs", "Which pack; the first on hand if left out")
    .query("template", "As on which label")
    .query("dpi", "For which printer: 203 or 300")
    .answers_file(
        "application/json",
        "Texts by field, and what the codes hold",
    );
    api.get(
        "/api/steps/{id}/labels.pdf",
        Right::See,
        "The labels of what a deed made, to look at: nothing is recorded (`Label-Recorded: no`)",
        web::get().to(of_step),
    )
    .query("template", "Which label")
    .query("dpi", "Which printer: 203 or 300")
    .query("part", "Which part of more than 100 labels: 1, 2 …")
    .query("sheet", "Many on a sheet: letter or a4")
    .query(
        "skip",
        "Places at the start of the first sheet that are used up",
    )
    .answers_file("application/pdf", "One page a label, or a sheet of many");
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    packs: Option<String>,
    template: Option<String>,
    together: Option<bool>,
    dpi: Option<u16>,
    part: Option<usize>,
    sheet: Option<String>,
    skip: Option<usize>,
}

/// On which paper labels go.
#[derive(Debug, Default)]
pub(super) struct PdfQuery {
    /// Many on this sheet; a page each if left out.
    pub sheet: Option<String>,
    /// Places of the first sheet that are used up.
    pub skip: Option<usize>,
}

impl Asked {
    fn paper(self) -> PdfQuery {
        PdfQuery {
            sheet: self.sheet,
            skip: self.skip,
        }
    }
}

async fn of_lot(
    request: HttpRequest,
    app: web::Data<App>,
    code: web::Path<String>,
) -> Result<HttpResponse> {
    let asked: Asked = query(&request)?;
    let packs = asked.packs.as_deref().map(pack_numbers).transpose()?;
    let shared = app.clone();
    let mut part = asked.part;
    let mut wanted = Wanted {
        packs,
        template: asked.template.clone(),
        together: asked.together.unwrap_or(false),
        dpi: asked.dpi,
        ..Wanted::default()
    };
    let placed = within(Room::Draw, move || {
        app.store.read(|conn| {
            if let Some(packs) = packs_of_part(&app, conn, &code, &wanted, part)? {
                (wanted.packs, part) = (Some(packs), None);
            }
            let extent = Extent {
                packs: wanted.packs.as_deref(),
                ..Extent::ANCESTORS
            };
            let (reading, lot) = LoadedFamily::of_code(&app, conn, &code, extent)?;
            in_part(&app, &reading, &[(lot, wanted)], part)
        })
    })
    .await?;
    pdf(shared, placed, asked.paper()).await
}

/// The packs on hand whose labels are one part of a lot's, so that of thousands only these are loaded; none where it is
/// not a part of all of them that is asked for, or no such part.
fn packs_of_part(
    app: &App,
    conn: &mut Conn,
    code: &str,
    wanted: &Wanted,
    part: Option<usize>,
) -> Result<Option<Vec<u32>>> {
    let before = part.and_then(|part| part.checked_sub(1));
    let (Some(before), None, false) = (before, &wanted.packs, wanted.together) else {
        return Ok(None);
    };
    let lot = named(code, "code", &app.ours())?.code;
    let on_hand = store::packs::numbers_on_hand(conn, &lot)?;
    Ok(on_hand.chunks(MOST).nth(before).map(<[u32]>::to_vec))
}

/// The facts of one label: `gambrel label` makes a picture of them on any template.
async fn facts_of_lot(
    request: HttpRequest,
    app: web::Data<App>,
    code: web::Path<String>,
) -> Result<HttpResponse> {
    let asked: Asked = query(&request)?;
    let wanted = Wanted {
        packs: asked.packs.as_deref().map(pack_numbers).transpose()?,
        template: asked.template,
        dpi: asked.dpi,
        window: Some((0, 1)),
        ..Wanted::default()
    };
    let facts = within(Room::Draw, move || {
        app.store.read(|conn| {
            let extent = Extent {
                packs: wanted.packs.as_deref(),
                ..Extent::ANCESTORS
            };
            let (reading, lot) = LoadedFamily::of_code(&app, conn, &code, extent)?;
            let prepared = label_facts::prepare(&app, &reading, lot, &wanted)?;
            Ok(prepared.into_iter().next().map(|label| label.facts))
        })
    })
    .await?;
    Ok(HttpResponse::Ok().json(facts))
}

async fn of_step(
    request: HttpRequest,
    app: web::Data<App>,
    id: web::Path<String>,
) -> Result<HttpResponse> {
    let asked: Asked = query(&request)?;
    if asked.packs.is_some() {
        return Err(Error::cannot_be("packs", LabelsSays::NamePacks));
    }
    let shared = app.clone();
    let part = asked.part;
    let wanted = Wanted {
        template: asked.template.clone(),
        dpi: asked.dpi,
        all: true,
        ..Wanted::default()
    };
    let placed = within(Room::Draw, move || {
        app.store.read(|conn| {
            let deed = known(conn, &id)?;
            let rows = store::lots::of_deed(conn, deed.id)?;
            if rows.is_empty() {
                let kind = deed.kind()?;
                let detail = LabelsSays::NoLots { kind };
                return Err(label_facts::nothing_to_label(detail));
            }
            let keys: Vec<i32> = rows.iter().map(|row| row.id).collect();
            let reading = LoadedFamily::load(&app, conn, &keys, Extent::ANCESTORS)?;
            let lots = keys.into_iter().map(|key| (LotId(key), wanted.clone()));
            in_part(&app, &reading, &lots.collect::<Vec<_>>(), part)
        })
    })
    .await?;
    pdf(shared, placed, asked.paper()).await
}

/// A lot, and which of its labels are wanted.
pub(super) type LabelsOf = (LotId, Wanted);

/// The labels of some lots; those of one part where there are more than one document holds.
pub(super) fn in_part(
    app: &App,
    reading: &LoadedFamily<'_>,
    lots: &[LabelsOf],
    part: Option<usize>,
) -> Result<Drawn> {
    let counted = |(lot, wanted): &LabelsOf| {
        let of = reading.family.get(*lot)?;
        Some(label_facts::count(&of.lot, wanted))
    };
    let counts: Vec<usize> = lots.iter().filter_map(counted).collect();
    let total: usize = counts.iter().sum();
    let parts = total.div_ceil(MOST).max(1);
    let part = match part {
        None if parts > 1 => {
            let detail = LabelsSays::InParts {
                labels: total,
                parts,
                most: MOST,
            };
            return Err(Error::cannot_be("part", detail));
        }
        Some(part) if !(1..=parts).contains(&part) => {
            let detail = LabelsSays::NoPart { part, parts };
            return Err(Error::cannot_be("part", detail));
        }
        part => part.unwrap_or(1),
    };
    let (mut skip, mut left) = ((part - 1) * MOST, MOST);
    let mut drawn = Drawn::default();
    for ((lot, wanted), count) in lots.iter().zip(counts) {
        let taken = count.saturating_sub(skip).min(left);
        if taken > 0 || count == 0 {
            let wanted = Wanted {
                window: Some((skip, taken)),
                ..wanted.clone()
            };
            drawn.add(label_facts::of_lot(app, reading, *lot, &wanted)?);
        }
        skip = skip.saturating_sub(count);
        left -= taken;
    }
    Ok(drawn)
}

/// Outside any transaction.
pub(super) async fn pdf(app: web::Data<App>, drawn: Drawn, on: PdfQuery) -> Result<HttpResponse> {
    let Drawn { placed, warnings } = drawn;
    let warnings: Vec<String> = warnings.iter().map(in_header).collect();
    let bytes = within(Room::Draw, move || {
        self::drawn(&app, placed, on.sheet.as_deref(), on.skip)
    })
    .await?;
    let mut answer = file(false);
    if !warnings.is_empty() {
        answer.insert_header((WARNINGS, warnings.join("; ")));
    }
    Ok(answer.body(bytes))
}

/// Labels as the pages of a document.
///
/// # Errors
/// 422 for a sheet that is not known; 409 where it does not hold them.
pub(super) fn drawn(
    app: &App,
    placed: Vec<PlacedLabel>,
    sheet: Option<&str>,
    skip: Option<usize>,
) -> Result<Vec<u8>> {
    let pages = match sheet {
        None => placed,
        Some(name) => app
            .sheet(name)?
            .fill(&placed, skip.unwrap_or(0))
            .map_err(|refusal| {
                Error::label_refused(TitleSays::SheetDoesNotHold, of_sheet(refusal))
            })?,
    };
    ::labels::pdf(&pages).map_err(|error| {
        let cause = error.to_string();
        Error::label_refused(TitleSays::LabelNotMade, LabelsSays::NotDrawn { cause })
    })
}

/// The answer that is a document of labels. Does the record count them as printed?
pub(super) fn file(recorded: bool) -> HttpResponseBuilder {
    let mut answer = HttpResponse::Ok();
    answer
        .content_type("application/pdf")
        .insert_header(("Content-Disposition", "inline; filename=\"labels.pdf\""))
        .insert_header((RECORDED, if recorded { "yes" } else { "no" }));
    answer
}

/// The header that says whether the labels of a document count as printed: to read one records nothing.
const RECORDED: &str = "Label-Recorded";

/// The header in which a document's warnings stand: the key of each with its rows. In words they stand in
/// the answer of a print, and with the lot.
const WARNINGS: &str = "Label-Warnings";

fn in_header(finding: &Finding) -> String {
    let rows: Vec<&str> = finding.rows.iter().map(RowId::as_str).collect();
    format!("{} ({})", finding.says.key(), rows.join(", "))
}

/// Why labels do not go on a sheet.
fn of_sheet(refusal: SheetRefusal) -> LabelsSays {
    let millimetres = |length: Length| Decimal::new(length.um(), 3).round_dp(2);
    match refusal {
        SheetRefusal::TooLarge {
            sheet,
            label_w,
            label_h,
            had_w,
            had_h,
        } => LabelsSays::SheetTooSmall {
            sheet,
            width: millimetres(label_w),
            height: millimetres(label_h),
            across: millimetres(had_w),
            along: millimetres(had_h),
        },
        SheetRefusal::Skip {
            sheet,
            places,
            skip,
        } => LabelsSays::SheetPlaces {
            sheet,
            places,
            skip,
        },
    }
}

/// `1,2,5-9`.
fn pack_numbers(text: &str) -> Result<Vec<u32>> {
    let wrong = || {
        Error::cannot_be(
            "packs",
            LabelsSays::NoPacks {
                text: text.to_owned(),
            },
        )
    };
    let mut numbers = Vec::new();
    let mut seen = BTreeSet::new();
    for part in text.split(',') {
        let (from, to) = part.split_once('-').unwrap_or((part, part));
        let from: u32 = from.trim().parse().map_err(|_| wrong())?;
        let to: u32 = to.trim().parse().map_err(|_| wrong())?;
        if from == 0 || to < from || to > domain::limits::MOST_PACKS {
            return Err(wrong());
        }
        // Named twice it is one label all the same.
        numbers.extend((from..=to).filter(|number| seen.insert(*number)));
    }
    Ok(numbers)
}
