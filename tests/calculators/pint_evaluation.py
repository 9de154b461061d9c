"""Evaluates formulas with pint quantities, so that every unit is carried along and checked."""

import ast
import math
from collections.abc import Callable, Mapping
from typing import Any

import pint

from benchrule.unit_factors import LINES
from calculators.engine.formula import NAMED_NUMBERS, parse, round_to

REGISTRY: Any = pint.UnitRegistry(autoconvert_offset_to_baseunit=False)
REGISTRY.define("thousand_square_feet = 1000 * foot**2")
PINT_NAMES = {line.id: line.pint_name for line in LINES}


def quantity(value: float, unit: str) -> Any:
    """A value with its unit: an id of ours, or (constants) any expression pint knows."""
    return REGISTRY.Quantity(value, PINT_NAMES.get(unit, unit.replace("^", "**")))


def evaluate(text: str, units: Mapping[str, str], values: Mapping[str, Any]) -> Any:
    """The formula's value as a quantity (or a word)."""
    return _evaluate(parse(text).tree, units, values)


def _plain(value: Any) -> float:
    return float(value.to("").magnitude) if isinstance(value, REGISTRY.Quantity) else float(value)


def _degrees(value: Any) -> float:
    return float(value.to("degree").magnitude) if isinstance(value, REGISTRY.Quantity) else value


def _like(function: Callable[..., Any]) -> Callable[..., Any]:
    """min, max, hypot, round_to: all terms in the unit of the first."""

    def applied(*terms: Any) -> Any:
        first = terms[0]
        if not isinstance(first, REGISTRY.Quantity):
            return function(*[_plain(term) for term in terms])
        unit = first.units
        figures = [
            term.to(unit).magnitude if isinstance(term, REGISTRY.Quantity) else term
            for term in terms
        ]
        assert all(isinstance(term, REGISTRY.Quantity) or term == 0 for term in terms) or (
            first.dimensionless
        ), f"{terms} are not alike"
        return REGISTRY.Quantity(function(*figures), unit)

    return applied


FUNCTIONS: dict[str, Callable[..., Any]] = {
    "sqrt": lambda x: x**0.5,
    "abs": abs,
    "exp": lambda x: math.exp(_plain(x)),
    "log": lambda x: math.log(_plain(x)),
    "log2": lambda x: math.log2(_plain(x)),
    "log10": lambda x: math.log10(_plain(x)),
    "erf": lambda x: math.erf(_plain(x)),
    "floor": lambda x: math.floor(_plain(x)),
    "ceil": lambda x: math.ceil(_plain(x)),
    "sin": lambda x: math.sin(math.radians(_degrees(x))),
    "cos": lambda x: math.cos(math.radians(_degrees(x))),
    "tan": lambda x: math.tan(math.radians(_degrees(x))),
    "asin": lambda x: quantity(math.degrees(math.asin(_plain(x))), "deg"),
    "acos": lambda x: quantity(math.degrees(math.acos(_plain(x))), "deg"),
    "atan": lambda x: quantity(math.degrees(math.atan(_plain(x))), "deg"),
    "min": _like(min),
    "max": _like(max),
    "hypot": _like(math.hypot),
    "round_to": _like(round_to),
}


def _evaluate(node: ast.expr, units: Mapping[str, str], values: Mapping[str, Any]) -> Any:
    def part(child: ast.expr) -> Any:
        return _evaluate(child, units, values)

    match node:
        case ast.Constant(value=value):
            return value
        case ast.Name(id=name):
            if name in NAMED_NUMBERS:
                return NAMED_NUMBERS[name]
            value = values[name]
            return value if isinstance(value, str) else quantity(value, units[name])
        case ast.BinOp(left=left, op=op, right=right):
            a, b = part(left), part(right)
            match op:
                case ast.Add():
                    return a + b
                case ast.Sub():
                    return a - b
                case ast.Mult():
                    return a * b
                case ast.Div():
                    return a / b
                case _:
                    return a ** _plain(b)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -part(operand)
        case ast.UnaryOp(operand=operand):
            return not part(operand)
        case ast.BoolOp(op=op, values=terms):
            return (all if isinstance(op, ast.And) else any)(part(term) for term in terms)
        case ast.Compare(left=left, ops=ops, comparators=terms):
            from calculators.engine.formula import COMPARE

            figures = [part(left), *map(part, terms)]
            return all(
                COMPARE[type(op)](a, b) if isinstance(a, str) else _compare(COMPARE[type(op)], a, b)
                for op, a, b in zip(ops, figures[:-1], figures[1:], strict=True)
            )
        case ast.IfExp(test=test, body=body, orelse=orelse):
            return part(body) if part(test) else part(orelse)
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return FUNCTIONS[name](*map(part, arguments))
    raise TypeError(ast.unparse(node))


def _compare(test: Callable[[Any, Any], bool], a: Any, b: Any) -> bool:
    """A comparison; a bare number may stand beside a quantity only as zero, or without a unit."""
    if isinstance(a, REGISTRY.Quantity) and not isinstance(b, REGISTRY.Quantity):
        return test(a.magnitude, b) if b == 0 or a.dimensionless else test(a, b)
    return test(a, b)
