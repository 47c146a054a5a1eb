# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Holds the tables in tests/data to what the scripts beside this one compute.

    python3 compare.py KEPT_DIRECTORY MADE_DIRECTORY

A kept table that says `computed by` has to be among the made ones, and the other way round. Remarks, column names and
cells of text are equal; numbers agree within the relative tolerance below. Ends with 1 and names the first differences
where they do not.
"""
import os
import sys

from reference_table import parse

TOLERANCE = 1e-11   # closed forms and root finding, where another processor rounds otherwise
WIDER = {
    "water_2bar.csv": 1e-9,               # iapws iterates for the density
    "expansion.csv": 1e-8,                # and this is the small difference of two
    "bridged_wall.csv": 1e-9,             # a linear system of 1e5 unknowns
    "floor_conduction.csv": 1e-9,
    "exchanger_transfer.csv": 1e-8,       # a boundary value problem, solved to 1e-10
    "reheat.csv": 1e-8,                   # an integration to 1e-10
    "season.csv": 1e-9,                   # small differences of large sums
    "propylene_glycol.csv": 1e-9,         # a freezing point near 0 C, made from kelvin
    "ethylene_glycol.csv": 1e-9,
    "network/flows_colebrook.csv": 1e-8,  # least squares on loop equations
    "network/system_curve.csv": 1e-8,     # and so are these
    "network/flows_epanet.csv": 1e-6,     # EPANET returns single precision
    "network/heat.csv": 1e-9,
}
SHOWN = 5


def tables(directory):
    return sorted(os.path.relpath(os.path.join(folder, file), directory)
                  for folder, _, files in os.walk(directory) for file in files if file.endswith(".csv"))


def is_computed(path):
    return parse(path)[0][0].startswith("# computed by ")


def is_equal(kept, made, tolerance):
    try:
        a, b = float(kept), float(made)
    except ValueError:
        return kept == made
    return abs(a - b) <= tolerance * max(abs(a), abs(b))


def differences(name, kept_path, made_path):
    (kept_remarks, kept_head, kept_rows), (made_remarks, made_head, made_rows) = parse(kept_path), parse(made_path)
    if kept_remarks != made_remarks:
        yield f"{name}: remarks {kept_remarks}, made {made_remarks}"
    if kept_head != made_head or len(kept_rows) != len(made_rows):
        yield f"{name}: {len(kept_rows)} rows of {kept_head}, made {len(made_rows)} of {made_head}"
        return
    first = len(kept_remarks) + 2
    for line, (kept, made) in enumerate(zip(kept_rows, made_rows), first):
        if len(kept) != len(kept_head) or len(made) != len(kept_head):
            yield f"{name}:{line}: {len(kept)} cells, made {len(made)}, for {len(kept_head)} columns"
            continue
        for column, a, b in zip(kept_head, kept, made):
            if not is_equal(a, b, WIDER.get(name, TOLERANCE)):
                yield f"{name}:{line}: {column} {a}, made {b}"


def main(kept, made):
    computed = [name for name in tables(kept) if is_computed(os.path.join(kept, name))]
    fresh = [name for name in tables(made) if is_computed(os.path.join(made, name))]
    bad = 0
    for name in sorted(set(computed) ^ set(fresh)):
        print(f"{name}: {'not made by any script' if name in computed else 'made, but not kept'}")
        bad += 1
    for name in sorted(set(computed) & set(fresh)):
        found = list(differences(name, os.path.join(kept, name), os.path.join(made, name)))
        for text in found[:SHOWN]:
            print(text)
        if len(found) > SHOWN:
            print(f"{name}: and {len(found) - SHOWN} more")
        bad += len(found)
    print(f"{len(computed)} computed tables, {bad} differences")
    return 1 if bad or not computed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2]))
