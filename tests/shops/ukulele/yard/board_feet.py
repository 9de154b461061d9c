"""Board feet of a pile of boards, and what to buy where some of it is waste."""

from calculators.engine.declaration import (
    Calculator,
    Check,
    Constant,
    Exercise,
    Number,
    Slip,
    Source,
    Step,
)

DEFINITION = Source(
    id="board-foot",
    title="The board foot: 144 cubic inches, a foot square and an inch thick",
    author="National Institute of Standards and Technology",
    note="Definition of the trade; in litres 2.359737, as its tables of conversion print it. "
    "From memory.",
)
MPMATH = Source(
    id="mpmath-board-feet", title="mpmath 1.4, arbitrary-precision arithmetic", kind="library",
    note="The same pile worked out independently.",
)  # fmt: skip

# fmt: off
calculator = Calculator(
    name="board-feet",
    title="Board feet",
    summary="How much wood is in a pile, as the yard sells it.",
    other_words=("bdft", "how much wood to buy", "board foot"),
    inputs=(
        Number(name="thickness", label="Thickness as sold", symbol="t", unit="in", decimals=3,
               lowest=0.25, highest=6, example=1),
        Number(name="width", label="Width", symbol="w", unit="in", decimals=2, lowest=1,
               highest=40, example=6),
        Number(name="length", label="Length", symbol="l", unit="in", decimals=1, lowest=6,
               highest=240, example=48),
        Number(name="boards", label="Boards", symbol="n", unit="1", decimals=0, whole=True,
               lowest=1, highest=200, example=3),
        Number(name="waste", label="Waste", symbol="q", unit="%", decimals=0, lowest=0, highest=80,
               example=25, help="What is cut away round knots, splits and ends."),
    ),
    constants=(
        Constant(name="board_foot", label="One board foot", symbol="B", unit="in3", decimals=0,
                 value=144, source=DEFINITION.id),
        Constant(name="whole", label="The whole", unit="%", decimals=0, value=100,
                 source=DEFINITION.id),
    ),
    work=(
        Step(name="feet", label="Board feet in the pile", symbol="F", unit="1", decimals=2,
             formula="thickness * width * length * boards / board_foot", source=DEFINITION.id),
        Step(name="usable", label="Board feet you can use", symbol="U", unit="1", decimals=2,
             formula="feet * (1 - waste / whole)", source=DEFINITION.id),
    ),
    results=("feet", "usable"),
    sources=(DEFINITION, MPMATH),
    checks=(
        Check(inputs={"thickness": 1, "width": 12, "length": 12, "boards": 1, "waste": 0},
              source=DEFINITION.id, origin="memory", where="one board foot, by its definition",
              expected={"feet": "1", "usable": "1"}),
        Check(inputs={"thickness": "50 mm", "width": "200 mm", "length": "235.9737 mm", "boards": 1},
              source=DEFINITION.id, origin="memory",
              where="2.359737 litres, as 50 by 200 by 235.9737 mm", expected={"feet": "1.000000"}),
        Check(inputs={"thickness": 1.25, "width": 7.5, "length": 62, "boards": 4},
              source=MPMATH.id, origin="library", where="four boards of 1 1/4 by 7 1/2 by 62 in",
              expected={"feet": "16.1458333333", "usable": "12.109375"}),
    ),
    exercises=(
        Exercise(name="pile", asks="feet", within="0.1",
                 situation="{boards} boards, each {thickness} thick, {width} wide and {length} long: "
                 "how many board feet is that?",
                 draw={"thickness": (1, 2, 0.25), "width": (4, 10, 0.5), "length": (24, 96, 6),
                       "boards": (2, 6, 1)},
                 slips=(Slip(name="length-in-feet",
                             formula="thickness * width * length * boards / 12",
                             why="With the length in inches too you divide by 144, not by 12."),)),
    ),
    validity="The measure of the trade: sizes as sold, before planing.",
)
