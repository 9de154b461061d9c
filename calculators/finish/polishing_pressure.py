"""How hard to press on the polishing wheel: heat, film taken off, and one touch for all hands."""

from ..engine.declaration import Calculator, Caution, Drawing
from . import _polishing_said, _polishing_touch, _polishing_work
from ._polishing_drawings import draw_film, draw_map
from ._polishing_inputs import EDGE, LACQUER, inputs
from ._polishing_proof import CHECKS, DECISIONS, EXERCISES
from ._polishing_sources import CONSTANTS, SOURCES

calculator = Calculator(
    name="polishing-pressure",
    title="Polishing pressure",
    summary="How hard to press on the wheel: hard enough to get flat, not so hard that the lacquer "
    "softens or burns through, and how near a polisher's hand keeps to that.",
    other_words=(
        "buffing", "burn-through", "rubbing through", "how hard to press", "orange peel", "wheel",
        "lacquer too hot", "edge burned", "film thickness", "touch", "force",
    ),
    inputs=inputs,
    folded=(LACQUER, EDGE),
    constants=CONSTANTS,
    work=(*_polishing_work.work, *_polishing_said.work, *_polishing_touch.work),
    results=(
        "verdict", "force_lowest", "force_highest", "force_aim",
        "film_words", "passes_to_flat", "removal", "film_left", "margin_left", "passes_left",
        "passes_to_wood",
        "peak_temperature", "still_words", "still_time", "still_temperature",
        "edge_words", "edge_film_words", "edge_temperature", "edge_force_hot", "edge_removal",
        "edge_left", "edge_passes", "edge_wood_pass", "edge_pressure",
        "touch_words_a", "mean_a", "spread_a", "chance_outside_a", "chance_hard_a",
        "chance_light_a",
        "touch_words_b", "mean_b", "spread_b", "chance_outside_b", "chance_hard_b",
        "chance_light_b",
        "compare_words", "difference", "certainty",
        "mean_pressure", "rubbing_speed", "heat_flux", "wood_words", "penetration",
        "peak_rise", "thick_rise", "fast_rise", "band_words", "peclet", "wear",
    ),
    aside=(
        "passes_to_wood", "still_temperature", "edge_force_hot", "edge_removal", "edge_left",
        "edge_passes", "edge_wood_pass", "edge_pressure", "chance_hard_a", "chance_light_a",
        "chance_hard_b", "chance_light_b", "mean_pressure", "rubbing_speed", "heat_flux",
        "wood_words", "penetration", "peak_rise", "thick_rise", "fast_rise", "band_words", "peclet",
        "wear",
    ),
    drawings=(
        Drawing(name="map", title="Force and travel speed: the safe window", function=draw_map),
        Drawing(
            name="film", title="The film before and after, to scale", function=draw_film,
            only_if="trial == 'measured'",
        ),
    ),
    cautions=(
        Caution(
            text="The wheel catches edges, strings, cuffs, hair and gloves and throws the work. "
            "Work below its centre, on the side that runs away from you, edge trailing; sleeves "
            "and hair tied back, no gloves.",
        ),
        Caution(
            text="Face shield over safety glasses, extraction on. Lacquer and compound dust hurt "
            "the lungs and the dust of nitrocellulose lacquer burns fiercely: no spark, no flame, "
            "lint damp into a closed metal bin. Guards, extraction and fire protection follow the "
            "local code.",
        ),
        Caution(
            text="Friction ({friction}), share of heat ({heat_share}) and softening "
            "({softening_temperature}) are from memory or common practice until you measure your "
            "own, and the heat goes with all three: read the lacquer right after a stroke with the "
            "infrared thermometer and believe that.",
        ),
        Caution(
            text="No trial pass has been measured, so nothing is said here of film taken off, "
            "passes or burn-through, and cool is not the same as safe. Gauge a scrap of the same "
            "finish, make a few passes, gauge it again. Do not guess.",
            only_if="trial != 'measured'",
        ),
        Caution(
            text="At {peak_temperature} the lacquer is past softening ({softening_temperature}): "
            "it smears and tears, and from there the figures only say too hot.",
            only_if="peak_temperature >= softening_temperature",
        ),
        Caution(
            text="The peel is deeper than the film you may take. Do not level this one.",
            only_if="trial == 'measured' and orange_peel > spare_film",
        ),
        Caution(
            text="Every pass is reckoned from {start_temperature}. Come back to a place before it "
            "has cooled, and it is that much hotter.",
        ),
        Caution(
            text="The rim runs at {rubbing_speed}; wheels for lacquer usually stay below some "
            "25 m/s (from memory). Never above the speed stamped on the wheel.",
            only_if="rubbing_speed > 25",
        ),
        Caution(
            text="Fewer than six readings say little about a hand: the chances are wide guesses.",
            only_if="(touch != 'none' and count_a < 6) or (touch == 'two' and count_b < 6)",
        ),
    ),
    validity="Heat: a uniform, steady flux over the whole contact; a real wheel has hot spots, "
    "which the margin is for. The film is taken as flat on wood that is deep beside the warmth; "
    "where the Péclet number is below 10 the corrections for moving and for wood are multiplied, "
    "which is only near. Standing still leaves out heat that escapes sideways, so it errs on the "
    "safe side. Film: Preston's law holds for the wheel, compound and lacquer of the trial, kept "
    "cool; a dry or loaded wheel takes less and heats more. Touch: the readings are taken as one "
    "steady hand, spread like a normal curve.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
