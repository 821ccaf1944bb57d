//! A browser for tests: Chromium, led by its driver over the WebDriver protocol.

use serde_json::{Value, json};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// What makes it stay on this machine and leave no trace of other runs.
const ARGUMENTS: [&str; 9] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
];

/// Where a finger comes down on the first thing to be seen under `css`: its middle, or what lies over that.
const MIDDLE: &str = "
    const one = [...document.querySelectorAll(css)].find((one) => one.checkVisibility() && one.getClientRects().length > 0);
    if (!one) { return { over: 'nothing to be seen' }; }
    one.scrollIntoView({ block: 'center', behavior: 'instant' });
    const { left, top, width, height } = one.getBoundingClientRect();
    const [x, y] = [Math.round(left + width / 2), Math.round(top + height / 2)];
    const found = document.elementFromPoint(x, y);
    const is = found && (one.contains(found) || found.contains(one) && found.closest('label, a, button') !== null);
    return { x, y, over: is ? null : found?.outerHTML.slice(0, 200) ?? 'the edge of the window' };";

/// A browser with one window.
pub struct Browser {
    driver: Child,
    agent: ureq::Agent,
    /// Where the session's calls go.
    session: String,
    /// Its own profile, gone with it.
    _profile: tempfile::TempDir,
}

impl Browser {
    /// A browser of somebody who reads that language.
    ///
    /// # Panics
    /// Chromium or its driver is missing or does not start.
    pub fn reading(language: &str) -> Browser {
        let (driver, port) = driver();
        let config = ureq::Agent::config_builder()
            .http_status_as_error(false)
            .timeout_global(Some(Duration::from_secs(180)))
            .build();
        let profile = tempfile::tempdir().expect("a temporary folder can be made");
        let mut browser = Browser {
            driver,
            agent: config.into(),
            session: format!("http://127.0.0.1:{port}/session"),
            _profile: profile,
        };
        let mut arguments: Vec<String> = ARGUMENTS.map(str::to_owned).to_vec();
        let folder = browser._profile.path().display();
        arguments.push(format!("--user-data-dir={folder}"));
        arguments.push(format!("--lang={language}"));
        arguments.push(format!("--accept-lang={language}"));
        let wanted = json!({ "browserName": "chrome", "goog:loggingPrefs": { "browser": "ALL" },
            "goog:chromeOptions": { "args": arguments, "prefs": { "intl.accept_languages": language } } });
        let made = browser.call("", &json!({ "capabilities": { "alwaysMatch": wanted } }));
        let id = made["sessionId"].as_str().expect("a session");
        browser.session += &format!("/{id}");
        browser
    }

    /// A window of that many CSS pixels inside.
    pub fn resize(&self, (width, height): (u32, u32)) {
        let size =
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        let call = json!({ "cmd": "Emulation.setDeviceMetricsOverride", "params": size });
        self.call("/goog/cdp/execute", &call);
    }

    /// Opens a page and waits until it is loaded.
    pub fn open(&self, address: &str) {
        self.call("/url", &json!({ "url": address }));
    }

    /// Becomes one of the demo's people, with a tap on their name.
    ///
    /// # Panics
    /// The page has no such name, or nothing comes of it.
    pub fn sign_in(&self, address: &str, name: &str) {
        self.open(&format!("{address}/sign-in"));
        let tap = format!(
            "const names = [...document.querySelectorAll('button.name')];
             const one = names.find((button) => button.textContent.startsWith('{name}'));
             one?.click(); return one !== undefined;"
        );
        assert_eq!(self.run(&tap), true, "{name} is not on the page");
        crate::queue::until(|| self.run("return location.pathname") == "/");
    }

    /// Waits until the page and its scripts are there: nobody's finger is faster, but a test's is.
    fn is_whole(&self) {
        crate::queue::until(|| self.run("return document.readyState === 'complete'") == true);
    }

    /// Taps on the first element that a selector finds, as a finger does: what is covered is not reached.
    ///
    /// # Panics
    /// There is none, or something lies over it.
    pub fn tap(&self, css: &str) {
        self.is_whole();
        let element = self.element(css);
        self.call(&format!("/element/{element}/click"), &json!({}));
    }

    /// Touches the middle of the first element to be seen that a selector finds, with a finger.
    ///
    /// # Panics
    /// There is none, or something lies over it.
    #[track_caller]
    pub fn touch(&self, css: &str) {
        self.is_whole();
        let at = self.run(&format!("const css = {}; {MIDDLE}", json!(css)));
        assert!(at["over"].is_null(), "over {css} lies {at}");
        let strokes = json!([
            { "type": "pointerMove", "x": at["x"], "y": at["y"] },
            { "type": "pointerDown", "button": 0 },
            { "type": "pause", "duration": 30 },
            { "type": "pointerUp", "button": 0 },
        ]);
        let finger = json!({ "pointerType": "touch" });
        let actions = json!([{ "type": "pointer", "id": "finger", "parameters": finger, "actions": strokes }]);
        self.call("/actions", &json!({ "actions": actions }));
    }

    /// Types into a field.
    ///
    /// # Panics
    /// There is none.
    pub fn type_into(&self, css: &str, text: &str) {
        self.is_whole();
        let element = self.element(css);
        self.call(
            &format!("/element/{element}/value"),
            &json!({ "text": text }),
        );
    }

    /// Presses keys wherever the focus is, as a keyboard or a scale does; `\u{e007}` is Return.
    pub fn press(&self, keys: &str) {
        let down_and_up = |key: char| {
            let key = key.to_string();
            [
                json!({ "type": "keyDown", "value": key }),
                json!({ "type": "keyUp", "value": key }),
            ]
        };
        let strokes: Vec<Value> = keys.chars().flat_map(down_and_up).collect();
        let actions = json!([{ "type": "key", "id": "keys", "actions": strokes }]);
        self.call("/actions", &json!({ "actions": actions }));
    }

    /// Presses keys at once, each held down until the last one is: Shift and Tab.
    pub fn press_at_once(&self, keys: [char; 2]) {
        let stroke = |kind: &str, key: char| json!({ "type": kind, "value": key.to_string() });
        let [held, pressed] = keys;
        let strokes = [
            stroke("keyDown", held),
            stroke("keyDown", pressed),
            stroke("keyUp", pressed),
            stroke("keyUp", held),
        ];
        let actions = json!([{ "type": "key", "id": "keys", "actions": strokes }]);
        self.call("/actions", &json!({ "actions": actions }));
    }

    /// Cuts the network, or mends it.
    pub fn cut_off(&self, is_cut: bool) {
        let line = json!({ "offline": is_cut, "latency": 0, "download_throughput": -1, "upload_throughput": -1 });
        self.call(
            "/chromium/network_conditions",
            &json!({ "network_conditions": line }),
        );
    }

    /// The page is put to sleep as a tablet does it with what nobody looks at, or wakes.
    pub fn sleeps(&self, is_asleep: bool) {
        let state = if is_asleep { "frozen" } else { "active" };
        self.asks("Page.setWebLifecycleState", &json!({ "state": state }));
    }

    /// Nothing that was loaded before is used again: each page comes over the wire whole.
    pub fn keep_nothing(&self) {
        self.asks("Network.enable", &json!({}));
        self.asks(
            "Network.setCacheDisabled",
            &json!({ "cacheDisabled": true }),
        );
        self.asks("Network.setBypassServiceWorker", &json!({ "bypass": true }));
    }

    /// The scripts of pages run, or not; what a test asks runs in any case.
    pub fn scripts(&self, run: bool) {
        self.asks(
            "Emulation.setScriptExecutionDisabled",
            &json!({ "value": !run }),
        );
    }

    /// From now on no page of this window takes a slow answer for a dead line: a machine that does much else at once is
    /// none.
    pub fn be_patient(&self) {
        let source = "document.addEventListener('DOMContentLoaded', () => {
            if (typeof waiting === 'object') { waiting.patience = 60000; }
        });";
        self.asks(
            "Page.addScriptToEvaluateOnNewDocument",
            &json!({ "source": source }),
        );
    }

    /// A command of the browser's own protocol.
    fn asks(&self, command: &str, params: &Value) {
        let call = json!({ "cmd": command, "params": params });
        self.call("/goog/cdp/execute", &call);
    }

    /// What the window shows, as PNG.
    ///
    /// # Panics
    /// The driver's answer is no picture.
    pub fn picture(&self) -> Vec<u8> {
        let call = json!({ "cmd": "Page.captureScreenshot", "params": { "format": "png" } });
        let taken = self.call("/goog/cdp/execute", &call);
        plain(taken["data"].as_str().expect("a picture"))
    }

    fn element(&self, css: &str) -> String {
        let found = self.call(
            "/element",
            &json!({ "using": "css selector", "value": css }),
        );
        let mut ids = found.as_object().expect("an element").values();
        ids.next()
            .and_then(Value::as_str)
            .expect("its id")
            .to_owned()
    }

    /// What a script returns.
    pub fn run(&self, script: &str) -> Value {
        self.call("/execute/sync", &json!({ "script": script, "args": [] }))
    }

    /// What the script's promise comes to.
    pub fn wait_for(&self, promise: &str) -> Value {
        let script = format!(
            "const done = arguments[0]; ({promise}).then(done, bad => done({{ failed: String(bad) }}));"
        );
        self.call("/execute/async", &json!({ "script": script, "args": [] }))
    }

    /// The errors on its console since they were read last.
    ///
    /// # Panics
    /// The driver has no log.
    pub fn errors(&self) -> Vec<String> {
        let log = self.call("/se/log", &json!({ "type": "browser" }));
        let lines = log.as_array().expect("lines").iter();
        lines
            .filter(|line| line["level"] == "SEVERE")
            .map(|line| line["message"].as_str().unwrap_or_default().to_owned())
            .collect()
    }

    #[track_caller]
    fn call(&self, path: &str, body: &Value) -> Value {
        let sent = self
            .agent
            .post(format!("{}{path}", self.session))
            .content_type("application/json")
            .send(body.to_string());
        let mut answer = sent.expect("the driver answers");
        let text = answer
            .body_mut()
            .with_config()
            .limit(1 << 28)
            .read_to_string();
        let told: Value = serde_json::from_str(&text.expect("the driver's answer is text"))
            .expect("the driver speaks JSON");
        assert!(answer.status() == 200, "{path}: {told}");
        told["value"].clone()
    }
}

/// A driver, and its port. Now and then one ends without having told any: another is begun.
fn driver() -> (Child, u16) {
    let begun = || {
        let mut driver = Command::new("chromedriver")
            .args(["--port=0", "--log-level=SEVERE"])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver is missing; tests/run installs it (chromium-driver)");
        let port = port_of(&mut driver);
        if port.is_none() {
            let _ = (driver.kill(), driver.wait());
        }
        port.map(|port| (driver, port))
    };
    let mut tries = (0..3).map(|_| begun());
    tries
        .find_map(|one| one)
        .expect("chromedriver says its port")
}

/// The port that the driver took, as it says itself.
fn port_of(driver: &mut Child) -> Option<u16> {
    let lines = BufReader::new(driver.stdout.take().expect("piped")).lines();
    let mut ports = lines.map_while(Result::ok).filter_map(|line| {
        let (_, port) = line.split_once("started successfully on port ")?;
        port.trim_end_matches('.').parse().ok()
    });
    ports.next()
}

impl Drop for Browser {
    fn drop(&mut self) {
        // Ends the browser; then the driver may go.
        let _ = self.agent.delete(&self.session).call();
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

/// The bytes of a text in base 64.
fn plain(text: &str) -> Vec<u8> {
    let six = |letter: u8| match letter {
        b'A'..=b'Z' => Some(letter - b'A'),
        b'a'..=b'z' => Some(letter - b'a' + 26),
        b'0'..=b'9' => Some(letter - b'0' + 52),
        b'+' => Some(62),
        b'/' => Some(63),
        _ => None,
    };
    let (mut bytes, mut held, mut bits) = (Vec::new(), 0_u32, 0);
    for six in text.bytes().filter_map(six) {
        (held, bits) = ((held << 6 | u32::from(six)) & 0xffff, bits + 6);
        if bits >= 8 {
            bits -= 8;
            bytes.push((held >> bits & 0xff) as u8);
        }
    }
    bytes
}

/// The judge of accessibility, as a script.
///
/// # Panics
/// It is not on file.
pub fn axe() -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("vendor/axe-core/axe.min.js");
    std::fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()))
}
