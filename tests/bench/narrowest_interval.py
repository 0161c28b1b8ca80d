"""How narrow an interval can be on a day without drift if it holds the truth in 95 % of days with any drift.

Entries of equal size are driven one after another and adjacent ones judged; scatter is taken as known, the drift as
straight. The difference of means D carries n pulls of drift, the slopes inside entries tell the drift with an error
that is c times D's own. Any interval may lean on how large the drift looks: its middle takes g(x) off D and it reaches
h(x) to both sides, x being the slope over its error. g and h are searched for the least mean reach on a day without
drift while 95 % are held at every drift (the question of Kabaila and Giri, J. Statist. Plann. Inference 139 (2009)
3419, from memory). Ratios are to Welch's t: t quantiles at the degrees that pooling and Welch have at best.

    python3 tests/bench/narrowest_interval.py [entries, default 5]
"""

import sys

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import minimize
from scipy.stats import norm, t

ENTRIES = int(sys.argv[1]) if len(sys.argv) > 1 else 5
KNOTS = np.array([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6.5])
NOISE = np.linspace(-6, 6, 241)
WEIGHT = norm.pdf(NOISE) * (NOISE[1] - NOISE[0])
DRIFTS = np.concatenate([np.linspace(0, 6, 25), [7, 8]])
INNER = len(KNOTS) - 2
Z = norm.ppf(0.975)


def narrowest(c: float) -> float:
    """Least mean reach without drift over that of an interval that knows there is none."""
    plain = Z * np.hypot(1, c)

    def held_and_reach(p):
        taken = PchipInterpolator(KNOTS, np.concatenate([[0], p[:INNER], [KNOTS[-1]]]))
        reach = PchipInterpolator(KNOTS, np.concatenate([p[INNER:], [plain]]))
        held, mean = [], []
        for drift in DRIFTS:
            x = drift + NOISE
            size = np.minimum(np.abs(x), KNOTS[-1])
            g = np.where(np.abs(x) < KNOTS[-1], np.sign(x) * taken(size), x)
            h = np.where(np.abs(x) < KNOTS[-1], reach(size), plain)
            off = c * (drift - g)
            held.append(((norm.cdf(h - off) - norm.cdf(-h - off)) * WEIGHT).sum())
            mean.append((h * WEIGHT).sum())
        return np.array(held), np.array(mean)

    start = np.concatenate([KNOTS[1:-1], np.full(INNER + 1, plain)])
    found = minimize(
        lambda p: held_and_reach(p)[1][0],
        start,
        constraints=[{"type": "ineq", "fun": lambda p: held_and_reach(p)[0] - 0.95}],
        method="SLSQP",
        options={"maxiter": 150},
    )
    return held_and_reach(found.x)[1][0] / Z


print(f"{ENTRIES} entries; width over Welch's on a day without drift")
print("pulls  drift known to be none  any drift, best possible  any drift, plain")
for n in (2, 3, 4, 5):
    pooled = t.ppf(0.975, ENTRIES * (n - 1)) / t.ppf(0.975, 2 * (n - 1))
    # Error of n places of drift from the slopes inside entries, over that of a difference of means.
    c = np.sqrt(12 * n / (ENTRIES * (n * n - 1))) / np.sqrt(2 / n)
    print(f"{n:5d}  {pooled:22.2f}  {pooled * narrowest(c):24.2f}  {pooled * np.hypot(1, c):16.2f}")
