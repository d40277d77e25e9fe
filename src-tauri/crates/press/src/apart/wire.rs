//! What two processes say to each other: blocks of bytes, each with its length before it.

use std::io::{Error as Trouble, Read, Write};

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::{Error, Job, fault};

/// No block is longer: a length beyond it is noise and not a block.
const LONGEST: u64 = 1 << 32;

/// What is wanted of a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) enum Want {
    Pdf,
    /// The page of this number, from 1.
    Page(usize),
    /// All pages as sheets of paper.
    Sheets,
}

/// A job, by value.
#[derive(Debug, Serialize, Deserialize)]
pub(super) struct Request {
    pub(super) want: Want,
    main: String,
    sources: Vec<(String, String)>,
    data: Value,
    pictures: Vec<(String, String)>,
}

/// What is told of pages, beside the pages.
#[derive(Debug, Serialize, Deserialize)]
pub(super) struct Told {
    pub(super) pages: usize,
    pub(super) unprintable: Vec<char>,
}

/// Pages and what is told of them, or why there are none.
pub(super) type Answer = Result<(Told, Vec<u8>), Error>;

impl Request {
    pub(super) fn of(job: &Job<'_>, want: Want) -> Self {
        let owned = |files: &[(&str, &str)]| {
            let files = files.iter();
            files
                .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
                .collect()
        };
        Self {
            want,
            main: job.main.to_owned(),
            sources: owned(job.sources),
            data: job.data.clone(),
            pictures: owned(job.pictures),
        }
    }

    pub(super) fn with_job<T>(&self, use_it: impl FnOnce(&Job<'_>) -> T) -> T {
        let (sources, pictures) = (lent(&self.sources), lent(&self.pictures));
        use_it(&Job {
            main: &self.main,
            sources: &sources,
            data: &self.data,
            pictures: &pictures,
        })
    }

    pub(super) fn write(&self, to: &mut impl Write) -> Result<(), Trouble> {
        write_block(to, &serde_json::to_vec(self)?)?;
        to.flush()
    }

    /// The next job; none at the end.
    pub(super) fn read(from: &mut impl Read) -> Result<Option<Self>, Trouble> {
        let block = read_block(from)?;
        Ok(block.map(|it| serde_json::from_slice(&it)).transpose()?)
    }
}

fn lent(files: &[(String, String)]) -> Vec<(&str, &str)> {
    let files = files.iter();
    files
        .map(|(name, text)| (name.as_str(), text.as_str()))
        .collect()
}

pub(super) fn write_answer(to: &mut impl Write, answer: &Answer) -> Result<(), Trouble> {
    let (told, pages) = match answer {
        Ok((told, pages)) => (Ok(told), pages.as_slice()),
        Err(error) => (Err(error), [].as_slice()),
    };
    write_block(to, &serde_json::to_vec(&told)?)?;
    write_block(to, pages)?;
    to.flush()
}

/// The next answer; none at the end.
pub(super) fn read_answer(from: &mut impl Read) -> Result<Option<Answer>, Trouble> {
    let (Some(told), Some(pages)) = (read_block(from)?, read_block(from)?) else {
        return Ok(None);
    };
    let told: Result<Told, Error> =
        serde_json::from_slice(&told).unwrap_or_else(|cause| Err(fault(&cause.to_string())));
    Ok(Some(told.map(|told| (told, pages))))
}

fn write_block(to: &mut impl Write, block: &[u8]) -> Result<(), Trouble> {
    to.write_all(&(block.len() as u64).to_le_bytes())?;
    to.write_all(block)
}

fn read_block(from: &mut impl Read) -> Result<Option<Vec<u8>>, Trouble> {
    let mut length = [0; 8];
    match from.read_exact(&mut length) {
        Ok(()) => {}
        Err(end) if end.kind() == std::io::ErrorKind::UnexpectedEof => return Ok(None),
        Err(trouble) => return Err(trouble),
    }
    let length = u64::from_le_bytes(length);
    if LONGEST < length {
        return Err(std::io::ErrorKind::InvalidData.into());
    }
    // Read as it comes, so that a wrong length takes no memory before there are bytes for it.
    let mut block = Vec::new();
    let read = from.take(length).read_to_end(&mut block)?;
    Ok((read as u64 == length).then_some(block))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{Answer, Request, Told, Want, read_answer, write_answer};
    use crate::{Error, Flaw, Job};
    use serde_json::json;

    #[test]
    fn a_job_and_its_answers_arrive_as_they_were_sent() {
        let data = json!({ "title": "Wall \u{1F9F1}", "height": 1.07, "none": null });
        let job = Job {
            main: "a.typ",
            sources: &[("a.typ", "= A"), ("look.typ", "")],
            data: &data,
            pictures: &[("wall.svg", "<svg/>")],
        };
        let mut pipe = Vec::new();
        for want in [Want::Pdf, Want::Page(3), Want::Sheets] {
            Request::of(&job, want).write(&mut pipe).unwrap();
        }
        let mut from = pipe.as_slice();
        for want in [Want::Pdf, Want::Page(3), Want::Sheets] {
            let request = Request::read(&mut from).unwrap().unwrap();
            assert_eq!(request.want, want);
            request.with_job(|it| {
                assert_eq!((it.main, it.data), (job.main, job.data));
                assert_eq!((it.sources, it.pictures), (job.sources, job.pictures));
            });
        }
        assert!(Request::read(&mut from).unwrap().is_none());

        let flaw = Flaw {
            file: "a.typ".to_owned(),
            line: Some(2),
            column: None,
            what: "no".to_owned(),
            called_from: None,
            hints: vec!["yes".to_owned()],
        };
        let wrong = Error::Template(Box::new(flaw));
        let told = Told {
            pages: 2,
            unprintable: vec!['石'],
        };
        let mut pipe = Vec::new();
        write_answer(&mut pipe, &Ok((told, b"%PDF".to_vec()))).unwrap();
        write_answer(&mut pipe, &Err(wrong.clone())).unwrap();
        let mut from = pipe.as_slice();
        let mut next = || -> Option<Answer> { read_answer(&mut from).unwrap() };
        let (told, pages) = next().unwrap().unwrap();
        assert_eq!((told.pages, told.unprintable), (2, vec!['石']));
        assert_eq!(pages, b"%PDF");
        assert_eq!(next().unwrap().unwrap_err(), wrong);
        assert!(next().is_none());
    }

    #[test]
    fn noise_and_half_a_message_are_no_message() {
        for noise in [&[255; 30][..], &[9, 0, 0, 0, 0, 0, 0, 0, b'{'], &[1, 2]] {
            let read = Request::read(&mut &*noise);
            assert!(!matches!(read, Ok(Some(_))), "{noise:?}");
        }
    }
}
