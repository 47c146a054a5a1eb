# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""What the relations of emitters are compared with, by the law of BS EN 442, output = rating (excess / rated excess)^n.

    python3 emitters.py TEST_DATA_DIRECTORY

emitter_factors.csv           (dT/50)^n
emitter_balance.csv           water side and room side equal: scipy's brentq for the return temperature
lowest_flow_temperature.csv   the flow temperature that gives an output at a drop, by brentq

Needs: numpy, scipy.
"""
import itertools
import sys
from importlib.metadata import version

import numpy as np
from scipy.optimize import brentq

from reference_table import write

CP = 4180.0  # J/(kg K)


def log_mean(a, b):
    return (a - b) / np.log(a / b)


RATED = log_mean(55.0, 45.0)  # 75/65/20


def factors(directory):
    exponents = (1.1, 1.2, 1.25, 1.3, 1.33, 1.35, 1.4)
    write(directory, __file__, "emitter_factors.csv", ["(dT/50)^n, BS EN 442-2, in double precision"],
          ("dT_K", *(f"n={n}" for n in exponents)),
          [(excess, *((excess / 50.0) ** n for n in exponents)) for excess in range(5, 61, 5)], digits=16)


def balance(directory):
    rows = []
    for rated, n, mass, (flow, room) in itertools.product(
            (500, 1500, 4000), (1.0, 1.1, 1.3, 1.35, 1.6), (0.001, 0.01, 0.05, 0.5),
            ((35, 21), (45, 18), (55, 21), (75, 20))):
        def surplus(above):   # of the water side; `above`: return over room
            return mass * CP * (flow - room - above) - rated * (log_mean(flow - room, above) / RATED) ** n

        above = brentq(surplus, 1e-12, (flow - room) * (1.0 - 1e-12), xtol=1e-13, rtol=1e-15)
        rows.append((rated, n, mass, flow, room, room + above, mass * CP * (flow - room - above)))
    write(directory, __file__, "emitter_balance.csv",
          ["return temperature and output at which m cp (tf - tr) = rated (log mean / 49.8329 K)^n;",
           f"scipy {version('scipy')} brentq to 1e-13 K, cp {CP:.0f} J/(kg K)"],
          "rated_w exponent kg_per_s flow_c room_c return_c output_w".split(), rows, digits=15)


def lowest_flow(directory):
    rows = []
    emitters = ((1000, 1.3, 300), (1000, 1.3, 500), (1750, 1.33, 620),
                (2450, 1.34, 900), (800, 1.23, 260), (600, 1.4, 590))
    for (rated, n, wanted), drop, room in itertools.product(emitters, (3, 5, 10, 20), (18, 21, 22)):
        def surplus(above):   # `above`: return over room
            return rated * (log_mean(above + drop, above) / RATED) ** n - wanted

        rows.append((rated, n, wanted, drop, room, room + drop + brentq(surplus, 1e-9, 200.0, xtol=1e-13, rtol=1e-15)))
    write(directory, __file__, "lowest_flow_temperature.csv",
          ["flow temperature at which an emitter gives an output with a stated drop;",
           f"scipy {version('scipy')} brentq to 1e-13 K on the log mean relation of BS EN 442"],
          "rated_w exponent wanted_w drop_k room_c flow_c".split(), rows, digits=15)


if __name__ == "__main__":
    for make in (factors, balance, lowest_flow):
        make(sys.argv[1])
