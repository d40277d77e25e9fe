//! Saving so that a file is always whole: the old one or the new one, never half of either.

use crate::Error;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

/// How unfinished saves are named; a pulled plug can leave one behind.
const UNFINISHED: &str = ".coursewright-save-";

/// An unfinished save older than this belongs to no program that still runs.
const STALE: Duration = Duration::from_secs(60 * 60);

/// Writes `content` to `path`: to a new file beside it, synced to the disk, then renamed
/// over the old one. A link is followed, and the file's permissions are kept.
///
/// # Errors
/// [`Error::Write`]; the old file is whole.
pub fn save(path: &Path, content: &[u8]) -> Result<(), Error> {
    let real = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    write_beside(&real, content, |unfinished| {
        unfinished
            .persist(&real)
            .map(drop)
            .map_err(|failed| failed.error)
    })
    .map_err(|cause| Error::Write {
        path: path.to_owned(),
        cause,
    })
}

/// Writes a file that must not be there yet.
///
/// # Errors
/// [`Error::Exists`] if it is; [`Error::Write`].
pub fn save_new(path: &Path, content: &[u8]) -> Result<(), Error> {
    let written = write_beside(path, content, |unfinished| {
        unfinished
            .persist_noclobber(path)
            .map(drop)
            .map_err(|failed| failed.error)
    });
    written.map_err(|cause| match cause.kind() {
        io::ErrorKind::AlreadyExists => Error::Exists {
            path: path.to_owned(),
        },
        _ => Error::Write {
            path: path.to_owned(),
            cause,
        },
    })
}

fn write_beside(
    path: &Path,
    content: &[u8],
    put: impl FnOnce(tempfile::NamedTempFile) -> io::Result<()>,
) -> io::Result<()> {
    let folder = folder_of(path);
    let mut unfinished = tempfile::Builder::new()
        .prefix(UNFINISHED)
        .tempfile_in(&folder)?;
    unfinished.write_all(content)?;
    unfinished.as_file().set_permissions(permissions(path)?)?;
    unfinished.as_file().sync_all()?;
    put(unfinished)?;
    // The rename itself must reach the disk too; where a folder can't be synced the file is
    // still whole.
    let _ = File::open(&folder).and_then(|folder| folder.sync_all());
    Ok(())
}

fn folder_of(path: &Path) -> PathBuf {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder.to_owned(),
        _ => PathBuf::from("."),
    }
}

/// Those of the file that is replaced, or what a new file here usually gets.
fn permissions(path: &Path) -> io::Result<fs::Permissions> {
    if let Ok(old) = fs::metadata(path) {
        if old.permissions().readonly() {
            return Err(io::Error::from(io::ErrorKind::PermissionDenied));
        }
        return Ok(old.permissions());
    }
    // A temporary file is for its owner only; an ordinary one made here says what is usual.
    let usual = tempfile::Builder::new()
        .prefix(UNFINISHED)
        .make_in(folder_of(path), |path| File::create_new(path))?;
    Ok(usual.as_file().metadata()?.permissions())
}

/// Removes unfinished saves that a pulled plug left in a folder.
pub fn clear_leftovers(folder: &Path) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let ours = entry.file_name().to_string_lossy().starts_with(UNFINISHED);
        let stale = entry
            .metadata()
            .and_then(|about| about.modified())
            .is_ok_and(|then| {
                SystemTime::now()
                    .duration_since(then)
                    .is_ok_and(|age| STALE < age)
            });
        if ours && stale {
            // Someone else may have been quicker; then it is gone as well.
            let _ = fs::remove_file(entry.path());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_saved_file_replaces_the_old_one_and_leaves_nothing_behind() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        save(&path, b"first").expect("saves");
        save(&path, b"second").expect("saves again");
        assert_eq!(fs::read(&path).expect("reads"), b"second");
        assert_eq!(fs::read_dir(folder.path()).expect("lists").count(), 1);
    }

    #[test]
    fn a_new_file_never_overwrites() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        save_new(&path, b"first").expect("saves");
        assert!(matches!(
            save_new(&path, b"second"),
            Err(Error::Exists { .. })
        ));
        assert_eq!(fs::read(&path).expect("reads"), b"first");
    }

    #[test]
    fn a_link_stays_a_link() {
        let folder = tempfile::tempdir().expect("a folder");
        let (real, link) = (folder.path().join("real"), folder.path().join("link"));
        save(&real, b"first").expect("saves");
        std::os::unix::fs::symlink(&real, &link).expect("links");
        save(&link, b"second").expect("saves");
        assert!(
            fs::symlink_metadata(&link)
                .expect("looks")
                .file_type()
                .is_symlink()
        );
        assert_eq!(fs::read(&real).expect("reads"), b"second");
    }

    #[test]
    fn a_file_that_is_read_only_stays_as_it_is() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        save(&path, b"first").expect("saves");
        let mut locked = fs::metadata(&path).expect("looks").permissions();
        locked.set_readonly(true);
        fs::set_permissions(&path, locked).expect("locks");
        let refused = save(&path, b"second").expect_err("refuses");
        assert_eq!(
            refused.to_string(),
            format!(
                "{}: can't be saved: writing is not allowed there; save elsewhere. What was there before is unharmed.",
                path.display()
            )
        );
        assert_eq!(fs::read(&path).expect("reads"), b"first");
    }
}
