"""How the viscosity of a liquid goes with what is mixed into it, and with its temperature."""

import math

from ..engine.declaration import Source

LOG_MIXING = Source(
    id="log-mixing",
    title="Viscosity of mixed liquids: the logarithm goes with the share (Arrhenius)",
    author="Arrhenius, S., Zeitschrift für physikalische Chemie 1, 285",
    year="1887",
    note="Named from memory; the rule is the one that the chemicals library calls "
    "mixing_logarithmic. A lacquer keeps to it only over a short stretch, so it is laid through "
    "your own trials.",
)
ANDRADE = Source(
    id="andrade",
    title="Viscosity and temperature: ln ν = a + B/T with T in kelvin",
    author="Andrade, E. N. da C., Nature 125, 309",
    year="1930",
    note="Named from memory. B is found from two readings of your own lacquer.",
)
ZERO_CELSIUS_K = 273.15


def mixed_mm2_s(share: float, first_mm2_s: float, second_mm2_s: float) -> float:
    """Viscosity, mm²/s, of a mix with ``share`` (0 to 1) of the second liquid by volume.

    Source: logarithmic mixing, as above.
    """
    return math.exp((1 - share) * math.log(first_mm2_s) + share * math.log(second_mm2_s))


def warming_constant_k(cool_c: float, cool_mm2_s: float, warm_c: float, warm_mm2_s: float) -> float:
    """B, K, of ln ν = a + B/T from two readings, °C and mm²/s. Source: Andrade."""
    steps = 1 / (cool_c + ZERO_CELSIUS_K) - 1 / (warm_c + ZERO_CELSIUS_K)
    return math.log(cool_mm2_s / warm_mm2_s) / steps


def at_temperature_mm2_s(
    known_mm2_s: float, known_c: float, constant_k: float, wanted_c: float
) -> float:
    """Viscosity, mm²/s, at another temperature, °C, from one known and B. Source: Andrade."""
    steps = 1 / (wanted_c + ZERO_CELSIUS_K) - 1 / (known_c + ZERO_CELSIUS_K)
    return known_mm2_s * math.exp(constant_k * steps)
