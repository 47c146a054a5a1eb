#!/usr/bin/env python3
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Says whether a record only gained keys, so that whoever reads the old one can still read the new one.

    only_gains.py OLD.json NEW.json      `-` for one of them reads standard input

Every key and every element of a list of OLD has to be in NEW with the same value, figures digit by digit. What NEW has
beyond that is listed. Ends with 0 where there are gains alone or nothing has changed, with 1 where something was lost
or has another value, and with 2 where a file cannot be read.
"""
import json
import sys


def read(name):
    stream = sys.stdin if name == "-" else open(name, encoding="utf-8")
    with stream:
        # Figures stay text, so that 1 and 1.0 differ; the pair keeps the figure 1 apart from the text "1".
        return json.load(stream, parse_int=lambda text: ("figure", text), parse_float=lambda text: ("figure", text))


def short(value):
    text = value[1] if isinstance(value, tuple) else json.dumps(value, ensure_ascii=False)
    return text if len(text) <= 60 else text[:57] + "..."


def compare(old, new, path, gains, losses):
    """Enters what `new` has more than `old` into `gains`, and what it has not into `losses`."""
    if isinstance(old, dict) and isinstance(new, dict):
        for key in old:
            if key in new:
                compare(old[key], new[key], f"{path}.{key}", gains, losses)
            else:
                losses.append(f"{path}.{key}: is gone")
        gains.extend(f"{path}.{key}: is new" for key in new if key not in old)
    elif isinstance(old, list) and isinstance(new, list):
        compare_lists(old, new, path, gains, losses)
    elif type(old) is not type(new) or old != new:
        losses.append(f"{path}: {short(old)} has become {short(new)}")


def compare_lists(old, new, path, gains, losses):
    """Elements may come in between, but those of `old` stay in their order."""
    if len(old) == len(new):
        for index, (before, after) in enumerate(zip(old, new)):
            compare(before, after, f"{path}[{index}]", gains, losses)
        return
    place = 0
    for index, element in enumerate(new):
        more, less = [], []
        if place < len(old):
            compare(old[place], element, f"{path}[{index}]", more, less)
        if place < len(old) and not less:
            gains.extend(more)
            place += 1
        else:
            gains.append(f"{path}[{index}]: is new")
    if place < len(old):
        losses.append(f"{path}[{place}]: {short(old[place])} is gone or has changed, in a list of another length")


def main(arguments):
    if len(arguments) != 2:
        print(__doc__, file=sys.stderr)
        return 2
    try:
        old, new = (read(name) for name in arguments)
    except (OSError, ValueError) as fault:
        print(f"cannot be read: {fault}", file=sys.stderr)
        return 2
    gains, losses = [], []
    compare(old, new, "record", gains, losses)
    for line in losses:
        print("lost   " + line)
    for line in gains:
        print("gained " + line)
    print(f"{len(losses)} lost or changed, {len(gains)} gained: "
          + ("not only gains" if losses else "only gains" if gains else "the same"))
    return 1 if losses else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
