//! How long everything is kept, in words: for the API, the page and the terminal.

use super::papers;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::{KeepingRead, KeepingRuleRead, paper_read};
use domain::duties::keeping::over_before;
use domain::paper::PaperSays;
use store::Conn;

/// How long everything is kept.
///
/// # Errors
/// The database is away.
pub fn read(app: &Caller<'_>, conn: &mut Conn) -> Result<KeepingRead> {
    let found = papers::keeping(app, conn)?;
    let standing = app.standing(conn)?;
    let speech = app.speech(&standing.kitchen);
    let place = standing.kitchen.entry.profile.0;
    let law = app.laws(&standing.confirmed).of(place);
    let language = speech.language.tag();
    let rules = law.duties.keeping.iter().map(|rule| KeepingRuleRead {
        record: rule.record.as_str().to_owned(),
        name: speech.say(&rule.record.says()),
        number: rule.span.as_ref().map(|span| span.number.whole()),
        unit: rule.span.as_ref().map(|span| span.unit.as_str().to_owned()),
        says: law
            .rows
            .get(&rule.row)
            .map(|row| row.says.in_language(language).to_owned())
            .unwrap_or_default(),
        row: rule.row.to_string(),
        over_before: over_before(rule, found.today).map(|day| day.to_string()),
    });
    let zone = standing.kitchen.zone;
    let may_go = found.may_go.iter();
    let may_go =
        may_go.map(|(paper, kept)| paper_read(paper, zone).with(kept, found.today, &speech));
    let (papers, bytes, thinned) = found.counts;
    Ok(KeepingRead {
        today: found.today.to_string(),
        place: place.as_str().to_owned(),
        says: speech.say(&PaperSays::AllIsKept.into()),
        rules: rules.collect(),
        papers,
        bytes,
        thinned,
        open_incident: found.standing.incident().map(str::to_owned),
        may_be_thinned: may_go.collect(),
        looked_at: found.looked_at,
    })
}
