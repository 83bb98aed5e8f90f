"""Shared areas and gaps of boxes, and the widest body that gets through a van, by Shapely (GEOS)."""

import json
import random
import sys

from shapely import Point, Polygon, affinity, box, unary_union

PAIRS = 60
WALKS = 60
ARC = 128


def number(value, digits):
    return round(float(value), digits) + 0.0


def placed(length, width, x, y, turn):
    """A box with its first corner at a place, turned anticlockwise about that corner."""
    return affinity.translate(affinity.rotate(box(0, 0, length, width), turn, origin=(0, 0)), x, y)


def pair(rng):
    def one():
        size = rng.randrange(200, 2000), rng.randrange(200, 1000)
        turn = rng.choice([0, 90, 180, 270, rng.randrange(0, 360), round(rng.uniform(-90, 450), 2)])
        return [*size, rng.randrange(-600, 600), rng.randrange(-600, 600), turn]

    first, second = one(), one()
    shapes = placed(*first), placed(*second)
    shared = shapes[0].intersection(shapes[1]).area
    return {"first": first, "second": second, "shared_mm2": number(shared, 3),
            "gap_mm": number(shapes[0].distance(shapes[1]), 6)}


def outline(rng):
    length, width = rng.randrange(2400, 4200), rng.randrange(1450, 1950)
    corners = [(0, 0), (length, 0), (length, width), (0, width)]
    if rng.random() < 0.4:
        corner = rng.randrange(150, 500)
        corners = [(0, 0), (length - corner, 0), (length, corner), (length, width), (0, width)]
    if rng.random() < 0.2:
        notch = rng.randrange(300, 900), rng.randrange(200, 500)
        corners = [(notch[0], 0), *corners[1:], (0, notch[1]), notch]
    if rng.random() < 0.3:
        corners.reverse()
    return corners


def obstacle(rng, corners):
    length, width = max(x for x, _ in corners), max(y for _, y in corners)
    turn = rng.choice([0, 0, 90, round(rng.uniform(0, 90), 1)])
    size = rng.randrange(150, 1300), rng.randrange(150, 700)
    return [*size, rng.randrange(0, length), rng.randrange(0, width), turn]


def widest(floor, obstacles, start, goal):
    """By bisection: what is free, made narrower by half the body, is one piece that has both places."""
    def passes(radius):
        # The floor less the walls and the obstacles, all grown by the radius.
        free = floor.difference(unary_union([floor.boundary, *obstacles]).buffer(radius, quad_segs=ARC))
        parts = getattr(free, "geoms", [free])
        return any(part.covers(Point(start)) and part.covers(Point(goal)) for part in parts)

    low, high = 0.0, 2500.0
    if not passes(0.05):
        return 0.0
    while high - low > 0.01:
        middle = (low + high) / 2
        if passes(middle / 2):
            low = middle
        else:
            high = middle
    return low


def walk(rng):
    corners = outline(rng)
    floor = Polygon(corners)
    boxes = [obstacle(rng, corners) for _ in range(rng.randint(1, 9))]
    shapes = [placed(*one) for one in boxes]
    taken = unary_union([floor.boundary, *shapes])

    def spot():
        while True:
            x, y = rng.randrange(0, 4200), rng.randrange(0, 1950)
            if floor.covers(Point(x, y)) and taken.distance(Point(x, y)) > rng.choice([20, 100, 250]):
                return [x, y]

    start, goal = spot(), spot()
    return {"outline": corners, "boxes": boxes, "start": start, "goal": goal,
            "widest_mm": number(widest(floor, shapes, start, goal), 2)}


def rows(cases):
    return "[\n" + ",\n".join("  " + json.dumps(case) for case in cases) + "\n ]"


def main(target):
    rng = random.Random(73_000)
    pairs = rows([pair(rng) for _ in range(PAIRS)])
    walks = rows([walk(rng) for _ in range(WALKS)])
    what = "boxes: length, width, x and y of the first corner, degrees turned anticlockwise about it; all in mm"
    with open(target, "w", encoding="utf-8") as file:
        file.write('{\n "source": "Shapely 2.2.0 (GEOS)",\n "what": ' + json.dumps(what))
        file.write(f',\n "pairs": {pairs},\n "walks": {walks}\n}}\n')


main(sys.argv[1])
