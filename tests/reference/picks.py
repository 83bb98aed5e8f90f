"""The cheapest set of changes that reaches every limit, proven by the CP-SAT solver of OR-Tools.

Some have groups of which one may be chosen at most, some have sets that are refused, some have no solution. Effects are
written limit by limit as pairs of change and effect.
"""

import json
import random
import sys

from ortools.sat.python import cp_model


def instance(name, seed, changes, limits, touched, groups=0, refused=0, dense=False, share=(0.25, 0.45),
             helping=0.45):
    """Each change helps with one limit, the dearer the more, and helps or harms a few more."""
    rng = random.Random(seed)
    costs = [rng.randint(1500, 90000) for _ in range(changes)]
    effects = [[0] * changes for _ in range(limits)]
    for at, cost in enumerate(costs):
        for number, limit in enumerate(rng.sample(range(limits), limits if dense else rng.randint(1, touched))):
            size = rng.randint(5, 60) + (cost // 1200 if number == 0 else 0)
            helps = number == 0 or dense or rng.random() < helping
            effects[limit][at] = size if helps else -max(1, size // 3)
    wanted = rng.uniform(*share)
    needs = [round(wanted * sum(effect for effect in row if effect > 0)) for row in effects]
    order = rng.sample(range(changes), changes)
    case = {"name": f"{name}, seed {seed}", "costs": costs, "effects": effects, "needs": needs,
            "groups": [sorted(order[3 * at:3 * at + 3]) for at in range(groups)], "refused": []}
    for _ in range(refused):
        _, chosen = cheapest(case)
        case["refused"].append(chosen)
    return case


def cheapest(case):
    """The least cost and a set that has it; None when there is none."""
    model = cp_model.CpModel()
    chosen = [model.new_bool_var(f"{at}") for at in range(len(case["costs"]))]
    for row, need in zip(case["effects"], case["needs"]):
        model.add(sum(effect * x for effect, x in zip(row, chosen) if effect) >= need)
    for group in case["groups"]:
        model.add_at_most_one(chosen[at] for at in group)
    for refused in case["refused"]:
        model.add_bool_or(x.negated() if at in refused else x for at, x in enumerate(chosen))
    model.minimize(sum(cost * x for cost, x in zip(case["costs"], chosen)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = 600
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return None, None
    assert status == cp_model.OPTIMAL, (case["name"], solver.status_name(status))
    return round(solver.objective_value), [at for at, x in enumerate(chosen) if solver.value(x)]


def cases():
    yield from (instance("40 by 6", 100 + seed, 40, 6, 3) for seed in range(12))
    yield from (instance("40 by 6 with groups", 200 + seed, 40, 6, 3, groups=8, share=(0.15, 0.4)) for seed in range(8))
    yield from (instance("30 by 6, refused", 300 + seed, 30, 6, 3, groups=3, refused=5, share=(0.2, 0.35))
                for seed in range(4))
    yield from (instance("64 by 12", 400 + seed, 64, 12, 4) for seed in range(4))
    yield from (instance("64 by 40", 500 + seed, 64, 40, 6, groups=6, share=(0.1, 0.2)) for seed in range(4))
    yield from (instance("40 by 80", 600 + seed, 40, 80, 12, share=(0.0, 0.3), helping=0.9) for seed in range(4))
    yield from (instance("25 by 5, dense", 700 + seed, 25, 5, 5, dense=True) for seed in range(4))


def main(target):
    done = []
    for case in cases():
        cost, _ = cheapest(case)
        print(case["name"], cost, file=sys.stderr)
        sparse = [[[at, effect] for at, effect in enumerate(row) if effect] for row in case["effects"]]
        done.append({**case, "effects": sparse, "cost": cost})
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in done)
    with open(target, "w", encoding="utf-8") as file:
        file.write('{"source":"OR-Tools 9.15, CP-SAT, each proven to be the least",\n"cases":[\n' + lines + "\n]}\n")


main(sys.argv[1])
