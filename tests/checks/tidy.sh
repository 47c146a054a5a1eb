#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# No source has a fault that the checks named in .clang-tidy find. Why: copies made for nothing and texts used after
# they were moved away compile without a warning.
#
#   tidy.sh BUILD [FILE...]     BUILD: a build directory in which the texts are made. Without FILE, all of src
#
# Other versions of clang-tidy find other things, so that only the one of Debian 12 judges.
set -eu
usage() { sed -n '/^#   tidy/s/^# *//p' "$0" >&2; exit 2; }
[ $# -ge 1 ] || usage
build=$(cd "$1" && pwd)
shift
[ -f "$build/compile_commands.json" ] || { echo "$build has no compile_commands.json" >&2; exit 1; }
[ $# -gt 0 ] || cd "$(dirname "$0")/../.."
wanted=14
found=$(clang-tidy --version | sed -n 's/.*version \([0-9]*\)\..*/\1/p')
[ -n "$found" ] || { echo "clang-tidy does not say its version"; exit 1; }
if [ "$found" != "$wanted" ]; then
    echo "nothing was looked at: clang-tidy is version $found here, and only version $wanted decides"
    exit 0
fi
[ $# -gt 0 ] || set -- $(git ls-files 'src/*.cpp')
[ $# -gt 0 ] || { echo "no source was found"; exit 1; }
# The flags are those of GCC, of which clang does not know all. Clang 14 takes a call between two consteval functions for
# a fault where the caller is a template, so that it is given constexpr; GCC holds them to consteval in every build. The
# error stream only counts what was found in the headers of others.
printf '%s\n' "$@" | xargs -n 4 -P "$(nproc)" clang-tidy -p "$build" --quiet \
    --extra-arg=-Wno-unknown-warning-option --extra-arg=-Wno-keyword-macro --extra-arg=-Dconsteval=constexpr 2>/dev/null
