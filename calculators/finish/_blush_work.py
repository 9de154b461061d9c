"""The steps of the blushing calculation."""

from ..engine.declaration import Given, Said, Solved, Step, Work
from ._blush_solved import (
    coat_of,
    draughted_bulb,
    film_of_the_coat,
    humidity_that_will_do,
    room_air,
)

work: tuple[Work, ...] = (
    Solved(
        name="air", label="Air of the room", function=room_air,
        gives=(
            Given(name="dew_point", label="Dew point of the room", symbol="T_d", unit="degC",
                  decimals=1),
            Given(name="saturation", label="Vapour pressure of water at room temperature",
                  symbol="p_s", unit="kPa", decimals=3),
        ),
        method="Saturation pressure after Hyland and Wexler; the dew point by Newton's rule.",
        source="ashrae-psychrometrics",
    ),
    Step(
        name="vapour_in_air", label="Vapour pressure of the damp in the air", symbol="p_v",
        unit="kPa", decimals=3, formula="saturation * room_humidity / whole",
        source="ashrae-psychrometrics",
    ),
    Step(
        name="solvent_film", label="Solvent in the wet coat, as a film", symbol="w_s", unit="um",
        decimals=0, formula="wet_film * (1 - solids_sprayed / whole)",
        source="dry-film-relation",
    ),
    Solved(
        name="coat_given", label="Solvents in the coat", function=coat_of,
        gives=(
            Given(name="coat", label="The coat", unit="1", decimals=0, many=True),
            Given(name="solvent_mass", label="Solvent in a square metre of the wet coat",
                  symbol="m_s", unit="g/m2", decimals=0),
        ),
        method="Wet film less solids, shared out by the mix and the retarder, each with its own "
        "density.",
        source="solvent-data",
    ),
    Solved(
        name="bulb", label="Warmth from the air alone", function=draughted_bulb,
        gives=(
            Given(name="worst", label="Coldest it could get with no warmth from wood and walls",
                  symbol="T_w", unit="degC", decimals=1),
            Given(name="air_coefficient", label="Heat coefficient of the air along the work",
                  symbol="h", unit="W/m2/K", decimals=1),
        ),
        method="The temperature at which the mix takes up by evaporating just what the air brings: "
        "the wet bulb of the solvents, with Fuller's diffusion coefficients; by bisection.",
        source="fuller",
    ),
    Solved(
        name="film", label="The film as its solvents leave", function=film_of_the_coat,
        gives=(
            Given(name="coldest_film", label="Coldest that the film gets", symbol="T_f",
                  unit="degC", decimals=1),
            Given(name="coldest_after", label="That is, after spraying, after about",
                  symbol="t_f", unit="s", decimals=0),
            Given(name="solvent_gone", label="Solvent gone by then", symbol="g", unit="%",
                  decimals=0),
            Given(name="seconds_below", label="Colder than the dew point for about",
                  symbol="t_d", unit="s", decimals=0),
            Given(name="film_history", label="Film, moment by moment", unit="degC", decimals=1,
                  many=True),
            Given(name="changes", label="What helps", unit="degC", decimals=1, many=True),
            Given(name="best_change", label="What helps most", unit="1", decimals=0, text=True),
            Given(name="best_margin", label="Margin with the change that helps most",
                  symbol="m_b", unit="K", decimals=1),
        ),
        method="Each solvent leaves by its vapour pressure in the mix and the air's heat "
        "coefficient (Chilton and Colburn); evaporation is set against warmth from air, walls "
        "and wood, step by step, with the wood cut into cells.",
        source="chilton-colburn",
    ),
    Step(
        name="margin", label="Film above the dew point by", symbol="m_f", unit="K", decimals=1,
        formula="coldest_film - dew_point", source="ashrae-psychrometrics",
    ),
    Step(
        name="film_chill", label="Film colder than the room by", symbol="ΔT_f", unit="K",
        decimals=1, formula="room_temperature - coldest_film", source="chilton-colburn",
    ),
    Solved(
        name="humidity_limit", label="Highest humidity", function=humidity_that_will_do,
        only_if="coldest_film - safety_margin <= room_temperature",
        gives=(
            Given(name="highest_humidity", label="Highest humidity that keeps the margin",
                  symbol="φ_m", unit="%", decimals=0),
        ),
        method="Saturation pressure at the coldest film less the margin, over that of the room.",
        source="ashrae-psychrometrics",
    ),
    Said(
        name="verdict", label="Verdict",
        cases=(
            ("body_temperature <= dew_point",
             "Do not spray: the instrument itself, {body_temperature}, is no warmer than the dew "
             "point, {dew_point}. It is damp already. Let it stand in the room."),
            ("margin < 0",
             "It will go milky: the film cools to {coldest_film}, and dew falls at {dew_point}."),
            ("margin < safety_margin",
             "Close: the film cools to {coldest_film}, only {margin} above the dew point, "
             "{dew_point}; {safety_margin} is wanted."),
            ("",
             "Clear: the film cools to {coldest_film}, {margin} above the dew point, "
             "{dew_point}."),
        ),
    ),
    Said(
        name="help_words", label="What helps most",
        cases=(
            ("margin >= safety_margin", "Nothing is needed."),
            ("best_margin < safety_margin",
             "{best_change}, but that alone makes it {best_margin}: wait for another day, or put "
             "several together."),
            ("", "{best_change}: the margin becomes {best_margin}."),
        ),
    ),
)  # fmt: skip
