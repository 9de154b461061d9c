"""The moisture content that wood comes to in air, and back again: the Wood Handbook's equation.

Each relation is one formula text. Calculators print and evaluate it as a step; the functions
evaluate the same text. The names in the texts are ``room_temperature`` (°C), ``room_humidity``
(%), the four constants of the air (``sorption_w``, ``sorption_k``, ``sorption_k1``,
``sorption_k2``) and ``sorption_kh``, the activity of the water taken up.
"""

from ..engine.declaration import Constant, Source, Step
from ..engine.formula import parse

WOOD_HANDBOOK_MOISTURE = Source(
    id="wood-handbook-moisture",
    title="Wood handbook: wood as an engineering material, chapter 4: equilibrium moisture "
    "content, eq. (4-5), after Hailwood and Horrobin and Simpson, with coefficients for °C",
    author="Glass, S. V. and Zelinka, S. L., USDA Forest Products Laboratory",
    year="2021",
    note="FPL-GTR-282, and FPL-GTR-190 of 2010. Coefficients read in two public programs that cite "
    "it. The handbook says that its Table 4-2 was worked out from this equation.",
)
SORPTION_SCALE_PERCENT = 1800.0
DAMPEST_PERCENT = 99.0  # the inverse looks for a humidity no higher than this

SORPTION_W = "349 + 1.29 * room_temperature + 0.0135 * room_temperature ** 2"
SORPTION_K = "0.805 + 0.000736 * room_temperature - 0.00000273 * room_temperature ** 2"
SORPTION_K1 = "6.27 - 0.00938 * room_temperature - 0.000303 * room_temperature ** 2"
SORPTION_K2 = "1.91 + 0.0407 * room_temperature - 0.000293 * room_temperature ** 2"
SORPTION_KH = "sorption_k * room_humidity / whole"
EMC = (
    "sorption_scale / sorption_w * (sorption_kh / (1 - sorption_kh) "
    "+ (sorption_k1 * sorption_kh + 2 * sorption_k1 * sorption_k2 * sorption_kh ** 2) "
    "/ (1 + sorption_k1 * sorption_kh + sorption_k1 * sorption_k2 * sorption_kh ** 2))"
)
SORPTION_CONSTANT = Constant(
    name="sorption_scale", label="1800 of the equation, in per cent", symbol="", unit="%",
    decimals=0, value=SORPTION_SCALE_PERCENT, source=WOOD_HANDBOOK_MOISTURE.id,
)  # fmt: skip


def _coefficient(name: str, label: str, symbol: str, decimals: int, formula: str) -> Step:
    return Step(
        name=name, label=label, symbol=symbol, unit="1", decimals=decimals, formula=formula,
        source=WOOD_HANDBOOK_MOISTURE.id, empirical=True,
    )  # fmt: skip


# The steps that belong to the temperature alone; a calculator prints them before the first EMC.
SORPTION_STEPS = (
    _coefficient("sorption_w", "Constant W of the air's temperature", "W", 2, SORPTION_W),
    _coefficient("sorption_k", "Constant K", "K", 5, SORPTION_K),
    _coefficient("sorption_k1", "Constant K1", "K_1", 4, SORPTION_K1),
    _coefficient("sorption_k2", "Constant K2", "K_2", 4, SORPTION_K2),
)


def sorption_constants(temperature_c: float) -> dict[str, float]:
    """W, K, K1 and K2 at a temperature in °C, by the names of the formula texts."""
    air = {"room_temperature": temperature_c}
    return {
        "sorption_scale": SORPTION_SCALE_PERCENT,
        "sorption_w": parse(SORPTION_W).evaluate(air),
        "sorption_k": parse(SORPTION_K).evaluate(air),
        "sorption_k1": parse(SORPTION_K1).evaluate(air),
        "sorption_k2": parse(SORPTION_K2).evaluate(air),
    }


def _emc(constants: dict[str, float], humidity_percent: float) -> float:
    kh = constants["sorption_k"] * humidity_percent / 100
    found: float = parse(EMC).evaluate({**constants, "sorption_kh": kh})
    return found


def emc_percent(temperature_c: float, humidity_percent: float) -> float:
    """Moisture content, % of ovendry mass, that wood comes to in air and stays at.

    Range: -1 to 54 °C and 5 to 95 % relative humidity, as in Table 4-2; wood that was never
    heated far above the room, mean of taking up and giving off. Source: Wood Handbook eq. (4-5).
    """
    return _emc(sorption_constants(temperature_c), humidity_percent)


def emc_line(temperature_c: float, humidities_percent: list[float]) -> list[float]:
    """The same at one temperature for many humidities, %."""
    constants = sorption_constants(temperature_c)
    return [_emc(constants, humidity) for humidity in humidities_percent]


def humidity_for_emc(moisture_percent: float, temperature_c: float) -> float:
    """Relative humidity, %, in which wood of a moisture content neither gains nor loses water.

    For a moisture content from 0 to what air of 99 % gives. Method: regula falsi with halving of
    the end that stays (Illinois), until the moisture agrees to 1e-12 %. Source: eq. (4-5) turned.
    """
    constants = sorption_constants(temperature_c)
    low, high = 0.0, DAMPEST_PERCENT
    below, above = -moisture_percent, _emc(constants, high) - moisture_percent
    if below > 0 or above < 0:
        raise ValueError(f"no humidity below {high} % gives wood {moisture_percent} %")
    humidity = low if below == 0 else high
    side = 0
    for _ in range(100):
        if below == 0 or above == 0:
            break
        humidity = low + (high - low) * below / (below - above)
        off = _emc(constants, humidity) - moisture_percent
        if abs(off) < 1e-12:
            break
        if off < 0:
            low, below = humidity, off
            above = above / 2 if side < 0 else above
            side = -1
        else:
            high, above = humidity, off
            below = below / 2 if side > 0 else below
            side = 1
    return humidity
