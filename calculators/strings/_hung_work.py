"""The steps of the hung-weights calculation."""

from ..engine.declaration import Column, Given, Limit, Said, Solved, Step, Table, Work
from ._hung_solved import bent_neck

work: tuple[Work, ...] = (
    Step(
        name="neck_length", label="Nut to body joint", symbol="L", unit="mm", decimals=1,
        formula="scale_length * (1 - 2 ** (-body_joint_fret / 12))", source="equal-division",
    ),
    Step(
        name="read_place", label="The straightedge starts from the nut at", symbol="x_r", unit="mm",
        decimals=1, formula="scale_length * (1 - 2 ** (-first_read_fret / 12))",
        source="equal-division",
    ),
    Step(
        name="middle_place", label="The bow is read at", symbol="x_m", unit="mm", decimals=1,
        formula="(read_place + neck_length) / 2", source="equal-division",
    ),
    Limit(
        holds="-hang_place < middle_place - read_place / 2", blames="hang_place",
        source="common-practice",
        otherwise="The weight hangs so near to the middle of the neck that it hardly bends it; hang it "
        "at the nut",
        allowed="a place nearer to the nut",
    ),
    Limit(
        holds="pressed_fret < body_joint_fret", blames="pressed_fret", source="common-practice",
        otherwise="Pressed at the joint or past it, the strings are not over the neck any more; give a "
        "lower fret",
        allowed="a fret below {body_joint_fret}, or 0",
    ),
    Limit(
        holds="board_end_width >= neck_width_nut", blames="board_end_width",
        source="common-practice",
        otherwise="The board would be narrower at its last fret than at the nut; measure both",
        allowed="at least {neck_width_nut}",
    ),
    Solved(
        name="bends", label="The neck under strings and weights", function=bent_neck,
        gives=(
            Given(name="sag_strings", label="Hollow that the strings make", symbol="s_T",
                  unit="mm", decimals=3),
            Given(name="sag_hung", label="Hollow that the weight in hand makes", symbol="s_h",
                  unit="mm", decimals=3),
            Given(name="weight_first", label="Weight in the strings' place", symbol="m_1",
                  unit="kg", decimals=2),
            Given(name="weight_second", label="Second weight", symbol="m_2", unit="kg",
                  decimals=2),
            Given(name="drop_strings", label="The nut comes forward under the strings by",
                  symbol="y_T", unit="mm", decimals=2),
            Given(name="drop_weights", label="The nut drops under the weights by", symbol="y_m",
                  unit="mm", decimals=2),
            Given(name="worst_gap", label="Between the two curves, at most", symbol="Δ", unit="mm",
                  decimals=3),
            Given(name="stiffness_nut", label="Bending stiffness E·I at the nut", symbol="EI_0",
                  unit="N.m2", decimals=0),
            Given(name="weights", label="Weights", unit="kg", decimals=2, many=True),
            Given(name="curves", label="Curves", unit="1", decimals=0, many=True),
            Given(name="fret_rows", label="Frets", unit="1", decimals=0, many=True),
        ),
        method="The neck is a cantilever from the joint whose E·I goes with width times thickness "
        "cubed. Curvature is moment over E·I; its moments, summed piece by piece, give the bends. One "
        "weight is sized for the strings' hollow, two for their hollow and the drop of the nut.",
        source="beam-theory",
    ),
    Step(
        name="hung_pull", label="The weight in hand pulls", symbol="F", unit="N", decimals=1,
        formula="hung_weight * gravity", source="si-brochure",
    ),
    Step(
        name="hung_moment", label="It bends the neck at the joint with", symbol="M_h", unit="N.m",
        decimals=2, formula="hung_pull * (neck_length + hang_place) / mm_per_m",
        source="beam-theory",
    ),
    Step(
        name="hung_share", label="Weight in hand beside the strings, by hollow", symbol="q_h",
        unit="%", decimals=0, formula="sag_hung / sag_strings * whole", source="beam-theory",
    ),
    Step(
        name="middle_thickness", label="Neck with board where the bow is read", symbol="t_m",
        unit="mm", decimals=2, source="equal-division",
        formula="thickness_first + (thickness_second - thickness_first)"
        " * (middle_place - scale_length * (1 - 2 ** (-1 / 12)))"
        " / (scale_length * (2 ** (-1 / 12) - 2 ** (-second_fret / 12)))",
    ),
    Step(
        name="middle_height", label="Strings over the neutral axis there, open", symbol="h_m",
        unit="mm", decimals=2, source="beam-theory",
        formula="axis_share / whole * middle_thickness + fret_height + mean_gauge / 2 + nut_height"
        " + ((action_bass + action_treble) / 2 - nut_height) * middle_place / (scale_length / 2)",
    ),
    Step(
        name="middle_moment", label="Moment of the strings there, open", symbol="M_m", unit="N.m",
        decimals=2, formula="string_tension * middle_height / mm_per_m", source="beam-theory",
    ),
    Step(
        name="rule_weight", label="By the rule for an even neck: moment there over its lever",
        symbol="m_r", unit="kg", decimals=2, source="beam-theory",
        formula="middle_moment / ((middle_place + hang_place) / mm_per_m) / gravity",
    ),
    Limit(
        holds="bow_loaded > bow_free", blames="bow_loaded", source="common-practice",
        otherwise="Under the weight the neck has to be more hollow than without it; look over the two "
        "bows and their signs",
        allowed="a bow above {bow_free}", only_if="rod == 'set'",
    ),
    Step(
        name="bow_strings", label="Bow to expect under the strings, rod as it is", symbol="b_T",
        unit="mm", decimals=2, only_if="rod == 'set'", source="beam-theory",
        formula="bow_free + (bow_loaded - bow_free) * sag_strings / sag_hung",
    ),
    Step(
        name="rod_turn", label="To the relief wanted, let the rod out by", symbol="n", unit="turn",
        decimals=2, only_if="rod == 'set'", formula="(relief - bow_strings) / rod_effect",
        source="common-practice",
    ),
    Said(
        name="verdict", label="Weight for this neck",
        cases=(
            ("arrangement == 'one' and 98 <= hung_share and hung_share <= 102",
             "{weight_first}. The weight in hand is right: it makes {hung_share} of the strings' "
             "hollow."),
            ("arrangement == 'one' and hung_share > 102",
             "{weight_first}. The weight in hand is heavier: it makes {hung_share} of the strings' "
             "hollow, and a rod set under it is set too tight."),
            ("arrangement == 'one'",
             "{weight_first}. The weight in hand is lighter: it makes only {hung_share} of the strings' "
             "hollow, and a rod set under it leaves the neck hollow."),
            ("weight_first < 0 and weight_second > 0",
             "Hang {weight_second} at the second place. The first has to lift: its {weight_first} go "
             "over a pulley, upwards."),
            ("weight_second < 0 and weight_first > 0",
             "Hang {weight_first} at the first place. The second has to lift: its {weight_second} go "
             "over a pulley, upwards."),
            ("", "Hang {weight_first} at the first place and {weight_second} at the second."),
        ),
    ),
    Said(
        name="rod_words", label="The rod", only_if="rod == 'set'",
        cases=(
            ("abs(rod_turn) < 0.05",
             "Leave it: under the strings the neck should stand at {bow_strings}."),
            ("rod_turn > 0",
             "Under the strings the neck should stand at {bow_strings}. For the relief let the rod out "
             "by {rod_turn}, in steps, reading each time."),
            ("", "Under the strings the neck should stand at {bow_strings}, more hollow than wanted. "
             "Minus is tighter: {rod_turn}, in steps, reading each time."),
        ),
    ),
)  # fmt: skip

tables = (
    Table(
        name="neck", title="Along the neck", rows="fret_rows", source="beam-theory",
        columns=(
            Column(name="fret", label="Fret", unit="1", decimals=0),
            Column(name="place", label="From the nut", unit="mm", decimals=1),
            Column(name="thickness", label="Thickness", unit="mm", decimals=1),
            Column(name="height", label="Strings over the neutral axis", unit="mm", decimals=2),
            Column(name="string_moment", label="Moment of the strings", unit="N.m", decimals=2,
                   formula="string_tension * height / mm_per_m"),
            Column(name="weight_moment", label="Moment of the weights", unit="N.m", decimals=2),
            Column(name="hollow_strings", label="Hollow, strings", unit="mm", decimals=3),
            Column(name="hollow_weights", label="Hollow, weights", unit="mm", decimals=3),
        ),
        note="Hollow is counted from the straightedge between the first fret read and the joint; before "
        "that fret it is minus, where the neck rises above the line.",
    ),
)  # fmt: skip
