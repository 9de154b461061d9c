"""The steps of the pore-filler calculation."""

from collections.abc import Mapping

from ..engine.declaration import Given, Limit, Refusal, Said, Solved, Step, Work

# Width of a pore, µm, and pores in a mm² of end grain: facts of the trade, from memory.
WOODS = {"mahogany": (150.0, 8.0), "rosewood": (190.0, 5.0), "walnut": (150.0, 6.0)}
MOST_COUNTED = 20
# A level that is met exactly may miss by its last bits.
HAIR = 1e-9


def pores_of(
    filled_wood: str, own_pore_diameter: float = 0.0, own_pores: float = 0.0,
    own_pore_depth: float = 0.0,
) -> Mapping[str, float]:  # fmt: skip
    """Width, µm, number to a mm² of end grain, and depth, µm, of the open pores of a wood.

    Named woods from memory (``WOODS``), their face running along the grain: the mean depth of
    round pores cut at random heights is then half their width (volume over open area, see
    ``laws.open_pores``). Own figures as given.
    """
    if filled_wood in WOODS:
        width, number = WOODS[filled_wood]
        return {"pore_diameter": width, "pores_per_mm2": number, "pore_depth": width / 2}
    return {
        "pore_diameter": own_pore_diameter, "pores_per_mm2": own_pores,
        "pore_depth": own_pore_depth,
    }  # fmt: skip


def fillings_needed(pore_depth: float, allowed_sink: float, left_share: float) -> int:
    """Whole fillings until the sink-back, µm, is at most what lacquer may level.

    The smallest n with depth · left^n <= allowed, left in %; none where the pores are that
    shallow from the start. Refuses where it would take more than twenty.
    """
    left, count = pore_depth, 0
    while left > allowed_sink * (1 + HAIR):
        left *= left_share / 100
        count += 1
        if count > MOST_COUNTED:
            raise Refusal(
                "set_share",
                f"Each filling leaves {left_share:.0f} % of the pore open, so that it would take "
                f"more than {MOST_COUNTED} of them: take a filler that shrinks less, or rub it in "
                "better",
                "a filler of which more stays in the pores",
            )
    return count


work: tuple[Work, ...] = (
    Solved(
        name="pores", label="Pores of the wood", function=pores_of,
        gives=(
            Given(name="pore_diameter", label="Width of a pore", symbol="d", unit="um",
                  decimals=0),
            Given(name="pores_per_mm2", label="Pores in a square millimetre of end grain",
                  symbol="N", unit="1/mm2", decimals=1),
            Given(name="pore_depth", label="Mean depth of the open pores", symbol="t",
                  unit="um", decimals=0),
        ),
        method="By wood from memory, the depth half the width, as for round pores cut along the "
        "grain; or your own figures.",
        source="common-practice",
    ),
    Step(
        name="pore_share", label="Share of the face that is open pore", symbol="a", unit="%",
        decimals=1, source="stereology",
        formula="pores_per_mm2 * pi / 4 * (pore_diameter / um_per_mm) ** 2 * whole",
    ),
    Limit(
        holds="pore_share <= 60", blames="own_pores", source="common-practice",
        otherwise="With these figures {pore_share} of the wood would be pore; measure width and "
        "number again, on the end grain",
        allowed="width and number that make at most 60 % of the wood",
    ),
    Step(
        name="pore_volume", label="Open pores, spread as a film over the whole face", symbol="v",
        unit="um", decimals=1, formula="pore_share / whole * pore_depth", source="stereology",
    ),
    Step(
        name="pore_total", label="Open pores in all", symbol="V", unit="mL", decimals=1,
        formula="pore_volume * filled_area / um_m2_per_ml", source="stereology",
    ),
    Limit(
        holds="brushed_film >= pore_volume * fill_share / whole", blames="brushed_film",
        source="common-practice",
        otherwise="The pores alone take {pore_volume} of filler, and {brushed_film} is brushed "
        "on: brush on more",
        allowed="more than the pores take, {pore_volume}",
    ),
    Step(
        name="left_share", label="Of an open pore, still open when one filling has set",
        symbol="r", unit="%", decimals=1, source="geometric-series",
        formula="(1 - fill_share / whole * set_share / whole) * whole",
    ),
    Solved(
        name="count", label="Fillings to level", function=fillings_needed,
        gives=(
            Given(name="fillings", label="Fillings needed", symbol="n", unit="1", decimals=0),
        ),
        method="The sink-back is multiplied by the share left open, filling by filling, until it "
        "is no more than lacquer may level.",
        source="geometric-series",
    ),
    Step(
        name="sink_left", label="Sink-back left after them", symbol="t_n", unit="um", decimals=0,
        formula="pore_depth * (left_share / whole) ** fillings", source="geometric-series",
    ),
    Step(
        name="sink_first", label="Sink-back after the first filling", symbol="t_1", unit="um",
        decimals=0, formula="pore_depth * left_share / whole", source="geometric-series",
    ),
    Step(
        name="filler_needed", label="Filler to mix, wet", symbol="V_f", unit="mL", decimals=0,
        formula="fillings * brushed_film * filled_area / um_m2_per_ml",
        source="common-practice",
    ),
    Step(
        name="filler_mass", label="The same by weight", symbol="m_f", unit="g", decimals=0,
        formula="filler_needed * filler_density / ml_per_cm3", source="common-practice",
    ),
    Step(
        name="filler_kept", label="Wet filler that goes into the pores", symbol="V_p", unit="mL",
        decimals=1, source="geometric-series",
        formula="pore_total * (1 - (left_share / whole) ** fillings) / (set_share / whole)",
    ),
    Step(
        name="filler_wiped", label="Filler that goes into the cloth", symbol="V_w", unit="mL",
        decimals=0, formula="filler_needed - filler_kept", source="common-practice",
    ),
    Step(
        name="waiting", label="Setting time of all fillings", symbol="T", unit="h", decimals=0,
        formula="fillings * set_time", source="common-practice",
    ),
    Step(
        name="lacquer_sunk", label="Lacquer that the pores still swallow, as a film over the face",
        symbol="v_n", unit="um", decimals=1, source="geometric-series",
        formula="pore_volume * (left_share / whole) ** fillings",
    ),
    Said(
        name="verdict", label="Fillings",
        cases=(
            ("fillings == 0",
             "None: the pores are {pore_depth} deep, no more than lacquer may level."),
            ("fillings > most_fillings",
             "{fillings} fillings would be needed, more than {most_fillings}: this filler shrinks "
             "too much or is rubbed out again. Take one that keeps more of itself, rub later and "
             "across the grain."),
            ("fillings == 1", "One filling: it leaves {sink_left} of sink-back."),
            ("",
             "{fillings} fillings: the first leaves {sink_first} of sink-back, the last "
             "{sink_left}."),
        ),
    ),
)  # fmt: skip
