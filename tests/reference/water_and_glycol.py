# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""What the fluids are compared with.

    python3 water_and_glycol.py TEST_DATA_DIRECTORY

water_2bar.csv                       iapws: IAPWS-95 and IAPWS-IF97
propylene_glycol, ethylene_glycol    CoolProp: MPG and MEG, by mass; nothing below the freezing point, where
                                     CoolProp refuses
propylene_glycol_by_volume.csv       CoolProp: MPG where ASHRAE 2001 prints its properties of inhibited glycol, by mass
                                     from propylene_glycol_volume_to_mass.csv, which has to be there

Needs: iapws, CoolProp.
"""
import sys
from importlib.metadata import version

from CoolProp.CoolProp import PropsSI
from iapws import IAPWS95, IAPWS97

from reference_table import read, write

MPA = 0.2  # absolute
ZERO_C = 273.15


def water(directory):
    rows = []
    for t in range(5, 91, 5):
        of_95, of_if97 = (law(T=t + ZERO_C, P=MPA) for law in (IAPWS95, IAPWS97))
        rows.append((t, of_95.rho, of_95.cp * 1e3, of_95.mu, of_95.h * 1e3, of_if97.rho, of_if97.cp * 1e3, of_if97.mu,
                     of_if97.h * 1e3))
    write(directory, __file__, "water_2bar.csv",
          [f"water at {MPA} MPa absolute by iapws {version('iapws')}: IAPWS-95 (scientific formulation) and",
           "IAPWS-IF97, viscosity by IAPWS R12-08"],
          "T_C rho_95 cp_95 mu_95 h_95 rho_if97 cp_if97 mu_if97 h_if97".split(), rows, digits=16)


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


# ASHRAE Handbook Fundamentals 2001, chapter 21, read as transcribed in CoolProp: volume %, C, kg/m3, J/(kg K), mPa s.
ASHRAE = ((20, 20, 1019.01, 3973.0, 2.02), (30, 20, 1028.35, 3848.0, 3.06), (40, 20, 1036.24, 3702.0, 4.57),
          (30, 40, 1018.42, 3903.0, 1.63))


def by_volume(directory):
    table = read(directory, "propylene_glycol_volume_to_mass.csv")
    masses = [(float(r["vol_pct"]), float(r["mass_pct"])) for r in table]

    def mass_of(volume):
        for (v0, m0), (v1, m1) in zip(masses, masses[1:]):
            if v0 <= volume <= v1:
                return m0 + (volume - v0) / (v1 - v0) * (m1 - m0)
        raise ValueError(volume)

    rows = []
    for volume, t, *printed in ASHRAE:
        fluid = f"INCOMP::MPG[{mass_of(volume) / 100.0}]"
        rho, cp, mu = (PropsSI(q, "T", t + ZERO_C, "P", MPA * 1e6, fluid) for q in "DCV")
        rows.append((volume, t, *printed, rho, cp, mu * 1e3))
    write(directory, __file__, "propylene_glycol_by_volume.csv",
          ["ashrae: inhibited glycol, ASHRAE Handbook Fundamentals 2001, chapter 21, as transcribed in CoolProp;",
           f"melinder: plain glycol and water, CoolProp {version('CoolProp')}, INCOMP::MPG at the mass of that volume"],
          ("vol_pct T_C ashrae_kg_m3 ashrae_J_kgK ashrae_mPa_s "
           "melinder_kg_m3 melinder_J_kgK melinder_mPa_s").split(), rows)


if __name__ == "__main__":
    water(sys.argv[1])
    glycol(sys.argv[1], "propylene_glycol", "MPG")
    glycol(sys.argv[1], "ethylene_glycol", "MEG")
    by_volume(sys.argv[1])
