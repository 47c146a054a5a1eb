#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Report and record print and write down what a study holds; they calculate nothing. Why: a figure that is worked out while a
# page is written can differ from the one that the record, the terminal or another page shows. So they include no header of
# physics or network, and call no function of design, physics or network but those below. What they lack belongs into
# src/study, where both find it.
set -eu
cd "$1"

# Types and enumerations are free. These functions are too:
#   word                   the name of an enumerator
#   row_of                 how a check is shown: its name, unit and decimals
#   figure_as, limit_as    a finding's figure or limit as the quantity that it is
allowed=' word row_of figure_as limit_as '

modules='src/report src/record include/loopfolio/report include/loopfolio/record'
bad=0

if grep -rnE '#include "(loopfolio/)?(physics|network)/' $modules; then
    echo "report and record include no header of physics or network"; bad=1
fi
if grep -rnE 'using namespace (loopfolio::)?(design|physics|network)\b' $modules; then
    echo "a whole namespace would hide what is called from it"; bad=1
fi

# Every call that names its namespace. A type is written with a capital here, and a function without.
called=$(grep -rnoE '\b(design|physics|network)::[a-z_]+(<[^<>()]*>)?\(' $modules || true)
# And every function that these modules declare, found by its arguments where its namespace is not named. What report or record
# declares itself under the same name is another function.
declared=$(sed -nE 's/^(\[\[nodiscard\]\] )?(inline |constexpr )*[A-Za-z_:<>,& *]+ ([a-z_]+)\(.*/\3/p' \
    include/loopfolio/design/*.hpp include/loopfolio/physics/*.hpp include/loopfolio/network/*.hpp | sort -u)
for name in $declared; do
    case "$allowed" in *" $name "*) continue ;; esac
    if grep -rqE "^[A-Za-z\[][A-Za-z_:<>,&* \[]*\]* ?[A-Za-z_:<>,&*]* $name\(" $modules; then continue; fi
    called="$called
$(grep -rnoE "(^|[^A-Za-z_:.>])$name\(" $modules || true)"
done

IFS='
'
for call in $called; do
    name=$(printf '%s\n' "$call" | sed -E 's/(<[^<>()]*>)?\($//; s/.*[^A-Za-z_]([a-z_]+)$/\1/')
    case "$allowed" in
        *" $name "*) ;;
        *) echo "$call: report and record call no function of design, physics or network"; bad=1 ;;
    esac
done
exit $bad
