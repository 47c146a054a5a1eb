#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# A module calls only what the modules on its link line hold. Why: modules are static libraries, and a program that links
# several of them finds whatever any of them calls, so that the linker notices no wrong one. A function that is declared
# by hand, without an include, would pass modules.sh too.
#
#   links.sh MODULES     MODULES: a line for each module, `NAME ARCHIVE SEEN...`, which CMake writes from the link lines
set -eu
modules=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

# What is weak is in every object that uses it (inline functions and templates), so that it crosses no border.
while read -r name archive seen; do
    nm --defined-only --extern-only --format=posix "$archive" |
        awk -v module="$name" '$2 ~ /^[TDBRS]$/ { print $1, module }' >> "$folder/defined"
    nm --undefined-only --format=posix "$archive" |
        awk -v module="$name" '$2 == "U" { print $1, module }' | sort -u >> "$folder/wanted"
done < "$modules"

# A module that calls no other would show that nothing was read.
awk -v modules="$modules" '
    BEGIN { while ((getline line < modules) > 0) { n = split(line, part, " "); sees[part[1], part[1]] = 1
                for (i = 3; i <= n; ++i) sees[part[1], part[i]] = 1 } }
    NR == FNR { home[$1] = $2; next }
    $1 in home && $2 != home[$1] {
        ++crossing
        if (!(($2, home[$1]) in sees)) { print "module " $2 " calls " $1 " of module " home[$1]; bad = 1 } }
    END { if (crossing < 100) { print "only " crossing + 0 " calls from module to module were found"; bad = 1 }
          exit bad }' "$folder/defined" "$folder/wanted" > "$folder/said" || { c++filt < "$folder/said"; exit 1; }
