"""The figures that a shop's own calculators name after mpmath are mpmath's."""

import importlib.util
from pathlib import Path

import mpmath
import pytest

from calculators.engine.declaration import Calculator

ROOT = Path(__file__).parents[2]


def taper(reamed: str) -> dict[str, mpmath.mpf]:
    """8.5 to 7 mm over 45 mm, by the half angle of the cone."""
    wide, narrow, length = mpmath.mpf("8.5"), mpmath.mpf(7), mpmath.mpf(45)
    half = mpmath.atan2((wide - narrow) / 2, length)
    lengths = 1 / (2 * mpmath.tan(half))
    return {
        "taper": lengths,
        "angle": mpmath.degrees(2 * half),
        "deeper": mpmath.mpf(reamed) / (2 * mpmath.tan(half)),
    }


def neck_stop(body_stop: str) -> dict[str, mpmath.mpf]:
    """Neck to stop as 2 to 3: two fifths and three fifths of the whole."""
    together = mpmath.mpf(body_stop) * 5 / 3
    return {"neck_length": together * 2 / 5, "together": together}


def board_feet(thickness: str, width: str, length: str, boards: str) -> dict[str, mpmath.mpf]:
    """In feet each way, a board foot being a foot square and a twelfth thick; a quarter is waste."""
    foot = mpmath.mpf(12)
    area = mpmath.mpf(width) / foot * mpmath.mpf(length) / foot
    feet = area * mpmath.mpf(thickness) * mpmath.mpf(boards)
    return {"feet": feet, "usable": feet * 3 / 4}


OWN = {
    "build/benchrule/starter/our_calculators/taper.py": taper,
    "tests/shops/violin/violin_sums/neck_stop.py": neck_stop,
    "tests/shops/ukulele/yard/board_feet.py": board_feet,
}


def calculator_of(path: str) -> Calculator:
    spec = importlib.util.spec_from_file_location(Path(path).stem, ROOT / path)
    assert spec and spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    found: Calculator = module.calculator
    return found


@pytest.mark.parametrize("path", OWN)
def test_the_figures_named_after_mpmath_are_mpmath_s(path: str) -> None:
    checks = [one for one in calculator_of(path).checks if one.origin == "library"]
    assert checks
    for check in checks:
        with mpmath.workdps(30):
            found = OWN[path](**{name: str(value) for name, value in check.inputs.items()})
            for name, expected in check.expected.items():
                last_digit = mpmath.mpf(10) ** -len(expected.partition(".")[2])
                assert abs(found[name] - mpmath.mpf(expected)) <= last_digit / 2, name
