"""Noise at work: energy averages, doses with an exchange rate, uncertainty of a day.

Levels in dB(A), times in minutes.
"""

import math
from collections.abc import Sequence

from ..engine.declaration import Source

ISO_9612 = Source(
    id="iso-9612",
    title="ISO 9612:2009, Determination of occupational noise exposure: task-based measurement "
    "and its uncertainty (annex C)",
    author="ISO",
    year="2009",
    note="Formulas from memory: energy average over 8 h, sensitivities of levels and times, "
    "one-sided cover factor 1.65. The derivatives are held against numerical ones.",
)
OSHA_NOISE = Source(
    id="osha-noise",
    title="29 CFR 1910.95 and its appendix A: dose with 5 dB to a halving from 90 dB(A), "
    "TWA = 16.61 log(D/100) + 90",
    author="OSHA",
    note="Appendix A with its table G-16A read in a stored copy of osha.gov. That levels under "
    "80 dB(A) are left out is from memory.",
)
NIOSH_NOISE = Source(
    id="niosh-noise",
    title="Criteria for a recommended standard: occupational noise exposure (publication 98-126): "
    "dose with 3 dB to a halving from 85 dB(A)",
    author="NIOSH",
    year="1998",
    note="T = 480/2^((L - 85)/3) min, read in stored pages that cite it; the threshold of "
    "80 dB(A) is from memory.",
)
DAY_MIN = 480.0
LEAST_COUNTED_DBA = 80.0


def allowed_minutes(level_dba: float, criterion_dba: float, exchange_db: float) -> float:
    """Minutes at a level that make a full dose: 480 over 2^((L - criterion)/exchange).

    Source: NIOSH 98-126 with 85 and 3; 29 CFR 1910.95 appendix A, table G-16A, with 90 and 5.
    """
    return float(DAY_MIN / 2 ** ((level_dba - criterion_dba) / exchange_db))


def dose_percent(
    level_dba: float, minutes: float, criterion_dba: float, exchange_db: float
) -> float:
    """Per cent of a day's dose; nought below 80 dB(A), which neither of the two counts."""
    if level_dba < LEAST_COUNTED_DBA:
        return 0.0
    return 100 * minutes / allowed_minutes(level_dba, criterion_dba, exchange_db)


def day_level_dba(levels_dba: Sequence[float], minutes: Sequence[float]) -> float:
    """Level L_EX,8h that would bring the same energy in 8 hours, dB(A).

    Source: ISO 9612, task-based measurement: 10 log of the sum of (T/480 min)·10^(L/10).
    """
    energy = sum(time * 10 ** (level / 10) for level, time in zip(levels_dba, minutes, strict=True))
    return 10 * math.log10(energy / DAY_MIN)


def worn_level_dba(level_dba: float, reduction_db: float, worn_percent: float) -> float:
    """Level at the ear, dB(A), when a protector is worn for a share of the time only.

    Energy under the protector and without it are added by their shares of the time.
    """
    worn = worn_percent / 100
    return level_dba + 10 * math.log10(worn * 10 ** (-reduction_db / 10) + 1 - worn)


def day_uncertainty_db(
    shares: Sequence[float],
    level_doubts_db: Sequence[float],
    instrument_db: float,
    position_db: float,
    time_doubt_percent: float,
) -> float:
    """Combined standard uncertainty of L_EX,8h, dB, of tasks with these shares of the energy.

    Each task's level doubt, the instrument's and the position's act with its share; its time
    with 4.34 times the share. Source: ISO 9612 annex C, task-based measurement.
    """
    per_time = 10 / math.log(10) * time_doubt_percent / 100
    return math.sqrt(
        sum(
            share**2 * (doubt**2 + instrument_db**2 + position_db**2 + per_time**2)
            for share, doubt in zip(shares, level_doubts_db, strict=True)
        )
    )
