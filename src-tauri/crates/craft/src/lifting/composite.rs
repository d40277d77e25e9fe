//! Several lifting tasks in one job: the composite lifting index of NIOSH.

use super::{Band, Lift, PerMinute, System, WorkTime, index};
use crate::quantity::Mass;

/// One of the lifting tasks that make up a job.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Task {
    /// What is lifted, on average.
    pub average: Mass,
    /// The most that is lifted.
    pub most: Mass,
    /// FIRWL: the limit if it were lifted but seldom.
    pub seldom_limit: Mass,
    /// How often.
    pub rate: PerMinute,
    /// Where the hands are at the origin.
    pub origin: Band,
}

/// What the equation says of one task, taken alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Single {
    /// STRWL = FIRWL · FM, its limit.
    pub limit: Mass,
    /// FILI = greatest load / FIRWL: how hard one lift is.
    pub seldom_index: f64,
    /// STLI = average load / STRWL: how hard the task is.
    pub index: f64,
}

/// What the equation says of a job of several tasks.
#[derive(Debug, Clone, PartialEq)]
pub struct Composite {
    /// CLI, the composite lifting index, read as the lifting index is.
    pub index: f64,
    /// The tasks taken alone, in the order they were given.
    pub tasks: Vec<Single>,
}

impl Task {
    /// The task of lifting loads so heavy in this way.
    pub fn of(lift: &Lift, average: Mass, most: Mass, system: System) -> Self {
        Self {
            average,
            most,
            seldom_limit: lift.seldom_limit(system),
            rate: lift.rate,
            origin: Band::of(lift.from.height, system),
        }
    }

    fn alone(&self, work: WorkTime) -> Option<Single> {
        let limit = self.seldom_limit * self.rate.multiplier(work, self.origin);
        Some(Single {
            limit,
            seldom_index: index(self.most, self.seldom_limit)?,
            index: index(self.average, limit)?,
        })
    }
}

impl Composite {
    /// The composite index of a job that goes on so long.
    ///
    /// With the tasks numbered from the greatest STLI down (of two alike the more frequent
    /// first),
    /// `CLI = STLI1 + FILI2 (1/FM1,2 - 1/FM1) + FILI3 (1/FM1,2,3 - 1/FM1,2) + ...`,
    /// where `FM1,2` is read at the sum of the rates of tasks 1 and 2. The manual leaves open
    /// whose height counts for these sums; here it is the lowest origin among the tasks,
    /// whose column is never the higher one.
    ///
    /// `None` if there is no task, or the equation allows one of them, or all together at
    /// their joint rate, no load at all.
    ///
    /// Source: NIOSH 94-110, section 2.4, pp. 26 to 28, ties p. 57.
    pub fn of(tasks: &[Task], work: WorkTime) -> Option<Self> {
        let alone: Vec<Single> = tasks
            .iter()
            .map(|task| task.alone(work))
            .collect::<Option<_>>()?;
        let mut order: Vec<(&Task, &Single)> = tasks.iter().zip(&alone).collect();
        // Indices that differ by rounding alone are alike.
        let mark = |single: &Single| (single.index * 1e9).round();
        order.sort_by(|(task, single), (other, others)| {
            let by_index = mark(others).total_cmp(&mark(single));
            by_index.then(other.rate.0.total_cmp(&task.rate.0))
        });
        let lowest = tasks.iter().map(|task| task.origin).min()?;
        let slower = |rate: f64| {
            let multiplier = PerMinute(rate).multiplier(work, lowest);
            (0.0 < multiplier).then(|| 1.0 / multiplier)
        };
        let mut sum = 0.0;
        let mut before = None;
        let mut rate = 0.0;
        for (task, single) in order {
            rate += task.rate.0.max(0.0);
            let now = slower(rate)?;
            sum += match before {
                None => single.index,
                Some(before) => single.seldom_index * (now - before),
            };
            before = Some(now);
        }
        Some(Self {
            index: sum,
            tasks: alone,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{POUND_KG, Read, kilograms};

    fn pounds(value: f64) -> Mass {
        kilograms(value * POUND_KG)
    }

    fn task(load: f64, seldom_limit: f64, rate: f64) -> Task {
        Task {
            average: pounds(load),
            most: pounds(load),
            seldom_limit: pounds(seldom_limit),
            rate: PerMinute(rate),
            origin: Band::Below,
        }
    }

    /// The worked job of NIOSH 94-110, section 2.4.5, p. 28: loads of 30, 20 and 10 lb, FIRWL
    /// 20, 20 and 15 lb, 1, 2 and 4 to the minute, up to an hour. The inputs are from memory,
    /// and so are the steps `1.6 + 1.0 (1/.88 - 1/.94) + .67 (1/.70 - 1/.88)` and the
    /// result 1.9; they fit each other.
    #[test]
    fn the_worked_job_of_the_manual() {
        // Given out of order, for the order is part of the method.
        let tasks = [
            task(10.0, 15.0, 4.0),
            task(30.0, 20.0, 1.0),
            task(20.0, 20.0, 2.0),
        ];
        let job = Composite::of(&tasks, WorkTime::Short).expect("a job");
        let one_decimal = |value: f64| (value * 10.0).round() / 10.0;
        let near = |ours: f64, theirs: f64| assert!((ours - theirs).abs() < 1e-9, "{ours}");
        for (single, limit, seldom, index) in [
            (job.tasks[0], 12.6, 0.7, 0.8),
            (job.tasks[1], 18.8, 1.5, 1.6),
            (job.tasks[2], 18.2, 1.0, 1.1),
        ] {
            near(one_decimal(single.limit.si() / POUND_KG), limit);
            near(one_decimal(single.seldom_index), seldom);
            near(one_decimal(single.index), index);
        }
        near(one_decimal(job.index), 1.9);
        // Full precision by hand: 1.595 745 + 0.072 534 + 0.194 805.
        assert!((job.index - 1.863_084).abs() < 1e-6, "{}", job.index);
    }

    #[test]
    fn one_task_is_its_own_index_and_too_many_have_none() {
        let one = [task(20.0, 20.0, 0.2)];
        let job = Composite::of(&one, WorkTime::Short).expect("a job");
        assert!((job.index - 1.0).abs() < 1e-9);
        assert_eq!(Composite::of(&[], WorkTime::Short), None);
        // 7 and 6 to the minute are each within the table, 13 together are not.
        let many = [task(1.0, 20.0, 7.0), task(1.0, 20.0, 6.0)];
        assert_eq!(Composite::of(&many, WorkTime::Short), None);
        let no_load = [task(20.0, 0.0, 1.0)];
        assert_eq!(Composite::of(&no_load, WorkTime::Short), None);
    }

    /// Of two tasks alike in STLI the more frequent comes first: p. 57. By hand: STLI 1.0
    /// each, FM(1) = .94 and FM(4) = .84, FM(5) = .80; the second adds
    /// FILI (1/.80 - 1/.84) with FILI = .94.
    #[test]
    fn ties_go_to_the_more_frequent() {
        let often = task(0.84 * 20.0, 20.0, 4.0);
        let seldom = task(0.94 * 20.0, 20.0, 1.0);
        let due = 1.0 + 0.94 * (1.0 / 0.80 - 1.0 / 0.84);
        for tasks in [[often, seldom], [seldom, often]] {
            let job = Composite::of(&tasks, WorkTime::Short).expect("a job");
            assert!((job.index - due).abs() < 1e-9, "{}", job.index);
        }
    }
}
