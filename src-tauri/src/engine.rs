//! What is asked of the page's engine where there is such a choice.
//!
//! It paints by the processor: the page stands still between changes, and only what has changed is
//! painted anew; a graphics pipeline would compose the whole window for each key, and on machines
//! without a graphics card in software at that. And it keeps nothing of what was shown: the pages
//! lie in the program, nothing is fetched, and nobody goes back to a page before.

use tauri::WebviewWindow;

/// Sets the engine of a window up.
pub(crate) fn set_up(window: &WebviewWindow) -> tauri::Result<()> {
    window.with_webview(|webview| {
        #[cfg(target_os = "linux")]
        {
            use webkit2gtk::{CacheModel, HardwareAccelerationPolicy};
            use webkit2gtk::{SettingsExt, WebContextExt, WebViewExt};
            let page = webview.inner();
            if let Some(settings) = page.settings() {
                settings.set_hardware_acceleration_policy(HardwareAccelerationPolicy::Never);
            }
            if let Some(context) = page.context() {
                context.set_cache_model(CacheModel::DocumentViewer);
            }
        }
        #[cfg(not(target_os = "linux"))]
        drop(webview);
    })
}
