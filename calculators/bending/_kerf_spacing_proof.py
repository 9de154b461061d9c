"""Outside figures that the kerf calculation is held against, and exercises."""

import math

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.bent_strip import sagitta_mm

WEDGES = Source(
    id="wedge-geometry",
    title="Kerf bending: arcs of one angle about one centre; what the kerfs take out of the inner "
    "arc is the difference of the arcs",
    note="Plane geometry of circles, no book needed. Checked with mpmath.",
)
ELEMENTS = Source(
    id="scipy-elements",
    title="scipy 1.18.1, sparse solver: plane finite elements of half a spacing",
    kind="library",
    note="Four-node elements of 0.05 mm with incompatible modes, wood along the strip (mahogany: "
    "E across 0.085, shear modulus 0.076 of E along the grain, read in the Wood Handbook's "
    "table 5-1). The turn for a moment gives the length that bends: the kerf and 2.4 to 2.6 webs "
    "for webs of 0.4 to 1 mm. Set up for this calculator, apart from its code.",
)
ARC_PACK = Source(
    id="mpmath-kerfs",
    title="mpmath 1.3.0, worked examples: kerfs that just close, sagittas",
    kind="library",
    note="Outer arc R·θ, inner arc (R - h)·θ, kerfs that take out the difference; s = R - "
    "√(R² - (c/2)²).",
)
MPMATH = Source(
    id="mpmath-rings",
    title="mpmath 1.4.1, arcs by quadrature and root finding",
    kind="library",
    note="Lengths of arcs measured along, the angle of one spacing found by iteration; "
    "independent of this project.",
)
CHECK_SOURCES = (ARC_PACK, MPMATH)


def _closing(
    radius: float, degrees: float, depth: float, kerf: float, count: str, spacing: str
) -> Check:
    """Kerfs counted from the line that keeps its length: here the middle of a web of 0.4 mm."""
    side = radius + 0.2
    return Check(
        inputs={
            "lining_width": depth + 0.2, "web": 0.4, "kerf_width": kerf,
            "places": [["arc", side, math.radians(degrees) * side]],
        },
        source="mpmath-kerfs", origin="library",
        where=f"R = {radius} mm, {degrees}°, depth {depth} mm, kerf {kerf} mm, counted from the "
        "middle of the web",
        expected={"close_spacing": spacing, "curves[arc].to_close": count},
    )  # fmt: skip


def _sagitta(radius: float, chord: float, height: str) -> Check:
    return Check(
        function=sagitta_mm, given={"radius_mm": radius, "chord_mm": chord}, unit="mm",
        source="mpmath-kerfs", origin="library",
        where=f"sagitta, radius {radius} mm, chord {chord} mm", expected={"": height},
    )  # fmt: skip


def _element(percent: str, where: str, **given: float) -> Check:
    return Check(
        inputs={**given, "places": [["arc", 105, 100]]}, source="scipy-elements",
        origin="library", where=f"face of the web at 105 mm: {where}",
        expected={"stretch": percent}, within="6 %",
        because="one share of the web stands for all shapes; the elements give 2.4 to 2.6",
    )  # fmt: skip


CHECKS = (
    _closing(50, 90, 6, 0.8, "11.780972", "6.666667"),
    _closing(60, 180, 2, 0.6, "10.471976", "18.000000"),
    _closing(120, 60, 10, 1.6, "6.544985", "19.200000"),
    _sagitta(254, 380, "85.42953995"),
    _sagitta(304.8, 50, "1.02699264"),
    _sagitta(406.4, 100, "3.08751569"),
    Check(
        inputs={"places": [["bout", 115, 220]], "waist_radius": 115}, source="mpmath-rings",
        origin="library", where="6.5 mm lining, web 0.7 mm, kerfs 0.6 mm every 6 mm, 115 mm",
        expected={
            "mouth": "0.278150894025", "turn": "2.998470799", "closes_radius": "61.850",
            "sag": "0.031700021267", "waist_sag": "0.031691285489",
            "curves[bout].open": "0.278150894025", "curves[bout].behind": "0.031700021267",
        },
    ),
    Check(
        inputs={
            "lining_width": 4.5, "web": 0.5, "kerf_spacing": 4, "waist_radius": 62,
            "places": [["bout", 62, 100]],
        },
        source="mpmath-rings", origin="library",
        where="4.5 mm lining, web 0.5 mm, kerfs 0.6 mm every 4 mm, 62 mm",
        expected={
            "mouth": "0.324696356275", "turn": "3.711467499", "sag": "0.023310833830",
            "waist_sag": "0.023302072689", "closes_radius": "28.583333333",
        },
    ),
    Check(
        inputs={"kerf_spacing": 3}, source="mpmath-rings", origin="library",
        where="flat of a tooth that leaves 0.05 mm at 45 mm, by root finding; and one kerf more",
        expected={"sag_spacing": "4.841462012"},
    ),
    _element("0.8358", "web 0.7, kerf 0.6, spacing 6 mm"),
    _element("0.6940", "web 0.4, kerf 0.6, spacing 6 mm", web=0.4),
    _element("0.9439", "web 1.0, kerf 0.6, spacing 6 mm", web=1.0),
    _element("0.6751", "web 0.7, kerf 1.2, spacing 6 mm", kerf_width=1.2),
    _element("0.5144", "web 0.5, kerf 0.6, spacing 4 mm, lining 4.5 mm", web=0.5, kerf_spacing=4,
             lining_width=4.5),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="just-close",
        situation="A lining {lining_width} wide has webs of {web} and kerfs of {kerf_width}. The "
        "side's radius at the upper bout is 115 mm (4.53 in) inside. At what spacing do the kerfs "
        "just close there?",
        asks="close_spacing",
        within="2 %",
        draw={"kerf_width": (0.4, 0.9, 0.01), "lining_width": (5, 8, 0.1), "web": (0.5, 0.9, 0.05)},
        fixed={"places": [["upper bout", 115, 220]]},
        slips=(
            Slip(
                name="diameter-for-radius",
                formula="2 * kerf_width * bend_radius / mouth_depth",
                why="You put in the diameter: a kerf as wide as it is deep would turn one radius, "
                "not one diameter.",
            ),
            Slip(
                name="web-for-depth",
                formula="kerf_width * bend_radius / web",
                why="The mouth lies the whole depth away from the web: divide by the depth, not by "
                "the web.",
            ),
            Slip(
                name="upside-down",
                formula="mouth_depth * bend_radius / kerf_width",
                why="Turned over: a wider kerf lets you space them wider, a deeper one closer.",
            ),
        ),
    ),
    Exercise(
        name="where-they-close",
        situation="You have a strip {lining_width} wide, sawn every {kerf_spacing}, webs {web}, "
        "kerfs {kerf_width}. What is the tightest radius of the side it can go round before the "
        "kerfs close?",
        asks="closes_radius",
        within="3 %",
        draw={
            "lining_width": (5, 8, 0.1),
            "kerf_spacing": (4, 8, 0.1),
            "web": (0.5, 0.9, 0.05),
            "kerf_width": (0.5, 0.8, 0.01),
        },
        fixed={"places": [["upper bout", 200, 220]]},
        slips=(
            Slip(
                name="tooth-for-spacing",
                formula="flat * mouth_depth / kerf_width + web / 2",
                why="You took the flat of the tooth. From kerf to kerf it is tooth and kerf.",
            ),
            Slip(
                name="half",
                formula="kerf_spacing * mouth_depth / (2 * kerf_width)",
                why="Each kerf closes from both sides, but its whole width is used up: no half.",
            ),
        ),
    ),
    Exercise(
        name="gap-behind-a-tooth",
        situation="Kerfs of {kerf_width} every {kerf_spacing}: each tooth is flat. At the waist, "
        "where the side bulges into the box, it has a radius of {waist_radius} inside. How far do "
        "the ends of a tooth stand off while its middle touches?",
        asks="waist_sag",
        within="5 %",
        draw={
            "kerf_width": (0.5, 0.9, 0.02),
            "kerf_spacing": (5, 9.5, 0.1),
            "waist_radius": (80, 140, 1),
        },
        slips=(
            Slip(
                name="whole-flat",
                formula="flat ** 2 / (2 * waist_radius)",
                why="You took the whole flat; the rule wants half of it, squared, over twice the "
                "radius.",
            ),
            Slip(
                name="one-radius",
                formula="(flat / 2) ** 2 / waist_radius",
                why="The square of half the flat is divided by twice the radius, not by once.",
            ),
            Slip(
                name="spacing-for-flat",
                formula="kerf_spacing ** 2 / (8 * waist_radius)",
                why="The kerf is no wood: take it off the spacing to get the flat.",
            ),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="does-it-go-round",
        situation="A lining {lining_width} wide, kerfs of {kerf_width} sawn every {kerf_spacing}, "
        "webs of {web}, is to go round a horn whose side has a radius of 60 mm (2.36 in) inside. A "
        "web of this wood takes {web_stretch} of stretch. Look at kerfs and webs alone: what do you "
        "do?",
        options=(
            Option(
                words="Bend it in as it is sawn",
                holds="mouth >= 0.03 and stretch <= 0.93 * web_stretch",
                why="The kerfs close at a radius of {closes_radius}, and the web stretches "
                "{stretch} where it takes {web_stretch}.",
            ),
            Option(
                words="Saw it closer: the kerfs close before it is round",
                holds="mouth <= -0.03 and stretch <= 0.93 * web_stretch",
                why="They close only at a radius of {closes_radius}; the side has 60 mm (2.36 in).",
            ),
            Option(
                words="Saw the kerfs deeper, so that the webs are thinner: as they are, they break",
                holds="mouth >= 0.03 and stretch >= 1.07 * web_stretch",
                why="The web stretches {stretch}, and it takes {web_stretch}.",
            ),
        ),
        because="The kerfs close at a radius of {closes_radius}, the side has 60 mm (2.36 in); the "
        "web stretches {stretch} where it takes {web_stretch}.",
        draw={
            "lining_width": (5, 8, 0.1), "web": (0.4, 1.6, 0.05), "kerf_width": (0.4, 1.1, 0.05),
            "kerf_spacing": (5, 9, 0.1), "web_stretch": (1.4, 2.2, 0.1),
        },
        fixed={"places": [["horn", 60, 70]]},
    ),
)  # fmt: skip
