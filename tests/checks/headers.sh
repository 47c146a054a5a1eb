#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Every source says its licence; every header guards itself; the top level holds what was agreed; nothing
# unfinished is left behind. Why: what only a document says is forgotten.
set -eu
cd "$1"
bad=0
for file in $(find include src tests .cmake -type f \( -name '*.hpp' -o -name '*.cpp' -o -name '*.cmake' -o -name '*.sh' -o -name '*.py' -o -name 'CMakeLists.txt' \)); do
    head -n 3 "$file" | grep -q 'SPDX-License-Identifier: MIT' || { echo "$file: no licence line"; bad=1; }
done
for file in $(find include src tests -name '*.hpp'); do
    grep -q '^#pragma once' "$file" || { echo "$file: no #pragma once"; bad=1; }
done
if grep -rnE "\b(TO""DO|FIX""ME|XX""X)\b" src include tests .cmake docs README.md DEVELOPERS.md; then
    echo "unfinished work is left behind"; bad=1
fi
for entry in *; do
    case "$entry" in
        CMakeLists.txt|README.md|DEVELOPERS.md|LICENSE|src|include|templates|tests|examples|docs|build*) ;;
        *) echo "$entry: not on the top level's list"; bad=1 ;;
    esac
done
exit $bad
