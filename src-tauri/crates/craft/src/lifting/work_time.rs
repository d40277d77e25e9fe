//! How long a day's lifting counts as: short, moderate or long, by work and rest.

use std::time::Duration;

/// How long the lifting goes on, which is a column of the frequency table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum WorkTime {
    /// Up to 1 hour, then as much rest or light work.
    Short,
    /// Up to 2 hours, then three tenths of it in rest or light work.
    Moderate,
    /// Up to 8 hours, with the usual breaks.
    Long,
}

/// Lifting without a stop, and what follows it before the next lifting.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Session {
    /// Lifting.
    pub work: Duration,
    /// Rest or light work after it: explaining, sorting by eye, small hearting.
    pub rest: Duration,
}

const HOUR: Duration = Duration::from_secs(60 * 60);

/// Most hours of lifting that the equation knows of.
const MOST_HOURS: u32 = 8;

/// Rest that keeps a session short, for each unit of work. The manual of 1994 said 1.2
/// (from memory); the revision of 2021 says 1.0.
const REST_SHORT: f64 = 1.0;

/// Rest that keeps a session moderate, for each unit of work.
const REST_MODERATE: f64 = 0.3;

impl WorkTime {
    /// How long a day's sessions count as: the longest any of them counts as.
    ///
    /// A session of up to 1 hour is short if the rest after it is at least 1.0 times the
    /// work, one of up to 2 hours moderate if the rest is at least 0.3 times the work.
    /// Where the rest is less, it is left out of account and the session goes on with the
    /// next one. After the last session nothing more is lifted, so its rest is not asked
    /// for. `None` if a session comes to more than 8 hours, of which the equation knows
    /// nothing; no sessions are short.
    ///
    /// Source: NIOSH 94-110, section 1.3.5.2, pp. 13 and 14.
    pub fn of(day: &[Session]) -> Option<Self> {
        let mut longest = Self::Short;
        let mut so_far = Duration::ZERO;
        for (place, session) in day.iter().enumerate() {
            so_far = so_far.saturating_add(session.work);
            longest = longest.max(Self::of_work(so_far)?);
            let last = place + 1 == day.len();
            if last || rested(so_far, session.rest) {
                so_far = Duration::ZERO;
            }
        }
        Some(longest)
    }

    fn of_work(work: Duration) -> Option<Self> {
        if work <= HOUR {
            Some(Self::Short)
        } else if work <= HOUR * 2 {
            Some(Self::Moderate)
        } else if work <= HOUR * MOST_HOURS {
            Some(Self::Long)
        } else {
            None
        }
    }
}

/// Whether the rest is enough for the next session to begin anew. The manual names no rest
/// that would do after more than 2 hours, so none does.
fn rested(work: Duration, rest: Duration) -> bool {
    let share = if work <= HOUR {
        REST_SHORT
    } else if work <= HOUR * 2 {
        REST_MODERATE
    } else {
        return false;
    };
    // Seconds of a day are held exactly; the hair keeps 0.3 of them from just missing.
    work.as_secs_f64() * share <= rest.as_secs_f64() + 1e-6
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(minutes: &[(u64, u64)]) -> Option<WorkTime> {
        let of = |minutes: u64| Duration::from_secs(minutes * 60);
        let sessions: Vec<Session> = minutes
            .iter()
            .map(|&(work, rest)| Session {
                work: of(work),
                rest: of(rest),
            })
            .collect();
        WorkTime::of(&sessions)
    }

    /// NIOSH 94-110, p. 14: 30 min of lifting, 10 of light work, 45 of lifting come to 75 and
    /// are moderate; with 30 min between them they stay short; 2 hours need 36 min of
    /// rest to stay moderate. The others by hand from the same rules.
    #[test]
    fn rest_that_is_too_short_joins_the_sessions() {
        for (sessions, due) in [
            (&[(30, 10), (45, 0)][..], Some(WorkTime::Moderate)),
            (&[(30, 30), (45, 0)], Some(WorkTime::Short)),
            (&[(30, 29), (45, 0)], Some(WorkTime::Moderate)),
            (&[(120, 36), (30, 0)], Some(WorkTime::Moderate)),
            (&[(120, 35), (30, 0)], Some(WorkTime::Long)),
            (&[(60, 0)], Some(WorkTime::Short)),
            (&[(61, 0)], Some(WorkTime::Moderate)),
            (&[(120, 0)], Some(WorkTime::Moderate)),
            (&[(121, 0)], Some(WorkTime::Long)),
            (&[(50, 15), (50, 15), (50, 15)], Some(WorkTime::Long)),
            (&[(480, 0)], Some(WorkTime::Long)),
            (&[(481, 0)], None),
            (&[(250, 200), (250, 0)], None),
            (&[(60, 60), (60, 60), (60, 0)], Some(WorkTime::Short)),
            (&[], Some(WorkTime::Short)),
        ] {
            assert_eq!(day(sessions), due, "{sessions:?}");
        }
    }
}
