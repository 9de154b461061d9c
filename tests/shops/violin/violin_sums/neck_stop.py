"""Neck and string length from the stop of the body, by the proportions of the violin family."""

from collections.abc import Mapping
from typing import Any

from calculators.engine.compute import Say
from calculators.engine.declaration import (
    Calculator,
    Check,
    Choice,
    Drawing,
    Exercise,
    Given,
    Number,
    Slip,
    Solved,
    Source,
    Step,
)
from calculators.engine.drawing import Svg

PRACTICE = Source(
    id="stop-proportions",
    title="Neck to stop as 2 to 3 on violins and violas, 7 to 10 on cellos: common practice",
    kind="practice",
    note="Every text of the trade has them; the figures of the checks are those of full sizes.",
)
MPMATH = Source(
    id="mpmath-stop", title="mpmath 1.4, arbitrary-precision arithmetic", kind="library",
    note="Proportions worked out independently of this calculator.",
)  # fmt: skip
PROPORTIONS = {"two-to-three": (2.0, 3.0), "seven-to-ten": (7.0, 10.0)}


def parts(proportion: str) -> dict[str, float]:
    """The parts of neck and stop in a proportion, plain numbers. Source: ``PRACTICE``."""
    neck, stop = PROPORTIONS[proportion]
    return {"neck_parts": neck, "stop_parts": stop}


def draw_stop(values: Mapping[str, Any], say: Say) -> str:
    """Neck and stop on one line, to scale with each other."""
    svg = Svg(
        "neck-stop-line", "Neck and stop",
        f"Neck {say('neck_length')}, stop {say('body_stop')}, together {say('together')}.",
        640, 130,
    )  # fmt: skip
    edge = 40 + 560 * values["neck_length"] / values["together"]
    svg.rectangle((40, 50), edge - 40, 18, "wood-dark")
    svg.rectangle((edge, 44), 600 - edge, 30, "wood-light")
    svg.text(((40 + edge) / 2, 100), f"neck {say('neck_length')}", "middle")
    svg.text(((600 + edge) / 2, 100), f"stop {say('body_stop')}", "middle")
    return svg.markup()


# fmt: off
calculator = Calculator(
    name="neck-stop",
    title="Neck from the stop",
    summary="How long the neck must be for the stop of this body.",
    other_words=("stop ratio", "mensur", "neck length violin", "how long is the neck"),
    inputs=(
        Number(name="body_stop", label="Stop of the body", symbol="s", unit="mm", decimals=1,
               lowest=80, highest=500, example=195,
               help="From the edge of the top at the neck to the line of the inner nicks."),
        Choice(name="proportion", label="Neck to stop", example="two-to-three",
               options=(("two-to-three", "2 to 3: violin, viola"),
                        ("seven-to-ten", "7 to 10: cello"))),
    ),
    work=(
        Solved(name="take_parts", label="The proportion", function=parts, source=PRACTICE.id,
               method="The two numbers of the proportion chosen.",
               gives=(Given(name="neck_parts", label="Parts of the neck", symbol="a", unit="1",
                            decimals=0),
                      Given(name="stop_parts", label="Parts of the stop", symbol="b", unit="1",
                            decimals=0))),
        Step(name="neck_length", label="Neck, nut to edge", symbol="n", unit="mm", decimals=1,
             formula="body_stop * neck_parts / stop_parts", source=PRACTICE.id),
        Step(name="together", label="Neck and stop together", symbol="t", unit="mm", decimals=1,
             formula="neck_length + body_stop", source=PRACTICE.id),
    ),
    results=("neck_length", "together"),
    sources=(PRACTICE, MPMATH),
    checks=(
        Check(inputs={"body_stop": 195}, source=PRACTICE.id, origin="memory",
              where="full-size violin: stop 195 mm, neck 130 mm",
              expected={"neck_length": "130", "together": "325"}),
        Check(inputs={"body_stop": 400, "proportion": "seven-to-ten"}, source=PRACTICE.id,
              origin="memory", where="full-size cello: stop 400 mm, neck 280 mm",
              expected={"neck_length": "280", "together": "680"}),
        Check(inputs={"body_stop": 191.3}, source=MPMATH.id, origin="library",
              where="stop 191.3 mm, 2 to 3",
              expected={"neck_length": "127.533333333", "together": "318.833333333"}),
    ),
    exercises=(
        Exercise(name="neck-for-a-stop", asks="neck_length", within="0.3 mm",
                 situation="A violin's body has a stop of {body_stop}. Neck and stop go as 2 to 3. "
                 "How long must the neck be?",
                 draw={"body_stop": (186, 199, 0.5)},
                 slips=(Slip(name="turned-over", formula="body_stop * stop_parts / neck_parts",
                             why="You turned the proportion over: the neck is the shorter part."),
                        Slip(name="of-the-whole",
                             formula="body_stop * neck_parts / (neck_parts + stop_parts)",
                             why="2 to 3 is neck to stop, not neck to the whole."))),
    ),
    drawings=(Drawing(name="line", title="Neck and stop", function=draw_stop),),
    validity="A proportion of the trade, not a law: players of other schools ask for others.",
)
