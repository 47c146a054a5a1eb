# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""What relations of the fabric and of heated floors are compared with, by routes of their own.

    python3 fabric.py TEST_DATA_DIRECTORY

layered.csv           ISO 6946: constructions drawn at random, all combinations listed by itertools
bridged_wall.csv      a wall with studs: conduction in two dimensions by finite volumes
floor_outputs.csv     EN 1264 type A: factors by scipy's RegularGridInterpolator, flow temperature and limit
                      by brentq; from floor_factors.csv and floor_limits.csv, which have to be there
floor_conduction.csv  a heated floor without EN 1264: conduction in two dimensions round the pipe, and the standard
                      beside it
floor_basic_characteristic.csv, ground_floor.csv,
  suspended_floor.csv   the formulas of EN 1264-2 and ISO 13370 in double precision

Needs: numpy, scipy.
"""
import itertools
import sys
from importlib.metadata import version

import numpy as np
from scipy.interpolate import RegularGridInterpolator
from scipy.optimize import brentq
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve

from reference_table import read, write


def combined(surfaces, layers):
    """Layers as (resistance, bridge resistance, share); share 0 where there is no bridge."""
    ways = itertools.product(*[((r, 1.0 - f), (b, f)) if f else ((r, 1.0),) for r, b, f in layers])
    upper = 1.0 / sum(np.prod([f for _, f in way]) / (surfaces + sum(r for r, _ in way)) for way in ways)
    lower = surfaces + sum(1.0 / ((1.0 - f) / r + f / b) if f else r for r, b, f in layers)
    return upper, lower


def layered(directory):
    draw = np.random.default_rng(6946)
    rows = []
    for count in (1, 2, 3, 4, 5, 6, 8, 12, 12, 12):
        layers = []
        for _ in range(count):
            r = round(float(np.exp(draw.uniform(np.log(0.01), np.log(5.0)))), 4)
            bridged = draw.random() < 0.6 or count == 12
            bridge = round(r * float(draw.uniform(0.05, 2.0)), 5), round(float(draw.uniform(0.01, 0.6)), 3)
            layers.append((r, *bridge) if bridged else (r, 0.0, 0.0))
        inside, outside = float(draw.choice((0.10, 0.13, 0.17))), float(draw.choice((0.04, 0.13)))
        upper, lower = combined(inside + outside, layers)
        text = ";".join(f"{r:g}/{b:g}/{f:g}" for r, b, f in layers)
        rows.append((text, inside, outside, upper, lower, 2.0 / (upper + lower)))
    write(directory, __file__, "layered.csv", ["layers: resistance/bridge resistance/share, 0 for none"],
          ("layers", "inside", "outside", "upper", "lower", "u_value"), rows)


def conduct(k, dx, dy, top, bottom, fixed):
    """Steady temperatures of cells k[row, column], W/(m K): bottom row first, sides without heat. `top` and
    `bottom` are (resistance beyond the edge, temperature); `fixed` a mask of cells held at 1. Also the heat
    that leaves each column there, W/m."""
    rows, columns = k.shape
    index = np.arange(rows * columns).reshape(rows, columns)
    a, b, g = [], [], []

    def link(first, second, k1, k2, across, along):
        a.append(first.ravel())
        b.append(second.ravel())
        g.append(np.ravel(along / (across / 2.0 / k1 + across / 2.0 / k2)))

    link(index[:, :-1], index[:, 1:], k[:, :-1], k[:, 1:], dx, dy)
    link(index[:-1], index[1:], k[:-1], k[1:], dy, dx)
    a, b, g = map(np.concatenate, (a, b, g))
    diagonal, right = np.zeros(rows * columns), np.zeros(rows * columns)
    np.add.at(diagonal, a, g)
    np.add.at(diagonal, b, g)
    edge_g = {}
    edges = (("top", top, -1), ("bottom", bottom, 0))
    for name, edge, row in edges:
        edge_g[name] = dx / (dy / 2.0 / k[row] + edge[0])
        diagonal[index[row]] += edge_g[name]
        right[index[row]] += edge_g[name] * edge[1]
    held = fixed.ravel()
    diagonal[held] += 1e9
    right[held] += 1e9
    n = rows * columns
    places = np.concatenate((np.arange(n), a, b)), np.concatenate((np.arange(n), b, a))
    matrix = coo_matrix((np.concatenate((diagonal, -g, -g)), places), shape=(n, n))
    t = spsolve(matrix.tocsc(), right).reshape(rows, columns)
    return t, {name: edge_g[name] * (t[row] - edge[1]) for name, edge, row in edges}


def bridged_wall(directory):
    """Half a stud and half a gap, from outside to inside: brick, insulation or stud, plasterboard."""
    rows = []
    step = 0.0005
    for half_pitch, half_stud, depth, insulation, timber in ((0.300, 0.019, 0.089, 0.038, 0.13),
                                                             (0.200, 0.025, 0.140, 0.035, 0.13),
                                                             (0.100, 0.025, 0.050, 0.025, 0.18)):
        brick, board = (0.102, 0.77), (0.0125, 0.25)
        layers = ((brick[0] / brick[1], 0.0, 0.0), (board[0] / board[1], 0.0, 0.0),
                  (depth / insulation, depth / timber, half_stud / half_pitch))
        columns = round(half_pitch / (2 * step))
        bands = []
        for thickness, left, right in ((brick[0], brick[1], brick[1]), (depth, timber, insulation),
                                       (board[0], board[1], board[1])):
            line = np.full(columns, right)
            line[:round(half_stud / (2 * step))] = left
            bands.append(np.tile(line, (round(thickness / step), 1)))
        k = np.vstack(bands)
        _, flux = conduct(k, 2 * step, step, (0.13, 1.0), (0.04, 0.0), np.zeros(k.shape, bool))
        u = flux["bottom"].sum() / half_pitch
        upper, lower = combined(0.17, layers)
        rows.append((half_pitch, half_stud, depth, insulation, timber, upper, lower, u))
    write(directory, __file__, "bridged_wall.csv",
          [f"scipy {version('scipy')} spsolve, 1 mm by 0.5 mm; brick 102 mm 0.77, plasterboard 12.5 mm 0.25"],
          ("half_pitch_m", "half_stud_m", "depth_m", "insulation", "stud", "upper", "lower", "u_value"), rows)


def grid(table, name, x, y):
    xs, ys = (sorted({float(row[c]) for row in table}) for c in (x, y))
    values = {(float(row[x]), float(row[y])): float(row[name]) for row in table}
    return RegularGridInterpolator((xs, ys), [[values[a, b] for b in ys] for a in xs])


def floor_tables(directory):
    factors, limits = read(directory, "floor_factors.csv"), read(directory, "floor_limits.csv")
    of = {n: grid(factors, n, "covering_m2k_per_w", "pitch_mm") for n in ("a_pitch", "a_cover", "a_diameter")}
    curve = {n: grid([r for r in limits if r["name"] == n], "value", "pitch_mm", "cover_m2k_per_w")
             for n in ("coefficient", "exponent")}
    return of, curve


def factors_of(of, pitch, cover, screed, covering, outside):
    """The product of EN 1264-2 for type A; millimetres."""
    at = (covering, pitch)
    product = (1 / 10.8 + 0.045) / (1 / 10.8 + 0.045 / screed + covering)
    product *= of["a_pitch"](at).item() ** (1 - pitch / 75)
    product *= of["a_cover"](at).item() ** ((45 - cover) / 10)
    return product * of["a_diameter"](at).item() ** ((outside - 20) / 4)


def limit_flux(curve, transfer, pitch, cover, screed, surface):
    where = (pitch, cover / 1e3 / screed)
    scale = (surface / 9.0) ** 1.1
    b, n = (curve[c](where).item() for c in ("coefficient", "exponent"))
    water = brentq(lambda d: scale * b * (d / scale) ** n - transfer * d, 1e-6, 1e3, xtol=1e-12)
    return min(transfer * water, 8.92 * surface ** 1.1)


def floor_outputs(directory):
    of, curve = floor_tables(directory)
    draw = np.random.default_rng(1264)
    rows = []
    for _ in range(60):
        pitch = round(float(draw.uniform(50, 375)), 1)
        covering, cover = round(float(draw.uniform(0, 0.15)), 4), round(float(draw.uniform(20, 65)), 1)
        screed, outside = round(float(draw.uniform(0.9, 1.8)), 2), round(float(draw.uniform(10, 25)), 1)
        wall, pipe = round(float(draw.uniform(1.0, 2.5)), 2), round(float(draw.uniform(0.22, 0.45)), 3)
        product = factors_of(of, pitch, cover, screed, covering, outside)

        def miss(q, excess=1.0):   # water to standard floor, and through the pipe's other wall on the way
            heat = 1.1 * q * pitch / 1e3
            through = np.log(outside / (outside - 2 * wall)) / pipe - np.log(outside / (outside - 4)) / 0.35
            return 6.7 * product * (excess - heat * through / (2 * np.pi)) - q

        transfer = brentq(miss, 0.0, 100.0, xtol=1e-14, rtol=1e-14)
        wanted, drop = round(float(draw.uniform(20, 100)), 1), round(float(draw.uniform(3, 10)), 1)
        room = 20.0

        def short(flow):
            a, b = flow - room, flow - drop - room
            return transfer * (a - b) / np.log(a / b) - wanted

        flow = brentq(short, room + drop + 1e-9, 500.0, xtol=1e-12)
        surface = round(float(draw.uniform(5, 15)), 1)
        rows.append((pitch, cover, screed, covering, outside, wall, pipe, transfer, wanted, drop, flow,
                     surface, limit_flux(curve, transfer, pitch, cover, screed, surface)))
    write(directory, __file__, "floor_outputs.csv",
          [f"numpy {version('numpy')} and scipy {version('scipy')}, room 20 C"],
          ("pitch_mm", "cover_mm", "screed", "covering", "outside_mm", "wall_mm", "pipe", "transfer",
           "wanted", "drop_k", "flow_c", "surface_k", "limit_flux"), rows)


def floor_conduction(directory):
    """Half a pitch of screed on insulation; the pipe lies on it, one temperature outside, its wall in series. Beside it
    what EN 1264-2 has for the same floor, pipe as in the standard: how far the standard lies from conduction."""
    of, curve = floor_tables(directory)
    rows = []
    step = 0.0005
    for pitch, cover, screed, covering, outside in itertools.chain(
            itertools.product((0.100, 0.150, 0.200, 0.300), (0.045,), (1.2,), (0.0, 0.10), (0.016,)),
            ((0.150, 0.030, 1.2, 0.05, 0.016), (0.150, 0.060, 1.2, 0.05, 0.016),
             (0.200, 0.045, 1.0, 0.15, 0.020))):
        up = 1 / 10.8 + covering
        down = 10.0 * (up + cover / screed)   # a tenth goes down, as the standard has it
        k = np.full((round((cover + outside) / step), round(pitch / 2 / step)), screed)
        y, x = (np.indices(k.shape) + 0.5) * step
        held = x ** 2 + (y - outside / 2) ** 2 <= (outside / 2) ** 2
        _, flux = conduct(k, step, step, (up, 0.0), (down, 0.0), held)
        total = 2 * (flux["top"].sum() + flux["bottom"].sum())   # W/m of pipe
        water = 1.0 + total * np.log(outside / (outside - 0.004)) / (2 * np.pi * 0.35)
        mean = flux["top"].sum() / (pitch / 2)
        standard = 6.7 * factors_of(of, 1e3 * pitch, 1e3 * cover, screed, covering, 1e3 * outside)
        rows.append((pitch, cover, screed, covering, outside, mean / water, mean * step / flux["top"].max(), standard,
                     limit_flux(curve, standard, 1e3 * pitch, 1e3 * cover, screed, 9.0)))
    write(directory, __file__, "floor_conduction.csv",
          [f"scipy {version('scipy')} spsolve, 0.5 mm; surface 10.8 W/(m2 K); pipe wall 2 mm, 0.35 W/(m K);",
           "evenness: mean over highest excess of the surface; standard: EN 1264-2 for the same floor, limit at 9 K"],
          ("pitch_m", "cover_m", "screed", "covering", "outside_m", "transfer", "evenness", "standard",
           "standard_limit"), rows)


def floor_basic(directory):
    write(directory, __file__, "floor_basic_characteristic.csv",
          ["BS EN 1264-2, basic characteristic q = 8.92 dT^1.1; 9 K for 100 and 15 K for 175 W/m2 are printed"],
          ("excess_k", "flux_w_per_m2"), [(k, 8.92 * k ** 1.1) for k in (*range(1, 11), 12, 15)], digits=16)


def ground_floor(directory):
    """The slab of ISO 13370 without insulation, beside what is published for P/A = 0.05, 0.10 and so on."""
    published = (0.13, 0.22, 0.30, 0.37, 0.44, 0.49, 0.55, 0.60, 0.65, 0.70,
                 0.74, 0.78, 0.82, 0.86, 0.89, 0.93, 0.96, 0.99, 1.02, 1.05)
    ground, wall, surfaces = 1.5, 0.3, 0.17 + 0.04
    rows = []
    for i, value in enumerate(published, 1):
        of_plan, thickness = 2.0 / (i / 20.0), wall + ground * surfaces
        u = 2.0 * ground / (np.pi * of_plan + thickness) * np.log(np.pi * of_plan / thickness + 1.0)
        rows.append((i / 20.0, value, u))
    write(directory, __file__, "ground_floor.csv",
          ["published: Approved Document L1 (2002), table C1, solid floor on clay without insulation, from memory;",
           "computed: BS EN ISO 13370, wall of 0.3 m, ground 1.5 W/(m K), Rsi 0.17, Rse 0.04 m2 K/W"],
          ("p_over_a", "published", "computed"), rows, digits=16)


def suspended_floor(directory):
    """The void of ISO 13370 as a balance of heat: the temperature between deck and ground where what comes down through
    the deck leaves through ground, walls and openings; the U-value is the heat over the whole difference."""
    inside, outside, rows = 20.0, 0.0, []
    for length, width, deck, height, openings, wind, shielding, walls, base, thickness, ground in (
            (10.0, 8.0, 0.2, 0.3, 0.003, 5.0, 0.05, 1.5, 0.0, 0.3, 1.5),
            (10.0, 8.0, 0.2, 0.3, 0.0, 5.0, 0.05, 1.5, 0.0, 0.3, 1.5),
            (10.0, 8.0, 0.2, 0.0, 0.0, 5.0, 0.05, 1.5, 0.0, 0.3, 1.5),
            (7.0, 6.0, 2.7, 0.45, 0.0015, 4.0, 0.10, 0.6, 0.0, 0.35, 2.0),
            (20.0, 9.0, 0.5, 0.2, 0.002, 3.0, 0.02, 1.7, 1.0, 0.25, 3.5)):
        area, edge = length * width, 2.0 * (length + width)
        plan = area / (0.5 * edge)
        d = thickness + ground * (0.17 + base + 0.04)
        through_ground = area * 2.0 * ground / (np.pi * plan + d) * np.log(np.pi * plan / d + 1.0)
        # W/K: the walls of the void all round; air in through half of the openings, out through the other half.
        through_walls, with_air = edge * height * walls, edge / 2.0 * openings * wind * shielding * 1450.0
        through_deck = area / (0.17 + deck + 0.17)
        away = through_ground + through_walls + with_air
        void = (through_deck * inside + away * outside) / (through_deck + away)
        rows.append((area, edge, deck, height, openings, wind, shielding, walls, base, thickness, ground,
                     through_deck * (inside - void) / (area * (inside - outside))))
    write(directory, __file__, "suspended_floor.csv",
          ["computed: balance of heat of the void, terms of BS EN ISO 13370; surfaces 0.17 on both sides of the deck"],
          ("area_m2", "edge_m", "deck", "height_m", "openings_m2_per_m", "wind_m_per_s", "shielding", "walls", "base",
           "wall_m", "ground", "u_value"), rows, digits=16)


if __name__ == "__main__":
    for make in (layered, bridged_wall, floor_outputs, floor_conduction, floor_basic, ground_floor, suspended_floor):
        make(sys.argv[1])
