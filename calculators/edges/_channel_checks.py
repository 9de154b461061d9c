"""Sources, outside checks and exercises of the channel calculation."""

from typing import Any

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..sources import COMMON_PRACTICE, GEOMETRY

RULE = Source(
    id="pilot-rule",
    title="Cut perfect rabbets with a router bit: bit less bearing, halved, is the rabbet's width; "
    "bit less twice the width is the bearing",
    note="A woodworking magazine's page, read in a stored public copy.",
)
WORN = Source(
    id="worn-cutter",
    title="A better way to do binding: a 12.7 mm cutter on a 9.5 mm bearing cuts 1.6 mm deep",
    year="2020",
    note="A workshop diary on the public web, read in a stored copy; it also measures what a worn "
    "cutter of the same kind has lost.",
)
TANGENTS = Source(
    id="tangent-table",
    title="Table of natural tangents, degree by degree, eight decimals",
    note="A public source file that prints the table; the file's repository is not known.",
)
SHAPELY = Source(
    id="shapely",
    title="shapely 2.2.0, plane shapes",
    kind="library",
    note="A leaning line brought up to a collar drawn as a rectangle until the two touch; then "
    "the distance of the cutter's lower and upper corner from that line.",
)
MPMATH = Source(
    id="mpmath",
    title="mpmath 1.3.0, 30 and 50 digits",
    kind="library",
    note="A table of circle arcs (arc length over twice the radius is the slope at the edge) and "
    "the arc sine.",
)
SOURCES = (GEOMETRY, COMMON_PRACTICE, RULE, WORN, TANGENTS, SHAPELY, MPMATH)


def _single(thickness: float, height: float) -> dict[str, Any]:
    return {"strips": [["strip", thickness, height]]}


def _pair(cutter: float, collar: float) -> dict[str, Any]:
    return {"cutters": [["only", cutter]], "collars": [["only", collar]]}


def _leaning(
    where: str, inputs: dict[str, Any], floor: str, plate: str, wall: str
) -> Check:  # fmt: skip
    return Check(
        inputs=inputs, source="shapely", origin="library", where=where,
        expected={"depth_floor": floor, "depth_plate": plate, "wall_lean": wall},
    )  # fmt: skip


# fmt: off
CHECKS = (
    Check(
        inputs={**_pair(12.7, 9.5), **_single(1.5, 6)}, source="worn-cutter", origin="read",
        where="12.7 mm on 9.5 mm", expected={"reach": "1.6"},
    ),
    _leaning("19.05 on 16.05 mm, side leaning 2° outwards below", {"side_lean": 2},
             "1.272239512", "1.065634491", "0.206605020"),
    _leaning("19.05 on 16.05 mm, side leaning 2° inwards below", {"side_lean": -2},
             "1.516535989", "1.723141009", "0.206605020"),
    _leaning("18.97 on 12.9 mm, collar 8 mm high, 1 mm below, 4.4 mm channel, 0.75°",
             {**_pair(18.97, 12.9), **_single(1.54, 4.48), "side_lean": 0.75, "collar_gap": 1,
              "collar_height": 8},
             "2.916933624", "2.859339404", "0.057594221"),
    _leaning("12.7 on 9.5 mm, collar 5 mm high, 2 mm below, -1.25°",
             {**_pair(12.7, 9.5), "side_lean": -1.25, "collar_gap": 2, "collar_height": 5},
             "1.643249013", "1.772393133", "0.129144119"),
    *(
        Check(
            inputs={**_single(1, 6), "side_lean": degrees}, source="tangent-table", origin="read",
            where=f"tan {abs(degrees)}°, a strip 1 mm thick", expected={"floor_gap": tangent},
        )
        for degrees, tangent in ((1, "0.01745506"), (2, "0.03492077"), (-5, "0.08748866"))
    ),
    Check(
        inputs={"dish_radius": 6096, "plate_width": 380}, source="mpmath", origin="library",
        where="arc of 380.06155163 mm over twice 6096 mm, in degrees",
        expected={"plate_slope": "1.78608291"},
    ),
    Check(
        inputs={"dish_radius": 9144, "plate_width": 100}, source="mpmath", origin="library",
        where="arc of 100.00049834 mm over twice 9144 mm, in degrees",
        expected={"plate_slope": "0.313298693"},
    ),
    Check(
        inputs={"dish_radius": 4600, "plate_width": 395, "machine": "foot", "side_lean": 0},
        source="mpmath", origin="library", where="arcsin(395/9200), foot flat on the back",
        expected={"lean": "2.460738252023"},
    ),
)

EXERCISES = (
    Exercise(
        name="ledge-width",
        situation="Three lines of 0.50 mm (0.0197 in) go on the ledge beside the binding. Each has "
        "a film of {cement_film} behind it, the solvent swells them by {swelling}, and they are to "
        "stand {proud_top} above the plate. How wide must the ledge be beyond the binding channel?",
        asks="ledge_width",
        draw={"cement_film": (0.02, 0.05, 0.001), "swelling": (1.5, 3.5, 0.1),
              "proud_top": (0.05, 0.2, 0.01)},
        within="0.01 mm",
        slips=(
            Slip(name="lines-alone", formula="ledge_thickness",
                 why="Lines alone fit a ledge dry. Wet, with cement between them, they do not."),
            Slip(name="one-film",
                 formula="ledge_thickness * (1 + swelling / whole) + cement_film",
                 why="Each of the three lines has a film of its own behind it."),
            Slip(name="swelling-forgotten",
                 formula="ledge_thickness + ledge_strips * cement_film",
                 why="Shut in between two walls the lines swell against them and buckle."),
        ),
    ),
    Exercise(
        name="collar-for-the-cutter",
        situation="The reground cutter measures 18.97 mm (0.7469 in). The binding is 1.54 mm "
        "(0.0606 in) thick; with a film of {cement_film} behind it, it is to stand {proud_side} out "
        "from the side when all is dry. Wet with cement it swells by {swelling} for a while. What "
        "collar does this cutter want?",
        asks="collar_wanted",
        draw={"cement_film": (0.01, 0.03, 0.001), "proud_side": (0.04, 0.15, 0.01),
              "swelling": (2, 6, 0.1)},
        within="0.01 mm",
        fixed={"cutters": [["reground", 18.97]]},
        slips=(
            Slip(name="not-doubled", formula="cutter_taken - channel_depth",
                 why="Cutter and collar are diameters: the depth counts on both sides of the "
                 "axis."),
            Slip(name="proud-added",
                 formula="cutter_taken - 2 * (channel_thickness + cement_film + proud_side)",
                 why="What stands out of the side does not lie in the channel: take it off."),
            Slip(name="strip-alone", formula="cutter_taken - 2 * channel_thickness",
                 why="A strip flush with the side leaves nothing to scrape: the scraper would take "
                 "the side."),
            Slip(name="swelling-counted",
                 formula="cutter_taken - 2 * (channel_thickness * (1 + swelling / whole) "
                 "+ cement_film - proud_side)",
                 why="The swelling goes again: until then the strip just stands out further. Reckon "
                 "it dry."),
        ),
    ),
    Exercise(
        name="foot-on-the-arch",
        situation="The back has an arch of {dish_radius} radius and is {plate_width} wide. The "
        "machine's foot lies flat on it and the side stands square to the rim. By how much does "
        "the wall of a channel 5.92 mm (0.233 in) high lean?",
        asks="wall_lean",
        draw={"dish_radius": (3600, 5000, 10), "plate_width": (300, 400, 1)},
        fixed={"machine": "foot", "side_lean": 0},
        within="0.01 mm",
        slips=(
            Slip(name="whole-width", formula="channel_height * plate_width / dish_radius",
                 why="The arch falls from the middle line: half the width counts."),
            Slip(name="over-the-depth", formula="channel_depth * sin(plate_slope)",
                 why="The wall stands as high as the channel; its depth does not count here."),
            Slip(name="fall-of-the-plate",
                 formula="plate_width ** 2 / (8 * dish_radius)",
                 why="That is how far the plate falls to its edge, not what the machine's lean "
                 "makes of the wall."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="does-the-wall-lean",
        situation="A plate {plate_width} wide, arched to {dish_radius}, is to get a channel 5.92 mm "
        "(0.233 in) high. The side stands {side_lean} out of square to the rim (plus: box wider "
        "below). The machine: {machine}. The card lets the wall lean {wall_limit} over its height. "
        "What do you do?",
        options=(
            Option(
                words="Cut",
                holds="wall_lean <= 0.88 * wall_limit",
                why="As it stands the wall would lean {wall_lean}, and {wall_limit} is allowed.",
            ),
            Option(
                words="Take the carriage first, which keeps the machine upright",
                holds="machine == 'foot' and wall_lean >= 1.15 * wall_limit "
                "and channel_height * sin(abs(side_lean)) <= 0.88 * wall_limit",
                why="The carriage only takes away the slope of the arch, {plate_slope}. The side is "
                "{side_lean} out by itself; as all stands the wall leans {wall_lean}.",
            ),
            Option(
                words="Set the box square in its cradle first",
                holds="wall_lean >= 1.15 * wall_limit "
                "and channel_height * sin(abs(side_lean)) >= 1.15 * wall_limit",
                why="The side is {side_lean} out of square: that alone is within what the card "
                "allows, or the arch makes up for it.",
            ),
        ),
        because="The side is {side_lean} out of square, the arch slopes {plate_slope} at its edge, "
        "which counts only where the foot lies on it: the wall leans {wall_lean}, {wall_limit} is "
        "allowed.",
        draw={"machine": ("upright", "foot"), "side_lean": (-0.9, 0.9, 0.02),
              "dish_radius": (3600, 9000, 100), "plate_width": (220, 400, 5)},
    ),
)
# fmt: on
