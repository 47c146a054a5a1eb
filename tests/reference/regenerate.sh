#!/usr/bin/env bash
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Computes the reference tables of tests/data anew with CoolProp, iapws, scipy and the other libraries in
# requirements.txt, and compares. Why: a table that nobody can make again is only believed.
#
#   regenerate.sh BUILD_DIRECTORY     makes BUILD_DIRECTORY/reference: a Python environment, and the tables in data/
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
kept=$here/../data
mkdir -p "$1/reference"
build=$(cd "$1/reference" && pwd)
python=$build/python/bin/python3
export PYTHONDONTWRITEBYTECODE=1 PYTHONWARNINGS=ignore MPLCONFIGDIR=$build OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1

[ -x "$python" ] || python3 -m venv "$build/python"
"$python" -m pip install --quiet --disable-pip-version-check --only-binary :all: --require-hashes --no-deps \
    -r "$here/requirements.txt"

made=$build/data
rm -rf "$made"
mkdir -p "$made/network"
for table in en14825_bin_hours floor_factors floor_limits bs6700_table_d4 copper_published_table \
    propylene_glycol_volume_to_mass; do
    cp "$kept/$table.csv" "$made"   # transcribed: scripts start from them
done
for script in emitters fabric friction plant water_and_glycol; do "$python" "$here/$script.py" "$made"; done
for script in network_flows network_heat; do "$python" "$here/$script.py" "$made/network"; done
"$python" "$here/compare.py" "$kept" "$made"
