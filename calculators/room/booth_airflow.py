"""What air a spray booth draws, how many filters it needs, when to change them: an estimate."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._booth_airflow_drawings import draw_face, draw_fan
from ._booth_airflow_proof import CHECK_SOURCES, CHECKS, DECISIONS, EXERCISES
from ._booth_airflow_work import CONSTANTS, FOLDED, INPUTS, SOURCES, WORK

calculator = Calculator(
    name="booth-airflow",
    title="Booth airflow",
    summary="An estimate, no design: velocity and flow through a spray booth, how many filters, "
    "at which reading of the dial to change them. Local code and a licensed engineer decide.",
    other_words=(
        "spray booth fan", "face velocity", "booth filters", "when to change the filters",
        "overspray hangs in the air", "booth does not draw", "cfm of the booth", "extraction",
        "manometer", "draft gauge", "air speed meter",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    results=(
        "verdict", "face_mean", "air_flow", "filter_words", "filters_needed", "change_reading",
        "clean_velocity", "work_velocity", "face_lowest", "unevenness", "face_area",
        "filter_area_needed", "filter_speed_now", "clean_flow", "clean_now", "fan_pressure",
        "duct_loss",
    ),
    aside=(
        "face_lowest", "unevenness", "face_area", "filter_area_needed", "filter_speed_now",
        "clean_flow", "clean_now", "fan_pressure", "duct_loss",
    ),
    tables=(
        Table(
            name="rules", title="Published velocities beside yours", rows="rule_rows",
            source="model-code",
            columns=(
                Column(name="rule", label="Rule", unit="1", decimals=0, text=True),
                Column(name="velocity", label="Velocity", unit="m/s", decimals=2),
                Column(name="kept", label="Mean reaches it", unit="1", decimals=0, text=True),
            ),
            note="Which one binds you depends on the booth, the gun and the place. The highest "
            "that may bind you is the one to keep.",
        ),
    ),
    drawings=(
        Drawing(name="fan", title="The fan against the booth", function=draw_fan),
        Drawing(name="face", title="Readings over the face", function=draw_face,
                only_if="known == 'readings'"),
    ),
    cautions=(
        Caution(
            text="An estimate, not a design and not a permit. Booths, stacks, fans, wiring, "
            "sprinklers and make-up air follow the local code and are designed by licensed "
            "people. Velocity keeps mist and fire down; it does not prove that lungs are safe.",
        ),
        Caution(
            text="Fan and motor for flammable vapour only, and running before the gun is lifted "
            "and after the last wet coat. Used filters burn by themselves: out of the building "
            "at once, under water or as the local code says.",
        ),
        Caution(
            text="The dial reads less ({filter_loss_now}) than clean filters would lose "
            "({clean_now}): look for a torn or missing filter, a gap beside it, a dirty tube.",
            only_if="filter_loss_now < 0.9 * clean_now",
        ),
        Caution(
            text="A draught of {cross_draught} across the front is more than half the face "
            "velocity and carries mist out of the booth. Shut the door, move the heater.",
            only_if="cross_draught > 0.5 * face_mean",
        ),
        Caution(
            text="At the work only {work_velocity} is left. Spray inside the booth.",
            only_if="work_velocity < 0.75 * face_mean",
        ),
        Caution(
            text="Above 1.27 m/s (250 ft/min, the top of table G-10) air tears at the fan of the "
            "gun and dries the coat before it lands.",
            only_if="face_mean > 1.27",
        ),
    ),
    validity="An estimate from your readings. The fan's curve is taken as a parabola between its "
    "two ends, filters as proportional to flow, stack and duct as its square; a real fan may "
    "stall, and wind on the stack shifts everything. Air in front of the face is that of a plain "
    "opening in still air. All air drawn out must come in again, warmed: see make-up air. Only "
    "published limits that were read are shown; local code and licensed design come first.",
    sources=(*SOURCES, *CHECK_SOURCES),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
