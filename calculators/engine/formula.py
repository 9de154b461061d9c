"""Formula text: a small subset of Python expressions, parsed once, evaluated without ``eval``.

Allowed: numbers, names, quoted words, ``+ - * / **``, comparisons, ``and or not``,
``a if b else c`` and the functions below. Angles are degrees: ``tan(pitch)`` takes degrees and
``atan(x)`` gives them, because everyone at a bench reads degrees.
"""

import ast
import math
import operator
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any

Values = Mapping[str, Any]
Evaluate = Callable[[Values], Any]
LONGEST_TEXT = 1000
LONGEST_ECHO = 300
DEEPEST = 60  # parts in each other: the browser's Python survives no more than some hundreds
LARGEST_CONSTANT = 1e30
LARGEST_BITS = 1024  # of a whole number that a power gives: no float is larger


class FormulaError(ValueError):
    """Formula text outside the grammar; the message quotes the text and the place."""


def round_to(value: float, step: float) -> float:
    """``value`` rounded half up to a whole number of ``step`` (a mark on a rule).

    The quotient is first cleared of the last bits of binary noise, so that a value right on a
    half goes up on every machine.
    """
    quotient = value / step
    return math.floor(round(quotient, 9) + 0.5) * step


def power(base: float, exponent: float) -> float:
    """``base`` to ``exponent``; ArithmeticError or ValueError where that is no real number, or one
    past all figures."""
    if isinstance(base, int) and isinstance(exponent, int) and (
        base.bit_length() * exponent > LARGEST_BITS
    ):  # fmt: skip
        raise OverflowError("past all figures")
    found: float | complex = base**exponent
    if isinstance(found, complex):
        raise ValueError("no real number")
    return found


FUNCTIONS: dict[str, tuple[Callable[..., Any], int | None]] = {
    "sqrt": (math.sqrt, 1),
    "exp": (math.exp, 1),
    "log": (math.log, 1),
    "log2": (math.log2, 1),
    "log10": (math.log10, 1),
    "abs": (abs, 1),
    "floor": (math.floor, 1),
    "ceil": (math.ceil, 1),
    "hypot": (math.hypot, 2),
    "erf": (math.erf, 1),
    "sin": (lambda angle: math.sin(math.radians(angle)), 1),
    "cos": (lambda angle: math.cos(math.radians(angle)), 1),
    "tan": (lambda angle: math.tan(math.radians(angle)), 1),
    "asin": (lambda ratio: math.degrees(math.asin(ratio)), 1),
    "acos": (lambda ratio: math.degrees(math.acos(ratio)), 1),
    "atan": (lambda ratio: math.degrees(math.atan(ratio)), 1),
    "round_to": (round_to, 2),
    "min": (min, None),
    "max": (max, None),
}
NAMED_NUMBERS = {"pi": math.pi}
BINARY: dict[type, Callable[[Any, Any], Any]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: power,
}
COMPARE: dict[type, Callable[[Any, Any], bool]] = {
    ast.Lt: operator.lt,
    ast.LtE: operator.le,
    ast.Gt: operator.gt,
    ast.GtE: operator.ge,
    ast.Eq: operator.eq,
    ast.NotEq: operator.ne,
}


class Formula:
    """One parsed formula: its text, its tree, the names it needs."""

    def __init__(self, text: str) -> None:
        self.text = text
        if len(text) > LONGEST_TEXT:
            raise FormulaError(
                f"{_quoted(text)} has {len(text)} characters, more than {LONGEST_TEXT}; "
                "split it into steps"
            )
        try:
            self.tree: ast.expr = ast.parse(text, mode="eval").body
        except SyntaxError as error:
            raise FormulaError(
                f"{_quoted(text)} is not a formula (column {error.offset})"
            ) from None
        except (RecursionError, MemoryError):
            raise _too_deep(text) from None
        except ValueError:  # half a letter, which no file holds
            raise FormulaError(f"{_quoted(text)} is not a formula; write it anew") from None
        names: set[str] = set()
        self.evaluate: Evaluate = _compile(self.tree, text, names, 1)
        self.names = frozenset(names)


@cache
def parse(text: str) -> Formula:
    """The parsed formula of ``text``; parsed once, then kept."""
    return Formula(text)


def _quoted(text: str) -> str:
    """A formula as a message may repeat it: on one line, not too long."""
    line = ascii(" ".join(text.split())) if not text.isprintable() else f"'{text}'"
    return line if len(line) <= LONGEST_ECHO else f"{line[:LONGEST_ECHO]}…'"


def _is_words(node: ast.expr) -> bool:
    if isinstance(node, ast.IfExp):
        return _is_words(node.body) or _is_words(node.orelse)
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def _too_deep(text: str) -> FormulaError:
    return FormulaError(f"{_quoted(text)} has too many parts in each other; split it into steps")


def _compile(node: ast.expr, text: str, names: set[str], depth: int) -> Evaluate:
    """A closure that evaluates ``node``; collects the names it needs into ``names``."""
    if depth > DEEPEST:
        raise _too_deep(text)

    def part(child: ast.expr) -> Evaluate:
        return _compile(child, text, names, depth + 1)

    def figure(child: ast.expr) -> Evaluate:
        """A part to reckon with: words are there to be compared."""
        if _is_words(child):
            raise FormulaError(f"{_quoted(text)} reckons with words; compare them by == or !=")
        return part(child)

    match node:
        case ast.Constant(value=bool()) | ast.Constant(value=None):
            pass
        case ast.Constant(value=int() | float() as number) if number > LARGEST_CONSTANT:
            raise FormulaError(f"{_quoted(text)} has a number out of all proportion; mend it")
        case ast.Constant(value=int() | float() | str() as value):
            return lambda _: value
        case ast.Name(id=name):
            if name in NAMED_NUMBERS:
                named = NAMED_NUMBERS[name]
                return lambda _: named
            names.add(name)
            return operator.itemgetter(name)
        case ast.BinOp(left=left, op=op, right=right) if type(op) in BINARY:
            act, first, second = BINARY[type(op)], figure(left), figure(right)
            return lambda values: act(first(values), second(values))
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            inner = figure(operand)
            return lambda values: -inner(values)
        case ast.UnaryOp(op=ast.Not(), operand=operand):
            inner = part(operand)
            return lambda values: not inner(values)
        case ast.BoolOp(op=op, values=operands):
            parts = [part(operand) for operand in operands]
            join = all if isinstance(op, ast.And) else any
            return lambda values: join(p(values) for p in parts)
        case ast.Compare(left=left, ops=ops, comparators=comparators) if all(
            type(op) in COMPARE for op in ops
        ):
            orders = not all(isinstance(op, ast.Eq | ast.NotEq) for op in ops)
            terms = [(figure if orders else part)(term) for term in (left, *comparators)]
            tests = [COMPARE[type(op)] for op in ops]
            return lambda values: all(
                test(a(values), b(values))
                for test, a, b in zip(tests, terms[:-1], terms[1:], strict=True)
            )
        case ast.IfExp(test=test, body=body, orelse=orelse):
            condition, yes, no = part(test), part(body), part(orelse)
            return lambda values: yes(values) if condition(values) else no(values)
        case ast.Call(func=ast.Name(id=name), args=arguments, keywords=[]) if name in FUNCTIONS:
            function, arity = FUNCTIONS[name]
            if arity is not None and len(arguments) != arity:
                raise FormulaError(f"{_quoted(text)}: {name} takes {arity}, not {len(arguments)}")
            if arity is None and len(arguments) < 2:
                raise FormulaError(f"{_quoted(text)}: {name} takes two or more")
            calls = [figure(argument) for argument in arguments]
            if len(calls) == 1:
                only = calls[0]
                return lambda values: function(only(values))
            return lambda values: function(*[call(values) for call in calls])
        case _:
            pass
    try:
        outside = _quoted(ast.unparse(node))
    except (RecursionError, ValueError):  # too deep, or a number of thousands of digits
        outside = type(node).__name__.lower()
    raise FormulaError(
        f"{_quoted(text)} (column {node.col_offset + 1}): {outside} is outside the grammar"
    )
