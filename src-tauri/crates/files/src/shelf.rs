//! The shelf of the library: each file from the instructor's own folder, else the built-in copy.

use crate::{Error, Fault};
use include_dir::{Dir, include_dir};
use std::path::{Path, PathBuf};

static BUILT_IN: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../../../lessons");

/// The text of a built-in file; nothing if there is none.
pub(crate) fn built_in(path: &str) -> Option<&'static str> {
    BUILT_IN
        .get_file(path)
        .and_then(|file| file.contents_utf8())
}

/// The names and texts of the built-in files of a folder.
pub(crate) fn built_in_files(
    folder: &str,
) -> impl Iterator<Item = (&'static str, &'static str)> + use<> {
    let files = BUILT_IN.get_dir(folder).map(|folder| folder.files());
    files.into_iter().flatten().filter_map(|file| {
        let name = file.path().file_name()?.to_str()?;
        Some((name, file.contents_utf8()?))
    })
}

/// What is right where nothing better is known.
pub(crate) const MEND: &str = "mend it, or remove your own copy so that the built-in one is used";

/// Where files of the library are looked for.
pub(crate) struct Shelf {
    /// The instructor's own, looked at first.
    pub(crate) own: Option<PathBuf>,
}

/// One file of the library.
pub(crate) struct Text {
    /// Its path as a person would name it.
    shown: String,
    /// Its file name.
    pub(crate) name: String,
    /// What it says.
    pub(crate) text: String,
    /// It is the instructor's own.
    pub(crate) own: bool,
}

impl Shelf {
    /// A table, from the instructor's own file or the built-in one.
    pub(crate) fn table<T: serde::de::DeserializeOwned>(&self, path: &str) -> Result<T, Error> {
        self.text(path)?.toml()
    }

    /// A file of the instructor's own, if there is one.
    pub(crate) fn own(&self, path: &str) -> Result<Option<Text>, Error> {
        let file = self.own.as_ref().map(|own| own.join(path));
        file.filter(|file| file.is_file())
            .map(|file| Text::read(&file, name_of(path)))
            .transpose()
    }

    /// A file of the instructor's own, else the built-in one.
    pub(crate) fn text(&self, path: &str) -> Result<Text, Error> {
        if let Some(text) = self.own(path)? {
            return Ok(text);
        }
        Text::built_in(path).ok_or_else(|| Error::Read {
            path: path.into(),
            cause: std::io::ErrorKind::NotFound.into(),
        })
    }

    /// The files of a folder by name: the built-in ones, the instructor's own over and beside
    /// them. Where one of theirs can't be read the built-in one counts, and what is wrong is told.
    pub(crate) fn folder_or_built_in(
        &self,
        folder: &str,
        ending: &str,
    ) -> (Vec<Text>, Vec<String>) {
        let (mut texts, mut wrong) = (Vec::new(), Vec::new());
        for path in self.paths(folder, ending) {
            match self.text(&path) {
                Ok(text) => texts.push(text),
                Err(error) => {
                    wrong.push(error.to_string());
                    texts.extend(Text::built_in(&path));
                }
            }
        }
        (texts, wrong)
    }

    /// The paths of the files of a folder.
    pub(crate) fn paths(&self, folder: &str, ending: &str) -> Vec<String> {
        let mut names: Vec<String> = BUILT_IN
            .get_dir(folder)
            .into_iter()
            .flat_map(|folder| folder.files())
            .filter_map(|file| Some(file.path().file_name()?.to_str()?.to_owned()))
            .collect();
        if let Some(own) = &self.own
            && let Ok(entries) = std::fs::read_dir(own.join(folder))
        {
            names.extend(
                entries
                    .flatten()
                    .filter_map(|entry| entry.file_name().into_string().ok()),
            );
        }
        names.retain(|name| Path::new(name).extension().is_some_and(|it| it == ending));
        names.sort();
        names.dedup();
        let paths = names.iter().map(|name| format!("{folder}/{name}"));
        paths.collect()
    }

    /// Whether a path is one of the instructor's own files.
    pub(crate) fn is_own(&self, path: &str) -> bool {
        let own = self.own.as_ref();
        own.is_some_and(|own| own.join(path).is_file())
    }
}

/// A text as a Unix editor saves it.
pub(crate) fn plain_lines(text: &str) -> String {
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    text.replace("\r\n", "\n")
}

fn name_of(path: &str) -> String {
    path.rsplit('/').next().unwrap_or(path).to_owned()
}

impl Text {
    /// What a file says, or will say.
    pub(crate) fn of(file: &Path, text: String) -> Self {
        Self {
            shown: file.display().to_string(),
            name: name_of(&file.display().to_string()),
            text,
            own: true,
        }
    }

    /// A built-in file, if there is one.
    pub(crate) fn built_in(path: &str) -> Option<Self> {
        Some(Self {
            shown: format!("lessons/{path}"),
            name: name_of(path),
            text: built_in(path)?.to_owned(),
            own: false,
        })
    }

    /// Its path as a person would name it.
    pub(crate) fn shown(&self) -> &str {
        &self.shown
    }

    /// The same as a Unix editor saves it: without a byte order mark, lines ended by a line
    /// feed. Lines keep their numbers.
    pub(crate) fn with_plain_lines(mut self) -> Self {
        self.text = plain_lines(&self.text);
        self
    }

    pub(crate) fn read(file: &Path, name: String) -> Result<Self, Error> {
        let text = std::fs::read_to_string(file).map_err(|cause| Error::Read {
            path: file.to_owned(),
            cause,
        })?;
        Ok(Self {
            shown: file.display().to_string(),
            name,
            text,
            own: true,
        })
    }

    pub(crate) fn toml<T: serde::de::DeserializeOwned>(&self) -> Result<T, Error> {
        self.toml_part(&self.text, 0)
    }

    pub(crate) fn toml_part<T: serde::de::DeserializeOwned>(
        &self,
        part: &str,
        from: usize,
    ) -> Result<T, Error> {
        toml_edit::de::from_str(part).map_err(|error| {
            let at = from + error.span().map_or(0, |span| span.start);
            self.fault("broken-table", at, error.message())
        })
    }

    /// A fault of this text, in its file.
    pub(crate) fn refuse(&self, fault: Fault) -> Error {
        fault.in_file(&self.shown, &self.text).into()
    }

    pub(crate) fn fault(&self, code: &'static str, at: usize, what: &str) -> Error {
        self.refuse(Fault {
            code,
            key: String::new(),
            at,
            what: what.trim().replace('\n', ", "),
            cure: MEND.to_owned(),
        })
    }
}
