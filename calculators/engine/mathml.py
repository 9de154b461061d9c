"""Prints formulas as MathML: once with symbols, once with the figures put in."""

import ast
from collections.abc import Callable, Mapping
from functools import lru_cache

from .declaration import Quantity
from .formula import NAMED_NUMBERS, parse
from .text import escape

Leaf = Callable[[str], str]  # the MathML of a name

OPERATORS: dict[type, str] = {ast.Add: "+", ast.Sub: "−", ast.Mult: "·"}
COMPARISONS: dict[type, str] = {
    ast.Lt: "&lt;", ast.LtE: "≤", ast.Gt: "&gt;", ast.GtE: "≥", ast.Eq: "=", ast.NotEq: "≠",
}  # fmt: skip
FUNCTION_NAMES = {
    "log": "ln", "asin": "arcsin", "acos": "arccos", "atan": "arctan", "round_to": "rounded",
}  # fmt: skip
SUM, PRODUCT, ATOM = 1, 2, 3


def symbol(quantity: Quantity | None, name: str) -> str:
    """The MathML of a quantity's symbol; ``x_n`` prints a subscript."""
    text = quantity.symbol if quantity and quantity.symbol else name.replace("_", " ")
    base, _, below = text.partition("_")
    tag = "mi" if quantity and quantity.symbol else "mtext"
    if below:
        return f"<msub><mi>{escape(base)}</mi><mtext>{escape(below)}</mtext></msub>"
    return f"<{tag}>{escape(text)}</{tag}>"


def figure(text: str) -> str:
    """A figure in a formula; a negative one stands in brackets."""
    if text.startswith("-"):
        return _bracket(f"<mn>−{escape(text[1:])}</mn>")
    return f"<mn>{escape(text)}</mn>"


def formula_math(text: str, leaf: Leaf) -> str:
    """The MathML of formula ``text`` with every name printed by ``leaf``."""
    return _print(parse(text).tree, leaf)[0]


def with_symbols(text: str, quantities: Mapping[str, Quantity]) -> str:
    """The formula as a book prints it."""
    signs = tuple((name, quantities.get(name)) for name in sorted(parse(text).names))
    return _with_symbols(text, signs)


@lru_cache(maxsize=1000)
def _with_symbols(text: str, signs: tuple[tuple[str, Quantity | None], ...]) -> str:
    known = dict(signs)
    return formula_math(text, lambda name: symbol(known[name], name))


def with_figures(text: str, shown: Callable[[str], str]) -> str:
    """The formula with the figures in place of the names."""
    return formula_math(text, lambda name: figure(shown(name)))


def math(*parts: str) -> str:
    """A MathML line."""
    return f'<math display="inline">{"".join(parts)}</math>'


def _bracket(inner: str) -> str:
    return f"<mrow><mo>(</mo>{inner}<mo>)</mo></mrow>"


def _row(*parts: str) -> str:
    return f"<mrow>{''.join(parts)}</mrow>"


def _print(node: ast.expr, leaf: Leaf) -> tuple[str, int]:
    """MathML and how tightly it binds."""

    def at_least(child: ast.expr, binding: int) -> str:
        inner, bound = _print(child, leaf)
        return inner if bound >= binding else _bracket(inner)

    match node:
        case ast.Constant(value=str() as words):
            return f"<mtext>{escape(words)}</mtext>", ATOM
        case ast.Constant(value=int() | float() as number):
            return f"<mn>{number:g}</mn>", ATOM
        case ast.Name(id=name):
            return ("<mi>π</mi>" if name in NAMED_NUMBERS else leaf(name)), ATOM
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return f"<mfrac>{_print(left, leaf)[0]}{_print(right, leaf)[0]}</mfrac>", ATOM
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            return f"<msup>{at_least(left, ATOM)}{_print(right, leaf)[0]}</msup>", ATOM
        case ast.BinOp(left=left, op=op, right=right):
            binding = PRODUCT if isinstance(op, ast.Mult) else SUM
            second = PRODUCT if isinstance(op, ast.Sub) else binding
            sign = f"<mo>{OPERATORS[type(op)]}</mo>"
            return _row(at_least(left, binding), sign, at_least(right, second)), binding
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return _row("<mo>−</mo>", at_least(operand, PRODUCT)), SUM
        case ast.UnaryOp(operand=operand):
            return _row("<mtext>not </mtext>", at_least(operand, ATOM)), SUM
        case ast.Compare(left=left, ops=ops, comparators=terms):
            parts = [_print(left, leaf)[0]]
            for sign_node, term in zip(ops, terms, strict=True):
                parts += [f"<mo>{COMPARISONS[type(sign_node)]}</mo>", _print(term, leaf)[0]]
            return _row(*parts), SUM
        case ast.BoolOp(op=joint, values=values):
            word = "and" if isinstance(joint, ast.And) else "or"
            return f"<mtext> {word} </mtext>".join(_print(v, leaf)[0] for v in values), SUM
        case ast.IfExp(test=test, body=body, orelse=orelse):
            lines = (
                (_print(body, leaf)[0], _row("<mtext>if </mtext>", _print(test, leaf)[0])),
                (_print(orelse, leaf)[0], "<mtext>otherwise</mtext>"),
            )
            cells = "".join(f"<mtr><mtd>{a}</mtd><mtd>{b}</mtd></mtr>" for a, b in lines)
            return _row("<mo>{</mo>", f"<mtable>{cells}</mtable>"), SUM
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return _call(name, [_print(argument, leaf)[0] for argument in arguments])
    raise TypeError(f"no way to print {ast.unparse(node)}")


def _call(name: str, inner: list[str]) -> tuple[str, int]:
    match name:
        case "sqrt":
            return f"<msqrt>{inner[0]}</msqrt>", ATOM
        case "hypot":
            squares = "<mo>+</mo>".join(f"<msup>{_bracket(i)}<mn>2</mn></msup>" for i in inner)
            return f"<msqrt>{squares}</msqrt>", ATOM
        case "exp":
            return f"<msup><mi>e</mi>{inner[0]}</msup>", ATOM
        case "abs":
            return _row("<mo>|</mo>", inner[0], "<mo>|</mo>"), ATOM
        case "log2" | "log10":
            word = f"<msub><mi>log</mi><mn>{name[3:]}</mn></msub>"
        case "round_to":
            return _row("<mtext>round</mtext>", _bracket("<mtext> to </mtext>".join(inner))), ATOM
        case _:
            word = f"<mi>{FUNCTION_NAMES.get(name, name)}</mi>"
    return _row(word, _bracket("<mo>,</mo>".join(inner))), ATOM
