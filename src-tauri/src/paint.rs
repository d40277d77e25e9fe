//! How the page is painted: by the processor. It stands still between changes, and only what has
//! changed is painted anew; a graphics pipeline would compose the whole window for each key, and
//! on machines without a graphics card in software at that.

use tauri::WebviewWindow;

/// Asks the page's engine for it; where there is no such choice nothing is asked.
pub(crate) fn on_the_processor(window: &WebviewWindow) -> tauri::Result<()> {
    window.with_webview(|webview| {
        #[cfg(target_os = "linux")]
        {
            use webkit2gtk::{HardwareAccelerationPolicy, SettingsExt, WebViewExt};
            if let Some(settings) = webview.inner().settings() {
                settings.set_hardware_acceleration_policy(HardwareAccelerationPolicy::Never);
            }
        }
        #[cfg(not(target_os = "linux"))]
        drop(webview);
    })
}
