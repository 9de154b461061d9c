"""The polishing answers in words."""

from ..engine.declaration import Said, Work
from ._polishing_work import MEASURED

work: tuple[Work, ...] = (
    Said(
        name="verdict", label="This force",
        cases=(
            ("trial == 'measured' and force_lowest > force_highest",
             "No force is right at {travel_speed}. To be flat within {most_passes} passes takes "
             "{force_lowest}; above {force_highest} the film is at risk. Allow more passes, or "
             "travel slower and press lighter."),
            ("pressing_force > force_highest",
             "Too hard: {pressing_force}. Stay below {force_highest} at {travel_speed}."),
            ("trial == 'measured' and pressing_force < force_lowest",
             "Too light: with {pressing_force} it takes {passes_to_flat} passes, more than the "
             "{most_passes} you allow. Press from {force_lowest} up to {force_highest}."),
            (MEASURED,
             "Right: {pressing_force} lies in the safe window from {force_lowest} up to "
             "{force_highest}. Aim at {force_aim}."),
            ("", "Cool enough: {pressing_force} stays below {force_highest}. Whether it cuts, and "
             "how much it takes, only a trial pass can say."),
        ),
    ),
    Said(
        name="film_words", label="The film", only_if=MEASURED,
        cases=(
            ("orange_peel > spare_film",
             "Not enough: the peel is {orange_peel} deep and only {spare_film} may go. Do not try "
             "to get flat; ask for another coat."),
            ("film_taken > spare_film",
             "Passes to flat: {passes_to_flat}. Whole passes overshoot: together they take "
             "{film_taken}, only {spare_film} may go. Lighten the last pass."),
            ("", "Passes to flat: {passes_to_flat}. Then {film_left} is left, {margin_left} above "
             "the least film; it is reached after {passes_left} more, and the wood shows on pass "
             "{passes_to_wood} more."),
        ),
    ),
    Said(
        name="still_words", label="Standing still",
        cases=(
            ("still_temperature >= softening_temperature",
             "Never: the lacquer softens after {still_time}; {dwell} would bring it to "
             "{still_temperature}."),
            ("", "{dwell} brings the lacquer to {still_temperature}; it softens after "
             "{still_time}."),
        ),
    ),
    Said(
        name="wood_words", label="Has the heat reached the wood",
        cases=(
            ("wood == 'none'",
             "Not asked: the lacquer is taken as thick. Warmth reaches {penetration} deep."),
            ("penetration >= film_thickness",
             "Yes: warmth reaches {penetration} deep, the film is {film_thickness}. The formula "
             "for thick lacquer gives a rise of {thick_rise} and is off, as wood carries heat only "
             "{carry} times as well as lacquer. With the wood counted in it is {peak_rise}."),
            ("", "Hardly: warmth reaches {penetration} deep, the film is {film_thickness}. The "
             "formula for thick lacquer, a rise of {thick_rise}, holds; on its wood {peak_rise}."),
        ),
    ),
    Said(
        name="band_words", label="Which formula holds",
        cases=(
            ("peclet >= 10",
             "Péclet number {peclet}, with the half length: above 10, so the closed form for a "
             "fast source holds; the full answer is {band_factor} of it."),
            ("", "Péclet number {peclet}, with the half length: below 10, so heat also runs ahead. "
             "The full answer is {band_factor} of the closed form and is used."),
        ),
    ),
    Said(
        name="edge_words", label="At the edge",
        cases=(
            ("edge_temperature >= softening_temperature",
             "Not with this force: it would make {edge_temperature} there, and the lacquer softens "
             "at {softening_temperature}. Press less than {edge_force_hot}, or do it by hand."),
            ("pressing_force > edge_force_hot",
             "Ease off: this force makes {edge_temperature} there. Press less than "
             "{edge_force_hot}."),
            ("", "Cool enough at {edge_temperature}; it would take {edge_force_hot} to get too "
             "hot."),
        ),
    ),
    Said(
        name="edge_film_words", label="Film at the edge", only_if=MEASURED,
        cases=(
            ("edge_film <= edge_least_film",
             "Nothing to spare: {edge_film} of film, {edge_least_film} to keep. Keep the wheel off "
             "it."),
            ("edge_wood_pass <= passes_to_flat",
             "Burns through on pass {edge_wood_pass}, before the flat is level on pass "
             "{passes_to_flat}. Leave the edge after {edge_passes}."),
            ("edge_passes < passes_to_flat",
             "Too thin before the flat is level: leave the edge after pass {edge_passes} of "
             "{passes_to_flat}."),
            ("", "Keeps {edge_left} when the flat is level after pass {passes_to_flat}; it can "
             "take {edge_passes} in all, and the wood shows on pass {edge_wood_pass}."),
        ),
    ),
)  # fmt: skip
