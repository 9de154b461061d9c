"""Exercises on the glue clock, with the slips people make."""

from ..engine.declaration import Decision, Exercise, Option, Slip

EXERCISES = (
    Exercise(
        name="time-the-plan-may-use",
        situation="Room, wood and spread are just as in the glue's data sheet, which gives an "
        "open time of {sheet_open_time}. You keep {margin} of it in hand. How long may the plan "
        "take?",
        asks="usable_time",
        draw={"sheet_open_time": (2, 20, 0.1), "margin": (12, 48, 1)},
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
        situation="You spread {spread} of a glue with {solids} solids. How much water lies on "
        "the wood, by its area, to be lost to air and wood?",
        asks="water_at_start",
        draw={"spread": (100, 350, 1), "solids": (36, 60, 1)},
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
        situation="One bead of 1200 mm (47 in) at 20 mm/s (0.79 in/s), then 11 clamps at 12 s each, "
        "{hands} pairs of hands working together. Room, wood and spread are just as in the glue's "
        "data sheet, which gives an open time of {sheet_open_time}; you keep {margin} of it in hand. "
        "How much time is to spare (too long: minus)?",
        asks="spare_time",
        draw={"hands": (2, 4, 1), "sheet_open_time": (2, 10, 0.1), "margin": (5, 45, 1)},
        fixed={"room_humidity": 50, "plan": [["Bead", 1200, 20, 0, 0], ["Clamps", 0, 20, 11, 12]]},
        within="1 s",
        slips=(
            Slip(
                name="broken-clamp",
                formula="usable_time - (1200 / 20 / hands + 11 / hands * 12)",
                why="A clamp is set by one pair of hands: the odd clamp takes its full time.",
            ),
            Slip(
                name="one-pair",
                formula="usable_time - (1200 / 20 + 11 * 12)",
                why="That is for one pair of hands. All of them lay the bead and set clamps.",
            ),
            Slip(
                name="shared-bead-only",
                formula="usable_time - (1200 / 20 / hands + 11 * 12)",
                why="The clamps are shared too.",
            ),
            Slip(
                name="no-margin",
                formula="open_time - needed_time",
                why="The margin is kept in hand: take it off the open time first.",
            ),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="can-it-be-done",
        situation="A glue-up takes a bead of 1200 mm (47 in) at 20 mm/s (0.79 in/s) and 17 clamps at "
        "12 s each. Pairs of hands there: {hands}. Room, wood and spread are just as in the "
        "glue's data sheet, which gives an open time of {sheet_open_time}; the shop keeps {margin} of "
        "it in hand. What do you do?",
        options=(
            Option(
                words="Start",
                holds="spare_time >= 10",
                why="The plan takes {needed_time}, and only {usable_time} may be used.",
            ),
            Option(
                words="Call one more pair of hands, then start",
                holds="spare_time <= -10 and 1200 / 20 / (hands + 1) + ceil(17 / (hands + 1)) * 12 "
                "<= usable_time - 10",
                why="With the hands there it takes {needed_time}, and {usable_time} may be used; "
                "see whether one more pair is needed, and whether it is enough.",
            ),
            Option(
                words="Do not start: not even one more pair of hands is enough; split the glue-up",
                holds="1200 / 20 / (hands + 1) + ceil(17 / (hands + 1)) * 12 >= usable_time + 10",
                why="{usable_time} may be used. Bead and clamps are shared by all hands: with one "
                "more pair it is done in time.",
            ),
        ),
        because="With the hands there it takes {needed_time}, and {usable_time} may be used. The bead "
        "is shared evenly; a clamp is set by one pair of hands.",
        draw={"hands": (1, 2, 1), "sheet_open_time": (1.2, 6.5, 0.1), "margin": (5, 50, 1)},
        fixed={"room_humidity": 50, "plan": [["Bead", 1200, 20, 0, 0], ["Clamps", 0, 20, 17, 12]]},
    ),
)  # fmt: skip
