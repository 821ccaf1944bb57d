//! The papers of a deed, a lot or an animal, and a photo or a file put to them.

use super::done::Done;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::ids::shown_id;
use crate::read::names::Names;
use crate::read::papers::{self, Papers, PapersQuery};
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use chrono_tz::Tz;
use domain::paper::LARGEST_MB;
use domain::right::Right;
use domain::says::Arg;
use domain::words::{DeedKind, PaperKind};
use serde::Deserialize;
use store::papers::PaperFound;
use store::{Conn, deeds, paper_reach};

/// The most deeds that one may choose from, the newest.
const MOST_DEEDS: usize = 12;

#[derive(Template)]
#[template(path = "papers.html")]
struct PapersPage {
    words: Words,
    title: String,
    /// Where it leads back to.
    back: Option<(String, String)>,
    papers: Vec<Paper>,
    next: Option<String>,
    /// The deeds that a paper may be put to, the likeliest first; none where all papers are shown.
    deeds: Vec<(String, String)>,
    kinds: Vec<(&'static str, String)>,
    how: String,
    then: String,
    may: bool,
    done: Option<Done>,
}

/// A paper, ready to be read.
pub(super) struct Paper {
    /// What it is, or what it is called.
    pub(super) title: String,
    /// The deed that it belongs to.
    pub(super) of: String,
    /// Who brought it, and when.
    pub(super) by: String,
    /// A word about it.
    pub(super) note: Option<String>,
    /// How large, and in which form.
    pub(super) size: String,
    /// Its content, where it is there.
    pub(super) path: Option<String>,
    /// May it be shown where it stands?
    pub(super) is_picture: bool,
    /// That it was taken back, or thinned.
    pub(super) past: Option<String>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    of: Option<String>,
    lot: Option<String>,
    animal: Option<String>,
    before: Option<i32>,
    did: Option<String>,
}

/// The page.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<PapersPage> {
    let query = PapersQuery {
        of: asked.of.clone(),
        lot: asked.lot.clone(),
        animal: asked.animal.clone(),
        before: asked.before,
    };
    let Papers { papers, next } = papers::find(app, conn, &query)?;
    let names = Names::load(app, conn)?;
    let (words, zone) = (Words::of(&names), names.zone());
    let (then, back, of) = place(app, conn, &words, asked)?;
    let mut chosen = deeds::by_keys(conn, &of)?;
    chosen.retain(|deed| !matches!(deed.kind.as_str(), "paper" | "thin" | "void"));
    // What made it or brought it in comes first: most papers are of that.
    let first = of.first().copied();
    chosen.sort_by_key(|deed| {
        (
            Some(deed.id) != first,
            deed.kind != DeedKind::Receive.as_str(),
            std::cmp::Reverse(deed.id),
        )
    });
    chosen.truncate(MOST_DEEDS);
    let named = chosen.iter().map(|deed| {
        let kind = words.headed(deed.kind()?.says());
        let at = words.minute(deed.at.and_utc(), zone);
        let by = deed.person.clone();
        let says = words.say(PageSays::Did { deed: kind, by, at });
        Ok((shown_id(&deed.uid), says))
    });
    let deeds = named.collect::<store::Result<Vec<_>>>()?;
    let kinds = PaperKind::ALL.iter();
    Ok(PapersPage {
        title: words.t("page-papers"),
        papers: papers
            .iter()
            .map(|paper| told(&words, zone, paper))
            .collect(),
        next: next.map(|mark| format!("/papers?before={mark}")),
        kinds: kinds
            .map(|kind| (kind.as_str(), words.headed(kind.says())))
            .collect(),
        how: words.say(PageSays::PapersHow { most: LARGEST_MB }),
        may: app.who.may(Right::Work) && !deeds.is_empty(),
        done: Done::of(app, conn, &words, asked.did.as_deref(), &then)?,
        deeds,
        back,
        then,
        words,
    })
}

/// Where the page is, where it leads back to, and the deeds that it is about, the likeliest first.
type Place = (String, Option<(String, String)>, Vec<i32>);

fn place(app: &Caller<'_>, conn: &mut Conn, words: &Words, asked: &Asked) -> Result<Place> {
    if let Some(lot) = &asked.lot {
        let row = crate::read::lot_named(app.app(), conn, lot)?;
        let code = row.code()?;
        let back = (format!("/lots/{code}"), code.shown());
        let mut deeds = vec![row.deed_id];
        deeds.extend(paper_reach::deeds_of(conn, &[row.id])?);
        return Ok((format!("/papers?lot={code}"), Some(back), deeds));
    }
    if let Some(animal) = &asked.animal {
        let uid = crate::routes::id(animal)?.0;
        let row = store::animals::by_uid(conn, uid.as_bytes())?;
        let deeds = match row {
            Some(row) => paper_reach::deeds_of_animal(conn, row.id)?,
            None => Vec::new(),
        };
        let back = (format!("/animals/{uid}"), words.t("page-animal"));
        return Ok((format!("/papers?animal={uid}"), Some(back), deeds));
    }
    if let Some(of) = &asked.of {
        let deed = papers::of_deed(conn, of)?;
        let lots = paper_reach::lots_of(conn, deed.id)?;
        let back = match lots.as_slice() {
            [lot] => {
                let row = store::lots::by_keys(conn, &[*lot])?.pop();
                row.map(|row| row.code()).transpose()?
            }
            _ => None,
        };
        let back = back.map(|code| (format!("/lots/{code}"), code.shown()));
        let id = shown_id(&deed.uid);
        return Ok((format!("/papers?of={id}"), back, vec![deed.id]));
    }
    Ok(("/papers".into(), None, Vec::new()))
}

/// A paper in words.
pub(super) fn told(words: &Words, zone: Tz, paper: &PaperFound) -> Paper {
    let id = shown_id(&paper.uid);
    let kind = PaperKind::parse(&paper.row.kind)
        .map_or_else(String::new, |kind| words.headed(kind.says()));
    let form = paper.row.form();
    let ending = form.as_ref().map_or("", |form| form.ending());
    let kilobytes = (paper.row.bytes + 1_023) / 1_024;
    let past = match (paper.thinned, paper.voided) {
        (true, _) => Some(words.t("page-papers-thinned")),
        (false, true) => Some(words.t("page-papers-voided")),
        _ => None,
    };
    let did = |deed: DeedKind, by: &str, at: chrono::NaiveDateTime| {
        words.say(PageSays::Did {
            deed: words.headed(deed.says()),
            by: by.to_owned(),
            at: words.minute(at.and_utc(), zone),
        })
    };
    Paper {
        title: match &paper.row.name {
            Some(name) => words.colon(kind, name),
            None => kind,
        },
        of: words.say(PageSays::PaperOf {
            deed: words.headed(paper.of_kind.says()),
            at: words.minute(paper.of_at.and_utc(), zone),
        }),
        by: did(DeedKind::Paper, &paper.person, paper.at),
        note: paper.note.clone(),
        size: words.say(PageSays::PaperSize {
            form: ending.to_uppercase(),
            kilobytes: Arg::Count(kilobytes),
        }),
        path: (!paper.thinned).then(|| format!("/api/papers/{id}")),
        is_picture: form.is_ok_and(|form| form.is_picture()),
        past,
    }
}
