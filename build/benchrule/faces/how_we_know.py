"""The table of a calculator's outside checks: the source's figure, ours, the difference."""

from typing import Any

from calculators.engine.declaration import Calculator
from calculators.engine.markup import minus
from calculators.engine.text import escape
from calculators.engine.unit_table import UNITS

from ..proof import proof_of
from .context import SOURCES, Context, calculator_page

ORIGINS = {
    "read": "Read in the source",
    "library": "Worked out by the library",
    "memory": "From memory",
    "derived": "Derived by hand",
}


def how_we_know_all(context: Context) -> str:
    """Every calculator with its outside checks, and in a line what they rest on."""
    made = []
    for name, calculator in context.handbook.calculators.items():
        link = context.anchor(calculator_page(name), "how-we-know", calculator.title)
        made.append(
            f'<h2 id="of-{name}">{link}</h2><p>{escape(rests_on(calculator))}</p>'
            f"{how_we_know(context, calculator)}"
        )
    return "".join(made)


def rests_on(calculator: Calculator) -> str:
    """What a calculator's checks and its sources rest on, in words."""
    origins = [check.origin for check in calculator.checks]
    parts = [
        f"{origins.count(origin)} {words}"
        for origin, words in (
            ("read", "read in a published source"),
            ("library", "worked out by an independent library"),
            ("derived", "derived by hand"),
            ("memory", "from memory"),
        )
        if origin in origins
    ]
    practice = [source.title for source in calculator.sources if source.kind == "practice"]
    said = f"{len(origins)} checks: {', '.join(parts)}."
    if practice:
        said += " Some of its figures are common practice without a source; it says which."
    if any(
        "from memory" in str(item).lower()
        for item in (calculator.validity, *(getattr(one, "help", "") for one in calculator.inputs))
    ):
        said += " Some of its examples are from memory, and are marked so where they are asked."
    return said


def how_we_know(context: Context, calculator: Calculator) -> str:
    """Every outside check of a calculator, gone through by the build, under the source it comes from."""
    titles = {source.id: source.title for source in calculator.sources}
    rows = []
    for check, figures in zip(
        calculator.checks, proof_of(context.handbook, calculator), strict=True
    ):
        link = context.anchor(SOURCES, f"source-{check.source}", titles[check.source])
        because = f" Agrees within {check.within}: {check.because}." if check.within else ""
        rows.append(
            f'<tr class="br-check-source"><th colspan="4" scope="rowgroup">{link}: '
            f"{escape(check.where)}. <em>{ORIGINS[check.origin]}.</em>{escape(because)}</th></tr>"
        )
        rows += [_row(one) for one in figures]
    return (
        '<div class="br-scroll" data-search-exclude role="region" tabindex="0" '
        f'aria-label="Outside checks: {escape(calculator.title)}">'
        '<table class="br-table br-checks"><thead><tr><th scope="col" class="br-words">Figure</th>'
        '<th scope="col">The source has</th><th scope="col">We have</th>'
        '<th scope="col">Difference</th></tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table></div>"
    )


def _row(one: dict[str, Any]) -> str:
    unit = UNITS[one["unit"]].shown if one["unit"] in UNITS else one["unit"]
    printed = one["printed"]
    decimals = len(printed.lower().partition("e")[0].partition(".")[2])
    scientific = "e" in printed.lower()
    ours = f"{one['ours']:.{decimals}e}" if scientific else f"{one['ours']:.{decimals}f}"
    return (
        f'<tr><th scope="row" class="br-words">{escape(one["label"])}</th>'
        f"<td>{minus(f'{printed} {unit}'.strip())}</td>"
        f"<td>{minus(ours)}</td><td>{minus(f'{one["difference"]:.1e}')}</td></tr>"
    )
