"""Writes ``calculators/engine/unit_table.py`` with pint: the factors that the door converts by.

pint stays out of the calculators (it costs a third of a second in the browser); what it knows is
written down once, as exact fractions, and a test says whether the written table still agrees.

    python -m benchrule.unit_factors            writes the table
"""

from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import pint

TABLE = Path(__file__).resolve().parents[2] / "calculators" / "engine" / "unit_table.py"


@dataclass(frozen=True)
class UnitLine:
    """One unit: our id, pint's name, the kind it belongs to, what people write and read."""

    id: str
    pint_name: str
    kind: str
    shown: str
    spellings: tuple[str, ...] = ()
    inch: str = ""  # the unit an inch shop reads instead
    inch_decimals: int = 0  # how many decimals more (or fewer) it needs there


LINES = (
    UnitLine("mm", "millimeter", "length", "mm", ("millimetre", "millimeter"), "in", 2),
    UnitLine("cm", "centimeter", "length", "cm", ("centimetre", "centimeter"), "in", 1),
    UnitLine("m", "meter", "length", "m", ("metre", "meter"), "ft", 0),
    UnitLine("um", "micrometer", "length", "µm", ("µm", "μm", "micron", "microns"), "mil", 2),
    UnitLine("in", "inch", "length", "in", ('"', "″", "''", "inch", "inches")),
    UnitLine("ft", "foot", "length", "ft", ("'", "′", "foot", "feet")),
    UnitLine("mil", "thou", "length", "mil", ("mils", "thou", "thousandths")),
    UnitLine("s", "second", "time", "s", ("sec", "secs", "second", "seconds"), "s"),
    UnitLine("min", "minute", "time", "min", ("minute", "minutes", "mins"), "min"),
    UnitLine("h", "hour", "time", "h", ("hr", "hour", "hours"), "h"),
    UnitLine("d", "day", "time", "d", ("day", "days"), "d"),
    UnitLine("m/s", "meter/second", "speed", "m/s", (), "ft/min", -1),
    UnitLine("mm/s", "millimeter/second", "speed", "mm/s", (), "in/s", 2),
    UnitLine("m/min", "meter/minute", "speed", "m/min", (), "ft/min", 0),
    UnitLine("ft/min", "foot/minute", "speed", "ft/min", ("sfpm", "fpm")),
    UnitLine("in/s", "inch/second", "speed", "in/s", ("ips",)),
    UnitLine("rpm", "1/minute", "turning speed", "rpm", ("r/min", "1/min", "/min"), "rpm"),
    UnitLine("Hz", "hertz", "frequency", "Hz", ("hz", "hertz", "1/s")),
    UnitLine("N", "newton", "force", "N", ("newton", "newtons"), "lbf", 1),
    UnitLine("kgf", "kilogram_force", "force", "kgf", ("kp",)),
    UnitLine("lbf", "pound_force", "force", "lbf", ("lb", "lbs", "pound", "pounds")),
    UnitLine("kN", "kilonewton", "force", "kN", (), "lbf", -1),
    UnitLine("Pa", "pascal", "pressure", "Pa", (), "psi", 4),
    UnitLine("kPa", "kilopascal", "pressure", "kPa", (), "psi", 1),
    UnitLine("MPa", "megapascal", "pressure", "MPa", ("N/mm2", "N/mm²"), "psi", -2),
    UnitLine("GPa", "gigapascal", "pressure", "GPa", ("kN/mm2", "kN/mm²"), "Mpsi", 1),
    UnitLine("Mpsi", "megapsi", "pressure", "Mpsi", ("10^6 psi",)),
    UnitLine("bar", "bar", "pressure", "bar", (), "psi", 0),
    UnitLine("psi", "psi", "pressure", "psi", ("lbf/in2", "lbf/in²")),
    # What a fan or a filter holds: an inch shop reads inches of water, not psi.
    UnitLine("Pa.air", "pascal", "air pressure", "Pa", ("pascal",), "inH2O", 2),
    UnitLine("inH2O", "inch_H2O", "air pressure", "in water", ("in wg", "inwg", "inH₂O")),
    UnitLine("degC", "degC", "temperature", "°C", ("C", "celsius", "degC"), "degF", 0),
    UnitLine("degF", "degF", "temperature", "°F", ("F", "fahrenheit")),
    UnitLine("K", "delta_degC", "temperature difference", "K", ("°C", "C"), "Fdeg", 0),
    UnitLine("Fdeg", "delta_degF", "temperature difference", "F°", ("°F", "F")),
    UnitLine("g", "gram", "mass", "g", ("gram", "grams"), "oz", 2),
    UnitLine("kg", "kilogram", "mass", "kg", ("kilogram", "kilograms"), "lb", 0),
    UnitLine("oz", "ounce", "mass", "oz", ("ounce", "ounces")),
    UnitLine("g/m", "gram/meter", "mass a length", "g/m", ("gram/metre",)),
    UnitLine("lb", "pound", "mass", "lb", ("lbs", "pound", "pounds")),
    UnitLine("g/m2", "gram/meter**2", "spread", "g/m²", ("g/m²", "gsm"), "lb/1000ft2", 1),
    UnitLine(
        "lb/1000ft2",
        "pound/thousand_square_feet",
        "spread",
        "lb/1000 ft²",
        ("lb/1000 ft2", "lb/msf"),
    ),
    UnitLine("kg/m3", "kilogram/meter**3", "density", "kg/m³", ("kg/m³",), "lb/ft3", 1),
    UnitLine("g/cm3", "gram/centimeter**3", "density", "g/cm³", ("g/cm³",), "lb/ft3", 0),
    UnitLine("lb/ft3", "pound/foot**3", "density", "lb/ft³", ("lb/ft³",)),
    UnitLine("deg", "degree", "angle", "°", ("°", "degree", "degrees"), "deg"),
    UnitLine("turn", "turn", "angle", "turn", ("turns", "rev", "revolution"), "turn"),
    UnitLine("1", "dimensionless", "number", "", ()),
    UnitLine("%", "percent", "share", "%", ("percent", "pct"), "%"),
    UnitLine("ppm", "ppm", "share", "ppm", ("parts per million",)),
    UnitLine("dB(A)", "dimensionless", "sound level", "dB(A)", ("dB", "dBA", "db", "db(a)")),
    UnitLine("dB", "dimensionless", "level difference", "dB", ("dB(A)", "db")),
    UnitLine("cents", "dimensionless", "pitch", "cents", ("cent", "¢"), "cents"),
    UnitLine("W", "watt", "power", "W", ("watt",)),
    UnitLine("kW", "kilowatt", "power", "kW", ("kilowatt",)),
    UnitLine("W/m2", "watt/meter**2", "heat flux", "W/m²", ("W/m²",)),
    UnitLine("kW/m2", "kilowatt/meter**2", "heat flux", "kW/m²", ("kW/m²",)),
    UnitLine("W/m/K", "watt/meter/delta_degC", "conductivity", "W/(m·K)", ("W/(m K)", "W/mK")),
    UnitLine("W/m2/K", "watt/meter**2/delta_degC", "film coefficient", "W/(m²·K)", ("W/m2K",)),
    UnitLine("J/kg/K", "joule/kilogram/delta_degC", "heat capacity", "J/(kg·K)", ("J/kgK",)),
    UnitLine(
        "W.s0.5/m2/K",
        "watt*second**0.5/meter**2/delta_degC",
        "effusivity",
        "W·√s/(m²·K)",
        ("W·s0.5/(m²·K)",),
    ),
    UnitLine("g/m2/s0.5", "gram/meter**2/second**0.5", "sorptivity", "g/(m²·√s)", ("g/(m2·s0.5)",)),
    UnitLine(
        "kg/m2/s0.5",
        "kilogram/meter**2/second**0.5",
        "sorptivity",
        "kg/(m²·√s)",
        ("kg/(m2·s0.5)",),
    ),
    UnitLine("mm2/s", "millimeter**2/second", "diffusivity", "mm²/s", ("mm²/s",)),
    UnitLine("mm2", "millimeter**2", "area", "mm²", ("mm²",), "in2", 2),
    UnitLine("in2", "inch**2", "area", "in²", ("in²", "sq in")),
    UnitLine("cm2", "centimeter**2", "area", "cm²", ("cm²",), "in2", 1),
    UnitLine("m2", "meter**2", "area", "m²", ("m²", "sq m"), "ft2", 0),
    UnitLine("ft2", "foot**2", "area", "ft²", ("ft²", "sq ft")),
    UnitLine("mm3", "millimeter**3", "volume", "mm³", ("mm³",)),
    UnitLine("mm4", "millimeter**4", "second moment of area", "mm⁴", ("mm⁴", "mm^4"), "in4", 4),
    UnitLine("in4", "inch**4", "second moment of area", "in⁴", ("in⁴", "in^4")),
    UnitLine("mL", "milliliter", "volume", "mL", ("ml", "cc", "cm3", "cm³"), "floz", 1),
    UnitLine("floz", "fluid_ounce", "volume", "fl oz", ("fl oz", "fl. oz.")),
    UnitLine("L", "liter", "volume", "L", ("l", "litre", "litres", "liter"), "gal", 1),
    UnitLine("gal", "gallon", "volume", "gal", ("gallon", "gallons", "US gal")),
    UnitLine("m3", "meter**3", "volume", "m³", ("m³", "cu m"), "ft3", 0),
    UnitLine("ft3", "foot**3", "volume", "ft³", ("ft³", "cu ft")),
    UnitLine("L/h", "liter/hour", "liquid flow", "L/h", ("l/h", "litres an hour"), "gal/h", 1),
    UnitLine("gal/h", "gallon/hour", "liquid flow", "gal/h", ("gph",)),
    UnitLine("m3/h", "meter**3/hour", "air flow", "m³/h", ("m³/h", "cmh"), "cfm", 0),
    UnitLine("m3/s", "meter**3/second", "air flow", "m³/s", ("m³/s",), "cfm", -2),
    UnitLine("cfm", "foot**3/minute", "air flow", "cfm", ("ft3/min", "ft³/min")),
    UnitLine("1/h", "1/hour", "air changes", "an hour", ("/h", "per hour", "ach")),
    UnitLine("m2/L", "meter**2/liter", "spreading rate", "m²/L", ("m²/L", "m2/l"), "ft2/gal", -1),
    UnitLine("ft2/gal", "foot**2/gallon", "spreading rate", "ft²/gal", ("ft²/gal",)),
    UnitLine("1/L", "1/liter", "price by volume", "a litre", ("/L", "/l", "per L"), "1/gal", 0),
    UnitLine("1/gal", "1/gallon", "price by volume", "a gallon", ("/gal", "per gal")),
    UnitLine("1/mm2", "1/millimeter**2", "number an area", "per mm²", ("/mm2", "/mm²")),
    UnitLine("N.m", "newton*meter", "moment", "N·m", ("Nm", "N·m", "N m"), "lbf.in", 0),
    UnitLine(
        "lbf.in", "force_pound*inch", "moment", "lbf·in", ("in-lb", "in.lb", "lbf·in", "in lbf")
    ),
    UnitLine(
        "N.m2",
        "newton*meter**2",
        "bending stiffness",
        "N·m²",
        ("Nm2", "N·m²", "Nm²"),
        "lbf.in2",
        -2,
    ),
    UnitLine("lbf.in2", "force_pound*inch**2", "bending stiffness", "lbf·in²", ("lbf·in²",)),
    UnitLine("N/mm", "newton/millimeter", "spring rate", "N/mm", (), "lbf/in", 0),
    UnitLine("lbf/in", "force_pound/inch", "spring rate", "lbf/in", ()),
    UnitLine("mm/m", "millimeter/meter", "slope", "mm/m", ()),
    UnitLine("mm/turn", "millimeter/turn", "lift a turn", "mm/turn", (), "in/turn", 2),
    UnitLine("in/turn", "inch/turn", "lift a turn", "in/turn", ()),
    UnitLine("1/m", "1/meter", "curvature", "1/m", ("m^-1", "m⁻¹")),
    UnitLine("um/kPa/m", "micrometer/kilopascal/meter", "wear", "µm/(kPa·m)", ("µm/kPa/m",)),
)


def table_text() -> str:
    """The text of the table module, from pint's exact definitions."""
    registry = pint.UnitRegistry(non_int_type=Fraction)
    registry.define("thousand_square_feet = 1000 * foot**2")
    first_of_kind: dict[str, str] = {}
    rows = []
    for line in LINES:
        base = first_of_kind.setdefault(line.kind, line.pint_name)
        at_zero = registry.Quantity(Fraction(0), line.pint_name).to(base).magnitude
        at_one = registry.Quantity(Fraction(1), line.pint_name).to(base).magnitude
        factor, offset = Fraction(at_one - at_zero), Fraction(at_zero)
        rows.append(
            f"    {line.id!r}: Unit(\n"
            f"        {line.id!r}, {line.kind!r}, {line.shown!r}, {line.spellings!r},\n"
            f"        {factor.numerator}, {factor.denominator}, "
            f"{offset.numerator}, {offset.denominator}, {line.inch!r}, {line.inch_decimals},\n"
            "    ),\n"
        )
    return (
        '"""Units and their exact factors. Written by pint (build/benchrule/unit_factors.py):\n'
        "add a unit there and run it; do not edit this file.\n\n"
        "A value in a unit times numerator/denominator plus the offset is the value in the first\n"
        'unit of its kind.\n"""\n\n'
        "from typing import NamedTuple\n\n\n"
        "class Unit(NamedTuple):\n"
        '    """One unit: how it is read, shown and converted."""\n\n'
        "    id: str\n    kind: str\n    shown: str\n    spellings: tuple[str, ...]\n"
        "    numerator: int\n    denominator: int\n"
        "    offset_numerator: int\n    offset_denominator: int\n"
        "    inch: str  # what an inch shop reads instead\n"
        "    inch_decimals: int  # how many decimals more it needs there\n\n\n"
        "# fmt: off\nUNITS = {\n" + "".join(rows) + "}\n# fmt: on\n"
    )


if __name__ == "__main__":
    TABLE.write_text(table_text(), encoding="utf-8")
