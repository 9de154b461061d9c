"""How much filler the pores take, how many fillings level them, and what sinks back."""

from ..engine.declaration import Calculator, Caution, Column, Count, Drawing, Table
from ..laws.open_pores import GEOMETRIC_SERIES, STEREOLOGY
from ..sources import COMMON_PRACTICE
from . import _filler_work
from ._coating_sources import PINT, UNITS, exact
from ._filler_drawing import draw_pore
from ._filler_inputs import MORE, inputs
from ._filler_proof import CHECKS, DECISIONS, EXERCISES, MPMATH, SCIPY

calculator = Calculator(
    name="pore-filler",
    title="Pore filler",
    summary="How much filler to mix for the open pores of the wood, how many fillings it takes to "
    "level them, and how far the filler sinks back while it sets.",
    other_words=(
        "grain filler", "how much pore filler", "pores still show", "filler shrinks",
        "sink-back", "second filling", "grain filling coats", "open pores mahogany",
        "paste filler quantity", "pinholes in rosewood",
    ),
    inputs=inputs,
    folded=(MORE,),
    constants=(
        exact("whole", "The whole, in per cent", "%", 100),
        exact("um_per_mm", "Micrometres in a millimetre", "um/mm", 1000),
        exact("um_m2_per_ml", "Micrometres thick that a millilitre lies on a square metre",
              "um*m**2/mL", 1),
        exact("ml_per_cm3", "Millilitres in a cubic centimetre", "mL/cm**3", 1),
    ),
    work=_filler_work.work,
    tables=(
        Table(
            name="fillings", title="Filling by filling", source="geometric-series",
            rows=Count(name="filling", first="1", last="max(fillings, most_fillings, 3)"),
            columns=(
                Column(name="filling", label="Filling", unit="1", decimals=0),
                Column(name="sink", label="Sink-back when set", unit="um", decimals=0,
                       formula="pore_depth * (left_share / whole) ** filling"),
                Column(name="taken", label="Wet filler into the pores", unit="mL", decimals=1,
                       formula="pore_total * fill_share / whole"
                               " * (left_share / whole) ** (filling - 1)"),
                Column(name="mixed", label="Filler mixed so far", unit="mL", decimals=0,
                       formula="brushed_film * filled_area / um_m2_per_ml", running=True),
                Column(name="hours", label="Set after", unit="h", decimals=0,
                       formula="set_time", running=True),
            ),
            note="Sink-back is the hollow in the middle of a pore of mean depth.",
        ),
    ),
    results=(
        "verdict", "fillings", "sink_left", "filler_needed", "filler_mass", "waiting",
        "sink_first", "left_share", "pore_diameter", "pores_per_mm2", "pore_depth", "pore_share",
        "pore_volume", "pore_total", "filler_kept", "filler_wiped", "lacquer_sunk",
    ),
    aside=(
        "sink_first", "left_share", "pore_diameter", "pores_per_mm2", "pore_depth", "pore_share",
        "pore_volume", "pore_total", "filler_kept", "filler_wiped", "lacquer_sunk",
    ),
    drawings=(Drawing(name="pore", title="One pore, filling by filling", function=draw_pore),),
    cautions=(
        Caution(
            text="Read the tin: many fillers are quartz powder, and the dust of sanding them harms "
            "lungs for good. Extraction at the block, mask, no brushing off.",
        ),
        Caution(
            text="{filler_wiped} of filler go into cloths. With drying oil in it they heat up and "
            "catch fire by themselves: into the water can, or spread out flat outside, as the tin "
            "says.",
            only_if="filler_wiped > 0",
        ),
        Caution(
            text="Pores, share left full and shrinking are guesses until you have looked: fill a "
            "scrap of the same board, let it set, cut it across and look at the pores with the "
            "loupe.",
        ),
        Caution(
            text="Filler goes on sinking while its thinner leaves. {set_time} is less than a full "
            "day: under lacquer it falls in for months.",
            only_if="set_time < 24",
        ),
        Caution(
            text="Each filling leaves more than half of the pore open: too thin, rubbed too wet "
            "or along the grain.",
            only_if="left_share > 50",
        ),
    ),
    validity="Round pores of one width, cut by a face that runs along the grain. Real pores "
    "spread by a third and more to either side, gather in rings and dive into slanted wood, where "
    "filler bridges them over air. Every filling is taken to leave the same share open. What "
    "sticks to the face between the pores is counted as wiped off. Figures of woods are from "
    "memory.",
    sources=(
        STEREOLOGY, GEOMETRIC_SERIES, SCIPY, MPMATH, PINT, UNITS, COMMON_PRACTICE,
    ),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
