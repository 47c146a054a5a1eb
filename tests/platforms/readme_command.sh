#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Prints the command that stands in README under the line `<!-- NAME command -->`, so that what README promises is what
# is run.
#
#   readme_command.sh NAME README     NAME: build or test
set -eu
command=$(awk -v marker="<!-- $1 command -->" '
    $0 == marker { wanted = 1; next }
    wanted && /^```/ { if (inside) exit; inside = 1; next }
    inside { print }' "$2")
[ -n "$command" ] || { echo "$2 has no $1 command" >&2; exit 1; }
printf '%s\n' "$command"
