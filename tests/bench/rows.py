"""What the bench says of a part: rows of a table, the same in the terminal and on the page."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Row:
    """One figure: what it is of, the figure with its unit, its aim where there is one, met or not."""

    what: str
    figure: str
    aim: str = ""
    met: bool | None = None

    @property
    def verdict(self) -> str:
        """In a word."""
        return {None: "", True: "met", False: "**not met**"}[self.met]


def seconds(value: float) -> str:
    """A time given in milliseconds, to read."""
    return f"{value:.0f} ms" if value < 1000 else f"{value / 1000:.1f} s"


def kilobytes(value: float) -> str:
    """Bytes, to read; 1 kB is 1000 bytes."""
    return f"{value / 1e6:.1f} MB" if value >= 1e6 else f"{value / 1e3:.0f} kB"
