//! The page of a guest who reads a label with their own phone: no sign-in, no script, nothing of the kitchen's own.

use super::answer::{POLICY, see_other};
use super::says::PageSays;
use super::spoken::Words;
use crate::app::App;
use crate::caller::Asking;
use crate::error::Result;
use crate::read::guest::{self, Told};
use crate::rooms::{Room, within};
use actix_web::http::StatusCode;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::guest::Notice;
use domain::right::Right;
use labels::Field;
use words::{Language, Speech};

/// So many farms are named; what has more is of many.
const FARMS: usize = 4;

#[derive(Template)]
#[template(path = "guest.html")]
struct GuestPage {
    words: Words,
    kitchen: String,
    /// The other language: its tag, its name, and where the page is in it.
    other: (&'static str, &'static str, String),
    pack: Option<Shown>,
}

struct Shown {
    name: String,
    shown: String,
    recalled: bool,
    notice: Option<String>,
    kind: Option<String>,
    /// The words over the day, and the day.
    day: Option<(String, String)>,
    /// How it is kept and cooked.
    keep: Vec<String>,
    allergens: Option<String>,
    ingredients: Vec<String>,
    from: Vec<String>,
    made: Option<String>,
}

/// What the square code leads to: those at work go to the counter, a guest reads what the label says.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    let path = request.path().to_owned();
    if asking.who().may(Right::Scan) {
        return see_other(&format!("/counter?code={}", counter_code(&path)));
    }
    let speech = Speech {
        language: wanted(&request).unwrap_or(asking.speech().language),
        ..asking.speech()
    };
    match read(asking, path.clone(), speech).await {
        Ok((kitchen, told)) => shown(&path, speech, kitchen, told),
        Err(error) => super::trouble(speech, &error),
    }
}

async fn read(asking: Asking, path: String, speech: Speech) -> Result<(String, Option<Told>)> {
    within(Room::Guest, move || {
        let app: &App = asking.caller().app();
        app.store.read(|conn| {
            let kitchen = app.standing(conn)?.kitchen.entry.name.0.clone();
            let told = guest::told(app, conn, &path, speech.language.tag())?;
            Ok::<_, crate::error::Error>((kitchen, told))
        })
    })
    .await
}

fn shown(path: &str, speech: Speech, kitchen: String, told: Option<Told>) -> HttpResponse {
    let words = Words(speech);
    let (other, name) = match speech.language {
        Language::English => (Language::French, "Français"),
        Language::French => (Language::English, "English"),
    };
    let plain: String = path
        .chars()
        .filter(|letter| letter.is_ascii_alphanumeric() || "/-".contains(*letter))
        .collect();
    let status = match told {
        Some(_) => StatusCode::OK,
        None => StatusCode::NOT_FOUND,
    };
    let page = GuestPage {
        words,
        kitchen,
        other: (other.tag(), name, format!("{plain}?in={}", other.tag())),
        pack: told.map(|told| pack(&words, told)),
    };
    match page.render() {
        Ok(html) => HttpResponse::build(status)
            .content_type("text/html; charset=utf-8")
            .insert_header(("Content-Security-Policy", POLICY))
            .insert_header(("Referrer-Policy", "no-referrer"))
            .insert_header(("X-Robots-Tag", "noindex"))
            .insert_header(("Cache-Control", "no-store"))
            .body(html),
        Err(error) => {
            tracing::error!("a page cannot be rendered: {error}");
            HttpResponse::InternalServerError().finish()
        }
    }
}

fn pack(words: &Words, mut told: Told) -> Shown {
    let mut take = |field| told.texts.remove(&field);
    let heading = take(Field::UseByHeading);
    let day = heading.zip(take(Field::UseBy)).filter(|_| told.of_pack);
    let keep = [
        Field::Storage,
        Field::Caution,
        Field::Thawed,
        Field::HandlingKeep,
        Field::HandlingApart,
        Field::HandlingCook,
        Field::HandlingHot,
    ];
    let keep = keep.into_iter().filter_map(&mut take).collect();
    let ingredients = [
        Field::Ingredients,
        Field::Cure,
        Field::NoNitrite,
        Field::NotPreserved,
    ];
    let ingredients = ingredients.into_iter().filter_map(&mut take).collect();
    let (kind, origin) = (take(Field::Kind), take(Field::Origin));
    let made = take(Field::Made);
    // What the label has no line for has none on record.
    let allergens = take(Field::Allergens)
        .or_else(|| (!told.texts.is_empty()).then(|| words.t("page-guest-allergens")));
    let mut from: Vec<String> = told
        .animals
        .iter()
        .take(FARMS)
        .map(|(species, farm)| {
            let (what, farm) = (words.headed(species.says()), farm.clone());
            words.say(PageSays::From { what, farm })
        })
        .collect();
    if told.animals.len() > FARMS {
        from.push(words.t("page-guest-more-farms"));
    }
    from.extend(origin);
    Shown {
        recalled: matches!(told.notice, Some(Notice::Recalled(_))),
        notice: told.notice.map(|notice| words.say(notice.says())),
        name: told.name,
        shown: told.shown,
        kind,
        day,
        keep,
        allergens,
        ingredients,
        from,
        made,
    }
}

/// The language that a link of the page itself asks for.
fn wanted(request: &HttpRequest) -> Option<Language> {
    let tag = request.query_string().strip_prefix("in=")?;
    Language::of_tag(tag)
}

/// The code in a path of a label, as the counter's field takes it.
fn counter_code(path: &str) -> String {
    let parts: Vec<&str> = path.split('/').skip(1).collect();
    let (code, pack) = match parts.as_slice() {
        [_, code] => (*code, None),
        [_, code, pack] => (*code, Some(*pack)),
        [_, _, _, code] => (*code, None),
        [_, _, _, code, _, serial] => (*code, serial.rsplit('-').next()),
        _ => ("", None),
    };
    let plain = |text: &str| -> String {
        text.chars()
            .filter(|letter| letter.is_ascii_alphanumeric() || *letter == '-')
            .collect()
    };
    match pack {
        Some(pack) => format!("{}/{}", plain(code), plain(pack)),
        None => plain(code),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_address_of_a_label_leads_to_the_same_code() {
        for (path, code) in [
            ("/L/BRC26159A0TM", "BRC26159A0TM"),
            ("/l/BRC-26159-A0T-M/9", "BRC-26159-A0T-M/9"),
            ("/01/09521234543213/10/BRC26159A0TM", "BRC26159A0TM"),
            (
                "/01/09521234543213/10/BRC26159A0TM/21/BRC26159A0TM-9",
                "BRC26159A0TM/9",
            ),
            ("/l/<x>/9\"", "x/9"),
        ] {
            assert_eq!(counter_code(path), code, "{path}");
        }
    }
}
