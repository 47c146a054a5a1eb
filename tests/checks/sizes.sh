#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Files stay small enough to be read in one sitting. Why: a file that grows past this has two jobs.
set -eu
cd "$1"
bad=0
check() {   # check LIMIT FILE...
    limit=$1; shift
    for file in "$@"; do
        lines=$(wc -l < "$file")
        if [ "$lines" -gt "$limit" ]; then echo "$file: $lines lines, limit $limit"; bad=1; fi
    done
}
check 500 $(find src tests -name '*.cpp')
check 300 $(find include src tests -name '*.hpp')
check 80 src/main.cpp
exit $bad
