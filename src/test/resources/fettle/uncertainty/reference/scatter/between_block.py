"""Between-block scatter of a straight line with known independent uncertainties, by direct search.

Run: python3 between_block.py   (mpmath; writes between-block.json beside itself)

Restricted log-likelihood L = -(ln|V| + ln|X'V^-1X| + Q)/2 with V = diag(u^2 + tau^2), its maximum,
the ends of the interval where it has fallen by half of chi-squared(0.95; 1), the maximum of the
unrestricted one, and moments of tau under the prior sqrt(sqrt(sum w^2)), w = 1/(u^2 + tau^2), by
adaptive quadrature; all with 40 digits and the closed 2 x 2 formulas. Invented data.
"""

import json
import os

from mpmath import mp, mpf, findroot, inf, log, quad, sqrt, exp, diff, nstr

mp.dps = 40

R = [mpf(t) for t in "100 140 180 220 260 300 340 380 420 460".split()]
H = [mpf(t) for t in "203.1 247.2 280.9 325.6 355.2 407.7 436.3 488.9 515.2 565.0".split()]
U = [mpf(t) for t in "1.5 1.5 1.8 1.8 2.0 2.0 2.4 2.4 2.8 2.8".split()]
AT = mpf(250)


def fit(tau):
    w = [1 / (u * u + tau * tau) for u in U]
    s, sr = sum(w), sum(a * b for a, b in zip(w, R))
    mean = sr / s
    hm = sum(a * b for a, b in zip(w, H)) / s
    srr = sum(a * (r - mean) ** 2 for a, r in zip(w, R))
    slope = sum(a * (r - mean) * (h - hm) for a, r, h in zip(w, R, H)) / srr
    q = sum(a * (h - hm - slope * (r - mean)) ** 2 for a, r, h in zip(w, R, H))
    value = hm + slope * (AT - mean)
    variance = 1 / s + (AT - mean) ** 2 / srr
    return w, s * srr, q, value, variance


def restricted(tau):
    w, det, q, _, _ = fit(tau)
    return -(-sum(log(a) for a in w) + log(det) + q) / 2


def plain(tau):
    w, _, q, _, _ = fit(tau)
    return -(-sum(log(a) for a in w) + q) / 2


def posterior(tau):
    w = fit(tau)[0]
    return sqrt(sqrt(sum(a * a for a in w))) * exp(restricted(tau) - TOP)


reml = findroot(lambda t: diff(restricted, t), mpf(4))
TOP = restricted(reml)
DROP = mpf("1.920729410347062979187")  # chi-squared(0.95; 1) / 2
low = findroot(lambda t: restricted(t) - TOP + DROP, mpf(2))
high = findroot(lambda t: restricted(t) - TOP + DROP, mpf(9))
ml = findroot(lambda t: diff(plain, t), mpf(4))
GRID = [0, 1, 2, 3, 4, 5, 7, 10, 20, 50, 200, inf]
mass = quad(posterior, GRID)
mean = quad(lambda t: t * posterior(t), GRID) / mass
value = quad(lambda t: fit(t)[3] * posterior(t), GRID) / mass
second = quad(lambda t: (fit(t)[4] + (fit(t)[3] - value) ** 2) * posterior(t), GRID) / mass


def expected(x):
    return {"value": float(x), "recomputed": nstr(x, 20), "status": "computed"}


case = {
    "id": "between-block",
    "name": "Between-block scatter of a straight line",
    "category": "random effects",
    "source": {
        "citation": "between_block.py beside this file, mpmath 40 digits",
        "obtained": "computed by: python3 between_block.py",
    },
    "data": {
        "r": [float(x) for x in R],
        "h": [float(x) for x in H],
        "u_h": [float(x) for x in U],
    },
    "settings": {"at": float(AT)},
    "expected": {
        "restricted": expected(reml),
        "low": expected(low),
        "high": expected(high),
        "maximum_likelihood": expected(ml),
        "maximum_log_likelihood": expected(plain(ml)),
        "chi_squared_at_zero": expected(fit(mpf(0))[2]),
        "posterior_mean": expected(mean),
        "marginal_value_at": expected(value),
        "marginal_variance_at": expected(second),
    },
}
with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "between-block.json"), "w") as out:
    json.dump(case, out, indent=1)
    out.write("\n")
