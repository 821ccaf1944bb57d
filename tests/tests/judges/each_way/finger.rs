//! Acts by a finger: what it touches lies under it, and what is covered is not reached.

use super::{Taps, Way};
use serde_json::json;
use stories::browser::Browser;

/// A finger on a screen.
pub(super) struct Finger<'a> {
    browser: &'a Browser,
    taps: Taps,
}

impl<'a> Finger<'a> {
    pub(super) fn of(browser: &'a Browser) -> Finger<'a> {
        let taps = Taps::default();
        Finger { browser, taps }
    }

    fn tap(&mut self, css: &str) {
        self.browser.touch(css);
        self.taps.tap();
    }
}

impl Way for Finger<'_> {
    /// A field that has the cursor already needs no tap; what stands in it is marked, so that typing takes its place.
    fn reach(&mut self, css: &str) {
        let is_there = format!("return document.activeElement.matches({})", json!(css));
        if self.browser.run(&is_there) != true {
            self.tap(css);
        }
        self.browser.run("document.activeElement.select?.()");
    }

    fn press(&mut self, css: &str) {
        self.tap(css);
    }

    fn choose(&mut self, name: &str, value: &str) {
        self.tap(&format!("label:has(input[name='{name}'][value='{value}'])"));
    }

    /// The list that opens is the browser's own, over which the driver has no finger: it is asked for the line. Two
    /// taps: the list, the line.
    fn pick(&mut self, name: &str, value: &str) {
        self.browser
            .tap(&format!("select[name='{name}'] option[value='{value}']"));
        self.taps.tap();
        self.taps.tap();
    }

    fn tick(&mut self, css: &str) {
        self.tap(&format!("label:has({css})"));
    }

    fn begins(&mut self) {
        self.taps = Taps::default();
    }

    #[track_caller]
    fn count(&mut self, taps: u32) {
        self.taps.are(taps);
    }
}
