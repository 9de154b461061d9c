"""The plan of a glue-up against the clock: what each operation takes, and what makes it fit.

The clock starts when the first bead goes on. Hands work together on one operation and start the
next together: a bead is shared out evenly, clamps are set whole, each pair of hands its own. A
glue-up may end only after an operation that sets clamps, before one that spreads glue.
"""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal

Operation = Mapping[str, Any]  # operation, length (mm), rate (mm/s), clamps, seconds (each)
MOST_HANDS = 8


def in_words(seconds: float) -> str:
    """A time as people say it: 2.7 s, 48 s, 4 min 43 s."""
    if seconds < 9.95:
        return f"{seconds:.1f} s"
    minutes, rest = divmod(math.floor(seconds + 0.5), 60)
    if not minutes:
        return f"{rest} s"
    return f"{minutes} min {rest} s" if rest else f"{minutes} min"


def hands_in_words(hands: int) -> str:
    """One pair of hands, 2 pairs of hands."""
    return "one pair of hands" if hands == 1 else f"{hands} pairs of hands"


def duration_s(operation: Operation, hands: int) -> float:
    """How long so many pairs of hands need for an operation, s."""
    spreading: float = operation["length"] / (operation["rate"] * hands)
    clamping: float = math.ceil(operation["clamps"] / hands) * operation["seconds"]
    return spreading + clamping


def first_bead(operations: Sequence[Operation], name: str) -> int:
    """Which operation starts the clock. Refuses rows without work, or a plan without glue."""
    for place, operation in enumerate(operations, start=1):
        if duration_s(operation, 1) == 0:
            raise Refusal(
                f"{name}[{place}]",
                f"Row {place} takes no time; give it a glue line, or clamps and seconds each (a "
                "move counts as one clamp), or take the row out",
                "rows with a glue line, or with clamps and seconds",
            )
    for place, operation in enumerate(operations):
        if operation["length"] > 0:
            return place
    raise Refusal(
        name,
        "No operation spreads glue, so the clock never starts; give a glue line in the row that "
        "runs the first bead",
        "at least one row with a glue line",
    )


def _chosen(
    plan: Sequence[Operation] | None, hot_plan: Sequence[Operation] | None
) -> tuple[Sequence[Operation], int]:
    operations, name = (plan, "plan") if plan is not None else (hot_plan or (), "hot_plan")
    return operations, first_bead(operations, name)


def plan_time(
    hands: int, plan: Sequence[Operation] | None = None, hot_plan: Sequence[Operation] | None = None
) -> float:
    """Time from the first bead to the end of the last operation, s."""
    operations, first = _chosen(plan, hot_plan)
    return sum(duration_s(operation, hands) for operation in operations[first:])


def fewest_hands(operations: Sequence[Operation], usable_s: float) -> int:
    """The fewest pairs of hands that finish ``operations`` in time; 0 where none up to 8 does."""
    for hands in range(1, MOST_HANDS + 1):
        if sum(duration_s(operation, hands) for operation in operations) <= usable_s:
            return hands
    return 0


def split(
    operations: Sequence[Operation], hands: int, usable_s: float
) -> list[tuple[int, int, float]]:
    """The fewest glue-ups that each fit: first and last operation and time (s) of each.

    Empty where even the shortest glue-up that closes its own glue takes too long. Going from the
    front and filling each glue-up as far as it will go gives the fewest.
    """
    cuts = [
        place
        for place in range(1, len(operations))
        if operations[place]["length"] > 0 and operations[place - 1]["clamps"] > 0
    ]
    found: list[tuple[int, int, float]] = []
    for start, end in zip([0, *cuts], [*cuts, len(operations)], strict=True):
        time_s = sum(duration_s(operation, hands) for operation in operations[start:end])
        if time_s > usable_s:
            return []
        if found and found[-1][2] + time_s <= usable_s:
            found[-1] = (found[-1][0], end - 1, found[-1][2] + time_s)
        else:
            found.append((start, end - 1, time_s))
    return found


def judge_plan(
    hands: int, open_time: float, usable_time: float, needed_time: float,
    plan: Sequence[Operation] | None = None, hot_plan: Sequence[Operation] | None = None,
) -> dict[str, Any]:  # fmt: skip
    """The plan row by row on the clock of the first bead, and what would make it fit.

    Times in seconds. Method: fewest hands by trial from one pair up; fewest glue-ups by filling
    each in turn. ``fewest_hands`` and ``glue_ups`` are 0 where there is no such number.
    """
    operations, first = _chosen(plan, hot_plan)
    on_clock = operations[first:]
    lengths = [duration_s(operation, hands) for operation in operations]
    clock = 0.0 - sum(lengths[:first])
    rows: list[dict[str, Any]] = []
    for place, (operation, length) in enumerate(zip(operations, lengths, strict=True)):
        end = clock + length
        aged = place >= first
        rows.append({
            "row": place + 1, "operation": operation["operation"], "takes": length, "start": clock,
            "end": end, "age": end if aged else None, "left": open_time - end if aged else None,
        })  # fmt: skip
        clock = end
    enough_hands = fewest_hands(on_clock, usable_time)
    glue_ups = split(on_clock, hands, usable_time)
    return {
        "rows": rows,
        "spreads": [operation["length"] > 0 for operation in operations],
        "fewest_hands": enough_hands,
        "glue_ups": len(glue_ups),
        "open_words": in_words(open_time),
        "needed_words": in_words(needed_time),
        "usable_words": in_words(usable_time),
        "hands_words": hands_in_words(hands),
        "run_out_words": _run_out(rows[first:], open_time),
        "remedy_words": "None is needed."
        if needed_time <= usable_time
        else _remedy(on_clock, first, hands, enough_hands, glue_ups),
    }


def _run_out(rows: Sequence[Mapping[str, Any]], open_s: float) -> str:
    """When the glue that was spread first runs out, and what is being done then."""
    for row in rows:
        if row["end"] > open_s:
            where = f"during row {row['row']}, {row['operation']}"
            return f"{in_words(open_s)} after the first bead, {where}"
    rest = in_words(open_s - rows[-1]["end"])
    return f"{in_words(open_s)} after the first bead, {rest} after the last operation"


def _remedy(
    on_clock: Sequence[Operation], first: int, hands: int, enough: int,
    glue_ups: Sequence[tuple[int, int, float]],
) -> str:  # fmt: skip
    """What would make a plan fit that does not; the plan's rows are counted from 1."""
    ways = []
    if enough > hands:
        time_s = sum(duration_s(operation, enough) for operation in on_clock)
        ways.append(f"with {hands_in_words(enough)} it takes {in_words(time_s)} and fits")
    if len(glue_ups) > 1:
        parts = "; ".join(
            (f"row {first + a + 1}" if a == b else f"rows {first + a + 1} to {first + b + 1}")
            + f" ({in_words(time_s)})"
            for a, b, time_s in glue_ups
        )
        ways.append(f"split it into {len(glue_ups)} glue-ups, one after the other: {parts}")
    if not ways:
        return (
            "Neither more hands nor a split helps: a split needs a place where all glue spread so "
            "far is under clamps. Shorten the plan, or find glue or air that gives more time."
        )
    words = ". Or ".join(ways)
    return f"{words[0].upper()}{words[1:]}."
