"""Posteriors of factors by NumPy and SciPy: matrix formulas for each noise, and a dense sum over the noise.

The likelihood of a noise is the density of all readings at once, with the covariance that prior and noise give them.
"""

import json
import sys

import numpy as np
from scipy import integrate, linalg, optimize, stats

# Of the logarithm of the noise, around its guess.
PLACES, NEAR_PLACES = np.linspace(-4, 30, 3401), np.linspace(-0.02, 0.02, 401)
PERCENTS = [50, 80, 95, 99.9]
# Name, parameters, stretches, standard deviations of the prior, true factors, true noise, its guess, what that counts as.
CASES = [
    ("one factor", 9, [0.3], [1.2], 60, 60, 3),
    ("one factor and two stretches", 2, [0.3], [0.8], 40, 60, 1),
    ("more noise than guessed", 6, [0.2], [1.0], 150, 50, 2),
    ("less noise than guessed", 12, [0.3], [1.1], 20, 60, 4),
    ("two factors", 12, [0.3, 0.4], [1.3, 0.7], 60, 60, 3),
    ("two factors and one stretch", 1, [0.3, 0.3], [1.3, 1.1], 60, 60, 2.5),
    ("a factor of which nothing was known", 5, [30.0], [1.4], 50, 50, 2),
    ("a factor that is certain", 7, [0.0, 0.3], [1.0, 1.2], 50, 50, 5),
    ("a factor far from what was thought", 10, [0.05], [2.0], 30, 40, 2),
    ("three factors", 20, [0.3, 0.2, 0.5], [1.1, 0.9, 1.4], 40, 60, 2),
    ("four factors", 30, [0.3, 0.2, 0.5, 0.3], [1.1, 0.9, 1.4, 1.0], 40, 60, 2),
    ("four factors and three stretches", 3, [0.3, 0.2, 0.5, 0.3], [1.1, 0.9, 1.4, 1.0], 40, 60, 2),
    ("a guess as good as certain", 8, [0.3, 0.3], [1.1, 0.9], 60, 60, 1e6),
]


def number(value):
    """Eleven digits: more may differ from one processor to the next."""
    return float(f"{float(value):.11g}")


def stretches(chance, count, truth, noise):
    days = np.round(chance.uniform(0.3, 3, count), 3)
    expected = np.round(chance.uniform(80, 450, (count, len(truth))) * days[:, None], 2)
    known = np.round(chance.uniform(0, 300, count), 2)
    observed = known + expected @ truth + noise * np.sqrt(days) * chance.normal(0, 1, count)
    return np.round(observed, 2), expected, known, days


def given(variance, off, expected, days, sds):
    """The logarithm of the likelihood of a variance, and the mean and covariance of the factors' distances from the prior."""
    covariance = variance * np.diag(days) + (expected * sds**2) @ expected.T
    half = np.linalg.cholesky(covariance)
    whitened = linalg.solve_triangular(half, off, lower=True)
    log_likelihood = -0.5 * whitened @ whitened - np.log(np.diag(half)).sum()
    scaled = expected * sds / days[:, None]
    inner = np.linalg.inv(np.eye(len(sds)) + (expected * sds).T @ scaled / variance)
    return log_likelihood, sds * (inner @ scaled.T @ off) / variance, sds[:, None] * inner * sds


def noise_density(log_sd, guess, weight):
    """Of the logarithm of the standard deviation, when the variance is scaled inverse chi-squared; up to a constant."""
    return -weight * log_sd - 0.5 * weight * guess**2 * np.exp(-2 * log_sd)


def posterior(off, expected, days, sds, guess, weight):
    log_sds = np.log(guess) + (PLACES if weight < 1000 else NEAR_PLACES)
    found = [given(np.exp(2 * it), off, expected, days, sds) for it in log_sds]
    logs = np.array([it[0] for it in found]) + noise_density(log_sds, guess, weight)
    weights = np.exp(logs - logs.max())
    weights /= weights.sum()
    return weights, np.exp(2 * log_sds), np.array([it[1] for it in found]), np.array([it[2] for it in found])


def quantile(weights, means, spreads, share):
    kept = weights > 1e-25
    weights, means, spreads = weights[kept], means[kept], spreads[kept]
    if spreads.max() == 0:
        return means[0]
    ends = means + spreads * stats.norm.ppf(share)
    below = lambda x: weights @ stats.norm.cdf((x - means) / spreads) - share
    return optimize.brentq(below, ends.min() - 1e-9, ends.max() + 1e-9, xtol=1e-15, rtol=1e-14)


def decided(variance, expected, days, sds):
    """How many parameters the readings decide: the trace of the posterior's weight on them."""
    information = (expected * sds).T @ (expected * sds / days[:, None]) / variance
    return np.trace(np.linalg.solve(information + np.eye(len(sds)), information))


def deleted_residuals(variance, off, expected, days, sds, guess, weight):
    """Each stretch by the t that the conjugate prior predicts of it from the others, with each factor's variance as given."""
    residuals = []
    for at in range(len(off)):
        others = np.arange(len(off)) != at
        z, x = off[others] / np.sqrt(days[others]), expected[others] * sds / np.sqrt(days[others])[:, None]
        covariance = np.linalg.inv(np.eye(len(sds)) * variance + x.T @ x)
        mean = covariance @ x.T @ z
        squares = weight * guess**2 + z @ z - mean @ (np.eye(len(sds)) * variance + x.T @ x) @ mean
        row = expected[at] * sds / np.sqrt(days[at])
        scale = squares / (weight + len(z)) * (1 + row @ covariance @ row)
        residuals.append((off[at] / np.sqrt(days[at]) - row @ mean) / np.sqrt(scale))
    return residuals


def surprise(off, expected, days, sds, guess, weight):
    """The share of what the prior predicts of the best fit that is nearer, with the noise that is left around that fit."""
    z, x = off / np.sqrt(days), expected[:, sds > 0] / np.sqrt(days)[:, None]
    left, right, axes = np.linalg.svd(x * sds[sds > 0], full_matrices=False)
    fit = left.T @ z
    squares, degrees = weight * guess**2 + max(z @ z - fit @ fit, 0.0), weight + len(z) - len(right)
    if weight > 1000:
        variance = stats.invgamma(degrees / 2, scale=squares / 2)
        log_sds = 0.5 * np.log(variance.mean()) + NEAR_PLACES
    else:
        log_sds = 0.5 * np.log(squares / degrees) + PLACES
    density = np.exp(-degrees * (log_sds - log_sds.mean()) - 0.5 * squares * np.exp(-2 * log_sds)
                     - np.max(-degrees * (log_sds - log_sds.mean()) - 0.5 * squares * np.exp(-2 * log_sds)))
    nearer = [stats.chi2.cdf(np.sum(fit**2 / (right**2 + np.exp(2 * it))), len(right)) for it in log_sds]
    return integrate.trapezoid(density * nearer) / integrate.trapezoid(density)


def case(seed, name, count, sds, truth, noise, guess, weight):
    sds = np.array(sds)
    observed, expected, known, days = stretches(np.random.default_rng(seed), count, truth, noise)
    off = observed - known - expected.sum(axis=1)
    weights, variances, means, covariances = posterior(off, expected, days, sds, guess, weight)
    mean = weights @ means
    off_mean = means - mean
    covariance = np.tensordot(weights, covariances + off_mean[:, :, None] * off_mean[:, None, :], axes=1)
    variance = 1 / (weights @ (1 / variances))
    spread = np.sqrt(np.clip(np.diagonal(covariances, axis1=1, axis2=2), 0, None))
    both = np.sqrt(covariance[0, 0] * covariance[-1, -1])
    return {
        "name": name,
        "stretches": [[*it] for it in zip(observed.tolist(), expected.tolist(), known.tolist(), days.tolist())],
        "sds": sds.tolist(), "noise_sd": guess, "noise_weight": weight,
        "means": [number(1 + it) for it in mean],
        "posterior_sds": [number(it) for it in np.sqrt(np.diag(covariance))],
        "correlation_of_first_and_last": number(covariance[0, -1] / both) if both > 0 else None,
        "posterior_noise_sd": number(np.sqrt(variance)),
        "degrees": number(weight + count - decided(variance, expected, days, sds)),
        "intervals": [[percent, *[[number(1 + quantile(weights, means[:, at], spread[:, at], 0.5 + side * percent / 200))
                                   for side in (-1, 1)] for at in range(len(sds))]] for percent in PERCENTS],
        "residuals": [number(it) for it in deleted_residuals(variance, off, expected, days, sds, guess, weight)],
        "surprise": number(surprise(off, expected, days, sds, guess, weight)),
    }


def main(target):
    rows = [json.dumps(case(seed, *row)) for seed, row in enumerate(CASES, 41)]
    with open(target, "w", encoding="utf-8") as file:
        file.write('{\n "source": "NumPy 2.2.6, SciPy 1.17.1",\n "cases": [\n  ' + ",\n  ".join(rows) + "\n ]\n}\n")


main(sys.argv[1])
