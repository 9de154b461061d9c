"""What the pore-filler calculator asks."""

from ..engine.declaration import Choice, Input, Number, When

WOOD, FILLER, MORE = "Wood", "Filler", "Tin and waiting"
OWN = When(choice="filled_wood", is_one_of=("own",))

inputs: tuple[Input, ...] = (
    Choice(
        name="filled_wood", label="Wood", group=WOOD, example="mahogany",
        options=(
            ("mahogany", "Mahogany"), ("rosewood", "Rosewood"), ("walnut", "Walnut"),
            ("own", "Own figures"),
        ),
        help="Pores of the named woods are from memory (a fact of the trade) and vary from board "
        "to board. Spruce, cedar and maple are not filled.",
    ),
    Number(
        name="own_pore_diameter", label="Width of a pore", symbol="d_o", unit="um", decimals=0,
        lowest=20, highest=500, example=150, group=WOOD, when=OWN,
        help="Loupe with a scale on the end grain, planed clean; the mean of ten.",
    ),
    Number(
        name="own_pores", label="Pores in a square millimetre of end grain", symbol="N_o",
        unit="1/mm2", decimals=1, lowest=0.1, highest=60, example=8, group=WOOD, when=OWN,
        help="Count a square of 5 by 5 mm and divide by 25.",
    ),
    Number(
        name="own_pore_depth", label="Depth of the open pores", symbol="t_o", unit="um",
        decimals=0, lowest=5, highest=1000, example=75, group=WOOD, when=OWN,
        help="Half the width where the face runs along the grain; more where pores dive into it.",
    ),
    Number(
        name="filled_area", label="Area to fill", symbol="A", unit="m2", decimals=2, lowest=0.001,
        highest=20, example=0.35, group=WOOD,
        help="From memory: back, sides and neck of a guitar about 0.35 m², of a concert ukulele "
        "about 0.15 m².",
    ),
    Number(
        name="allowed_sink", label="Sink-back that lacquer may level", symbol="t_a", unit="um",
        decimals=0, lowest=2, highest=200, example=35, group=WOOD,
        help="Common practice: well below what the first round of lacquer leaves.",
    ),
    Number(
        name="brushed_film", label="Filler brushed on, wet", symbol="b", unit="um", decimals=0,
        lowest=20, highest=1000, example=120, group=FILLER,
        help="Weigh the pot before and after one back: millilitres over square metres are µm.",
    ),
    Number(
        name="fill_share", label="Pore left full by the cloth", symbol="f", unit="%", decimals=0,
        lowest=30, highest=100, example=85, group=FILLER,
        help="From memory: 80 to 95 % rubbed across the grain at the right moment; less too wet "
        "or along it.",
    ),
    Number(
        name="set_share", label="Filler that stays when it has set, by volume", symbol="s",
        unit="%", decimals=0, lowest=10, highest=100, example=65, group=FILLER,
        help="Volume solids of the filler as thinned, from its data sheet. Weight is no guide.",
    ),
    Number(
        name="filler_density", label="Density of the wet filler", symbol="ρ", unit="g/cm3",
        decimals=2, lowest=0.7, highest=3, example=1.5, group=MORE,
        help="Data sheet, or weigh 100 mL.",
    ),
    Number(
        name="set_time", label="Setting time of one filling", symbol="t_h", unit="h", decimals=0,
        lowest=0.5, highest=336, example=24, group=MORE,
        help="From the last rub to the paper.",
    ),
    Number(
        name="most_fillings", label="Most fillings you are willing to make", symbol="n_m",
        unit="1", decimals=0, whole=True, lowest=1, highest=6, example=2, group=MORE,
        help="Common practice: a third does no more.",
    ),
)  # fmt: skip
