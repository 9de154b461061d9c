"""The table of a calculator's outside checks: the source's figure, ours, the difference."""

from calculators.engine.checking import Compared, compare
from calculators.engine.declaration import Calculator
from calculators.engine.markup import minus
from calculators.engine.text import escape
from calculators.engine.unit_table import UNITS

from .context import SOURCES, Context

ORIGINS = {
    "read": "Read in the source",
    "library": "Worked out by the library",
    "memory": "From memory",
    "derived": "Derived by hand",
}


def how_we_know(context: Context, calculator: Calculator) -> str:
    """Every outside check of a calculator, run now, under the source it comes from."""
    titles = {source.id: source.title for source in calculator.sources}
    rows = []
    for check in calculator.checks:
        link = context.anchor(SOURCES, f"source-{check.source}", titles[check.source])
        because = f" Agrees within {check.within}: {check.because}." if check.within else ""
        rows.append(
            f'<tr class="br-check-source"><th colspan="4" scope="rowgroup">{link}: '
            f"{escape(check.where)}. <em>{ORIGINS[check.origin]}.</em>{escape(because)}</th></tr>"
        )
        rows += [_row(compared) for compared in compare(calculator, check)]
    return (
        '<div class="br-scroll" data-search-exclude role="region" tabindex="0" '
        'aria-label="Outside checks">'
        '<table class="br-table br-checks"><thead><tr><th scope="col" class="br-words">Figure</th>'
        '<th scope="col">The source has</th><th scope="col">We have</th>'
        '<th scope="col">Difference</th></tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table></div>"
    )


def _row(compared: Compared) -> str:
    unit = UNITS[compared.unit].shown if compared.unit in UNITS else compared.unit
    decimals = len(compared.printed.lower().partition("e")[0].partition(".")[2])
    scientific = "e" in compared.printed.lower()
    ours = f"{compared.ours:.{decimals}e}" if scientific else f"{compared.ours:.{decimals}f}"
    return (
        f'<tr><th scope="row" class="br-words">{escape(compared.label)}</th>'
        f"<td>{minus(f'{compared.printed} {unit}'.strip())}</td>"
        f"<td>{minus(ours)}</td><td>{minus(f'{compared.difference:.1e}')}</td></tr>"
    )
