# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Temperatures on given flows by a route that shares nothing with loopfolio.

    python3 network_heat.py OUTPUT_DIRECTORY

All equations of each case at once, unknown: every temperature and output; scipy.optimize.fsolve. Emitters by the
EN 442 law, output = rating (log mean excess / 49.8329 K)^n; pipes by exp(-U'L/(m cp)); rooms lose H (T - outdoor).

Needs: numpy, scipy.
"""
import math
import os
import sys
from importlib.metadata import version

import numpy as np
from scipy.optimize import fsolve

CP = 4180.0  # J/(kg K)
OUTDOOR = -3.0  # C
RATING_EXCESS = 10.0 / math.log(55.0 / 45.0)  # 75/65/20


def emitter(rating, n, flow, back, room):
    return rating * (((flow - back) / math.log((flow - room) / (back - room))) / RATING_EXCESS) ** n


def cooled(t, m, loss, length, ambient):
    return ambient + (t - ambient) * math.exp(-loss * length / (m * CP))


def one_pipe(m, taken, capacity, flow_temperature):
    """Three emitters one after another on a loop, each takes a share of its flow; rooms float. Source limited."""
    ratings, losses = (1500.0, 1200.0, 1800.0), (22.0, 18.0, 30.0)

    def equations(x):
        t_flow, backs, rooms = x[0], x[1:4], x[4:7]
        out, t = [], t_flow
        for i in range(3):
            t = cooled(t, m, 0.4, 8.0, 18.0)
            q = emitter(ratings[i], 1.3, t, backs[i], rooms[i])
            out.append(q - taken * CP * (t - backs[i]))
            out.append(q - losses[i] * (rooms[i] - OUTDOOR))
            t = (taken * backs[i] + (m - taken) * t) / m
        t = cooled(t, m, 0.4, 12.0, 18.0)
        out.append(min(flow_temperature, t + capacity / (m * CP)) - t_flow)
        return np.array(out) / 100.0

    x, _, status, message = fsolve(equations, [40.0, 36, 35, 34, 15, 15, 15], xtol=1e-13, full_output=True)
    assert status == 1, message
    return x


def write(directory):
    with open(os.path.join(directory, "heat.csv"), "w", encoding="ascii") as out:
        out.write(f"# computed by tests/reference/network_heat.py: scipy {version('scipy')} fsolve on all equations\n")
        out.write("# one-pipe loop, three emitters, free rooms; temperatures in C\n")
        out.write("flow_kg_per_s,taken_kg_per_s,capacity_w,flow_temperature_c,source_outlet_c,return_1_c,return_2_c,"
                  "return_3_c,room_1_c,room_2_c,room_3_c\n")
        for m, taken, capacity, flow in ((0.1, 0.03, 1e6, 50.0), (0.1, 0.03, 1500.0, 50.0), (0.05, 0.02, 900.0, 45.0),
                                         (0.2, 0.01, 1e6, 70.0), (0.03, 0.029, 1e6, 55.0)):
            row = [m, taken, capacity, flow, *one_pipe(m, taken, capacity, flow)]
            out.write(",".join(f"{v:.12g}" for v in row) + "\n")


if __name__ == "__main__":
    write(sys.argv[1])
