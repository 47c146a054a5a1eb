#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# The sources are laid out as .clang-format says, and no line is longer than 120 characters. Why: nobody has to think of
# it, and a change shows what it changes. `clang-format -i FILE` mends the first; a long text is parted by hand.
#
# Another version of clang-format lays some lines out otherwise, so that only the one of Debian 12 judges.
set -eu
cd "$(dirname "$0")/../.."
wanted=14
bad=0
files=$(git ls-files 'include/*.hpp' 'src/*.cpp' 'src/*.hpp' 'tests/*.cpp' 'tests/*.hpp')
[ -n "$files" ] || { echo "no source was found"; exit 1; }
if LC_ALL=C.UTF-8 grep -nHE '^.{121,}$' $files; then
    echo "a line is longer than 120 characters"; bad=1
fi
found=$(clang-format --version | sed -n 's/.*version \([0-9]*\)\..*/\1/p')
[ -n "$found" ] || { echo "clang-format does not say its version"; exit 1; }
if [ "$found" = "$wanted" ]; then
    clang-format --dry-run -Werror --ferror-limit=1 $files || { echo "the layout is not that of .clang-format"; bad=1; }
else
    echo "the layout was not looked at: clang-format is version $found here, and only version $wanted decides"
fi
exit $bad
