"""The steps of the mitre calculation: angles, arc, lengths, and what an error opens."""

from ..engine.declaration import (
    Column,
    Constant,
    Given,
    Limit,
    Said,
    Solved,
    Step,
    Table,
    Work,
)
from ._mitre_solved import bow_of_mitre, mitre_rows, take_tip, way_of_arc

CONSTANTS = (
    Constant(name="right_angle", label="Right angle", symbol="", unit="deg", decimals=0, value=90,
             source="plane-geometry"),
    Constant(name="radian", label="One radian", symbol="", unit="deg", decimals=7,
             value=57.29577951308232, source="plane-geometry"),
)  # fmt: skip
IS_CURVED = "joint != 'straight'"

_straight: tuple[Work, ...] = (
    Step(
        name="straight_tip", label="Inner tip along line 1, both lines straight", symbol="x_s",
        unit="mm", decimals=3, source="plane-geometry",
        formula="(width_2 + width_1 * cos(corner_angle)) / sin(corner_angle)",
    ),
    Step(
        name="straight_inner", label="Inner edge of line 2, both lines straight", symbol="ℓ_2s",
        unit="mm", decimals=2, source="plane-geometry",
        formula="length_2 - (width_1 + width_2 * cos(corner_angle)) / sin(corner_angle)",
    ),
)  # fmt: skip

_arc: tuple[Work, ...] = (
    Solved(
        name="way", label="Which way the arc curves", function=way_of_arc, only_if=IS_CURVED,
        gives=(Given(name="bulge", label="Outwards 1, inwards -1", symbol="σ", unit="1",
                     decimals=0),),
        method="1 where the centre lies on the inner side of the corner, -1 where on the outer.",
        source="plane-geometry",
    ),
    Limit(
        holds="length_2 <= 6 * arc_radius", blames="length_2", only_if=IS_CURVED,
        source="plane-geometry",
        otherwise="An arc of radius {arc_radius} is all the way round before it is {length_2} "
        "long; look over length and radius",
        allowed="at most six times the radius",
    ),
    Step(
        name="inner_radius", label="Radius of the arc's inner edge", symbol="R_i", unit="mm",
        decimals=2, only_if=IS_CURVED, formula="arc_radius - bulge * width_2",
        source="plane-geometry",
    ),
    Step(
        name="over_centre", label="Inner edge of line 1 over the arc's centre", symbol="k",
        unit="mm", decimals=3, only_if=IS_CURVED, source="plane-geometry",
        formula="width_1 + bulge * arc_radius * cos(corner_angle)",
    ),
    Limit(
        holds="abs(over_centre) < inner_radius", blames="arc_radius", only_if=IS_CURVED,
        source="plane-geometry",
        otherwise="The arc is so tight that the two inner edges never meet; take a larger radius, "
        "narrower lines, or a corner nearer to a right angle",
        allowed="an arc whose inner edge reaches the inner edge of line 1",
    ),
    Step(
        name="curved_tip", label="Inner tip along line 1, with the arc", symbol="x_c", unit="mm",
        decimals=3, only_if=IS_CURVED, source="equal-ratio",
        formula="bulge * (arc_radius * sin(corner_angle) - "
        "sqrt(inner_radius ** 2 - over_centre ** 2))",
    ),
    Step(
        name="inner_corner", label="Corner between line 1 and the arc at the inner tip",
        symbol="γ_i", unit="deg", decimals=2, only_if=IS_CURVED,
        formula="acos(bulge * over_centre / inner_radius)", source="plane-geometry",
    ),
    Step(
        name="curved_inner", label="Inner edge of the arc", symbol="ℓ_2c", unit="mm", decimals=2,
        only_if=IS_CURVED, source="plane-geometry",
        formula="inner_radius * (length_2 / arc_radius - "
        "bulge * (corner_angle - inner_corner) / radian)",
    ),
)  # fmt: skip

_cuts: tuple[Work, ...] = (
    Solved(
        name="tip", label="The inner tip of this joint", function=take_tip,
        gives=(
            Given(name="tip_along", label="Inner tip along line 1, from the outer tip",
                  symbol="x", unit="mm", decimals=3),
            Given(name="inner_2", label="Line 2, its inner edge", symbol="ℓ_2i", unit="mm",
                  decimals=2),
        ),
        method="As for straight lines, or as for the arc.", source="plane-geometry",
    ),
    Step(
        name="mitre_1", label="Line 1, cut against its length", symbol="α", unit="deg",
        decimals=2, formula="right_angle - atan(tip_along / width_1)", source="equal-ratio",
    ),
    Step(
        name="mitre_2", label="Line 2, cut against its length", symbol="β", unit="deg",
        decimals=2, formula="corner_angle - mitre_1", source="equal-ratio",
    ),
    Step(
        name="saw_1", label="Line 1, saw set from square", symbol="α_s", unit="deg", decimals=2,
        formula="right_angle - mitre_1", source="saw-scale",
    ),
    Step(
        name="saw_2", label="Line 2, saw set from square", symbol="β_s", unit="deg", decimals=2,
        formula="right_angle - mitre_2", source="saw-scale",
    ),
    Step(
        name="mitre_length", label="Length of the mitre, tip to tip", symbol="m", unit="mm",
        decimals=3, formula="hypot(tip_along, width_1)", source="plane-geometry",
    ),
    Limit(
        holds="min(mitre_1, mitre_2) >= 2", blames="corner_angle", source="common-practice",
        otherwise="One line would have to be cut at less than 2° to its length, which nobody can "
        "cut; bring the widths or the corner nearer to the usual",
        allowed="widths and a corner that leave at least 2° for either cut",
    ),
)  # fmt: skip

_curve: tuple[Work, ...] = (
    Step(
        name="start_angle", label="True mitre against line 1, at the outer tip", symbol="α_0",
        unit="deg", decimals=2, only_if=IS_CURVED, source="equal-ratio",
        formula="right_angle - atan(straight_tip / width_1)",
    ),
    Step(
        name="end_angle", label="True mitre against line 1, at the inner tip", symbol="α_i",
        unit="deg", decimals=2, only_if=IS_CURVED, source="equal-ratio",
        formula="right_angle - atan((width_2 + width_1 * cos(inner_corner)) / "
        "(width_1 * sin(inner_corner)))",
    ),
    Step(
        name="end_error", label="A cut set for straight lines misses the inner tip by",
        symbol="e", unit="mm", decimals=3, only_if=IS_CURVED,
        formula="abs(curved_tip - straight_tip)", source="plane-geometry",
    ),
    Solved(
        name="mitre_bow", label="How far the true mitre leaves its chord", function=bow_of_mitre,
        gives=(Given(name="bow", label="True mitre leaves its chord by", symbol="c", unit="mm",
                     decimals=3),),
        method="The place where the mitre runs parallel to its chord, closed in from both "
        "sides; plus where line 1 ends hollow.",
        source="equal-ratio", only_if=IS_CURVED,
    ),
    Step(
        name="bow_size", label="That is, without its sign", symbol="|c|", unit="mm", decimals=3,
        only_if=IS_CURVED, formula="abs(bow)", source="equal-ratio",
    ),
    Said(
        name="curve_words", label="Straight cut or filed", only_if=IS_CURVED,
        cases=(
            ("bow_size <= gap_limit / 2",
             "Cut both straight, along the chord: the lines inside the bundles miss each other by "
             "no more than {bow_size}, square to the cut."),
            ("bow > 0",
             "Cut along the chord, then file line 1 hollow and the arc round, by {bow_size} in the "
             "middle, so that every line meets its own."),
            ("", "Cut along the chord, then file the arc hollow and line 1 round, by {bow_size} in the "
             "middle, so that every line meets its own."),
        ),
    ),
)  # fmt: skip

_lengths: tuple[Work, ...] = (
    Step(
        name="inner_1", label="Line 1, its inner edge", symbol="ℓ_1i", unit="mm", decimals=2,
        formula="length_1 - tip_along", source="plane-geometry",
    ),
    Limit(
        holds="min(inner_1, inner_2) > 0", blames="length_1", source="plane-geometry",
        otherwise="The mitre is longer than a line: its inner edge would have no length left; "
        "look over lengths and corner",
        allowed="lengths greater than what the mitre takes off the inner edge",
    ),
    Step(
        name="blank_1", label="Line 1, cut the piece", symbol="ℓ_1b", unit="mm", decimals=1,
        formula="max(length_1, inner_1) + spare", source="common-practice",
    ),
    Step(
        name="blank_2", label="Line 2, cut the piece", symbol="ℓ_2b", unit="mm", decimals=1,
        formula="max(length_2, inner_2) + spare", source="common-practice",
    ),
)  # fmt: skip

_gaps: tuple[Work, ...] = (
    Limit(
        holds="min(mitre_1, mitre_2) + angle_error >= 1 and "
        "max(mitre_1, mitre_2) + angle_error <= 179",
        blames="angle_error", source="plane-geometry",
        otherwise="With this error one cut would run along its line; such a gap has no figure",
        allowed="an error well below the sharper of the two cuts",
    ),
    Step(
        name="gap_1", label="Error in line 1 opens the joint by", symbol="g_1", unit="mm",
        decimals=3, source="plane-geometry",
        formula="width_1 * sin(abs(angle_error)) / sin(mitre_1 + angle_error)",
    ),
    Step(
        name="gap_2", label="Error in line 2 opens the joint by", symbol="g_2", unit="mm",
        decimals=3, source="plane-geometry",
        formula="width_2 * sin(abs(angle_error)) / sin(mitre_2 + angle_error)",
    ),
    Step(
        name="gap_both", label="Both off by as much, the gap is", symbol="g_b", unit="mm",
        decimals=3, formula="gap_1 + gap_2", source="plane-geometry",
    ),
    Step(
        name="error_1", label="Error of line 1 that opens half the gap allowed", symbol="ε_1",
        unit="deg", decimals=2, source="plane-geometry",
        formula="atan(gap_limit / 2 * sin(mitre_1) / "
        "(width_1 + gap_limit / 2 * abs(cos(mitre_1))))",
    ),
    Step(
        name="error_2", label="Error of line 2 that opens half the gap allowed", symbol="ε_2",
        unit="deg", decimals=2, source="plane-geometry",
        formula="atan(gap_limit / 2 * sin(mitre_2) / "
        "(width_2 + gap_limit / 2 * abs(cos(mitre_2))))",
    ),
    Step(
        name="error_most", label="Each cut may be off by at most", symbol="ε_m", unit="deg",
        decimals=2, formula="min(error_1, error_2)", source="plane-geometry",
    ),
    Said(
        name="gap_words", label="Where it opens",
        cases=(
            ("angle_error == 0", "Nowhere: both cuts are true."),
            ("angle_error < 0",
             "Cut too sharp, the outer tips touch first and the joint opens at the inner tip, by "
             "{gap_both} where both are off."),
            ("", "Cut too blunt, the inner tips touch first and the joint opens at the outer tip, "
             "by {gap_both} where both are off."),
        ),
    ),
    Solved(
        name="settings", label="Both lines side by side", function=mitre_rows,
        gives=(
            Given(name="lines", label="Lines", unit="1", decimals=0, many=True),
            Given(name="corners", label="Corners", unit="1", decimals=0, many=True),
        ),
        method="The figures above, one row a line; and corners from 30 to 150 degrees.", source="plane-geometry",
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_straight, *_arc, *_cuts, *_curve, *_lengths, *_gaps)

TABLES = (
    Table(
        name="saw_settings", title="Saw settings and lengths", rows="lines",
        source="equal-ratio",
        columns=(
            Column(name="line", label="Line", unit="1", decimals=0, text=True),
            Column(name="line_width", label="Width", unit="mm", decimals=2),
            Column(name="from_square", label="Saw from square", unit="deg", decimals=2),
            Column(name="from_length", label="Cut to the length", unit="deg", decimals=2),
            Column(name="outer", label="Outer edge", unit="mm", decimals=2),
            Column(name="inner", label="Inner edge", unit="mm", decimals=2),
            Column(name="blank", label="Cut the piece", unit="mm", decimals=1),
        ),
        note="A saw's scale shows the angle from square; a protractor held along the line shows "
        "the other. Below zero the cut leans the other way: the outer edge is the shorter one.",
    ),
    Table(
        name="other_corners", title="The same two widths at other corners, both straight",
        rows="corners", source="equal-ratio",
        columns=(
            Column(name="corner", label="Corner", unit="deg", decimals=0),
            Column(name="at_1", label="Line 1, saw from square", unit="deg", decimals=2,
                   formula="atan((width_2 + width_1 * cos(corner)) / (width_1 * sin(corner)))"),
            Column(name="at_2", label="Line 2, saw from square", unit="deg", decimals=2,
                   formula="atan((width_1 + width_2 * cos(corner)) / (width_2 * sin(corner)))"),
        ),
    ),
)  # fmt: skip
