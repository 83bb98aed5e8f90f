"""Workloads with their least finishes, by the CP-SAT solver of OR-Tools, which proves each of them.

The model is not that of the program: one yes or no for each activity and slot it could start on, and a sum for each
resource and slot. Lists of slots are written in runs: [how many, what].
"""

import json
import random
import sys
from itertools import groupby

from ortools.sat.python import cp_model


def activity(work, calendars=(), demands=(), earliest=0, in_one_go=False, after=()):
    return [work, list(calendars), [list(d) for d in demands], earliest, in_one_go, [list(a) for a in after]]


def slots_used(case, act, start):
    """The slots in which an activity works if it starts here; None if it cannot."""
    work, calendars, demands, earliest, in_one_go, _ = act
    if work == 0:
        return [] if start >= earliest else None
    used, slot = [], start
    while len(used) < work:
        if slot >= case["slots"]:
            return None
        is_open = all(case["calendars"][c][slot] for c in calendars)
        is_open = is_open and all(case["resources"][r][slot] >= d for r, d in demands)
        if is_open:
            used.append(slot)
        elif in_one_go or slot == start:
            return None
        slot += 1
    return used if start >= earliest else None


def least_finish(case):
    model = cp_model.CpModel()
    finish = model.new_int_var(0, case["slots"], "finish")
    use = {}
    starts, ends = [], []
    for at, act in enumerate(case["activities"]):
        chosen, start_terms, end_terms = [], [], []
        for start in range(case["slots"] + 1):
            used = slots_used(case, act, start)
            if used is None:
                continue
            x = model.new_bool_var(f"{at}_{start}")
            chosen.append(x)
            start_terms.append(start * x)
            end_terms.append((used[-1] + 1 if used else start) * x)
            for resource, demand in act[2]:
                for slot in used:
                    use.setdefault((resource, slot), []).append(demand * x)
        model.add_exactly_one(chosen)
        starts.append(sum(start_terms))
        ends.append(sum(end_terms))
        model.add(finish >= ends[at])
    for at, act in enumerate(case["activities"]):
        for of, wait in act[5]:
            model.add(starts[at] >= ends[of] + wait)
    for (resource, slot), terms in use.items():
        model.add(sum(terms) <= case["resources"][resource][slot])
    model.minimize(finish)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = 600
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return None
    assert status == cp_model.OPTIMAL, (case["name"], solver.status_name(status))
    return round(solver.objective_value)


def classic(name, durations, demands, capacities, after, slots):
    """A resource-constrained project without calendars: everything is always open."""
    acts = [activity(d, (), [(r, q) for r, q in enumerate(need) if q], 0, True, [(p, 0) for p in pre])
            for d, need, pre in zip(durations, demands, after)]
    return {"name": name, "slots": slots, "resources": [[c] * slots for c in capacities], "calendars": [],
            "activities": acts}


def random_classic(seed, count):
    """As such projects are usually generated: a network, few resources, demands of some of them."""
    rng = random.Random(seed)
    capacities = [rng.randint(4, 9) for _ in range(rng.choice([1, 2, 4]))]
    durations = [rng.randint(1, 9) for _ in range(count)]
    demands = [[rng.randint(1, max(1, c * 3 // 4)) if rng.random() < 0.6 else 0 for c in capacities]
               for _ in range(count)]
    after = [sorted(rng.sample(range(max(0, at - 7), at), min(at, rng.choice([0, 1, 1, 2, 2])))) for at in range(count)]
    return classic(f"classic of {count}, seed {seed}", durations, demands, capacities, after, sum(durations) + 1)


def random_shops(seed, jobs, machines):
    """A job shop: each job visits the machines one after another, a machine takes one job at a time."""
    rng = random.Random(seed)
    durations, demands, after = [], [], []
    for _ in range(jobs):
        for step, machine in enumerate(rng.sample(range(machines), machines)):
            after.append([len(durations) - 1] if step else [])
            durations.append(rng.randint(1, 9))
            demands.append([int(m == machine) for m in range(machines)])
    name = f"job shop of {jobs} by {machines}, seed {seed}"
    return classic(name, durations, demands, [1] * machines, after, sum(durations) + 1)


def random_building(seed, count):
    """Days of twelve slots with hours that vary, helpers who come and go, tools of which there is one, waits."""
    rng = random.Random(seed)
    days = rng.randint(10, 16)
    slots = days * 12
    light = [rng.random() < 0.85 and 3 + rng.randint(-1, 1) <= s < 9 + rng.randint(-1, 2)
             for _ in range(days) for s in range(12)]
    quiet = [3 <= s < 10 and s != 6 for _ in range(days) for s in range(12)]
    hands, skilled = [], []
    for day in range(days):
        many = rng.choice([1, 1, 2, 2, 3, 4])
        few = min(many, rng.choice([0, 1, 1, 2]))
        first, last = rng.randint(1, 4), rng.randint(8, 12)
        hands += [many if first <= s < last else 0 for s in range(12)]
        skilled += [few if first <= s < last else 0 for s in range(12)]
    tools = [[1] * slots for _ in range(rng.randint(1, 3))]
    for tool in tools:
        if rng.random() < 0.4:  # lent for a few days only
            lent = rng.randint(0, 3) * 12
            tool[:lent] = [0] * lent
    resources = [hands, skilled] + tools
    acts = []
    for at in range(count):
        work = 0 if rng.random() < 0.06 else rng.randint(1, 7)
        demands = [(0, rng.choice([1, 1, 1, 2]))]
        if rng.random() < 0.3:
            demands.append((1, 1))
        if rng.random() < 0.4:
            demands.append((2 + rng.randrange(len(tools)), 1))
        if rng.random() < 0.1:
            demands = []
        calendars = [c for c, share in ((0, 0.3), (1, 0.3)) if rng.random() < share]
        after = [(of, rng.choice([0, 0, 0, 0, 2, 5, 12, 24])) for of in
                 sorted(rng.sample(range(max(0, at - 6), at), min(at, rng.choice([0, 0, 1, 1, 1, 2]))))]
        earliest = rng.randint(1, 30) if rng.random() < 0.15 else 0
        in_one_go = work <= 3 and rng.random() < 0.3
        acts.append(activity(work, calendars, demands, earliest, in_one_go, after))
    return {"name": f"building of {count}, seed {seed}", "slots": slots, "resources": resources,
            "calendars": [light, quiet], "activities": acts}


# j301_1 of PSPLIB, Kolisch and Sprecher, "PSPLIB: a project scheduling problem library", 1997: least finish 43 (from
# memory). Duration, resource and demand of jobs 2 to 31, and what comes after each.
J301_1 = [
    (8, 0, 4, [6, 11, 15]), (4, 0, 10, [7, 8, 13]), (6, 3, 3, [5, 9, 10]), (3, 0, 3, [20]), (8, 3, 8, [30]),
    (5, 0, 4, [27]), (9, 1, 1, [12, 19, 27]), (2, 0, 6, [14]), (7, 3, 1, [16, 25]), (9, 1, 5, [20, 26]),
    (2, 1, 7, [14]), (6, 0, 4, [17, 18]), (3, 1, 8, [17]), (9, 0, 3, [25]), (10, 3, 5, [21, 22]),
    (6, 3, 8, [22]), (5, 3, 7, [20, 22]), (3, 1, 1, [24, 29]), (7, 1, 10, [23, 25]), (2, 3, 6, [28]),
    (7, 0, 2, [23]), (2, 0, 3, [24]), (3, 1, 9, [30]), (3, 0, 4, [30]), (7, 2, 4, [31]),
    (8, 3, 7, [28]), (3, 1, 8, [31]), (7, 1, 7, []), (2, 1, 7, []), (2, 2, 2, []),
]


def published():
    count = len(J301_1)
    after = [[at for at in range(count) if job + 2 in J301_1[at][3]] for job in range(count)]
    demands = [[demand if r == resource else 0 for r in range(4)] for _, resource, demand, _ in J301_1]
    name = "PSPLIB j301_1 (from memory)"
    return classic(name, [job[0] for job in J301_1], demands, [12, 13, 4, 12], after, 80)


def cases():
    yield published()
    for seed in range(16):
        yield random_classic(100 + seed, 5 + seed)
    yield from (random_classic(200 + seed, 20) for seed in range(6))
    yield random_shops(300, 4, 4)
    yield random_shops(301, 5, 4)
    yield random_shops(302, 6, 3)
    yield random_shops(303, 4, 5)
    for seed in range(32):
        yield random_building(400 + seed, 5 + seed // 2)
    yield from (random_building(500 + seed, 20) for seed in range(12))


def runs(values):
    return [[len(list(group)), int(value)] for value, group in groupby(values)]


def main(target):
    done = []
    for case in cases():
        finish = least_finish(case)
        if finish is None:  # does not fit into its days
            continue
        print(case["name"], finish, file=sys.stderr)
        compact = {"resources": [runs(r) for r in case["resources"]], "calendars": [runs(c) for c in case["calendars"]]}
        done.append({**case, **compact, "finish": finish})
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in done)
    with open(target, "w", encoding="utf-8") as file:
        file.write('{"source":"OR-Tools 9.15, CP-SAT, each proven to be the least",\n"cases":[\n' + lines + "\n]}\n")


main(sys.argv[1])
