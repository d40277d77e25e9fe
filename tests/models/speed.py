"""Times the model of courses.py: 10,000 courses of three bays and fifteen steps, like the example's.

    python tests/models/speed.py       beside `cargo xtask bench`, on the same machine
"""

import platform
import statistics
import time

import numpy as np

from courses import follow

COURSES = 10_000
TIMES = 20

USUAL = {"course": 0.22, "stage": 0.17, "pair": 0.10, "pairs": 1.3, "novices": 0.75}
LEARNING = {"learning_hours": 2.0, "learning_factor": 1.5}
DAY = [[570, 660], [675, 765], [810, 840], [840, 900], [900, 915], [930, 960], [960, 990]]
RATES = [1.0, 1.0, 1.0, 0.975, 0.925, 0.925, 0.875]
OPEN = [[1440 * day + a, 1440 * day + b, rate] for day in range(3) for (a, b), rate in zip(DAY, RATES)]

# Usual minutes of a bay; a string; laying; together; lessons.
STEPS = [
    (40, False, False, True, [15]),
    (15, False, False, True, []),
    (60, False, False, False, []),
    (20, False, False, False, [15]),
    (45, True, True, False, [15]),
    (180, True, True, False, [30]),
    (25, True, False, False, [15]),
    (190, True, True, False, []),
    (60, False, False, False, [15]),
    (20, False, False, False, []),
    (15, False, False, True, []),
    (10, False, False, False, []),
    (15, False, False, False, []),
    (45, False, False, False, [15]),
    (20, False, False, False, []),
]


def example():
    def step(minutes, string, laying, together, lessons):
        usual = [minutes * share for share in (0.95, 1.0, 1.05)]
        return dict(usual=usual, string=string, laying=laying, together=together, lessons=lessons)

    return {"open": OPEN, "step": [step(*it) for it in STEPS]} | USUAL | LEARNING


def main():
    case, took = example(), []
    for seed in range(TIMES):
        before = time.perf_counter()
        done = follow(case, COURSES, seed)
        np.percentile(done, [10, 50, 90], axis=1, method="inverted_cdf")
        took.append(1000.0 * (time.perf_counter() - before))
    chance = np.isfinite(done[-1]).mean()
    print(f"NumPy {np.__version__}, Python {platform.python_version()}: {COURSES:,} courses,")
    print(f"  fastest {min(took):.1f} ms, median {statistics.median(took):.1f} ms of {TIMES}; chance {chance:.2f}")


if __name__ == "__main__":
    main()
