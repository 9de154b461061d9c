"""The calendar of coats, and how many coats keep the film within its limits."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.declaration import Refusal
from ._film_inputs import WEEKDAYS

MINUTES_A_DAY = 24 * 60
DAYS_OFF = {"both": (5, 6), "sunday": (6,), "none": ()}
# A division that should come out whole may miss by its last bits: 270 over 27 is 10 coats.
HAIR = 1e-9


def coats_that_fit(
    dry_film: float, sanded_film: float, levelling_loss: float, wheel_loss: float,
    least_film_before: float, most_film_before: float, least_film: float, most_film: float,
) -> Mapping[str, int]:  # fmt: skip
    """Fewest and most whole coats, the sandings as planned, that keep every limit of the film.

    All in µm, ``dry_film`` that of one coat. n coats leave n · dry_film - sanded_film before
    levelling, and less levelling and wheels after polishing; n is solved for from each limit,
    the narrower counts. The fewest may exceed the most: then no whole number of coats fits.
    """
    polished = levelling_loss + wheel_loss
    lowest = max(least_film_before, least_film + polished)
    highest = min(most_film_before, most_film + polished)
    return {
        "coats_least": math.ceil((lowest + sanded_film) / dry_film - HAIR),
        "coats_most": math.floor((highest + sanded_film) / dry_film + HAIR),
    }


def clock(minutes: float) -> str:
    """Minutes since midnight as a clock shows them."""
    whole = math.floor(minutes + 0.5)
    return f"{whole // 60 % 24:02d}:{whole % 60:02d}"


def day_and_weekday(day: int, weekday: int) -> str:
    """A day as people say it: ``Thursday, day 4``."""
    return f"{WEEKDAYS[weekday % 7]}, day {day}"


def plan_coats(
    rounds: int, coats_per_round: int, dry_film: float, sanding_loss: float, start_day: str,
    weekend: str, recoat_time: float, sand_wait: float, cure_days: int, coat_time: float,
    sanding_time: float, day_begins: float, day_length: float,
) -> Mapping[str, Any]:  # fmt: skip
    """The calendar: every coat with its day and hour, the last coat's day, levelling's day.

    Times of the shop in min (coat, recoat, sanding) and h (wait, day), film in µm. A round, its
    sanding of the round before included, is done within one working day; it begins when the last
    coat has waited its time and the day is long enough, or else on the next working day. Day 1
    is the day of the first coat. Levelling is on the first working day when the cure is over.
    Method: day by day, exact; source: the shop's rule of a couple of coats, a night, the block.
    """
    spraying = coats_per_round * coat_time + (coats_per_round - 1) * recoat_time
    longest = spraying + (sanding_time if rounds > 1 else 0)
    if longest > day_length * 60 + HAIR:
        raise Refusal(
            "coats_per_round",
            f"A round would take {longest / 60:.1f} h, and the working day has {day_length:g} h: "
            "plan fewer coats in a round, or look over the times",
            "a round that fits into one working day",
        )
    off = DAYS_OFF[weekend]
    weekday = WEEKDAYS.index(start_day)  # of day 1; moved on to a working day
    while weekday % 7 in off:
        weekday += 1
    opens, shuts = day_begins * 60, (day_begins + day_length) * 60
    rows: list[dict[str, Any]] = []
    day, ready, film = 1, 0.0, 0.0
    for number in range(1, rounds + 1):
        needed = spraying + (sanding_time if number > 1 else 0)
        while True:
            begins = max(opens, ready - (day - 1) * MINUTES_A_DAY)
            if (weekday + day - 1) % 7 not in off and begins + needed <= shuts + HAIR:
                break
            day += 1
        at = begins + needed - spraying
        for coat in range(coats_per_round):
            taken = sanding_loss if coat == 0 and number > 1 else 0.0
            film += dry_film - taken
            rows.append({
                "coat": len(rows) + 1, "round": number,
                "when": day_and_weekday(day, weekday + day - 1), "day": day, "clock": clock(at),
                "taken": taken, "film": film,
            })  # fmt: skip
            at += coat_time + recoat_time
        ready = (day - 1) * MINUTES_A_DAY + begins + needed + sand_wait * 60
    levelling = day + cure_days
    while (weekday + levelling - 1) % 7 in off:
        levelling += 1
    return {
        "coat_rows": rows,
        "last_coat_day": day,
        "levelling_day": levelling,
        "days_in_all": levelling - 1,
        "round_hours": longest / 60,
        "first_words": day_and_weekday(1, weekday),
        "last_words": day_and_weekday(day, weekday + day - 1),
        "levelling_words": day_and_weekday(levelling, weekday + levelling - 1),
    }
