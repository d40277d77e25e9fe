//! The settings of the packages for the other systems, which are not built here: what they
//! name must be there and agree with the rest.

use crate::{desktop, json, read};
use checks::root;
use serde_json::Value;

/// The one file type there is.
fn file_type(settings: &Value) -> &Value {
    let types = settings["bundle"]["fileAssociations"].as_array();
    let types = types.expect("file types");
    assert_eq!(types.len(), 1);
    &types[0]
}

#[test]
fn the_version_is_that_of_all_crates() {
    let whole = read(&root().join("Cargo.toml"));
    let whole: toml_edit::DocumentMut = whole.parse().expect("the workspace");
    let version = whole["workspace"]["package"]["version"].as_str();
    let settings = json("tauri.conf.json");
    assert_eq!(settings["version"].as_str(), version);
    let changes = read(&desktop("debian/changelog"));
    let newest = changes.split(['(', ')']).nth(1);
    assert_eq!(newest, version, "the top of debian/changelog");
}

#[test]
fn every_file_that_is_named_is_there() {
    let settings = json("tauri.conf.json");
    let bundle = &settings["bundle"];
    let mut files: Vec<&str> = bundle["icon"]
        .as_array()
        .expect("icons")
        .iter()
        .filter_map(Value::as_str)
        .collect();
    for ending in [".png", ".icns", ".ico"] {
        assert!(files.iter().any(|file| file.ends_with(ending)), "{ending}");
    }
    files.push(bundle["licenseFile"].as_str().expect("a licence"));
    let installer = &bundle["windows"]["nsis"]["installerIcon"];
    files.push(installer.as_str().expect("an icon"));
    for file in files {
        assert!(desktop(file).is_file(), "{file} is not there");
    }
}

#[test]
fn the_file_type_is_the_same_on_every_system() {
    let settings = json("tauri.conf.json");
    let about = file_type(&settings);
    assert_eq!(about["ext"], serde_json::json!(["walling"]));
    assert_eq!(about["role"], "Editor");
    let mime = about["mimeType"].as_str().expect("a type");
    let entry = read(&desktop("debian/coursewright-desktop.desktop"));
    assert!(entry.contains(&format!("\nMimeType={mime};\n")), "{entry}");
    let kind = read(&desktop("debian/coursewright.xml"));
    assert!(kind.contains(&format!("type=\"{mime}\"")), "{kind}");
    assert!(kind.contains("pattern=\"*.walling\""), "{kind}");
    // Another program's text editor may open it too.
    let exported = &about["exportedType"];
    assert_eq!(
        exported["conformsTo"],
        serde_json::json!(["public.plain-text"])
    );
    let name = exported["identifier"].as_str().expect("a name");
    let own = settings["identifier"].as_str().expect("a name");
    let (ours, _) = own.rsplit_once('.').expect("a name with parts");
    assert!(name.starts_with(ours), "{name} is not under {ours}");
}

#[test]
fn no_system_is_asked_for_the_network() {
    let settings = json("tauri.conf.json");
    let bundle = &settings["bundle"];
    assert_eq!(bundle["createUpdaterArtifacts"], false);
    assert!(settings.get("plugins").is_none(), "no plugin is set up");
    assert!(
        settings["build"].get("devUrl").is_none(),
        "no page from a server"
    );
    let mac = &bundle["macOS"];
    assert!(mac.get("exceptionDomain").is_none());
    assert_eq!(mac["hardenedRuntime"], true);
    if let Some(file) = mac.get("entitlements").and_then(Value::as_str) {
        let asked = read(&desktop(file));
        assert!(!asked.contains("com.apple.security.network"), "{asked}");
    }
}

/// A version as numbers, so that 9 comes before 14.
fn numbers(version: &Value) -> Vec<u32> {
    let parts = version.as_str().unwrap_or_default().split('.');
    parts.map(|it| it.parse().expect("a number")).collect()
}

/// The pages' colours are written with `light-dark()`, which WebKit knows since Safari 17.5
/// (macOS 14.5) and the webview of Windows since version 123.
#[test]
fn systems_that_cannot_show_the_colours_are_refused() {
    let colours = read(&root().join("ui/src/look/colours.css"));
    assert!(colours.contains("light-dark("), "this check is out of date");
    let settings = json("tauri.conf.json");
    let bundle = &settings["bundle"];
    assert!(numbers(&bundle["macOS"]["minimumSystemVersion"]) >= vec![14, 5]);
    assert!(numbers(&bundle["windows"]["minimumWebview2Version"]) >= vec![123]);
}
