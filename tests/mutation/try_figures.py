"""Changes figure after figure and tells which changes no test notices. See `run`."""

import re
import sys
import time
from pathlib import Path

from allowed import ALLOWED
from changed_tree import PROGRAMS, ChangedTree
from figures import figures_of

FACTORS = (1.02, 0.98)
# Where the figures are. Other constants of src say how finely something is looked at or drawn.
PLACES = ["src/catalogue/*.yaml", "src/physics/*.?pp", "src/rules/**/*.?pp", "src/model/units.hpp",
          "src/model/angle.hpp", "src/model/sheet.hpp", "src/lines/prepare.hpp",
          "src/lines/access/way_in.hpp", "src/planning/leak_evidence.hpp",
          "src/planning/leak_test_plan.hpp", "src/planning/cable_cut.hpp",
          "src/commands/leak_test_line.cpp"]
# The tests of a file's own subject, which are asked first.
FIRST = {"catalogue": [("catalogue", "*")],
         "physics": [("physics", "*")],
         "rules": [("rules", "*LimitAtItsEdge*"), ("rules", "*")],
         "lines": [("lines", "*"), ("rules", "*")],
         "planning": [("planning", "*")],
         "model": [("physics", "*"), ("input", "*")],
         "commands": [("commands", "*")]}


def numbered_figures(root):
    """The figures of each file, and the number of the first."""
    numbered, next_id = {}, 1
    for path in sorted({path.relative_to(root).as_posix() for place in PLACES for path in root.glob(place)}):
        figures = figures_of(path, (root / path).read_text())
        numbered[path] = (figures, next_id)
        next_id += len(figures)
    return numbered


class Trial:
    def __init__(self, root, build, files, quick):
        self.root, self.quick = root, quick
        self.numbered = numbered_figures(root)
        self.files = files or list(self.numbered)
        self.asked = {asked for path in self.files for asked in FIRST[path.split("/")[1]]}
        if not quick:
            self.asked = {(program, "*") for program in PROGRAMS}
        self.tree = ChangedTree(root, build, self.numbered, sorted({program for program, _ in self.asked}))
        self.rebuilt = set()
        self.tests = [(path, path.read_text()) for path in sorted((root / "tests").rglob("*.?pp"))]

    def check_unchanged(self):
        for program, only in sorted(self.asked):
            if self.tree.notices(program, only, "0:1"):
                raise SystemExit(f"test_{program} fails with nothing changed")

    def that_see(self, figure):
        """The test programs that have compiled in the constant itself: they would hold the changed value
        against the old one, which is no test of it."""
        if not figure.path.endswith(".hpp"):
            return []
        word = re.compile(rf"\b{re.escape(figure.name)}\b")
        seen = {path.relative_to(self.root / "tests").parts[0] for path, text in self.tests if word.search(text)}
        seen &= {program for program, _ in self.asked}
        return [f"test_{program}" for program in PROGRAMS if program in seen]

    def own_tests(self, figure):
        """The edge of the figure's own row, and the tests that mirror its file: they take a second, not minutes."""
        path = Path(figure.path)
        if path.parts[1] == "rules":
            yield "rules", f"*LimitAtItsEdge*__{figure.name.replace('-', '_')}"
        for test, text in self.tests:
            program = test.relative_to(self.root / "tests").parts[0]
            suites = set(re.findall(r"\bTEST(?:_[FP])?\((\w+),", text))
            if test.stem == f"{path.stem}_test" and suites and program in {program for program, _ in self.asked}:
                yield program, ":".join(f"*{suite}.*" for suite in sorted(suites))

    def any_notices(self, figure, change):
        first = FIRST[figure.path.split("/")[1]]
        others = [] if self.quick else [(program, "*") for program in PROGRAMS if (program, "*") not in first]
        return any(self.tree.notices(program, only, change)
                   for program, only in [*self.own_tests(figure), *first, *others])

    def is_noticed(self, figure, number, factor):
        if not figure.compiled and self.any_notices(figure, f"{number}:{factor}"):
            return True
        # What only other constants are worked out from changes nothing at run time.
        if not figure.compiled and not figure.path.endswith(".cpp"):
            return False
        place = self.tree.tree / figure.path
        written, own = (self.root / figure.path).read_bytes(), place.read_bytes()
        place.write_bytes(self.tree.own_version(figure.path, written, (figure, factor)))
        try:
            self.rebuilt.update(self.that_see(figure))
            if not figure.path.endswith(".yaml") and not self.tree.compiles(self.rebuilt):
                return True
            return self.any_notices(figure, "0:1")
        finally:
            place.write_bytes(own)
            # Else the changed object would be what the next changes are tried on.
            if not figure.path.endswith(".yaml"):
                self.tree.compiles(self.rebuilt)


def main():
    root, build, words = Path(sys.argv[1]), Path(sys.argv[2]), sys.argv[3:]
    files = [Path(word).resolve().relative_to(root).as_posix() for word in words if word != "--quick"]
    trial = Trial(root, build, files, "--quick" in words)
    trial.check_unchanged()
    begun, tried, survived, allowed = time.monotonic(), 0, 0, 0
    for path in trial.files:
        figures, first_id = trial.numbered[path]
        for number, figure in enumerate(figures, first_id):
            if (path, figure.name) in ALLOWED:
                allowed += 1
                continue
            for factor in FACTORS:
                tried += 1
                if not trial.is_noticed(figure, number, factor):
                    survived += 1
                    print(f"{path}:{figure.line}: {figure.name}: {figure.text} times {factor} is not noticed",
                          flush=True)
    minutes = (time.monotonic() - begun) / 60
    print(f"{tried} changes in {minutes:.0f} minutes, {allowed} figures left out with a reason")
    print(f"{tried - survived} passed, {survived} failed")
    return survived > 0


sys.exit(main())
