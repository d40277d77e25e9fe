"""The days of a course as a model of its own: many courses at once, followed by the clock.

The program goes stage by stage in working minutes and puts lessons into the clock afterwards. Here
everything is a time of the clock from the start: a lesson pushes on whatever would have been done after
it began. The two share no code and no formula but those of the model itself.

Times are minutes since midnight of the first day, one row of an array for each course.
"""

import math

import numpy as np
from scipy.special import ndtri

DUE = 1e-9  # what is a billionth of a minute late is on time
NEVER = np.inf


class Calendar:
    """Open stretches [from, to, rate]; what touches is one stretch, whatever the rates."""

    def __init__(self, stretches):
        self.start, self.end, self.rate = (np.array(column, float) for column in zip(*stretches))
        self.done = np.cumsum((self.end - self.start) * self.rate)
        self.edges = np.column_stack([self.start, self.end]).ravel()
        self.by_edge = np.column_stack([np.append(0.0, self.done[:-1]), self.done]).ravel()
        self.blocks = []
        for start, end, _ in stretches:
            if self.blocks and self.blocks[-1][1] == start:
                self.blocks[-1][1] = end
            else:
                self.blocks.append([start, end])

    def work_by(self, clock):
        """Working minutes over by a time."""
        return np.interp(clock, self.edges, self.by_edge)

    def when(self, work):
        """The first time by which so many working minutes are over."""
        work = np.asarray(work, float)
        at = np.searchsorted(self.done, work - DUE)
        inside = np.minimum(at, len(self.done) - 1)
        left = np.maximum(self.done[inside] - work, 0.0)
        slow = np.where(self.rate[inside] > 0.0, self.rate[inside], 1.0)
        first = np.where(work <= 0.0, self.start[0], self.end[inside] - left / slow)
        return np.where(at < len(self.done), first, NEVER)

    def talk(self, clock, minutes):
        """Start and end of the earliest talk in one piece; cut by breaks if no block is long enough."""
        start = np.full(clock.shape, NEVER)
        end = np.full(clock.shape, NEVER)
        cut_start, cut_end = np.full(clock.shape, NEVER), np.full(clock.shape, NEVER)
        left = np.full(clock.shape, float(minutes))
        for block_start, block_end in self.blocks:
            begin = np.maximum(clock, block_start)
            room = np.maximum(block_end - begin, 0.0)
            whole = (start == NEVER) & (begin < block_end) & (minutes <= room + DUE)
            start[whole], end[whole] = begin[whole], begin[whole] + minutes
            cut_start = np.where((room > 0.0) & (cut_start == NEVER), begin, cut_start)
            last = (cut_end == NEVER) & (left <= room + DUE)
            cut_end[last] = (begin + left)[last]
            left = left - room
        cut = start == NEVER
        start[cut], end[cut] = np.where(cut_end == NEVER, NEVER, cut_start)[cut], cut_end[cut]
        return start, end


class Luck:
    """How slow each stage is, and how slow the slowest pair of each bay; fresh for each course."""

    def __init__(self, case, count, seed, plainly=False):
        self.random = np.random.default_rng(seed)
        self.case, self.count, self.plainly = case, count, plainly
        self.course = case["course"] * self.random.standard_normal(count)

    def stage(self, step):
        own = self.case["stage"] * self.random.standard_normal(self.count)
        return np.ones(self.count) if step.get("fixed") else np.exp(self.course + own)

    def slowest_pair(self):
        """By the inverse of the normal distribution, or plainly as the largest of k normals."""
        pairs = max(self.case["pairs"], 1.0)
        if self.plainly:
            z = self.random.standard_normal((self.count, int(pairs))).max(axis=1)
        else:
            z = ndtri(self.random.random(self.count) ** (1.0 / pairs))
        return np.exp(self.case["pair"] * z)


def follow(case, count, seed, plainly=False):
    """When each step is done in all bays: an array of steps and courses."""
    calendar, luck = Calendar(case["open"]), Luck(case, count, seed, plainly)
    bays = len(case["step"][0]["usual"])
    ready = np.full((bays, count), calendar.start[0])
    laid = np.zeros((bays, count))
    done = np.zeros((len(case["step"]), bays, count))
    over = np.zeros(count, bool)
    for number, step in enumerate(case["step"]):
        if step.get("together"):
            ready[:] = ready.max(axis=0)
        gate = np.maximum(ready.min(axis=0), step.get("after", 0.0))
        for minutes in step.get("lessons", []):
            begin, end = calendar.talk(gate, minutes)
            over |= end == NEVER
            taught = np.where(over, 0.0, calendar.work_by(end) - calendar.work_by(begin))
            for marks in (ready, done[:number]):
                late = (marks > begin + DUE) & ~over
                pushed = calendar.when(calendar.work_by(marks) + taught)
                np.copyto(marks, np.where(marks == NEVER, NEVER, pushed), where=late)
            gate = end
        slowness = luck.stage(step)
        for bay, usual in enumerate(step["usual"]):
            work = usual * slowness
            if step.get("string"):
                work = work * luck.slowest_pair()
            if step.get("laying"):
                work, laid[bay] = work + learning(case, laid[bay], work), laid[bay] + work
            begin = np.maximum(ready[bay], gate)
            end = calendar.when(calendar.work_by(begin) + work)
            ready[bay] = np.where(over | (begin == NEVER), NEVER, end)
        done[number] = ready
    return done.max(axis=1)


def learning(case, before, laid):
    """In the first hours of laying novices do a minute's work in `learning_factor` minutes."""
    factor = case["learning_factor"]
    slow = 60.0 * case["learning_hours"] / factor  # usual minutes done in those hours
    within = np.clip(before + laid, 0.0, slow) - np.clip(before, 0.0, slow)
    return case["novices"] * (factor - 1.0) * within


def percentile(times, share):
    """By the nearest rank of sorted times."""
    rank = math.ceil(round(len(times) * share, 6))
    return times[min(max(rank, 1), len(times)) - 1]
