"""Water by independent code: density by IAPWS-95 (iapws), lying cylinders by integration (scipy), chances by closed forms of a
triangle (scipy), and the fewest stops of routes by an exact solver of integer programs (HiGHS, in scipy)."""

import json
import math
import random
import sys

import numpy
from iapws import IAPWS95
from scipy import integrate, optimize, stats

CELSIUS = (0.1, 2, 4, 8, 12, 15, 20, 25, 30, 40, 50, 65, 80, 95)
CYLINDERS_MM = ((300, 600), (400, 900), (180, 250), (95, 1200))
PARTS = (0.02, 0.1, 0.25, 0.4, 0.5, 0.77, 0.93, 1.0)


def number(value, figures=8):
    return float(f"{value:.{figures}g}")


def density(celsius):
    return [celsius, number(IAPWS95(T=273.15 + celsius, P=0.101325).rho / 1000)]


def cylinder(diameter, length, part):
    radius = diameter / 2
    # Chord by angle from the bottom, so that the integrand is smooth at both ends.
    end = math.acos(1 - 2 * part)
    area, _ = integrate.quad(lambda angle: 2 * (radius * math.sin(angle)) ** 2, 0, end)
    return [diameter, length, part * diameter, number(area * length / 1e6)]


def chance(low, likely, high, days_that_last):
    """The chance that what so many usual days use lasts ten days, if a factor on all of it is a triangle."""
    spread = stats.triang((likely - low) / (high - low), low, high - low)
    return [low, likely, high, days_that_last, number(spread.cdf(days_that_last / 10))]


def too_long(asks, room, opening):
    """Shortest runs of days that do not fit: (first, last). With `opening` taken at first."""
    runs = []
    for first in range(len(asks)):
        taken = opening if first == 0 else 0
        for last in range(first, len(asks)):
            taken += asks[last]
            if taken > room:
                runs.append((first, last))
                break
    return runs


def route(seed):
    chance = random.Random(seed)
    count = 45
    rooms = [chance.randint(20, 90), chance.randint(15, 70), chance.randint(4, 14)]
    taken = [chance.randint(0, room // 2) for room in rooms]
    asks = [[chance.randint(0, top) for top in (9, 7, 2)] for _ in range(count)]
    # No more used water than fresh.
    asks = [[fresh, min(grey, fresh), toilet] for fresh, grey, toilet in asks]
    rarely = chance.choice((0.3, 0.5, 0.8))
    offers = [[chance.random() < rarely for _ in range(3)] for _ in range(count)]
    rows = []
    for kind in range(3):
        # The first run counts what is taken; from the first day on there is also the run after a stop.
        for first, last in too_long([ask[kind] for ask in asks], rooms[kind], taken[kind]):
            rows.append([1 if first <= day <= last and offers[day][kind] else 0 for day in range(count)])
    least = 1 if rows else 0
    rows = rows or [[0] * count]
    solved = optimize.milp(numpy.ones(count), integrality=numpy.ones(count), bounds=optimize.Bounds(0, 1),
                           constraints=optimize.LinearConstraint(numpy.array(rows), lb=least))
    fewest = round(solved.fun) if solved.success else None
    flags = [sum(1 << kind for kind in range(3) if offer[kind]) for offer in offers]
    return {"rooms": rooms, "taken": taken, "asks": asks, "offers": flags, "fewest": fewest}


def lines(items):
    return "[\n" + ",\n".join("  " + json.dumps(item) for item in items) + "\n ]"


def main(target):
    parts = {
        "density": [density(celsius) for celsius in CELSIUS],
        "cylinders": [cylinder(*size, part) for size in CYLINDERS_MM for part in PARTS],
        "chances": [chance(*spread, days) for spread in ((0.5, 1.0, 1.5), (0.8, 1.0, 2.0), (0.4, 0.9, 1.1))
                    for days in (6, 8, 10, 13)],
        "routes": [route(seed) for seed in range(40)],
    }
    with open(target, "w", encoding="utf-8") as file:
        file.write('{\n "source": "iapws 1.5.5 (IAPWS-95), scipy 1.17.1 with HiGHS"')
        for name, items in parts.items():
            file.write(f',\n "{name}": {lines(items)}')
        file.write("\n}\n")


main(sys.argv[1])
