//! WebDriver (W3C) in a few lines: a session on the built program, elements by their id.

use super::network::Watch;
use super::screen::Screen;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};
use std::fs;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// How long anything may take to appear; a plan takes far less, a busy machine may not.
const PATIENCE: Duration = Duration::from_secs(30);

/// The key under which WebDriver hands out an element.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

pub(crate) struct Window {
    base: String,
    driver: Child,
    pub(crate) screen: Screen,
    /// Whom the program spoke to, where that can be seen; see [`Watch`].
    pub(crate) watch: Option<Watch>,
    /// A data folder of its own, so that no kit store of this machine is read or changed.
    data: Option<tempfile::TempDir>,
}

impl Window {
    /// Opens the built program on a course file.
    pub(crate) fn open(file: &Path) -> Self {
        let data = tempfile::tempdir().expect("a data folder");
        Self::open_with(Some(file), data)
    }

    /// Opens it on a course file or on none, with a data folder that may hold something already.
    pub(crate) fn open_with(file: Option<&Path>, data: tempfile::TempDir) -> Self {
        let mut window = Self::started(file, data.path(), &[]);
        window.data = Some(data);
        window
    }

    /// Opens it in a data folder that is there before and after.
    pub(crate) fn open_in(file: &Path, data: &Path) -> Self {
        Self::started(Some(file), data, &[])
    }

    /// As [`Window::open`], with some variables of the environment set.
    pub(crate) fn open_where(file: &Path, variables: &[(&str, &Path)]) -> Self {
        let data = tempfile::tempdir().expect("a data folder");
        let mut window = Self::started(Some(file), data.path(), variables);
        window.data = Some(data);
        window
    }

    fn started(file: Option<&Path>, data: &Path, variables: &[(&str, &Path)]) -> Self {
        let watch = Watch::begin();
        let (binary, arguments) = match &watch {
            Some(watch) => watch.around(&program(), file),
            None => (program(), Vec::from_iter(file.map(Path::to_owned))),
        };
        let options = json!({ "binary": binary, "args": arguments });
        Self::launch(&options, watch, data, variables)
    }

    /// A window on what WebKit's `options` name: a program and its arguments.
    pub(crate) fn launch(
        options: &Value,
        watch: Option<Watch>,
        data: &Path,
        variables: &[(&str, &Path)],
    ) -> Self {
        let screen = Screen::start();
        let port = free_port();
        let driver = Command::new("WebKitWebDriver")
            .arg(format!("--port={port}"))
            .env("DISPLAY", &screen.display)
            .env("XDG_DATA_HOME", data)
            .env("NO_AT_BRIDGE", "1")
            .env("GDK_BACKEND", "x11")
            .env("TAURI_AUTOMATION", "true")
            .env("TAURI_WEBVIEW_AUTOMATION", "true")
            .envs(variables.iter().copied())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("WebKitWebDriver is there: cargo xtask test installs it");
        let mut window = Self {
            base: format!("http://127.0.0.1:{port}/session"),
            driver,
            screen,
            watch,
            data: None,
        };
        let wish =
            json!({ "capabilities": { "alwaysMatch": { "webkitgtk:browserOptions": options } } });
        let session = window.until("a session", || post(&window.base, &wish).ok());
        let id = session["sessionId"]
            .as_str()
            .expect("a session's id")
            .to_owned();
        window.base = format!("{}/{id}", window.base);
        window
    }

    /// Starts the program once more on the same screen, by hand as it were.
    pub(crate) fn start_beside(&self, file: &Path, data: &Path) -> Child {
        let mut program = Command::new(program());
        program.arg(file).env("DISPLAY", &self.screen.display);
        program.env("XDG_DATA_HOME", data).env("GDK_BACKEND", "x11");
        program.spawn().expect("the program starts")
    }

    /// The process that started the program, so that the program's own can be found below it.
    #[allow(dead_code, reason = "the benchmark asks, the checks do not")]
    pub(crate) fn starter(&self) -> u32 {
        self.driver.id()
    }

    pub(crate) fn call(&self, path: &str, body: &Value) -> Result<Value, String> {
        post(&format!("{}/{path}", self.base), body)
    }

    fn element(&self, id: &str) -> Option<String> {
        let by = json!({ "using": "css selector", "value": format!("[id=\"{id}\"]") });
        let found = self.call("element", &by).ok()?;
        found[ELEMENT].as_str().map(str::to_owned)
    }

    /// Brings it to the middle of its page: WebDriver does not click what is half in sight.
    fn show(&self, id: &str) {
        self.script(&format!(
            "document.getElementById({id:?})?.scrollIntoView({{ block: 'center' }})"
        ));
    }

    /// Clicks what has this id, as soon as it can be clicked. A figure that has just come may move
    /// it, and the click would meet what was there before.
    pub(crate) fn click(&self, id: &str) {
        self.until(&format!("a click on {id}"), || {
            let element = self.element(id)?;
            self.show(id);
            self.lies_still(id)?;
            self.call(&format!("element/{element}/click"), &json!({}))
                .ok()
        });
    }

    /// Replaces what stands in a field by typing.
    pub(crate) fn type_into(&self, id: &str, text: &str) {
        self.until(&format!("typing into {id}"), || {
            let element = self.element(id)?;
            self.show(id);
            self.call(&format!("element/{element}/click"), &json!({}))
                .ok()?;
            // Control and A, then the text over it; in one call the text would be lost.
            let keys = |keys: &str| {
                self.call(
                    &format!("element/{element}/value"),
                    &json!({ "text": keys }),
                )
                .ok()
            };
            keys("\u{e009}a\u{e000}")?;
            keys(text)
        });
    }

    /// Takes hold of the middle of what has this id and moves it by so many pixels, some at a time.
    pub(crate) fn drag(&self, id: &str, by: (i32, i32)) {
        self.until(&format!("a drag of {id}"), || {
            let element = self.element(id)?;
            self.show(id);
            self.lies_still(id)?;
            let part = |share: i32| (by.0 * share / 5, by.1 * share / 5);
            let step = |share: i32| {
                let (was, to) = (part(share - 1), part(share));
                json!({ "type": "pointerMove", "origin": "pointer", "duration": 60,
                    "x": to.0 - was.0, "y": to.1 - was.1 })
            };
            let mut actions = vec![
                json!({ "type": "pointerMove", "origin": { ELEMENT: element }, "x": 0, "y": 0 }),
                json!({ "type": "pointerDown", "button": 0 }),
            ];
            actions.extend((1..=5).map(step));
            actions.push(json!({ "type": "pause", "duration": 60 }));
            actions.push(json!({ "type": "pointerUp", "button": 0 }));
            let mouse = json!({ "type": "pointer", "id": "mouse", "actions": actions });
            self.call("actions", &json!({ "actions": [mouse] })).ok()
        });
    }

    /// Nothing while what has this id still moves, as it does when a drawing has just come.
    fn lies_still(&self, id: &str) -> Option<()> {
        let place = || {
            self.script(&format!(
                "return JSON.stringify(document.getElementById({id:?})?.getBoundingClientRect())"
            ))
        };
        let before = place();
        std::thread::sleep(Duration::from_millis(100));
        (before == place()).then_some(())
    }

    /// Presses keys while what has this id has the focus.
    pub(crate) fn press(&self, id: &str, keys: &str) {
        self.until(&format!("keys for {id}"), || {
            self.element(id)?;
            self.script(&format!("document.getElementById({id:?}).focus()"));
            let key = |key: char| {
                let key = key.to_string();
                [
                    json!({ "type": "keyDown", "value": key }),
                    json!({ "type": "keyUp", "value": key }),
                ]
            };
            let actions: Vec<Value> = keys.chars().flat_map(key).collect();
            let board = json!({ "type": "key", "id": "keys", "actions": actions });
            self.call("actions", &json!({ "actions": [board] })).ok()
        });
    }

    /// The visible text of what has this id; empty if there is none.
    pub(crate) fn text(&self, id: &str) -> String {
        self.script(&format!(
            "return document.getElementById({id:?})?.textContent ?? ''"
        ))
    }

    /// What stands in a field.
    pub(crate) fn value(&self, id: &str) -> String {
        self.script(&format!(
            "return document.getElementById({id:?})?.value ?? ''"
        ))
    }

    /// The data folder of this window.
    pub(crate) fn data(&self) -> &Path {
        let data = self.data.as_ref();
        data.expect("a data folder of its own").path()
    }

    /// Waits until what has this id shows a text.
    pub(crate) fn wait_for_text(&self, id: &str, text: &str) {
        let end = Instant::now() + PATIENCE;
        loop {
            let shown = self.text(id);
            let there = self.element(id).is_some();
            if there && shown.contains(text) {
                return;
            }
            assert!(Instant::now() < end, "{id} shows {shown:?}, not {text:?}");
            std::thread::sleep(Duration::from_millis(50));
        }
    }

    pub(crate) fn wait_until(&self, what: &str, mut holds: impl FnMut() -> bool) {
        self.until(what, || holds().then_some(()));
    }

    fn until<T>(&self, what: &str, mut tried: impl FnMut() -> Option<T>) -> T {
        let end = Instant::now() + PATIENCE;
        loop {
            if let Some(done) = tried() {
                return done;
            }
            assert!(Instant::now() < end, "waited in vain: {what}");
            std::thread::sleep(Duration::from_millis(50));
        }
    }

    /// Runs a script in the page; its answer as text.
    pub(crate) fn script(&self, script: &str) -> String {
        let answer = self.call("execute/sync", &json!({ "script": script, "args": [] }));
        as_text(&answer.expect("a script runs"))
    }

    /// Runs a script that answers later.
    pub(crate) fn script_async(&self, script: &str) -> String {
        let answer = self.call("execute/async", &json!({ "script": script, "args": [] }));
        as_text(&answer.expect("a script runs"))
    }

    /// Calls a command of the program from the page, as a hostile page would.
    pub(crate) fn invoke(&self, command: &str) -> String {
        self.script_async(&format!(
            "const done = arguments[arguments.length - 1];\
             window.__TAURI_INTERNALS__.invoke({command:?}, {{}})\
             .then(() => done('allowed'), (why) => done('refused: ' + why))"
        ))
    }

    /// Keeps a picture of the window, once what it shows has been painted.
    pub(crate) fn picture(&self, file: &Path) {
        // A window at rest now and then never answers when it is asked for a picture, so until
        // then it is painted again and again, in a shade nobody can tell from its own.
        self.script_async(
            "const done = arguments[arguments.length - 1];\
             const { style } = document.documentElement;\
             let left = 40;\
             const again = setInterval(() => {\
                 style.opacity = left % 2 ? '0.9999' : '';\
                 if (left-- === 0) clearInterval(again);\
             }, 50);\
             requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 300)))",
        );
        let url = format!("{}/screenshot", self.base);
        let mut reply = agent().get(&url).call().expect("a picture");
        let reply: Value = reply.body_mut().read_json().expect("its answer");
        let png = STANDARD
            .decode(reply["value"].as_str().expect("its content"))
            .expect("base 64");
        fs::write(file, png).expect("writes the picture");
    }
}

impl Drop for Window {
    fn drop(&mut self) {
        let _ = agent().delete(&self.base).call();
        let _ = self.driver.kill();
        let _ = self.driver.wait();
        // Every window of every test is watched; one that has failed already has said why.
        if let Some(watch) = self.watch.take()
            && !std::thread::panicking()
        {
            let outside = watch.outside();
            assert!(outside.is_empty(), "the program spoke to {outside:?}");
        }
    }
}

/// Asks the driver, which now and then never answers.
fn agent() -> ureq::Agent {
    ureq::Agent::config_builder()
        .http_status_as_error(false)
        .timeout_global(Some(PATIENCE))
        .build()
        .into()
}

fn post(url: &str, body: &Value) -> Result<Value, String> {
    let mut reply = agent()
        .post(url)
        .send_json(body)
        .map_err(|wrong| wrong.to_string())?;
    let status = reply.status();
    let answer: Value = reply
        .body_mut()
        .read_json()
        .map_err(|wrong| wrong.to_string())?;
    if status.is_success() {
        Ok(answer["value"].clone())
    } else {
        Err(answer.to_string())
    }
}

fn as_text(value: &Value) -> String {
    value
        .as_str()
        .map_or_else(|| value.to_string(), str::to_owned)
}

/// The built program beside the tests' own folder.
pub(crate) fn program() -> PathBuf {
    let here = std::env::current_exe().expect("the test's own path");
    let program = here
        .ancestors()
        .nth(2)
        .expect("the folder of builds")
        .join("coursewright-desktop");
    assert!(
        program.exists(),
        "build it first: cargo build --package coursewright-desktop"
    );
    program
}

/// A port nobody listens at just now.
fn free_port() -> u16 {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
    listener.local_addr().expect("its number").port()
}
