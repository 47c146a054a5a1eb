#!/usr/bin/env python3
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Checks from a record alone that mass and energy close in every state: what flows into each junction flows out of it,
and the heat that the source gives is what emitters give to rooms and below, and what pipes lose. It uses nothing of
the program but the record.

    closure.py RECORD.json...
"""
import json
import sys
from collections import defaultdict

MASS = 1e-6      # share of the flow round the emitters that a junction may be off
ENERGY = 1e-6    # share of the heat that a state may be off


def junctions_of(job):
    """Junctions that have one node for flow and return: only loop pipes and emitters meet there."""
    kinds = defaultdict(set)
    for s in job["sections"]:
        for end in ("from", "to"):
            kinds[s[end]].add(s["carries"])
    source = job["heat_source"] or {}
    single = {j for j, k in kinds.items() if k == {"loop"}}
    if source.get("at") == source.get("return_at"):
        single.discard(source.get("at"))
    for m in job.get("mixers", []):
        single -= {m["from"], m["to"]}
    return single


def mass(job, state, single):
    """What each node gains, in L/min. A node is a junction's flow or return side."""
    gain = defaultdict(float)

    def node(junction, side):
        return (junction, "both" if junction in single else side)

    def flow(start, end, rate):
        gain[start] -= rate
        gain[end] += rate

    for s, f in zip(job["sections"], state["sections"]):
        assert s["id"] == f["id"]
        if s["carries"] == "loop":
            flow(node(s["from"], "flow"), node(s["to"], "return"), f["flow_pipe_l_per_min"])
            continue
        flow(node(s["from"], "flow"), node(s["to"], "flow"), f["flow_pipe_l_per_min"])
        flow(node(s["to"], "return"), node(s["from"], "return"), f["return_pipe_l_per_min"])
    for e, f in zip(job["emitters"], state["emitters"]):
        flow(node(e["at"], "flow"), node(e["return_at"], "return"), f["flow_l_per_min"])
    for m, f in zip(job.get("mixers", []), state["mixers"]):
        drawn = f["drawn_l_per_min"]
        flow(node(m["from"], "flow"), node(m["to"], "flow"), drawn)
        flow(node(m["to"], "return"), node(m["from"], "return"), drawn)
        flow(node(m["to"], "return"), node(m["to"], "flow"), f["mixed_in_l_per_min"])
    source = job["heat_source"]
    flow(node(source["return_at"], "return"), node(source["at"], "flow"), state["flow_l_per_min"])
    return gain


def main(names):
    faults = 0
    checked = 0
    for name in names:
        with open(name, encoding="utf-8") as file:
            record = json.load(file)
        job, states = record["job"], record["operation"]["states"]
        single = junctions_of(job)
        for state in states:
            worst = max((abs(v) for v in mass(job, state, single).values()), default=0.0)
            given = sum(e["output_w"] for e in state["emitters"])
            below = state["downward_w"]
            made = state["heat_w"]
            off = abs(made - given - below - state["pipe_loss_w"]) / made if made > 0 else 0.0
            checked += 1
            if worst > MASS * state["flow_l_per_min"] or off > ENERGY:
                faults += 1
                print(f"{name}: {state['state']}: a junction is off by {worst:.2g} L/min, the heat by {off:.2%}")
    print(f"{checked} states of {len(names)} records close" if not faults else f"{faults} states do not close")
    return 1 if faults or not checked else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
