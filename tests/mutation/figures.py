"""Figures that verdicts rest on, found in the sources: each row of the limit tables, each number of the
catalogue, and the constants of physics."""

import re
from dataclasses import dataclass

NUMBER = re.compile(r"(?<![\w.'\[])(\d[\d']*(?:\.[\d']*)?(?:[eE][+-]?\d+)?)(?![\w.])")
SCALAR = re.compile(r"\b(inline constexpr|static constexpr|constexpr) double (\w+) = ([^;{}]+);")
ROW = re.compile(r"\bconstexpr LimitRow \w+\s*\{")
VALUE = re.compile(r"\.value = ([^,\n}]+?)(?=\s*[,}])")
TABLE = re.compile(r"\bconstexpr\s+(?:std::array(?:<[^;={]*>)?|\w+)\s+(\w+)(?:\[\])?\s*(?:=\s*)?\{")
# How finely numbers are compared is no fact: nothing that is 2 % finer could be told.
FINENESS = re.compile(r"rounding|^same_|^one_|_tie_|touching|exactly|beside_|pierced|equal_in|sagitta")


@dataclass(frozen=True)
class Figure:
    path: str  # from the root of the tree
    line: int
    name: str  # of the constant, the limit row or the catalogue's entry
    start: int  # in the text
    end: int
    text: str
    compiled: bool  # a change of it needs the compiler: it stands in a table that is worked out beforehand

    def before(self, source):
        return source.count("\n", 0, self.start)


def blanked(match):
    return re.sub(r"[^\n]", " ", match.group())


def code_of(source):
    """The source with spaces in place of comments and strings."""
    return re.sub(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"', blanked, source, flags=re.S)


def closing(code, opening):
    depth = 0
    for i in range(opening, len(code)):
        depth += (code[i] in "({[") - (code[i] in ")}]")
        if depth == 0:
            return i
    return len(code)


def figure(path, source, name, span, compiled=False):
    return Figure(path, source.count("\n", 0, span[0]) + 1, name, *span, source[span[0] : span[1]], compiled)


def limit_rows(path, source, code):
    for match in ROW.finditer(code):
        end = closing(code, match.end() - 1)
        name = re.search(r'\.name = "([\w-]+)"', source[match.end() : end])
        value = VALUE.search(code, match.end(), end)
        if name and value:
            yield figure(path, source, name.group(1), value.span(1))


def scalars(path, source, code):
    for match in SCALAR.finditer(code):
        if not FINENESS.search(match.group(2)):
            yield figure(path, source, match.group(2), match.span(3))


def tables(path, source, code):
    for match in TABLE.finditer(code):
        if match.group().split()[1] in ("LimitRow", "NumberOption", "auto"):
            continue
        for number in NUMBER.finditer(code, match.end(), closing(code, match.end() - 1)):
            if float(number.group().replace("'", "")) != 0:
                yield figure(path, source, match.group(1), number.span(), True)


def formulas(path, source, code):
    """Numbers with a point in the functions of physics."""
    constants = [match.span() for match in re.finditer(r"\bconstexpr [^;{(]*[;{]", code)]
    for number in NUMBER.finditer(code):
        named = any(start <= number.start() < end for start, end in constants)
        if "." in number.group() and float(number.group()) not in (0, 1) and not named:
            yield figure(path, source, "formula", number.span())


def catalogue(path, source):
    """Numbers that stand alone as values: in rows, in lists and after a key."""
    text = re.sub(r'"[^"]*"|(?m:(?:^|\s)#[^\n]*)|\bsource: [^"{][^,}\n]*', blanked, source)
    # The first of a row is the size, which is a part of the name.
    sizes = {m.start(1) for m in re.finditer(r"- \[\s*(-?[\d.]+)(?=\s*,)", text)}
    names = [(m.start(), m.group(1)) for m in re.finditer(r"name: ([\w./-]+)", text)]
    for match in re.finditer(r"(?<=[\[,:\s])(-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)(?=\s*[\],}\n])", text):
        if match.start() not in sizes:
            name = next((name for start, name in reversed(names) if start < match.start()), "?")
            yield figure(path, source, name, match.span(), True)


def figures_of(path, source):
    if path.endswith(".yaml"):
        return list(catalogue(path, source))
    code = code_of(source)
    found = [*limit_rows(path, source, code), *scalars(path, source, code), *tables(path, source, code)]
    if re.match(r"src/physics/.*\.cpp$", path):
        found += formulas(path, source, code)
    return sorted(found, key=lambda each: each.start)


def changed(figure, source, factor):
    """The source with the figure so many times what it is; a nought gives way to a hundredth."""
    try:
        value = float(figure.text.replace("'", ""))
        other = f"{value * factor if value else (factor - 1) / 2:.10g}"
    except ValueError:
        other = f"({figure.text}) * {factor}"
    return source[: figure.start] + other + source[figure.end :]


def changeable(source, figures, first_id, change=None):
    """The source with its figures as ones that can be changed while it runs, numbered from first_id; of a
    `change`, a figure and a factor, the figure is changed where it stands."""
    numbered = [(each, first_id + i) for i, each in enumerate(figures)]
    text = source
    for each, number in reversed(numbered):
        if change and each == change[0]:
            text = changed(each, text, change[1])
        elif not each.compiled:
            text = f"{text[:each.start]}Figure{{{each.text}, {number}}}{text[each.end:]}"
    text = re.sub(r"\bconstexpr double (\w+) = (Figure\{)", r"constexpr Figure \1 = \2", text)
    # Rows whose value is worked out by a function of its own.
    text = re.sub(r"\.value = (?!Figure)([^,\n}]+?)(?=,\n\s*\.(?:unit|sense|source))", r".value = Figure{\1}", text)
    if "Figure{" not in text:
        return text
    return text.replace("\n#include ", '\n#include "model/figure.hpp"\n#include ', 1) if "\n#include " in text \
        else text.replace("#pragma once\n", '#pragma once\n#include "model/figure.hpp"\n', 1)
