//! A screen that somebody works at: one thing after the other is done on it, in either way.

use super::{Do, Way};
use serde_json::json;
use std::time::{Duration, Instant};
use stories::browser::Browser;

pub(super) const RETURN: &str = "\u{e007}";
const LEFT: &str = "\u{e012}";

/// A screen that somebody works at.
pub(super) struct Screen<'a> {
    pub(super) browser: &'a Browser,
    /// Decimals have a comma.
    pub(super) french: bool,
}

impl Screen<'_> {
    pub(super) fn does(&self, way: &mut dyn Way, what: &Do) {
        match what {
            Do::Scan(code) => {
                self.browser.press(&format!("{code}{RETURN}"));
            }
            Do::Weighs(weight) => self.browser.press(&self.written(weight)),
            Do::Type(css, text) => {
                self.comes(css);
                way.reach(css);
                self.browser.press(&self.written(text));
            }
            Do::Day(name, day) => self.dials(way, name, day, &|local| day_keys(day, local)),
            Do::Hour(name, hour) => self.dials(way, name, hour, &|local| hour_keys(hour, local)),
            Do::Choose(name, value) => {
                self.comes(&format!("label:has([name='{name}'][value='{value}'])"));
                way.choose(name, value);
            }
            Do::Pick(name, value) => {
                self.comes(&format!("select[name='{name}']"));
                way.pick(name, value);
            }
            Do::Tick(css) => {
                self.comes(&format!("label:has({css})"));
                way.tick(css);
            }
            Do::Press(css) => {
                self.comes(css);
                way.press(css);
            }
            Do::Go(css) => self.goes(way, css),
            Do::Sees(css) => self.comes(css),
            Do::Taps(taps) => way.count(*taps),
        }
    }

    /// Decimals as the language writes them.
    fn written(&self, text: &str) -> String {
        match self.french {
            true => text.replace('.', ","),
            false => text.to_owned(),
        }
    }

    /// A day or an hour: from its first part on, in the order in which this browser shows the parts.
    fn dials(&self, way: &mut dyn Way, name: &str, wanted: &str, keys: &dyn Fn(bool) -> String) {
        let css = format!("[name='{name}']");
        self.comes(&css);
        way.reach(&css);
        let local = "return new Intl.DateTimeFormat().resolvedOptions().locale.startsWith('en')";
        let english = self.browser.run(local) == true;
        self.browser.press(&LEFT.repeat(4));
        self.browser.press(&keys(english));
        let typed = self.browser.run("return document.activeElement.value");
        assert_eq!(typed, wanted, "{name}");
    }

    /// Follows a way, until the next page is there.
    pub(super) fn goes(&self, way: &mut dyn Way, css: &str) {
        self.comes(css);
        self.browser.run("window.isOld = true");
        way.press(css);
        self.until(&format!("{css} leads nowhere"), IS_NEW);
    }

    /// Waits until something is to be seen.
    fn comes(&self, css: &str) {
        let script = format!(
            "return document.readyState === 'complete' && {}",
            visible(css)
        );
        self.until(&format!("{css} is not to be seen"), &script);
    }

    pub(super) fn until(&self, or_else: &str, script: &str) {
        let give_up = Instant::now() + Duration::from_secs(40);
        while self.browser.run(script) != true {
            assert!(Instant::now() < give_up, "{or_else}: {}", self.says());
            std::thread::sleep(Duration::from_millis(15));
        }
    }

    /// Where it is, and what stands there, for whoever reads why it went wrong.
    fn says(&self) -> String {
        let text = "return location.href + '\\n' + document.querySelector('main')?.innerText";
        let text = self.browser.run(text);
        text.as_str()
            .unwrap_or_default()
            .chars()
            .take(1500)
            .collect()
    }

    /// The deed that the page says was just done.
    pub(super) fn did(&self) -> String {
        let did = "return document.readyState === 'complete' && new URL(location.href).searchParams.has('did')";
        self.until("nothing is told as done", did);
        let id = self
            .browser
            .run("return new URL(location.href).searchParams.get('did')");
        id.as_str().expect("an id").to_owned()
    }
}

const IS_NEW: &str = "return window.isOld === undefined && document.readyState === 'complete'";

/// Is there something to be seen that a selector finds? A script's expression.
fn visible(css: &str) -> String {
    format!(
        "[...document.querySelectorAll({})].some((one) => one.checkVisibility() && one.getClientRects().length > 0)",
        json!(css)
    )
}

fn day_keys(day: &str, english: bool) -> String {
    let parts: Vec<&str> = day.split('-').collect();
    match english {
        true => [parts[1], parts[2], parts[0]].concat(),
        false => [parts[2], parts[1], parts[0]].concat(),
    }
}

/// Hours before noon.
fn hour_keys(hour: &str, english: bool) -> String {
    let figures = hour.replace(':', "");
    match english {
        true => format!("{figures}A"),
        false => figures,
    }
}
