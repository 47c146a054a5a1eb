#!/usr/bin/env python3
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""hostile.py PROGRAM SOURCE_DIR WORK: makes packs by templates whose values are unlikely, for the validators to judge.

Each template either is refused, with exit code 3, a message and no file, or makes a pack. Which of the two is stated beside
it, so that neither happens unseen."""

import shutil
import subprocess
import sys
from pathlib import Path

PROGRAM, SOURCE, WORK = sys.argv[1], Path(sys.argv[2]), Path(sys.argv[3])
HEAD = "loopfolio_template: 1\nname: Hostile\nextends: default\n"
LOGO = "logo: {file: logo.png, height_mm: %s, alternative: %s}\n"
NAMES = "'<Firm & \"Sons\"> ]]> -- %PDF (\\n) /Names'"
LONG = "Long words that go on and on, " * 9 + "to the end"

# name: (made, pack.yaml after its head, wording files)
TEMPLATES = {
    "markup_in_names": (True, f"firm: {{name: {NAMES}, address: ['1 & 2 <Street>']}}\n",
                        {"pack": f"title: {NAMES}\n"}),
    "long_title": (True, f"firm: {{name: '{LONG[:110]}'}}\n", {"pack": f"title: '{LONG}'\n"}),
    "marks_above_letters": (True, "", {"pack": "title: 'Z\u0301w\u0302e\u0308i'\n"}),
    "spaces_of_all_kinds": (True, "", {"pack": "title: 'a\u00a0b\u2009c\u202fd'\n"}),
    "letters_without_a_glyph": (False, "", {"pack": "title: '\u0627\u0644\u062a\u062f\u0641\u0626\u0629'\n"}),
    "control_characters": (False, "", {"pack": "title: \"a\\x07b\"\n"}),
    "black_and_white": (True, "colours: {ink: '#000000', accent: '#000000', grey: '#000000', hairline: '#000000', "
                              "tint: '#ffffff', glow: '#ffffff'}\n", {}),
    "no_contrast": (False, "colours: {ink: '#ffffff'}\n", {}),
    "least_logo": (True, LOGO % ("4", "a < b"), {}),
    "largest_logo": (True, LOGO % ("40", f"'{LONG}'"), {}),
    "logo_too_large": (False, LOGO % ("41", "a"), {}),
    "private_language": (True, "language: x-ours\n", {}),
    "long_language": (True, "language: zh-Hant-TW-u-co-stroke\n", {}),
    "no_language": (False, "language: e\n", {}),
    "letter_paper": (True, "paper: Letter\n", {}),
    "one_block_a_part": (True, "parts: [{part: summary, blocks: [lead]}, {part: assessor, blocks: [sources]}]\n", {}),
}


def made_by(name, pack, wording):
    folder = WORK / "templates" / name
    (folder / "wording").mkdir(parents=True)
    (folder / "pack.yaml").write_text(HEAD + pack, encoding="utf-8")
    shutil.copy(SOURCE / "templates/report/example-firm/logo.png", folder)
    for file, text in wording.items():
        (folder / "wording" / f"{file}.yaml").write_text(text, encoding="utf-8")
    out = WORK / "made" / name
    run = subprocess.run([PROGRAM, "pack", str(SOURCE / "examples/manifold-flat.yaml"), "-o", str(out), "--template",
                          str(folder)], capture_output=True, text=True)
    files = sorted(out.glob("*")) if out.exists() else []
    if run.returncode == 3:
        assert run.stderr and not files, f"{name}: refused without a message, or with a file: {files}"
        return False
    assert run.returncode == 0, f"{name}: exit code {run.returncode}\n{run.stderr}"
    shutil.copy(next(file for file in files if file.suffix == ".pdf"), WORK / f"{name}.pdf")
    return True


shutil.rmtree(WORK, ignore_errors=True)
for name, (made, pack, wording) in TEMPLATES.items():
    assert made_by(name, pack, wording) == made, f"{name}: expected {'a pack' if made else 'a refusal'}"
print(f"{len(TEMPLATES)} templates, {sum(made for made, *_ in TEMPLATES.values())} packs made")
