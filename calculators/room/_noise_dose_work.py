"""What the noise calculator asks and how it works."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import (
    Constant,
    Given,
    Input,
    Number,
    Refusal,
    Rows,
    Said,
    Solved,
    Step,
    Words,
    Work,
)
from ..laws.noise_exposure import (
    allowed_minutes,
    day_level_dba,
    day_uncertainty_db,
    dose_percent,
    worn_level_dba,
)

DAY, EARS, DOUBT = "The day", "Hearing protection", "Limits and measuring"
LONGEST_DAY_MIN = 1440

INPUTS: tuple[Input, ...] = (
    Rows(
        name="tasks", label="Tasks of the day", group=DAY, at_least=1, at_most=12,
        help="Everything from coming in to going home, quiet work too. Level at the ear, averaged "
        "over the task; three readings or more.",
        columns=(
            Words(name="task", label="Task", longest=40),
            Number(name="level", label="Level", unit="dB(A)", decimals=1, lowest=40, highest=130,
                   example=90),
            Number(name="minutes", label="Time", unit="min", decimals=0, lowest=1, highest=720,
                   example=30),
            Number(name="spread", label="Readings differ by ±", unit="dB", decimals=1, lowest=0,
                   highest=15, example=2),
        ),
        example=(
            ("Bandsaw", 92, 40, 2), ("Drum sander", 94, 30, 2), ("Polishing wheel", 86, 90, 2),
            ("Router, binding channels", 98, 15, 3), ("Bench work", 68, 240, 3),
            ("Bench beside the extraction", 80, 60, 2),
        ),
    ),
    Number(
        name="protector_rating", label="Rating on the protector", symbol="r", unit="dB",
        decimals=0, lowest=0, highest=45, example=27, group=EARS, help="NRR or SNR on the pack.",
    ),
    Number(
        name="taken_off", label="Taken off that rating", symbol="a", unit="dB", decimals=0,
        lowest=0, highest=15, example=7, group=EARS,
        help="Common practice: 7 from an NRR with dB(A) levels, 4 from an SNR.",
    ),
    Number(
        name="share_counted", label="Share of the rest that you count on", symbol="c", unit="%",
        decimals=0, lowest=0, highest=100, example=50, group=EARS,
        help="Common practice: 50 for an NRR, 100 for an SNR. Worn by people, plugs do less.",
    ),
    Number(
        name="worn_share", label="Worn for this share of the noisy time", symbol="w", unit="%",
        decimals=0, lowest=0, highest=100, example=95, group=EARS,
        help="Time with it pushed up or left off is what reaches the ear.",
    ),
    Number(
        name="worn_from", label="Put on from this level", unit="dB(A)", decimals=0, lowest=40,
        highest=130, example=80, group=EARS,
    ),
    Number(
        name="day_limit", label="Limit that binds you, 8 h", unit="dB(A)", decimals=0, lowest=75,
        highest=95, example=85, group=DOUBT, help="85 is NIOSH's; some codes set less.",
    ),
    Number(
        name="instrument_doubt", label="Doubt of the sound level meter", symbol="u_2", unit="dB",
        decimals=1, lowest=0, highest=5, example=1.5, group=DOUBT,
        help="Standard uncertainty: 0.7 for class 1, 1.5 for class 2 and dosimeters.",
    ),
    Number(
        name="position_doubt", label="Doubt of where it is held", symbol="u_3", unit="dB",
        decimals=1, lowest=0, highest=5, example=1, group=DOUBT,
    ),
    Number(
        name="time_doubt", label="Doubt of the times", symbol="u_T", unit="%", decimals=0,
        lowest=0, highest=100, example=10, group=DOUBT, help="Standard uncertainty, in per cent.",
    ),
)  # fmt: skip
FOLDED = (DOUBT,)

CONSTANTS = (
    Constant(name="whole", label="The whole, in per cent", unit="%", decimals=0, value=100,
             source="iso-9612"),
    Constant(name="niosh_level", label="Level of a full NIOSH dose in 8 h", unit="dB(A)",
             decimals=0, value=85, source="niosh-noise"),
    Constant(name="osha_level", label="Level of a full OSHA dose in 8 h", unit="dB(A)",
             decimals=0, value=90, source="osha-noise"),
    Constant(name="osha_factor", label="OSHA's decibels to a tenfold dose, 5/log 2", unit="dB",
             decimals=2, value=16.61, source="osha-noise"),
    Constant(name="cover", label="One-sided cover of 95 %", symbol="k", unit="1", decimals=2,
             value=1.65, source="iso-9612"),
)  # fmt: skip


def noise_of_day(
    tasks: Sequence[Mapping[str, Any]],
    reduction: float,
    worn_share: float,
    worn_from: float,
    instrument_doubt: float,
    position_doubt: float,
    time_doubt: float,
) -> dict[str, Any]:
    """The day's noise from its tasks: energy average, doses, doubt, who makes it.

    Levels in dB(A), doubts and reduction in dB, times in min, shares in %. A task's level doubt
    is its ± over √3, as of readings spread evenly between the two ends. Methods and sources are
    those of ``laws.noise_exposure``. Refuses a day of more than 24 hours.
    """
    levels = [float(task["level"]) for task in tasks]
    minutes = [float(task["minutes"]) for task in tasks]
    if sum(minutes) > LONGEST_DAY_MIN:
        raise Refusal(
            "tasks",
            f"The tasks add up to {sum(minutes):.0f} min, more than a day and night; mend the "
            "times",
            f"tasks of {LONGEST_DAY_MIN} min together at most",
        )
    day = day_level_dba(levels, minutes)
    shares = [
        time / 480 * 10 ** ((level - day) / 10) for level, time in zip(levels, minutes, strict=True)
    ]
    ears = [
        worn_level_dba(level, reduction, worn_share) if level >= worn_from else level
        for level in levels
    ]
    rows = [
        {
            "task": task["task"],
            "level": level,
            "minutes": time,
            "niosh_time": allowed_minutes(level, 85, 3),
            "niosh": dose_percent(level, time, 85, 3),
            "osha": dose_percent(level, time, 90, 5),
            "share": 100 * share,
            "ear": ear,
        }
        for task, level, time, share, ear in zip(tasks, levels, minutes, shares, ears, strict=True)
    ]
    worst = max(rows, key=lambda row: float(row["share"]))
    return {
        "task_rows": rows,
        "minutes_in_all": sum(minutes),
        "day_level": day,
        "niosh_dose": float(sum(row["niosh"] for row in rows)),
        "osha_dose": float(sum(row["osha"] for row in rows)),
        "day_doubt": day_uncertainty_db(
            shares, [float(task["spread"]) / math.sqrt(3) for task in tasks], instrument_doubt,
            position_doubt, time_doubt,
        ),
        "ear_level": day_level_dba(ears, minutes),
        "worst_task": worst["task"],
        "worst_share": float(worst["share"]),
    }  # fmt: skip


WORK: tuple[Work, ...] = (
    Step(name="reduction", label="Reduction you may count on", symbol="R", unit="dB", decimals=1,
         formula="max(protector_rating - taken_off, 0) * share_counted / whole",
         source="common-practice"),
    Solved(
        name="day", label="Noise of the day", function=noise_of_day,
        gives=(
            Given(name="minutes_in_all", label="Time in all", unit="min", decimals=0),
            Given(name="day_level", label="Noise of the day, spread over 8 h", symbol="L_EX,8h",
                  unit="dB(A)", decimals=1),
            Given(name="niosh_dose", label="Dose by NIOSH", symbol="D_N", unit="%", decimals=0),
            Given(name="osha_dose", label="Dose by OSHA", symbol="D_O", unit="%", decimals=0),
            Given(name="day_doubt", label="Standard uncertainty of the day", symbol="u",
                  unit="dB", decimals=2),
            Given(name="ear_level", label="Under the protector, spread over 8 h", symbol="L_p",
                  unit="dB(A)", decimals=1),
            Given(name="worst_task", label="The task that counts most", unit="1", decimals=0,
                  text=True),
            Given(name="worst_share", label="Its share of the noise", symbol="q", unit="%",
                  decimals=1),
            Given(name="task_rows", label="Each task", unit="1", decimals=0, many=True),
        ),
        method="Energies 10^(L/10) times minutes are added over the tasks and spread over "
        "480 min. Doses: minutes over the minutes allowed at that level, 480/2^((L-85)/3) by "
        "NIOSH, 480/2^((L-90)/5) by OSHA; under 80 dB(A) neither counts. Doubts are added as "
        "squares, each with its task's share.",
        source="iso-9612",
    ),
    Step(name="niosh_level_8h", label="NIOSH dose as a level over 8 h", symbol="T_N",
         unit="dB(A)", decimals=1, only_if="niosh_dose > 0", source="niosh-noise",
         formula="niosh_level + 10 * log10(niosh_dose / whole)"),
    Step(name="osha_level_8h", label="OSHA dose as a level over 8 h", symbol="T_O",
         unit="dB(A)", decimals=1, only_if="osha_dose > 0", source="osha-noise",
         formula="osha_level + osha_factor * log10(osha_dose / whole)"),
    Step(name="expanded", label="Uncertainty of the day", symbol="U", unit="dB", decimals=1,
         formula="cover * day_doubt", source="iso-9612"),
    Step(name="day_at_most", label="The day is hardly louder than", symbol="L_+U", unit="dB(A)",
         decimals=1, formula="day_level + expanded", source="iso-9612"),
    Step(name="without_worst", label="The day without that task", unit="dB(A)", decimals=1,
         only_if="worst_share < 99.99", source="iso-9612",
         formula="day_level + 10 * log10(1 - worst_share / whole)"),
    Said(name="verdict", label="By this estimate", cases=(
        ("day_level > day_limit", "Over the limit of {day_limit}: the day comes to {day_level}, "
         "and {worst_task} makes {worst_share} of it. Quieten that first, then protect ears."),
        ("day_at_most > day_limit", "Too near to call: {day_level} reckoned, up to "
         "{day_at_most} by the doubt of the readings, limit {day_limit}. Treat it as over."),
        ("", "Below the limit of {day_limit}, doubt included: hardly more than {day_at_most}. "
         "{worst_task} makes {worst_share} of it."),
    )),
    Said(name="ear_words", label="With the protector", cases=(
        ("ear_level > day_limit", "Still over at the ear: {ear_level}. Less time, less noise or "
         "better protection, worn all the time."),
        ("ear_level < 70", "{ear_level} at the ear: so quiet that warnings and the sound of "
         "the cut may go unheard."),
        ("", "{ear_level} at the ear, if it is worn as you say."),
    )),
)  # fmt: skip
