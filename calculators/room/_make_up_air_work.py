"""How the calculator of dilution air works: vapour, air for fire and lungs, waiting, heat."""

from ..engine.declaration import Constant, Given, Said, Solved, Source, Step, Work
from ..laws.psychrometrics import ASHRAE
from ..laws.solvent_vapour import ADDITIVE_LIMITS, IDEAL_GAS, LE_CHATELIER
from ..laws.standard_air import (
    HEIGHT_EXPONENT,
    HEIGHT_FALL_PER_M,
    SEA_PRESSURE_PA,
    STANDARD_ATMOSPHERE,
)
from ._make_up_air_solvents import LIMITS, mix_of_vapours

DILUTION = Source(
    id="dilution",
    title="Dilution of a vapour in a mixed room: fresh air and vapour against what is drawn out, "
    "with a factor K for poor mixing",
    note="Balance of volumes. 29 CFR 1910.94(c)(6)(ii) has nearly the same, "
    "4·(100 - LEL)/LEL for a quarter (from memory), without K.",
)
SI = Source(
    id="si-brochure",
    title="The International System of Units (SI Brochure), 9th edition",
    author="BIPM",
    year="2019",
)
CONSTANTS = (
    Constant(name="whole", label="The whole, in per cent", unit="%", decimals=0, value=100,
             source="si-brochure"),
    Constant(name="million", label="The whole, in parts per million", unit="ppm", decimals=0,
             value=1_000_000, source="si-brochure"),
    Constant(name="ppm_per_percent", label="Parts per million in a per cent", unit="ppm/percent",
             decimals=0, value=10_000, source="si-brochure"),
    Constant(name="min_per_h", label="Minutes in an hour", unit="min/h", decimals=0, value=60,
             source="si-brochure"),
    Constant(name="s_per_h", label="Seconds in an hour", unit="s/h", decimals=0, value=3600,
             source="si-brochure"),
    Constant(name="w_per_kw", label="Watts in a kilowatt", unit="W/kW", decimals=0, value=1000,
             source="si-brochure"),
    Constant(name="coldest", label="Absolute zero", symbol="t_0", unit="degC", decimals=2,
             value=-273.15, source="si-brochure"),
    Constant(name="sea_pressure", label="Pressure at the sea", symbol="p_0", unit="Pa",
             decimals=0, value=SEA_PRESSURE_PA, source="standard-atmosphere"),
    Constant(name="height_fall", label="Fall of the atmosphere with height", unit="1/m",
             decimals=10, value=HEIGHT_FALL_PER_M, source="standard-atmosphere"),
    Constant(name="height_power", label="Power of that fall", unit="1", decimals=4,
             value=HEIGHT_EXPONENT, source="standard-atmosphere"),
    Constant(name="air_gas_constant", label="Gas constant of dry air", symbol="R_a",
             unit="J/kg/delta_degC", decimals=3, value=287.042, source="ashrae-psychrometrics"),
    Constant(name="air_heat", label="Heat that warms a kilogram of air by a degree",
             symbol="c_p", unit="J/kg/delta_degC", decimals=0, value=1006,
             source="ashrae-psychrometrics"),
)  # fmt: skip
SOURCES = (DILUTION, LIMITS, IDEAL_GAS, LE_CHATELIER, ADDITIVE_LIMITS, STANDARD_ATMOSPHERE, ASHRAE,
           SI)  # fmt: skip

WORK: tuple[Work, ...] = (
    Step(name="air_pressure", label="Pressure of the air at this height", symbol="p", unit="Pa",
         decimals=0, source="standard-atmosphere",
         formula="sea_pressure * (1 - height_fall * height_above_sea) ** height_power"),
    Solved(
        name="mix", label="Vapour, and the limits of the mixture", function=mix_of_vapours,
        gives=(
            Given(name="liquid_rate", label="Solvent in all", unit="L/h", decimals=3),
            Given(name="vapour_rate", label="Vapour in all", symbol="G", unit="m3/h", decimals=4),
            Given(name="mix_lfl", label="Lower explosive limit of the mixture", symbol="L",
                  unit="%", decimals=3),
            Given(name="mix_limit", label="Exposure limit of the mixture", symbol="E", unit="ppm",
                  decimals=1),
            Given(name="weight_to_air", label="Vapour is so many times as heavy as air", unit="1",
                  decimals=2),
            Given(name="solvent_rows", label="Each solvent", unit="1", decimals=0, many=True),
        ),
        method="Litres times density over molar mass are moles; a mole of vapour fills R·T/p. "
        "Limits of the mixture: one over the sum of each share over its limit, the lower of two "
        "published explosive limits for each.",
        source="ideal-gas",
    ),
    Step(name="fire_aim", label="Vapour kept below, for fire", symbol="L_a", unit="%", decimals=4,
         formula="mix_lfl / 10 if fire_share == 'tenth' else mix_lfl / 4", source="le-chatelier"),
    Step(name="fire_air", label="Air needed against fire", symbol="Q_f", unit="m3/h", decimals=0,
         formula="mixing_factor * vapour_rate * (whole - fire_aim) / fire_aim",
         source="dilution"),
    Step(name="health_air", label="Air needed for lungs", symbol="Q_e", unit="m3/h", decimals=0,
         formula="mixing_factor * vapour_rate * (million - mix_limit) / mix_limit",
         source="additive-limits"),
    Step(name="air_needed", label="Air needed, the larger of both", symbol="Q_n", unit="m3/h",
         decimals=0, formula="max(fire_air, health_air)", source="published-limits"),
    Step(name="changes_needed", label="That changes the air of the room", unit="1/h", decimals=1,
         formula="air_needed / room_volume", source="dilution"),
    Step(name="changes_now", label="The fan now changes it", symbol="n", unit="1/h", decimals=1,
         formula="air_flow / room_volume", source="dilution"),
    Step(name="level_now", label="Vapour it settles at with the air drawn out now", symbol="C",
         unit="ppm", decimals=0, source="dilution",
         formula="million * vapour_rate / (air_flow / mixing_factor + vapour_rate)"),
    Step(name="level_of_lfl", label="Which is this share of the explosive limit", unit="%",
         decimals=2, formula="whole * level_now / (ppm_per_percent * mix_lfl)",
         source="le-chatelier"),
    Step(name="level_of_limit", label="And so many times the exposure limit", unit="1",
         decimals=2, formula="level_now / mix_limit", source="additive-limits"),
    Step(name="mixing_time", label="Time in which vapour falls to 37 %", symbol="τ", unit="min",
         decimals=2, formula="min_per_h * mixing_factor * room_volume / air_flow",
         source="dilution"),
    Step(name="clear_time", label="Wait until vapour has fallen to your share", symbol="t_x",
         unit="min", decimals=1, formula="mixing_time * log(whole / fall_to)", source="dilution"),
    Step(name="safe_time", label="Wait until it is below the exposure limit", symbol="t_e",
         unit="min", decimals=1, formula="mixing_time * log(max(1, level_of_limit))",
         source="dilution"),
    Step(name="air_density", label="Density of the room's air", symbol="ρ", unit="kg/m3",
         decimals=4, formula="air_pressure / (air_gas_constant * (room_temperature - coldest))",
         source="ashrae-psychrometrics"),
    Step(name="warmed_by", label="Outdoor air must be warmed by", symbol="ΔT", unit="K",
         decimals=1, formula="max(room_temperature - outdoor_temperature, 0)",
         source="ashrae-psychrometrics"),
    Step(name="heat_now", label="Heat for the air drawn out now", symbol="P", unit="kW",
         decimals=2, source="ashrae-psychrometrics",
         formula="air_flow * air_density * air_heat * warmed_by / (s_per_h * w_per_kw)"),
    Step(name="heat_needed", label="Heat for the air needed", symbol="P_n", unit="kW",
         decimals=2, formula="heat_now * air_needed / air_flow", source="ashrae-psychrometrics"),
    Said(name="verdict", label="By this estimate", cases=(
        ("level_of_lfl >= whole", "Do not spray: vapour would reach the explosive limit. You "
         "need {air_needed}, the fan draws {air_flow}."),
        ("air_flow < fire_air", "Too little air against fire: the fan draws {air_flow}, the "
         "estimate asks for {fire_air}. Do not spray so much in this room."),
        ("air_flow < health_air", "Enough against fire, too little for lungs: the fan draws "
         "{air_flow}, the estimate asks for {health_air}. The booth and the fitted respirator "
         "must do the rest."),
        ("", "The fan draws {air_flow}, the estimate asks for {air_needed}. Have it measured; "
         "an estimate is no permit."),
    )),
)  # fmt: skip
