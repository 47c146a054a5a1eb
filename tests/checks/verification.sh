#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Joins what the tests compared with the outside into one page, and holds docs/verification.md to it: the same comparisons
# with the same sources and counts. Figures are those of the run that wrote the page; another compiler may differ in the
# last digit. LOOPFOLIO_ACCEPT=1 writes the page anew.
#
#   verification.sh ROWS PAGE     ROWS: folder of MODULE.tsv, written by the test programs
set -eu
rows=$1 page=$2
made=$rows/verification.md
{
    cat <<'END'
# Verification

Written by the tests: each line is one comparison of loopfolio's own figures with a source outside it. Where a line holds
several values, the one that uses most of its tolerance is shown. A tolerance is what the source's own rounding or stated
accuracy leaves open; the test says which. Where ours is known to differ from the source, the last column says why, the
tolerance is about the difference that a route of its own gives, and the value that differs most is shown. `inside` stands
where a published value is to lie in one of our ranges. *Certainty*: `read` in a copy of the source or a page that
quotes it; `computed` with a general-purpose library or by hand from the published formula; `from memory` of the named
document; `common practice, no source`.

A failed comparison fails the test run. To write this page anew: `LOOPFOLIO_ACCEPT=1 ctest -R verification` after a whole run.
END
    for file in "$rows"/*.tsv; do
        [ -s "$file" ] || continue
        printf '\n## %s\n\n| what | source | certainty | values | expected | found | tolerance | unit | known difference |\n|---|---|---|---|---|---|---|---|---|\n' "$(basename "$file" .tsv)"
        LC_ALL=C sort "$file" | awk -F '\t' '{
            gsub(/\|/, "\\|"); printf "| %s | %s | %s | %s | %s | %s | %s | %s | %s |\n", $1, $2, $3, $4, $5, $6, $7, $8, $9 }'
    done
} > "$made"
[ -n "${LOOPFOLIO_ACCEPT:-}" ] && cp "$made" "$page"
# Lines without the figures.
lines() { sed -n '/^## \|^| /p' "$1" | awk -F '|' '/^## / { print; next } { print $2 "|" $3 "|" $4 "|" $5 "|" $9 "|" $10 }'; }
lines "$page" > "$rows/page.txt"
lines "$made" > "$rows/made.txt"
diff "$rows/page.txt" "$rows/made.txt" || { echo "$page is out of date: LOOPFOLIO_ACCEPT=1 ctest -R verification, after a whole run"; exit 1; }
grep -q '^| ' "$made" || { echo "no comparison was written"; exit 1; }
