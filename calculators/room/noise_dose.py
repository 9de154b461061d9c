"""How much noise a day's tasks bring to the ear, and which of them counts most: an estimate."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ..laws.noise_exposure import ISO_9612, NIOSH_NOISE, OSHA_NOISE
from ..sources import COMMON_PRACTICE
from ._noise_dose_drawing import draw_tasks
from ._noise_dose_proof import CHECK_SOURCES, CHECKS, DECISIONS, EXERCISES
from ._noise_dose_work import CONSTANTS, FOLDED, INPUTS, WORK

calculator = Calculator(
    name="noise-dose",
    title="Noise dose",
    summary="An estimate from your own readings: the noise of a day's tasks, its dose by two "
    "published rules, what the protector leaves, and which task to quieten first. Local code and "
    "a competent person decide.",
    other_words=(
        "hearing protection", "ear plugs", "ear muffs", "how loud is the bandsaw", "decibels",
        "dB", "too loud", "NRR", "SNR", "noise exposure", "do I need ear defenders", "ringing ears",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    results=(
        "verdict", "day_level", "niosh_dose", "osha_dose", "worst_task", "worst_share",
        "ear_words", "ear_level", "reduction", "expanded", "day_at_most", "without_worst",
        "niosh_level_8h", "osha_level_8h", "minutes_in_all", "day_doubt",
    ),
    aside=(
        "expanded", "day_at_most", "without_worst", "niosh_level_8h", "osha_level_8h",
        "minutes_in_all", "day_doubt",
    ),
    tables=(
        Table(
            name="day_tasks", title="Each task", rows="task_rows", source="iso-9612",
            columns=(
                Column(name="task", label="Task", unit="1", decimals=0, text=True),
                Column(name="level", label="Level", unit="dB(A)", decimals=1),
                Column(name="minutes", label="Time", unit="min", decimals=0),
                Column(name="niosh_time", label="Time that alone makes a full NIOSH dose",
                       unit="min", decimals=1),
                Column(name="niosh", label="NIOSH dose", unit="%", decimals=1),
                Column(name="osha", label="OSHA dose", unit="%", decimals=1),
                Column(name="share", label="Share of the noise", unit="%", decimals=1),
                Column(name="ear", label="Level at the ear, protected", unit="dB(A)", decimals=1),
            ),
            note="Three decibels more is twice the energy. OSHA's rule halves the time with five "
            "decibels and is the laxer one.",
        ),
    ),
    drawings=(
        Drawing(name="tasks", title="Which task makes the noise", function=draw_tasks),
    ),
    cautions=(
        Caution(
            text="An estimate from your readings, not an assessment. Measuring, hearing tests and "
            "the choice of protectors follow the local code and a competent person. Lost hearing "
            "does not come back.",
        ),
        Caution(
            text="Quieten first: sharp blades, lined hoods, distance, doors. A protector is what "
            "is left to do, and it works only while it is worn.",
        ),
        Caution(
            text="Under OSHA's rule (from memory) a dose of 50 % or more asks for hearing "
            "tests and offered protectors, and 100 % for quieter work. Yours is {osha_dose}.",
            only_if="osha_dose >= 50",
        ),
        Caution(
            text="By NIOSH's stricter rule the day is {niosh_dose} of a full dose, though OSHA's "
            "says {osha_dose}. Go by the stricter.",
            only_if="niosh_dose > 100 and osha_dose <= 100",
        ),
        Caution(
            text="The tasks cover {minutes_in_all} only. Nothing is counted for the rest of the "
            "day; put in the quiet hours too.",
            only_if="minutes_in_all < 420",
        ),
    ),
    validity="An estimate for steady noise of the day you wrote down. Bangs and blows (nail guns, "
    "air blasts, hammering on steel) can harm at once whatever the dose, and are not covered. "
    "Readings are taken as spread evenly between their ends. The rating of a protector is a "
    "laboratory's; glasses, beards and bad fit let more in. NIOSH's 85 dB(A) still leaves some "
    "people with loss after a working life. Local code comes first.",
    sources=(ISO_9612, NIOSH_NOISE, OSHA_NOISE, *CHECK_SOURCES, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
