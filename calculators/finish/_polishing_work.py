"""The steps of the polishing calculation, from the wheel to the safe window of force."""

from ..engine.declaration import Given, Limit, Solved, Step, Work
from ._polishing_solved import (
    band_share,
    film_on_wood,
    further_passes,
    still_time,
    upper_end,
    whole_passes,
    wood_carry,
)

MEASURED = "trial == 'measured'"
ENOUGH = "trial == 'measured' and film_taken <= spare_film"

_limits: tuple[Work, ...] = (
    Limit(
        holds="contact_length <= wheel_diameter", blames="contact_length", source="common-practice",
        otherwise="A wheel cannot touch along more than its own diameter; measure the print again",
        allowed="a contact length of at most {wheel_diameter}",
    ),
    Limit(
        holds="edge_width <= contact_width", blames="edge_width", source="common-practice",
        otherwise="At an edge the contact is narrower than on the flat, not wider; measure both",
        allowed="at most the contact width, {contact_width}",
    ),
    Limit(
        holds="least_film < film_thickness", blames="film_thickness", source="common-practice",
        otherwise="The film, {film_thickness}, has nothing to spare over the least film of "
        "{least_film}: no wheel on it before another coat",
        allowed="a film thicker than {least_film}",
    ),
    Limit(
        holds="start_temperature < softening_temperature - safety_margin",
        blames="start_temperature", source="common-practice",
        otherwise="The lacquer starts at {start_temperature}, which leaves nothing to stay "
        "{safety_margin} below softening at {softening_temperature}: let it cool, or look over "
        "the margin",
        allowed="a start more than {safety_margin} below {softening_temperature}",
    ),
)  # fmt: skip

_wheel: tuple[Work, ...] = (
    Step(
        name="mean_pressure", label="Mean pressure", symbol="p", unit="kPa", decimals=1,
        formula="pressing_force / (contact_length * contact_width) * kpa_per_mpa",
        source="common-practice",
    ),
    Step(
        name="rubbing_speed", label="Rubbing speed of the rim", symbol="V", unit="m/s", decimals=1,
        formula="pi * wheel_diameter * turning_speed / (mm_per_m * s_per_min)", source="rim-speed",
    ),
    Limit(
        holds="rubbing_speed <= 50", blames="turning_speed", source="common-practice",
        otherwise="The rim would run at {rubbing_speed}, faster than any polishing wheel may turn; "
        "look over diameter and turning speed",
        allowed="a rim speed of at most 50 m/s, and never more than is stamped on the wheel",
    ),
    Step(
        name="heat_flux", label="Heat flux into the lacquer", symbol="q", unit="kW/m2", decimals=1,
        formula="heat_share / whole * friction * mean_pressure * rubbing_speed",
        source="jaeger-band",
    ),
)  # fmt: skip

_passing: tuple[Work, ...] = (
    Step(
        name="diffusivity", label="Diffusivity of the lacquer", symbol="α", unit="mm2/s",
        decimals=4, formula="conductivity / (density * heat_capacity) * mm2_per_m2",
        source="carslaw-jaeger",
    ),
    Step(
        name="peclet", label="Péclet number, with half the contact length", symbol="L", unit="1",
        decimals=1, formula="travel_speed * (contact_length / 2) / (2 * diffusivity)",
        source="jaeger-band",
    ),
    Step(
        name="time_under", label="Time a place spends under the wheel", symbol="t_w", unit="s",
        decimals=3, formula="contact_length / travel_speed", source="carslaw-jaeger",
    ),
    Step(
        name="fast_rise", label="Rise of thick lacquer, closed form for a fast source",
        symbol="ΔT_f", unit="K", decimals=1, source="jaeger-band",
        formula="2 * heat_flux * sqrt(diffusivity * time_under / pi) / conductivity",
    ),
    Solved(
        name="band", label="Jaeger's full answer beside the closed form", function=band_share,
        gives=(
            Given(name="band_factor", label="Full over closed form", symbol="j", unit="1",
                  decimals=4),
        ),
        method="The integral over the band, closed with the Bessel functions K0 and K1, at its "
        "greatest: the place is found by Newton's method. For any Péclet number.",
        source="jaeger-band",
    ),
    Step(
        name="thick_rise", label="Rise of thick lacquer under the passing wheel", symbol="ΔT_j",
        unit="K", decimals=1, formula="fast_rise * band_factor", source="jaeger-band",
    ),
    Step(
        name="penetration", label="Depth the warmth reaches meanwhile (a tenth of the surface's)",
        symbol="δ", unit="um", decimals=0, source="carslaw-jaeger",
        formula="2 * sqrt(diffusivity * time_under) * um_per_mm",
    ),
    Solved(
        name="wood_beside_lacquer", label="Wood beside lacquer", function=wood_carry,
        gives=(
            Given(name="carry", label="The wood carries heat off as well as thick lacquer, times",
                  symbol="r", unit="1", decimals=3),
        ),
        method="The root of conductivity times density times heat capacity, wood over lacquer.",
        source="building-materials",
    ),
    Solved(
        name="on_wood", label="The film on its wood, beside thick lacquer", function=film_on_wood,
        gives=(
            Given(name="wood_factor", label="Under the passing wheel, times", symbol="f",
                  unit="1", decimals=3),
            Given(name="still_factor", label="Under the wheel standing still, times", symbol="f_d",
                  unit="1", decimals=3),
            Given(name="edge_factor", label="At the edge, times", symbol="f_e", unit="1",
                  decimals=3),
        ),
        method="Constant flux on a film over another deep body: the heat mirrored to and fro in "
        "the film, summed until nothing is added.",
        source="carslaw-jaeger",
    ),
    Step(
        name="peak_rise", label="Rise of the film under the passing wheel", symbol="ΔT", unit="K",
        decimals=1, formula="thick_rise * wood_factor", source="carslaw-jaeger",
    ),
    Step(
        name="peak_temperature", label="Peak temperature of the film", symbol="T", unit="degC",
        decimals=0, formula="start_temperature + peak_rise", source="carslaw-jaeger",
    ),
    Limit(
        holds="peak_temperature <= 300", blames="pressing_force", source="common-practice",
        otherwise="One pass would bring the film to {peak_temperature}, where no lacquer is left; "
        "look over force, contact, turning speed, travel speed and the share of heat",
        allowed="figures that keep a passing wheel below 300 °C",
    ),
)  # fmt: skip

_standing: tuple[Work, ...] = (
    Step(
        name="still_rise", label="Rise of thick lacquer, wheel standing still", symbol="ΔT_d",
        unit="K", decimals=1, source="carslaw-jaeger",
        formula="2 * heat_flux * sqrt(diffusivity * dwell / pi) / conductivity",
    ),
    Step(
        name="still_temperature", label="Film after standing still", symbol="T_d", unit="degC",
        decimals=0, formula="start_temperature + still_rise * still_factor",
        source="carslaw-jaeger",
    ),
    Solved(
        name="still", label="The film on its wood, wheel standing still", function=still_time,
        gives=(
            Given(name="still_time", label="Softens, wheel standing still, after", symbol="t_s",
                  unit="s", decimals=2),
        ),
        method="The time at which the film on its wood has risen to softening, closed in between "
        "the times for thick lacquer and for bare wood.",
        source="carslaw-jaeger",
    ),
)  # fmt: skip

_window: tuple[Work, ...] = (
    Step(
        name="allowed_rise", label="Rise allowed", symbol="ΔT_a", unit="K", decimals=0,
        formula="softening_temperature - safety_margin - start_temperature",
        source="common-practice",
    ),
    Step(
        name="force_hot", label="Force at which the film gets too hot", symbol="F_h", unit="N",
        decimals=1, formula="pressing_force * allowed_rise / peak_rise", source="carslaw-jaeger",
    ),
    Step(
        name="spare_film", label="Film to spare", symbol="h_s", unit="um", decimals=0,
        formula="film_thickness - least_film", source="common-practice",
    ),
    Step(
        name="trial_pressure", label="Mean pressure in the trial", symbol="p_t", unit="kPa",
        decimals=1, only_if=MEASURED, source="common-practice",
        formula="trial_force / (contact_length * trial_contact_width) * kpa_per_mpa",
    ),
    Step(
        name="wear", label="Preston's coefficient, from the trial: film off over pressure, rubbing "
        "speed and time", symbol="K_P", unit="um/kPa/m", decimals=4, only_if=MEASURED,
        formula="trial_film_lost / trial_passes / (trial_pressure * rubbing_speed"
        " * trial_turning_speed / turning_speed * contact_length / trial_travel_speed)",
        source="preston",
    ),
    Step(
        name="removal", label="Film taken off by one pass", symbol="Δh", unit="um", decimals=2,
        only_if=MEASURED, formula="wear * mean_pressure * rubbing_speed * time_under",
        source="preston",
    ),
    Step(
        name="force_film", label="Force at which one pass takes all the film to spare",
        symbol="F_f", unit="N", decimals=0, only_if=MEASURED,
        formula="pressing_force * spare_film / removal", source="preston",
    ),
    Step(
        name="force_lowest", label="Safe window of force, from (flat in time)", symbol="F_1",
        unit="N", decimals=1, only_if=MEASURED,
        formula="pressing_force * orange_peel / (most_passes * removal)", source="preston",
    ),
    Solved(
        name="upper_end", label="Upper end of the safe window", function=upper_end,
        gives=(
            Given(name="force_highest", label="Safe window of force, up to", symbol="F_2", unit="N",
                  decimals=1),
        ),
        method="The smaller of the two limits: the film gets too hot or, where a trial has been "
        "measured, one pass takes all the film to spare.",
        source="common-practice",
    ),
    Step(
        name="force_aim", label="Force to aim at, the middle of the window", symbol="F_m", unit="N",
        decimals=0, only_if="trial == 'measured' and force_lowest < force_highest",
        formula="(force_lowest + force_highest) / 2", source="common-practice",
    ),
)  # fmt: skip

_removal: tuple[Work, ...] = (
    Step(
        name="edge_removal", label="Film taken off the edge by one pass", symbol="Δh_e", unit="um",
        decimals=2, only_if=MEASURED, formula="removal * contact_width / edge_width",
        source="preston",
    ),
    Solved(
        name="whole_passes", label="Whole passes", function=whole_passes, only_if=MEASURED,
        gives=(
            Given(name="passes_to_flat", label="Passes to flat", symbol="N", unit="1", decimals=0),
            Given(name="edge_passes", label="Passes the edge can take before its least film",
                  symbol="N_e", unit="1", decimals=0),
            Given(name="edge_wood_pass", label="The wood shows at the edge on pass", symbol="N_ew",
                  unit="1", decimals=0),
        ),
        method="Peel over what one pass takes, rounded up; film to spare at the edge over what one "
        "pass takes there, rounded down; the whole film there over the same, rounded up.",
        source="preston",
    ),
    Step(
        name="film_taken", label="Film taken off when flat", symbol="h_o", unit="um", decimals=1,
        only_if=MEASURED, formula="passes_to_flat * removal", source="preston",
    ),
    Step(
        name="film_left", label="Film left when flat", symbol="h_l", unit="um", decimals=0,
        only_if="trial == 'measured' and film_taken <= film_thickness",
        formula="film_thickness - film_taken", source="preston",
    ),
    Step(
        name="margin_left", label="Left above the least film", symbol="h_m", unit="um", decimals=0,
        only_if=ENOUGH, formula="spare_film - film_taken", source="preston",
    ),
    Solved(
        name="further_passes", label="Whole passes beyond flat", function=further_passes,
        gives=(
            Given(name="passes_left", label="Further passes before the least film", symbol="N_k",
                  unit="1", decimals=0),
            Given(name="passes_to_wood", label="The wood shows on further pass", symbol="N_w",
                  unit="1", decimals=0),
        ),
        method="What is left above the least film over what one pass takes, rounded down; all that "
        "is left over the same, rounded up.",
        source="preston", only_if=ENOUGH,
    ),
)  # fmt: skip

_edge: tuple[Work, ...] = (
    Step(
        name="edge_pressure", label="Mean pressure at the edge", symbol="p_e", unit="kPa",
        decimals=1, formula="mean_pressure * contact_width / edge_width", source="common-practice",
    ),
    Step(
        name="edge_temperature", label="Peak temperature at the edge", symbol="T_e", unit="degC",
        decimals=0, source="carslaw-jaeger",
        formula="start_temperature + thick_rise * edge_factor * contact_width / edge_width",
    ),
    Step(
        name="edge_force_hot", label="Force at which the edge gets too hot", symbol="F_e",
        unit="N", decimals=1, source="carslaw-jaeger",
        formula="pressing_force * allowed_rise / (edge_temperature - start_temperature)",
    ),
    Step(
        name="edge_left", label="Film left at the edge when the flat is level", symbol="h_el",
        unit="um", decimals=0, formula="edge_film - passes_to_flat * edge_removal",
        only_if="trial == 'measured' and passes_to_flat * edge_removal < edge_film",
        source="preston",
    ),
)  # fmt: skip

work: tuple[Work, ...] = (
    *_limits, *_wheel, *_passing, *_standing, *_window, *_removal, *_edge,
)  # fmt: skip
