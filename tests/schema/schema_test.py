#!/usr/bin/python3
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Holds the JSON Schemas that the program prints to the program itself, by two validators that are not ours: jsonschema
(Python) and ajv (JavaScript).

    schema_test.py PROGRAM SOURCE_DIR WORK_DIR

Every example and the starting point pass. Then faults are put into the examples, one at a time: an unknown
key, a missing one, a number out of its range, a value of another form, a name that nobody knows. What a schema refuses the
program must refuse as well, and the two validators must agree on every document. Faults that a schema can express must be
refused by it; what it cannot say (neighbours, references, tables) may pass it."""

import copy
import json
import os
import random
import subprocess
import sys
from pathlib import Path

import jsonschema
import yaml

PROGRAM, SOURCE, WORK = sys.argv[1], Path(sys.argv[2]), Path(sys.argv[3])
DEBIAN_NODE_MODULES = "/usr/share/nodejs"
FAULTS_JUDGED = 1500   # faulty jobs that the validators judge
FAULTS_RUN = 120   # faulty jobs that the program itself is asked about; it takes some milliseconds for each


class Loader(yaml.SafeLoader):
    """YAML as loopfolio reads it: a day is a text, and only `true` and `false` are truths."""


Loader.yaml_implicit_resolvers = {
    first: [(tag, regexp) for tag, regexp in found
            if tag not in ("tag:yaml.org,2002:timestamp", "tag:yaml.org,2002:bool")]
    for first, found in yaml.SafeLoader.yaml_implicit_resolvers.items()}
Loader.add_implicit_resolver("tag:yaml.org,2002:bool", __import__("re").compile("^(?:true|false)$"), list("tf"))


def schema(kind):
    text = subprocess.run([PROGRAM, "schema", kind], check=True, capture_output=True, text=True).stdout
    (WORK / f"{kind}.schema.json").write_text(text, encoding="utf-8")
    out = json.loads(text)
    jsonschema.Draft202012Validator.check_schema(out)
    return out


def accepted_by_python(rules, documents):
    validator = jsonschema.Draft202012Validator(rules)
    return [validator.is_valid(document) for document in documents]


def accepted_by_javascript(kind, documents):
    where = WORK / f"{kind}.documents.json"
    where.write_text(json.dumps(documents), encoding="utf-8")
    run = subprocess.run(["nodejs", str(SOURCE / "tests/schema/validate.js"), str(WORK / f"{kind}.schema.json"), str(where)],
                         check=True, capture_output=True, text=True, env={**os.environ, "NODE_PATH": DEBIAN_NODE_MODULES})
    return [line == "accepted" for line in run.stdout.split()]


def both(kind, rules, documents):
    python, javascript = accepted_by_python(rules, documents), accepted_by_javascript(kind, documents)
    apart = [i for i, (a, b) in enumerate(zip(python, javascript, strict=True)) if a != b]
    assert not apart, f"{kind}: the two validators differ on {len(apart)} documents, first {documents[apart[0]]}"
    return python


def loaded(path):
    return yaml.load(path.read_text(encoding="utf-8"), Loader)


def mappings(node, rules, root, path=()):
    """Every mapping of a document with the part of the schema that is about it."""
    if "$ref" in rules:
        rules = root["$defs"][rules["$ref"].rsplit("/", 1)[1]]
    if isinstance(node, dict) and "properties" in rules:
        yield path, rules
        for key, value in node.items():
            if key in rules["properties"]:
                yield from mappings(value, rules["properties"][key], root, (*path, key))
    elif isinstance(node, list) and "items" in rules:
        for i, value in enumerate(node):
            yield from mappings(value, rules["items"], root, (*path, i))


def at(node, path):
    for step in path:
        node = node[step]
    return node


def faults(document, root):
    """Copies of a document with one fault each that the schema can express, and what was done."""
    for path, rules in list(mappings(document, root, root)):
        here = at(document, path)

        def changed(change, path=path):
            out = copy.deepcopy(document)
            change(at(out, path))
            return out

        yield changed(lambda m: m.update({"no_such_key": 1})), (*path, "no_such_key")
        needed = rules.get("required", []) + ([] if "model" in here else rules.get("else", {}).get("required", []))
        for key in needed:
            if key in here:
                yield changed(lambda m, key=key: m.pop(key)), (*path, key, "missing")
        for key, value in here.items():
            form = rules["properties"].get(key, {})
            number = form if form.get("type") in ("number", "integer") else next(
                (f for f in form.get("anyOf", []) if f.get("type") == "number" and "maximum" in f), None)
            if number and "maximum" in number and not isinstance(value, dict):
                yield changed(lambda m, key=key, n=number: m.update({key: n["maximum"] * 2 + 1})), (*path, key, "high")
                yield changed(lambda m, key=key, n=number: m.update({key: n["minimum"] - 1})), (*path, key, "low")
                yield changed(lambda m, key=key: m.update({key: "much"})), (*path, key, "text")
            elif number and isinstance(value, dict) and "maximum" in number:
                yield (changed(lambda m, key=key, n=number: m[key].update({"value": n["maximum"] * 2 + 1})),
                       (*path, key, "value high"))
                yield changed(lambda m, key=key: m[key].update({"basis": "guessed"})), (*path, key, "basis")
            elif "enum" in form:
                yield changed(lambda m, key=key: m.update({key: "no_such_name"})), (*path, key, "name")
            elif form.get("type") == "boolean":
                yield changed(lambda m, key=key: m.update({key: "perhaps"})), (*path, key, "truth")
            elif form.get("type") == "array" or "$ref" in form:
                yield changed(lambda m, key=key: m.update({key: "words"})), (*path, key, "form")


def check_jobs():
    rules = schema("job")
    files = sorted((SOURCE / "examples").glob("*.yaml")) + [SOURCE / "templates/job/starting-point.yaml"]
    documents = [loaded(file) for file in files]
    for file, good in zip(files, both("job", rules, documents), strict=True):
        if not good:
            worst = jsonschema.exceptions.best_match(jsonschema.Draft202012Validator(rules).iter_errors(loaded(file)))
            raise AssertionError(f"{file.name}: {worst.json_path}: {worst.message}")

    faulty = [(fault, said) for document in documents for fault, said in faults(document, rules)]
    chance = random.Random(1)   # the same faults in every run
    faulty = chance.sample(faulty, FAULTS_JUDGED)
    good = both("job", rules, [fault for fault, _ in faulty])
    missed = [said for (_, said), accepted in zip(faulty, good, strict=True) if accepted]
    assert not missed, f"the schema accepts {len(missed)} faults, first {missed[0]}"

    # The program is asked about some of them, each from the folder of the examples, whose files they name.
    chosen = faulty[:FAULTS_RUN]
    folder = WORK / "faulty"
    subprocess.run(["rm", "-rf", str(folder)], check=True)
    subprocess.run(["cp", "-r", str(SOURCE / "examples"), str(folder)], check=True)
    for number, (fault, said) in enumerate(chosen):
        path = folder / f"fault-{number}.yaml"
        path.write_text(yaml.safe_dump(fault, allow_unicode=True, sort_keys=False), encoding="utf-8")
        run = subprocess.run([PROGRAM, "check", str(path)], capture_output=True, text=True)
        assert run.returncode == 3, f"refused by the schema and not by the program: {said}\n{run.stdout}{run.stderr}"
        path.unlink()
    print(f"job: {len(files)} accepted, {len(faulty)} faults refused, {len(chosen)} of them by the program too")


def check_catalogues():
    rules = schema("catalogue")
    files = [file for file in sorted((SOURCE / "examples/catalogue").glob("*.yaml")) if isinstance(loaded(file), list)]
    documents = [loaded(file) for file in files]
    assert files and all(both("catalogue", rules, documents))
    assert not any(both("catalogue", rules, [[{"model": "A", "kind": "panel_22", "output_at_50k_w": 9}],
                                             [{"model": "A", "wings": 2}], {"model": "A"}]))


def check_templates():
    rules = schema("template")
    document = loaded(SOURCE / "templates/report/default/pack.yaml")
    others = [loaded(file) for file in sorted((SOURCE / "examples").glob("*/pack.yaml"))]
    assert all(both("template", rules, [document, *others]))
    bad = [{**document, "paper_size": "A4"}, {**document, "parts": [{"part": "cellar", "blocks": ["lead"]}]},
           {**document, "blocks": {"installer": ["no_such_block"]}}, {**document, "loopfolio_template": 9}]
    assert not any(both("template", rules, bad))


WORK.mkdir(parents=True, exist_ok=True)
check_jobs()
check_catalogues()
check_templates()
