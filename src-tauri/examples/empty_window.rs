//! A window with an empty page: what the system itself takes, for `cargo xtask bench` to measure
//! beside the program. The page comes the way the program's does, or its process is not started.

use tauri::http::{Response, header::CONTENT_TYPE};
use tauri::{Url, WebviewUrl, WebviewWindowBuilder};

const EMPTY: &[u8] = b"<!doctype html><html lang=en><title>Nothing</title></html>";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    tauri::Builder::default()
        .register_uri_scheme_protocol("empty", |_, _| {
            let page = Response::builder().header(CONTENT_TYPE, "text/html");
            page.body(EMPTY).unwrap_or_default()
        })
        .setup(|app| {
            let empty = WebviewUrl::CustomProtocol(Url::parse("empty://localhost")?);
            WebviewWindowBuilder::new(app, "main", empty)
                .title("Nothing")
                .inner_size(1280.0, 800.0)
                .build()?;
            Ok(())
        })
        .run(tauri::generate_context!())?;
    Ok(())
}
