"""What the glue clock works out, step by step: wood, air, drying, plan against the clock."""

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work
from ..laws import wood_heat
from ._glue_film import (
    air_state,
    cut_layers,
    cut_sheet_layers,
    radiation,
    sheet_air_state,
    sheet_radiation,
    start_temperatures,
    viscosity_ratio,
)
from ._glue_plan import judge_plan, plan_time
from ._glue_runs import cooling_run, drying_run, skin_point

COOLING, DRYING = "glue == 'cooling'", "glue == 'drying'"

CONSTANTS = (
    Constant(name="whole", label="The whole", symbol="100 %", unit="%", decimals=0, value=100,
        source="common-practice"),
    Constant(name="fibre_saturation", label="Fibre saturation", symbol="x_f", unit="%", decimals=0,
             value=wood_heat.FIBRE_SATURATION_PERCENT, source="wood-handbook-heat"),
    Constant(name="water_density", label="Density of water", symbol="ρ_0", unit="kg/m3", decimals=0,
             value=wood_heat.WATER_DENSITY_KG_M3, source="wood-handbook-heat"),
    Constant(name="water_heat", label="Heat capacity of water", symbol="c_0",
        unit="J/kg/K", decimals=0,
             value=wood_heat.WATER_HEAT_J_KG_K, source="wood-handbook-heat"),
    Constant(name="lewis_number", label="Lewis number of vapour in air", symbol="Le", unit="1",
             decimals=3, value=0.854, source="lewis-relation"),
    Constant(name="mm_per_m", label="Millimetres in a metre", unit="mm/m", decimals=0, value=1000,
             source="common-practice"),
)  # fmt: skip

WOOD_STEPS: tuple[Work, ...] = (
    Solved(
        name="start", label="Temperatures at the start", function=start_temperatures,
        gives=(Given(name="glue_start", label="Glue", symbol="T_g", unit="degC", decimals=0),
               Given(name="wood_start", label="Wood", symbol="T_0", unit="degC", decimals=0)),
        method="Hide glue starts as hot as the pot, water-borne glue as warm as the room.",
        source="common-practice",
    ),
    Step(
        name="property_temperature", label="Wood's properties taken half-way between wood and glue",
        symbol="T_m", unit="degC", decimals=1, formula="wood_start + (glue_start - wood_start) / 2",
        source="common-practice",
    ),
    Step(
        name="wood_gravity", label="Specific gravity at today's moisture", symbol="G", unit="1",
        decimals=3, formula=wood_heat.GRAVITY, source="wood-handbook-heat",
    ),
    Step(
        name="wood_density", label="Density of the wood", symbol="ρ", unit="kg/m3", decimals=0,
        formula=wood_heat.DENSITY, source="wood-handbook-heat",
    ),
    Step(
        name="wood_conductivity", label="Conductivity of the wood across the grain", symbol="k",
        unit="W/m/K", decimals=4, formula=wood_heat.CONDUCTIVITY, source="wood-handbook-heat",
        empirical=True,
    ),
    Step(
        name="dry_wood_heat", label="Heat capacity of the dry wood", symbol="c_dry", unit="J/kg/K",
        decimals=1, formula=wood_heat.DRY_HEAT, source="wood-handbook-heat", empirical=True,
    ),
    Step(
        name="bound_water_heat", label="More for the bond of wood and water", symbol="A_c",
        unit="J/kg/K", decimals=1, formula=wood_heat.BOUND_WATER_HEAT, source="wood-handbook-heat",
        empirical=True,
    ),
    Step(
        name="wood_heat_capacity", label="Heat capacity of the moist wood", symbol="c",
        unit="J/kg/K", decimals=1, formula=wood_heat.HEAT_CAPACITY, source="wood-handbook-heat",
    ),
    Step(
        name="wood_effusivity", label="How strongly the wood draws heat (effusivity)", symbol="e_w",
        unit="W.s0.5/m2/K", decimals=1,
        formula="sqrt(wood_conductivity * wood_density * wood_heat_capacity)",
            source="heat-conduction",
        only_if=COOLING,
    ),
    Step(
        name="glue_effusivity", label="Effusivity of the glue", symbol="e_g", unit="W.s0.5/m2/K",
        decimals=1, formula="sqrt(glue_conductivity * glue_density * glue_heat_capacity)",
        source="heat-conduction", only_if=COOLING,
    ),
    Step(
        name="contact_temperature", label="Where glue meets wood, in the first instant",
        symbol="T_c",
        unit="degC", decimals=1, only_if=COOLING, source="heat-conduction",
        formula="wood_start + (glue_start - wood_start) * glue_effusivity / "
        "(glue_effusivity + wood_effusivity)",
    ),
    Step(
        name="film_scale", label="Time scale of the cooling: heat in the film over the wood's pull, squared",
        symbol="τ", unit="s", decimals=1, only_if=COOLING, source="heat-conduction",
        formula="(film_thickness / mm_per_m * glue_density * glue_heat_capacity / "
        "wood_effusivity) ** 2",
    ),
)  # fmt: skip

AIR_STEPS: tuple[Work, ...] = (
    Solved(
        name="air", label="The air in the room", function=air_state, source="ashrae-psychrometrics",
        gives=(
            Given(name="saturation_pressure", label="Vapour pressure of saturated air",
                symbol="p_s",
                  unit="Pa", decimals=0),
            Given(name="vapour_pressure", label="Vapour pressure", symbol="p_v",
                unit="Pa", decimals=0),
            Given(name="humidity_ratio", label="Vapour to a kilogram of dry air, in kilograms",
                  symbol="W", unit="1", decimals=5),
            Given(name="air_density", label="Density", symbol="ρ_a", unit="kg/m3", decimals=3),
            Given(name="air_heat_capacity", label="Heat capacity", symbol="c_a", unit="J/kg/K",
                  decimals=0),
        ),
        method="Saturation pressure after Hyland and Wexler, then the ideal-gas relations of "
        "moist air.",
    ),
    Step(
        name="mass_transfer", label="Speed at which vapour is carried off", symbol="h_m",
        unit="m/s",
        decimals=5, source="lewis-relation",
        formula="air_movement / (air_density * air_heat_capacity * lewis_number ** (2 / 3))",
    ),
    Solved(
        name="radiation_law", label="Radiation to the room", function=radiation, source="radiation",
        gives=(Given(name="radiation", label="Film coefficient of radiation", symbol="h_r",
                     unit="W/m2/K", decimals=2),),
        method="Four times emissivity, Stefan-Boltzmann constant and cube of the room's "
        "temperature in kelvin.",
    ),
)  # fmt: skip

DRYING_STEPS: tuple[Work, ...] = (
    Step(
        name="water_at_start", label="Water in today's film", symbol="w_0", unit="g/m2", decimals=1,
        formula="spread * (1 - solids / whole)", source="common-practice", only_if=DRYING,
    ),
    Step(
        name="spread_thickness", label="Thickness of today's film", symbol="h",
        unit="mm", decimals=3,
        formula="spread / glue_density", source="common-practice", only_if=DRYING,
    ),
    Step(
        name="sheet_water", label="Water in the data sheet's film", symbol="w_s",
        unit="g/m2", decimals=1,
        formula="sheet_spread * (1 - solids / whole)", source="common-practice", only_if=DRYING,
    ),
    Step(
        name="sheet_thickness", label="Thickness of the data sheet's film", symbol="h_s", unit="mm",
        decimals=3, formula="sheet_spread / glue_density", source="common-practice", only_if=DRYING,
    ),
    Solved(
        name="sheet_air", label="The air in the data sheet's test", function=sheet_air_state,
        source="ashrae-psychrometrics", only_if=DRYING,
        gives=(
            Given(name="sheet_vapour_pressure", label="Vapour pressure", unit="Pa", decimals=0),
            Given(name="sheet_air_density", label="Density", symbol="ρ_s",
                unit="kg/m3", decimals=3),
            Given(name="sheet_air_heat_capacity", label="Heat capacity", symbol="c_s",
                unit="J/kg/K",
                  decimals=0),
        ),
        method="As for the room.",
    ),
    Step(
        name="sheet_mass_transfer", label="Speed at which vapour was carried off there",
        symbol="h_ms",
        unit="m/s", decimals=5, source="lewis-relation", only_if=DRYING,
        formula="sheet_air_movement / (sheet_air_density * sheet_air_heat_capacity * "
        "lewis_number ** (2 / 3))",
    ),
    Solved(
        name="sheet_radiation_law", label="Radiation in the data sheet's test",
        function=sheet_radiation, source="radiation", only_if=DRYING,
        gives=(Given(name="sheet_radiation", label="Film coefficient of radiation", unit="W/m2/K",
                     decimals=2),),
        method="As for the room.",
    ),
    Solved(
        name="sheet_cells", label="The data sheet's film on the wood, cut into cells",
        function=cut_sheet_layers, source="heat-conduction", only_if=DRYING,
        gives=(Given(name="sheet_layers", label="Cells", unit="1", decimals=0, many=True),),
        method="Eight cells through the film; in the wood each cell is 1.15 times as deep as the "
        "one above. The wood's properties by the same equations, at the test's own moisture and "
        "temperature.",
    ),
    Solved(
        name="skinning", label="How much water is left when the glue counts as skinned",
        function=skin_point, source="stefan-flow", only_if=DRYING,
        gives=(
            Given(name="sheet_evaporated", label="Water gone into the air by then",
                unit="g/m2", decimals=1),
            Given(name="sheet_soaked", label="Water gone into the wood by then", unit="g/m2", decimals=1),
            Given(name="skinned_water", label="Share of its water that skinned glue still has",
                  symbol="f", unit="%", decimals=1),
        ),
        method="The data sheet's test is run in the model: heat through film and wood by finite "
        "volumes, a wet face that the evaporation cools, and soaking by the root of time.",
    ),
    Step(
        name="skinned_solids", label="Solids in the film when it counts as skinned", symbol="s_f",
        unit="%", decimals=0, source="common-practice", only_if=DRYING,
        formula="whole * solids / (solids + (whole - solids) * skinned_water / whole)",
    ),
    Solved(
        name="water_thinness", label="Warm water runs thinner", function=viscosity_ratio,
        source="iapws-viscosity", only_if=DRYING,
        gives=(Given(name="thinness",
            label="Viscosity of water at the data sheet's temperature over that in today's "
            "wood", symbol="η_r", unit="1", decimals=3),),
        method="Viscosity of water by the IAPWS equation at both temperatures.",
    ),
    Step(
        name="sorptivity_today", label="How fast today's wood soaks", symbol="S_w",
        unit="g/m2/s0.5",
        decimals=3, source="sorptivity", only_if=DRYING,
        formula="sorptivity * sqrt((fibre_saturation - wood_moisture) / "
        "(fibre_saturation - sheet_wood_moisture) * thinness)",
    ),
)  # fmt: skip

CLOCK_STEPS: tuple[Work, ...] = (
    Solved(
        name="plan_clock", label="The plan's time", function=plan_time, source="common-practice",
        gives=(Given(name="needed_time", label="Time the plan takes from the first bead",
                     symbol="t_p", unit="s", decimals=0),),
        method="For each operation the glue line over speed and hands, and the clamps, shared out "
        "whole between the hands, times the seconds each; added up from the first bead on.",
    ),
    Solved(
        name="cells", label="Film and wood, cut into cells", function=cut_layers,
        source="heat-conduction",
        gives=(Given(name="layers", label="Cells", unit="1", decimals=0, many=True),),
        method="Eight cells through the film; in the wood each cell is 1.15 times as deep as the "
        "one above.",
    ),
    Solved(
        name="cooling", label="The film cools", function=cooling_run, source="heat-conduction",
        only_if=COOLING,
        gives=(
            Given(name="open_time", label="Open time today",
                  symbol="t_o", unit="s", decimals=0),
            Given(name="span_words", label="Span", unit="1", decimals=0, text=True),
            Given(name="history", label="Course", unit="1", decimals=0, many=True),
        ),
        method="One-way conduction by finite volumes, implicit in time; the face loses heat to "
        "the air, to the walls and with the vapour, the back of the wood to air and walls.",
    ),
    Solved(
        name="drying", label="The film dries", function=drying_run,
        source="stefan-flow", only_if=DRYING,
        gives=(
            Given(name="open_time", label="Open time today", symbol="t_o", unit="s",
                  decimals=0),
            Given(name="evaporated", label="Water gone into the air by then", unit="g/m2", decimals=1),
            Given(name="soaked", label="Water gone into the wood by then", unit="g/m2", decimals=1),
            Given(name="skin_temperature", label="Temperature of the wet face then", unit="degC",
                  decimals=1),
            Given(name="span_words", label="Span", unit="1", decimals=0, text=True),
            Given(name="history", label="Course", unit="1", decimals=0, many=True),
        ),
        method="The same model as for the data sheet, with today's air, wood and spread.",
    ),
    Step(
        name="usable_time", label="Time the plan may use", symbol="t_u", unit="s", decimals=0,
        formula="open_time * (1 - margin / whole)", source="common-practice",
    ),
    Step(
        name="spare_time", label="Time to spare (below zero: too long)", symbol="t_l",
            unit="s",
        decimals=0, formula="usable_time - needed_time", source="common-practice",
    ),
    Solved(
        name="judging", label="What would make it fit", function=judge_plan,
        source="common-practice",
        gives=(
            Given(name="fewest_hands",
                label="Fewest pairs of hands that fit (0: not even eight do)",
                  unit="1", decimals=0),
            Given(name="glue_ups",
                label="Fewest glue-ups that each fit with today's hands (0: none do)",
                  unit="1", decimals=0),
            Given(name="rows", label="Rows", unit="1", decimals=0, many=True),
            Given(name="spreads", label="Which rows spread glue", unit="1", decimals=0, many=True),
            *(
                Given(name=f"{name}_words", label=label, unit="1", decimals=0, text=True)
                for name, label in (
                    ("open", "Open"), ("needed", "Plan"), ("usable", "May use"), ("hands", "Hands"),
                    ("run_out", "Runs out"), ("remedy", "Way out"),
                )
            ),
        ),
        method="Hands by trial from one pair to eight. A split may come only after an operation "
        "that sets clamps and before one that spreads glue; each glue-up is filled as far as it "
        "fits.",
    ),
    Said(
        name="verdict", label="Does the plan fit?",
        cases=(
            ("needed_time <= usable_time",
             "It fits: with {hands_words} the plan takes {needed_words}, and {usable_words} may "
             "be used."),
            ("", "It does not fit: with {hands_words} the plan takes {needed_words}, and only "
             "{usable_words} may be used. {remedy_words}"),
        ),
    ),
    Said(
        name="open_said", label="How long the glue stays open",
        cases=(
            ("glue == 'cooling' and open_time < 3",
             "It jells as it touches the wood, in {open_words}: there is no time to work. Warm "
             "the wood."),
            (COOLING, "The film reaches its jelly point {open_words} after it is laid on."),
            ("", "Today the film skins {open_words} after it is spread; the data sheet gives "
             "{sheet_open_time} in its own air."),
        ),
    ),
    Said(name="runs_out", label="The glue spread first runs out", cases=(("",
    "{run_out_words}."),)),
    Said(name="span", label="What a wrong guess does", cases=(("", "{span_words}"),)),
)  # fmt: skip

WORK: tuple[Work, ...] = (
    Limit(
        holds="gel_temperature < pot_temperature", blames="gel_temperature", only_if=COOLING,
        source="common-practice",
        otherwise="The glue would be a jelly in the pot already: its jelly point, "
        "{gel_temperature}, is not below the pot, {pot_temperature}",
        allowed="a jelly point below the temperature of the pot",
    ),
    *WOOD_STEPS,
    *AIR_STEPS,
    *DRYING_STEPS,
    *CLOCK_STEPS,
)  # fmt: skip
