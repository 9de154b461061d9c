"""The parts of the budget that need more than a formula; all lengths in mm."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..engine.judging import acceptance_zone, chance_in, decide, is_coarse
from ..laws.few_readings import mean_and_spread
from ..laws.student_factor import normal_factor, student_t_factor
from ..laws.uncertainty_budget import DIVISORS, combined, divisor, effective_freedom

REPEATS, LISTED = "Scatter of repeats", "Gauge list, k = 2"


def add_up(contributions: Sequence[Mapping[str, Any]]) -> Mapping[str, Any]:
    """Standard uncertainty, mm, of every contribution and of all that stand in the list.

    Half-width over the shape's divisor, times how much it counts; the sum by squares.
    """
    parts = []
    for place, row in enumerate(contributions, start=1):
        by = divisor(row["shape"])
        if by is None:
            words = ", ".join(DIVISORS)
            raise Refusal(
                f"contributions[{place}].shape",
                f"'{row['shape']}' is no shape known here; take {words}",
                f"one of {words}",
            )
        parts.append({**row, "divisor": by, "part": row["half_width"] / by * row["counts"]})
    return {"parts": parts, "known_u": combined([part["part"] for part in parts])}


def from_repeats(readings: Sequence[float]) -> Mapping[str, Any]:
    """Mean and spread (n - 1) of the repeats, mm, and how many there are."""
    mean, spread = mean_and_spread(readings)
    return {
        "repeat_mean": mean, "repeat_spread": spread, "repeat_count": len(readings),
        "repeat_freedom": len(readings) - 1,
    }  # fmt: skip


def cover(
    combined_u: float, level: float, known_u: float,
    parts: Sequence[Mapping[str, Any]] = (), repeat_u: float = 0.0, repeat_freedom: int = 0,
) -> Mapping[str, Any]:  # fmt: skip
    """Effective degrees of freedom, coverage factor, and every contribution's share.

    Welch-Satterthwaite, then Student's t turned round; the normal curve where nothing limits the
    freedom.
    """
    rows = [dict(part) for part in parts] or [
        {"what": LISTED, "half_width": 2 * known_u, "shape": "normal", "divisor": 2.0,
         "counts": 1.0, "freedom": 0.0, "part": known_u}
    ]  # fmt: skip
    if repeat_freedom:
        rows.append({"what": REPEATS, "half_width": repeat_u, "shape": "standard", "divisor": 1.0,
                     "counts": 1.0, "freedom": float(repeat_freedom), "part": repeat_u})  # fmt: skip
    freedom = effective_freedom([row["part"] for row in rows], [row["freedom"] for row in rows])
    for row in rows:
        row["share"] = (row["part"] / combined_u) ** 2 * 100
        row["freedom_words"] = f"{row['freedom']:g}" if row["freedom"] else "no limit"
    biggest = max(rows, key=lambda row: row["part"])
    factor = normal_factor(level) if freedom is None else student_t_factor(level, freedom)
    return {
        "budget_rows": rows, "limited": "no" if freedom is None else "yes",
        "freedom_eff": 0.0 if freedom is None else freedom, "factor": factor,
        "biggest": biggest["what"], "biggest_u": biggest["part"],
        "biggest_share": biggest["share"],
    }  # fmt: skip


def judged(
    reading: float, expanded: float, combined_u: float, limit_low: float | None = None,
    limit_high: float | None = None,
) -> Mapping[str, Any]:  # fmt: skip
    """The verdict of ISO 14253-1 on the reading, and what the gauge is worth for these limits.

    ``engine.judging``: the guard band is the whole expanded uncertainty. The chance of being in
    is that of a normal error with the combined standard uncertainty (JCGM 106).
    """
    zone = acceptance_zone(limit_low, limit_high, expanded)
    verdict = decide(reading, limit_low, limit_high, expanded)
    return {
        "word": verdict.word, "side": verdict.side, "zone": "no" if zone is None else "yes",
        "coarse": "yes" if is_coarse(limit_low, limit_high, expanded) else "no",
        "chance": chance_in(reading, limit_low, limit_high, combined_u) * 100,
    }  # fmt: skip
