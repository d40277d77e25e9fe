//! Looks after the open course from time to time: has its file changed, does another window ask
//! for it?

use crate::Shared;
use crate::outside::{self, Watch};
use std::sync::mpsc::{Receiver, RecvTimeoutError};
use std::thread;
use std::time::Duration;
use tauri::{AppHandle, Manager, UserAttentionType};

/// Between two looks. Whoever starts the program a second time on a file waits for one.
const TURN: Duration = Duration::from_millis(300);

/// Looks until the program ends. Who is `poked` looks at once, and thoroughly.
pub(crate) fn watch(app: AppHandle, poked: Receiver<()>) {
    thread::spawn(move || {
        let mut watch = Watch::default();
        loop {
            let thoroughly = match poked.recv_timeout(TURN) {
                Ok(()) => true,
                Err(RecvTimeoutError::Timeout) => false,
                Err(RecvTimeoutError::Disconnected) => return,
            };
            let shared = app.state::<Shared>();
            if shared.keeping.turn() {
                bring_forward(&app);
            }
            look(&shared, &mut watch, thoroughly);
        }
    });
}

/// Looks at the file of the open course. The desk is free meanwhile: a network drive may be slow.
fn look(shared: &Shared, watch: &mut Watch, thoroughly: bool) {
    let path = shared.desk().path().map(ToOwned::to_owned);
    let Some(path) = path else {
        return;
    };
    let Some(mut found) = watch.look(&path, thoroughly) else {
        return;
    };
    let mut desk = shared.desk();
    if desk.path() != Some(&path) {
        return;
    }
    // The desk may have saved in between, so news is looked at once more while it can't.
    if !desk.knows(&found) {
        found = outside::look(&path).unwrap_or(found);
    }
    desk.noticed(found);
}

fn bring_forward(app: &AppHandle) {
    let Some(window) = app.get_webview_window("main") else {
        return;
    };
    // Each is a wish; where the system grants none, the window asks to be seen.
    let _ = window.unminimize();
    let _ = window.show();
    let _ = window.set_focus();
    let _ = window.request_user_attention(Some(UserAttentionType::Informational));
}
