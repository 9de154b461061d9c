"""The fretboard in plan, straight or fanned: where strings, slots and edges run, in millimetres.

x runs along the centre line from the bass end of the nut to the saddle; y across, treble side up. A
share is how far along the strings something lies: 0 at the nut, 1 at the saddle line.
"""

from dataclasses import dataclass

from calculators.engine.compute import Answer

from .shapes import Point


@dataclass(frozen=True)
class BoardPlan:
    """Both outer strings and the slots between them."""

    half_nut_mm: float  # centre line to an outer string, at the nut
    flare_mm: float  # how much further out it is at the saddle line
    margin_mm: float  # outer string to board edge, square to the centre line
    bass_run_mm: float  # nut to saddle line, along the centre line
    treble_run_mm: float
    treble_lead_mm: float  # how far the treble end of the nut lies past the bass end
    ratio: float  # by which each fret shortens the string
    shares: tuple[float, ...]  # of the nut and of every slot

    @property
    def frets(self) -> int:
        """How many slots there are."""
        return len(self.shares) - 1

    def share_of(self, fret: float) -> float:
        """The share of a fret, also of one past the last slot."""
        return float(1 - self.ratio**-fret)

    @property
    def end_share(self) -> float:
        """Half a space past the last slot, where the board is drawn to end."""
        return (self.shares[-1] + self.share_of(self.frets + 1)) / 2

    def bass(self, share: float) -> Point:
        """A place on the outer bass string."""
        return self.bass_run_mm * share, -self.half_nut_mm - self.flare_mm * share

    def treble(self, share: float) -> Point:
        """A place on the outer treble string."""
        x = self.treble_lead_mm + self.treble_run_mm * share
        return x, self.half_nut_mm + self.flare_mm * share

    def across(self, share: float, beyond_mm: float = 0.0) -> tuple[Point, Point]:
        """The line over both outer strings at a share, bass end first.

        It is carried on, at its own slant, to the lines that run ``beyond_mm`` outside the strings.
        """
        low, high = self.bass(share), self.treble(share)
        run, rise = high[0] - low[0], high[1] - low[1]
        # Where the carried-on line meets a line beside the string: both are straight.
        down = beyond_mm / (rise + run * self.flare_mm / self.bass_run_mm)
        up = beyond_mm / (rise - run * self.flare_mm / self.treble_run_mm)
        return (low[0] - down * run, low[1] - down * rise), (
            high[0] + up * run,
            high[1] + up * rise,
        )


def board_plan(answer: Answer) -> BoardPlan:
    """The plan from the worked fret spacing."""
    values = answer.values
    half = values["string_spread_nut"] / 2
    flare = (values["string_spread_bridge"] - values["string_spread_nut"]) / 2
    if values["layout"] == "fanned":
        bass_run, treble_run = values["bass_run"], values["treble_run"]
        lead = values["treble_nut_lead"]
        shares = [row["bass_along"] / bass_run for row in answer.tables["fan"]]
    else:
        bass_run = treble_run = values["scale_length"]
        lead = 0.0
        shares = [0.0, *(row["from_nut"] / bass_run for row in answer.tables["slots"])]
    return BoardPlan(
        half, flare, values["edge_margin"], bass_run, treble_run, lead, values["fret_ratio"],
        tuple(shares),
    )  # fmt: skip
