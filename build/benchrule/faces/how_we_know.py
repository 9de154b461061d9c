"""The table of a calculator's outside checks: the source's figure, ours, the difference."""

from calculators.engine.checking import Compared, compare
from calculators.engine.declaration import Calculator
from calculators.engine.text import escape
from calculators.engine.unit_table import UNITS

from .context import SOURCES, Context

ORIGINS = {
    "read": "read in the source",
    "library": "worked out by a library",
    "memory": "from memory",
    "derived": "derived by hand",
}


def how_we_know(context: Context, calculator: Calculator) -> str:
    """Every outside check of a calculator, run now."""
    rows = [
        _row(context, calculator, compared)
        for check in calculator.checks
        for compared in compare(calculator, check)
    ]
    return (
        '<div class="br-scroll" role="region" tabindex="0" aria-label="Outside checks">'
        '<table class="br-table br-checks"><thead><tr><th scope="col">Figure</th>'
        '<th scope="col">The source has</th><th scope="col">We have</th>'
        '<th scope="col">Difference</th><th scope="col">Source</th></tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table></div>"
    )


def _row(context: Context, calculator: Calculator, compared: Compared) -> str:
    titles = {source.id: source.title for source in calculator.sources}
    check = compared.check
    unit = UNITS[compared.unit].shown if compared.unit in UNITS else compared.unit
    decimals = len(compared.printed.lower().partition("e")[0].partition(".")[2])
    scientific = "e" in compared.printed.lower()
    ours = f"{compared.ours:.{decimals}e}" if scientific else f"{compared.ours:.{decimals}f}"
    because = f" ({check.within}: {check.because})" if check.within else ""
    return (
        f'<tr><th scope="row" class="br-words">{escape(compared.label)}</th>'
        f"<td>{escape(compared.printed)} {escape(unit)}</td>"
        f"<td>{escape(ours)}</td><td>{escape(f'{compared.difference:.1e}')}</td>"
        f'<td class="br-words">{context.anchor(SOURCES, f"source-{check.source}", titles[check.source])}'
        f", {escape(check.where)}; {ORIGINS[check.origin]}{escape(because)}</td></tr>"
    )
