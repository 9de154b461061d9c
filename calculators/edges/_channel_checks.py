"""Sources, outside checks and exercises of the channel calculation."""

from typing import Any

from ..engine.declaration import Check, Exercise, Slip, Source
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
        situation="Three lines of 0.50 mm go on the ledge beside the binding. Each has a film of "
        "{cement_film} behind it, and the solvent swells them by {swelling}. How wide must the "
        "ledge be beyond the binding channel?",
        asks="ledge_width",
        draw={"cement_film": (0.015, 0.035, 0.005), "swelling": (2, 4, 0.5)},
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
        situation="The reground cutter measures 18.97 mm. The binding is 1.54 mm thick; with a "
        "film of {cement_film} behind it, it is to stand {proud_side} out from the side. What "
        "collar does this cutter want?",
        asks="collar_wanted",
        draw={"cement_film": (0.01, 0.03, 0.005), "proud_side": (0.04, 0.1, 0.01)},
        fixed={"cutters": [["reground", 18.97]]},
        within="0.02 mm",
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
        ),
    ),
    Exercise(
        name="foot-on-the-arch",
        situation="The back has an arch of {dish_radius} radius and is {plate_width} wide. The "
        "machine's foot lies flat on it and the side stands square to the rim. By how much does "
        "the wall of a channel 5.92 mm high lean?",
        asks="wall_lean",
        draw={"dish_radius": (3600, 5000, 100), "plate_width": (330, 400, 5)},
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
# fmt: on
