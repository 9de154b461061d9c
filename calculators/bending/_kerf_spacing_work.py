"""The steps of the kerf-spacing calculation, for the tightest curve; the table does the rest."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work

HINGE_SHARE = 2.5

CONSTANTS = (
    Constant(name="whole", label="The whole", symbol="100 %", unit="%", decimals=0, value=100,
             source="plane-geometry"),
    Constant(name="deg_per_rad", label="Degrees in a radian", unit="deg", decimals=4,
             value=180 / math.pi, source="plane-geometry"),
    Constant(name="hinge_share", label="Webs of tooth that bend with the web", symbol="c",
             unit="1", decimals=1, value=HINGE_SHARE, source="scipy-elements"),
)  # fmt: skip


def tightest(places: Sequence[Mapping[str, Any]]) -> Mapping[str, Any]:
    """The curve of the smallest radius, mm; of two alike, the first. Tightest is hardest."""
    place = min(places, key=lambda place: place["radius"])
    return {"tight_place": place["place"], "tight_radius": place["radius"]}


def web_stretch_percent(web: float, kerf_width: float, kerf_spacing: float, radius: float) -> float:
    """Stretch, %, of a web's face; lengths in mm, ``radius`` of the side's inner face in a bout.

    The turn of one kerf, spacing over the radius of the web's middle, is shared by a hinge as
    long as the kerf is wide and ``HINGE_SHARE`` webs longer, never longer than the spacing. The
    share comes from finite elements of a mahogany tooth (source "scipy-elements").
    """
    hinge = min(kerf_width + HINGE_SHARE * web, kerf_spacing)
    return 100 * web * kerf_spacing / (2 * hinge * (radius - web / 2))


def web_for_stretch(
    web_stretch: float, kerf_width: float, kerf_spacing: float, tight_radius: float, web: float
) -> float:
    """The web, mm, that is stretched by just ``web_stretch`` per cent at the tightest curve.

    Bisection between nought and the present ``web``, which stretches further: a thicker web
    always stretches more.
    """
    low, high = 0.0, web
    for _ in range(50):
        middle = (low + high) / 2
        if web_stretch_percent(middle, kerf_width, kerf_spacing, tight_radius) > web_stretch:
            high = middle
        else:
            low = middle
    return low


_limits: tuple[Work, ...] = (
    Solved(
        name="hardest", label="The tightest curve", function=tightest,
        gives=(
            Given(name="tight_place", label="Tightest curve", unit="1", decimals=0, text=True),
            Given(name="tight_radius", label="Radius of the side there", symbol="R", unit="mm",
                  decimals=1),
        ),
        method="Of the curves where kerfs close, the one of the smallest radius is worked out "
        "below; all of them stand in the table.",
        source="plane-geometry",
    ),
    Limit(
        holds="web <= 0.7 * lining_width", blames="web", source="common-practice",
        otherwise="A web of {web} in a lining of {lining_width} leaves hardly a kerf; saw deeper "
        "or leave the lining solid",
        allowed="at most 70 % of the lining's width",
    ),
    Limit(
        holds="kerf_spacing >= kerf_width + 0.5", blames="kerf_spacing", source="common-practice",
        otherwise="With kerfs {kerf_width} wide every {kerf_spacing} no tooth is left",
        allowed="at least half a millimetre more than the kerf is wide",
    ),
    Limit(
        holds="mouth_left < kerf_width", blames="mouth_left", source="plane-geometry",
        otherwise="A kerf {kerf_width} wide cannot stay open by {mouth_left} where it closes",
        allowed="less than the width of a kerf, {kerf_width}",
    ),
    Limit(
        holds="tight_radius >= 1.5 * lining_width and tight_radius >= kerf_spacing",
        blames="places", source="common-practice",
        otherwise="'{tight_place}' is too tight for this lining altogether: its radius is "
        "{tight_radius}; glue single blocks in there",
        allowed="a radius of at least one and a half linings, and one spacing",
    ),
)  # fmt: skip

_closing: tuple[Work, ...] = (
    Step(
        name="kerf_depth", label="Depth to saw", symbol="h", unit="mm", decimals=2,
        formula="lining_width - web", source="plane-geometry",
    ),
    Step(
        name="mouth_depth", label="From the middle of the web to the mouth", symbol="D",
        unit="mm", decimals=3, formula="lining_width - web / 2", source="wedge-geometry",
    ),
    Step(
        name="bend_radius", label="Radius of the middle of the web", symbol="R_n", unit="mm",
        decimals=2, formula="tight_radius - web / 2", source="wedge-geometry",
    ),
    Step(
        name="turn", label="Turn of one kerf", symbol="φ", unit="deg", decimals=2,
        formula="kerf_spacing / bend_radius * deg_per_rad", source="wedge-geometry",
    ),
    Step(
        name="mouth", label="Kerf left open at its mouth", symbol="m", unit="mm", decimals=2,
        formula="kerf_width - kerf_spacing * mouth_depth / bend_radius", source="wedge-geometry",
    ),
    Step(
        name="closes_radius", label="Kerfs close at a radius of", symbol="R_c", unit="mm",
        decimals=1, formula="kerf_spacing * mouth_depth / kerf_width + web / 2",
        source="wedge-geometry",
    ),
    Step(
        name="close_spacing", label="Spacing at which the kerfs just close so far",
        symbol="p_c", unit="mm", decimals=2, source="wedge-geometry",
        formula="(kerf_width - mouth_left) * bend_radius / mouth_depth",
    ),
)  # fmt: skip

_facets: tuple[Work, ...] = (
    Step(
        name="flat", label="Flat of a tooth", symbol="L", unit="mm", decimals=2,
        formula="kerf_spacing - kerf_width", source="plane-geometry",
    ),
    Step(
        name="sag", label="Gap behind the middle of a tooth", symbol="s", unit="mm", decimals=3,
        formula="tight_radius - sqrt(tight_radius ** 2 - (flat / 2) ** 2)",
        source="plane-geometry",
    ),
    Step(
        name="sag_spacing", label="Spacing at which that gap is just what is allowed",
        symbol="p_s", unit="mm", decimals=2, source="plane-geometry",
        formula="kerf_width + 2 * sqrt(2 * tight_radius * gap_allowed - gap_allowed ** 2)",
    ),
)  # fmt: skip

_web: tuple[Work, ...] = (
    Step(
        name="hinge", label="Length that bends at one kerf", symbol="ℓ", unit="mm", decimals=2,
        formula="min(kerf_width + hinge_share * web, kerf_spacing)", source="scipy-elements",
    ),
    Step(
        name="stretch", label="Stretch of the web", symbol="ε", unit="%", decimals=2,
        formula="web * kerf_spacing / (2 * hinge * bend_radius) * whole", source="bent-strip",
    ),
    Step(
        name="even_stretch", label="The same if the whole strip were as thin as the web",
        symbol="ε_0", unit="%", decimals=2, formula="web / (2 * bend_radius) * whole",
        source="bent-strip",
    ),
    Step(
        name="web_spacing", label="Spacing at which the web just holds", symbol="p_b", unit="mm",
        decimals=2, source="bent-strip",
        formula="2 * web_stretch / whole * (kerf_width + hinge_share * web) * bend_radius / web",
    ),
    Solved(
        name="thinner", label="Web that would just hold", function=web_for_stretch,
        only_if="stretch > web_stretch",
        gives=(Given(name="web_may_be", label="Thin the web to", symbol="b_m", unit="mm",
                     decimals=2),),
        method="Bisection between nought and the present web: a thicker web always stretches more.",
        source="bent-strip",
    ),
    Step(
        name="widest", label="Widest spacing that does all three", symbol="p_m", unit="mm",
        decimals=2, formula="min(close_spacing, sag_spacing, web_spacing)",
        source="wedge-geometry",
    ),
)  # fmt: skip

_waist: tuple[Work, ...] = (
    Step(
        name="waist_mouth", label="Kerf open at its mouth at the waist", symbol="m_w", unit="mm",
        decimals=2, source="wedge-geometry",
        formula="kerf_width + kerf_spacing * mouth_depth / (waist_radius + web / 2)",
    ),
    Step(
        name="waist_stretch", label="Stretch of the web at the waist", symbol="ε_w", unit="%",
        decimals=2, source="bent-strip",
        formula="web * kerf_spacing / (2 * hinge * (waist_radius + web / 2)) * whole",
    ),
    Step(
        name="waist_sag", label="Gap behind the ends of a tooth at the waist", symbol="s_w",
        unit="mm", decimals=3, source="plane-geometry",
        formula="hypot(waist_radius, flat / 2) - waist_radius",
    ),
)  # fmt: skip

_said: tuple[Work, ...] = (
    Said(
        name="verdict", label="The tightest curve",
        cases=(
            ("even_stretch > 1.005 * web_stretch",
             "No spacing helps at {tight_place}: even without kerfs a web of {web} would stretch "
             "{even_stretch} there, and it takes {web_stretch}. Thin it to {web_may_be}."),
            ("widest < kerf_width + 0.8",
             "No spacing does it at {tight_place}: hardly a tooth would be left at {widest}. Take "
             "a wider saw, a narrower lining, or glue single blocks in."),
            ("mouth < mouth_left - 0.0005 and mouth >= 0",
             "Too wide at {tight_place}: the kerfs stay open only {mouth}. Saw every {widest} "
             "there."),
            ("mouth < mouth_left - 0.0005",
             "Too wide at {tight_place}: the kerfs close at {closes_radius} and the side has "
             "{tight_radius}. Saw every {widest} there."),
            ("stretch > 1.005 * web_stretch",
             "The web breaks at {tight_place}: it would stretch {stretch} and takes {web_stretch}. "
             "Saw every {widest} there, or thin the web to {web_may_be}."),
            ("sag > gap_allowed + 0.0005",
             "Teeth too long at {tight_place}: {sag} behind their middles, {gap_allowed} allowed. "
             "Saw every {widest} there."),
            ("",
             "Goes round {tight_place}: kerfs stay open {mouth}, {sag} behind a tooth, the web "
             "stretches {stretch}. Spacing may be up to {widest}."),
        ),
    ),
    Said(
        name="waist_words", label="At the waist",
        cases=(
            ("waist_stretch > 1.005 * web_stretch",
             "The web breaks: it would stretch {waist_stretch} and takes {web_stretch}. Damp and "
             "warm it, thin it, or saw closer."),
            ("waist_sag > gap_allowed + 0.0005",
             "Teeth too long: {waist_sag} behind their ends, {gap_allowed} allowed. Saw closer."),
            ("waist_stretch > 0.75 * web_stretch",
             "Just goes: kerfs open to {waist_mouth}, the web stretches {waist_stretch} of "
             "{web_stretch}. Damp it there."),
            ("", "Goes: kerfs open to {waist_mouth}, the web stretches {waist_stretch} of "
             "{web_stretch}."),
        ),
    ),
)  # fmt: skip

WORK: tuple[Work, ...] = (*_limits, *_closing, *_facets, *_web, *_waist, *_said)
