//! Whoever asks: the service, and the language and units in which they are answered.

use crate::app::App;
use crate::error::Error;
use crate::lists::kitchen::Kitchen;
use crate::who::Who;
use actix_web::dev::Payload;
use actix_web::http::header;
use actix_web::{FromRequest, HttpMessage, HttpRequest, web};
use domain::moment::day_of;
use std::future::{Ready, ready};
use std::ops::Deref;
use words::{Language, Speech};

/// The service, as one caller sees it.
#[derive(Clone)]
pub struct Caller<'a> {
    app: &'a App,
    /// Who it is.
    pub who: Who,
    /// The language asked for, if there is a catalogue for one of those asked for.
    pub language: Option<Language>,
}

impl<'a> Caller<'a> {
    /// The program itself, which asked for no language.
    pub fn new(app: &'a App) -> Caller<'a> {
        Caller {
            app,
            who: Who::house(),
            language: None,
        }
    }

    /// The service.
    pub fn app(&self) -> &'a App {
        self.app
    }

    /// How this caller is spoken to in a kitchen: in the language asked for, else in the kitchen's
    /// first one; in their own units, else in the kitchen's.
    pub fn speech(&self, kitchen: &Kitchen) -> Speech {
        self.who
            .in_own_units(self.app.speech(kitchen, self.language))
    }
}

impl Deref for Caller<'_> {
    type Target = App;

    fn deref(&self) -> &App {
        self.app
    }
}

/// What a request brings along for its caller, to be taken to where it waits for the database.
#[derive(Clone)]
pub struct Asking {
    app: web::Data<App>,
    who: Who,
    language: Option<Language>,
}

impl Asking {
    /// The caller.
    pub fn caller(&self) -> Caller<'_> {
        Caller {
            app: &self.app,
            who: self.who.clone(),
            language: self.language,
        }
    }

    /// Who asks.
    pub fn who(&self) -> &Who {
        &self.who
    }

    /// How the caller is spoken to where nobody has asked for the kitchen yet.
    pub fn speech(&self) -> Speech {
        self.who.in_own_units(self.app.speech_lately(self.language))
    }
}

/// The language that a request asks for.
pub fn language(request: &HttpRequest) -> Option<Language> {
    let wanted = request.headers().get(header::ACCEPT_LANGUAGE)?;
    Language::accepted(wanted.to_str().ok()?)
}

/// A page is in its reader's own language, whatever the tablet asks for; a call answers in the one asked for.
fn is_page(request: &HttpRequest) -> bool {
    let path = request.path();
    path != "/api" && !path.starts_with("/api/")
}

impl FromRequest for Asking {
    type Error = Error;
    type Future = Ready<Result<Asking, Error>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let app = request.app_data::<web::Data<App>>();
        let who = request.extensions().get::<Who>().cloned();
        let who = who.unwrap_or_else(Who::nobody);
        let asking = app.map(|app| Asking {
            app: app.clone(),
            language: match is_page(request) {
                true => who.language.or_else(|| language(request)),
                false => language(request).or(who.language),
            },
            who,
        });
        ready(asking.ok_or_else(|| store::Error::Broken("no service".into()).into()))
    }
}

impl App {
    /// The same where nobody has asked for the kitchen yet: as the kitchen was a moment ago.
    pub fn speech_lately(&self, asked: Option<Language>) -> Speech {
        match self.kitchen_seen() {
            Some(kitchen) => self.speech(&kitchen, asked),
            None => Speech::in_language(asked.unwrap_or_default()),
        }
    }

    /// How someone who asked for a language, or for none, is spoken to in a kitchen.
    pub fn speech(&self, kitchen: &Kitchen, asked: Option<Language>) -> Speech {
        let own = || Language::of_tag(kitchen.language());
        Speech {
            language: asked.or_else(own).unwrap_or_default(),
            mass: kitchen.mass(),
            heat: kitchen.heat(),
            today: Some(day_of(self.now(), kitchen.zone)),
            place: kitchen.is_set.then_some(kitchen.entry.profile.0),
            on_label: false,
        }
    }
}
