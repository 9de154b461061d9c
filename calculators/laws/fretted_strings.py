"""A string pressed to a fret: what stretch and stiffness do to its pitch.

Places in mm along the string from the front of the nut, heights in mm over the fret plane (the
straight line over the crowns of the first fret and of those past the body joint), pulls in N,
frequencies in Hz.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from ..engine.declaration import Source
from .strings import bending_length_mm, tension_n

VARIESCHI_GOWER = Source(
    id="varieschi-gower",
    title="Intonation and compensation of fretted string instruments (stretch of the pressed string, "
    "stiffness, set-back at saddle and nut)",
    author="Varieschi, G. U., and Gower, C. M., American Journal of Physics 78, 47",
    year="2010",
    note="Its abstract was read; method and page from memory. Their finger sits at a measured place; "
    "here it presses with a force.",
)
MORSE = Source(
    id="morse-stiff-string",
    title="Vibration and Sound: f = √(T/µ)/(2L)·[1 + 2δ/L + (4 + π²/2)·δ²/L²], δ = √(EI/T), for a "
    "stiff string held rigidly at both ends",
    author="Morse, P. M.",
    year="1936",
    note="From memory, as in Fletcher & Rossing. Checked by solving the equation of the stiff string "
    "with scipy, for the three kinds of end.",
)

# How much of the bending length each end takes off the string: see stiff_pitch_hz.
ENDS = {"hinged": 0.0, "over": 0.5, "clamped": 1.0}


class Wire(NamedTuple):
    """A string: its pitch open, mass in g/m, the diameter in mm and modulus in GPa of its core."""

    frequency_hz: float
    mass_g_m: float
    core_mm: float
    modulus_gpa: float


class Neck(NamedTuple):
    """Places and crowns of the frets, the nut first (place 0); height of a fret over the board."""

    scale_mm: float
    places_mm: Sequence[float]
    crowns_mm: Sequence[float]
    fret_height_mm: float


class Lie(NamedTuple):
    """The open string's line: its height over the fret plane at place 0, and how it climbs."""

    nut_height_mm: float
    slope: float


class Touch(NamedTuple):
    """How strings are pressed and held: finger force in N, share of ``ENDS``."""

    force_n: float
    ends: float


def fret_place_mm(fret: int, scale_mm: float) -> float:
    """Distance of a fret from the nut: S·(1 - 2^(-n/12))."""
    return scale_mm * (1 - math.exp2(-fret / 12))


def crown_mm(place_mm: float, first_mm: float, joint_mm: float, relief_mm: float) -> float:
    """Height of a crown on a neck with relief: a parabola that dips between first fret and joint."""
    if not first_mm < place_mm < joint_mm:
        return 0.0
    share = (place_mm - first_mm) / (joint_mm - first_mm)
    return -4 * relief_mm * share * (1 - share)


def stiff_pitch_hz(
    length_mm: float, pull_n: float, mass_g_m: float, bend_mm: float, ends: float
) -> float:
    """Lowest pitch of a stiff string, to the second order in δ/L.

    f = √(T/µ)/(2·(L - 2eδ))·√(1 + π²δ²/L²), δ = √(EI/T) the bending length. Hinged ends, e = 0,
    give Fletcher's √(1 + B); clamped ends, e = 1, give Morse's series. A string that runs on over
    a crest under the same pull resists there with a moment of √(EI·T) times its slope, and then
    e = 1/2 (derived: near the end y = x - u + u·exp(-x/δ), and EI·y'' = √(EI·T)·y' at x = 0 gives
    u = δ/2). Holds for δ below a tenth of L.
    """
    flexible = math.sqrt(pull_n * 1000 / mass_g_m) / (2 * (length_mm - 2 * ends * bend_mm) / 1000)
    return flexible * math.sqrt(1 + (math.pi * bend_mm / length_mm) ** 2)


def in_tune_pull_n(wire: Wire, length_mm: float, ends: float) -> float:
    """The pull that brings the open, stiff string to its pitch: ``stiff_pitch_hz`` turned round.

    Starts from Mersenne's pull and puts the bending length of the last pull in, until it stands.
    """
    pull = mersenne = tension_n(length_mm, wire.frequency_hz, wire.mass_g_m)
    for _ in range(40):
        bend = bending_length_mm(wire.modulus_gpa, wire.core_mm, pull)
        before, pull = (
            pull,
            mersenne
            * ((length_mm - 2 * ends * bend) / length_mm) ** 2
            / (1 + (math.pi * bend / length_mm) ** 2),
        )
        if abs(pull - before) <= 1e-13 * pull:
            break
    return pull


def pressed_length_mm(
    fret: int, neck: Neck, lie: Lie, nut_mm: float, saddle_mm: float, force_n: float, pull_n: float
) -> float:
    """Length of the string from nut to saddle when a finger presses it to a fret.

    The finger presses midway between the fret and the one before (or the nut) until the string,
    kinked, pushes back: force = pull times the kink, to the first order, and no deeper than the
    board. The string runs from the nut, over the first crown and the crown before where it
    touches them (between them a hollow neck has none that it could touch), down to the finger, up
    to the crown, and on to the saddle: straight pieces, exact lengths.
    """
    places, crowns = neck.places_mm, neck.crowns_mm
    place, crown = places[fret], crowns[fret]
    nut = nut_mm, lie.nut_height_mm + lie.slope * nut_mm
    saddle_y = lie.nut_height_mm + lie.slope * saddle_mm
    rests = [nut]
    if fret > 2:
        rests.append((places[1], crowns[1]))
    if fret > 1:
        rests.append((places[fret - 1], crowns[fret - 1]))
    near = (place - rests[-1][0]) / 2
    finger = place - near
    y = (crown + crowns[fret - 1]) / 2 - neck.fret_height_mm  # the board
    for x, height in rests:
        back = finger - x
        y = max(y, (height * near + (crown - force_n / pull_n * near) * back) / (back + near))
    # Behind the finger: from each rest on to the one that stands highest as seen from there.
    x, height = finger, y
    length = math.hypot(near, crown - y) + math.hypot(saddle_mm - place, saddle_y - crown)
    while x > nut_mm:
        steepest, rest = -math.inf, nut
        for one in rests:
            if one[0] < x and (rise := (one[1] - height) / (x - one[0])) > steepest:
                steepest, rest = rise, one
        length += math.hypot(x - rest[0], height - rest[1])
        x, height = rest
    return length


def stretched_pull_n(wire: Wire, pull_n: float, opened_mm: float, pressed_mm: float) -> float:
    """Pull of a string drawn from one length to another: T + (E·A + T)·ΔL/L.

    Hooke's law from the length the string has slack, L/(1 + T/(E·A)).
    """
    area_mm2 = math.pi * wire.core_mm**2 / 4
    spring = (wire.modulus_gpa * 1000 * area_mm2 + pull_n) / opened_mm
    return pull_n + spring * (pressed_mm - opened_mm)


def errors_cents(
    wire: Wire, neck: Neck, lie: Lie, touch: Touch, set_back_mm: float, nut_forward_mm: float,
    frets: Sequence[int],
) -> list[float]:  # fmt: skip
    """How far each fret of ``frets`` sounds above its equal semitone, the open string in tune.

    The saddle stands ``set_back_mm`` behind the scale, the nut ``nut_forward_mm`` towards it.
    Pressing stretches the whole string from nut to saddle (``stretched_pull_n``), and the mass a
    length falls by as much as it grows longer.
    """
    saddle = neck.scale_mm + set_back_mm
    length = saddle - nut_forward_mm
    pull = in_tune_pull_n(wire, length, touch.ends)
    opened = length * math.hypot(1, lie.slope)
    found = []
    for fret in frets:
        pressed = pressed_length_mm(
            fret, neck, lie, nut_forward_mm, saddle, touch.force_n, pull
        )  # fmt: skip
        tight = stretched_pull_n(wire, pull, opened, pressed)
        bend = bending_length_mm(wire.modulus_gpa, wire.core_mm, tight)
        hertz = stiff_pitch_hz(
            saddle - neck.places_mm[fret], tight, wire.mass_g_m * opened / pressed, bend, touch.ends
        )  # fmt: skip
        found.append(1200 * math.log2(hertz / wire.frequency_hz) - 100 * fret)
    return found


FARTHEST_SADDLE = 0.1  # of the scale: what is sought beyond is no set-back
FARTHEST_NUT = 0.5  # of the first fret's place


def _within(neck: Neck, saddle_mm: float, nut_mm: float) -> None:
    if (
        abs(saddle_mm) > FARTHEST_SADDLE * neck.scale_mm
        or abs(nut_mm) > FARTHEST_NUT * neck.places_mm[1]
    ):
        raise ValueError("no set-back within reason makes this string true")


def set_back_for_fret_mm(wire: Wire, neck: Neck, lie: Lie, touch: Touch, fret: int) -> float:
    """The set-back at which one fret sounds true: secant steps from the plain string's rule.

    ValueError where it would be more than a tenth of the scale.
    """
    old, off = 0.0, errors_cents(wire, neck, lie, touch, 0.0, 0.0, (fret,))[0]
    new = off * neck.scale_mm * math.log(2) / 1200
    for _ in range(30):
        _within(neck, new, 0.0)
        if abs(new - old) < 1e-10:
            break
        now = errors_cents(wire, neck, lie, touch, new, 0.0, (fret,))[0]
        if now == off:
            break
        old, new, off = new, new - now * (new - old) / (now - off), now
    return new


def set_back_for_all_mm(
    wire: Wire, neck: Neck, lie: Lie, touch: Touch, frets: Sequence[int], with_nut: bool
) -> tuple[float, float]:
    """Set-back and move of the nut for the least sum of squared errors over ``frets``.

    Gauss and Newton's steps with slopes from differences, taken afresh for the first two of
    them; without the nut, its move stays 0. ValueError where the saddle would go more than a
    tenth of the scale, or the nut more than halfway to the first fret.
    """
    step = 0.05
    saddle, nut = 0.0, 0.0
    by_saddle: list[float] = []
    by_nut: list[float] = []
    for turn in range(20):
        here = errors_cents(wire, neck, lie, touch, saddle, nut, frets)
        if turn < 2:
            there = errors_cents(wire, neck, lie, touch, saddle + step, nut, frets)
            by_saddle = [(b - a) / step for a, b in zip(here, there, strict=True)]
            if with_nut:
                there = errors_cents(wire, neck, lie, touch, saddle, nut + step, frets)
                by_nut = [(b - a) / step for a, b in zip(here, there, strict=True)]
        ss, s_off = math.sumprod(by_saddle, by_saddle), math.sumprod(by_saddle, here)
        if with_nut:
            nn, sn = math.sumprod(by_nut, by_nut), math.sumprod(by_saddle, by_nut)
            n_off, whole = math.sumprod(by_nut, here), ss * nn - sn * sn
            move = -(s_off * nn - n_off * sn) / whole, -(n_off * ss - s_off * sn) / whole
        else:
            move = -s_off / ss, 0.0
        saddle, nut = saddle + move[0], nut + move[1]
        _within(neck, saddle, nut)
        if turn > 0 and max(abs(move[0]), abs(move[1])) < 1e-5:
            break
    return saddle, nut
