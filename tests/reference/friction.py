# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""What friction in straight pipe is compared with.

    python3 friction.py TEST_DATA_DIRECTORY

colebrook_grid.csv   Colebrook and White by Newton's iteration on 50 decimal digits; scipy's brentq has to agree
pipe_gradients.csv   fluids: friction_factor, 64/Re or Colebrook; Re 2000 to 4000 left out, where laws differ

Needs: scipy, fluids.
"""
import math
import sys
from decimal import Decimal, getcontext
from importlib.metadata import version

from fluids.friction import friction_factor
from scipy.optimize import brentq

from reference_table import write

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


if __name__ == "__main__":
    colebrook(sys.argv[1])
    gradients(sys.argv[1])
