"""Every figure from outside the project, beside ours; and the proof that such a check can fail."""

import pytest

from calculators.engine.checking import compare
from calculators.engine.declaration import Calculator, Check

from .variants import CALCULATORS

ALL = [
    pytest.param(calculator, check, id=f"{calculator.name}: {check.source} {check.where}"[:110])
    for calculator in CALCULATORS
    for check in calculator.checks
]


@pytest.mark.parametrize(("calculator", "check"), ALL)
def test_agrees_with_the_source(calculator: Calculator, check: Check) -> None:
    for compared in compare(calculator, check):
        assert compared.agrees, (
            f"{compared.label}: {check.source} ({check.where}) has {compared.printed} "
            f"{compared.unit}, we have {compared.ours!r}; allowed {compared.allowed:.3g}"
        )


@pytest.mark.parametrize(("calculator", "check"), ALL)
def test_an_altered_digit_is_noticed(calculator: Calculator, check: Check) -> None:
    """Each expected figure in turn is moved by three times what the check allows."""
    for place, compared in enumerate(compare(calculator, check)):
        path = list(check.expected)[place]
        printed = float(compared.printed)
        moved = printed + 3 * compared.allowed
        altered = Check(
            **{
                **check.fields(),
                "expected": {path: f"{moved!r}"},
                "within": f"{compared.allowed!r}",
                "because": "altered",
            }
        )
        assert not compare(calculator, altered)[0].agrees


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda calculator: calculator.name)
def test_checks_do_not_rest_on_memory_alone(calculator: Calculator) -> None:
    assert sum(check.origin != "memory" for check in calculator.checks) >= 2
