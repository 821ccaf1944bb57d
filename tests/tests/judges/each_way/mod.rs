//! Each act of the kitchen in a real browser, from Today to the label that a printer gives out, by a finger and by the
//! keyboard alone, on a desk, a tablet and a phone, in both languages; the taps of a finger are counted, and what was
//! done is undone the same way.
//!
//! A run does every act in both ways and both languages, and the screens take turns, so that each act comes to each
//! of them: four rounds of all acts. All twelve rounds, each act on each screen in each language and way, are run
//! where `GAMBREL_EACH_WAY` says `all`; `GAMBREL_EACH_ACT` names one act alone.

mod acts;
mod finger;
mod keys;
mod screen;
mod taps;

use super::browser::SIZES;
use acts::{ACTS, Act, End};
use finger::Finger;
use keys::Keys;
use screen::Screen;
use serde_json::{Value, json};
use std::fs::DirEntry;
use std::path::Path;
use std::time::{Duration, Instant};
use stories::browser::Browser;
use stories::labels::{save, words};
use stories::printer::Manners;
use stories::{Caller, Engine, House, Printer};
use taps::Taps;

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
        let browser = Browser::reading(language);
        browser.be_patient();
        Round {
            house,
            printer,
            browser,
            language,
        }
    }

    fn screen(&self) -> Screen<'_> {
        Screen {
            browser: &self.browser,
            french: self.language == "fr",
        }
    }

    fn way(&self, is_finger: bool) -> Box<dyn Way + '_> {
        match is_finger {
            true => Box::new(Finger::of(&self.browser)),
            false => Box::new(Keys::of(&self.browser)),
        }
    }

    /// Comes to the screen: a name is on it, and in a kitchen that is no demo a PIN is asked.
    fn signs_in(&self, way: &mut dyn Way, pin: Option<&str>) {
        let people = self.house.caller().read("/api/people");
        let mut people = people["people"].as_array().into_iter().flatten();
        let oda = people.find(|one| one["name"] == WHO).expect("she is there");
        let id = oda["id"].as_str().expect("an id");
        self.browser
            .open(&format!("{}/sign-in", self.house.address));
        let screen = self.screen();
        screen.goes(
            way,
            &format!("button.name[value='{id}'], a.name[href*='{id}']"),
        );
        if let Some(pin) = pin {
            screen.does(way, &Do::Type("input[name=pin]", pin.to_owned()));
            screen.goes(way, "form.pin button");
        }
        way.count(if pin.is_some() { 2 } else { 1 });
    }

    /// One act, from Today to the label and back.
    fn act(&self, way: &mut dyn Way, act: &Act) {
        let caller = self.house.caller();
        let screen = self.screen();
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
        let paper = self.printer.paper();
        assert_eq!(paper.len(), before + labels, "{step}");
        assert!(self.printer.copies().values().all(|copies| *copies == 1));
        let made = step["answered"]["lots"].as_array();
        let made: Vec<&str> = made
            .into_iter()
            .flatten()
            .filter_map(|lot| lot["shown"].as_str())
            .collect();
        for sheet in &paper[before..] {
            let file = save(self.house.folder(), "label.pdf", &sheet.document);
            let text = words(&file);
            assert!(
                made.iter().any(|code| text.contains(code)),
                "{made:?}: {text}"
            );
        }
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
    round.browser.resize(SIZES[turn % SIZES.len()]);
    round.signs_in(way.as_mut(), None);
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

/// In a kitchen that is no demo: a name, a PIN, and Today is there.
#[test]
fn a_pin_opens_today_in_two_taps() {
    let house = House::furnished(Engine::Sqlite);
    let people = ["Ada Finch", "Bo Larch"].map(|name| {
        let body = json!({ "name": name, "roles": ["cook"], "pin": "2580" });
        house.caller().post("/api/people", &body).expect(201).body["id"].clone()
    });
    let name = format!("a.name[href*='{}']", people[1].as_str().expect("an id"));
    for language in ["en", "fr"] {
        let browser = Browser::reading(language);
        browser.be_patient();
        let screen = Screen {
            browser: &browser,
            french: language == "fr",
        };
        for (size, is_finger) in SIZES
            .into_iter()
            .flat_map(|size| [(size, true), (size, false)])
        {
            browser.resize(size);
            let mut way: Box<dyn Way> = match is_finger {
                true => Box::new(Finger::of(&browser)),
                false => Box::new(Keys::of(&browser)),
            };
            browser.open(&format!("{}/sign-in", house.address));
            for what in [
                Do::Go(name.clone()),
                Do::Type("input[name=pin]", "2580".to_owned()),
                Do::Go("form.pin button".to_owned()),
                Do::Taps(2),
            ] {
                screen.does(way.as_mut(), &what);
            }
            assert_eq!(browser.run("return location.pathname"), "/");
            let who = browser.run("return document.querySelector('[data-who]').textContent");
            assert!(who.as_str().is_some_and(|who| who.contains("Bo")), "{who}");
        }
        assert!(browser.errors().is_empty());
    }
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
