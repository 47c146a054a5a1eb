# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Flows in small networks by two routes that share nothing with loopfolio.

    python3 network_flows.py OUTPUT_DIRECTORY

Route 1 (flows_colebrook.csv): loop equations written out with networkx' cycle basis and solved by
scipy.optimize.root; friction factor by fluids.friction.friction_factor(Method="Colebrook"), laminar 64/Re below
2000. The networks keep out of Re 2000 to 4000, where laws differ.

Route 2 (flows_epanet.csv): EPANET 2.2 by way of wntr, Darcy-Weisbach. EPANET takes the friction factor from
Swamee and Jain, which meets Colebrook where a pipe is fully rough, and from 64/Re below 2000: so one fluid is
far thinner than water and one far thicker.

system_curve.csv: the flow that a head drives through the house of three rooms of tests/design, by the first route.

pump_slopes.csv: slopes at the inner points of pump curves with uneven points, by scipy's PchipInterpolator.

lockshield.csv: what two equal branches of a ladder differ by, and the Kv that makes up for it, by fluids.

Needs: numpy, scipy, fluids, iapws, networkx, wntr.
"""
import math
import os
import sys
import tempfile
from importlib.metadata import version

import networkx as nx
import numpy as np
from fluids.friction import friction_factor
from iapws import IAPWS97
from scipy.interpolate import PchipInterpolator
from scipy.optimize import root

RHO, MU = 988.0, 0.547e-3  # kg/m3, Pa s
EPANET_GRAVITY = 32.2 * 0.3048  # m/s2; its feet of water are turned into pressure by the same gravity
COLUMNS = ("network,link,from,to,bore_mm,roughness_mm,length_m,loss_factor,valve_kv,square_resistance,"
           "pump_shutoff_pa,pump_square,viscosity_pa_s,flow_kg_per_s")


def link(a, b, bore=0.0, length=0.0, loss=0.0, kv=0.0, square=0.0, pump=(0.0, 0.0), rough=0.0015):
    return dict(a=a, b=b, bore=bore, rough=rough if bore else 0.0, length=length, loss=loss, kv=kv, square=square,
                pump=pump)


def source(a, b, shutoff, square, own=5e4):
    return link(a, b, square=own, pump=(shutoff, square))


def branch(a, b, kv):
    return link(a, b, bore=13.6, length=3.0, loss=4.0, kv=kv)


def two_pipe_tree():
    """Pump, trunk of three stages, each with a branch of two emitters; flow nodes 0-6, return nodes 10-16."""
    links = [source(10, 0, 4.5e4, 2.5e9)]
    for a, b, bore, length in ((0, 1, 32.6, 6), (1, 2, 26.2, 8), (2, 3, 26.2, 8), (1, 4, 20.2, 5), (2, 5, 20.2, 6),
                               (3, 6, 20.2, 4)):
        links.append(link(a, b, bore, length, 2.0))
        links.append(link(10 + b, 10 + a, bore, length, 2.0))
    for n, kv in ((4, 0.9), (4, 0.7), (5, 1.0), (5, 0.8), (6, 1.2), (6, 1.1), (3, 0.6)):
        links.append(branch(n, 10 + n, kv))
    return links


def ring_main():
    """Flow pipe closed to a ring of six, return pipe a tree; cross pipe within the ring."""
    links = [source(10, 0, 5e4, 2e9)]
    ring = [0, 1, 2, 3, 4, 5, 0]
    for i in range(6):
        links.append(link(ring[i], ring[i + 1], 26.2, 5.0 + 3.0 * i, 1.5))
    links.append(link(1, 4, 20.2, 9.0, 2.5))
    for n in range(1, 6):
        links.append(link(10 + n, 10 + n - 1, 32.6, 6.0, 1.0))
        links.append(branch(n, 10 + n, 0.7 + 0.15 * n))
    return links


def reverse_return():
    links = [source(16, 0, 4e4, 2e9)]
    for n in range(1, 6):
        links.append(link(n - 1, n, 26.2, 5.0, 1.0))
        links.append(branch(n, 10 + n, 1.0))
        links.append(link(10 + n, 10 + n + 1, 26.2, 5.0, 1.0))
    return links


def one_pipe_loop():
    links = [source(7, 0, 5e4, 4e9)]
    for n in range(3):
        links.append(link(2 * n, 2 * n + 1, 26.2, 4.0, 1.0))
        links.append(link(2 * n + 1, 2 * n + 2, 16.1, 2.0, 0.8))
        links.append(link(2 * n + 1, 2 * n + 2, 13.6, 4.0, 3.0, kv=2.5))
    links.append(link(6, 7, 26.2, 10.0, 4.0))
    return links


def header_two_pumps():
    """Two sources side by side onto a header; a second pump behind a wide header pipe."""
    links = [source(10, 0, 3e4, 2e9), source(10, 0, 2.6e4, 2e9, 8e4), link(0, 10, 51.6, 0.5, 0.5)]
    links.append(source(1, 2, 4e4, 3e9, 1e4))
    links.append(link(0, 1, 32.6, 2.0, 1.0))
    for n in range(3):
        links.append(link(2 + n, 3 + n, 26.2, 6.0, 1.0))
        links.append(link(13 + n, 12 + n, 26.2, 6.0, 1.0))
        links.append(branch(3 + n, 13 + n, 1.1))
    links.append(link(12, 10, 32.6, 3.0, 1.0))
    return links


def laminar_branches():
    """Long bores with little pressure: Hagen and Poiseuille everywhere."""
    links = [source(3, 0, 150.0, 1e6, 1e3)]
    links += [link(0, 1, 10.0, 8.0), link(0, 2, 8.0, 8.0), link(1, 2, 6.0, 3.0), link(1, 3, 8.0, 12.0),
              link(2, 3, 10.0, 12.0)]
    return links


def drop(l, m):
    """Pressure drop in Pa from a to b at m kg/s."""
    dp = l["square"] * m * abs(m)
    if l["kv"]:
        q = m / RHO * 3600.0
        dp += q * abs(q) / l["kv"] ** 2 * 1e5 * RHO / 1000.0
    if l["bore"]:
        d = l["bore"] / 1000.0
        v = m / (RHO * math.pi * d * d / 4.0)
        re = RHO * abs(v) * d / MU
        f = 64.0 / max(re, 1e-9)
        if re > 2000.0:
            f = friction_factor(Re=re, eD=l["rough"] / l["bore"], Method="Colebrook")
        dp += (f * l["length"] / d + l["loss"]) * RHO * v * abs(v) / 2.0
    shutoff, square = l["pump"]
    q = m / RHO
    return dp - (shutoff - square * q * abs(q))


def solve(links):
    """Flows by loop corrections: start with any flows that balance, add one unknown a loop."""
    g = nx.MultiGraph()
    for i, l in enumerate(links):
        g.add_edge(l["a"], l["b"], key=i)
    tree = nx.minimum_spanning_tree(nx.Graph(g))
    used, tree_keys = set(), []
    for i, l in enumerate(links):
        pair = frozenset((l["a"], l["b"]))
        if tree.has_edge(*pair) and pair not in used:
            used.add(pair)
            tree_keys.append(i)
    key_of = {frozenset((links[i]["a"], links[i]["b"])): i for i in tree_keys}
    loops = []
    for i, l in enumerate(links):
        if i in tree_keys:
            continue
        loop = np.zeros(len(links))
        loop[i] = 1.0
        path = nx.shortest_path(tree, l["b"], l["a"])
        for a, b in zip(path, path[1:]):
            k = key_of[frozenset((a, b))]
            loop[k] += 1.0 if links[k]["a"] == a else -1.0
        loops.append(loop)
    loops = np.array(loops)

    def residual(x):
        m = x @ loops
        return loops @ np.array([drop(l, v) for l, v in zip(links, m)])

    best = None
    for start in (0.05, 0.1, 0.02, 0.2):
        found = root(residual, np.full(len(loops), start), method="lm", options=dict(xtol=1e-14, ftol=1e-14,
                                                                                   maxiter=20000))
        miss = np.max(np.abs(residual(found.x)))
        if best is None or miss < best[0]:
            best = (miss, found.x @ loops)
    assert best[0] < 1e-5, best[0]
    return best[1]


def reynolds(l, m):
    return 4.0 * abs(m) / (math.pi * l["bore"] / 1000.0 * MU) if l["bore"] else 0.0


def row(name, i, l, m, mu):
    values = [l["bore"], l["rough"], l["length"], l["loss"], l["kv"], l["square"], *l["pump"], mu]
    return ",".join([name, str(i), str(l["a"]), str(l["b"])] + [repr(float(v)) for v in values] + [f"{m:.12g}"])


def write(path, head, networks, flows, viscosity):
    with open(path, "w", encoding="ascii") as out:
        for line in head:
            out.write(f"# {line}\n")
        out.write(f"# density {RHO} kg/m3\n{COLUMNS}\n")
        for name, links in networks.items():
            for i, (l, m) in enumerate(zip(links, flows[name])):
                out.write(row(name, i, l, m, viscosity[name]) + "\n")


def colebrook(directory):
    networks = {f.__name__: f() for f in (two_pipe_tree, ring_main, reverse_return, one_pipe_loop, header_two_pumps,
                                          laminar_branches)}
    flows = {}
    for name, links in networks.items():
        flows[name] = solve(links)
        for i, (l, m) in enumerate(zip(links, flows[name])):
            re = reynolds(l, m)
            assert not (l["length"] and 2000.0 < re < 4000.0), (name, i, re)
    write(os.path.join(directory, "flows_colebrook.csv"),
          [f"computed by tests/reference/network_flows.py: loop equations, scipy {version('scipy')} root(lm);",
           f"friction by fluids {version('fluids')} friction_factor(Method=Colebrook), 64/Re below Re 2000"],
          networks, flows, dict.fromkeys(networks, MU))


def rough_ring():
    p = dict(rough=0.5)
    return [link(0, 1, 40.0, 20.0, **p), link(1, 2, 30.0, 15.0, **p), link(1, 3, 30.0, 25.0, **p),
            link(2, 4, 25.0, 20.0, **p), link(3, 4, 32.0, 12.0, **p), link(2, 3, 20.0, 10.0, **p),
            link(4, 5, 40.0, 18.0, loss=6.0, **p), link(5, 0, square=1e-3, pump=(1.2e5, 0.0))]


def rough_tree():
    p = dict(rough=0.4)
    links = [link(0, 1, 40.0, 15.0, **p), link(11, 10, 40.0, 15.0, **p)]
    for n in range(1, 4):
        links.append(link(n, n + 1, 32.0, 10.0, 1.0, **p))
        links.append(link(10 + n + 1, 10 + n, 32.0, 10.0, 1.0, **p))
        links.append(link(n + 1, 10 + n + 1, 15.0, 6.0, 8.0, **p))
    return links + [link(10, 0, square=1e-3, pump=(1.5e5, 0.0))]


def by_epanet(links, mu):
    """The pump becomes two reservoirs as far apart as it lifts; its link's flow is the sum."""
    import wntr
    lift = links[-1]
    wn = wntr.network.WaterNetworkModel()
    o = wn.options.hydraulic
    water_at_20 = 1.1e-5 * 0.3048**2  # m2/s, that EPANET's viscosity is relative to
    o.headloss, o.viscosity, o.accuracy, o.trials = "D-W", mu / RHO / water_at_20, 1e-9, 500
    o.inpfile_units = "LPS"
    nodes = {n for l in links for n in (l["a"], l["b"])}
    for n in nodes:
        if n == lift["b"]:
            wn.add_reservoir(str(n), base_head=100.0 + lift["pump"][0] / (RHO * EPANET_GRAVITY))
        elif n == lift["a"]:
            wn.add_reservoir(str(n), base_head=100.0)
        else:
            wn.add_junction(str(n), base_demand=0.0, elevation=0.0)
    for i, l in enumerate(links[:-1]):
        wn.add_pipe(f"p{i}", str(l["a"]), str(l["b"]), length=l["length"], diameter=l["bore"] / 1000.0,
                    roughness=l["rough"] / 1000.0, minor_loss=l["loss"])
    with tempfile.TemporaryDirectory() as scratch:
        results = wntr.sim.EpanetSimulator(wn).run_sim(file_prefix=os.path.join(scratch, "net"))
    q = [float(results.link["flowrate"][f"p{i}"].iloc[0]) * RHO for i in range(len(links) - 1)]
    total = sum(m for l, m in zip(links, q) if l["a"] == lift["b"]) - sum(
        m for l, m in zip(links, q) if l["b"] == lift["b"])
    return q + [total]


def thick_tree():
    links = rough_tree()
    links[-1]["pump"] = (2e5, 0.0)
    return links


def epanet(directory):
    viscosity = dict(rough_ring=5e-6, rough_tree=5e-6, thick_tree=0.05)
    networks = {f.__name__: f() for f in (rough_ring, rough_tree, thick_tree)}
    flows = {name: by_epanet(links, viscosity[name]) for name, links in networks.items()}
    for name, links in networks.items():
        for l, m in zip(links[:-1], flows[name]):
            re = reynolds(l, m) * MU / viscosity[name]
            assert re < 2000.0 or re > 1e6, (name, re)
    write(os.path.join(directory, "flows_epanet.csv"),
          [f"computed by tests/reference/network_flows.py: EPANET 2.2 by way of wntr {version('wntr')},",
           "Darcy-Weisbach with Swamee and Jain's friction factor, in fully rough and in laminar flow"],
          networks, flows, viscosity)


def lockshield(directory):
    """Two equal branches, the far one behind a flow and a return pipe more: 500 Pa are added at the far one."""
    flow, least = 0.04, 500.0
    between = link(1, 2, 20.2, 4.0, 1.5)
    assert reynolds(between, flow) > 4000.0
    added = least + 2.0 * drop(between, flow)
    kv = flow / RHO * 3600.0 * math.sqrt(1e5 * RHO / 1000.0 / added)
    with open(os.path.join(directory, "lockshield.csv"), "w", encoding="ascii") as out:
        out.write("# computed by tests/reference/network_flows.py: friction by fluids "
                  f"{version('fluids')} friction_factor(Method=Colebrook);\n")
        out.write("# Kv in m3/h is the flow at 1 bar of water of 1000 kg/m3\n")
        out.write("flow_kg_per_s,least_added_pa,added_pa,kv\n")
        out.write(f"{flow},{least},{added!r},{kv!r}\n")


def house_of_three(head):
    """Copper of 22 and 15 mm to three radiators with valves of Kv 0.8, loss factor 2.5 of their own; see the test."""
    links = [link(10, 0, pump=(head, 0.0))]
    for a, b, bore, length in ((0, 1, 20.2, 6), (1, 2, 13.6, 4), (1, 3, 13.6, 9), (3, 4, 13.6, 5)):
        links.append(link(a, b, bore, length))
        links.append(link(10 + b, 10 + a, bore, length))
    return links + [link(n, 10 + n, bore=13.6, loss=2.5, kv=0.8) for n in (2, 3, 4)]


def system_curve(directory):
    global RHO, MU
    kept = RHO, MU
    warm = IAPWS97(T=47.5 + 273.15, P=0.2)   # mean of 50 and 45 C
    RHO, MU = float(warm.rho), float(warm.mu)
    rows = []
    for i in range(1, 9):
        head = (i / 8.0) ** 2 * 64e3
        links = house_of_three(head)
        flows = solve(links)
        if min(reynolds(l, m) for l, m in zip(links, flows) if l["length"]) > 4000.0:
            rows.append((i, head, flows[0] / RHO))
    RHO, MU = kept
    with open(os.path.join(directory, "system_curve.csv"), "w", encoding="ascii") as out:
        out.write("# computed by tests/reference/network_flows.py: loop equations, scipy "
                  f"{version('scipy')} root(lm);\n")
        out.write(f"# friction by fluids {version('fluids')} (Colebrook), water of 47.5 C by iapws {version('iapws')}; "
                  "turbulent throughout\n")
        out.write("point,head_pa,flow_m3_per_s\n")
        for i, head, flow in rows:
            out.write(f"{i},{head!r},{flow:.12g}\n")


# Flow in litres a second, head in kilopascals: invented, with gaps that differ by up to ten times.
PUMP_CURVES = [[(0.0, 60.0), (0.2, 59.0), (1.0, 50.0), (1.5, 35.0)],
               [(0.0, 45.0), (0.5, 44.0), (0.55, 43.0), (0.9, 30.0), (1.3, 4.0)],
               [(0.1, 70.0), (0.4, 70.0), (0.5, 62.0), (1.5, 20.0)],
               [(0.0, 50.0), (0.5, 45.0), (1.0, 30.0)]]


def pump_slopes(directory):
    with open(os.path.join(directory, "pump_slopes.csv"), "w", encoding="ascii") as out:
        out.write(f"# computed by tests/reference/network_flows.py: scipy {version('scipy')} PchipInterpolator, at the\n")
        out.write("# inner points alone, as the ends are taken otherwise; invented curves\n")
        out.write("curve,flow_l_per_s,head_kpa,slope_pa_s_per_m3\n")
        for number, points in enumerate(PUMP_CURVES):
            slope = PchipInterpolator([1e-3 * q for q, _ in points], [1e3 * h for _, h in points]).derivative()
            for i, (q, h) in enumerate(points):
                inner = f"{float(slope(1e-3 * q)):.12g}" if 0 < i < len(points) - 1 else "0"
                out.write(f"{number},{q!r},{h!r},{inner}\n")


if __name__ == "__main__":
    colebrook(sys.argv[1])
    epanet(sys.argv[1])
    lockshield(sys.argv[1])
    system_curve(sys.argv[1])
    pump_slopes(sys.argv[1])
