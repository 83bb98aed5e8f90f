"""Percentiles by NumPy; ranks, rank correlations, medians of deviations, Student's t and the normal distribution by SciPy.

Not `statistics.py`: Python has a module of that name, which this would stand in for.
"""

import json
import sys

import numpy as np
from scipy import stats

LISTS = [
    [3.5],
    [2.0, -1.0],
    [0.1, 0.2, 0.2, 0.2, 5.0],
    [12.0, 7.5, 7.5, 3.25, 90.0, -4.0, 12.0, 0.0, 33.0, 7.5, 1e6],
    [round(float(value), 4) for value in np.random.default_rng(11).normal(20, 6, 40)],
    [float(value) for value in np.random.default_rng(12).integers(0, 9, 60)],
]
PERCENTS = [0, 2.5, 10, 33.3, 50, 75, 90, 97.5, 100]
DEGREES = [0.1, 0.5, 1, 1.5, 2, 3, 4.4, 7, 12, 29, 64.5, 150, 420, 999, 1000, 5e3, 1e5, 1e9]
SHARES = [0.001, 0.005, 0.025, 0.1, 0.2, 0.35, 0.499, 0.5, 0.61, 0.8, 0.9, 0.95, 0.975, 0.99, 0.9995, 0.999]
PLACES = [-40, -6.5, -3, -1.2, -0.4, -1e-4, 0, 0.05, 0.7, 1, 2.2, 4, 11, 200]


def number(value):
    """Twelve digits: more may differ from one processor to the next."""
    return float(f"{float(value):.12g}")


def pairs():
    """Lists with and without ties, going up together more or less."""
    chance = np.random.default_rng(13)
    for count, noise, step in [(3, 0.1, 0), (6, 1.0, 0), (25, 0.6, 0), (25, 0.6, 0.5), (60, 2.5, 1), (12, 0.4, 2)]:
        a = chance.normal(0, 1, count)
        b = -a + chance.normal(0, noise, count)
        if step:
            a, b = np.round(a / step) * step, np.round(b / step) * step
        a, b = [[round(float(value), 6) + 0.0 for value in values] for values in (a, b)]
        yield {"a": a, "b": b, "correlation": number(stats.spearmanr(a, b).statistic)}


def main(target):
    data = {
        "source": "NumPy 2.2.6: percentile (linear); SciPy 1.17.1: rankdata, spearmanr, median_abs_deviation, t, norm",
        "lists": [
            {
                "values": values,
                "percentiles": [[percent, number(np.percentile(values, percent))] for percent in PERCENTS],
                "median": number(np.median(values)),
                "deviation": number(stats.median_abs_deviation(values)),
                "ranks": stats.rankdata(values).tolist(),
            }
            for values in LISTS
        ],
        "pairs": list(pairs()),
        "t_quantiles": [[share, degrees, number(stats.t.ppf(share, degrees))] for degrees in DEGREES for share in SHARES],
        "t_shares": [[t, degrees, number(stats.t.cdf(t, degrees))] for degrees in DEGREES for t in PLACES],
        "normal_quantiles": [[share, number(stats.norm.ppf(share))] for share in [*SHARES, 1e-30, 1e-8]],
    }
    with open(target, "w", encoding="utf-8") as file:
        rows = [f"{json.dumps(key)}: {json.dumps(value)}" for key, value in data.items()]
        file.write("{\n " + ",\n ".join(rows) + "\n}\n")


main(sys.argv[1])
