//! A paper is kept with the deed that it belongs to.

use super::facts::clash;
use super::perform::known_deed;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use crate::wire::papers::PaperAsked;
use actix_web::http::StatusCode;
use domain::paper::{MOST_OF_DEED, PaperForm, PaperSays};
use domain::plan::Plan;
use domain::words::DeedKind;
use serde::Serialize;
use store::kept::hash;
use store::papers::{self, NewPaper};

/// What is kept of the request: what was said of the paper, and what its content is by its hash.
#[derive(Serialize)]
struct Asked<'a> {
    #[serde(flatten)]
    paper: &'a PaperAsked,
    bytes: usize,
    sha256: &'a str,
}

/// Keeps a paper.
///
/// # Errors
/// 415 for what is no paper that is taken, 422 for one that is cut off; 404 where there is no such deed; 409 where it
/// has too many papers already.
pub fn take(app: &Caller<'_>, asked: &PaperAsked, content: &[u8]) -> Result<Done> {
    let form = PaperForm::of(content).map_err(refused)?;
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Paper,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref(),
    };
    let sha256 = hash(content);
    let request = Asked {
        paper: asked,
        bytes: content.len(),
        sha256: &sha256,
    };
    perform(app, header, &request, |facts| {
        let of = known_deed(facts.tx, asked.of, Some("of"))?;
        if matches!(of.kind()?, DeedKind::Paper | DeedKind::Thin) {
            return Err(Error::cannot_be("of", PaperSays::OfPaper));
        }
        let has = papers::count_of(facts.tx.conn, of.id)?;
        if usize::try_from(has).unwrap_or(usize::MAX) >= MOST_OF_DEED {
            return Err(clash("of", PaperSays::TooMany { most: MOST_OF_DEED }));
        }
        let paper = NewPaper {
            of_deed: of.id,
            kind: asked.kind.0,
            name: asked.name.as_ref().map(|name| name.0.as_str()),
            form,
            content,
        };
        papers::insert(facts.tx, facts.deed, &paper)?;
        facts.record(asked.id.0.to_string(), DeedKind::Paper, &Plan::default())
    })
}

fn refused(says: PaperSays) -> Error {
    match says {
        PaperSays::NotRead => unknown(),
        says => {
            let (status, title) = (StatusCode::UNPROCESSABLE_ENTITY, TitleSays::CannotBe);
            Problem::new(status, "cannot-be", title, says).into()
        }
    }
}

/// 415: what came is no paper that is taken.
pub fn unknown() -> Error {
    let (status, title) = (StatusCode::UNSUPPORTED_MEDIA_TYPE, TitleSays::CannotBe);
    Problem::new(status, "not-a-paper", title, PaperSays::NotRead).into()
}
