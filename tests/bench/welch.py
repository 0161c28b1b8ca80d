"""Welch's t on band means by SciPy, as the plain alternative to the judge.

Reads {"pairs": [{"before": [...], "after": [...]}]} from standard input and writes, per pair, the effect (after
minus before) with half its 95 % interval, and the mean time of one pair in milliseconds, start-up left out.
"""

import json
import sys
import time

import scipy
from scipy import stats

pairs = json.load(sys.stdin)["pairs"]


def judge(pair):
    result = stats.ttest_ind(pair["after"], pair["before"], equal_var=False)
    low, high = result.confidence_interval(0.95)
    return {"effect": (low + high) / 2, "half": (high - low) / 2, "p": float(result.pvalue)}


judge(pairs[0])
start = time.perf_counter()
answers = [judge(pair) for pair in pairs]
elapsed = time.perf_counter() - start
json.dump(
    {"scipy": scipy.__version__, "pair_ms": 1000 * elapsed / len(pairs), "answers": answers},
    sys.stdout,
)
