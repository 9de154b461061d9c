"""What the polishing calculator asks."""

from ..engine.declaration import Choice, Input, Number, Readings, When

MEASURED = When(choice="trial", is_one_of=("measured",))
ONE_OR_TWO = When(choice="touch", is_one_of=("one", "two"))
TWO = When(choice="touch", is_one_of=("two",))
STROKE, FILM, TRIAL = "Wheel and stroke", "Film", "Trial pass"
HEAT, LACQUER, EDGE, TOUCH = "Heat", "What the lacquer is", "At an edge", "Touch"

inputs: tuple[Input, ...] = (
    Number(
        name="wheel_diameter", label="Wheel diameter", symbol="D", unit="mm", decimals=0,
        lowest=50, highest=700, example=350, group=STROKE,
        help="As worn today, not as bought.",
    ),
    Number(
        name="turning_speed", label="Turning speed", symbol="n", unit="rpm", decimals=0,
        lowest=50, highest=4000, example=700, group=STROKE,
    ),
    Number(
        name="pressing_force", label="Pressing force", symbol="F", unit="N", decimals=1,
        lowest=0.5, highest=300, example=30, group=STROKE,
        help="Body on wheel, square to the surface. 10 N is about the weight of 1 kg.",
    ),
    Number(
        name="contact_length", label="Contact length, along the travel", symbol="w", unit="mm",
        decimals=0, lowest=2, highest=200, example=30, group=STROKE,
        help="Press the dusted wheel on a dark panel at this force, wheel at rest, and measure the "
        "print.",
    ),
    Number(
        name="contact_width", label="Contact width, across the travel", symbol="b", unit="mm",
        decimals=0, lowest=2, highest=200, example=75, group=STROKE,
    ),
    Number(
        name="travel_speed", label="Travel speed of the wheel over the lacquer", symbol="v",
        unit="mm/s", decimals=0, lowest=2, highest=2000, example=150, group=STROKE,
        help="How fast the hands move the work: length of the stroke over its time.",
    ),
    Number(
        name="dwell", label="Standing still: for how long", symbol="t_d", unit="s", decimals=1,
        lowest=0.1, highest=60, example=1, group=STROKE,
        help="The longest halt that might happen, at the turn of the stroke or when you are "
        "called.",
    ),
    Number(
        name="film_thickness", label="Film now", symbol="h", unit="um", decimals=0,
        lowest=10, highest=1000, example=180, group=FILM,
        help="Film gauge, at the thinnest of the marked places.",
    ),
    Number(
        name="least_film", label="Least film to keep", symbol="h_k", unit="um", decimals=0,
        lowest=0, highest=900, example=100, group=FILM,
    ),
    Number(
        name="orange_peel", label="Depth of the orange peel", symbol="h_p", unit="um", decimals=0,
        lowest=1, highest=200, example=20, group=FILM,
        help="Hill to hollow. If you level with paper first, what the paper leaves.",
    ),
    Number(
        name="softening_temperature", label="Lacquer softens at", symbol="T_s", unit="degC",
        decimals=0, lowest=35, highest=200, example=65, group=FILM,
        help="From memory: nitrocellulose lacquer smears at 60 to 70 °C, fresh lacquer lower. Ask "
        "its maker, or warm a scrap and press a nail into it.",
    ),
    Number(
        name="safety_margin", label="Stay below softening by", symbol="m", unit="K", decimals=0,
        lowest=0, highest=100, example=20, group=FILM,
        help="For what you do not know: hot spots, a dry wheel, heat left from the pass before.",
    ),
    Number(
        name="start_temperature", label="Lacquer before the pass", symbol="T_0", unit="degC",
        decimals=0, lowest=-10, highest=60, example=22, group=FILM,
        help="Room temperature if the place has rested; else read it with the infrared "
        "thermometer.",
    ),
    Choice(
        name="trial", label="Trial pass", example="measured", group=TRIAL,
        options=(("measured", "Measured with a film gauge"), ("not yet", "Not yet measured")),
        help="What a wheel takes off depends on wheel, compound and lacquer: only a trial on scrap "
        "of the same finish tells.",
    ),
    Number(
        name="trial_film_lost", label="Film lost in the trial", symbol="h_t", unit="um", decimals=1,
        lowest=0.1, highest=300, example=6, group=TRIAL, when=MEASURED,
        help="Gauge before less gauge after, same marked place. Make enough passes to lose several "
        "steps of the gauge.",
    ),
    Number(
        name="trial_passes", label="Passes in the trial", symbol="N_t", unit="1", decimals=0,
        whole=True, lowest=1, highest=500, example=4, group=TRIAL, when=MEASURED,
    ),
    Number(
        name="trial_force", label="Pressing force in the trial", symbol="F_t", unit="N", decimals=1,
        lowest=0.5, highest=300, example=30, group=TRIAL, when=MEASURED,
    ),
    Number(
        name="trial_travel_speed", label="Travel speed in the trial", symbol="v_t", unit="mm/s",
        decimals=0, lowest=2, highest=2000, example=150, group=TRIAL, when=MEASURED,
    ),
    Number(
        name="trial_turning_speed", label="Turning speed in the trial", symbol="n_t", unit="rpm",
        decimals=0, lowest=50, highest=4000, example=700, group=TRIAL, when=MEASURED,
        help="With the same wheel and compound.",
    ),
    Number(
        name="trial_contact_width", label="Contact width in the trial", symbol="b_t", unit="mm",
        decimals=0, lowest=2, highest=200, example=75, group=TRIAL, when=MEASURED,
    ),
    Number(
        name="most_passes", label="Most passes you are willing to make", symbol="N_m", unit="1",
        decimals=0, whole=True, lowest=1, highest=500, example=20, group=TRIAL, when=MEASURED,
    ),
    Number(
        name="friction", label="Friction of wheel on lacquer", symbol="µ", unit="1", decimals=2,
        lowest=0.05, highest=1.5, example=0.4, group=HEAT,
        help="From memory: 0.3 to 0.5 for a dressed wheel, more when it drags. To measure it, pull "
        "a weighted panel along the still wheel: pull over weight.",
    ),
    Number(
        name="heat_share", label="Share of the heat that stays in the lacquer", symbol="s",
        unit="%", decimals=0, lowest=1, highest=100, example=30, group=HEAT,
        help="From memory. Guidance (Blok, Charron): each side takes heat by its effusivity times "
        "the root of its speed under the contact. For a cotton wheel at 13 m/s over lacquer at "
        "150 mm/s that is about a third; 100 is the worst there is.",
    ),
    Choice(
        name="wood", label="Wood under the film", example="spruce", group=HEAT,
        options=(
            ("spruce", "Spruce"), ("cedar", "Cedar"), ("maple", "Maple"),
            ("medium", "Medium wood, 500 kg/m³ (mahogany)"),
            ("heavy", "Heavy wood, 700 kg/m³ (rosewood, walnut)"),
            ("none", "None: take the lacquer as thick"),
        ),
    ),
    Number(
        name="conductivity", label="Conductivity of the lacquer", symbol="k", unit="W/m/K",
        decimals=3, lowest=0.05, highest=1, example=0.18, group=LACQUER,
        help="These three stand in for lacquer: acrylic plastic (PMMA), tables of EN 12524 and "
        "ISO 10456. Cellulose nitrate itself, from memory and doubtful: 0.21 to 0.25.",
    ),
    Number(
        name="density", label="Density of the lacquer", symbol="ρ", unit="kg/m3", decimals=0,
        lowest=500, highest=3000, example=1180, group=LACQUER,
        help="Acrylic (PMMA) as above. Cellulose nitrate, from memory: 1350 to 1400.",
    ),
    Number(
        name="heat_capacity", label="Heat capacity of the lacquer", symbol="c", unit="J/kg/K",
        decimals=0, lowest=500, highest=4000, example=1500, group=LACQUER,
        help="Acrylic (PMMA) as above. Cellulose nitrate, from memory: 1250 to 1700.",
    ),
    Number(
        name="edge_width", label="Contact width at the edge", symbol="b_e", unit="mm", decimals=0,
        lowest=1, highest=200, example=25, group=EDGE,
        help="What is left of the contact width where the wheel runs onto the edge.",
    ),
    Number(
        name="edge_film", label="Film at the edge now", symbol="h_e", unit="um", decimals=0,
        lowest=5, highest=1000, example=150, group=EDGE,
        help="Lacquer draws away from edges while it is wet.",
    ),
    Number(
        name="edge_least_film", label="Least film to keep at the edge", symbol="h_ek", unit="um",
        decimals=0, lowest=0, highest=900, example=80, group=EDGE,
    ),
    Choice(
        name="touch", label="Force readings", example="one", group=TOUCH,
        options=(("none", "None yet"), ("one", "One polisher"), ("two", "Two polishers, A and B")),
        help="Press a practice panel on a bench scale, in your polishing stance, eyes off the "
        "dial. A second person reads: one reading a stroke.",
    ),
    Readings(
        name="readings_a", label="Readings of polisher A", symbol="x_A", unit="N", decimals=1,
        lowest=0.1, highest=500, example=(28, 33, 25, 31, 36, 29, 27, 34), at_least=3, at_most=50,
        group=TOUCH, when=ONE_OR_TWO, help="3 to 50 readings; kgf and lbf will do too.",
    ),
    Readings(
        name="readings_b", label="Readings of polisher B", symbol="x_B", unit="N", decimals=1,
        lowest=0.1, highest=500, example=(22, 26, 19, 24, 27, 23, 21, 25), at_least=3, at_most=50,
        group=TOUCH, when=TWO,
    ),
)  # fmt: skip
