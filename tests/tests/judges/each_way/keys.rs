//! Acts by the keyboard alone: Tab and Shift-Tab, Enter, Space and the arrows, never a click.

use super::Way;
use super::screen::RETURN;
use serde_json::json;
use stories::browser::Browser;

const TAB: &str = "\u{e004}";
const SHIFT_TAB: [char; 2] = ['\u{e008}', '\u{e004}'];
const SPACE: &str = " ";
const UP: &str = "\u{e013}";
const DOWN: &str = "\u{e015}";

/// So many steps nobody takes to a field.
const MOST_STEPS: usize = 90;

/// A keyboard before a screen.
pub(super) struct Keys<'a> {
    browser: &'a Browser,
}

impl<'a> Keys<'a> {
    pub(super) fn of(browser: &'a Browser) -> Keys<'a> {
        Keys { browser }
    }

    /// Where the cursor is from what is wanted: on it, before it, behind it.
    fn stands(&self, css: &str) -> String {
        let stands = format!(
            "const at = document.activeElement;
             const wanted = [...document.querySelectorAll({css})].filter((one) => one.checkVisibility());
             if (wanted.includes(at)) {{
                 return at.matches(':focus-visible') ? 'on' : 'unseen';
             }}
             const behind = wanted.every((one) => one.compareDocumentPosition(at) & Node.DOCUMENT_POSITION_FOLLOWING);
             return behind && at !== document.body ? 'behind' : 'before';",
            css = json!(css)
        );
        let stands = self.browser.run(&stands);
        stands.as_str().unwrap_or_default().to_owned()
    }

    /// One of several, in its list, by the arrows; a script says how many steps it is away.
    fn turn_to(&self, what: &str, steps: &str) {
        for _ in 0..MOST_STEPS {
            match self.browser.run(steps).as_i64() {
                Some(0) => return,
                Some(steps) if steps < 0 => self.browser.press(UP),
                _ => self.browser.press(DOWN),
            }
        }
        panic!("{what} is not reached by the arrows");
    }
}

impl Way for Keys<'_> {
    fn reach(&mut self, css: &str) {
        for _ in 0..MOST_STEPS {
            match self.stands(css).as_str() {
                "on" => return,
                "unseen" => panic!("nobody sees that {css} has the cursor"),
                "behind" => self.browser.press_at_once(SHIFT_TAB),
                _ => self.browser.press(TAB),
            }
        }
        panic!("{css} is not reached by keyboard");
    }

    fn press(&mut self, css: &str) {
        self.reach(css);
        self.browser.press(RETURN);
    }

    fn choose(&mut self, name: &str, value: &str) {
        self.reach(&format!("input[name='{name}']"));
        let steps = format!(
            "const all = [...document.querySelectorAll(`input[name='{name}']`)].filter((one) => !one.disabled);
             const wanted = all.findIndex((one) => one.value === '{value}');
             return all[wanted].checked ? 0 : (wanted - all.indexOf(document.activeElement)) || 1000;"
        );
        if self.browser.run(&steps) == 1000 {
            self.browser.press(SPACE);
        }
        self.turn_to(&format!("{name} {value}"), &steps);
    }

    fn pick(&mut self, name: &str, value: &str) {
        self.reach(&format!("select[name='{name}']"));
        let steps = format!(
            "const list = document.activeElement;
             return [...list.options].findIndex((one) => one.value === '{value}') - list.selectedIndex;"
        );
        self.turn_to(&format!("{name} {value}"), &steps);
    }

    fn tick(&mut self, css: &str) {
        self.reach(css);
        self.browser.press(SPACE);
    }
}
