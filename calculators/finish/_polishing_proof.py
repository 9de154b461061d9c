"""Outside figures that the polishing calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip
from ..laws.few_readings import next_reading_below
from ..laws.moving_source import band_peak
from ._polishing_solved import wood_carry

# A rim at 1 m/s that leaves all its heat (friction 0.5) on 30 mm by 20 mm of a lacquer with
# k = 0.2 W/(m·K) and α = 1.1e-7 m²/s: 1 N makes a flux of 833.3 W/m².
PLAIN = {
    "wheel_diameter": 300, "turning_speed": 63.66197723675814, "contact_length": 30,
    "contact_width": 20, "edge_width": 20, "friction": 0.5, "heat_share": 100, "wood": "none",
    "conductivity": 0.2, "density": 1000, "heat_capacity": 1818.1818181818182,
    "trial": "not yet", "touch": "none",
}  # fmt: skip
# The same rim with 24 N (20 kW/m²) on 180 µm of acrylic over spruce.
FILM = {
    **PLAIN, "pressing_force": 24, "wood": "spruce", "conductivity": 0.18, "density": 1180,
    "heat_capacity": 1500, "film_thickness": 180, "start_temperature": 20,
}  # fmt: skip


def _band(peclet: float, rise: str, place: str) -> Check:
    return Check(
        function=band_peak, given={"peclet": peclet}, expected={"rise": rise, "place": place},
        source="scipy-band", origin="library", where=f"band source, L = {peclet}",
    )  # fmt: skip


def _rim(diameter: str, turning: float, metres: str) -> Check:
    return Check(
        inputs={"wheel_diameter": diameter, "turning_speed": turning}, source="rim-speed",
        where=f"{diameter} at {turning} rpm", origin="library",
        expected={"rubbing_speed": metres},
    )  # fmt: skip


def _wood(wood: str, effusivity: str) -> Check:
    return Check(
        function=wood_carry, source="building-materials", origin="library",
        given={"wood": wood, "conductivity": 1.0, "density": 1.0, "heat_capacity": 1.0},
        where=f"effusivity of {wood}, beside a body of effusivity 1", expected={"": effusivity},
    )  # fmt: skip


def _flux(force: float, dwell: float, where: str, rise: str) -> Check:
    return Check(
        inputs={**PLAIN, "pressing_force": force, "dwell": dwell}, source="mpmath-flux",
        origin="library", where=where, expected={"still_rise": rise},
    )  # fmt: skip


CHECKS = (
    _band(0.1, "0.691254", "-0.2435"),
    _band(1, "3.11599", "-0.6664"),
    _band(2, "4.629471", "-0.7747"),
    _band(5, "7.612712", "-0.8759"),
    _band(10, "10.948443", "-0.9244"),
    _band(20, "15.639733", "-0.9552"),
    _band(50, "24.906729", "-0.9783"),
    _band(100, "35.322929", "-0.9877"),
    Check(
        inputs={**PLAIN, "pressing_force": 240, "travel_speed": 2000}, source="fast-band",
        origin="library", where="q = 200 kW/m², w = 30 mm, V = 2 m/s, k = 0.2, α = 1.1e-7",
        expected={"heat_flux": "200", "fast_rise": "45.8350"},
    ),
    _rim("6 in", 1750, "13.9644"),
    _rim("12 in", 1100, "17.5552"),
    _rim("14 in", 700, "13.0334"),
    _rim("14 in", 1000, "18.6192"),
    _rim("16 in", 700, "14.8953"),
    Check(
        inputs={"wheel_diameter": "14 in", "turning_speed": 700}, source="rim-speed",
        where="14 in at 700 rpm, in feet a minute", origin="library", unit="ft/min",
        expected={"rubbing_speed": "2565.634"},
    ),
    _flux(2.4, 5, "thermoplastic-like film, q = 2000 W/m², 5 s", "8.3682839"),
    _flux(2.4, 30, "thermoplastic-like film, q = 2000 W/m², 30 s", "20.498026"),
    _flux(12, 1, "thermoplastic-like film, q = 10000 W/m², 1 s", "18.712052"),
    Check(
        inputs={**PLAIN, "pressing_force": 12, "start_temperature": 22, "safety_margin": 0,
                "softening_temperature": 40.712052},
        source="mpmath-flux", origin="library", expected={"still_time": "1.000000"},
        where="the same turned round: 10000 W/m² needs 1 s for 18.712052 K",
    ),
    Check(
        inputs={**FILM, "dwell": 1, "softening_temperature": 70.4209234528}, origin="library",
        source="mpmath-flux", where="180 µm of acrylic on spruce, 20 kW/m²: 50.4209234528 K at 1 s",
        expected={"still_temperature": "70.42092345", "still_time": "1.00000000"},
    ),
    Check(
        inputs={**FILM, "dwell": 5}, source="mpmath-flux", origin="library",
        where="the same film: 145.8939817526 K at 5 s",
        expected={"still_temperature": "165.89398175"},
    ),
    Check(
        inputs={**FILM, "travel_speed": 150}, source="mpmath-flux", origin="library",
        where="the same film: 18.4118489738 K after the 0.2 s of a passing wheel",
        expected={"peak_rise": "18.4118"}, within="0.01 %",
        because="the source takes the wheel as infinitely fast; at L = 11063 Jaeger's full answer "
        "is smaller by 0.004 %",
    ),
    Check(
        inputs={}, source="building-materials", origin="library",
        where="diffusivity of acrylic (PMMA)", expected={"diffusivity": "0.10169"},
    ),
    Check(
        inputs={"conductivity": 0.2, "density": 1200, "heat_capacity": 1400}, origin="library",
        source="building-materials", where="diffusivity of epoxy resin",
        expected={"diffusivity": "0.11905"},
    ),
    _wood("spruce", "242.2"),
    _wood("cedar", "226.6"),
    _wood("maple", "423.7"),
    _wood("medium", "322.5"),
    _wood("heavy", "449.0"),
    Check(
        inputs={
            "wheel_diameter": 300, "turning_speed": 954.9296585513721, "pressing_force": 24,
            "contact_length": 30, "contact_width": 40, "travel_speed": 30, "trial_film_lost": 1.5,
            "trial_passes": 100, "trial_force": 12, "trial_turning_speed": 477.46482927568604,
            "trial_travel_speed": 15, "trial_contact_width": 40,
        },
        source="preston", origin="library",
        where="coefficient 1e-13 1/Pa, 20 kPa, 15 m/s: 30 nm a second, for one second",
        expected={"wear": "0.0001", "removal": "0.030"},
    ),
    Check(
        inputs={"touch": "two"}, source="scipy-stats", origin="library",
        where="Welch's test of the two sets of readings of the example",
        expected={
            "mean_a": "30.375", "spread_a": "3.77728171346", "mean_b": "23.375",
            "spread_b": "2.66926956301", "difference_freedom": "12.5957908832",
            "certainty": "99.9520414713",
        },
    ),
    Check(
        function=next_reading_below, source="scipy-stats", origin="library",
        given={"limit": 20.0, "mean": 30.375, "spread": 3.77728171346236, "count": 8},
        where="one more reading of A below 20 N, Student's t", expected={"": "0.0179829005206"},
    ),
    Check(
        function=next_reading_below, source="scipy-stats", origin="library",
        given={"limit": 36.0, "mean": 30.375, "spread": 3.77728171346236, "count": 8},
        where="one more reading of A below 36 N, Student's t", expected={"": "0.898451631657"},
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="rim-speed",
        situation="A wheel of {wheel_diameter} turns at {turning_speed}. How fast does its rim rub "
        "over the lacquer?",
        asks="rubbing_speed",
        within="1 %",
        draw={"wheel_diameter": (200, 450, 1), "turning_speed": (500, 1000, 5)},
        slips=(
            Slip(
                name="radius-for-diameter",
                formula="pi * (wheel_diameter / 2) * turning_speed / (mm_per_m * s_per_min)",
                why="You took the radius for the diameter: the rim is π times the diameter round.",
            ),
            Slip(
                name="per-minute",
                formula="pi * wheel_diameter * turning_speed / mm_per_m",
                why="That is metres a minute. The wheel's turns are counted by the minute; divide "
                "by 60.",
            ),
            Slip(
                name="no-pi",
                formula="wheel_diameter * turning_speed / (mm_per_m * s_per_min)",
                why="Once round is π times the diameter, not the diameter.",
            ),
        ),
    ),
    Exercise(
        name="left-above-least",
        situation="The gauge reads {film_thickness} of film and {least_film} must stay. The peel "
        "is {orange_peel} deep. Your trial took off {trial_film_lost} in {trial_passes} passes, "
        "and you polish just as in the trial, in whole passes. When it is flat, how far above the "
        "least film is it?",
        asks="margin_left",
        within="0.5 um",
        draw={
            "film_thickness": (170, 220, 1),
            "least_film": (90, 110, 1),
            "orange_peel": (15, 30, 1),
            "trial_film_lost": (4, 9, 0.5),
            "trial_passes": (3, 6, 1),
        },
        slips=(
            Slip(
                name="forgot-the-least-film",
                formula="film_thickness - film_taken",
                why="That is the film down to the wood. The least film must stay: take it off too.",
            ),
            Slip(
                name="trial-for-a-pass",
                formula="spare_film - passes_to_flat * trial_film_lost",
                why="You took the whole loss of the trial for every pass; divide it by the "
                "passes of the trial.",
            ),
        ),
    ),
    Exercise(
        name="closed-form-rise",
        situation="A wheel of {wheel_diameter} at {turning_speed} is pressed with {pressing_force} "
        "on a print {contact_length} long by {contact_width} and travels at {travel_speed}. "
        "Friction is {friction}; {heat_share} of the heat stays in the lacquer, which has "
        "{conductivity}, {density} and {heat_capacity}. By how much does thick lacquer warm under "
        "it, by the closed form for a fast source?",
        asks="fast_rise",
        within="2 %",
        draw={
            "wheel_diameter": (250, 400, 10),
            "turning_speed": (600, 900, 10),
            "pressing_force": (15, 35, 0.5),
            "travel_speed": (120, 250, 5),
        },
        slips=(
            Slip(
                name="half-the-band",
                formula="fast_rise / sqrt(2)",
                why="A place is heated for the whole contact length, not for half of it: the half "
                "length belongs in the Péclet number only.",
            ),
            Slip(
                name="all-the-heat",
                formula="fast_rise * whole / heat_share",
                why="You put all the heat into the lacquer; most of it leaves with the wheel.",
            ),
            Slip(
                name="radius-for-diameter",
                formula="fast_rise / 2",
                why="You took the radius of the wheel for its diameter, and got half the rubbing "
                "speed.",
            ),
            Slip(
                name="forgot-the-friction",
                formula="fast_rise / friction",
                why="The heat comes from the rubbing force, which is friction times the pressing "
                "force.",
            ),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="over-the-edge",
        situation="On the flat the wheel touches {contact_width} wide, on the edge {edge_width}. The "
        "trial on the flat took off {trial_film_lost} in {trial_passes} passes, and you polish just "
        "as in the trial. The peel is {orange_peel} deep. At the edge there is {edge_film} of film, "
        "and {edge_least_film} must stay. What do you do with the edge?",
        options=(
            Option(
                words="Take it along until the flat is level",
                holds="edge_film - passes_to_flat * edge_removal >= edge_least_film + 3",
                why="The flat is level after pass {passes_to_flat}; the edge loses {edge_removal} in "
                "each and bears {edge_passes}.",
            ),
            Option(
                words="Leave it before the flat is level",
                holds="edge_passes >= 1 and edge_passes <= passes_to_flat - 1 "
                "and edge_wood_pass >= passes_to_flat + 2",
                why="It loses {edge_removal} in a pass and bears {edge_passes}; the flat takes "
                "{passes_to_flat}, and the wood would show on pass {edge_wood_pass}.",
            ),
            Option(
                words="Keep the wheel off it: it would burn through before the flat is level",
                holds="edge_wood_pass <= passes_to_flat - 1",
                why="The wood would show there on pass {edge_wood_pass}, and the flat is level after "
                "{passes_to_flat}.",
            ),
        ),
        because="The narrower the touch, the harder it presses: {edge_removal} off the edge in a "
        "pass. It bears {edge_passes}, the wood shows on pass {edge_wood_pass}, and the flat takes "
        "{passes_to_flat}.",
        draw={
            "edge_film": (80, 150, 1), "edge_least_film": (50, 75, 1), "edge_width": (10, 40, 1),
            "trial_film_lost": (4, 9, 0.5), "trial_passes": (3, 6, 1), "orange_peel": (15, 35, 1),
        },
    ),
)  # fmt: skip
