"""Boards cut to lengths at the least cost, proven by HiGHS over every pattern to which nothing can be added.

Pieces are pairs of length and count; boards are triples of length, price and how many there are (null: always enough).
A board holds pieces when the sum of their lengths, each with a kerf, is no more than its length and a kerf.
"""

import json
import random
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csc_array

TWO = [[2438, 389, None], [3658, 607, None]]
FOUR = [[2438, 389, None], [3048, 499, None], [3658, 607, None], [4877, 849, None]]
ONE = [[2440, 1, None]]


def instance(name, seed, boards, total, kinds, scraps=0, kerf=3, lengths=(240, 2001, 5)):
    """Some lengths, each once, and the rest of the pieces among them by chance; scraps of one or two a length."""
    rng = random.Random(seed)
    count = rng.randint(*total)
    wanted = sorted(rng.sample(range(*lengths), rng.randint(*kinds)))
    pieces = [[length, 1] for length in wanted]
    for _ in range(count - len(pieces)):
        rng.choice(pieces)[1] += 1
    own = [[rng.randrange(300, 2300), 0, rng.randint(1, 2)] for _ in range(scraps)]
    return {"name": f"{name}, seed {seed}", "kerf": kerf, "boards": boards + own, "pieces": pieces}


def patterns(sizes, counts, room):
    """Every set of pieces that fits and to which no piece that is still wanted can be added."""
    found = []
    now = [0] * len(sizes)

    def go(at, left):
        if at == len(sizes):
            if not any(size <= left and n < count for size, n, count in zip(sizes, now, counts)):
                found.append(tuple(now))
            return
        for n in range(min(counts[at], left // sizes[at]), -1, -1):
            now[at] = n
            go(at + 1, left - n * sizes[at])
        now[at] = 0

    go(0, room)
    return [pattern for pattern in found if any(pattern)]


def cheapest(case):
    """The least cost, and how many patterns there are."""
    kerf = case["kerf"]
    pieces = sorted(case["pieces"], reverse=True)
    sizes, counts = [length + kerf for length, _ in pieces], [count for _, count in pieces]
    columns = [(at, pattern) for at, (length, _, _) in enumerate(case["boards"])
               for pattern in patterns(sizes, counts, length + kerf)]
    cost = np.array([case["boards"][at][1] for at, _ in columns], float)
    cut = csc_array(np.array([pattern for _, pattern in columns], float).T)
    limits = [LinearConstraint(cut, np.array(counts, float), np.inf)]
    for at, (_, _, available) in enumerate(case["boards"]):
        if available is not None:
            of_it = np.array([[float(at == board) for board, _ in columns]])
            limits.append(LinearConstraint(of_it, -np.inf, available))
    answer = milp(cost, constraints=limits, integrality=np.ones(len(columns)), bounds=Bounds(0, np.inf),
                  options={"mip_rel_gap": 0.0, "time_limit": 600})
    assert answer.status == 0 and answer.mip_gap == 0, (case["name"], answer.message)
    return round(answer.fun), len(columns)


def cases():
    yield from (instance("two lengths", 100 + seed, TWO, (10, 40), (4, 12)) for seed in range(16))
    yield from (instance("four lengths", 200 + seed, FOUR, (10, 30), (4, 9)) for seed in range(8))
    yield from (instance("with scrap", 300 + seed, TWO, (10, 40), (4, 10), scraps=5) for seed in range(10))
    yield from (instance("one length", 400 + seed, ONE, (20, 80), (5, 14), lengths=(400, 1600, 1)) for seed in range(8))
    yield from (instance("no kerf", 500 + seed, ONE, (20, 60), (5, 9), kerf=0, lengths=(320, 1300, 10)) for seed in range(6))


def main(target):
    done = []
    for case in cases():
        cost, count = cheapest(case)
        print(case["name"], cost, count, file=sys.stderr)
        done.append({**case, "cost": cost})
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in done)
    with open(target, "w", encoding="utf-8") as file:
        file.write('{"source":"HiGHS in SciPy 1.17, all patterns, each proven to be the least",\n"cases":[\n' + lines + "\n]}\n")


main(sys.argv[1])
