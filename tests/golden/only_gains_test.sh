#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Holds only_gains.py to its word: only_gains_test.sh SCRIPT WORK. Why: a comparison that never finds a loss accepts
# every record.
set -eu
script=$1 work=$2
mkdir -p "$work"
bad=0
ends_with() {   # ends_with CODE WHAT OLD NEW
    printf '%s' "$3" > "$work/old.json"
    printf '%s' "$4" > "$work/new.json"
    code=0
    python3 "$script" "$work/old.json" "$work/new.json" > "$work/said.txt" 2>&1 || code=$?
    [ "$code" = "$1" ] || { echo "$2: ends with $code and not with $1"; cat "$work/said.txt"; bad=1; }
}
ends_with 0 "nothing changed" '{"a": [1, {"b": null}]}' '{"a": [1, {"b": null}]}'
ends_with 0 "a key more" '{"a": {"b": 1}}' '{"c": 2, "a": {"b": 1, "d": []}}'
ends_with 0 "an element in between with a key more in another" '{"a": [{"b": 1}, {"b": 2}]}' \
    '{"a": [{"b": 1}, {"b": 3}, {"b": 2, "c": 0}]}'
ends_with 1 "a key gone" '{"a": {"b": 1, "d": 2}}' '{"a": {"b": 1}}'
ends_with 1 "another figure" '{"a": [{"b": 1}]}' '{"a": [{"b": 2}]}'
ends_with 1 "another number of digits" '{"a": 1}' '{"a": 1.0}'
ends_with 1 "a figure that became a text" '{"a": 1}' '{"a": "1"}'
ends_with 1 "false that became 0" '{"a": false}' '{"a": 0}'
ends_with 1 "a list cut short" '{"a": [1, 2]}' '{"a": [1]}'
ends_with 1 "a longer list without an old element" '{"a": [1, 2]}' '{"a": [1, 3, 4]}'
ends_with 1 "a mapping that became a list" '{"a": {}}' '{"a": []}'
ends_with 2 "no JSON" '{"a": 1}' '{"a": '
exit $bad
