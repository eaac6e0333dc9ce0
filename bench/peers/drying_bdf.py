"""The same cells as Leafward's drying model, through a general-purpose stiff solver: scipy's solve_ivp, method BDF.

Reads one JSON object from standard input: dryMass (kg), conductance (kg/h per 1), gab {m0, C, K}, start, room (relative
humidity), hours, rtol, repeats. Prints one JSON object: meanPercent, milliseconds (best of the repeats), scipy.
"""
import json
import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.sparse import diags

case = json.load(sys.stdin)
mass = np.array(case["dryMass"])
out = np.array(case["conductance"])
m0, c, k = (case["gab"][name] for name in ("m0", "C", "K"))
inward = np.append(out[1:], 0.0)
room = case["room"]


def content(a):
    return m0 * c * k * a / ((1 - k * a) * (1 - k * a + c * k * a))


def slope(a):
    below = (1 - k * a) * (1 - k * a + c * k * a)
    return m0 * c * k * (1 - (1 - c) * k * k * a * a) / below**2


def rate(_, a):
    before = np.concatenate(([room], a[:-1]))
    after = np.append(a[1:], a[-1])
    return (out * (before - a) - inward * (a - after)) / (mass * slope(a))


n = len(mass)
pattern = diags([1, 1, 1], [-1, 0, 1], shape=(n, n))
best, mean = float("inf"), None
for _ in range(case["repeats"]):
    began = time.perf_counter()
    answer = solve_ivp(
        rate, (0, case["hours"]), np.full(n, case["start"]), method="BDF",
        rtol=case["rtol"], atol=case["rtol"], jac_sparsity=pattern if case["sparse"] else None,
    )
    best = min(best, time.perf_counter() - began)
    mean = float(np.sum(mass * content(answer.y[:, -1])) / np.sum(mass)) * 100
print(json.dumps({"meanPercent": mean, "milliseconds": best * 1000, "scipy": scipy.__version__}))
