"""The picture of the noise calculation: which task makes the noise of the day."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg

LEFT, LONGEST, ROW, BAR, NAME = 24.0, 500.0, 50.0, 18.0, 34


def shorten(words: str) -> str:
    """Words cut to fit on a line of the drawing."""
    return words if len(words) <= NAME else f"{words[: NAME - 1].rstrip()}…"


def draw_tasks(values: Mapping[str, Any], say: Say) -> str:
    """A bar for each task, as long as its share of the day's noise, the loudest share dark."""
    rows = values["task_rows"]
    height = 20 + ROW * len(rows)
    svg = Svg(
        "noise-dose-tasks", "Which task makes the noise of the day",
        f"{say('worst_task')} makes {say('worst_share')} of the energy; the day comes to "
        f"{say('day_level')}.",
        640, height,
    )  # fmt: skip
    most = values["worst_share"]
    for place, row in enumerate(rows):
        y = 10 + ROW * place
        length = LONGEST * row["share"] / 100
        words = (
            f"{shorten(row['task'])}: {say.quantity(row['level'], 'dB(A)', 1)}, "
            f"{say.quantity(row['minutes'], 'min', 0)}"
        )
        svg.text((LEFT + 8, y + 15), words)
        style = "wood-dark" if row["share"] == most else "wood-light"
        svg.rectangle((LEFT, y + 21), max(1.0, length), BAR, style)
        share = say.quantity(row["share"], "%", 1)
        svg.text((LEFT + length + 10, y + 36), share, "start", "label-small")
    svg.line((LEFT, 8), (LEFT, height - 8), "ink")
    return svg.markup()
