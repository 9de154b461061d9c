"""Cases for what authors write: numbers with units, formulas, YAML and the data files."""

import json
import math
import warnings
from collections.abc import Iterator
from typing import Any

from benchrule.data import KINDS, load_text
from benchrule.kept import Kept
from benchrule.located_yaml import read_yaml
from benchrule.problems import Problem
from calculators.engine.compute import quantities
from calculators.engine.declaration import Solved, Step
from calculators.engine.formula import Formula, FormulaError
from calculators.engine.inputs import split_readings
from calculators.engine.mathml import with_symbols
from calculators.engine.reading import (
    ReadingError,
    convert,
    read_exact,
    read_quantity,
    units_of_kind,
)
from calculators.engine.showing import SYSTEMS, as_typed, reader_unit, show
from calculators.engine.unit_table import UNITS

from . import hostile
from .doors import calculators
from .outcome import check_shown, need
from .tape import Tape, decoded

LONGEST_WORDS = 1000


def readings(data: bytes) -> str:
    """What is typed into a field: read, converted, shown, and read again."""
    tape = Tape(data)
    unit, assumed = tape.pick(list(UNITS)), tape.byte() % 3
    text = decoded(tape.rest()) if tape.byte() % 8 else str(hostile.value(tape))
    for name in (UNITS[unit].shown, *UNITS[unit].spellings):
        read_quantity(f"2.5 {name}", unit)
    try:
        need(all(0 < len(part) <= len(text) for part in split_readings(text)), "a reading grew")
        top, bottom, _ = read_exact(text)
        value = read_quantity(text, unit, reader_unit(unit, SYSTEMS[assumed]))
    except ReadingError as error:
        need(4 < len(str(error)) < LONGEST_WORDS, f"a refusal of {len(str(error))} characters")
        check_shown(str(error), text, "a refusal")
        return "refused"
    need(bottom > 0 and isinstance(top, int), f"the fraction is {top}/{bottom}")
    need(math.isfinite(value) and (value != 0 or math.copysign(1, value) > 0), f"read as {value}")
    for system in SYSTEMS:
        check_shown(show(value, unit, 3, system), "", f"{text[:80]!r} in {system}")
        as_typed(value, unit, 2, system)
    for other in units_of_kind(unit):
        need(math.isfinite(convert(value, unit, other.id)), f"{value} {unit} in {other.id}")
    again = (
        read_quantity(f"{value!r} {UNITS[unit].shown}", unit)
        if 1e-29 < abs(value) < 1e29
        else value
    )
    need(again == value, f"{value!r} {unit} is read again as {again!r}")
    return "answered"


def reading_seeds() -> Iterator[bytes]:
    """Each unit by each of its names, and every hostile text."""
    for place, unit in enumerate(UNITS.values()):
        for name in (unit.shown, *unit.spellings):
            for number in ("25 1/2", "1.5e3", "-7,25", "½"):
                yield bytes((place, 0, 1)) + f"{number} {name}".encode()
    for text in hostile.TEXTS:
        yield bytes((0, 1, 1)) + text.encode("utf-8", "surrogatepass")


# --- formulas


def formulas(data: bytes) -> str:
    """Formula text: parsed, printed and worked out with small figures."""
    text = decoded(data)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            formula = Formula(text)
            printed = with_symbols(text, {})
    except FormulaError as error:
        need(4 < len(str(error)) < LONGEST_WORDS, f"a refusal of {len(str(error))} characters")
        return "refused"
    check_shown(printed, text, "a printed formula")
    values = dict.fromkeys(formula.names, 2.0)
    for figures in (values, dict.fromkeys(values, 7), dict.fromkeys(values, -0.5)):
        try:
            formula.evaluate(figures)
        except (ArithmeticError, ValueError):  # refused where a calculator works it out
            continue
    return "answered"


def formula_seeds() -> Iterator[bytes]:
    """Every formula and condition there is, and some that are none."""
    found: set[str] = set()
    for calculator in calculators():
        for item in calculator.work:
            found.add(item.only_if)
            if isinstance(item, Step):
                found.add(item.formula)
        for table in calculator.tables:
            found |= {column.formula for column in table.columns}
    for text in sorted(found - {""}):
        yield text.encode()
    for text in (
        "9 ** 9 ** 9 ** 9", "2 ** 10 ** 9", "7 ** 7 ** 7", "-" * 5000 + "1", "(" * 150 + "1" + ")" * 150,
        "(" * 5000, "[" * 300, "not " * 3000 + "a", "a" + "+a" * 20_000, "a" + "**a" * 2000, "1" * 5000,
        "'a' * 10 ** 9", "10 ** 9 * 'a'", "a if b else " * 1500 + "c", "max()", "min()", "max(1)",
        "round_to(1, 0)", "sqrt(-1)", "(-8) ** 0.5", "log(0)", "exp(1000)", "floor(1e400)", "1e400",
        "1e400 - 1e400", "lambda: 1", "__import__('os')", "a.b", "a[0]", "1j", "b'x'", "...", "True", "None",
        "a := 1", "a\0b", "\ufeffa", "a\n+ b", " a", "\ta", "ａ + 1", "µ + 1", "a < b < c", "a in b", "a is b",
        "f'{a}'", "*a", "sqrt(*a)", "max(1, key=a)", "1if a else 2", "0x10", "1_000", "'\\d' == a", "pi = 3",
        "a" * 5000, "sin('a')", "max('a', 'b')", "hypot(1)", "abs(-a ** 2000)", "10 ** 400 / 3", "a ** -2000",
    ):  # fmt: skip
        yield text.encode()
    yield b"\xed\xa0\x80 + 1"
    yield b"'\xed\xa0\x80' == a"


# --- YAML


def yaml_texts(data: bytes) -> str:
    """Any text as YAML, as data of a kind, and as front matter."""
    kind = KINDS[data[0] % len(KINDS)] if data else KINDS[0]
    text = decoded(data[1:])
    located, problems = read_yaml(text, "docs/data/x.yml")
    _check_problems(problems)
    if not problems:
        json.dumps(located.value, allow_nan=False)
    for path, line in list(located.lines.items())[:50]:
        need(line >= 1, f"{path} stands on line {line}")
    in_file = text.encode("utf-8", "replace").decode()  # a file holds no half letters
    entries, found = load_text(in_file, kind, "docs/data/x.yml", "x", Kept())
    _check_problems(found)
    given = located.value if isinstance(located.value, dict) else {}
    need(bool(found) or len(entries) == len(given), "an entry was passed over without a word")
    for entry in entries.values():
        need(entry.line() >= 1, "an entry stands on no line")
        json.dumps(entry.fields, default=_refuse_other)
    return "refused" if problems or found else "answered"


def _refuse_other(value: Any) -> Any:
    raise TypeError(f"{type(value).__name__} in an entry")


def _check_problems(problems: list[Problem]) -> None:
    for one in problems:
        need(one.line >= 1 and bool(one.what) and bool(one.to_do), f"a problem is {one}"[:300])
        need(len(str(one)) < 2000, f"a problem of {len(str(one))} characters: {str(one)[:200]}")


def yaml_seeds() -> Iterator[bytes]:
    """Small documents of every kind, and what YAML allows beyond them."""
    entries = (
        "a: {kind: practice, title: T}", "a: {name: N, resolution: 0.1, unit: mm, uncertainty: 0.1, source: s}",
        "a: {term: T, meaning: M}", "a: {feature: F, part: p, high: 0.1, unit: mm, decimals: 2, measure: m, "
        "gauge: g, reason: r, when_out: w, source: s}", "a: [b, c]", "a:\n  - b\n  - c\n", "2026-1: {}",
    )  # fmt: skip
    odd = (
        "", "---", "a: b: c", "a: 1\na: 2", "? [a]\n: 1", "? {a: 1}\n: 1", "a: &x [*x]", "a: &x {b: *x}",
        "&x a: *x", "<<: {a: 1}", "a: {<<: [{b: 1}]}", "!!python/object:os.system a", "!!int abc", "!!int ''",
        "!!float x", "!!timestamp x", "!!timestamp 2001-99-99", "!!bool maybe", "!!null x", "!!binary '?'",
        "!!binary 'aGk='", "!!set {a, b}", "!!omap [a: 1]", "!!pairs [a: 1]", "!!str [a]", "!!map [a]", "!!seq {}",
        "a: .nan", "a: .inf", "a: -.inf", "? .nan\n: 1\n? .nan\n: 2", "1:2:3: 4", "a: 1:99:99", "a: 0b", "a: 0x",
        "a: 0o7", "a: 1_0", "a: 1__", "a: 1e400", "1: a", "1.5: a", "true: a", "~: a", "a: ~", "a: 2026-11-30",
        "%YAML 9.9\n---\na", "%TAG ! x\n---\n!a b", "%A", "a\0b", "\t- a", "- a\n b", "a: |\n b\n  c", "a: >\n",
        "'", '"', '"\\x', '"\\ud800"', '"\\U0011ffff"', "{", "[", "]", "- - - -", "&", "*", "*a", "!", "@", "`", "a: @",
        "---\na\n---\nb", "...", "\ufeffa: 1", "a: \ufeff", "a:\r\n  b: 1\r", "a: \u2028 b", "a: \x85",
        "a: !!int 1_", "=: 1", "a: =", "a: !x b", "a: !<> b", "a: !<tag:yaml.org,2002:int> x",
    )  # fmt: skip
    bombs = (
        "[" * 2000, "[" * 100_000, "{a: " * 2000, "- " * 3000 + "a", "? " * 2000, "a: " + "1" * 5000, "a: 1e" + "9" * 400,
        "a: " + "1:" * 2000 + "1", "'" * 10_000, "a: " + "x" * 90_000, "&a " * 1000, "\n".join(
            ["a: &a0 [x,x,x,x,x,x,x,x,x,x]"]
            + [f"b{n}: &a{n} [{','.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 10)]
        ),
        "a: 1" + "0" * 400 + ".5", "a: 0x" + "f" * 4000, "".join(f"a{n}: 1\n" for n in range(3000)),
    )  # fmt: skip
    for kind in range(len(KINDS)):
        for text in entries:
            yield bytes((kind,)) + text.encode()
    for text in (*odd, *bombs):
        yield b"\0" + text.encode("utf-8", "surrogatepass")
    yield b"\0a: \xed\xa0\x80"


def names() -> Iterator[str]:
    """Words that the dictionaries of the fuzzer hold: units, inputs, options, functions."""
    for unit in UNITS.values():
        yield from (unit.id, unit.shown, *unit.spellings)
    for calculator in calculators():
        yield calculator.name
        yield from (item.name for item in calculator.inputs)
        yield from list(quantities(calculator))[:3]
        yield from (item.name for item in calculator.work if isinstance(item, Solved))
