//! The calls that record something.

use super::Api;
use crate::body::{self, Body};
use crate::caller::{Asking, Caller};
use crate::deeds::says::DeedSays;
use crate::deeds::{self, Done};
use crate::error::{Error, Result};
use crate::log;
use crate::rooms::{Room, within};
use crate::wire::adopt::AdoptionAsked;
use crate::wire::answers::DeedDone;
use crate::wire::asked::*;
use crate::wire::cures::ReleaseAsked;
use crate::wire::readings::{PlaceFailureAsked, ProbeCheckAsked, ReadingAsked};
use crate::wire::rows::RowConfirmationAsked;
use crate::wire::stops::{DispositionAsked, HoldAsked};
use actix_web::{HttpResponse, Route, web};
use domain::right::Right;
use serde::de::DeserializeOwned;

/// Adds them.
pub fn add(api: &mut Api) {
    let done = "Done: 201 the first time, 200 for the same again";
    api.post(
        "/api/receipts",
        Right::Work,
        "Something arrives",
        deed(deeds::receive::take),
    )
    .takes::<ReceiptAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/steps",
        Right::Work,
        "A step at the bench",
        deed(deeds::step::take),
    )
    .takes::<StepAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/moves",
        Right::Work,
        "Packs go elsewhere, or are frozen or thawed",
        deed(deeds::relocate::take),
    )
    .takes::<MoveAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/departures",
        Right::Sell,
        "Packs leave",
        deed(deeds::depart::take),
    )
    .takes::<DepartureAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/take-backs",
        Right::Sell,
        "A customer brings a pack back",
        deed(deeds::take_back::take),
    )
    .takes::<TakeBackAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/readings",
        Right::Work,
        "A lot or a place is measured",
        deed(deeds::measure::take),
    )
    .takes::<ReadingAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/releases",
        Right::Release,
        "A cured piece is released, or the answer lists the numbers that are not met",
        deed(deeds::release::take),
    )
    .takes::<ReleaseAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/counts",
        Right::Work,
        "Packs are counted",
        deed(deeds::count::take),
    )
    .takes::<CountAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/clean-downs",
        Right::Work,
        "A bench or a machine is cleaned",
        deed(deeds::clean_down::take),
    )
    .takes::<CleanDownAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/place-failures",
        Right::Work,
        "A place did not stay cold: what stood in it is judged",
        deed(deeds::place::failed),
    )
    .takes::<PlaceFailureAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/probe-checks",
        Right::Work,
        "A probe is checked in melting ice or boiling water",
        deed(deeds::probe::check),
    )
    .takes::<ProbeCheckAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/corrections",
        Right::Correct,
        "A wrong fact of a receipt is corrected",
        deed(deeds::correct::take),
    )
    .takes::<CorrectionAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/dispositions",
        Right::Work,
        "A person disposes of what is stopped",
        deed(deeds::dispose::take),
    )
    .takes::<DispositionAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/adoptions",
        Right::Work,
        "A pot without a label is taken in",
        deed(deeds::adopt::take),
    )
    .takes::<AdoptionAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/row-confirmations",
        Right::Confirm,
        "A row of the law is confirmed for this kitchen",
        deed(deeds::confirm_row::take),
    )
    .takes::<RowConfirmationAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/holds",
        Right::Hold,
        "Lots are held",
        deed(deeds::hold::place),
    )
    .takes::<HoldAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/hold-releases",
        Right::Lift,
        "Held lots are let go",
        deed(deeds::hold::release),
    )
    .takes::<HoldAsked>()
    .answers::<DeedDone>(&[201, 200], done);
    api.post(
        "/api/steps/{id}/void",
        Right::Undo,
        "A deed is voided",
        web::post().to(void),
    )
    .takes::<VoidAsked>()
    .answers::<DeedDone>(&[201, 200], done);
}

/// Parse, act, answer: every deed is served so.
pub(super) fn deed<A: DeserializeOwned + Send + 'static>(
    act: fn(&Caller<'_>, &A) -> Result<Done>,
) -> Route {
    deed_in(Room::Write, act)
}

/// The same, for a deed that has to ask somebody else first.
pub(super) fn deed_in<A: DeserializeOwned + Send + 'static>(
    room: Room,
    act: fn(&Caller<'_>, &A) -> Result<Done>,
) -> Route {
    web::post().to(move |asking: Asking, Body(asked): Body<A>| async move {
        Ok::<_, Error>(answer(
            within(room, move || act(&asking.caller(), &asked)).await?,
        ))
    })
}

async fn void(
    asking: Asking,
    path: web::Path<String>,
    Body(asked): Body<VoidAsked>,
) -> Result<HttpResponse> {
    let step = id(&path)?;
    Ok(answer(
        within(Room::Write, move || {
            deeds::void::take(&asking.caller(), step, &asked)
        })
        .await?,
    ))
}

/// A deed's id in a path.
pub fn id(text: &str) -> Result<Id> {
    let json = serde_json::to_vec(text).unwrap_or_default();
    body::parse(&json).map_err(|_| {
        Error::not_found(DeedSays::NoId {
            id: text.to_owned(),
        })
    })
}

pub(super) fn answer(done: Done) -> HttpResponse {
    let mut response = if done.fresh {
        HttpResponse::Created()
    } else {
        HttpResponse::Ok()
    };
    let mut response = response.content_type("application/json").body(done.body);
    response.extensions_mut().insert(log::LoggedDeed {
        id: done.id,
        kind: done.kind,
        fresh: done.fresh,
    });
    response
}
