# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""What friction in straight pipe is compared with.

    python3 friction.py TEST_DATA_DIRECTORY

colebrook_grid.csv   Colebrook and White by Newton's iteration on 50 decimal digits; scipy's brentq has to agree
pipe_gradients.csv   fluids: friction_factor, 64/Re or Colebrook; Re 2000 to 4000 left out, where laws differ
bs6700_by_colebrook.csv, copper_by_colebrook.csv   two published tables by fluids and iapws: how far the law that we
                     use lies from them. They start from bs6700_table_d4.csv and copper_published_table.csv

Needs: scipy, fluids, iapws.
"""
import math
import sys
from decimal import Decimal, getcontext
from importlib.metadata import version

from fluids.friction import friction_factor
from iapws import IAPWS97
from scipy.optimize import brentq

from reference_table import read, write

ROUGHNESS = "0 0.000001 0.00001 0.00005 0.0001 0.0002 0.0005 0.001 0.002 0.003 0.005 0.01 0.02 0.05".split()
REYNOLDS = (2300, 2500, 3000, 4000, 5000, 6000, 8000, 10000, 15000, 20000, 30000, 50000, 70000, 100000, 200000, 500000,
            10**6, 10**7, 10**8)


def by_newton(reynolds, roughness):
    """f of x = 1/sqrt f = -2 lg(roughness/3.7 + 2.51 x/Re)."""
    a, b, ten = Decimal(roughness) / Decimal("3.7"), Decimal("2.51") / Decimal(reynolds), Decimal(10).ln()
    x = Decimal(7)
    for _ in range(40):
        inner = a + b * x
        x -= (x + 2 * inner.log10()) / (1 + 2 * b / (inner * ten))
    return 1 / (x * x)


def by_brentq(reynolds, roughness):
    a, b = float(roughness) / 3.7, 2.51 / reynolds
    return brentq(lambda x: x + 2.0 * math.log10(a + b * x), 1.0, 100.0, xtol=1e-14, rtol=1e-15) ** -2


def colebrook(directory):
    getcontext().prec = 50
    rows = []
    pairs = [(re, eps) for re in REYNOLDS for eps in ROUGHNESS]
    for re, eps in pairs[1::3]:
        f = by_newton(re, eps)
        assert abs(by_brentq(re, eps) / float(f) - 1.0) < 1e-13, (re, eps)
        rows.append((str(re), eps, f"{f:.20f}"))
    write(directory, __file__, "colebrook_grid.csv",
          ["Colebrook and White, Darcy friction factor, by Newton's iteration on 50 decimal digits;",
           f"scipy {version('scipy')} brentq agrees to 1e-13"], ("Re", "eps_over_D", "f"), rows)


def gradients(directory):
    density, viscosity = 992.2597, 0.652741e-3
    rows = []
    for bore, rough in ((6.8, 0.0015), (8.8, 0.0015), (13.6, 0.0015), (20.2, 0.0015), (26.2, 0.0015), (16.1, 0.045),
                        (27.3, 0.045), (12.0, 0.007), (39.6, 0.0015)):
        for velocity in (0.02, 0.05, 0.3, 0.6, 0.9, 1.5, 3.0):
            d = bore / 1e3
            reynolds = density * velocity * d / viscosity
            if 2000.0 < reynolds < 4000.0:
                continue
            f = 64.0 / reynolds
            if reynolds > 2000.0:
                f = friction_factor(Re=reynolds, eD=rough / bore, Method="Colebrook")
            mass = density * velocity * math.pi / 4.0 * d * d
            rows.append((bore, rough, mass, velocity, reynolds, f / d * density / 2.0 * velocity * velocity))
    write(directory, __file__, "pipe_gradients.csv",
          [f"fluids {version('fluids')} friction_factor (Colebrook), 64/Re to Re 2000; density {density} kg/m3,",
           f"viscosity {viscosity * 1e3} mPa s, water at 40 C"],
          "bore_mm roughness_mm kg_per_s m_per_s reynolds pa_per_m".split(), rows, digits=16)


def water(celsius):
    state = IAPWS97(T=celsius + 273.15, P=0.2)
    return state.rho, state.mu


def in_copper(mass, bore, celsius):
    """Velocity and gradient, SI, of turbulent flow in drawn copper, 0.0015 mm rough."""
    density, viscosity = water(celsius)
    velocity = mass / density / (math.pi / 4.0 * bore * bore)
    reynolds = density * velocity * bore / viscosity
    assert reynolds > 4000.0
    f = friction_factor(Re=reynolds, eD=0.0015e-3 / bore, Method="Colebrook")
    return velocity, f / bore * density / 2.0 * velocity * velocity


def cold_water(directory):
    rows = []
    for row in read(directory, "bs6700_table_d4.csv"):
        od, litres = float(row["od_mm"]), float(row["l_per_s"])
        bore = (od - (1.4 if od < 20.0 else 1.8)) / 1e3
        velocity, gradient = in_copper(litres / 1e3 * water(10.0)[0], bore, 10.0)
        rows.append((od, litres, velocity, gradient / 1e3))
    write(directory, __file__, "bs6700_by_colebrook.csv",
          [f"the rows of bs6700_table_d4.csv by fluids {version('fluids')} and iapws {version('iapws')}, IF97 at 10 C"],
          ("od_mm", "l_per_s", "m_per_s", "kpa_per_m"), rows)


def copper_table(directory):
    """Beside the gradient in tube of EN 1057: the bore with which Colebrook gives the printed column, as a mean over
    it, and the gradient in that. Where the second comes out as printed, the table is for tube of that bore."""
    table = read(directory, "copper_published_table.csv")
    fits = {}
    for row in table:
        mass, printed, bore = (float(row[c]) for c in ("kg_per_s", "pa_per_m", "bore_mm"))
        fits.setdefault(row["od_mm"], []).append(
            brentq(lambda d: in_copper(mass, d / 1e3, 75.0)[1] - printed, 0.8 * bore, 1.2 * bore, xtol=1e-12))
    rows = []
    for row in table:
        mass, printed, bore = (float(row[c]) for c in ("kg_per_s", "pa_per_m", "bore_mm"))
        fitted = sum(fits[row["od_mm"]]) / len(fits[row["od_mm"]])
        rows.append((printed, float(row["od_mm"]), in_copper(mass, bore / 1e3, 75.0)[1], fitted,
                     in_copper(mass, fitted / 1e3, 75.0)[1]))
    write(directory, __file__, "copper_by_colebrook.csv",
          [f"the rows of copper_published_table.csv by fluids {version('fluids')} and iapws {version('iapws')}, "
           "IF97 at 75 C;",
           "gradient in the bore of EN 1057, and in the bore with which the law gives the printed column"],
          ("pa_per_m", "od_mm", "by_law", "fitted_bore_mm", "by_law_in_fitted"), rows)


if __name__ == "__main__":
    for make in (colebrook, gradients, cold_water, copper_table):
        make(sys.argv[1])
