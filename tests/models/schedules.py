"""Writes tests/tables/schedules.csv: the shortest schedules of the courses of schedules.toml, proved.

    python tests/models/schedules.py

A constraint solver (CP-SAT of OR-Tools) may place work and lessons as it likes, so long as each bay goes
through its steps in order, lessons keep their order, stop everybody, lie in one stretch without a break and
begin once the first bay is ready. It is asked twice: for the shortest schedule of all (`best`), and for the
shortest with every lesson as early as the ones before it allow (`end`), which is how the program teaches.
"""

import csv
import platform
import tomllib
from pathlib import Path

import ortools
from ortools.sat.python import cp_model

HERE = Path(__file__).parent
TABLE = HERE.parent / "tables" / "schedules.csv"
FINE = 20  # parts of a working minute, so that rates in twentieths come out whole

HEAD = """\
# How long the courses in models/schedules.toml last at the usual pace: when the last bay is done with every lesson
# as early as it can be given (`end`), when the lessons then begin, and the end of the shortest schedule there is
# (`best`), in minutes since midnight of the first day. Proved by a constraint solver: see models/schedules.py.
"""


class Schedule:
    """The variables of one course, on an axis of working minutes that leaves breaks out."""

    def __init__(self, case):
        self.model, self.case = cp_model.CpModel(), case
        self.blocks, before = [], 0
        for start, end, rate in case["open"]:
            work = round((end - start) * rate * FINE)
            self.blocks.append((before, before + work, start, rate))
            before += work
        self.total = before
        self.lessons, self.tasks = [], []
        ready = [0] * len(case["step"][0]["usual"])
        for step in case["step"]:
            ready = self.step(step, ready)
        self.end = self.number()
        self.model.add_max_equality(self.end, ready)
        for task in self.tasks:
            self.interrupted(*task)

    def number(self):
        return self.model.new_int_var(0, self.total, "")

    def step(self, step, ready):
        """Adds lessons and work of a step; says when each bay is ready for the next."""
        model = self.model
        first = self.number()
        if step.get("together"):
            model.add_max_equality(first, ready)
            ready = [first] * len(ready)
        else:
            model.add_min_equality(first, ready)
        pinned = self.work_by(step.get("after", 0))
        gates = [self.lesson(minutes, first, pinned) for minutes in step.get("lessons", [])]
        ends = []
        for bay, usual in enumerate(step["usual"]):
            start, end = self.number(), self.number()
            for gate in [ready[bay], pinned, *gates]:
                model.add(start >= gate)
            self.tasks.append((start, end, round(usual * FINE)))
            ends.append(end)
        return ends

    def work_by(self, clock):
        """Working minutes over by a time, in whole parts."""
        return sum(
            round(min(max(clock - start, 0), (to - since) / FINE / rate) * rate * FINE)
            for since, to, start, rate in self.blocks
        )

    def lesson(self, minutes, ready, pinned):
        """A lesson in one of the stretches, after those before it; says when it is over."""
        model = self.model
        start, length, end = self.number(), self.number(), self.number()
        model.add(end == start + length)
        model.add(start >= ready)
        model.add(start >= pinned)
        places = []
        for since, to, _, rate in self.blocks:
            here = model.new_bool_var("")
            model.add(start >= since).only_enforce_if(here)
            model.add(end <= to).only_enforce_if(here)
            model.add(length == round(minutes * rate * FINE)).only_enforce_if(here)
            places.append(here)
        model.add_exactly_one(places)
        if self.lessons:
            model.add(start >= self.lessons[-1][2])
        self.lessons.append((start, length, end, places))
        return end

    def interrupted(self, start, end, work):
        """A task takes its work and whatever lessons fall into it."""
        model, pauses = self.model, []
        for begin, length, over, _ in self.lessons:
            before, within, after = (model.new_bool_var("") for _ in range(3))
            model.add_exactly_one(before, within, after)
            model.add(over <= start).only_enforce_if(before)
            model.add(end <= begin).only_enforce_if(after)
            model.add(start <= begin).only_enforce_if(within)
            model.add(begin < end).only_enforce_if(within)
            pause = self.number()
            model.add(pause == length).only_enforce_if(within)
            model.add(pause == 0).only_enforce_if(within.negated())
            pauses.append(pause)
        model.add(end == start + work + sum(pauses))

    def least(self, goal):
        """The least a number can be, proved; nothing if the course can't be finished."""
        self.model.minimize(goal)
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        status = solver.solve(self.model)
        if status == cp_model.INFEASIBLE:
            return None
        assert status == cp_model.OPTIMAL, (self.case["name"], solver.status_name(status))
        self.solver = solver
        return solver.value(goal)

    def clock(self, work):
        """The first time by which so many parts of working minutes are over."""
        for since, to, start, rate in self.blocks:
            if work <= to:
                return start + max(work - since, 0) / FINE / rate
        return None

    def begins(self, lesson):
        """When a lesson begins, by the last schedule found."""
        start, _, _, places = lesson
        here = next(at for at, place in enumerate(places) if self.solver.value(place))
        since, _, begin, rate = self.blocks[here]
        return begin + (self.solver.value(start) - since) / FINE / rate


def in_order(case):
    """The shortest schedule with each lesson as early as the ones before allow, and its lessons."""
    schedule = Schedule(case)
    for start, _, _, places in schedule.lessons:
        if schedule.least(start) is None:
            return "never", []
        schedule.model.add(start == schedule.solver.value(start))
        # At the end of one stretch or the start of the next is the same to the work: take the first.
        number = sum(at * place for at, place in enumerate(places))
        schedule.model.add(number == schedule.least(number))
    end = schedule.least(schedule.end)
    if end is None:
        return "never", []
    return schedule.clock(end), [schedule.begins(lesson) for lesson in schedule.lessons]


def best(case):
    schedule = Schedule(case)
    end = schedule.least(schedule.end)
    return "never" if end is None else schedule.clock(end)


def figure(time):
    return time if isinstance(time, str) else f"{time:.3f}"


def main():
    told = tomllib.loads((HERE / "schedules.toml").read_text())
    source = f"models/schedules.py; OR-Tools {ortools.__version__}, Python {platform.python_version()}"
    worse = 0
    with TABLE.open("w", newline="") as file:
        file.write(HEAD)
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["case", "end", "lessons", "best", "source"])
        for case in told["case"]:
            (end, lessons), free = in_order(case), best(case)
            worse += end != free
            starts = " ".join(figure(time) for time in lessons)
            writer.writerow([case["name"], figure(end), starts, figure(free), source])
    print(f"{len(told['case'])} courses; in {worse} of them a lesson given later would save time")


if __name__ == "__main__":
    main()
