"""Outside figures that the arch's calculation is held against, and exercises."""

from typing import Any

from ..engine.declaration import Check, Exercise, Slip, Source

SPLINE = Source(
    id="cubic-spline",
    title="A Practical Guide to Splines: cubic spline interpolation",
    author="de Boor, C.",
    year="1978",
    note="Textbook method; the book is named from memory.",
)
MPMATH_ARCS = Source(
    id="mpmath-arcs",
    title="mpmath 1.3.0: sagitta and arc length of circles",
    kind="library",
    note="s = R - sqrt(R² - (c/2)²) and 2R·asin(c/2R) in arbitrary precision.",
)
SCIPY_RIM = Source(
    id="scipy-rim",
    title="scipy 1.17.1: interpolate.CubicSpline, integrate.quad, optimize.fsolve",
    kind="library",
    note="The outline of the example as library splines, lengths by quadrature; the two balls from "
    "their conditions by fsolve; slopes by differences.",
)
SOURCES = (SPLINE, MPMATH_ARCS, SCIPY_RIM)


def _arc(radius: float, width: float, **expected: str) -> Check:
    half = width / 2
    given: dict[str, Any] = {
        "body_length": 380, "bridge_from_neck": 200, "dish_radius": radius,
        "outline": ((60, 0.8 * half), (190, half), (320, 0.8 * half)),
    }  # fmt: skip
    return Check(
        inputs=given, expected=expected, source=MPMATH_ARCS.id, origin="library",
        where=f"R = {radius:g} mm, chords of 380 and {width:g} mm",
    )  # fmt: skip


def _station(number: int, depth: str, top: str, back: str, bevels: tuple[str, str]) -> Check:
    cell = f"rim[{number}]"
    return Check(
        inputs={}, source=SCIPY_RIM.id, origin="library", where=f"the example, station {number}",
        expected={
            f"{cell}.depth": depth, f"{cell}.top_edge": top, f"{cell}.back_edge": back,
            f"{cell}.top_bevel": bevels[0], f"{cell}.back_bevel": bevels[1],
        },
    )  # fmt: skip


CHECKS = (
    _arc(6096, 50, top_crown="2.96167746", top_arc="380.06155163", top_across="0.05126334"),
    _arc(7620, 100, top_across="0.16404376"),
    _arc(9144, 100, top_across="0.13670268"),
    Check(
        inputs={}, source=SCIPY_RIM.id, origin="library", where="the example, outline and crown",
        expected={
            "side_length": "754.996", "area": "1534.939", "bridge_rise": "3.47543",
            "top_crown": "3.54271", "rim[4].along": "203.633", "rim[9].along": "487.442",
        },
        within="0.001", because="quadrature over a root against Gauss's rule",
    ),
    _station(4, "107.658858", "1.165828", "2.295011", ("0.93944", "1.86671")),
    _station(6, "114.968104", "2.377011", "4.670301", ("0.87382", "1.81528")),
    _station(9, "116.46073", "0.527845", "1.041796", ("1.24171", "2.47483")),
    _station(11, "117.56778", "-0.381494", "-0.743795", ("1.69198", "1.45023")),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="crown-along",
        situation="A top is pressed into a dish of {dish_radius}. Its blocks are {body_length} "
        "apart. How high does its crown stand over the blocks?",
        asks="top_crown",
        draw={"dish_radius": (6000, 12000, 50), "body_length": (500, 540, 0.5)},
        within="2 %",
        slips=(
            Slip(
                name="whole-chord",
                formula="dish_radius - sqrt(dish_radius ** 2 - body_length ** 2)",
                why="The half of the distance belongs in it: the crown lies in the middle.",
            ),
            Slip(
                name="half-the-crown", formula="top_crown / 2",
                why="That is what the diameter gives in place of the radius. The short way is the "
                "distance squared over eight times the radius, not over sixteen times.",
            ),
        ),
    ),
    Exercise(
        name="taper",
        situation="The side is {depth_neck_block} deep at the neck block and {depth_end_block} at "
        "the end block, {body_length} apart. By what angle does the back slope against the top's "
        "blocks?",
        asks="taper_angle",
        draw={
            "depth_neck_block": (86, 104, 0.5), "depth_end_block": (108, 124, 0.5),
            "body_length": (500, 540, 1),
        },
        within="2 %",
        slips=(
            Slip(
                name="half-the-difference",
                formula="atan((depth_end_block - depth_neck_block) / 2 / body_length)",
                why="The top lies level on its blocks, so the back takes the whole difference.",
            ),
            Slip(
                name="half-the-length",
                formula="atan((depth_end_block - depth_neck_block) / (body_length / 2))",
                why="The difference is spread over the whole body, block to block.",
            ),
            Slip(
                name="deep-end-alone", formula="atan(depth_end_block / body_length)",
                why="Only what the side gains from block to block is the slope.",
            ),
        ),
    ),
)  # fmt: skip
