//! Threads beside the desk, for what takes long: each does one thing after another.
//!
//! A page needs tens of megabytes while it is set, and what a thread has needed once the system keeps
//! for it. So pages are not set on whatever thread is free.

use std::sync::LazyLock;
use std::sync::mpsc::{Sender, channel};
use std::thread;
use tokio::sync::oneshot;

type Work = Box<dyn FnOnce() + Send>;

/// Sets the pages that are looked at.
pub(crate) static LOOKED_AT: LazyLock<Aside> = LazyLock::new(|| Aside::new("looked-at"));
/// Sets the pages that are printed, so that meanwhile others can be looked at.
pub(crate) static PRINTED: LazyLock<Aside> = LazyLock::new(|| Aside::new("printed"));

/// A thread, by what it is to do.
pub(crate) struct Aside(Option<Sender<Work>>);

impl Aside {
    fn new(name: &str) -> Self {
        let (ask, asked) = channel::<Work>();
        let started = thread::Builder::new()
            .name(name.to_owned())
            .spawn(move || asked.into_iter().for_each(|work| work()));
        Self(started.is_ok().then_some(ask))
    }

    /// Does this after what was asked before.
    pub(crate) fn begin<T: Send + 'static>(
        &self,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Waiting<T> {
        let (tell, told) = oneshot::channel();
        let work = move || {
            // Work that breaks down ends itself, not the thread, and whoever asked is told.
            let done = std::panic::catch_unwind(std::panic::AssertUnwindSafe(work));
            if let Ok(done) = done {
                // Nobody may be waiting any more.
                let _ = tell.send(done);
            }
        };
        if let Some(ask) = &self.0 {
            // Where there is no thread the work is dropped, and who waits is told nothing.
            let _ = ask.send(Box::new(work));
        }
        Waiting(told)
    }
}

/// Work that was asked for.
pub(crate) struct Waiting<T>(oneshot::Receiver<T>);

impl<T> Waiting<T> {
    /// What it came to, as soon as it is done; nothing if it broke down on the way.
    pub(crate) async fn done(self) -> Option<T> {
        self.0.await.ok()
    }

    /// It has not come to anything yet.
    pub(crate) fn is_at_work(&self) -> bool {
        self.0.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_breaks_down_is_told_and_what_comes_after_is_done_on_the_same_thread() {
        let aside = Aside::new("tried");
        let name = || thread::current().name().map(ToOwned::to_owned);
        let runtime = tokio::runtime::Builder::new_current_thread().build();
        let runtime = runtime.expect("a runtime");
        assert_eq!(
            runtime.block_on(aside.begin(|| -> u8 { panic!("broken") }).done()),
            None
        );
        let done = runtime.block_on(aside.begin(move || (name(), 7)).done());
        assert_eq!(done, Some((Some("tried".to_owned()), 7)));
    }
}
