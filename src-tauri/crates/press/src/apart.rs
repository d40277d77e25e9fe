//! Jobs done apart: in a process of their own, which can be stopped.
//!
//! A template that somebody else wrote may run for ever, take all the memory there is or bring
//! the typesetter down. A thread can't be stopped from outside, and what it takes is taken from
//! the whole program; a process can be ended at any moment, and nothing of it is left. So such a
//! job goes to a second run of the same program, which does nothing but [`serve`] jobs. It is
//! kept for the next job, because reading the fonts and setting the first page cost most.

mod served;
mod wire;

use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::Write;
use std::path::PathBuf;
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use crate::{Error, Job, Page, Printed, Sheets};
use wire::{Answer, Request, Want};

pub use served::serve;

/// How often the second process is looked at while it works.
const LOOK_EVERY: Duration = Duration::from_millis(20);

/// What a job done apart may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// From handing it over to having its pages.
    pub time: Duration,
    /// In bytes, where the system tells how much a process has (Linux); no limit elsewhere,
    /// where time alone must do.
    pub memory: u64,
}

impl Default for Limits {
    /// Some ten times what the longest built-in document takes a slow computer for forty
    /// students: what is stopped would not have been done soon.
    fn default() -> Self {
        Self {
            time: Duration::from_secs(20),
            memory: 2 << 30,
        }
    }
}

/// A second process to which jobs are given. It is started with the first job, and ends with
/// this value or with this process, however that ends.
pub struct Apart {
    program: PathBuf,
    arguments: Vec<String>,
    limits: Limits,
    running: Mutex<Option<Running>>,
    /// The templates that had to be stopped, and why: they would have to be again, each time
    /// somebody looks at the page, until one of them is changed.
    stopped: Mutex<Vec<(u64, Error)>>,
}

/// So many stopped jobs are remembered; beyond it the oldest is tried again.
const REMEMBERED: usize = 64;

/// The process, and what it answers.
struct Running {
    child: Child,
    jobs: ChildStdin,
    answers: Receiver<Answer>,
}

/// Why there was no answer.
enum Silence {
    TooLong,
    TooLarge,
    Ended,
}

impl Apart {
    /// What is called for a second process: a program that does [`serve`] when it gets these
    /// arguments.
    pub fn new(program: PathBuf, arguments: &[&str], limits: Limits) -> Self {
        Self {
            program,
            arguments: arguments.iter().map(|it| (*it).to_owned()).collect(),
            limits,
            running: Mutex::new(None),
            stopped: Mutex::new(Vec::new()),
        }
    }

    pub(crate) fn pdf(&self, job: &Job<'_>) -> Result<Printed, Error> {
        let (told, pdf) = self.done(job, Want::Pdf)?;
        Ok(Printed {
            pdf,
            pages: told.pages,
            unprintable: told.unprintable,
        })
    }

    pub(crate) fn page(&self, job: &Job<'_>, number: usize) -> Result<Page, Error> {
        let (told, svg) = self.done(job, Want::Page(number))?;
        Ok(Page {
            svg: String::from_utf8(svg).map_err(|cause| fault(&cause.to_string()))?,
            pages: told.pages,
            ends: Vec::new(),
            pictures: None,
        })
    }

    pub(crate) fn sheets(&self, job: &Job<'_>) -> Result<Sheets, Error> {
        let (told, sheets) = self.done(job, Want::Sheets)?;
        Ok(Sheets {
            sheets: serde_json::from_slice(&sheets).map_err(|cause| fault(&cause.to_string()))?,
            unprintable: told.unprintable,
        })
    }

    /// One job at a time: whoever comes second waits, and a wait is bounded by the limits.
    fn done(&self, job: &Job<'_>, want: Want) -> Result<(wire::Told, Vec<u8>), Error> {
        let templates = fingerprint(job);
        if let Some(why) = self.stopped_before(templates) {
            return Err(why);
        }
        let request = Request::of(job, want);
        let mut running = self.running.lock().unwrap_or_else(PoisonError::into_inner);
        let mut at_work = self.handed_over(running.take(), &request)?;
        match at_work.answer(self.limits) {
            Ok(answer) => {
                *running = Some(at_work);
                answer
            }
            // The process is dropped here, and with that ended.
            Err(silence) => {
                let why = self.told(job, &silence);
                self.remember(templates, why.clone());
                Err(why)
            }
        }
    }

    fn stopped_before(&self, templates: u64) -> Option<Error> {
        let stopped = self.stopped.lock().unwrap_or_else(PoisonError::into_inner);
        let known = stopped.iter().find(|(which, _)| *which == templates);
        known.map(|(_, why)| why.clone())
    }

    fn remember(&self, templates: u64, why: Error) {
        let mut stopped = self.stopped.lock().unwrap_or_else(PoisonError::into_inner);
        if REMEMBERED <= stopped.len() {
            stopped.remove(0);
        }
        stopped.push((templates, why));
    }

    /// Gives the job to the process there is, or, if that has gone away meanwhile, to a new one.
    fn handed_over(&self, old: Option<Running>, request: &Request) -> Result<Running, Error> {
        if let Some(mut old) = old
            && request.write(&mut old.jobs).is_ok()
        {
            return Ok(old);
        }
        let mut new = self.started()?;
        request
            .write(&mut new.jobs)
            .map_err(|cause| fault(&cause.to_string()))?;
        Ok(new)
    }

    fn started(&self) -> Result<Running, Error> {
        let mut child = Command::new(&self.program)
            .args(&self.arguments)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|cause| fault(&format!("{}: {cause}", self.program.display())))?;
        let (Some(jobs), Some(mut out)) = (child.stdin.take(), child.stdout.take()) else {
            return Err(fault("a second process can't be talked to"));
        };
        let (send, answers) = channel();
        // Ends with the process, whose output then ends.
        std::thread::spawn(move || {
            while let Ok(Some(answer)) = wire::read_answer(&mut out) {
                if send.send(answer).is_err() {
                    break;
                }
            }
        });
        Ok(Running {
            child,
            jobs,
            answers,
        })
    }

    fn told(&self, job: &Job<'_>, silence: &Silence) -> Error {
        let name = job.main.to_owned();
        match silence {
            Silence::TooLong => Error::TooLong {
                name,
                seconds: self.limits.time.as_secs(),
            },
            Silence::TooLarge => Error::TooLarge {
                name,
                megabytes: self.limits.memory >> 20,
            },
            Silence::Ended => Error::BrokeDown { name },
        }
    }
}

impl Running {
    fn answer(&mut self, limits: Limits) -> Result<Answer, Silence> {
        let begun = Instant::now();
        loop {
            match self.answers.recv_timeout(LOOK_EVERY) {
                Ok(answer) => return Ok(answer),
                Err(RecvTimeoutError::Disconnected) => return Err(Silence::Ended),
                Err(RecvTimeoutError::Timeout) => {}
            }
            if limits.memory < memory_of(self.child.id()).unwrap_or(0) {
                return Err(Silence::TooLarge);
            }
            if limits.time < begun.elapsed() {
                return Err(Silence::TooLong);
            }
        }
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        // One that has ended already can't be ended again; it is waited for all the same, or
        // the system would keep it on its list.
        let _ = self.jobs.flush();
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl std::fmt::Debug for Apart {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut shown = f.debug_struct("Apart");
        shown
            .field("program", &self.program)
            .finish_non_exhaustive()
    }
}

/// Tells the templates of one job from those of another, whatever they are fed.
fn fingerprint(job: &Job<'_>) -> u64 {
    let mut hasher = DefaultHasher::new();
    job.main.hash(&mut hasher);
    job.sources.hash(&mut hasher);
    hasher.finish()
}

/// The memory a process holds, in bytes, where the system tells.
fn memory_of(process: u32) -> Option<u64> {
    /// Linux counts it in pages of this size on all but a few large machines, where a page is
    /// larger and the limit with it.
    const PAGE: u64 = 4096;
    let told = std::fs::read_to_string(format!("/proc/{process}/statm")).ok()?;
    let pages: u64 = told.split_whitespace().nth(1)?.parse().ok()?;
    Some(pages * PAGE)
}

fn fault(why: &str) -> Error {
    crate::fault(&format!("your own templates can't be tried apart: {why}"))
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;
    use serde_json::json;

    /// A program that never answers stands in for a template that is never done.
    #[test]
    fn what_was_stopped_is_not_tried_again_until_it_is_changed() {
        let limits = Limits {
            time: Duration::from_millis(400),
            memory: 1 << 32,
        };
        let apart = Apart::new("sleep".into(), &["60"], limits);
        let data = json!({});
        let took = |text: &str| {
            let job = Job {
                main: "a.typ",
                sources: &[("a.typ", text)],
                data: &data,
                pictures: &[],
            };
            let begun = Instant::now();
            let why = apart.page(&job, 1).expect_err("it is stopped");
            assert!(why.was_stopped(), "{why}");
            begun.elapsed()
        };
        assert!(limits.time <= took("one"));
        assert!(took("one") < limits.time);
        assert!(limits.time <= took("another"));
        assert!(took("one") < limits.time);
    }
}
