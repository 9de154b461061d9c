"""Sources and exact constants that the calculators of wet lacquer share."""

from ..engine.declaration import Constant, Source

DRY_FILM = Source(
    id="dry-film-relation",
    title="Calculations: volume solids, spreading rate and film thickness (technical note 5.3)",
    note="Dry film is wet film times the share of solids by volume. Read from a stored copy that "
    "does not name its publisher. The share of solids itself stands on the data sheet.",
)
THINNED = Source(
    id="thinned-solids",
    title="Volume solids after thinning: the solids stay, the volume grows",
    kind="published",
    note="Wet film = dry film times (1 + thinner added) over volume solids, as in guides to "
    "ISO 2808 and SSPC-PA 2, from memory; it follows from the definition, lacquer and thinner "
    "taken to fill what they filled apart.",
)
SPREADING = Source(
    id="spreading-rate",
    title="Spreading rates of coatings: general information sheet, theoretical spreading rate, "
    "film thickness from spreading rate",
    note="Stored pages, read; 1604 ft² a US gallon of 100 % solids at 1 mil.",
)
PINT = Source(
    id="pint",
    title="pint 0.26.2, units and their exact factors",
    kind="library",
    note="Worked out independently of this project.",
)
UNITS = Source(
    id="si-brochure",
    title="The International System of Units (SI Brochure), 9th edition: prefixes, minute, hour, "
    "day, litre",
    author="BIPM",
    year="2019",
)


def exact(name: str, label: str, unit: str, value: float, decimals: int = 0) -> Constant:
    """An exact factor between two units."""
    return Constant(
        name=name, label=label, symbol="", unit=unit, decimals=decimals, value=value,
        source=UNITS.id,
    )  # fmt: skip
