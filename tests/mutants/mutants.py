#!/usr/bin/env python3
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Asks whether a module's tests notice a fault: changes one place of the module's sources at a time, builds the module's test
program and runs it. Works in copies of the tree under the build directory, so that the checkout is never changed.

    tests/mutants/mutants.py --module physics
    tests/mutants/mutants.py --module yaml --tests job --count 20 --seed 2
    tests/mutants/mutants.py --module network --list

A mutant that does not build is replaced by another. One that survives is either a gap in the tests, or no fault at all:
such a one is written with its reason into equivalents.txt beside this file."""

import argparse
import os
import queue
import resource
import shutil
import signal
import subprocess
import sys
import threading
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
from mutations import in_order, mutants_of  # noqa: E402

ROOT = Path(__file__).resolve().parents[2]
MEMORY = 4 << 30   # bytes that a test program may ask for: a fault may make a loop that never ends


def equivalents():
    """What stands in equivalents.txt: the key of each mutant with its reason."""
    out, key = {}, None
    for line in (ROOT / "tests/mutants/equivalents.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("#") or not line.strip():
            continue
        if line.startswith("    "):
            if key is None:
                sys.exit(f"equivalents.txt: a reason without a mutant: {line.strip()}")
            out[key] = (out[key] + " " + line.strip()).strip()
        else:
            key = line.strip()
            out[key] = ""
    for key, reason in out.items():
        if not reason:
            sys.exit(f"equivalents.txt: no reason is given for {key}")
    return out


def sources(module, headers):
    files = sorted((ROOT / "src" / module).rglob("*.[ch]pp"))
    if headers:
        files += sorted((ROOT / "include/loopfolio" / module).rglob("*.hpp"))
    return [str(f.relative_to(ROOT)) for f in files]


class Tree:
    """A copy of the tree with a build directory of its own."""

    def __init__(self, folder, tests, options):
        self.folder, self.build, self.options = folder, folder / "build", options
        self.programs = [f"test_{t}" for t in tests]
        self.environment = {**os.environ, "CCACHE_BASEDIR": str(folder), "CCACHE_NOHASHDIR": "1"}
        self.seconds = {}

    def copy(self):
        listed = subprocess.run(["git", "ls-files", "-co", "--exclude-standard", "-z"], cwd=ROOT, check=True,
                                capture_output=True, text=True).stdout.split("\0")
        wanted = {name for name in listed if name and (ROOT / name).is_file()}
        for name in wanted:
            source, target = ROOT / name, self.folder / name
            if not target.exists() or target.read_bytes() != source.read_bytes():
                target.parent.mkdir(parents=True, exist_ok=True)
                shutil.copyfile(source, target)
                shutil.copymode(source, target)
        for file in list(self.folder.rglob("*")):
            name = str(file.relative_to(self.folder))
            if file.is_file() and not name.startswith("build/") and name not in wanted:
                file.unlink()

    def configure(self):
        flags = [f"-O{self.options.optimise} -D_GLIBCXX_ASSERTIONS"]
        command = ["cmake", "-S", str(self.folder), "-B", str(self.build), "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug",
                   "-DCMAKE_CXX_FLAGS_DEBUG=" + " ".join(flags), "-DLOOPFOLIO_WERROR=OFF", "-DLOOPFOLIO_BENCH=OFF"]
        if self.options.linker == "mold":
            command.append("-DCMAKE_EXE_LINKER_FLAGS=-fuse-ld=mold")
        if shutil.which("ccache"):
            command.append("-DCMAKE_CXX_COMPILER_LAUNCHER=ccache")
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL, env=self.environment)

    def built(self):
        run = subprocess.run(["ninja", "-C", str(self.build), f"-j{self.options.compile_jobs}", *self.programs],
                             capture_output=True, text=True, env=self.environment)
        return run.returncode == 0, run.stdout + run.stderr

    def passes(self, program, limit):
        """Whether all of a program's tests pass within `limit` seconds of processor time."""
        def bound():
            resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
            resource.setrlimit(resource.RLIMIT_CPU, (limit, limit))
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        try:
            run = subprocess.run([str(self.build / program), "--abort"], cwd=self.build, stdout=subprocess.DEVNULL,
                                 stderr=subprocess.DEVNULL, env=self.environment, preexec_fn=bound, timeout=10 * limit)
        except subprocess.TimeoutExpired:
            return False
        return run.returncode == 0

    def prepare(self):
        self.copy()
        self.configure()
        good, said = self.built()
        if not good:
            sys.exit(f"the tree does not build unchanged:\n{said[-4000:]}")
        for program in self.programs:
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            if not self.passes(program, 600):
                sys.exit(f"{program} does not pass unchanged")
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            self.seconds[program] = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime

    def verdict(self, mutant):
        file = self.folder / mutant.path
        source = file.read_text(encoding="utf-8")
        try:
            file.write_text(mutant.applied(source), encoding="utf-8")
            good, said = self.built()
            if not good:
                return "interrupted" if "build stopped: interrupted" in said else "did not build"
            for program in self.programs:
                if not self.passes(program, int(10 + 10 * self.seconds[program])):
                    return "killed"
            return "survived"
        finally:
            file.write_text(source, encoding="utf-8")


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--module", required=True, help="the module whose sources are changed")
    parser.add_argument("--tests", default="", help="further modules, parted by commas, whose tests belong to it")
    parser.add_argument("--count", type=int, default=60, help="how many mutants that build (60)")
    parser.add_argument("--seed", type=int, default=1, help="which of all the mutants are taken (1)")
    parser.add_argument("--build", type=Path, default=ROOT / "build/mutants",
                        help="folder of the copies (build/mutants)")
    parser.add_argument("--jobs", type=int, default=1, help="how many mutants at a time, each in a copy of its own (1)")
    parser.add_argument("--compile-jobs", type=int, default=2, help="processes of one build (2)")
    parser.add_argument("--headers", action="store_true", help="change the module's public headers, too")
    parser.add_argument("--optimise", default="0", help="the compiler's level for the mutants (0)")
    parser.add_argument("--linker", default="mold" if shutil.which("mold") else "default", choices=["mold", "default"],
                        help="mold where it is installed")
    parser.add_argument("--list", action="store_true", help="print the mutants in their order, and build nothing")
    return parser.parse_args()


def judge_all(mutants, trees, options, known):
    """Verdicts in the order of the mutants, until `count` of them have built."""
    waiting, verdicts, lock, stopped = queue.Queue(), {}, threading.Lock(), threading.Event()
    for i, mutant in enumerate(mutants):
        waiting.put((i, mutant))

    def work(tree):
        while True:
            with lock:
                enough = sum(v != "did not build" for v in verdicts.values()) >= options.count
            if enough or stopped.is_set():
                return
            try:
                i, mutant = waiting.get_nowait()
            except queue.Empty:
                return
            verdict = "equivalent" if mutant.key in known else tree.verdict(mutant)
            if verdict == "interrupted":   # which says nothing of the mutant
                print("a build was interrupted: the table holds what was judged before", flush=True)
                stopped.set()
                return
            with lock:
                verdicts[i] = verdict
                print(f"{len(verdicts):4}  {verdict:13}  {mutant.path}:{mutant.line}  {mutant.operator}", flush=True)

    workers = [threading.Thread(target=work, args=(tree,)) for tree in trees]
    for worker in workers:
        worker.start()
    try:
        for worker in workers:
            worker.join()
    except (KeyboardInterrupt, SystemExit):   # let each put its file back
        stopped.set()
        for worker in workers:
            worker.join()
        raise
    return [(mutants[i], verdicts[i]) for i in sorted(verdicts)]


def main():
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
    options = arguments()
    known = equivalents()
    found = []
    for path in sources(options.module, options.headers):
        found += mutants_of(path, (ROOT / path).read_text(encoding="utf-8"))
    found = in_order(found, options.seed)
    if options.list:
        for mutant in found:
            print(f"{mutant.path}:{mutant.line}  {mutant.operator}\n    {mutant.before}\n    {mutant.after}")
        return 0
    own = [options.module] if any((ROOT / "tests" / options.module).glob("*.cpp")) else []
    tests = own + [t for t in options.tests.split(",") if t]
    if not found or not tests:
        sys.exit(f"no source or no test of the module {options.module}")

    folder = options.build.resolve()
    trees = [Tree(folder / str(i), tests, options) for i in range(max(1, options.jobs))]
    for tree in trees:
        tree.folder.mkdir(parents=True, exist_ok=True)
        tree.prepare()
    start = time.monotonic()
    judged = judge_all(found, trees, options, known)
    seconds = (time.monotonic() - start) / max(1, len(judged))

    counts = Counter(verdict for _, verdict in judged)
    print("\n| module | made | did not build | killed | survived | equivalent | seconds each |")
    print("|---|---|---|---|---|---|---|")
    print(f"| {options.module} | {len(judged)} | {counts['did not build']} | {counts['killed']} | {counts['survived']} | "
          f"{counts['equivalent']} | {seconds:.1f} |")
    for mutant, verdict in judged:
        if verdict == "survived":
            print(f"\n{mutant.path}:{mutant.line}  {mutant.operator}\n    {mutant.before}\n    {mutant.after}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
