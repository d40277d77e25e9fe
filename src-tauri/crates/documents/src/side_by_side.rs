//! Work on several things side by side, taken in their order.

use std::collections::BTreeMap;
use std::num::NonZeroUsize;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc::channel;
use std::thread::{available_parallelism, scope};

/// Does `work` on each thing, as many at a time as there are processors, and gives what came of
/// each to `take` in the order of the things, on the thread of the caller. Where `take` says no,
/// nothing more is begun and nothing more is taken.
///
/// The threads are its own: on those among which everything else shares out its work, a key
/// press would wait for a whole document.
pub(crate) fn side_by_side<T: Sync, R: Send>(
    things: &[T],
    work: impl Fn(&T) -> R + Sync,
    mut take: impl FnMut(&T, R) -> bool,
) {
    let threads = available_parallelism().map_or(1, NonZeroUsize::get);
    let next = AtomicUsize::new(0);
    let (send, done) = channel();
    scope(|scope| {
        for _ in 0..threads.min(things.len()) {
            let (send, next, work) = (send.clone(), &next, &work);
            scope.spawn(move || {
                loop {
                    let at = next.fetch_add(1, Ordering::Relaxed);
                    let Some(thing) = things.get(at) else { break };
                    // Nobody listens any more where `take` has said no.
                    if send.send((at, work(thing))).is_err() {
                        break;
                    }
                }
            });
        }
        drop(send);
        let mut early = BTreeMap::new();
        let mut wanted = things.iter().enumerate();
        let mut waits_for = wanted.next();
        for (at, made) in done {
            early.insert(at, made);
            while let Some((at, thing)) = waits_for
                && let Some(made) = early.remove(&at)
            {
                if !take(thing, made) {
                    return;
                }
                waits_for = wanted.next();
            }
        }
    });
}

#[cfg(test)]
mod tests {
    use super::side_by_side;
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::thread::sleep;
    use std::time::Duration;

    #[test]
    fn what_is_done_early_waits_for_its_turn() {
        let things: Vec<u64> = (0..12).rev().collect();
        let slow_first = |it: &u64| {
            sleep(Duration::from_millis(*it));
            it * 2
        };
        let mut taken = Vec::new();
        side_by_side(&things, slow_first, |thing, made| {
            assert_eq!(made, thing * 2);
            taken.push(*thing);
            true
        });
        assert_eq!(taken, things);
    }

    #[test]
    fn nothing_is_taken_after_a_no_and_little_is_begun() {
        let things: Vec<usize> = (0..1000).collect();
        let begun = AtomicUsize::new(0);
        let slow = |it: &usize| {
            begun.fetch_add(1, Ordering::Relaxed);
            sleep(Duration::from_millis(1));
            *it
        };
        let mut taken = Vec::new();
        side_by_side(&things, slow, |_, made| {
            taken.push(made);
            made < 3
        });
        assert_eq!(taken, [0, 1, 2, 3]);
        assert!(begun.into_inner() < things.len());
    }

    #[test]
    fn nothing_to_do_is_soon_done() {
        let nothing: [u8; 0] = [];
        side_by_side(&nothing, |it| *it, |_, _| panic!("of what?"));
    }
}
