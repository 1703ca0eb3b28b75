"""The same jobs with NumPy and SciPy: a line each of name, median milliseconds, and what came out.

Usage: beside.py SERIES FLOW FIRST LATER, two CSV files of two columns, and how many draws.
"""
import sys
import time

import numpy as np
from scipy import optimize, special, stats

series = np.loadtxt(sys.argv[1], delimiter=",", skiprows=1)
flow = np.loadtxt(sys.argv[2], delimiter=",", skiprows=1)
FIRST, LATER = int(sys.argv[3]), int(sys.argv[4])
Z, U = series[:, 0], series[:, 1]
SD = 0.03
TEMPERING = (0.1, 0.3, 0.6, 1)


def timed(name, work, rounds=15):
    times = []
    for _ in range(rounds + 2):
        begin = time.perf_counter()
        said = work()
        times.append(1000 * (time.perf_counter() - begin))
    print(name, f"{np.median(times[2:]):.4f}", *(f"{x:.12g}" for x in said), sep="\t", flush=True)


def four(x, low, span, middle, width):
    return low + span * special.expit((x - middle) / width)


def four_parameters():
    return optimize.curve_fit(four, Z, U, p0=(U.min(), np.ptp(U), 0.5, 0.1))[0]


def herschel_bulkley():
    rate, stress = flow[:, 0], flow[:, 1]
    law = lambda g, yielding, k, n: yielding + k * g**n
    return optimize.curve_fit(law, rate, stress, p0=(stress.min() / 2, 1, 0.5), sigma=stress)[0]


def step(z, place, width):
    return special.expit((z - place) / width) - special.expit(-place / width)


# Name, medians and spreads (in ln) of the parameters, and the rise; each parameter a column for the draws.
SHAPES = [
    ((3.9,), (0.4,), lambda z, k: k * z),
    ((3.4, 1.05), (0.4, 0.35), lambda z, h, p: h * (z / p) * (2 - z / p)),
    ((4.2, 0.41, 2.25), (0.3, 0.27, 0.5), lambda z, s, h, n: s * z**n / (h**n + z**n)),
    ((3.2, 0.16, 0.28, 0.22), (0.45, 0.65, 0.6, 1.05),
     lambda z, a, c, p, k: k * z + a * (np.maximum(0, z - c) / np.maximum(0.2, 1 - c)) ** (1 + np.minimum(1, p))),
    ((4.1, 0.3), (0.35, 0.7), lambda z, s, k: s * (1 + k) * z / (k + z)),
    ((1.2, 0.13, 2.4, 0.6, 0.054), (0.4, 0.45, 0.35, 0.18, 0.5),
     lambda z, a, r, b, c, w: a * (1 - np.exp(-z / r)) + b * step(z, c, w)),
    ((1.2, 1.9, 0.47, 0.033), (0.4, 0.3, 0.26, 0.47), lambda z, k, b, c, w: k * z + b * step(z, c, w)),
    ((1.7, 1.35), (0.4, 0.3), lambda z, s, m: -s * np.log(1 - np.minimum(z / m, 0.97))),
    ((4.1,), (0.35,), lambda z, k: k * z),
    ((0.07, 2.3), (0.95, 0.5), lambda z, o, p: np.log1p((z / o) ** p)),
    ((1.2, 0.15, 0.027, 0.13), (0.45, 0.85, 0.9, 0.7),
     lambda z, p, c, w, k: k * z + p * np.log1p(np.maximum(0, z - c) / w)),
]


def prior_of(medians, spreads):
    return np.log((np.exp(U[0]), *medians)), np.array((3.0, *spreads))


def all_shapes():
    random = np.random.default_rng(1)
    sums = []
    for medians, spreads, rise in SHAPES:
        mean, sd = prior_of(medians, spreads)

        def residuals(p):
            return np.concatenate(((U - p[0] - rise(Z, *np.exp(p[1:]))) / SD, (p - mean) / sd))

        mean[0] = U[0]
        fits = [optimize.least_squares(residuals, mean, method="lm")]
        fits += [optimize.least_squares(residuals, mean + random.uniform(-1, 1, len(mean)) * sd, method="lm") for _ in range(4)]
        sums.append(min(f.cost for f in fits))
    return [min(sums)]


def posterior():
    """Draws from every shape: from the prior, then three times from a normal distribution fitted to the weighted draws."""
    random = np.random.default_rng(2)
    best = []
    for medians, spreads, rise in SHAPES:
        mean, sd = prior_of(medians, spreads)
        mean[0] = U[0]

        def likelihood(draws):
            columns = np.exp(draws[:, 1:]).T[:, :, None]
            off = U - draws[:, :1] - rise(Z[None, :], *columns)
            return stats.t.logpdf(off / SD, 4).sum(axis=1)

        prior = lambda draws: stats.norm.logpdf(draws, mean, sd).sum(axis=1)
        draws = mean + sd * random.standard_normal((FIRST, len(mean)))
        with np.errstate(all="ignore"):
            weights = TEMPERING[0] * likelihood(draws)
            for power in TEMPERING[1:]:
                part = np.exp(weights - weights.max())
                part /= part.sum()
                middle = part @ draws
                spread = 1.6 * np.cov(draws.T, aweights=part) + 1e-9 * np.eye(len(mean))
                proposal = stats.multivariate_normal(middle, spread, allow_singular=True)
                draws = np.concatenate((
                    proposal.rvs(LATER * 9 // 10, random_state=random).reshape(-1, len(mean)),
                    mean + sd * random.standard_normal((LATER - LATER * 9 // 10, len(mean)))))
                log_prior = prior(draws)
                mixed = np.logaddexp(np.log(0.9) + proposal.logpdf(draws), np.log(0.1) + log_prior)
                weights = power * likelihood(draws) + log_prior - mixed
        best.append(np.exp(weights - weights.max()).mean())
    return best[:1]


timed("four", four_parameters)
timed("flow", herschel_bulkley)
timed("shapes", all_shapes, 5)
timed("posterior", posterior, 5)
