//! The strip that says what was just done, with its undo: it stands where the act was.

use super::bench_says::BenchSays;
use super::managers::managers;
use super::says::PageSays;
use super::spoken::Words;
use super::{done_about, done_labels};
use crate::caller::Caller;
use crate::error::Result;
use crate::ids::shown_id;
use domain::deed::void::stays;
use domain::grams::Grams;
use domain::right::Right;
use domain::words::{DeedKind, StepKind};
use store::deeds::DeedRow;
use store::lots::LotRow;
use store::{Conn, deeds, lots, measurements, record};
use uuid::Uuid;

/// The most new lots that the strip leads to; a break-down makes more, and its own page shows them.
const MOST_SHOWN: usize = 6;

/// The most deeds that are undone together: of one press on a page of many lots.
const MOST_DEEDS: usize = 200;

/// What was just done.
pub struct Done {
    /// What, by whom, when.
    pub says: String,
    /// The ids of its deeds, to undo it by.
    pub ids: String,
    /// Was it undone?
    pub voided: bool,
    /// May whoever reads it undo it?
    pub undoes: bool,
    /// Who may, where they may not.
    pub ask: Option<String>,
    /// The lots that it made: code, how it is shown with the numbers of its packs, and what it is.
    pub made: Vec<(String, String, String)>,
    /// The one lot that it was made of, where something is left of it: code, how it is shown, and what it is. Whoever
    /// packed some goes on with the rest, and whoever undid it does it again.
    pub of: Option<(String, String, String)>,
    /// What became of the labels of what it made.
    pub printed: Option<done_labels::Told>,
    /// Where its labels are, where it made or changed any.
    pub labels: Option<String>,
    /// Where a paper is put to it, where it is one deed that stands.
    pub papers: Option<String>,
    /// Where the page is, without the strip.
    pub then: String,
}

impl Done {
    /// The deeds of the ids in the address, told by the first; nothing where none is named, or none of that id
    /// is on record.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn of(
        app: &Caller<'_>,
        conn: &mut Conn,
        words: &Words,
        did: Option<&str>,
        then: &str,
    ) -> Result<Option<Done>> {
        let told = did.unwrap_or_default().split(',').take(MOST_DEEDS);
        let uids: Vec<Uuid> = told.filter_map(|text| Uuid::parse_str(text).ok()).collect();
        let Some(uid) = uids.first() else {
            return Ok(None);
        };
        let Some(deed) = deeds::by_uid(conn, uid.as_bytes())? else {
            return Ok(None);
        };
        let undoes = may_undo(app, conn, &deed)?;
        let zone = app.kitchen(conn)?.zone;
        let voided = deeds::voided_by(conn, deed.id)?.is_some();
        let kind = deed.kind()?;
        let made = lots::of_deed(conn, deed.id)?;
        let (by, at) = (deed.person.clone(), words.minute(deed.at.and_utc(), zone));
        let what = words.headed(kind.says());
        let has_made = !made.is_empty();
        let says = match made.as_slice() {
            [] => {
                let what = read_then(app, conn, words, &deed, what)?;
                match done_about::told(app, conn, words, &deed)? {
                    Some(about) => words.say(PageSays::DidTo {
                        deed: what,
                        what: about,
                        by,
                        at,
                    }),
                    None => words.say(PageSays::Did { deed: what, by, at }),
                }
            }
            [lot] => words.say(BenchSays::DidMade {
                deed: what,
                packs: usize::try_from(lot.pack_count).unwrap_or(1),
                name: app
                    .product(conn, lot.version_id)?
                    .name(words.lang())
                    .to_owned(),
                lot: numbered(lot)?,
                by,
                at,
            }),
            lots => words.say(BenchSays::DidMadeLots {
                deed: what,
                lots: lots.len(),
                by,
                at,
            }),
        };
        let says = match uids.len() {
            _ if kind == DeedKind::IncidentNote => says,
            1 => says,
            deeds => words.say(BenchSays::DidSeveral { says, deeds }),
        };
        let id = shown_id(&deed.uid);
        let ids: Vec<String> = uids.iter().map(Uuid::to_string).collect();
        // Where the page is the new lot's own, nothing leads to it.
        let mut elsewhere = Vec::new();
        for lot in made.iter().filter(|_| !voided).take(MOST_SHOWN) {
            let code = lot.code()?;
            if format!("/lots/{code}") != then {
                let name = app.product(conn, lot.version_id)?;
                let name = name.name(words.lang()).to_owned();
                elsewhere.push((code.to_string(), numbered(lot)?, name));
            }
        }
        let printed = match has_made && !voided {
            true => Some(done_labels::told(conn, words, &deed, &made)?),
            false => None,
        };
        Ok(Some(Done {
            says,
            printed,
            made: elsewhere,
            of: match has_made {
                true => rest_of(app, conn, words, deed.id, then)?,
                false => None,
            },
            labels: (has_made || StepKind::parse(kind.as_str()).is_some())
                .then(|| format!("/printing?step={id}"))
                .filter(|_| !voided),
            papers: (ids.len() == 1
                && !voided
                && !matches!(kind, DeedKind::Paper | DeedKind::Thin))
            .then(|| format!("/papers?of={id}")),
            ids: ids.join(" "),
            voided,
            undoes,
            ask: (!undoes && !voided && stays(kind).is_none())
                .then(|| managers(app))
                .flatten()
                .map(|names| words.say(PageSays::UndoAsk { names })),
            then: then.to_owned(),
        }))
    }
}

/// May whoever asks take it back? As the deed itself asks it: their own, and no stop hangs on it; else by the right. What stays by its kind nobody takes back.
fn may_undo(app: &Caller<'_>, conn: &mut Conn, deed: &DeedRow) -> Result<bool> {
    let who = &app.who;
    let own = who.is_own(&deed.person, &who.name) && who.may(Right::Sell);
    Ok((own || who.may(Right::Void))
        && (who.may(Right::Lift) || !store::stops::hangs_on(conn, deed.id)?)
        && (who.may(Right::Confirm) || deed.kind()? != DeedKind::ConfirmRow)
        && stays(deed.kind()?).is_none())
}

/// The one lot that a deed used, where something is left of it and the page is another's.
fn rest_of(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    deed: i32,
    then: &str,
) -> Result<Option<(String, String, String)>> {
    let mut used: Vec<i32> = record::used_by(conn, deed)?
        .into_iter()
        .map(|(lot, _)| lot)
        .collect();
    used.sort_unstable();
    used.dedup();
    let [_] = used.as_slice() else {
        return Ok(None);
    };
    let found = lots::by_keys(conn, &used)?.into_iter().next();
    let Some(lot) = found.filter(|lot| lot.on_hand_mg > 0) else {
        return Ok(None);
    };
    let code = lot.code()?;
    if format!("/lots/{code}") == then {
        return Ok(None);
    }
    let left = words.say(BenchSays::Left {
        weight: Grams::from_milligrams(lot.on_hand_mg),
        until: String::new(),
    });
    let shown = format!("{}, {}", code.shown(), left.trim_end_matches([',', ' ']));
    let name = app.product(conn, lot.version_id)?;
    let name = name.name(words.lang()).to_owned();
    Ok(Some((code.to_string(), shown, name)))
}

/// A lot's code with the numbers of its packs, where it has several: what a label of it shows.
fn numbered(lot: &LotRow) -> Result<String> {
    let code = lot.code()?.shown();
    Ok(match lot.pack_count {
        1 => code,
        packs => format!("{code} / 1–{packs}"),
    })
}

/// What was done, with what the scale or the probe showed.
fn read_then(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    deed: &DeedRow,
    what: String,
) -> Result<String> {
    if deed.kind()? != DeedKind::Measure {
        return Ok(what);
    }
    let currency = app.kitchen(conn)?.entry.currency.0.clone();
    let read = measurements::of_deed(conn, deed.id)?.into_iter();
    let told: Vec<String> = read
        .map(|(of, millionths)| super::history::value(words, of, millionths, &currency))
        .collect();
    Ok(match told.is_empty() {
        true => what,
        false => told.join(", "),
    })
}
