"""What a calculator answers to the values it is placed with, as the parts of a page."""

import json
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from calculators.engine.compute import work_out
from calculators.engine.declaration import Calculator
from calculators.engine.markup import parts

from .handbook import Handbook


def example_of(
    handbook: Handbook, calculator: Calculator, presets: Mapping[str, Any]
) -> dict[str, Any]:
    """``{"inputs", "parts"}`` for the example with ``presets`` in place of its values.

    Or ``{"refused": [{"input", "given", "allowed", "why"}]}``.
    """

    units = handbook.units

    def make() -> dict[str, Any]:
        worked = work_out(calculator, presets, units)
        if isinstance(worked, list):
            return {"refused": [asdict(one) for one in worked]}
        return {"inputs": worked.inputs, "parts": parts(worked)}

    given = json.dumps(presets, sort_keys=True, default=str)
    found: dict[str, Any] = handbook.kept.get(f"example {calculator.name} {units} {given}", make)
    return found
