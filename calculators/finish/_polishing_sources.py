"""Where the polishing calculation comes from."""

from ..engine.declaration import Constant, Source
from ..sources import COMMON_PRACTICE

RIM_SPEED = Source(
    id="rim-speed",
    title="Speed of a rim: π times diameter times turning speed",
    author="Machinery's Handbook, cutting and grinding speeds",
    kind="library",
    note="The book is named from memory; the figures of the check were computed from the exact "
    "inch, independently of this project.",
)
JAEGER = Source(
    id="jaeger-band",
    title="Moving sources of heat and the temperature at sliding contacts",
    author="Jaeger, J. C., Journal and Proceedings of the Royal Society of New South Wales 76, 203",
    year="1942",
    note="Also Carslaw & Jaeger, Conduction of Heat in Solids, sec. 10.7. Both cited from memory; "
    "the integral is checked with scipy and closed by NIST DLMF 10.43.9, which was read.",
)
CARSLAW_JAEGER = Source(
    id="carslaw-jaeger",
    title="Conduction of Heat in Solids, 2nd edition: sec. 2.9, constant flux; sec. 12.8, a layer "
    "on a deep body",
    author="Carslaw, H. S., and Jaeger, J. C.",
    year="1959",
    note="Section numbers from memory; both solutions are checked with mpmath by inverting their "
    "Laplace transforms.",
)
BAND_QUAD = Source(
    id="scipy-band",
    title="scipy 1.17.1, adaptive quadrature of Jaeger's integral",
    kind="library",
    note="Maximum of θ = ∫ exp(-u)·K0(|u|) du over the band, found independently of this project. "
    "L counts the half length.",
)
FAST_BAND = Source(
    id="fast-band",
    title="Worked examples of the fast band source, 2q·sqrt(α·w/(π·V))/k",
    kind="library",
    note="Computed independently of this project.",
)
MPMATH = Source(
    id="mpmath-flux",
    title="mpmath 1.3.0 and 1.4.1, numerical inverse Laplace transforms",
    kind="library",
    note="Constant flux on a deep body, and on a film over a deep body; worked out independently "
    "of this project.",
)
SCIPY_STATS = Source(
    id="scipy-stats",
    title="scipy 1.18.1, scipy.stats: Student's t, Welch's test",
    kind="library",
)
BUILDING_MATERIALS = Source(
    id="building-materials",
    title="Design values of EN 12524 / ISO 10456 and ASHRAE Fundamentals, building materials",
    kind="library",
    note="As tabulated in ht 1.2.0: acrylic (PMMA), spruce, western red cedar, maple, timber of "
    "500 and 700 kg/m³. Lacquer is in none of them; acrylic stands in.",
)
PRESTON = Source(
    id="preston",
    title="The theory and design of plate glass polishing machines",
    author="Preston, F. W., Journal of the Society of Glass Technology 11, 214-256",
    year="1927",
    note="Film off = coefficient · pressure · rubbing speed · time. The relation was read in later "
    "work, the citation is from memory. Found for glass: the coefficient comes from your trial.",
)
STUDENT = Source(
    id="student",
    title="The probable error of a mean; prediction of one further observation",
    author="Student, Biometrika 6, 1; Hahn & Meeker, Statistical Intervals",
    year="1908",
    note="Cited from memory; checked with scipy.",
)
WELCH = Source(
    id="welch",
    title="The generalization of Student's problem when several different population variances "
    "are involved",
    author="Welch, B. L., Biometrika 34, 28-35",
    year="1947",
    note="Cited from memory; checked with scipy.",
)
UNITS = Source(
    id="si-brochure",
    title="The International System of Units (SI Brochure), 9th edition: prefixes, minute",
    author="BIPM",
    year="2019",
)
SOURCES = (
    RIM_SPEED, JAEGER, CARSLAW_JAEGER, BAND_QUAD, FAST_BAND, MPMATH, SCIPY_STATS,
    BUILDING_MATERIALS, PRESTON, STUDENT, WELCH, UNITS, COMMON_PRACTICE,
)  # fmt: skip


def _exact(name: str, label: str, unit: str, value: float) -> Constant:
    return Constant(
        name=name, label=label, symbol="", unit=unit, decimals=0, value=value, source=UNITS.id
    )


CONSTANTS = (
    _exact("mm_per_m", "Millimetres in a metre", "mm/m", 1000),
    _exact("um_per_mm", "Micrometres in a millimetre", "um/mm", 1000),
    _exact("s_per_min", "Seconds in a minute", "s/min", 60),
    _exact("kpa_per_mpa", "Kilopascals in a newton a square millimetre", "kPa/(N/mm**2)", 1000),
    _exact("mm2_per_m2", "Square millimetres in a square metre", "mm**2/m**2", 1e6),
    _exact("whole", "The whole, in per cent", "%", 100),
)
