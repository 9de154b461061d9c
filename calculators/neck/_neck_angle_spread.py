"""How far off the figures may be: measuring errors carried through to bridge, pitch and action.

A reading is right but for an error of its gauge. What is asked for depends on the errors in a
straight line as long as they are small, so each answer is its figure plus the sum of sensitivity
times error. The worst case adds up every error at its limit; the Monte Carlo draws every error
many times and reads off the middle 95 %.
"""

import math
import random
from collections.abc import Iterable
from functools import lru_cache

SOURCES = (
    "height", "arch", "board", "fret", "bridge", "proud", "offset", "nut", "saddle", "relief",
)  # fmt: skip
STANDARD_SHARE = {"limits": 1 / math.sqrt(3), "expanded": 0.5, "standard": 1.0}
WORST_SHARE = {"limits": 1.0, "expanded": 1.0, "standard": 2.0}


class Draws:
    """Drawn errors of every source with standard deviation 1: half of them, one column a source.

    Each draw stands for itself and for its mirror image, all signs turned, so that the draws lean
    to neither side, and the middle 95 % of an answer reaches as far down as up. ``reach`` says
    how far it reaches for each source alone.
    """

    def __init__(self, seed: int, draws: int, kind: str) -> None:
        source = random.Random(seed)
        edge = math.sqrt(3)

        def one() -> float:
            return source.uniform(-edge, edge) if kind == "limits" else source.gauss(0.0, 1.0)

        rows = [tuple(one() for _ in SOURCES) for _ in range((draws + 1) // 2)]
        self.columns = dict(zip(SOURCES, zip(*rows, strict=True), strict=True))
        self.reach = {name: middle_95(column) for name, column in self.columns.items()}

    def sums(self, moves: dict[str, float]) -> list[float]:
        """Every draw's sum of move times error; column by column, which is quickest here."""
        totals = [0.0] * len(next(iter(self.columns.values())))
        for name, move in moves.items():
            column = self.columns[name]
            totals = [total + move * error for total, error in zip(totals, column, strict=True)]
        return totals


def middle_95(values: Iterable[float]) -> float:
    """How far the middle 95 % of ``values`` and their mirror images reach to either side.

    The 97.5 % point of both together, straight between neighbours: the larger half of both is
    the sizes of ``values`` in order.
    """
    sizes = sorted(map(abs, values))
    place = 0.975 * (2 * len(sizes) - 1) - len(sizes)
    low = math.floor(place)
    high = min(low + 1, len(sizes) - 1)
    return sizes[low] + (place - low) * (sizes[high] - sizes[low])


@lru_cache(maxsize=4)
def drawn(seed: int, draws: int, kind: str) -> Draws:
    """The draws of a seed: even over their limits (``kind`` "limits"), or else normal.

    Kept, since the live page asks for the same ones at every change of a figure.
    """
    return Draws(seed, draws, kind)


class Errors:
    """The limits of the gauges, made ready: standard deviations, worst cases, draws."""

    def __init__(self, limits: dict[str, float], kind: str, seed: float, draws: float) -> None:
        self.limits = limits
        self.standard_share = STANDARD_SHARE[kind]
        self.worst_share = WORST_SHARE[kind]
        self.draws = drawn(int(seed), int(draws), kind)

    def around(self, figure: float, slopes: dict[str, float]) -> tuple[float, float, float]:
        """The 95 % interval about ``figure``, low and high, and the worst case either way.

        ``slopes`` says by how much the figure moves for one unit of each error.
        """
        at_limit = {name: slope * self.limits[name] for name, slope in slopes.items()}
        worst = self.worst_share * sum(map(abs, at_limit.values()))
        if len(at_limit) == 1:
            ((name, move),) = at_limit.items()
            reach = abs(move) * self.draws.reach[name]
        else:
            reach = middle_95(self.draws.sums(at_limit))
        reach *= self.standard_share
        return figure - reach, figure + reach, worst


def spread(
    error_kind: str, err_height: float, err_arch: float, err_thickness: float, err_made: float,
    seed: float, draws: float, joint_to_bridge: float, board_and_fret: float,
    straightedge_height: float, pitch: float, string_over_top: float, string_lift: float,
    nut_height: float, relief_dip: float, relief_share: float,
    height_now: float | None = None, pitch_now: float | None = None, err_proud: float = 0.0,
) -> dict[str, float]:  # fmt: skip
    """Spread of straightedge height (mm), pitch (degrees) and action at the twelfth (mm).

    For the joint as it is read now; where none is read yet, for a joint whose straightedge reads
    the wanted height. Sensitivities are those of the exact geometry at that pitch: with the arm
    L cos θ - b sin θ, height, arch and seat turn the pitch by 1/arm a millimetre, board and fret
    by -cos θ/arm; the action takes half of what the saddle gains over the fret plane.
    """
    height_mm = straightedge_height if height_now is None else height_now
    pitch_deg = pitch if pitch_now is None else pitch_now
    errors = Errors(
        {
            "height": err_height, "arch": err_arch, "proud": err_proud, "board": err_thickness,
            "fret": err_thickness, "bridge": err_thickness, "nut": err_made, "saddle": err_made,
            "relief": err_made,
        },
        error_kind, seed, draws,
    )  # fmt: skip
    sine, cosine = math.sin(math.radians(pitch_deg)), math.cos(math.radians(pitch_deg))
    degrees_a_mm = math.degrees(1 / (joint_to_bridge * cosine - board_and_fret * sine))
    saddle_mm = (string_over_top + string_lift - height_mm) / cosine
    action_mm = (nut_height + saddle_mm) / 2 + relief_dip
    half = 1 / (2 * cosine)
    figures = {
        "height": errors.around(height_mm, {"height": 1.0}),
        "pitch": errors.around(
            pitch_deg,
            {
                "height": degrees_a_mm, "arch": degrees_a_mm, "proud": -degrees_a_mm,
                "board": -degrees_a_mm * cosine, "fret": -degrees_a_mm * cosine,
            },
        ),
        "action": errors.around(
            action_mm,
            {
                "height": -half, "bridge": half, "saddle": half, "nut": 0.5,
                "relief": relief_share,
            },
        ),
    }  # fmt: skip
    return {
        f"{name}_{what}": value
        for name, found in figures.items()
        for what, value in zip(("low", "high", "worst"), found, strict=True)
    }


def cut_spread(
    error_kind: str, err_height: float, err_arch: float, err_thickness: float, err_proud: float,
    err_offset: float, seed: float, draws: float, joint_to_bridge: float, board_and_fret: float,
    saddle_over_frets: float, pitch: float, pitch_now: float, heel_length: float,
    shoulder_width: float, heel_cut: float, side_cut: float, proud_now: float,
) -> dict[str, float]:  # fmt: skip
    """The 95 % interval of what comes off the heel end, off one side, and of the seat, in mm.

    Errors that wanted and present pitch share (arch, board, fret) nearly cancel. Where an
    interval holds nothing at all, the reading cannot tell the joint from a right one.
    """
    errors = Errors(
        {
            "height": err_height, "arch": err_arch, "board": err_thickness,
            "fret": err_thickness, "bridge": err_thickness, "proud": err_proud,
            "offset": err_offset,
        },
        error_kind, seed, draws,
    )  # fmt: skip

    def turn_a_mm(pitch_deg: float, above_rim_mm: float) -> tuple[float, float]:
        """Radians a millimetre: of height over the rim plane, and of board thickness."""
        sine, cosine = math.sin(math.radians(pitch_deg)), math.cos(math.radians(pitch_deg))
        arm_mm = joint_to_bridge * cosine - above_rim_mm * sine
        return 1 / arm_mm, -cosine / arm_mm

    wanted, wanted_board = turn_a_mm(pitch, board_and_fret + saddle_over_frets)
    now, now_board = turn_a_mm(pitch_now, board_and_fret)
    lever_mm = heel_length / math.cos(math.radians(pitch - pitch_now)) ** 2
    board = lever_mm * (wanted_board - now_board)
    heel_low, heel_high, _ = errors.around(
        heel_cut,
        {
            "height": -lever_mm * now, "arch": lever_mm * (wanted - now), "board": board,
            "fret": board, "bridge": lever_mm * wanted, "proud": lever_mm * now,
        },
    )  # fmt: skip
    side_low, side_high, _ = errors.around(side_cut, {"offset": shoulder_width / joint_to_bridge})
    seat_low, seat_high, _ = errors.around(proud_now, {"proud": 1.0})
    return {
        "heel_low": heel_low, "heel_high": heel_high, "side_low": side_low,
        "side_high": side_high, "seat_low": seat_low, "seat_high": seat_high,
    }  # fmt: skip
