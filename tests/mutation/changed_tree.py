"""A copy of the tree to change figures in. Its numbers can be changed while the tests run, its catalogue is
read from the folder and its core is a shared library: a change costs nothing, or one object, and no test
program is linked again."""

import os
import re
import subprocess

from figures import changeable, changed

LIMITS = "src/rules/limit.hpp"
TESTS_OF_LIMITS = "tests/rules/limit_test.cpp"
RULES_AS_JSON = "src/render/rules_json.cpp"
# Tests that read the sources, which are not as they were.
OF_THE_TEXT = "Layers*"
PROGRAMS = ["catalogue", "physics", "rules", "lines", "planning", "input", "commands"]


def own_build_file(text):
    text = text.replace("(linewright_core STATIC", "(linewright_core SHARED")
    # The library that compares many numbers at once does not compile without optimisation.
    text = text.replace("$<$<CONFIG:Release>:-O3>", "-O2")
    # Its many files are compiled some at a time, which takes a fifth of the time.
    text = re.sub(r"if\(LINEWRIGHT_BATCHES AND .*\)", "if(LINEWRIGHT_BATCHES)", text)
    text = re.sub(r"(?ms)^embed\(\$\{tables\}.*?\)$", "", text)
    return re.sub(
        r"(?m)^set\(tables .*$",
        "set(tables ${PROJECT_SOURCE_DIR}/tests/mutation/tables_of_folder.cpp)\n"
        "set_source_files_properties(${tables} PROPERTIES COMPILE_DEFINITIONS\n"
        '  LINEWRIGHT_TABLES="${CMAKE_CURRENT_SOURCE_DIR}/catalogue")', text)


class ChangedTree:
    def __init__(self, root, build, numbered, programs):
        """`numbered` has the figures of each file of src, by its path, and the number of the first; `programs`
        are the tests that will be asked."""
        self.root, self.tree, self.made = root, build / "tree", build / "made"
        self.numbered = numbered
        self.names = "|".join(sorted({re.escape(each.name) for figures, _ in numbered.values() for each in figures}))
        self._copy()
        # What compiles quickest will do.
        self._run(build / "build.log", "cmake", "-S", self.tree, "-B", self.made, "-G", "Ninja",
                  "-DCMAKE_BUILD_TYPE=None", "-DCMAKE_CXX_FLAGS=-O0", "-DLINEWRIGHT_BATCHES=ON")
        self._run(build / "build.log", "ninja", "-C", self.made, *(f"test_{name}" for name in programs))

    def _run(self, log, *words):
        with open(log, "w") as output:
            if subprocess.run(words, stdout=output, stderr=subprocess.STDOUT).returncode:
                raise SystemExit(f"{words[0]} failed: see {log}")

    def _copy(self):
        """Files that differ are written anew, also one that an earlier run left changed."""
        wanted = [self.root / name for name in ("CMakeLists.txt", "README.md", "DEVELOPERS.md")]
        figure_header = self.tree / "src/model/figure.hpp"
        for folder in ("src", "tests", "routes", "examples"):
            wanted += (path for path in (self.root / folder).rglob("*") if path.is_file()
                       and "node_modules" not in path.parts)
        kept = set()
        for path in wanted:
            place = self.tree / path.relative_to(self.root)
            if path == self.root / "tests/mutation/figure.hpp":
                place = figure_header
            kept.add(place)
            data = self.own_version(place.relative_to(self.tree).as_posix(), path.read_bytes())
            if not place.exists() or place.read_bytes() != data:
                place.parent.mkdir(parents=True, exist_ok=True)
                place.write_bytes(data)
        for path in list(self.tree.rglob("*")):
            if path.is_file() and path not in kept:
                path.unlink()

    def own_version(self, path, data, change=None):
        """A `change` is a figure of the file and a factor."""
        if path == "src/CMakeLists.txt":
            return own_build_file(data.decode()).encode()
        # Beside a whole number, a figure would be taken for one, too.
        if re.match(r"(src|tests)/.*\.[ch]pp$", path) and path != "tests/mutation/figure.hpp":
            data = re.sub(rf"\? ({self.names}) : (?=\d+[;,)])", r"? double{\1} : ", data.decode()).encode()
        if path.endswith(".yaml") and change:
            return changed(change[0], data.decode(), change[1]).encode()
        if path == TESTS_OF_LIMITS:
            return re.sub(rb"\.value = ([^,\n}]+)", rb".value = Figure{\1}", data)
        text = data.decode() if path in self.numbered or path == LIMITS else None
        if path == LIMITS:
            text = text.replace("  double value = 0;", "  Figure value{};", 1)
            text = text.replace("#include ", '#include "model/figure.hpp"\n#include ', 1)
        if path == RULES_AS_JSON:
            return data.replace(b"json_number(row.value)", b"json_number(double{row.value})")
        if path in self.numbered and not path.endswith(".yaml"):
            # What two of a kind are compared by says which kind.
            text = re.sub(rf"std::(min|max)\((?=[^;]*(\b({self.names})\b|\.value\b(?!\()))", r"std::\1<double>(",
                          changeable(text, *self.numbered[path], change))
        return data if text is None else text.encode()

    def compiles(self, targets):
        """Builds the core, and what else is named; false where the compiler refuses."""
        words = ["ninja", "-C", self.made, "linewright_core", *targets]
        return subprocess.run(words, stdout=subprocess.DEVNULL).returncode == 0

    def notices(self, program, only, change):
        """True where a test of the program fails with the change, or where it breaks down."""
        words = [self.made / "tests" / f"test_{program}", "--gtest_brief=1", "--gtest_fail_fast",
                 f"--gtest_filter={only}-{OF_THE_TEXT}"]
        try:
            return subprocess.run(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                  stdin=subprocess.DEVNULL, timeout=900,
                                  env=os.environ | {"LINEWRIGHT_CHANGED": change}).returncode != 0
        except subprocess.TimeoutExpired:
            return True
