#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# A room calls only what the rooms on its link line hold. Why: rooms are static libraries, and a program that links
# several of them finds whatever any of them calls, so that the linker notices no wrong one. A function that is declared
# by hand, without an include, would pass rooms.sh too.
#
#   links.sh ROOMS     ROOMS: a line for each room, `NAME ARCHIVE SEEN...`, which CMake writes from the link lines
set -eu
rooms=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

# What is weak is in every object that uses it (inline functions and templates), so that it crosses no border.
while read -r name archive seen; do
    nm --defined-only --extern-only --format=posix "$archive" |
        awk -v room="$name" '$2 ~ /^[TDBRS]$/ { print $1, room }' >> "$folder/defined"
    nm --undefined-only --format=posix "$archive" |
        awk -v room="$name" '$2 == "U" { print $1, room }' | sort -u >> "$folder/wanted"
done < "$rooms"

# A room that calls no other would show that nothing was read.
awk -v rooms="$rooms" '
    BEGIN { while ((getline line < rooms) > 0) { n = split(line, part, " "); sees[part[1], part[1]] = 1
                for (i = 3; i <= n; ++i) sees[part[1], part[i]] = 1 } }
    NR == FNR { home[$1] = $2; next }
    $1 in home && $2 != home[$1] {
        ++crossing
        if (!(($2, home[$1]) in sees)) { print "room " $2 " calls " $1 " of room " home[$1]; bad = 1 } }
    END { if (crossing < 100) { print "only " crossing + 0 " calls from room to room were found"; bad = 1 }
          exit bad }' "$folder/defined" "$folder/wanted" > "$folder/said" || { c++filt < "$folder/said"; exit 1; }
