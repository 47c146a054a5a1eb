# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""What the fluids are compared with.

    python3 water_and_glycol.py TEST_DATA_DIRECTORY

water_2bar.csv                       iapws: IAPWS-95 and IAPWS-IF97
propylene_glycol, ethylene_glycol    CoolProp: MPG and MEG, by mass; nothing below the freezing point, where
                                     CoolProp refuses

Needs: iapws, CoolProp.
"""
import sys
from importlib.metadata import version

from CoolProp.CoolProp import PropsSI
from iapws import IAPWS95, IAPWS97

from reference_table import write

MPA = 0.2  # absolute
ZERO_C = 273.15


def water(directory):
    rows = []
    for t in range(5, 91, 5):
        of_95, of_if97 = (law(T=t + ZERO_C, P=MPA) for law in (IAPWS95, IAPWS97))
        rows.append((t, of_95.rho, of_95.cp * 1e3, of_95.mu, of_95.h * 1e3, of_if97.rho, of_if97.cp * 1e3, of_if97.mu))
    write(directory, __file__, "water_2bar.csv",
          [f"water at {MPA} MPa absolute by iapws {version('iapws')}: IAPWS-95 (scientific formulation) and",
           "IAPWS-IF97, viscosity by IAPWS R12-08"],
          "T_C rho_95 cp_95 mu_95 h_95 rho_if97 cp_if97 mu_if97".split(), rows, digits=16)


def glycol(directory, name, short):
    rows = []
    for mass_pct in (0, 10, 20, 30, 40, 50):
        fluid = f"INCOMP::{short}[{mass_pct / 100.0}]"
        freezing = PropsSI("T_freeze", "T", 300.0, "P", MPA * 1e6, fluid) - ZERO_C
        for t in range(-10, 61, 10):
            liquid = t >= freezing
            state = [PropsSI(q, "T", t + ZERO_C, "P", MPA * 1e6, fluid) for q in "DCV"] if liquid else [""] * 3
            rows.append((mass_pct, t, *state, freezing, liquid))
    write(directory, __file__, f"{name}.csv",
          [f"{name.replace('_', ' ')} and water by mass: CoolProp {version('CoolProp')}, INCOMP::{short},",
           "polynomials of Melinder (IIF-IIR 2010)"],
          "mass_pct T_C rho_kg_m3 cp_J_kgK mu_Pa_s T_freeze_C above_freezing".split(), rows, digits=16)


if __name__ == "__main__":
    water(sys.argv[1])
    glycol(sys.argv[1], "propylene_glycol", "MPG")
    glycol(sys.argv[1], "ethylene_glycol", "MEG")
