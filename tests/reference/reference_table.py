# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""The form of the tables in tests/data: remarks behind '#', one line of column names, rows without quoting."""
import os


def write(directory, script, name, remarks, head, rows, digits=12):
    with open(os.path.join(directory, name), "w", encoding="ascii") as out:
        for line in [f"computed by tests/reference/{os.path.basename(script)}:", *remarks]:
            out.write(f"# {line}\n")
        out.write(",".join(head) + "\n")
        for row in rows:
            out.write(",".join(x if isinstance(x, str) else f"{x:.{digits}g}" for x in row) + "\n")


def parse(path):
    """Remarks, column names, rows; all as text."""
    with open(path, encoding="ascii") as file:
        lines = [line.rstrip("\n") for line in file]
    rows = [line.split(",") for line in lines if not line.startswith("#")]
    return [line for line in lines if line.startswith("#")], rows[0], rows[1:]


def read(directory, name):
    _, head, rows = parse(os.path.join(directory, name))
    return [dict(zip(head, row)) for row in rows]
