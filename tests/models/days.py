"""Writes tests/tables/days.csv: what an independent simulation says of the courses of days.toml.

    python tests/models/days.py        takes half a minute, and says what it checked on the way
"""

import csv
import platform
import sys
import tomllib
from pathlib import Path

import numpy as np
import scipy

from courses import NEVER, follow, percentile

HERE = Path(__file__).parent
TABLE = HERE.parent / "tables" / "days.csv"
OURS = 200_000  # courses here
THEIRS = 10_000  # courses of the program
ERRORS = 4.0  # standard errors of both together
SHARES = (0.1, 0.5, 0.9)

HEAD = f"""\
# When each step of the courses in models/days.toml is done, in minutes since midnight of the first day: the 10th,
# 50th and 90th percentile of {OURS:,} courses, and between which two times that of {THEIRS:,} courses must lie
# ({ERRORS:g} standard errors of both, by rank). `never` is a time not reached within the course. At the last step: the
# chance of finishing, and how far off that of {THEIRS:,} courses may be. Written by models/days.py.
"""


def cases():
    told = tomllib.loads((HERE / "days.toml").read_text())
    return [told["usual"] | case for case in told["case"]]


def error(share):
    return np.sqrt(share * (1.0 - share) * (1.0 / OURS + 1.0 / THEIRS))


def minutes(time):
    return "never" if time == NEVER else f"{time:.3f}"


def certain(case):
    return case["course"] == case["stage"] == case["pair"] == 0.0


def bounds(times):
    """Each percentile with the times between which another sample's must lie."""
    cells = []
    for share in SHARES:
        off = ERRORS * error(share)
        cells += [minutes(percentile(times, share + by)) for by in (-off, 0.0, off)]
    return cells


def chance(case, times):
    share = np.isfinite(times).mean()
    # One course more or less, since the share of a small sample comes in steps.
    off = 0.0 if certain(case) else ERRORS * error(share) + 1.0 / THEIRS
    return [f"{share:.5f}", f"{off:.5f}"]


def check(case, done):
    """What is known otherwise: figures worked by hand, and the plain maximum for whole pairs."""
    if "by_hand" in case:
        np.testing.assert_allclose(done[:, 0], case["by_hand"], atol=1e-6, err_msg=case["name"])
        print(f"{case['name']}: as worked by hand")
    whole = case["pairs"] == int(case["pairs"]) and case["pairs"] > 1.0
    if whole and case["pair"] > 0.0 and any(step.get("string") for step in case["step"]):
        plainly = np.sort(follow(case, OURS, 2, plainly=True), axis=1)
        for step, (one, other) in enumerate(zip(np.sort(done, axis=1), plainly)):
            for share in SHARES:
                off = ERRORS * np.sqrt(2.0 * share * (1.0 - share) / OURS)
                low, high = percentile(one, share - off), percentile(one, share + off)
                assert low <= percentile(other, share) <= high, (case["name"], step, share)
        print(f"{case['name']}: the same with the plain maximum of {case['pairs']:g} normals")


def rows():
    versions = f"Python {platform.python_version()}, NumPy {np.__version__}, SciPy {scipy.__version__}"
    for seed, case in enumerate(cases(), start=100):
        done = follow(case, 10 if certain(case) else OURS, seed)
        check(case, done)
        source = "worked by hand" if "by_hand" in case else f"models/days.py, seed {seed}; {versions}"
        for step, times in enumerate(np.sort(done, axis=1)):
            last = chance(case, times) if step + 1 == len(done) else ["", ""]
            name = f"{case['name']}: step {step + 1}"
            yield [name, case["name"], step + 1, *bounds(times), *last, source]


def main():
    columns = ["case", "course", "step"]
    columns += [f"p{name}{end}" for name in (10, 50, 90) for end in ("_low", "", "_high")]
    columns += ["chance", "chance_off", "source"]
    with TABLE.open("w", newline="") as file:
        file.write(HEAD)
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(columns)
        writer.writerows(rows())


if __name__ == "__main__":
    sys.exit(main())
