"""Outside figures that the dilution calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.solvent_vapour import mixture_limit, vapour_volume_m3
from ..laws.standard_air import standard_pressure_pa

THERMO = Source(
    id="thermo-volumes",
    title="thermo 0.6.1, liquid densities and vapour volumes of solvents",
    kind="library",
    note="Vapour a litre at 20 °C and 101325 Pa, and air to a quarter of the limit at 70 °F. "
    "Worked out independently of this project.",
)
CHEMICALS = Source(
    id="chemicals-mixing",
    title="chemicals 1.5.2, rule of mixtures for explosive limits (fire_mixing)",
    kind="library",
)
PSYCHROLIB = Source(
    id="psychrolib-pressure",
    title="PsychroLib 2.5.0, pressure of the standard atmosphere",
    kind="library",
)
COOLPROP = Source(
    id="coolprop-heat",
    title="CoolProp 8.0.0, density and enthalpy of dry air",
    kind="library",
    note="Flow over 3600, times density, times the difference of enthalpy.",
)
DECAY = Source(
    id="decay",
    title="exp(-Q·t/V) worked out with double precision, six air changes for half an hour",
    kind="library",
    note="Computed with Python apart from this project.",
)
CHECK_SOURCES = (THERMO, CHEMICALS, PSYCHROLIB, COOLPROP, DECAY)
NONE = {"butyl_acetate": 0, "toluene": 0, "acetone": 0, "isopropyl_alcohol": 0, "ethyl_acetate": 0}


def _volume(words: str, density: float, mass: float, volume: str) -> Check:
    return Check(
        function=vapour_volume_m3, source="thermo-volumes", origin="library", unit="m3",
        given={"litres": 1.0, "density_kg_m3": density, "molar_mass_g_mol": mass,
               "temperature_c": 20.0, "pressure_pa": 101325.0},
        where=f"vapour of a litre of {words} at 20 °C", expected={"": volume}, within="0.02 %",
        because="our density is rounded to a tenth and that of three solvents is CoolProp's",
    )  # fmt: skip


def _quarter(name: str, words: str, air: str, within: str = "0.9 %") -> Check:
    return Check(
        inputs={**NONE, name: 1, "fire_share": "quarter", "mixing_factor": 1,
                "room_temperature": "70 degF"},
        source="thermo-volumes", origin="library",
        where=f"air to a quarter of the lower limit, 1 L of {words} at 70 °F",
        expected={"fire_air": air}, within=within,
        because="the source takes 4·(100 - L)/L, three volumes of vapour less than the balance, "
        "and the density at 70 °F instead of 20 °C",
    )  # fmt: skip


def _mixing(shares: list[float], limits: list[float], limit: str) -> Check:
    return Check(
        function=mixture_limit, given={"amounts": shares, "limits": limits}, origin="library",
        source="chemicals-mixing", where=f"shares {shares}, limits {limits}", expected={"": limit},
    )  # fmt: skip


def _height(metres: float, pascal: str) -> Check:
    return Check(
        function=standard_pressure_pa, given={"height_m": metres}, expected={"": pascal},
        source="psychrolib-pressure", origin="library", where=f"{metres:g} m", unit="Pa",
    )  # fmt: skip


CHECKS = (
    _volume("toluene", 866.9, 92.138, "0.22632"),
    _volume("n-butyl acetate", 881.0, 116.158, "0.18244"),
    _volume("acetone", 790.3, 58.079, "0.32731"),
    _volume("isopropyl alcohol", 786.7, 60.095, "0.31492"),
    _quarter("toluene", "toluene", "89.86"),
    _quarter("butyl_acetate", "n-butyl acetate", "60.24", "1.1 %"),
    _quarter("acetone", "acetone", "51.17", "2.1 %"),
    _quarter("isopropyl_alcohol", "isopropyl alcohol", "61.87", "1.7 %"),
    _mixing([0.5, 0.3, 0.2], [1.2, 1.0, 2.5], "1.25523012552"),
    _mixing([0.2, 0.8], [3.1, 1.4], "1.57246376812"),
    _mixing([0.25, 0.25, 0.25, 0.25], [150.0, 100.0, 400.0, 200.0], "165.517241379"),
    _height(500, "95460.81"),
    _height(1500, "84555.93"),
    _height(2000, "79495.12"),
    Check(
        inputs={"room_volume": 100, "air_flow": 600, "mixing_factor": 1, "fall_to": 4.9787},
        source="decay", origin="library", where="six changes an hour leave 4.9787 % after 30 min",
        expected={"clear_time": "30.00"},
    ),
    Check(
        inputs={"air_flow": 3000, "room_temperature": 22, "outdoor_temperature": 0},
        source="coolprop-heat", origin="library", where="3000 m³/h from 0 °C to 22 °C",
        expected={"heat_now": "22.06353", "air_density": "1.19639"}, within="0.1 %",
        because="the heat capacity is taken as 1006 J/(kg·K) throughout and air as ideal",
    ),
    Check(
        inputs={"air_flow": 1800, "room_temperature": 20, "outdoor_temperature": -10},
        source="coolprop-heat", origin="library", where="1800 m³/h from -10 °C to 20 °C",
        expected={"heat_now": "18.17341"}, within="0.1 %",
        because="the heat capacity is taken as 1006 J/(kg·K) throughout and air as ideal",
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="air-against-fire",
        situation="You wipe down with {toluene} of toluene and nothing else, and all of it evaporates "
        "within the hour. The room mixes with a factor of {mixing_factor} and is at "
        "{room_temperature}. How much air keeps the vapour "
        "below a quarter of the lower explosive limit?",
        asks="fire_air",
        within="3 %",
        draw={"toluene": (0.2, 1, 0.01), "mixing_factor": (2, 2.5, 3, 5, 5.5, 6),
              "room_temperature": (16, 28, 0.5)},
        fixed={**{name: 0 for name in NONE if name != "toluene"}, "fire_share": "quarter"},
        slips=(
            Slip(name="perfect-mixing", formula="fire_air / mixing_factor",
                 why="You took the room as perfectly mixed. Multiply by the mixing factor."),
            Slip(name="whole-limit",
                 formula="mixing_factor * vapour_rate * (whole - mix_lfl) / mix_lfl",
                 why="That lets vapour rise to the explosive limit itself. Keep to a quarter."),
            Slip(name="liquid-for-vapour", formula="fire_air * toluene / (vapour_rate * 1000)",
                 why="You diluted the liquid. A litre of toluene makes some 226 litres of "
                 "vapour: dilute that."),
        ),
    ),
    Exercise(
        name="how-long-to-wait",
        situation="The room holds {room_volume}, the fan draws {air_flow}, the mixing factor is "
        "{mixing_factor}. How long until the vapour has fallen to {fall_to} of what it was?",
        asks="clear_time",
        within="3 %",
        draw={"room_volume": (40, 120, 1), "air_flow": (1500, 5000, 50), "fall_to": (4, 7.5, 0.1),
              "mixing_factor": (4, 6, 0.5)},
        slips=(
            Slip(name="forgot-mixing", formula="clear_time / mixing_factor",
                 why="Corners clear slower than the mean: multiply by the mixing factor."),
            Slip(name="one-change", formula="mixing_time",
                 why="One change of air leaves 37 %, not nothing. It falls by the same share "
                 "again and again: take the logarithm."),
            Slip(name="common-logarithm", formula="mixing_time * log10(whole / fall_to)",
                 why="You took the logarithm to ten. It must be the natural one."),
        ),
    ),
    Exercise(
        name="heat",
        situation="The booth draws {air_flow}. It is {outdoor_temperature} outdoors and "
        "{room_temperature} indoors. How much heat does the air that comes in need?",
        asks="heat_now",
        within="3 %",
        draw={"air_flow": (2000, 6000, 50), "outdoor_temperature": (-18, -8, 0.5),
              "room_temperature": (18, 25, 0.5)},
        slips=(
            Slip(name="volume-for-mass", formula="heat_now / air_density",
                 why="You took a cubic metre for a kilogram. Multiply by the density."),
            Slip(name="minutes-for-seconds", formula="heat_now * min_per_h",
                 why="The flow is by the hour: divide by 3600 seconds, not by 60."),
            Slip(name="from-freezing", formula="heat_now * room_temperature / warmed_by",
                 why="You warmed the air from freezing. It comes in as cold as it is outdoors."),
        ),
    ),
)  # fmt: skip

FLOWS = (
    60, 80, 100, 120, 150, 180, 220, 260, 320, 400, 500, 700, 1000, 1500, 2000, 2500, 3000, 3500, 4000,
    4500, 5000, 5500, 6000, 6500, 7000, 8000, 9000, 10000, 12000,
)  # fmt: skip
DECISIONS = (
    Decision(
        name="is-the-air-enough",
        situation="{butyl_acetate} of n-butyl acetate and {acetone} of acetone go into the air of "
        "the spray room, nothing else, all within the hour. The room mixes with a factor of "
        "{mixing_factor} and is at {room_temperature}; the fan draws {air_flow} out to the open. "
        "Vapour must stay below a tenth of the lower explosive limit, and below the limits for "
        "lungs, which the page has. What does the estimate say?",
        options=(
            Option(
                words="Do not spray: too little air against fire",
                holds="air_flow <= 0.92 * fire_air",
                why="Against fire the estimate asks {fire_air}, and the fan draws {air_flow}.",
            ),
            Option(
                words="Enough against fire, too little for lungs: more air or less solvent first",
                holds="air_flow >= 1.08 * fire_air and air_flow <= 0.92 * health_air",
                why="It asks {fire_air} against fire and {health_air} for lungs, and the fan draws "
                "{air_flow}.",
            ),
            Option(
                words="Enough for both: have it measured, and keep the fitted respirator on",
                holds="air_flow >= 1.08 * air_needed",
                why="It asks {fire_air} against fire and {health_air} for lungs; {air_flow} is not "
                "enough for both.",
            ),
        ),
        because="The estimate asks {fire_air} against fire and {health_air} for lungs; the fan draws "
        "{air_flow}. It is an estimate, no design: the local code and a licensed engineer decide.",
        draw={"butyl_acetate": (0.05, 0.6, 0.01), "acetone": (0.05, 0.6, 0.01),
              "mixing_factor": (2, 5, 0.5), "room_temperature": (18, 26, 0.5),
              "air_flow": FLOWS},
        fixed={name: 0 for name in NONE if name not in ("butyl_acetate", "acetone")},
    ),
)  # fmt: skip
