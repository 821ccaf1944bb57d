//! The content of papers is thrown away that nobody has to keep any more; that they were there stays.

use super::facts::not_too_many;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::read::papers::Standing;
use crate::wire::papers::ThinningAsked;
use domain::paper::PaperSays;
use domain::plan::Plan;
use domain::refusal::{Refusal, RefusalKind};
use domain::words::DeedKind;
use store::papers::{self, PaperFound, Which};

/// Thins papers: all that are named, or none.
///
/// # Errors
/// 422 where none is named, or one is unknown; 409 where one was thinned before, a rule of the place asks for it
/// still, or something on hand or an incident may need it.
pub fn take(app: &Caller<'_>, asked: &ThinningAsked) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", PaperSays::WhyThinned));
    }
    if asked.papers.is_empty() {
        return Err(Error::cannot_be("papers", PaperSays::NothingToThin));
    }
    not_too_many(asked.papers.len(), "papers")?;
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Thin,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: Some(&asked.why),
    };
    perform(app, header, asked, |facts| {
        let uids: Vec<Vec<u8>> = asked
            .papers
            .iter()
            .map(|id| id.0.as_bytes().to_vec())
            .collect();
        let most = i64::try_from(uids.len()).unwrap_or(i64::MAX);
        let found = papers::find(facts.tx.conn, Which::Ids(&uids), most)?;
        let today = domain::moment::day_of(facts.moment.recorded_at, facts.kitchen.zone);
        let standing = Standing::read(facts.tx.conn)?;
        let rules = &facts.law().duties;
        let mut keys = Vec::with_capacity(uids.len());
        for (nth, uid) in uids.iter().enumerate() {
            let field = format!("papers[{nth}]");
            let named: Option<&PaperFound> = found.iter().find(|paper| paper.uid == *uid);
            let Some(paper) = named else {
                let id = asked.papers[nth].0.to_string();
                return Err(Error::cannot_be(field, PaperSays::NoPaper { id }));
            };
            if paper.thinned || keys.contains(&paper.row.id) {
                return Err(refused(field, PaperSays::ThinnedBefore));
            }
            let kept = standing.kept(facts.tx.conn, rules, paper)?;
            if !kept.may_go(today) {
                return Err(refused(field, kept.says(today)));
            }
            keys.push(paper.row.id);
        }
        papers::thin(facts.tx, facts.deed, &keys)?;
        facts.record(asked.id.0.to_string(), DeedKind::Thin, &Plan::default())
    })
}

fn refused(field: String, says: impl Into<domain::says::Says>) -> Error {
    Refusal::new(RefusalKind::Clash, field, says).into()
}
