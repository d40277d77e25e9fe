# The best pairings of small groups, by networkx: makes pairings.csv. Nothing runs this but a person who adds cases.
#
# Made with networkx 3.6.1 on Python 3.11:  python pairings.py > pairings.csv
#
# What is best is written down here a second time, from its description: aim by aim, people not to be put together
# are not; then what the way of pairing puts first, then what it puts second, then evenness of pace. An odd number
# has one three, one of whom builds with the two others and counts as a pair with each: all threes are tried.
import csv
import itertools
import random
import sys

import networkx

SPEED = {"N": 1 / 5, "I": 1 / 3.5, "E": 1 / 1.6}
STEP = {"N": 0, "I": 1, "E": 2}
BASE = 10**12


class Group:
    def __init__(self, style, people, wishes, apart):
        self.style, self.people = style, people
        self.wishes, self.apart = set(wishes), {frozenset(two) for two in apart}
        self.usual = 2 * sum(SPEED[p] for p in people) / len(people)

    def aims(self, a, b):
        """Kept together against a wish, first aim, second aim, unevenness: less is better in the first and last."""
        one, other = self.people[a], self.people[b]
        wishes = ((a, b) in self.wishes) + ((b, a) in self.wishes)
        guided = int((one == "N") != (other == "N"))
        first, second = {
            "mixed": (guided, wishes),
            "friends": (wishes, guided),
            "alike": (-((STEP[one] - STEP[other]) ** 2), wishes),
        }[self.style]
        uneven = (SPEED[one] + SPEED[other] - self.usual) ** 2
        return self.together(a, b), first, second, uneven

    def together(self, a, b):
        return int(frozenset((a, b)) in self.apart)

    def weight(self, aims):
        together, first, second, uneven = aims
        return (-together * BASE**3 + first * BASE**2 + second * BASE) - round(uneven * 10**9)

    def matched(self, people):
        graph = networkx.Graph()
        graph.add_nodes_from(people)
        for a, b in itertools.combinations(people, 2):
            graph.add_edge(a, b, weight=self.weight(self.aims(a, b)))
        pairs = networkx.max_weight_matching(graph, maxcardinality=True)
        return [self.aims(a, b) for a, b in pairs]

    def best(self):
        everyone = range(len(self.people))
        if len(everyone) % 2 == 0:
            return total(self.matched(everyone))
        answers = []
        for three in itertools.combinations(everyone, 3):
            rest = self.matched([p for p in everyone if p not in three])
            for middle in three:
                a, b = (p for p in three if p != middle)
                ends = (self.together(a, b), 0, 0, 0.0)
                answers.append(total(rest + [self.aims(middle, a), self.aims(middle, b), ends]))
        return max(answers, key=self.weight)


def total(rows):
    return tuple(sum(column) for column in zip(*rows))


def groups():
    dice = random.Random(5)
    for people in range(2, 15):
        for style in ("mixed", "friends", "alike"):
            for wished in (0, people // 2, people):
                letters = [dice.choice("NNNIE") for _ in range(people)]
                twos = list(itertools.permutations(range(people), 2))
                dice.shuffle(twos)
                apart = twos[: people if wished == people else people // 4 if wished else 0]
                wishes = [it for it in twos[people:] if it not in apart and it[::-1] not in apart][:wished]
                yield Group(style, letters, wishes, apart)


def main():
    out = csv.writer(sys.stdout, lineterminator="\n")
    print("# The best pairings of small groups, made by pairings.py with networkx 3.6.1 on Python 3.11.")
    print("# people: N novice (5 hours to the tonne), I improver (3.5), E experienced (1.6), counted from 1 in this")
    print("# order; wishes: 1>2 where the first would like to build with the second; apart: 1-2 where they are not to.")
    print("# together: pairs kept together against that; first and second: sums of the two aims that the way of")
    print("# pairing puts first; uneven: sum of the squared differences of a pair's pace from twice the middle one.")
    out.writerow("case,pairs,people,wishes,apart,together,first,second,uneven,source".split(","))
    for number, group in enumerate(groups(), 1):
        together, first, second, uneven = group.best()
        listed = lambda twos, sign: " ".join(f"{a + 1}{sign}{b + 1}" for a, b in sorted(map(sorted, twos) if sign == "-" else twos))
        out.writerow([
            f"{number}: {len(group.people)} {group.style}", group.style, "".join(group.people),
            listed(group.wishes, ">"), listed(group.apart, "-"),
            together, first, second, f"{uneven:.9f}", "networkx 3.6.1: max_weight_matching",
        ])


main()
