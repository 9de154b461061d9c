"""The dew point: the temperature at which the damp in the air begins to settle."""

import math

from .psychrometrics import saturation_pressure_pa, vapour_pressure_pa

MOST_STEPS = 30


def dew_point_c(temperature_c: float, humidity_percent: float) -> float:
    """Dew point, °C, of air of a temperature, °C, and a relative humidity, %, above nought.

    The temperature at which the saturation pressure over liquid water is the vapour pressure of
    the air; below 0 °C that of supercooled water, a little under the frost point. Method:
    Newton's rule on the logarithm, which is nearly straight. Source: ASHRAE Fundamentals 2017,
    ch. 1, eq. (6), turned round; range as there.
    """
    wanted = math.log(vapour_pressure_pa(temperature_c, humidity_percent))
    found, step = temperature_c, 0.01
    for _ in range(MOST_STEPS):
        here = math.log(saturation_pressure_pa(found))
        slope = (math.log(saturation_pressure_pa(found + step)) - here) / step
        move = (wanted - here) / slope
        found += move
        if abs(move) < 1e-10:
            break
    return found
