#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Every text of the default template is asked for by a source that includes its header. Why: a text that nothing prints
# would be translated for nothing, and a translator could not find where it stands.
set -eu
cd "$1"
bad=0
for file in templates/report/default/wording/*.yaml; do
    name=$(basename "$file" .yaml)
    users=$(grep -l "#include \"texts/$name.hpp\"" $(find src/report src/app -name '*.cpp' -o -name '*.hpp') || true)
    [ -n "$users" ] || { echo "$file: no source includes texts/$name.hpp"; bad=1; continue; }
    for key in $(sed -n 's/^\([a-z][a-z0-9_]*\):.*/\1/p' "$file"); do
        # shellcheck disable=SC2086
        grep -qw "$key" $users || { echo "$file: nothing prints the text '$key'"; bad=1; }
    done
done
# Words that a reader sees are not in the sources; what is left there are ids, units, signs of formulas, and the names of inputs in
# the register, which `words_of` gives other words. A sentence has a space between words of three letters or more.
if grep -rnE '"[^"]*[A-Za-z]{3,} [a-z]{3,}[^"]*"' --include='*.cpp' src/report | grep -vE 'words_of<|throw|^[^:]*:[0-9]+: *//'; then
    echo "a sentence stands in src/report: it belongs into templates/report/default/wording"; bad=1
fi
exit $bad
