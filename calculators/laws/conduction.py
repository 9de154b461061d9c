"""Heat through a stack of layers, one way: transient conduction by finite volumes.

The stack is cut into cells, fine where the temperature bends. Cell 0 lies at the back, the last
cell at the face; the face itself is a point without heat of its own, so that any law of heat loss
can act there. Units: m, s, W/(m·K), J/(m³·K), °C (differences in K), W/m².
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..engine.declaration import Source

HEAT_CONDUCTION = Source(
    id="heat-conduction",
    title="Conduction of Heat in Solids, 2nd ed., sec. 2.4, 2.9 and 2.15; the same closed forms in "
    "Incropera et al., Fundamentals of Heat and Mass Transfer, sec. 5.7",
    author="Carslaw, H. S. and Jaeger, J. C.",
    year="1959",
    note="The books are named from memory. The march of cells is checked against their closed "
    "forms.",
)
GAMMA = 1 - math.sqrt(0.5)  # of the two-stage, L-stable Runge-Kutta rule (Alexander, 1977)
STEPS_A_STAGE = 8  # steps of one length before the length doubles
Loss = Callable[[float], float]  # heat leaving the face, W/m², from the face's temperature, °C


@dataclass(frozen=True)
class Cells:
    """Cells from back to face: width (m), conductivity (W/(m·K)), heat (J/(m³·K))."""

    widths_m: tuple[float, ...]
    conductivities_w_m_k: tuple[float, ...]
    heats_j_m3_k: tuple[float, ...]

    def __add__(self, face: "Cells") -> "Cells":
        """This stack with ``face`` laid on its face, in perfect contact."""
        return Cells(
            self.widths_m + face.widths_m,
            self.conductivities_w_m_k + face.conductivities_w_m_k,
            self.heats_j_m3_k + face.heats_j_m3_k,
        )


@dataclass(frozen=True)
class Moment:
    """The stack at one time: temperatures of the cells, of the face, and what the face lost."""

    time_s: float
    temperatures_c: list[float]
    face_c: float
    lost_j_m2: float


def graded_cells(
    depth_m: float, finest_m: float, growth: float, conductivity_w_m_k: float, heat_j_m3_k: float
) -> Cells:
    """Cells for a layer ``depth_m`` thick: about ``finest_m`` at its face, each next deeper one
    ``growth`` times as wide; all scaled a little so that they fill the layer exactly.
    """
    if growth == 1:
        count = max(1, round(depth_m / finest_m))
    else:
        whole = math.log1p(depth_m * (growth - 1) / finest_m) / math.log(growth)
        count = max(1, math.ceil(whole))
    widths = [finest_m * growth**number for number in reversed(range(count))]
    scale = depth_m / sum(widths)
    return Cells(
        tuple(width * scale for width in widths),
        (conductivity_w_m_k,) * count,
        (heat_j_m3_k,) * count,
    )


class _Sweep:
    """Cells factored for one step length: the elimination runs from the back to the face.

    Only the last unknown, the face, meets the law of heat loss, so the factors of the cells hold
    for all steps of one length whatever that law is.
    """

    def __init__(self, cells: Cells, back_w_m2_k: float, step_s: float) -> None:
        halves = [
            width / (2 * conductivity)
            for width, conductivity in zip(cells.widths_m, cells.conductivities_w_m_k, strict=True)
        ]
        links = [1 / (lower + upper) for lower, upper in pairwise(halves)]
        self.back = 1 / (halves[0] + 1 / back_w_m2_k) if back_w_m2_k else 0.0
        self.face = 1 / halves[-1]
        below = [self.back, *links]
        self.stores = [
            heat * width / (GAMMA * step_s)
            for heat, width in zip(cells.heats_j_m3_k, cells.widths_m, strict=True)
        ]
        self.passed = [1.0]  # share of its load that each cell gets handed on from behind
        self.inverses: list[float] = []
        for store, low, high in zip(self.stores, below, [*links, self.face], strict=True):
            pivot = store + low + high
            if self.inverses:
                self.passed.append(low * self.inverses[-1])
                pivot -= low * self.passed[-1]
            self.inverses.append(1 / pivot)
        # Coming back, a cell takes this share of its neighbour towards the face.
        self.taken = [link * inverse for link, inverse in zip(links, self.inverses, strict=False)]
        self.taken_face = self.face * self.inverses[-1]

    def solve(
        self, known: Sequence[float], back_c: float, face_c: float, loss: Loss
    ) -> tuple[list[float], float, float]:
        """New temperatures of cells and face, and the loss there, after an implicit stage."""
        load = self.back * back_c
        loads: list[float] = []
        for store, value, passed in zip(self.stores, known, self.passed, strict=True):
            load = store * value + passed * load
            loads.append(load)
        still = load * self.inverses[-1]  # the last cell's temperature if the face stood at 0 °C
        face_c, lost = _meet(self.face * still, self.face * (1 - self.taken_face), face_c, loss)
        value = still + self.taken_face * face_c
        found = [value]
        for load, inverse, taken in zip(
            reversed(loads[:-1]), reversed(self.inverses[:-1]), reversed(self.taken), strict=True
        ):
            value = load * inverse + taken * value
            found.append(value)
        found.reverse()
        return found, face_c, lost


def _meet(arriving: float, slope: float, guess_c: float, loss: Loss) -> tuple[float, float]:
    """The face temperature at which ``arriving - slope * T`` equals ``loss(T)``: secant steps."""
    old, new = guess_c + 0.01, guess_c
    rest_old = arriving - slope * old - loss(old)
    lost = loss(new)
    rest = arriving - slope * new - lost
    for _ in range(30):
        if abs(rest) <= 1e-9 * (abs(lost) + slope) or rest == rest_old:
            break
        old, new, rest_old = new, new - rest * (new - old) / (rest - rest_old), rest
        lost = loss(new)
        rest = arriving - slope * new - lost
    return new, lost


def march(
    cells: Cells,
    temperatures_c: Sequence[float],
    loss: Loss,
    *,
    back_w_m2_k: float = 0.0,
    back_c: float = 0.0,
    first_step_s: float = 0.01,
    longest_step_s: float = math.inf,
) -> Iterator[Moment]:
    """The stack's history, one moment a step, without end: stop when you have what you want.

    Method: finite volumes, conductances of half cells in series, in time the two-stage L-stable
    diagonally implicit Runge-Kutta rule of second order (Alexander, SIAM J. Numer. Anal. 14, 1977,
    named from memory). Steps double in length after every eight, since heat diffuses ever more
    slowly, so one factorisation serves eight steps. The back loses ``back_w_m2_k`` times its
    excess over ``back_c`` (0: no heat passes); the face loses what ``loss`` says.
    """
    now = list(temperatures_c)
    face_c, time_s, lost_j_m2, step_s = now[-1], 0.0, 0.0, first_step_s
    while True:
        sweep = _Sweep(cells, back_w_m2_k, step_s)
        ahead = (1 - GAMMA) / GAMMA
        for _ in range(STEPS_A_STAGE):
            middle, face_c, early = sweep.solve(now, back_c, face_c, loss)
            known = [was + ahead * (mid - was) for was, mid in zip(now, middle, strict=True)]
            now, face_c, late = sweep.solve(known, back_c, face_c, loss)
            time_s += step_s
            lost_j_m2 += step_s * ((1 - GAMMA) * early + GAMMA * late)
            yield Moment(time_s, now, face_c, lost_j_m2)
        step_s = min(2 * step_s, longest_step_s)


def contact_temperature_c(
    first_c: float, first_effusivity: float, second_c: float, second_effusivity: float
) -> float:
    """What the faces of two deep bodies take the moment they touch (Carslaw and Jaeger 2.15)."""
    share = first_effusivity / (first_effusivity + second_effusivity)
    return second_c + share * (first_c - second_c)
