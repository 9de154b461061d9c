"""The parts of the blushing calculation that need more than a formula."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from ..engine.declaration import Refusal
from ..laws.dew_point import dew_point_c
from ..laws.psychrometrics import saturation_pressure_pa
from ..laws.solvent_evaporation import SOLVENTS, Air, Leaving, air_along, leaving, wet_bulb_c
from ..laws.wet_film import Moment, chill
from ._polishing_solved import WOODS

RETARDER = "butyl glycol"
UNTIL_S = 600.0
# Parts by volume: common practice, from memory.
MIXES: dict[str, dict[str, float]] = {
    "fast": {"acetone": 30, "ethyl acetate": 15, "isopropanol": 10, "toluene": 30,
             "butyl acetate": 15},
    "medium": {"acetone": 10, "butanone": 10, "isopropanol": 10, "toluene": 40,
               "butyl acetate": 25, "butyl glycol": 5},
    "slow": {"isopropanol": 5, "toluene": 30, "xylene": 10, "butyl acetate": 40, "butanol": 5,
             "butyl glycol": 10},
}  # fmt: skip
OTHER_NAMES = {
    "mek": "butanone", "methyl ethyl ketone": "butanone", "2-butanone": "butanone",
    "ipa": "isopropanol", "isopropyl alcohol": "isopropanol", "2-propanol": "isopropanol",
    "n-butyl acetate": "butyl acetate", "butylacetate": "butyl acetate",
    "ethylacetate": "ethyl acetate", "alcohol": "ethanol", "ethyl alcohol": "ethanol",
    "n-butanol": "butanol", "1-butanol": "butanol", "butyl alcohol": "butanol",
    "toluol": "toluene", "xylol": "xylene", "2-butoxyethanol": "butyl glycol",
    "butyl cellosolve": "butyl glycol",
}  # fmt: skip
MORE_RETARDER, WARMER_K, DRIER = 10.0, 3.0, 10.0  # the changes that are tried, %, K, %


class Coat(NamedTuple):
    """One coat in one room, in the units of the inputs (°C, %, µm, mm, m/s, K)."""

    room_temperature: float
    mix: Mapping[str, float]  # parts by volume
    retarder_added: float
    wet_film: float
    solids_sprayed: float
    body_temperature: float
    wood: str
    plate_thickness: float
    air_speed: float
    surface_length: float
    landing_drop: float
    evaporation_share: float


def mix_of(thinner: str, solvents: Sequence[Mapping[str, Any]] = ()) -> Mapping[str, float]:
    """Parts by volume of each solvent: a mix of ours, or the reader's own rows."""
    if thinner in MIXES:
        return MIXES[thinner]
    mix: dict[str, float] = {}
    for place, row in enumerate(solvents):
        words = " ".join(str(row["solvent"]).lower().split())
        name = OTHER_NAMES.get(words, words)
        if name not in SOLVENTS:
            known = ", ".join(sorted(SOLVENTS))
            raise Refusal(
                "solvents",
                f"Row {place + 1}: no figures are known for '{row['solvent']}'; take the known "
                "solvent that evaporates about as fast",
                known,
            )
        mix[name] = mix.get(name, 0.0) + row["parts"]
    return mix


def moles_m2(coat: Coat, air: Air) -> dict[Leaving, float]:
    """The solvents in a square metre of the wet coat, mol, retarder included.

    Volumes are taken to add up; the resin, of huge molecules, counts for none.
    """
    parts = dict(coat.mix)
    whole = sum(parts.values())
    parts[RETARDER] = parts.get(RETARDER, 0.0) + whole * coat.retarder_added / 100
    litres = coat.wet_film * 1e-6 * (1 - coat.solids_sprayed / 100)
    total = sum(parts.values())
    return {
        leaving(SOLVENTS[name], air): litres * share / total * SOLVENTS[name].density_kg_m3 * 1000
        / SOLVENTS[name].molar_mass_g_mol
        for name, share in parts.items()
        if share > 0
    }  # fmt: skip


def history(coat: Coat) -> list[Moment]:
    """The film's temperature from the moment that it lies; method: ``laws.wet_film.chill``."""
    air = _air(coat)
    conductivity, density, heat = WOODS[coat.wood]
    return chill(
        moles_m2(coat, air), air, coat.wet_film * 1e-6, coat.room_temperature - coat.landing_drop,
        (conductivity, density * heat), coat.plate_thickness / 1000, coat.body_temperature,
        coat.evaporation_share / 100, UNTIL_S,
    )  # fmt: skip


def room_air(room_temperature: float, room_humidity: float) -> Mapping[str, float]:
    """Dew point, °C, and saturation pressure, kPa, of the room's air, °C and %.

    Source: ASHRAE, as in ``laws.psychrometrics`` and ``laws.dew_point``.
    """
    return {
        "dew_point": dew_point_c(room_temperature, room_humidity),
        "saturation": saturation_pressure_pa(room_temperature) / 1000,
    }


def coat_of(
    room_temperature: float, thinner: str, retarder_added: float, wet_film: float,
    solids_sprayed: float, body_temperature: float, wood: str, plate_thickness: float,
    air_speed: float, surface_length: float, landing_drop: float, evaporation_share: float,
    solvents: Sequence[Mapping[str, Any]] = (),
) -> Mapping[str, Any]:  # fmt: skip
    """The coat in the units of the inputs, and its solvents' mass, g/m² (volumes add up)."""
    coat = Coat(
        room_temperature, mix_of(thinner, solvents), retarder_added, wet_film, solids_sprayed,
        body_temperature, wood, plate_thickness, air_speed, surface_length, landing_drop,
        evaporation_share,
    )  # fmt: skip
    parts = moles_m2(coat, _air(coat))
    mass = sum(moles * part.solvent.molar_mass_g_mol for part, moles in parts.items())
    return {"coat": coat, "solvent_mass": mass}


def _air(coat: Coat) -> Air:
    return air_along(coat.room_temperature, coat.air_speed, coat.surface_length / 1000)


def draughted_bulb(coat: Coat) -> Mapping[str, float]:
    """Where the fresh mix would settle with warmth from the air alone, °C: its wet bulb.

    And the air's heat coefficient, W/(m²·K). Method: ``laws.solvent_evaporation.wet_bulb_c``.
    """
    air = _air(coat)
    return {
        "worst": wet_bulb_c(moles_m2(coat, air), air, coat.evaporation_share / 100),
        "air_coefficient": air.plate_w_m2_k,
    }


def film_of_the_coat(coat: Coat, dew_point: float, room_humidity: float) -> Mapping[str, Any]:
    """The film after spraying: how cold, when, how long below the dew point, and what helps.

    Temperatures in °C, times in s, solvent gone in % of its volume. Each row of ``changes`` is
    one change alone, worked out anew. Method: ``laws.wet_film.chill``.
    """
    film = history(coat)
    coldest = min(film, key=lambda moment: moment.film_c)
    below = sum(
        after.time_s - before.time_s for before, after in pairwise(film) if after.film_c < dew_point
    )
    changes = _changes(coat, coldest.film_c, dew_point, room_humidity)
    best = max(changes[1:], key=lambda row: row["margin_then"])
    return {
        "coldest_film": coldest.film_c,
        "coldest_after": coldest.time_s,
        "solvent_gone": 100 * (1 - coldest.left),
        "seconds_below": below,
        "film_history": [(moment.time_s, moment.film_c) for moment in film],
        "changes": changes,
        "best_change": best["change"],
        "best_margin": best["margin_then"],
    }


def _changes(
    coat: Coat, coldest: float, dew_point: float, room_humidity: float
) -> list[dict[str, Any]]:
    """What one change alone would do to the coldest film and the dew point, °C."""
    rows = [("As it is", coldest, dew_point)]
    more = coat._replace(retarder_added=coat.retarder_added + MORE_RETARDER)
    rows.append((f"{MORE_RETARDER:g} parts more retarder", _coldest(more), dew_point))
    if coat.mix is not MIXES["slow"]:
        slow = coat._replace(mix=MIXES["slow"])
        rows.append(("The slow mix in place of this one", _coldest(slow), dew_point))
    warm = coat._replace(
        room_temperature=coat.room_temperature + WARMER_K,
        body_temperature=coat.body_temperature + WARMER_K,
    )
    rows.append((f"Room and work {WARMER_K:g} K warmer, same damp", _coldest(warm), dew_point))
    if room_humidity > 2 * DRIER:
        dry = dew_point_c(coat.room_temperature, room_humidity - DRIER)
        rows.append((f"{DRIER:g} % less humidity", coldest, dry))
    return [
        {"change": words, "coldest_then": film, "dew_then": dew, "margin_then": film - dew}
        for words, film, dew in rows
    ]


def _coldest(coat: Coat) -> float:
    return min(moment.film_c for moment in history(coat))


def humidity_that_will_do(
    coldest_film: float, safety_margin: float, saturation: float
) -> Mapping[str, float]:
    """Highest relative humidity, %, whose dew point lies the margin, K, below the coldest film.

    The film's own chill hardly asks for the damp: saturation at that temperature over that of
    the room (kPa). Source: the definition of relative humidity.
    """
    at_film = saturation_pressure_pa(coldest_film - safety_margin) / 1000
    return {"highest_humidity": 100 * at_film / saturation}
