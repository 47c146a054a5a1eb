#!/usr/bin/env python3
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Works out the ventilation loss of every room and of the house by EN 12831-1:2017, clause 6.3.3, from what a record says
of the job, and compares it with the loss that the record holds. It uses nothing of the program but the record, and of that
only inputs: no air change, flow or permeability that the program derived. The equations are those of the standard as an
open library of heat loads has them, written down here in the order of the standard and in m3/h.

    ventilation.py RECORD.json...

It also checks that the record says what the replaced table gave, by the air changes of BS 5449:1990 as a trade page quotes
them, in rooms that it names.
"""
import json
import math
import sys

TOLERANCE = 0.005                # share of a loss, as the requirement has it
RHO_CP = 0.34                    # Wh/(m3 K)
F_DIR, F_IZ = 2.0, 0.5           # annex B; f_iz of a zone of two rooms or more
F_FAC = {1: 12.0}                # one exposed side; 8 with more
BS_5449 = {"living": 1.5, "dining": 1.5, "kitchen": 2.0, "bedroom": 1.0, "bathroom": 3.0, "toilet": 3.0, "hall": 1.5,
           "landing": 1.5}


def value(given):
    return None if given is None else given["value"]


def stated(given):
    """An input that the job states or a table fills, and that was not derived from others."""
    return value(given) if given is not None and given["basis"] != "derived" else None


def outside_area(room):
    if room["elements"]:
        return sum(value(e["area_m2"]) for e in room["elements"]
                   if e["beyond"] in ("outside", "unheated") or (e["slab"] or {}).get("void"))
    fabric, floor = room["fabric"], value(room["floor_area_m2"])
    walls = fabric["outside_walls"] * math.sqrt(floor) * value(room["ceiling_height_m"])
    return walls + (floor if fabric["roof"] != "none" else 0.0) + (
        floor if fabric["floor"] in ("exposed", "suspended") else 0.0)


class Space:
    def __init__(self, room):
        self.id, self.use = room["id"], room["use"]
        self.volume = value(room["floor_area_m2"]) * value(room["ceiling_height_m"])
        self.temperature = value(room["temperature_c"])
        self.envelope = outside_area(room)
        fans = room["ventilation"]
        self.supply = self.exhaust = self.recovery = self.combustion = 0.0
        self.infiltration = None
        if fans:
            self.supply = value(fans["supply_per_hour"]) * self.volume
            taken = value(fans["extract_per_hour"])
            self.exhaust = self.supply if taken is None else taken * self.volume
            self.recovery = value(fans["recovery_percent"]) / 100.0
            self.infiltration = stated(fans["infiltration_per_hour"])
        if room["flue_air_m3_per_h"]:
            self.combustion = value(room["flue_air_m3_per_h"])
        self.stated = stated(room["air_changes_per_hour"])
        self.minimum = (value(room["minimum_air_changes_per_hour"]) or 0.0) * self.volume     # (33)
        self.technical = max(self.supply, self.exhaust + self.combustion)                      # (23), no transfer

    def own(self):
        """Air changes that the job states in one way or another."""
        if self.stated is not None:
            return self.stated
        if self.infiltration is not None:
            return self.infiltration + (1.0 - self.recovery) * self.supply / self.volume
        return None


def zone_losses(job):
    """Watts of each room, and of each room as a part of the house."""
    conditions = job["conditions"]
    spaces = [Space(r) for r in job["rooms"] if r["heated"] and (r["fabric"] or r["elements"])]
    envelope = sum(s.envelope for s in spaces)
    test = stated(conditions["leakage_at_50_pa_per_hour"])
    permeability = stated(conditions["air_permeability_at_50_pa_m3_per_h_m2"])
    if test is not None:
        permeability = test * sum(s.volume for s in spaces) / envelope
    ratio = value(conditions["volume_flow_factor"])
    at_50 = (permeability or 0.0) * envelope
    unbalanced = sum(s.exhaust + s.combustion - s.supply for s in spaces)
    adjustment = 1.0
    if at_50 > 0.0:
        f_fac = F_FAC.get(conditions["exposed_sides"], 8.0)
        adjustment = 1.0 / (1.0 + f_fac / ratio * (unbalanced / at_50) ** 2)
    additional = at_50 * (ratio or 0.0) * adjustment
    through = max(unbalanced, 0.0) + additional
    f_iz = F_IZ if len(spaces) > 1 else 1.0
    out = {}
    for s in spaces:
        difference = max(s.temperature - value(conditions["outdoor_c"]), 0.0)
        if s.own() is not None:
            watts = RHO_CP * s.own() * s.volume * difference
            out[s.id] = (watts, watts)
            continue
        leakage = through * s.envelope / envelope if envelope > 0.0 else 0.0                   # (19)
        env = 0.0
        if through > 0.0:                                                                      # (18)
            env = additional / through * min(through, leakage * F_DIR) + (through - additional) / through * leakage
        fans = s.supply * (1.0 - s.recovery)
        room = max(env, s.minimum - s.technical) + fans                                        # (17)
        house = max(leakage, f_iz * s.minimum - s.technical) + fans                            # (16)
        out[s.id] = (RHO_CP * room * difference, RHO_CP * house * difference)
    return out


def recorded(record, room, result):
    """The ventilation loss that the program holds for a room, by each method that it used."""
    difference = max(value(room["temperature_c"]) - value(record["job"]["conditions"]["outdoor_c"]), 0.0)
    if result["by_elements"]:
        yield result["by_elements"]["ventilation_w"]
    if result["by_area"] and not result["by_area"]["stated_rate"]:
        yield result["by_area"]["ventilation_w_per_m2k"] * value(room["floor_area_m2"]) * difference


def near(ours, theirs):
    return abs(ours - theirs) <= TOLERANCE * abs(theirs) + 1e-9


def check(path):
    with open(path, encoding="utf-8") as file:
        record = json.load(file)
    job = record["job"]
    if job["conditions"]["air_changes_by"] != "en_12831_2017":
        return f"{path}: its air changes are not by the standard"
    losses, faults, compared = zone_losses(job), [], 0
    at_once = counted = 0.0
    lines = {line["id"]: line for line in record["air"]["rooms"]}
    for room, result in zip(job["rooms"], record["design"]["rooms"]):
        assert room["id"] == result["id"]
        if room["id"] not in losses:
            continue
        whole, part = losses[room["id"]]
        counted += whole
        at_once += part
        for ours in recorded(record, room, result):
            compared += 1
            if not near(ours, whole):
                faults.append(f"{room['id']}: {ours:.1f} W in the record, {whole:.1f} W here")
        if room["heat_loss_w"] is None and room["heat_loss_rate_w_per_m2"] is None:
            if not near(result["air_not_at_once_w"], whole - part) and abs(whole - part) > 1e-6:
                faults.append(f"{room['id']}: {result['air_not_at_once_w']:.1f} W not at once, {whole - part:.1f} W here")
        replaced = lines[room["id"]]["replaced"]["air_changes_per_hour"]
        if room["use"] in BS_5449 and abs(replaced - BS_5449[room["use"]]) > 1e-9:
            faults.append(f"{room['id']}: {replaced} an hour by the replaced table, {BS_5449[room['use']]} there")
    sums = record["air"]["counted"]
    if not near(sums["rooms_w"], counted) or not near(sums["at_once_w"], at_once):
        faults.append(f"house: {sums['rooms_w']:.0f} and {sums['at_once_w']:.0f} W, {counted:.0f} and {at_once:.0f} W here")
    if compared == 0:
        faults.append("no room was compared")
    for fault in faults:
        print(f"{path}: {fault}")
    print(f"{path}: {compared} losses compared, {counted:.0f} W in the rooms, {at_once:.0f} W in the house at once")
    return "faults" if faults else None


if __name__ == "__main__":
    said = [check(path) for path in sys.argv[1:]]
    sys.exit(1 if not said or any(said) else 0)
