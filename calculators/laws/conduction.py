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


class _Stack:
    """What passes between neighbouring cells, and at the back and the face, W/(m²·K)."""

    def __init__(self, cells: Cells, back_w_m2_k: float) -> None:
        halves = [
            width / (2 * conductivity)
            for width, conductivity in zip(cells.widths_m, cells.conductivities_w_m_k, strict=True)
        ]
        self.links = [1 / (lower + upper) for lower, upper in pairwise(halves)]
        self.back = 1 / (halves[0] + 1 / back_w_m2_k) if back_w_m2_k else 0.0
        self.face = 1 / halves[-1]
        sides = zip([self.back, *self.links], [*self.links, self.face], strict=True)
        self.sides = [(low, low + high) for low, high in sides]
        heats = zip(cells.heats_j_m3_k, cells.widths_m, strict=True)
        self.heats_j_m2_k = [heat * width for heat, width in heats]


class _Sweep:
    """A stack factored for one step length: the elimination runs from the back to the face.

    Only the last unknown, the face, meets the law of heat loss, so the factors of the cells hold
    for all steps of one length whatever that law is.
    """

    def __init__(self, stack: _Stack, step_s: float) -> None:
        self.back, self.face = stack.back, stack.face
        self.stores = [heat / (GAMMA * step_s) for heat in stack.heats_j_m2_k]
        shares = zip(self.stores, stack.sides, strict=True)
        inverse = 0.0  # behind the first cell there is none
        inverses = [
            inverse := 1 / (store + both - low * low * inverse) for store, (low, both) in shares
        ]
        # Going out, a cell is handed this share of the load behind it; coming back, the cell behind
        # takes the same share of its neighbour's temperature.
        passed = [link * inverse for link, inverse in zip(stack.links, inverses, strict=False)]
        self.passed = [1.0, *passed]
        self.homeward = list(zip(inverses[-2::-1], reversed(passed), strict=True))
        self.last = inverses[-1]
        self.taken_face = self.face * self.last

    def solve(
        self, known: Sequence[float], back_c: float, face: "_Face"
    ) -> tuple[list[float], float]:
        """New temperatures of the cells, and the loss at the face, after an implicit stage."""
        # A load is what a cell has and gets handed on; most of an answer's time is spent here.
        load = self.back * back_c
        loads = [
            load := store * value + passed * load
            for store, value, passed in zip(self.stores, known, self.passed, strict=True)
        ]
        still = load * self.last  # the last cell's temperature if the face stood at 0 °C
        lost = face.meet(self.face * still, self.face * (1 - self.taken_face))
        value = still + self.taken_face * face.temperature_c
        found = [value]
        found += [
            value := load * inverse + taken * value
            for load, (inverse, taken) in zip(loads[-2::-1], self.homeward, strict=True)
        ]
        found.reverse()
        return found, lost


class _Face:
    """The face's temperature, with how steeply its loss rises there: what the next stage starts from."""

    def __init__(self, temperature_c: float, loss: Loss) -> None:
        self.temperature_c = temperature_c
        self.loss = loss
        self.rise = (loss(temperature_c + 0.01) - loss(temperature_c)) / 0.01

    def meet(self, arriving: float, slope: float) -> float:
        """Goes to the temperature T at which ``arriving - slope * T`` is ``loss(T)``; the loss there.

        Secant steps, the first along the rise that was seen last.
        """
        value = self.temperature_c
        lost = self.loss(value)
        for _ in range(30):
            rest = arriving - slope * value - lost
            step = rest / (slope + self.rise)
            if abs(rest) <= 1e-12 * (abs(lost) + slope) or value + step == value:
                break
            value += step
            before, lost = lost, self.loss(value)
            self.rise = (lost - before) / step
        self.temperature_c = value
        return lost


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
    stack, face = _Stack(cells, back_w_m2_k), _Face(now[-1], loss)
    time_s, lost_j_m2, step_s = 0.0, 0.0, first_step_s
    while True:
        sweep = _Sweep(stack, step_s)
        ahead = (1 - GAMMA) / GAMMA
        for _ in range(STEPS_A_STAGE):
            middle, early = sweep.solve(now, back_c, face)
            known = [was + ahead * (mid - was) for was, mid in zip(now, middle, strict=True)]
            now, late = sweep.solve(known, back_c, face)
            time_s += step_s
            lost_j_m2 += step_s * ((1 - GAMMA) * early + GAMMA * late)
            yield Moment(time_s, now, face.temperature_c, lost_j_m2)
        step_s = min(2 * step_s, longest_step_s)


def contact_temperature_c(
    first_c: float, first_effusivity: float, second_c: float, second_effusivity: float
) -> float:
    """What the faces of two deep bodies take the moment they touch (Carslaw and Jaeger 2.15)."""
    share = first_effusivity / (first_effusivity + second_effusivity)
    return second_c + share * (first_c - second_c)
