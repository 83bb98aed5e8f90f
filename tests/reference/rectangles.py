"""Do rectangles fit on a floor, square to its walls: yes or no, proven by the CP-SAT solver of OR-Tools.

Some floors are bare, some have wheel arches and things that stay where they are.
"""

import itertools
import json
import random
import sys
from math import exp

from ortools.sat.python import cp_model

BARE = 20
WITH_BLOCKS = 15
DETERMINISTIC_LIMIT = 20.0


def cut(rng, length, width, count):
    """Pieces of a floor that is cut from wall to wall, the largest first."""
    parts = [(length, width)]
    while len(parts) < count:
        parts.sort(key=lambda part: part[0] * part[1])
        along, across = parts.pop()
        share = rng.uniform(0.3, 0.7)
        if along >= across:
            at = round(along * share / 10) * 10
            parts += [(at, across), (along - at, across)]
        else:
            at = round(across * share / 10) * 10
            parts += [(along, at), (along, across - at)]
    return parts


def reshaped(rng, part, tightness):
    """A piece a little longer and narrower or the other way round, at about its area."""
    stretch = exp(rng.gauss(0, rng.choice([0.05, 0.2])))
    sides = part[0] * stretch * tightness, part[1] / stretch * tightness
    return [max(100, int(side // 10) * 10) for side in sides]


def instance(rng, with_blocks):
    length, width = rng.randrange(2200, 4200, 10), rng.randrange(1450, 1950, 10)
    parts = cut(rng, length, width, rng.randint(5, 10))
    blocks = []
    if with_blocks:
        depth, at = rng.randrange(120, 260, 10), rng.randrange(900, length - 900, 10)
        blocks = [[at, 0, 700, depth], [at, width - depth, 700, depth]]
        if rng.random() < 0.5:
            blocks.append([0, 0, rng.randrange(300, 700, 10), rng.randrange(300, 900, 10)])
        del parts[rng.randrange(len(parts))]
    tightness = rng.uniform(0.86, 0.99)
    rectangles = [reshaped(rng, part, tightness) + [rng.random() < 0.85] for part in parts]
    rng.shuffle(rectangles)
    return {"room": [length, width], "blocks": blocks, "rectangles": rectangles}


def fits(case):
    """Proven yes or no, or None within the limit."""
    (length, width), model = case["room"], cp_model.CpModel()
    x_parts, y_parts, shares = [], [], []
    for x, y, along, across in case["blocks"]:
        x_parts.append(model.new_fixed_size_interval_var(x, along, ""))
        y_parts.append(model.new_fixed_size_interval_var(y, across, ""))
        shares.append((along, across))
    for along, across, may_turn in case["rectangles"]:
        turned = model.new_bool_var("")
        if not may_turn or along == across:
            model.add(turned == 0)
        x, end_x = model.new_int_var(0, length, ""), model.new_int_var(0, length, "")
        y, end_y = model.new_int_var(0, width, ""), model.new_int_var(0, width, "")
        size = along + (across - along) * turned, across + (along - across) * turned
        x_parts.append(model.new_interval_var(x, size[0], end_x, ""))
        y_parts.append(model.new_interval_var(y, size[1], end_y, ""))
        shares.append(size)
    model.add_no_overlap_2d(x_parts, y_parts)
    model.add_cumulative(x_parts, [size[1] for size in shares], width)
    model.add_cumulative(y_parts, [size[0] for size in shares], length)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_deterministic_time = DETERMINISTIC_LIMIT
    status = solver.solve(model)
    return {cp_model.OPTIMAL: True, cp_model.FEASIBLE: True, cp_model.INFEASIBLE: False}.get(status)


def cases(seed, count, with_blocks):
    found = []
    for number in itertools.count():
        if len(found) == count:
            return found
        case = instance(random.Random(seed + number), with_blocks)
        answer = fits(case)
        if answer is not None:
            found.append({**case, "fits": answer})


def main(target):
    data = {
        "source": "OR-Tools 9.15.6755, CP-SAT, proven both ways",
        "what": "room: length, width; blocks: x, y, length, width; rectangles: length, width, may be turned; all in mm",
        "cases": cases(71_000, BARE, False) + cases(72_000, WITH_BLOCKS, True),
    }
    with open(target, "w", encoding="utf-8") as file:
        rows = ",\n".join("  " + json.dumps(case) for case in data["cases"])
        head = {key: data[key] for key in ("source", "what")}
        file.write(json.dumps(head, indent=1)[:-2] + ',\n "cases": [\n' + rows + "\n ]\n}\n")


main(sys.argv[1])
