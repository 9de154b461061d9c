"""The parts of the thinning calculation that need more than a formula."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..laws.flow_cups import CUPS, seconds_for, steepness, viscosity_mm2_s
from ..laws.liquid_viscosity import at_temperature_mm2_s, warming_constant_k

MOST_THINNER = 400.0  # to 100 of lacquer; beyond it there is no lacquer to speak of
Points = Sequence[tuple[float, float]]  # share of thinner in the mix, logarithm of the viscosity


def read_viscosity(cup: str, seconds: float, name: str, what: str) -> float:
    """Viscosity, mm²/s, of a reading, or the reason why this cup cannot tell it."""
    viscosity = viscosity_mm2_s(cup, seconds)
    if viscosity > 0:
        return viscosity
    given = CUPS[cup]
    raise Refusal(
        name,
        f"{what}, {seconds:g} s, is shorter than a {given.words} cup can tell; take a cup with a "
        "smaller hole, or look over which cup it was",
        f"{given.shortest_s:g} to {given.longest_s:g} s with this cup",
    )


def wanted_viscosity(cup: str, wanted_seconds: float) -> Mapping[str, Any]:
    """Viscosity wanted, mm²/s, and the seconds that the cup is meant for."""
    given = CUPS[cup]
    return {
        "viscosity_wanted": read_viscosity(cup, wanted_seconds, "wanted_seconds",
                                           "The time wanted"),
        "cup_shortest": given.shortest_s,
        "cup_longest": given.longest_s,
    }  # fmt: skip


def trial_points(trials: Sequence[Mapping[str, float]], cup: str) -> Points:
    """The trials as (share of thinner in the mix, ln of the viscosity in mm²/s), in order."""
    rows = sorted((row["trial_thinner"], row["trial_seconds"]) for row in trials)
    points = [
        (thinner / (100 + thinner),
         math.log(read_viscosity(cup, seconds, "trials", f"The trial with {thinner:g} %")))
        for thinner, seconds in rows
    ]  # fmt: skip
    for (thinner, _), (more, _), one, two in zip(rows, rows[1:], points, points[1:], strict=False):
        if more - thinner < 0.5:
            raise Refusal(
                "trials",
                f"Two trials have {thinner:g} % and {more:g} % of thinner, which tells nothing; "
                "keep one of them",
                "trials at least 0.5 % of thinner apart",
            )
        if not two[1] < one[1]:
            raise Refusal(
                "trials",
                f"With {more:g} % of thinner the lacquer ran no faster than with {thinner:g} %; "
                "stir well and repeat the two trials",
                "fewer seconds with more thinner",
            )
    return points


def stretch(points: Points, height: float) -> tuple[float, float]:
    """Share of thinner at which the line through the trials has this ln ν, and its slope there.

    Straight between neighbouring trials, and on from the last two at either end.
    """
    place = 1
    while place < len(points) - 1 and points[place][1] > height:
        place += 1
    (x1, y1), (x2, y2) = points[place - 1], points[place]
    slope = (y2 - y1) / (x2 - x1)
    return x1 + (height - y1) / slope, slope


def thinner_wanted(
    trials: Sequence[Mapping[str, float]], cup: str, wanted_seconds: float,
    viscosity_wanted: float, cup_uncertainty: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Thinner to 100 of lacquer, %, that makes it run in the seconds wanted.

    The logarithm of the viscosity is taken as straight in the share of thinner by volume between
    the two trials on either side, or beyond the last two (logarithmic mixing, ``laws.
    liquid_viscosity``). ``thinner_doubt``, %, is what the cup's uncertainty, s, makes of it to
    either side: ds · (dν/dt)/ν over the slope, carried from share of the mix to parts of 100.
    """
    points = trial_points(trials, cup)
    share, slope = stretch(points, math.log(viscosity_wanted))
    least = min(row["trial_seconds"] for row in trials)
    most = max(row["trial_seconds"] for row in trials)
    if share < -1e-9:
        raise Refusal(
            "wanted_seconds",
            f"Without any thinner this lacquer would already run faster than {wanted_seconds:g} "
            "s; want fewer seconds, or take a thicker lacquer",
            "fewer seconds than the lacquer has from the tin",
        )
    share = max(share, 0.0)
    if not share <= MOST_THINNER / (100 + MOST_THINNER):
        raise Refusal(
            "wanted_seconds",
            f"More than {MOST_THINNER:g} % of thinner would be needed for {wanted_seconds:g} s, "
            "by these trials; want more seconds, or make trials nearer to it",
            f"a time near those of the trials, {least:g} to {most:g} s",
        )
    doubt = cup_uncertainty * steepness(cup, wanted_seconds) / viscosity_wanted / abs(slope)
    return {
        "thinner_needed": 100 * share / (1 - share),
        "log_slope": slope,
        "thinner_doubt": 100 * doubt / (1 - share) ** 2,
        "fewest_seconds": least,
        "longest_seconds": most,
    }


def pour(pot_volume: float, thinner_in_pot: float, thinner_needed: float) -> Mapping[str, float]:
    """Millilitres of thinner, or of lacquer where it is too thin already, to add to the pot.

    ``pot_volume`` in mL, thinner in % of the lacquer's volume. Volumes are taken to add up.
    """
    lacquer = pot_volume / (1 + thinner_in_pot / 100)
    thinner = pot_volume - lacquer
    to_add = lacquer * thinner_needed / 100 - thinner
    if to_add >= 0:
        return {"thinner_to_add": to_add, "lacquer_to_add": 0.0}
    if thinner_needed * 100 < thinner_in_pot:
        raise Refusal(
            "thinner_in_pot",
            "So much thinner is in the pot that it would take more than a hundred times its lacquer "
            "to bring it back; begin with fresh lacquer",
            f"at most {thinner_needed:.1f} %",
        )
    return {"thinner_to_add": 0.0, "lacquer_to_add": thinner / (thinner_needed / 100) - lacquer}


def seconds_now(
    cup: str, viscosity_wanted: float, trial_temperature: float, lacquer_temperature: float,
    cool_temperature: float, cool_seconds: float, warm_temperature: float, warm_seconds: float,
) -> Mapping[str, float]:  # fmt: skip
    """What the cup must show now, s, so that it shows the seconds wanted at the trials' warmth.

    Temperatures in °C, readings in s. From the two readings the constant B, K, of
    ln ν = a + B/T; method and source ``laws.liquid_viscosity``.
    """
    if warm_temperature - cool_temperature < 2:
        raise Refusal(
            "warm_temperature",
            "The two readings lie less than 2 °C apart, which says nothing; warm the second one",
            "at least 2 °C above the cool reading",
        )
    cool = read_viscosity(cup, cool_seconds, "cool_seconds", "The cool reading")
    warm = read_viscosity(cup, warm_seconds, "warm_seconds", "The warm reading")
    if warm >= cool:
        raise Refusal(
            "warm_seconds",
            "The warm lacquer ran no faster than the cool one; stir, wait for the bubbles and "
            "repeat both readings",
            f"fewer than {cool_seconds:g} s",
        )
    constant = warming_constant_k(cool_temperature, cool, warm_temperature, warm)
    now = at_temperature_mm2_s(viscosity_wanted, trial_temperature, constant, lacquer_temperature)
    seconds = seconds_for(cup, now)
    if seconds > 1000:
        raise Refusal(
            "lacquer_temperature",
            "At this temperature the cup would take more than a quarter of an hour; let the lacquer "
            "warm up",
            f"nearer to {trial_temperature:g} °C",
        )
    return {"warming_constant": constant, "seconds_now": seconds}
