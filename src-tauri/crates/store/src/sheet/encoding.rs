//! From a file's bytes to its text: UTF-8, or told what it is instead and where.

use super::csv;
use super::faults::{Fault, Faults};
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// The most bytes that are read of any file.
const MOST_BYTES: u64 = 16_000_000;

/// What old and password-protected workbooks begin with (compound file, [MS-CFB] 2.2).
pub(super) const COMPOUND: [u8; 8] = [0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1];
/// What workbooks begin with (a ZIP's local file header).
pub(super) const ZIP: [u8; 4] = *b"PK\x03\x04";

const SAVE_AS_UTF8: &str = "Save it as \"CSV UTF-8\" and import that.";

/// The whole file, if it is one and not too large.
pub(super) fn load(path: &Path) -> Result<Vec<u8>, Fault> {
    let unread = |cause: std::io::Error| {
        let what = match cause.kind() {
            std::io::ErrorKind::NotFound => "there is no such file".to_owned(),
            std::io::ErrorKind::PermissionDenied => "reading it is not allowed".to_owned(),
            _ => format!("it can't be read: {cause}"),
        };
        Fault::new("can-not-read", what, "Look at its name and place.")
    };
    let about = std::fs::metadata(path).map_err(unread)?;
    if !about.is_file() {
        let what = "this is not a file";
        return Err(Fault::new(
            "can-not-read",
            what,
            "Choose a file, not a folder.",
        ));
    }
    let mut bytes = Vec::new();
    let mut file = File::open(path).map_err(unread)?.take(MOST_BYTES + 1);
    file.read_to_end(&mut bytes).map_err(unread)?;
    if MOST_BYTES < bytes.len() as u64 {
        let what = format!(
            "the file is larger than the {} MB a kit list may have",
            MOST_BYTES / 1_000_000
        );
        let cure = "Leave in what is kit, or import it in several files.";
        return Err(Fault::new("too-large", what, cure));
    }
    Ok(bytes)
}

/// The text of a CSV file, without a byte order mark and with plain line ends.
pub(super) fn text(bytes: &[u8]) -> Result<String, Faults> {
    if let Some(fault) = something_else(bytes) {
        return Err(fault.into());
    }
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) => Ok(plain(text)),
        Err(cause) => {
            let before = bytes.get(..cause.valid_up_to()).unwrap_or_default();
            let before = plain(&String::from_utf8_lossy(before));
            let byte = bytes.get(cause.valid_up_to()).copied().unwrap_or_default();
            let what = format!("here the file is not in UTF-8 (byte {byte:02X})");
            let (row, column) = csv::end(&before);
            let fault = Fault::new("not-utf-8", what, SAVE_AS_UTF8);
            Err(fault.in_row(row).in_column(column).into())
        }
    }
}

fn plain(text: &str) -> String {
    text.replace("\r\n", "\n").replace('\r', "\n")
}

fn something_else(bytes: &[u8]) -> Option<Fault> {
    if bytes.starts_with(&ZIP) || bytes.starts_with(&COMPOUND) {
        let what = "this is a workbook under the name of a CSV file";
        let cure = "Open it in a spreadsheet program and save it as .xlsx or as \"CSV UTF-8\".";
        return Some(Fault::new("not-csv", what, cure));
    }
    // Without a byte order mark, an ASCII letter and a zero give UTF-16 away.
    let wide = matches!(bytes, [0xFF, 0xFE, ..] | [0xFE, 0xFF, ..])
        || matches!(bytes, [0, letter, ..] | [letter, 0, ..] if *letter != 0);
    wide.then(|| {
        let what = "this file is in UTF-16 (some programs call it \"Unicode text\")";
        Fault::new("utf-16", what, SAVE_AS_UTF8)
    })
}
