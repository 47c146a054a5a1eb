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
    sources=$(find src/report src/app src/design -name '*.cpp' -o -name '*.hpp')
    # shellcheck disable=SC2086
    users=$(grep -l "#include \"texts/$name.hpp\"" $sources || true)
    [ -n "$users" ] || { echo "$file: no source includes texts/$name.hpp"; bad=1; continue; }
    # A step of a calculation is always asked for with its namespace before it; its name may also be one of a variable.
    case "$name" in steps_*) asked='::' ;; *) asked='' ;; esac
    for key in $(sed -n 's/^\([a-z][a-z0-9_]*\):.*/\1/p' "$file"); do
        # shellcheck disable=SC2086
        grep -qE "$asked\\b$key\\b" $users || { echo "$file: nothing prints the text '$key'"; bad=1; }
    done
done
# Words that a reader sees are not in the sources; what is left there are ids, units, signs of formulas, and the names of inputs in
# the register, which `words_of` gives other words. A sentence has a space between words of three letters or more.
if grep -rnE '"[^"]*[A-Za-z]{3,} [a-z]{3,}[^"]*"' --include='*.cpp' src/report | grep -vE 'words_of<|throw|^[^:]*:[0-9]+: *//'; then
    echo "a sentence stands in src/report: it belongs into templates/report/default/wording"; bad=1
fi
# The same in design, where words are kept as keys. What it refuses is shown to whoever runs the program, in English:
# these are the statements with `refus`, `Refusal`, `throw` and `Origin`. src/design/register has the names of inputs,
# for which a template has other words, and the rows of the checks hold what `check` prints on a terminal.
files=$(find src/design include/loopfolio/design -name '*.[ch]pp' | grep -vE '^src/design/register/|/finding\.hpp$' | sort)
said=$(for file in $files; do
    awk -v file="$file" '
        { sub(/^ *\/\/.*/, ""); sub(/  +\/\/.*/, ""); text = text $0 "\n" }
        END {
            while (match(text, /"([^"\\]|\\.)*"|;/)) {
                code = code substr(text, 1, RSTART - 1)
                token = substr(text, RSTART, RLENGTH)
                text = substr(text, RSTART + RLENGTH)
                if (token == ";") {
                    if (code !~ /refus|Refusal|throw|Origin/) printf "%s", sentences
                    code = sentences = ""
                } else if (token ~ /[A-Za-z][A-Za-z][A-Za-z] [a-z][a-z][a-z]/) {
                    sentences = sentences file ": " token "\n"
                }
            }
        }' "$file"
done)
if [ -n "$said" ]; then
    echo "$said"
    echo "words stand in src/design: they belong into templates/report/default/wording/steps_*.yaml"; bad=1
fi
# The key of a step names it in the record, so no two steps have the same.
twice=$(sed -n 's/^\([a-z][a-z0-9_]*\):.*/\1/p' templates/report/default/wording/steps_*.yaml | sort | uniq -d)
[ -z "$twice" ] || { echo "keys of steps that two files have: $twice"; bad=1; }
exit $bad
