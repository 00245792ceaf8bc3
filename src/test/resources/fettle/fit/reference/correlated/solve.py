"""Errors-in-variables fits with dense covariances, independent of the program under test.

Run: python3 solve.py   (mpmath 1.2 or later; writes correlated-*.json beside itself)

Minimises Q = (r - x)' Vr^-1 (r - x) + (h - g(x; b))' Vh^-1 (h - g(x; b)) over all of b and x by
Newton's method with the exact Hessian, 60 digits, dense matrices, no elimination and no shared
effects as unknowns. The covariance is the b block of (J' W J)^-1, J the whole Jacobian at the
solution. The data are invented.
"""

import json
import os

from mpmath import mp, mpf, matrix, exp, log, inverse, lu_solve, norm, sqrt

mp.dps = 60
HERE = os.path.dirname(os.path.abspath(__file__))


def dense(variances, effects):
    m = len(variances)
    v = matrix(m, m)
    for i in range(m):
        v[i, i] = variances[i]
    for effect in effects:
        for i in range(m):
            for j in range(m):
                v[i, j] += effect[i] * effect[j]
    return v


def solve(g, b, r, h, vr, vh):
    """g(x, b) -> value, [d/dx, d/db..], symmetric second derivatives in the same order."""
    m, p = len(r), len(b)
    wr, wh = inverse(vr), inverse(vh)
    x = list(r)
    for _ in range(200):
        n = p + m
        gradient, hessian = matrix(n, 1), matrix(n, n)
        terms = [g(x[i], b) for i in range(m)]
        eh = matrix([h[i] - terms[i][0] for i in range(m)])
        er = matrix([r[i] - x[i] for i in range(m)])
        jacobian = matrix(m, n)
        for i in range(m):
            jacobian[i, p + i] = terms[i][1][0]
            for k in range(p):
                jacobian[i, k] = terms[i][1][1 + k]
        we = wh * eh
        gradient = -(jacobian.T * we)
        hessian = jacobian.T * wh * jacobian
        wre = wr * er
        for i in range(m):
            gradient[p + i] -= wre[i]
            for j in range(m):
                hessian[p + i, p + j] += wr[i, j]
        gauss = hessian.copy()
        for i in range(m):
            index = [p + i] + list(range(p))
            for a in range(1 + p):
                for c in range(1 + p):
                    hessian[index[a], index[c]] -= we[i] * terms[i][2][a][c]
        step = lu_solve(hessian if _ > 3 else gauss, -gradient)
        b = [b[k] + step[k] for k in range(p)]
        x = [x[i] + step[p + i] for i in range(m)]
        size = max(abs(step[k]) / abs((b + x)[k]) for k in range(n))
        if size < mpf(10) ** -50:
            break
    else:
        raise SystemExit("no convergence")
    q = (er.T * wr * er)[0] + (eh.T * wh * eh)[0]
    covariance = inverse(gauss)
    return b, x, q, covariance


def polynomial(x, b):
    p = len(b)
    value = sum(b[k] * x**k for k in range(p))
    first = [sum(k * b[k] * x ** (k - 1) for k in range(1, p))] + [x**k for k in range(p)]
    second = [[mpf(0)] * (p + 1) for _ in range(p + 1)]
    second[0][0] = sum(k * (k - 1) * b[k] * x ** (k - 2) for k in range(2, p))
    for k in range(1, p):
        second[0][1 + k] = second[1 + k][0] = k * x ** (k - 1)
    return value, first, second


def power(x, b):
    a, e = b
    value = a * x**e
    first = [value * e / x, value / a, value * log(x)]
    xx = value * e * (e - 1) / x**2
    xa = value * e / x / a
    xe = value / x * (1 + e * log(x))
    ae = value * log(x) / a
    ee = value * log(x) ** 2
    return value, first, [[xx, xa, xe], [xa, mpf(0), ae], [xe, ae, ee]]


def text(number):
    return mp.nstr(number, 25)


def expected(number):
    return {"value": float(number), "recomputed": text(number), "status": "computed"}


def write(name, description, model, data, b, x, q, covariance, names):
    p = len(b)
    case = {
        "id": name,
        "name": description,
        "category": "errors in variables",
        "source": {
            "citation": "solve.py beside this file: dense covariances, full Newton, mpmath 60 digits",
            "obtained": "computed by: python3 solve.py",
        },
        "model": model,
        "data": data,
        "expected": {
            "coefficients": {names[k]: expected(b[k]) for k in range(p)},
            "standard_uncertainties": {names[k]: expected(sqrt(covariance[k, k])) for k in range(p)},
            "covariance": [[expected(covariance[j, k]) for k in range(p)] for j in range(p)],
            "chi_squared": expected(q),
            "adjusted_responses": [expected(value) for value in x],
        },
    }
    with open(os.path.join(HERE, name + ".json"), "w") as out:
        json.dump(case, out, indent=1)
        out.write("\n")


def numbers(texts):
    return [mpf(t) for t in texts]


def correlated_polynomial():
    r = "2412 2377.5 2331 2290.5 2244 2198 2151.5 2103 2060".split()
    h = "121.4 152.3 198.7 241.6 287.9 346.2 401.8 468.1 529.6".split()
    ur = "2.1 2.4 1.9 2.2 2.6 2.0 2.3 2.5 2.2".split()
    uh = "1.6 1.9 2.4 2.9 3.3 4.1 4.7 5.4 6.2".split()
    group = "A A A A B B B A B".split()
    shared = "1.1 1.3 1.6 1.9 2.6 3.1 3.6 3.7 4.7".split()
    c = numbers(shared)
    effects = [[c[i] if group[i] == name else mpf(0) for i in range(9)] for name in "AB"]
    vh = dense([u**2 - s**2 for u, s in zip(numbers(uh), c)], effects)
    vr = dense([u**2 for u in numbers(ur)], [])
    b, x, q, covariance = solve(
        polynomial, numbers("8000 -6 0.001".split()), numbers(r), numbers(h), vr, vh
    )
    data = {"r": r, "h": h, "u_r": ur, "u_h": uh, "group": group, "u_shared": shared}
    write(
        "correlated-polynomial",
        "Parabola through nine points, both coordinates uncertain, two groups with shared errors",
        "h = b0 + b1 r + b2 r^2",
        data,
        b,
        x,
        q,
        covariance,
        ["b0", "b1", "b2"],
    )


def correlated_power():
    r = "1910 2040 2185 2320 2475 2610 2790 2985".split()
    h = "331 286.5 247.2 218.1 189.4 170.2 147.1 127.9".split()
    ur = "3.8 4.1 4.4 4.6 5.0 5.2 5.6 6.0".split()
    uh = "2.6 2.3 2.0 1.7 1.5 1.4 1.2 1.0".split()
    z = [["5.7", "6.1", "6.6", "7.0", "7.4", "7.8", "8.4", "9.0"]]
    z.append(["4.0", "4.0", "0", "0", "4.0", "0", "0", "4.0"])
    c = [["2.0", "1.7", "1.5", "1.3", "1.1", "1.0", "0.9", "0.8"]]
    vr = dense([u**2 for u in numbers(ur)], [numbers(e) for e in z])
    vh = dense([u**2 for u in numbers(uh)], [numbers(e) for e in c])
    b, x, q, covariance = solve(power, numbers("3e9 -2.1".split()), numbers(r), numbers(h), vr, vh)
    data = {"r": r, "h": h, "u_r": ur, "u_h": uh, "response_effects": z, "hardness_effects": c}
    write(
        "correlated-power",
        "Power law through eight points, two shared effects on responses, one on hardnesses",
        "h = a r^b",
        data,
        b,
        x,
        q,
        covariance,
        ["a", "b"],
    )


correlated_polynomial()
correlated_power()
