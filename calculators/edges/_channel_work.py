"""The steps of the channel calculation, from the strips to the lean of the machine."""

from ..engine.declaration import Column, Constant, Given, Limit, Said, Solved, Step, Table, Work
from ._channel_solved import (
    first_ledge_pair,
    ledge_miss_mm,
    pick_channel_pair,
    plan_cuts,
    plan_passes,
    read_ledge,
    read_strips,
)

CONSTANTS = (
    Constant(name="whole", label="The whole", symbol="", unit="%", decimals=0, value=100,
             source="common-practice"),
)  # fmt: skip
LEDGE = "ledge_count > 0"
LEDGE_CUT = "ledge_count > 0 and ledge_has_pair == 1"

_strips: tuple[Work, ...] = (
    Solved(
        name="read", label="The strips, put together ledge by ledge", function=read_strips,
        gives=(
            Given(name="ledges", label="Ledges", unit="1", decimals=0, many=True),
            Given(name="channel_strips", label="Strips in the binding channel", symbol="n",
                  unit="1", decimals=0),
            Given(name="channel_thickness", label="Thickness of these", symbol="T", unit="mm",
                  decimals=2),
            Given(name="channel_strip_height", label="Height of these", symbol="H", unit="mm",
                  decimals=2),
            Given(name="ledge_count", label="Ledges further in", unit="1", decimals=0),
            Given(name="least_strip_height", label="Height of the lowest strip", unit="mm",
                  decimals=2),
        ),
        method="Neighbours of one height stand on one ledge; their thicknesses are added.",
        source="common-practice",
    ),
    Limit(
        holds="least_strip_height + cement_film - proud_top >= 0.2", blames="proud_top",
        source="common-practice",
        otherwise="The lowest strip is {least_strip_height} high and is to stand {proud_top} above "
        "the plate: no ledge to speak of is left under it; take a higher strip or scrape less",
        allowed="less than the height of the lowest strip, {least_strip_height}, by at least "
        "0.2 mm",
    ),
    Limit(
        holds="channel_thickness + channel_strips * cement_film - proud_side >= 0.1",
        blames="proud_side", source="common-practice",
        otherwise="The binding is {channel_thickness} thick and is to stand out by {proud_side}: "
        "there would be no channel; look over both",
        allowed="less than the thickness of the binding, {channel_thickness}",
    ),
    Step(
        name="channel_depth", label="Binding channel, depth inwards", symbol="D", unit="mm",
        decimals=2, formula="channel_thickness + channel_strips * cement_film - proud_side",
        source="common-practice",
    ),
    Step(
        name="channel_height", label="Binding channel, height down the side", symbol="h",
        unit="mm", decimals=2, formula="channel_strip_height + cement_film - proud_top",
        source="common-practice",
    ),
    Step(
        name="wet_side", label="Binding stands out, while wet", symbol="a_w", unit="mm",
        decimals=2, formula="proud_side + channel_thickness * swelling / whole",
        source="common-practice",
    ),
    Step(
        name="wet_top", label="Binding stands above the plate, while wet", symbol="b_w",
        unit="mm", decimals=2, formula="proud_top + channel_strip_height * swelling / whole",
        source="common-practice",
    ),
    Solved(
        name="read_ledge", label="The strips on the ledge", function=read_ledge, only_if=LEDGE,
        gives=(
            Given(name="ledge_strips", label="Strips on the ledge", symbol="n_L", unit="1",
                  decimals=0),
            Given(name="ledge_thickness", label="Thickness of these", symbol="T_L", unit="mm",
                  decimals=2),
            Given(name="ledge_strip_height", label="Height of these", symbol="H_L", unit="mm",
                  decimals=2),
        ),
        method="The first ledge inside the binding channel; the table has the others.",
        source="common-practice",
    ),
    Step(
        name="ledge_width", label="Ledge, width beyond the channel", symbol="W", unit="mm",
        decimals=2, only_if=LEDGE, source="common-practice",
        formula="ledge_thickness * (1 + swelling / whole) + ledge_strips * cement_film",
    ),
    Step(
        name="ledge_height", label="Ledge, depth in the plate", symbol="h_L", unit="mm",
        decimals=2, only_if=LEDGE, formula="ledge_strip_height + cement_film - proud_top",
        source="common-practice",
    ),
)  # fmt: skip

_pairs: tuple[Work, ...] = (
    Solved(
        name="pick", label="Cutter and collar for the channel", function=pick_channel_pair,
        gives=(
            Given(name="cutter_mark", label="Cutter", unit="1", decimals=0, text=True),
            Given(name="collar_mark", label="Collar", unit="1", decimals=0, text=True),
            Given(name="cutter_taken", label="Cutter diameter", symbol="d_c", unit="mm",
                  decimals=2),
            Given(name="collar_taken", label="Collar diameter", symbol="d_b", unit="mm",
                  decimals=2),
        ),
        method="Every cutter with every collar; the pair that comes nearest to the depth.",
        source="plane-geometry",
    ),
    Step(
        name="reach", label="This pair cuts in by", symbol="r", unit="mm", decimals=3,
        formula="(cutter_taken - collar_taken) / 2", source="pilot-rule",
    ),
    Step(
        name="depth_error", label="Deeper than wanted by", symbol="e_D", unit="mm", decimals=3,
        formula="reach - channel_depth", source="plane-geometry",
    ),
    Step(
        name="proud_got", label="Strip will stand out in the test cut, dry", symbol="a_t",
        unit="mm", decimals=2, formula="channel_thickness - reach", source="plane-geometry",
    ),
    Step(
        name="collar_wanted", label="Collar that would cut it to the hundredth with this cutter",
        symbol="d_w", unit="mm", decimals=2, formula="cutter_taken - 2 * channel_depth",
        source="pilot-rule",
    ),
    Said(
        name="pair_words", label="Out of the drawer",
        cases=(
            ("abs(depth_error) <= depth_limit * 1.000001",
             "Cutter {cutter_mark} with collar {collar_mark} cuts in by {reach}: inside the "
             "limits of ±{depth_limit}."),
            ("collar_wanted >= 3",
             "No pair cuts {channel_depth} within ±{depth_limit}. The nearest, cutter "
             "{cutter_mark} with collar {collar_mark}, cuts in by {reach}. This cutter wants a "
             "collar of {collar_wanted}."),
            ("", "No pair cuts {channel_depth} within ±{depth_limit}. The nearest, cutter "
             "{cutter_mark} with collar {collar_mark}, cuts in by {reach}. It wants a larger "
             "cutter."),
        ),
    ),
    Solved(
        name="plan", label="All cuts, each with its pair", function=plan_cuts,
        gives=(Given(name="cuts", label="Cuts", unit="1", decimals=0, many=True),),
        method="From the channel inwards. Each ledge is measured from where the pair before it "
        "really cuts its wall, so that errors do not add up.",
        source="plane-geometry",
    ),
    Solved(
        name="ledge_pair", label="Cutter and collar for the ledge", function=first_ledge_pair,
        gives=(
            Given(name="ledge_has_pair", label="Pairs found (1 or 0)", unit="1", decimals=0),
            Given(name="ledge_cutter", label="Cutter", unit="1", decimals=0, text=True),
            Given(name="ledge_collar", label="Collar", unit="1", decimals=0, text=True),
        ),
        method="The pair whose reach is nearest to channel and ledge together.",
        source="plane-geometry", only_if=LEDGE,
    ),
    Solved(
        name="ledge_miss", label="The ledge that this pair leaves", function=ledge_miss_mm,
        gives=(Given(name="ledge_error", label="Ledge wider than wanted by", symbol="e_W",
                     unit="mm", decimals=3),),
        method="Reach of this pair, less reach of the channel's, less the width wanted.",
        source="plane-geometry", only_if=LEDGE_CUT,
    ),
    Said(
        name="ledge_words", label="For the ledge", only_if=LEDGE_CUT,
        cases=(
            ("abs(ledge_error) <= depth_limit * 1.000001",
             "Cutter {ledge_cutter} with collar {ledge_collar}: inside the limits of "
             "±{depth_limit}."),
            ("", "The nearest is cutter {ledge_cutter} with collar {ledge_collar}, and it is off "
             "by {ledge_error}: outside ±{depth_limit}."),
        ),
    ),
    Said(
        name="no_ledge_words", label="For the ledge",
        only_if="ledge_count > 0 and ledge_has_pair == 0",
        cases=(("", "No pair in the drawer reaches further in than the channel."),),
    ),
    Solved(
        name="passes_planned", label="The passes", function=plan_passes,
        gives=(
            Given(name="passes", label="Passes", unit="1", decimals=0, many=True),
            Given(name="pass_count", label="Passes, all in all", symbol="N", unit="1",
                  decimals=0),
        ),
        method="Ledges first, while the edge is full, then the channel; each cut in equal passes "
        "no deeper than allowed, and what is left for the last pass at the end.",
        source="common-practice",
    ),
)  # fmt: skip

_lean: tuple[Work, ...] = (
    Step(
        name="plate_slope", label="The plate falls at its edge by", symbol="φ", unit="deg",
        decimals=3, formula="asin(plate_width / (2 * dish_radius))", source="plane-geometry",
    ),
    Step(
        name="lean", label="Lean between cutter and side", symbol="θ", unit="deg", decimals=3,
        formula="side_lean + plate_slope if machine == 'foot' else side_lean",
        source="plane-geometry",
    ),
    Step(
        name="contact", label="The collar touches, below the channel's floor", symbol="y",
        unit="mm", decimals=1, source="plane-geometry",
        formula="collar_gap + collar_height if lean > 0 else collar_gap",
    ),
    Step(
        name="depth_floor", label="Depth at the channel's floor", symbol="D_f", unit="mm",
        decimals=3, formula="(reach - contact * tan(lean)) * cos(lean)", source="plane-geometry",
    ),
    Step(
        name="depth_plate", label="Depth at the plate", symbol="D_p", unit="mm", decimals=3,
        formula="(reach - (contact + channel_height) * tan(lean)) * cos(lean)",
        source="plane-geometry",
    ),
    Limit(
        holds="min(depth_floor, depth_plate) > 0", blames="side_lean", source="plane-geometry",
        otherwise="At {lean} the lean takes more than all of the depth that the collar gives; set "
        "the box upright under the machine",
        allowed="a lean that leaves some depth; set right, it is a few tenths of a degree",
    ),
    Step(
        name="wall_lean", label="The wall leans, over the channel's height, by", symbol="v",
        unit="mm", decimals=3, formula="channel_height * sin(abs(lean))", source="plane-geometry",
    ),
    Step(
        name="lean_most", label="Most lean that the card allows", symbol="θ_m", unit="deg",
        decimals=2, formula="asin(wall_limit / channel_height)", source="plane-geometry",
        only_if="wall_limit < channel_height",
    ),
    Step(
        name="floor_gap", label="Light under one edge of the binding", symbol="u", unit="mm",
        decimals=3, formula="channel_thickness * tan(abs(lean))", source="plane-geometry",
    ),
    Said(
        name="lean_words", label="Lean",
        cases=(
            ("lean == 0", "None: cutter and side are parallel."),
            ("wall_lean <= wall_limit * 1.000001",
             "The wall leans by {wall_lean} over its height: inside {wall_limit}."),
            ("", "The wall leans by {wall_lean} over its height, more than {wall_limit}: set box "
             "and machine square to each other before you cut."),
        ),
    ),
    Step(
        name="height_short", label="Arch under the foot makes the channel shallower by",
        symbol="q", unit="mm", decimals=2, source="plane-geometry",
        formula="foot_inside * tan(plate_slope) if machine == 'upright' else 0 * foot_inside",
    ),
    Step(
        name="stop_setting", label="Depth stop for the last pass, proved on flat scrap",
        symbol="h_s", unit="mm", decimals=2, formula="channel_height + height_short",
        source="plane-geometry",
    ),
    Step(
        name="side_left", label="Side left behind the channel", symbol="s_L", unit="mm",
        decimals=2, formula="side_thickness - max(depth_floor, depth_plate)",
        source="plane-geometry",
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_strips, *_pairs, *_lean)

TABLES = (
    Table(
        name="cut_list", title="Cuts, from the side inwards", rows="cuts", source="plane-geometry",
        columns=(
            Column(name="cut", label="Cut", unit="1", decimals=0, text=True),
            Column(name="strips_in", label="For", unit="1", decimals=0, text=True),
            Column(name="width", label="Width", unit="mm", decimals=2),
            Column(name="height", label="Height", unit="mm", decimals=2),
            Column(name="cutter", label="Cutter", unit="1", decimals=0, text=True),
            Column(name="collar", label="Collar", unit="1", decimals=0, text=True),
            Column(name="wall_at", label="Cuts in by", unit="mm", decimals=3),
            Column(name="miss", label="Too wide by", unit="mm", decimals=3),
        ),
        note="A ledge's width counts from the wall that the pair before it leaves.",
    ),
    Table(
        name="pass_list", title="Passes, in order", rows="passes", source="common-practice",
        columns=(
            Column(name="pass_number", label="Pass", unit="1", decimals=0),
            Column(name="pass_cut", label="Cut", unit="1", decimals=0, text=True),
            Column(name="takes", label="Takes", unit="mm", decimals=2),
            Column(name="floor_at", label="Floor below the plate", unit="mm", decimals=2),
        ),
        note="Change the collar where the cut changes, plug out, and prove it on scrap.",
    ),
)  # fmt: skip
