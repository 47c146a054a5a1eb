# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""What plant relations are compared with, by routes that share nothing with loopfolio.

    python3 plant.py TEST_DATA_DIRECTORY

expansion.csv          density of water by IAPWS-95 (iapws) and of glycol mixtures by CoolProp's MPG and MEG
compensated_flow.csv   flow temperature at part load: the emitter's equation solved by scipy's brentq
exchanger_transfer.csv heat through a coil and a plate: integrated along them by scipy's solve_bvp
reheat.csv             a store heated through a coil: integrated over time by scipy's solve_ivp
season.csv             a heating season, bin by bin in numpy, from season_source.csv by scipy's
                       RegularGridInterpolator; hours from en14825_bin_hours.csv, which has to be there

Needs: numpy, scipy, iapws, CoolProp.
"""
import sys
from importlib.metadata import version

import numpy as np
from CoolProp.CoolProp import PropsSI
from iapws import IAPWS95
from scipy.integrate import solve_bvp, solve_ivp
from scipy.interpolate import RegularGridInterpolator
from scipy.optimize import brentq

from reference_table import read, write

MPA = 0.2  # absolute pressure of the water


def water(celsius):
    state = IAPWS95(T=celsius + 273.15, P=MPA)
    return state.rho, state.cp * 1e3


def expansion(directory):
    rows = []
    for fill in (5, 10, 15):
        for highest in (30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 100, 110):
            rows.append(("water", 0, fill, highest, 100.0 * (water(fill)[0] / water(highest)[0] - 1.0)))
    for fluid, short in (("propylene", "MPG"), ("ethylene", "MEG")):
        for x in (0.15, 0.25, 0.30, 0.40):
            for highest in (40, 55, 70, 80):
                cold, hot = (PropsSI("D", "T", t + 273.15, "P", MPA * 1e6, f"INCOMP::{short}[{x}]")
                             for t in (10, highest))
                rows.append((fluid, x, 10, highest, 100.0 * (cold / hot - 1.0)))
    write(directory, __file__, "expansion.csv",
          [f"water by IAPWS-95 at {MPA} MPa, iapws {version('iapws')};",
           f"propylene and ethylene glycol by mass, CoolProp {version('CoolProp')}, INCOMP::MPG and MEG"],
          ("fluid", "mass_fraction", "fill_c", "highest_c", "expansion_pct"), rows)


def log_mean(a, b):
    return a if abs(a - b) < 1e-12 else (a - b) / np.log(a / b)


def flow_at(flow, back, room, n, share):
    """Flow temperature: rated (log mean)^n and m cp (flow - return), both at `share` of the design's."""
    drop = share * (flow - back)
    design = log_mean(flow - room, back - room)

    def miss(t):
        return (log_mean(t - room, t - drop - room) / design) ** n - share

    return brentq(miss, room + drop + 1e-9, room + 200.0, xtol=1e-13, rtol=1e-15)


def compensated(directory):
    rows = []
    for flow, back, room in ((35, 30, 21), (45, 40, 20), (50, 42, 21), (55, 35, 18), (75, 65, 20)):
        for n in (1.0, 1.1, 1.3, 1.45):
            for share in (0.05, 0.2, 0.35, 0.5385, 0.8, 1.0, 1.15):
                rows.append((flow, back, room, n, share, flow_at(flow, back, room, n, share)))
    write(directory, __file__, "compensated_flow.csv", [f"scipy {version('scipy')} brentq, to 1e-13 K"],
          ("flow_c", "return_c", "room_c", "exponent", "share", "answer_c"), rows)


def transfer(ua, hot, cold):
    """W per kelvin between the inlets of a counterflow exchanger; cold = 0 for a mixed store round a coil."""

    def along(x, t):
        flow = ua * (t[0] - t[1])
        return np.vstack((-flow / hot, -flow / cold if cold else np.zeros_like(flow)))

    def ends(a, b):
        return np.array((a[0] - 1.0, b[1]))

    x = np.linspace(0.0, 1.0, 401)
    guess = np.vstack((1.0 - 0.5 * x, 0.4 * (1.0 - x)))
    found = solve_bvp(along, ends, x, guess, tol=1e-10, max_nodes=200000)
    assert found.success, found.message
    return hot * (1.0 - found.y[0, -1])


def exchangers(directory):
    rows = []
    for ua, hot in ((200, 800), (600, 800), (1500, 1200), (4000, 900)):
        for cold in (0, 300, 900, 1200):
            rows.append((ua, hot, cold, transfer(float(ua), float(hot), float(cold))))
    write(directory, __file__, "exchanger_transfer.csv",
          [f"scipy {version('scipy')} solve_bvp along the exchanger; store flow 0: a coil in a mixed store"],
          ("ua_w_per_k", "source_w_per_k", "store_w_per_k", "transfer_w_per_k"), rows)


def reheat_time(volume, start, end, flow, capacity, transfer_, heat_capacity):
    def slope(_, t):
        return [min(capacity, transfer_ * (flow - t[0])) / (heat_capacity(t[0]) * volume)]

    def reached(_, t):
        return t[0] - end

    reached.terminal = True
    found = solve_ivp(slope, (0.0, 1e6), [start], events=reached, method="DOP853", rtol=1e-10, atol=1e-10,
                      max_step=60.0)
    return found.t_events[0][0]


def reheat(directory):
    grid = np.linspace(0.5, 95.0, 190)
    table = [np.prod(water(t)) for t in grid]

    def of_water(t):
        return np.interp(t, grid, table)

    rows = []
    for volume, start, end, flow, capacity, k in ((0.2, 10, 50, 55, 6000, 600), (0.2, 15, 48, 55, 9000, 300),
                                                  (0.3, 40, 50, 55, 8000, 2000),
                                                  (0.15, 10, 45, 60, 3000, 900),
                                                  (0.25, 20, 58, 60, 12000, 250),
                                                  (0.2, 45, 54, 55, 7000, 900)):
        mean = np.prod(water(0.5 * (start + end)))
        fixed = reheat_time(volume, start, end, flow, capacity, k, lambda _: mean)
        real = reheat_time(volume, start, end, flow, capacity, k, of_water)
        rows.append((volume * 1e3, start, end, flow, capacity, k, fixed, real))
    write(directory, __file__, "reheat.csv",
          [f"scipy {version('scipy')} solve_ivp, water by iapws {version('iapws')};",
           "fixed_s with the store's heat capacity at the mean temperature, real_s with that at each moment"],
          ("volume_l", "from_c", "to_c", "flow_c", "capacity_w", "transfer_w_per_k", "fixed_s", "real_s"),
          rows)


OUTDOOR = np.array([-15.0, -7.0, 2.0, 7.0, 12.0, 20.0])
FLOW = np.array([35.0, 45.0, 55.0])


def source_grid():
    """An invented source: a share of Carnot's performance, less capacity in the cold and at a hot flow."""
    t, f = np.meshgrid(OUTDOOR, FLOW, indexing="ij")
    performance = np.round((0.36 + 0.002 * (t - 7.0)) * (f + 273.15) / (f - t + 8.0), 2)
    capacity = np.round(8000.0 + 140.0 * (t - 7.0) - 25.0 * (f - 35.0), 0)
    return capacity, performance


def season_case(bins, case):
    (_, design, design_outdoor, base, flow, back, room, n, least, cc, backup) = case
    grids = [RegularGridInterpolator((OUTDOOR, FLOW), g) for g in source_grid()]
    names = "demand source backup unmet electricity backup_input outside cycling_h outside_h".split()
    sums = dict.fromkeys(names, 0.0)
    for outdoor, hours in bins:
        load = design * max(0.0, base - outdoor) / (base - design_outdoor)
        if load == 0.0 or hours == 0.0:
            continue
        sums["demand"] += load * hours
        warm = max(35.0, flow_at(flow, back, room, n, load / design))
        if not (OUTDOOR[0] <= outdoor <= OUTDOOR[-1] and warm <= FLOW[-1]):
            sums["outside"] += load * hours
            sums["outside_h"] += hours
            continue
        capacity, performance = (float(g((outdoor, warm))) for g in grids)
        made = min(load, capacity)
        spare = min(load - made, backup) if backup >= 0.0 else load - made
        ratio = load / (least * capacity) if least > 0.0 else 2.0
        if ratio < 1.0:
            performance *= ratio / (cc * ratio + 1.0 - cc)
            sums["cycling_h"] += hours
        sums["source"] += made * hours
        sums["backup"] += spare * hours
        sums["unmet"] += (load - made - spare) * hours
        sums["electricity"] += made * hours / performance
        sums["backup_input"] += spare * hours
    energy = {k: v / 1e3 for k, v in sums.items() if not k.endswith("_h")}
    return [*energy.values(), sums["cycling_h"], sums["outside_h"]], [*energy, "cycling_h", "outside_h"]


def seasons(directory):
    capacity, performance = source_grid()
    write(directory, __file__, "season_source.csv", ["an invented heat source for season.csv"],
          ("outdoor_c", "flow_c", "capacity_w", "performance"),
          [(t, f, capacity[i, j], performance[i, j])
           for i, t in enumerate(OUTDOOR) for j, f in enumerate(FLOW)])
    climates = read(directory, "en14825_bin_hours.csv")
    # as the columns named below
    cases = [("average", 6000, -10, 16, 45, 40, 21, 1.3, 0.3, 0.9, -1),
             ("average", 9000, -10, 16, 55, 47, 21, 1.3, 1.0, 0.9, -1),
             ("average", 8000, -3, 15.5, 50, 45, 20, 1.33, 0.4, 1.0, 500),
             ("warmer", 7000, 2, 16, 40, 35, 21, 1.1, 0.25, 0.9, 0),
             ("colder", 7000, -22, 16, 55, 48, 20, 1.3, 0.35, 0.8, -1),
             ("average", 6000, -10, 16, 60, 50, 21, 1.3, 0.0, 0.9, -1)]
    rows = []
    for case in cases:
        bins = [(float(row["outdoor_c"]), float(row[case[0]])) for row in climates]
        values, names = season_case(bins, case)
        rows.append((*case, *values))
    head = ("climate design_w design_outdoor_c base_c flow_c return_c room_c exponent "
            "least_share cc backup_w").split()
    write(directory, __file__, "season.csv",
          [f"numpy {version('numpy')} and scipy {version('scipy')}; flow not under 35 C; energies in kWh;",
           "backup_w -1: as much as is missing"], (*head, *names), rows)


if __name__ == "__main__":
    for make in (expansion, compensated, exchangers, reheat, seasons):
        make(sys.argv[1])
