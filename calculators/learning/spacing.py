"""Which exercise comes next: what went wrong comes back soon, what is learned comes back late.

Each right answer in a row moves an exercise one step further away, a wrong one brings it back; the
growing gaps are those of card-box practice (Leitner). Common practice, no source for the figures.
"""

from collections.abc import Sequence
from typing import Any

from .stream import Stream

GAPS = (2, 6, 15, 40, 100)  # questions until an exercise is due, by right answers in a row
DAYS = (0.0, 1.0, 3.0, 7.0, 21.0)  # or days, whichever comes first
LEARNED = 3  # right answers in a row from which an exercise counts as learned
DAY_MS = 86_400_000


def next_exercise(
    exercises: Sequence[str], history: Sequence[tuple[str, bool, float]], now: float, seed: str
) -> str:
    """The exercise to ask now; ``history`` has (exercise, right, milliseconds), the oldest first."""
    runs = standing(history)
    count = len(history)
    last = history[-1][0] if history else ""
    stream = Stream(f"next/{seed}/{count}")
    due: list[tuple[float, int, str]] = []
    fresh: list[str] = []
    for exercise in exercises:
        if exercise not in runs:
            fresh.append(exercise)
            continue
        run, place, when = runs[exercise]
        step = min(run, len(GAPS) - 1)
        late = max((count - place) / GAPS[step], (now - when) / DAY_MS / DAYS[step] if run else 0.0)
        due.append((late, -run, exercise))
    due.sort(reverse=True)
    ready = [entry for entry in due if entry[0] >= 1 and entry[2] != last]
    if ready:
        return min(ready, key=lambda entry: (-entry[1], -entry[0]))[2]  # wrong ones first
    if fresh:
        return stream.pick(fresh)
    rest = [entry for entry in due if entry[2] != last] or due
    return rest[0][2]


def standing(
    history: Sequence[tuple[str, bool, float]],
) -> dict[str, tuple[int, int, float]]:
    """Of each exercise: right answers in a row, its last place in the history, and when."""
    found: dict[str, tuple[int, int, float]] = {}
    for place, (exercise, right, when) in enumerate(history):
        run = found[exercise][0] if exercise in found else 0
        found[exercise] = (run + 1 if right else 0, place, when)
    return found


def summary(exercises: Sequence[str], history: Sequence[tuple[str, bool, float]]) -> dict[str, Any]:
    """How far someone has come with some exercises: how many there are, were tried, and are learned."""
    named = set(exercises)
    own = [entry for entry in history if entry[0] in named]
    runs = standing(own)
    return {
        "exercises": len(exercises),
        "tried": len(runs),
        "learned": sum(run >= LEARNED for run, _, _ in runs.values()),
        "answers": len(own),
        "right": sum(right for _, right, _ in own),
    }
