"""Taper from two diameters: the angle, and how far a peg goes in while its hole is reamed.

An example of a calculator of the shop's own. It imports Python's own modules and
``calculators.engine`` only, so that it runs in a reader's browser.
"""

from collections.abc import Mapping
from typing import Any

from calculators.engine.compute import Say
from calculators.engine.declaration import (
    Calculator,
    Caution,
    Check,
    Drawing,
    Exercise,
    Limit,
    Number,
    Slip,
    Source,
    Step,
)
from calculators.engine.drawing import Svg

TAPERS = Source(
    id="iso-1119",
    title="ISO 1119, Geometrical product specifications: series of conical tapers and taper angles",
    author="International Organization for Standardization",
    note="Its table gives the whole angle of each taper; named from memory.",
)
MPMATH = Source(
    id="mpmath-taper",
    title="mpmath 1.4, arbitrary-precision arithmetic",
    kind="library",
    note="The same quantities worked out with 30 digits, independently of this calculator.",
)
LEFT, MIDDLE, LONG, TALL = 60.0, 90.0, 520.0, 60.0


def draw_taper(values: Mapping[str, Any], say: Say) -> str:
    """The tapered piece from the side; its thickness is drawn larger than its length."""
    svg = Svg(
        "taper-side", "The taper from the side",
        f"From {say('wide_end')} to {say('narrow_end')} over {say('length')}: one in {say('taper')}.",
        640, 180,
    )  # fmt: skip
    narrow = TALL * values["narrow_end"] / values["wide_end"]
    svg.polygon(
        [(LEFT, MIDDLE - TALL), (LEFT + LONG, MIDDLE - narrow),
         (LEFT + LONG, MIDDLE + narrow), (LEFT, MIDDLE + TALL)],
        "wood-mid",
    )  # fmt: skip
    svg.line((LEFT - 20, MIDDLE), (LEFT + LONG + 20, MIDDLE), "thin")
    svg.text((LEFT, MIDDLE + TALL + 24), say("wide_end"), "middle")
    svg.text((LEFT + LONG, MIDDLE + TALL + 24), say("narrow_end"), "middle")
    svg.text((LEFT + LONG / 2, MIDDLE - 8), say("angle"), "middle")
    return svg.markup()


# fmt: off
calculator = Calculator(
    name="taper",
    title="Taper",
    summary="How steep a tapered peg or hole is, and how far the peg goes in as the hole grows.",
    other_words=("peg taper", "reamer taper", "cone angle", "how far does the peg go in"),
    inputs=(
        Number(
            name="wide_end", label="Diameter at the wide end", symbol="D", unit="mm", decimals=2,
            lowest=1, highest=100, example=8.5, help="Measured where the taper begins.",
        ),
        Number(
            name="narrow_end", label="Diameter at the narrow end", symbol="d", unit="mm",
            decimals=2, lowest=0.5, highest=100, example=7,
        ),
        Number(
            name="length", label="Length between the two", symbol="L", unit="mm", decimals=1,
            lowest=2, highest=1000, example=45, help="Along the middle line.",
        ),
        Number(
            name="reamed", label="The hole grows by", symbol="r", unit="mm", decimals=2,
            lowest=0, highest=20, example=0.1, help="In diameter, at either face.",
        ),
    ),
    work=(
        Limit(
            holds="narrow_end < wide_end", blames="narrow_end", source=TAPERS.id,
            otherwise="The narrow end is as thick as the wide end or thicker; swap the two",
            allowed="less than {wide_end}",
        ),
        Step(
            name="taper", label="Taper, one in", symbol="n", unit="1", decimals=1,
            formula="length / (wide_end - narrow_end)", source=TAPERS.id,
            help="So many lengths to one of diameter.",
        ),
        Step(
            name="angle", label="Angle, side to side", symbol="α", unit="deg", decimals=3,
            formula="2 * atan((wide_end - narrow_end) / (2 * length))", source=TAPERS.id,
        ),
        Step(
            name="deeper", label="The peg goes in by", symbol="s", unit="mm", decimals=1,
            formula="reamed * taper", source=TAPERS.id,
        ),
    ),
    results=("deeper", "taper", "angle"),
    sources=(TAPERS, MPMATH),
    checks=(
        Check(
            inputs={"wide_end": 10, "narrow_end": 8, "length": 40}, source=TAPERS.id,
            origin="memory", where="taper 1:20, whole angle 2° 51′ 51.1″, in degrees",
            expected={"angle": "2.86419"},
        ),
        Check(
            inputs={"wide_end": 9, "narrow_end": 8, "length": 50}, source=TAPERS.id,
            origin="memory", where="taper 1:50, whole angle 1° 8′ 45.2″, in degrees",
            expected={"angle": "1.14588"},
        ),
        Check(
            inputs={"reamed": 0.15}, source=MPMATH.id, origin="library",
            where="8.5 to 7 mm over 45 mm, reamed by 0.15 mm",
            expected={"taper": "30.0", "angle": "1.90968", "deeper": "4.5"},
        ),
    ),
    exercises=(
        Exercise(
            name="how-far-in",
            situation="A peg goes from {wide_end} to {narrow_end} over {length}. You ream its hole "
            "by {reamed}. How much farther does the peg go in?",
            asks="deeper",
            draw={"wide_end": (8, 9, 0.1), "narrow_end": (6, 7, 0.1), "length": (35, 50, 1),
                  "reamed": (0.1, 0.4, 0.05)},
            within="0.2 mm",
            slips=(
                Slip(
                    name="radius", formula="2 * reamed * taper",
                    why="The taper speaks of diameters: nothing is to be doubled.",
                ),
                Slip(
                    name="as-much", formula="reamed",
                    why="The peg goes in by much more than the hole grows: that is what a taper does.",
                ),
            ),
        ),
    ),
    drawings=(Drawing(name="side", title="The taper from the side", function=draw_taper),),
    cautions=(
        Caution(
            text="A reamer takes as much as you let it: try the peg after every two turns. What is "
            "reamed away does not come back.",
        ),
    ),
    validity="Exact for a straight taper that is round. Wear and paste are not in it.",
)
