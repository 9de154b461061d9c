"""QR codes (ISO/IEC 18004) drawn on a page as one filled shape."""

from functools import cache
from typing import Any

import segno
from reportlab.lib.colors import black  # type: ignore[import-untyped]
from reportlab.platypus import Flowable  # type: ignore[import-untyped]

QUIET_MODULES = 4  # the white that a reader needs around the code


def draw_qr(canvas: Any, address: str, x: float, y: float, size_pt: float) -> None:
    """Draws the code for ``address``, its white border included, with its lower left at x, y."""
    matrix = _matrix(address)
    step = size_pt / (len(matrix) + 2 * QUIET_MODULES)
    path = canvas.beginPath()
    for row, modules in enumerate(matrix):
        top = y + size_pt - (QUIET_MODULES + row) * step
        for start, length in _runs(modules):
            path.rect(x + (QUIET_MODULES + start) * step, top - step, length * step, step)
    canvas.saveState()
    canvas.setFillColor(black)
    canvas.drawPath(path, stroke=0, fill=1)
    canvas.restoreState()


def quiet_pt(address: str, size_pt: float) -> float:
    """How wide the white border is in a code of this size."""
    return size_pt * QUIET_MODULES / (len(_matrix(address)) + 2 * QUIET_MODULES)


@cache
def _matrix(address: str) -> tuple[bytes, ...]:
    return tuple(bytes(row) for row in segno.make(address, micro=False, error="m").matrix)


def _runs(modules: bytes) -> list[tuple[int, int]]:
    """Where dark modules stand side by side: (first, how many)."""
    found: list[tuple[int, int]] = []
    for place, dark in enumerate(modules):
        if not dark:
            continue
        if found and sum(found[-1]) == place:
            found[-1] = (found[-1][0], found[-1][1] + 1)
        else:
            found.append((place, 1))
    return found


class QrMark(Flowable):  # type: ignore[misc]
    """A code as a thing that stands in a table or between paragraphs."""

    def __init__(self, address: str, size_pt: float) -> None:
        super().__init__()
        self.address, self.width, self.height = address, size_pt, size_pt
        self.hAlign = "RIGHT"

    def draw(self) -> None:
        """Draws it where the page's layout has put it."""
        draw_qr(self.canv, self.address, 0, 0, self.width)
