//! All that a template can see: the files of its job, the fonts, and nothing else.

use std::collections::{BTreeSet, HashMap};
use std::sync::{Arc, Mutex, PoisonError};

use rayon::prelude::*;
use typst::diag::{FileError, FileResult, PackageError};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, World};

use crate::inline::PutAside;
use crate::outline::outlined;
use crate::{DATA_FILE, Error, Job, Kit};

/// The files of one job. It reaches no disk, no network, no package and no clock.
pub(crate) struct JobWorld {
    kit: Arc<Kit>,
    main: FileId,
    sources: HashMap<FileId, Source>,
    pictures: Vec<FileId>,
    files: HashMap<FileId, Bytes>,
    /// The files that were asked for so far.
    asked_for: Mutex<BTreeSet<&'static str>>,
}

impl JobWorld {
    /// Lays out the files of a job: its templates as they are, `data` and `pictures` as cleaned.
    pub(crate) fn new(
        kit: Arc<Kit>,
        job: &Job<'_>,
        data: Vec<u8>,
        pictures: Vec<(&str, String)>,
    ) -> Result<Self, Error> {
        let mut sources = HashMap::new();
        for (name, text) in job.sources {
            // A byte order mark is left by some editors and would be printed as text.
            let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
            let id = file_id(name)?;
            let parse = || Source::new(id, text.to_owned());
            let source = kit.parsed.of(id, text, parse);
            if sources.insert(id, source).is_some() {
                return Err(same_name(name));
            }
        }
        let mut files = HashMap::from([(file_id(DATA_FILE)?, Bytes::new(data))]);
        let mut drawn = Vec::new();
        for (name, svg) in pictures {
            let id = file_id(name)?;
            if files.insert(id, Bytes::from_string(svg)).is_some() {
                return Err(same_name(name));
            }
            drawn.push(id);
        }
        if let Some(id) = sources.keys().find(|id| files.contains_key(id)) {
            return Err(same_name(name(*id)));
        }
        let main = file_id(job.main)?;
        if !sources.contains_key(&main) {
            return Err(Error::NoTemplate {
                name: job.main.to_owned(),
            });
        }
        Ok(Self {
            kit,
            main,
            sources,
            pictures: drawn,
            files,
            asked_for: Mutex::default(),
        })
    }

    /// The same, with a stand-in for each picture that can be put into the finished page.
    pub(crate) fn put_aside(mut self) -> (Self, Vec<PutAside>) {
        let mut all = Vec::new();
        for (number, id) in self.pictures.iter().enumerate() {
            let Some(file) = self.files.get_mut(id) else {
                continue;
            };
            let picture = file.as_str().ok();
            if let Some(put_aside) = picture.and_then(|it| PutAside::of(number, it)) {
                *file = Bytes::from_string(put_aside.stand_in.clone());
                all.push(put_aside);
            }
        }
        (self, all)
    }

    /// The same, with the words in its pictures drawn as outlines.
    pub(crate) fn outlined(mut self) -> Self {
        let drawn: Vec<(FileId, Bytes)> = self
            .pictures
            .par_iter()
            .filter_map(|id| {
                let svg = self.files.get(id)?;
                let draw = || outlined(&self, *id, svg).map(Bytes::from_string);
                let drawn = self.kit.outlined.of(*id, svg.as_str().ok()?, draw)?;
                Some((*id, drawn))
            })
            .collect();
        self.files.extend(drawn);
        self
    }

    /// The pictures that a template has asked for, or the typesetter to see whether they are the same.
    pub(crate) fn pictures_asked_for(&self) -> BTreeSet<String> {
        let asked = self.asked_for.lock();
        let asked = asked.unwrap_or_else(PoisonError::into_inner);
        let names = self.pictures.iter().map(|id| name(*id));
        names
            .filter(|it| asked.contains(it))
            .map(str::to_owned)
            .collect()
    }

    /// The text of a file of this job.
    pub(crate) fn text(&self, id: FileId) -> Option<&str> {
        match self.sources.get(&id) {
            Some(source) => Some(source.text()),
            None => self.files.get(&id)?.as_str().ok(),
        }
    }

    fn refuse<'a>(&self, id: FileId, known: impl Iterator<Item = &'a FileId>) -> FileError {
        if matches!(id.get().root(), VirtualRoot::Package(_)) {
            let why = "a page template can use no packages, only its own files";
            return FileError::Package(PackageError::Other(Some(why.into())));
        }
        let mut names: Vec<&str> = known.map(|id| name(*id)).collect();
        names.sort_unstable();
        let why = format!(
            "{} is not one of the files it may use here: {}",
            name(id),
            names.join(", ")
        );
        FileError::Other(Some(why.into()))
    }
}

impl World for JobWorld {
    fn library(&self) -> &LazyHash<Library> {
        &self.kit.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        self.kit.fonts.book()
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let source = self.sources.get(&id).cloned();
        source.ok_or_else(|| self.refuse(id, self.sources.keys()))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let asked = self.asked_for.lock();
        asked
            .unwrap_or_else(PoisonError::into_inner)
            .insert(name(id));
        let file = self.files.get(&id).cloned();
        file.ok_or_else(|| self.refuse(id, self.files.keys()))
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.kit.fonts.face(index)
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// The name a file of a job goes by.
pub(crate) fn name(id: FileId) -> &'static str {
    id.get().vpath().get_without_slash()
}

fn file_id(name: &str) -> Result<FileId, Error> {
    let bad = || Error::BadName {
        name: name.to_owned(),
    };
    let path = VirtualPath::new(name).map_err(|_| bad())?;
    if path.is_root() {
        return Err(bad());
    }
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

fn same_name(name: &str) -> Error {
    Error::SameName {
        name: name.to_owned(),
    }
}
