//! A window that shows nothing: what the system itself takes, for `cargo xtask bench` to measure
//! beside the program.

use tauri::{Url, WebviewUrl, WebviewWindowBuilder};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    tauri::Builder::default()
        .setup(|app| {
            let nothing = WebviewUrl::External(Url::parse("about:blank")?);
            WebviewWindowBuilder::new(app, "main", nothing)
                .title("Nothing")
                .inner_size(1280.0, 800.0)
                .build()?;
            Ok(())
        })
        .run(tauri::generate_context!())?;
    Ok(())
}
