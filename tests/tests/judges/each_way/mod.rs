//! Each act of the kitchen in a real browser, from Today to the label that a printer gives out, by a finger and by the
//! keyboard alone, on a desk, a tablet and a phone, in both languages; the taps of a finger are counted, and what was
//! done is undone the same way.
//!
//! A run does every act in both ways and both languages, and the screens take turns, so that each act comes to each
//! of them: four rounds of all acts. All twelve rounds, each act on each screen in each language and way, are run
//! where `GAMBREL_EACH_WAY` says `all`.

mod acts;
mod finger;
mod keys;
mod taps;

use super::browser::SIZES;
use acts::{ACTS, Act, End};
use finger::Finger;
use keys::Keys;
use serde_json::{Value, json};
use std::fs::DirEntry;
use std::path::Path;
use std::time::{Duration, Instant};
use stories::browser::Browser;
use stories::printer::Manners;
use stories::{Caller, Engine, House, Printer};
use taps::Taps;

const RETURN: &str = "\u{e007}";
const LEFT: &str = "\u{e012}";

/// What is done on a page, one thing after the other.
pub(super) enum Do {
    /// A scanner types and presses Enter, wherever the cursor is.
    Scan(String),
    /// A scale types, wherever the cursor is.
    Weighs(&'static str),
    /// Types into a field.
    Type(&'static str, String),
    /// Types a day, `2026-06-24`, as people of that language write it.
    Day(&'static str, &'static str),
    /// Types an hour, `08:30`, likewise.
    Hour(String, &'static str),
    /// Chooses one of several that are all seen, by its value.
    Choose(&'static str, String),
    /// Picks from a list that opens, by its value.
    Pick(&'static str, &'static str),
    /// Ticks a box.
    Tick(String),
    /// Presses a button.
    Press(&'static str),
    /// Goes on to another page by a way or a button that leads there.
    Go(String),
    /// Waits for something to be seen.
    Sees(&'static str),
    /// So many taps were needed since the last time that they were counted.
    Taps(u32),
}

/// With what it is done.
pub(super) trait Way {
    /// The cursor is put into a field.
    fn reach(&mut self, css: &str);
    /// A button, a way, a summary.
    fn press(&mut self, css: &str);
    /// One of several of a name that are all seen.
    fn choose(&mut self, name: &str, value: &str);
    /// One of a list that opens.
    fn pick(&mut self, name: &str, value: &str);
    /// A box.
    fn tick(&mut self, css: &str);
    /// It begins, and nothing was tapped yet.
    fn begins(&mut self) {}
    /// So many taps were needed; a keyboard needs none.
    fn count(&mut self, _taps: u32) {}
}

/// A screen that somebody works at.
struct Screen<'a> {
    browser: &'a Browser,
    french: bool,
}

impl Screen<'_> {
    fn does(&self, way: &mut dyn Way, what: &Do) {
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
    fn goes(&self, way: &mut dyn Way, css: &str) {
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

    fn until(&self, or_else: &str, script: &str) {
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
    fn did(&self) -> String {
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
pub(super) fn visible(css: &str) -> String {
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

/// A kitchen, its printer, and somebody at a screen in it.
struct Round {
    house: House,
    printer: Printer,
    browser: Browser,
    language: &'static str,
}

impl Round {
    fn of(language: &'static str) -> Round {
        let house = House::demo(Engine::Sqlite);
        let printer = Printer::new(Manners {
            sizes: rolls(),
            ..Manners::default()
        });
        plug_in(&house.caller(), &printer);
        Round {
            house,
            printer,
            browser: Browser::reading(language),
            language,
        }
    }

    fn way(&self, is_finger: bool) -> Box<dyn Way + '_> {
        match is_finger {
            true => Box::new(Finger::of(&self.browser)),
            false => Box::new(Keys::of(&self.browser)),
        }
    }

    /// Comes to the screen: a name is on it.
    fn signs_in(&self, way: &mut dyn Way, screen: &Screen<'_>) {
        let people = self.house.caller().read("/api/people");
        let mut people = people["people"].as_array().into_iter().flatten();
        let oda = people.find(|one| one["name"] == WHO).expect("she is there");
        let name = format!(
            "button.name[value='{}']",
            oda["id"].as_str().expect("an id")
        );
        self.browser
            .open(&format!("{}/sign-in", self.house.address));
        screen.goes(way, &name);
        way.count(1);
    }

    /// One act, from Today to the label and back.
    fn act(&self, way: &mut dyn Way, act: &Act) {
        let caller = self.house.caller();
        let screen = Screen {
            browser: &self.browser,
            french: self.language == "fr",
        };
        way.begins();
        let does = (act.does)(&caller);
        let paper = self.printer.paper().len();
        self.browser.open(&format!("{}/", self.house.address));
        for what in &does {
            screen.does(way, what);
        }
        if matches!(act.end, End::Told) {
            return;
        }
        let deed = screen.did();
        match act.end {
            End::Told => {}
            End::Held => {
                let read = caller.read(&format!("/api/incidents/{deed}"));
                assert_eq!(read["id"], deed, "{read}");
            }
            End::Recorded(kind) => {
                let step = || caller.read(&format!("/api/steps/{deed}"));
                assert_eq!(step()["kind"], kind, "{}", step());
                assert_eq!(step()["by"], WHO);
                self.came_out(&step(), paper, act.labels);
                screen.does(way, &Do::Press("button.undo"));
                way.count(1);
                screen.until("it is not undone", IS_UNDONE);
                assert!(!step()["voided"].is_null(), "{}", step());
            }
        }
    }

    /// The labels of a deed came out of the printer, each once.
    fn came_out(&self, step: &Value, before: usize, labels: usize) {
        let give_up = Instant::now() + Duration::from_secs(40);
        while self.printer.paper().len() < before + labels {
            assert!(
                Instant::now() < give_up,
                "{} of {labels} labels came out: {step}",
                self.printer.paper().len() - before
            );
            std::thread::sleep(Duration::from_millis(15));
        }
        assert_eq!(self.printer.paper().len(), before + labels, "{step}");
        assert!(self.printer.copies().values().all(|copies| *copies == 1));
    }
}

const WHO: &str = "Oda Marsh";
const IS_UNDONE: &str = "return document.readyState === 'complete'
    && new URL(location.href).searchParams.has('did') && document.querySelector('.done button.undo') === null
    && document.querySelector('.done') !== null";

/// A roll for each label that there is, in hundredths of a millimetre.
fn rolls() -> Vec<(i32, i32)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../label-templates");
    let files = std::fs::read_dir(&folder).expect("the templates").flatten();
    let read = |file: DirEntry| {
        let text = std::fs::read_to_string(file.path()).ok()?;
        let label: Value = serde_json::from_str(&text).ok()?;
        let side = |name: &str| Some(i32::try_from(label[name].as_i64()?).ok()? * 100);
        Some((side("width_mm")?, side("height_mm")?))
    };
    files.filter_map(read).collect()
}

/// The demo's printer is off: another stands in its place.
fn plug_in(caller: &Caller, printer: &Printer) {
    let path = "/api/printers/pass";
    let read = caller.get(path).expect(200);
    let entry = json!({ "code": "pass", "name": "Pass", "address": printer.address() });
    let etag = read.etag.expect("its version");
    caller.put_over(path, &etag, &entry).expect(200);
}

/// All acts in one way and one language; where the screens take turns, `turn` says which begins.
fn each(is_finger: bool, language: &'static str, turn: usize) {
    let all = std::env::var("GAMBREL_EACH_WAY").is_ok_and(|wish| wish == "all");
    let only = std::env::var("GAMBREL_EACH_ACT").ok();
    let round = Round::of(language);
    let mut way = round.way(is_finger);
    let screen = Screen {
        browser: &round.browser,
        french: language == "fr",
    };
    round.browser.resize(SIZES[turn % SIZES.len()]);
    round.signs_in(way.as_mut(), &screen);
    let mut wrong = Vec::new();
    for (nth, act) in ACTS.iter().enumerate() {
        if only.as_ref().is_some_and(|only| only != act.name) {
            continue;
        }
        for (place, size) in SIZES.into_iter().enumerate() {
            if !all && place != (nth + turn) % SIZES.len() {
                continue;
            }
            round.browser.resize(size);
            let began = Instant::now();
            let done = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| {
                round.act(way.as_mut(), act);
            }));
            let said = round.browser.errors();
            println!("{} {language} {size:?}: {:?}", act.name, began.elapsed());
            if done.is_err() || !said.is_empty() {
                wrong.push(format!("{} on {size:?}: {said:?}", act.name));
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} acts failed:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}

#[test]
fn by_a_finger_in_english() {
    each(true, "en", 0);
}

#[test]
fn by_a_finger_in_french() {
    each(true, "fr", 1);
}

#[test]
fn by_the_keyboard_alone_in_english() {
    each(false, "en", 2);
}

#[test]
fn by_the_keyboard_alone_in_french() {
    each(false, "fr", 0);
}
