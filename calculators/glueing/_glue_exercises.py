"""Exercises on the glue clock, with the slips people make."""

from ..engine.declaration import Exercise, Slip

EXERCISES = (
    Exercise(
        name="time-the-plan-may-use",
        situation="Room, wood and spread are just as in the glue's data sheet, which gives an "
        "open time of {sheet_open_time}. You keep {margin} of it in hand. How long may the plan "
        "take?",
        asks="usable_time",
        draw={"sheet_open_time": (3, 10, 0.5), "margin": (15, 40, 5)},
        fixed={"room_humidity": 50},
        within="1 s",
        slips=(
            Slip(
                name="no-margin",
                formula="60 * sheet_open_time",
                why="This is all of the open time: nothing is kept in hand.",
            ),
            Slip(
                name="margin-alone",
                formula="60 * sheet_open_time * margin / 100",
                why="This is the margin itself; the plan may use the rest.",
            ),
            Slip(
                name="divided",
                formula="60 * sheet_open_time / (1 + margin / 100)",
                why="The margin is a share of the open time, so take it off; do not divide.",
            ),
            Slip(
                name="in-minutes",
                formula="sheet_open_time * (1 - margin / 100)",
                why="This is in minutes.",
            ),
        ),
    ),
    Exercise(
        name="water-in-the-film",
        situation="You spread {spread} of a glue with {solids} solids. How much water lies on each "
        "square metre, to be lost to air and wood?",
        asks="water_at_start",
        draw={"spread": (130, 250, 10), "solids": (38, 46, 1)},
        within="1 g/m2",
        slips=(
            Slip(
                name="solids-for-water",
                formula="spread * solids / 100",
                why="This is the weight of the solids; the water is the rest.",
            ),
            Slip(
                name="solids-on-water",
                formula="spread / (1 + solids / 100)",
                why="Solids are a share of the whole glue, not of its water.",
            ),
        ),
    ),
    Exercise(
        name="shared-between-hands",
        situation="One bead of 1200 mm at 20 mm/s, then nine clamps at 12 s each. How long from "
        "the first bead to the last clamp with {hands} pairs of hands working together?",
        asks="needed_time",
        draw={"hands": (2, 4, 2)},
        fixed={"plan": [["Bead", 1200, 20, 0, 0], ["Clamps", 0, 20, 9, 12]]},
        within="1 s",
        slips=(
            Slip(
                name="broken-clamp",
                formula="1200 / 20 / hands + 9 / hands * 12",
                why="A clamp is set by one pair of hands: the odd clamp takes its full time.",
            ),
            Slip(
                name="one-pair",
                formula="1200 / 20 + 9 * 12",
                why="This is the time of one pair of hands.",
            ),
            Slip(
                name="shared-bead-only",
                formula="1200 / 20 / hands + 9 * 12",
                why="The clamps are shared too.",
            ),
        ),
    ),
)
