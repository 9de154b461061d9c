"""A small bank for the tests of assignments: an invented station, a real one, a calculator of our own.

The invented station draws from what stands here alone, so that what it draws can be pinned.
"""

import contextlib
import copy
from collections.abc import Iterator
from typing import Any
from unittest import mock

from calculators.engine import registry
from calculators.engine.declaration import (
    Calculator,
    Check,
    Decision,
    Exercise,
    Number,
    Option,
    Slip,
    Step,
)
from calculators.learning.question import CHOICE, NUMBER, ORDER, Question
from calculators.sources import GEOMETRY

OWN = "stack-height"
stack_height = Calculator(
    name=OWN, title="Stack height", summary="How high a stack of plates is with its glue.",
    inputs=(
        Number(name="plates", label="Plates", symbol="n", unit="1", decimals=0, whole=True,
               lowest=2, highest=50, example=6),
        Number(name="plate", label="One plate", symbol="t", unit="mm", decimals=1, lowest=0.5,
               highest=50, example=3),
        Number(name="film", label="One joint", symbol="g", unit="mm", decimals=2, lowest=0.01,
               highest=1, example=0.1),
    ),
    work=(
        Step(name="height", label="Height", symbol="h", unit="mm", decimals=2,
             formula="plates * plate + (plates - 1) * film", source="geometry"),
    ),
    results=("height",), sources=(GEOMETRY,), validity="Flat plates.",
    checks=(Check(inputs={"plates": 2, "plate": 3, "film": 0.5}, expected={"height": "6.5"},
                  source="geometry", where="by hand", origin="derived"),),
    exercises=(
        Exercise(
            name="how-high", asks="height", within="0.01 mm",
            situation="{plates} plates of {plate} are glued up, {film} of glue in a joint. How high?",
            draw={"plates": (4, 8, 1), "plate": (2, 8, 0.5)}, fixed={"film": 0.11},  # never a whole tenth
            slips=(
                Slip(name="no-glue", formula="plates * plate", why="The glue has a thickness too."),
                Slip(name="one-film", formula="plates * plate + film", why="There are more joints."),
            ),
        ),
        Exercise(  # two different questions and no more
            name="few", asks="height", within="0.1 mm", situation="{plates} plates. How high?",
            draw={"plates": (4, 5, 1)}, fixed={"plate": 3, "film": 0.3},
        ),
        Exercise(  # its slip is the right answer: nothing can be asked
            name="never", asks="height", within="0.1 mm", situation="{plates} plates. How high?",
            draw={"plates": (4, 5, 1)},
            slips=(Slip(name="same", formula="height", why="It is right."),),
        ),
    ),
    decisions=(
        Decision(
            name="too-high", situation="{plates} plates of 3 mm. Does it go under a 30 mm bar?",
            draw={"plates": (4, 20, 1)}, fixed={"plate": 3, "film": 0.1}, because="It is {height}.",
            options=(
                Option(words="Yes", holds="height < 29", why="It is {height}."),
                Option(words="No", holds="height > 31", why="It is {height}."),
            ),
        ),
    ),
)  # fmt: skip

STEPS = [
    "Mark out",
    "Centre-punch",
    "Pilot hole",
    "Full hole",
    "Countersink",
    "Deburr",
    "Blow out",
    "Gauge",
]
BANK: dict[str, Any] = {
    "edition": "a1b2c3d4e5f6",
    "gauges": {"depth-gauge": {"name": "Depth gauge", "resolution": 0.1, "unit": "mm", "uncertainty": 0.1}},
    "tolerances": {
        "hole-depth": {
            "feature": "Depth of the hole", "unit": "mm", "decimals": 1, "low": 9.5, "high": 10.5,
            "gauge": "depth-gauge", "station": "drilling", "when_out": "Set the stop again.",
        },
    },
    "stations": {
        "drilling": {
            "title": "Drilling", "page": "stations/drilling", "group": "box", "revision": 3,
            "approved_on": "2026-01-02",
            "steps": [{"title": one, "reason": f"Because of {one.lower()}."} for one in STEPS],
            "faults": [
                {"title": f"Fault {one}", "anchor": f"fault-{one}", "sign": f"You see sign {one}.",
                 "cause": f"Cause {one}.", "mend": f"Mend {one}."}
                for one in "abcde"
            ],
            "exercises": ["limit/hole-depth", "order/drilling", "fault/drilling", f"{OWN}/how-high",
                          f"{OWN}/few", f"{OWN}/never", f"{OWN}/too-high"],
        },
        "fitting": {
            "title": "Fitting", "page": "stations/fitting", "group": "box", "revision": 1,
            "approved_on": "2026-01-02", "steps": [],
            "faults": [
                {"title": f"Misfit {one}", "anchor": f"misfit-{one}", "sign": f"It shows {one}.",
                 "cause": f"Reason {one}.", "mend": f"Way {one}."}
                for one in "vwxyz"
            ],
            "exercises": ["fret-spacing/slot-from-nut", "neck-angle/straightedge-height",
                          "fault/fitting", f"{OWN}/how-high"],
        },
    },
}  # fmt: skip
ID = "TEST234567"
TIMES = {"began": "2026-11-30T10:00:00+01:00", "saved": "2026-11-30T11:00:00+01:00"}
CHOSEN = [
    ["stack-height/how-high", 2], ["limit/hole-depth", 2], ["order/drilling", 1],
    ["fault/drilling", 1], ["stack-height/too-high", 1],
]  # fmt: skip


@contextlib.contextmanager
def own_calculator() -> Iterator[None]:
    """Lets exercises be drawn from the calculator above, beside all that the project has."""
    load, modules = registry.load, registry.modules

    def known() -> dict[str, str]:
        return {**modules(), OWN: __name__}

    with (
        mock.patch.object(
            registry, "load", lambda name: stack_height if name == OWN else load(name)
        ),
        mock.patch.object(registry, "modules", known),
    ):
        yield


def bank() -> dict[str, Any]:
    """A bank that a test may change."""
    return copy.deepcopy(BANK)


def right(question: Question) -> Any:
    """What is right, as a page hands it in."""
    if question.kind == ORDER:
        return list(question.answer)  # type: ignore[arg-type]
    return question.shown if question.kind == NUMBER else question.answer


def slipped(question: Question, slip: int = 0) -> Any:
    """A known slip, where the question has one; else a wrong answer."""
    if question.kind == NUMBER and question.slips:
        return question.slips[slip].shown
    return wrong(question)


def wrong(question: Question) -> Any:
    """What is no known slip."""
    if question.kind == NUMBER:
        return "1e6"
    if question.kind == CHOICE:
        return (int(question.answer) + 1) % len(question.options)  # type: ignore[arg-type]
    return list(question.answer)[::-1]  # type: ignore[arg-type]
