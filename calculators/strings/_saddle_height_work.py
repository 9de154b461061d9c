"""The worked steps of the saddle-height calculation."""

from ..engine.declaration import Given, Limit, Said, Solved, Step, Work
from ._saddle_height_rows import gaps_by_fret, saddle_by_string

GEOMETRY, TEMPERED, PRACTICE = "plane-geometry", "equal-division", "common-practice"
SET, STAY, ROUND = "rod_and_nut == 'set'", "rod_and_nut == 'stay'", "fret_radius > 0"


def _mm(
    name: str, label: str, symbol: str, formula: str, only_if: str = "", decimals: int = 3,
    source: str = GEOMETRY,
) -> Step:  # fmt: skip
    return Step(name=name, label=label, symbol=symbol, unit="mm", decimals=decimals,
                formula=formula, only_if=only_if, source=source)  # fmt: skip


def _share(name: str, label: str, symbol: str, formula: str, only_if: str = "") -> Step:
    return Step(name=name, label=label, symbol=symbol, unit="1", decimals=4, formula=formula,
                only_if=only_if, source=GEOMETRY)  # fmt: skip


# fmt: off
_frets: tuple[Work, ...] = (
    Limit(
        holds="frets >= body_joint_fret", blames="frets", source=PRACTICE,
        otherwise="The board would end before the body joint; give its last fret",
        allowed="at least {body_joint_fret} frets",
    ),
    Limit(
        holds="fret_radius == 0 or fret_radius >= 100", blames="fret_radius", source=PRACTICE,
        otherwise="No board is rounded as tightly as that; give the radius across the frets",
        allowed="0 for a flat board, or 100 mm and more",
    ),
    Limit(
        holds="saddle_least < saddle_most", blames="saddle_least", source=PRACTICE,
        otherwise="The least that may show is no less than the most; give the two limits in order",
        allowed="less than {saddle_most}",
    ),
    _mm("first_fret", "Nut to first fret", "x_1", "scale_length * (1 - 2 ** (-1 / 12))",
        decimals=2, source=TEMPERED),
    _mm("octave_fret", "Nut to 12th fret", "x_12", "scale_length / 2", decimals=2,
        source=TEMPERED),
    _mm("joint_fret", "Nut to body-joint fret", "x_j",
        "scale_length * (1 - 2 ** (-body_joint_fret / 12))", decimals=2, source=TEMPERED),
)

_bend: tuple[Work, ...] = (
    _share("bend_nut", "Relief bends the neck up: at the nut, times the relief", "k_0",
           "4 * (joint_fret / (joint_fret - first_fret)) ** 2", SET),
    _share("bend_octave", "The same at the 12th fret", "k_12",
           "4 * ((joint_fret - octave_fret) / (joint_fret - first_fret)) ** 2 "
           "if body_joint_fret > 12 else 0", SET),
)


def _side(side: str, letter: str) -> tuple[Work, ...]:
    """The work on one outer string; names end in its side."""
    now, wanted, gap = f"action_{side}_now", f"action_{side}", f"first_fret_gap_{side}"
    length, too_high = f"string_{side}", f"too_high_{side}"
    cut, nut_cut = f"saddle_cut_{side}", f"nut_cut_{side}"
    s = letter
    return (
        Limit(
            holds=f"{now} > {gap}", blames=gap, source=GEOMETRY,
            otherwise=f"The {side} string lies as high over the first fret as over the 12th; read "
            "both again, open string",
            allowed=f"less than the action at the 12th, {{{now}}}",
        ),
        Limit(
            holds=f"{gap}_wanted < {wanted}", blames=f"{gap}_wanted", only_if=SET, source=GEOMETRY,
            otherwise=f"The {side} string would lie as high over the first fret as over the 12th",
            allowed=f"less than the action wanted, {{{wanted}}}",
        ),
        _mm(length, f"Length of the {side} string", f"L_{s}",
            f"scale_length + setback_{side}", decimals=1),
        _share(f"lever_{side}", f"Saddle down by one: the {side} string at the 12th comes down by",
               f"p_{s}", f"octave_fret / {length}"),
        _share(f"first_lever_{side}", "The same over the first fret", f"q_{s}",
               f"first_fret / {length}"),
        _mm(f"relief_lift_{side}", "The rod alone changes the action at the 12th by", f"a_{s}",
            f"(relief - relief_now) * (bend_nut * (1 - lever_{side}) - bend_octave)", SET),
        _mm(f"relief_lift_first_{side}", "and the gap over the first fret by", f"d_{s}",
            f"(relief - relief_now) * (bend_nut * (1 - first_lever_{side}) - 4)", SET),
        _mm(too_high, f"Too high at the 12th, {side}, before nut and saddle", f"u_{s}",
            f"{now} - {wanted} + relief_lift_{side}", SET),
        _mm(f"too_high_first_{side}", f"Too high over the first fret, {side}", f"v_{s}",
            f"{gap} - {gap}_wanted + relief_lift_first_{side}", SET),
        _mm(nut_cut, f"Off the floor of the nut slot, {side}", f"n_{s}",
            f"(too_high_first_{side} * lever_{side} - {too_high} * first_lever_{side}) "
            f"/ (lever_{side} - first_lever_{side})", SET, 2),
        Step(
            name=cut, label=f"Off the saddle, {side} string", symbol=f"s_{s}", unit="mm",
            decimals=2, source=GEOMETRY,
            formula=f"({now} - {wanted}) * {length} / octave_fret", only_if=STAY,
        ),
        Step(
            name=cut, label=f"Off the saddle, {side} string", symbol=f"s_{s}", unit="mm",
            decimals=2, source=GEOMETRY, only_if=SET,
            formula=f"({too_high} * (1 - first_lever_{side}) "
            f"- too_high_first_{side} * (1 - lever_{side})) / (lever_{side} - first_lever_{side})",
        ),
        Step(
            name=f"twice_{side}", label=f"By the rule of thumb, twice the difference, {side}",
            symbol=f"z_{s}", unit="mm", decimals=2, source=PRACTICE,
            formula=f"2 * ({now} - {wanted})",
        ),
        _mm(f"{gap}_after", f"Gap over the first fret, {side}, afterwards", f"g_{s}",
            f"{gap} - {cut} * first_lever_{side}", STAY, 2),
        _mm(f"{gap}_after", f"Gap over the first fret, {side}, afterwards", f"g_{s}",
            f"{gap}_wanted", SET, 2),
    )


_saddle: tuple[Work, ...] = (
    Step(
        name="saddle_after", label="Saddle showing in its middle, afterwards", symbol="w_a",
        unit="mm", decimals=2, source=GEOMETRY,
        formula="saddle_now - (saddle_cut_bass + saddle_cut_treble) / 2",
    ),
    Limit(
        holds="saddle_after > 0", blames="saddle_now", source=GEOMETRY,
        otherwise="More would come off than the saddle shows, {saddle_now}: the height is to be "
        "sought in the neck's pitch, the top or the bridge, not in the saddle",
        allowed="a saddle that shows more than the cut",
    ),
    Step(
        name="saddle_raise", label="The saddle has to rise by", symbol="", unit="mm", decimals=2,
        formula="max(-saddle_cut_bass, -saddle_cut_treble)", source=GEOMETRY,
    ),
    Step(
        name="rule_error", label="The rule of thumb misses the wanted action by", symbol="",
        unit="mm", decimals=3, source=GEOMETRY,
        formula="max(abs(saddle_cut_bass - twice_bass) * lever_bass, "
        "abs(saddle_cut_treble - twice_treble) * lever_treble)",
    ),
    Step(
        name="relief_before", label="Relief at the readings", symbol="", unit="mm", decimals=2,
        formula="relief", only_if=STAY, source=GEOMETRY,
    ),
    Step(
        name="relief_before", label="Relief at the readings", symbol="", unit="mm", decimals=2,
        formula="relief_now", only_if=SET, source=GEOMETRY,
    ),
    _mm("spread_first", "Outer strings apart at the first fret", "e_1",
        "string_spread_nut + (string_spread_bridge - string_spread_nut) * first_fret "
        "/ scale_length", ROUND, 2),
    _mm("spread_octave", "Outer strings apart at the 12th", "e_12",
        "(string_spread_nut + string_spread_bridge) / 2", ROUND, 2),
    _mm("fall_first", "Outer strings' frets lie lower than the middle, at the first", "f_1",
        "fret_radius - sqrt(fret_radius ** 2 - (spread_first / 2) ** 2)", ROUND, 4),
    _mm("fall_octave", "The same at the 12th", "f_12",
        "fret_radius - sqrt(fret_radius ** 2 - (spread_octave / 2) ** 2)", ROUND, 4),
    _mm("crest_rise", "Middle of the crest over the line of its two ends", "h",
        "fall_first + (fall_octave - fall_first) * ((string_bass + string_treble) / 2 - first_fret)"
        " / (octave_fret - first_fret)", ROUND),
    Limit(
        holds="crest_rise > 0", blames="string_spread_bridge", only_if=ROUND, source=GEOMETRY,
        otherwise="Strings that close up so much from nut to saddle would ask for a hollow crest; "
        "look over the two spreads",
        allowed="strings that spread towards the saddle, or run nearly even",
    ),
    Step(
        name="crest_radius", label="Radius of the saddle's crest", symbol="R_s", unit="mm",
        decimals=0, only_if=ROUND, source=GEOMETRY,
        formula="crest_rise / 2 + string_spread_bridge ** 2 / (8 * crest_rise)",
    ),
    Solved(
        name="saddle_by_string", label="The saddle at every string", function=saddle_by_string,
        gives=(
            Given(name="saddle_rows", label="String by string", unit="1", decimals=0, many=True),
            Given(name="showing_bass", label="Saddle showing at the bass string, afterwards",
                  symbol="w_b", unit="mm", decimals=2),
            Given(name="showing_treble", label="Saddle showing at the treble string, afterwards",
                  symbol="w_t", unit="mm", decimals=2),
        ),
        method="Each string is the straight line through its gaps at the first fret and the 12th; "
        "inner strings lie on an even step between the outer two. The cut runs straight from end "
        "to end.",
        source=GEOMETRY,
    ),
    Solved(
        name="gaps_by_fret", label="The gaps at every fret", function=gaps_by_fret,
        gives=(
            Given(name="gap_rows", label="Fret by fret", unit="1", decimals=0, many=True),
            Given(name="least_bass", label="Least gap beyond a pressed fret, bass", symbol="m_b",
                  unit="mm", decimals=2),
            Given(name="least_bass_fret", label="with the bass string pressed at fret", unit="1",
                  decimals=0),
            Given(name="least_treble", label="Least gap beyond a pressed fret, treble",
                  symbol="m_t", unit="mm", decimals=2),
            Given(name="least_treble_fret", label="with the treble string pressed at fret",
                  unit="1", decimals=0),
            Given(name="least_open", label="Least gap of an open string", unit="mm", decimals=2),
        ),
        method="The neck bends evenly from the joint to the nut, a parabola with the relief "
        "midway; beyond the joint the frets run straight. The gap is what lies between the "
        "string's line and that, less what the board falls away under the outer strings.",
        source=GEOMETRY,
    ),
    Limit(
        holds="least_open > 0", blames="relief", source=GEOMETRY,
        otherwise="With these figures an open string would lie on a fret; read action, gap and "
        "relief again",
        allowed="gaps and a relief that leave air over every fret",
    ),
)

_words: tuple[Work, ...] = (
    Said(
        name="verdict", label="The saddle",
        cases=(
            ("saddle_raise >= 0.005",
             "Too low: it has to rise by {saddle_raise}. Bone does not go on again: a new blank, "
             "and look first for what has sunk."),
            ("saddle_after < saddle_least",
             "Stop and ask: only {saddle_after} would be left showing, less than {saddle_least}. "
             "Neck pitch, top and bridge are read first."),
            ("saddle_after > saddle_most",
             "Stop and ask: {saddle_after} would still show, more than {saddle_most}. Neck pitch, "
             "top and bridge are read first."),
            ("max(saddle_cut_bass, saddle_cut_treble) < 0.005", "Leave it: nothing has to come off."),
            ("", "Take {saddle_cut_bass} off its foot under the bass string, {saddle_cut_treble} "
             "under the treble. Then {saddle_after} shows in the middle."),
        ),
    ),
    Said(
        name="nut_words", label="Over the first fret",
        cases=(
            (STAY, "The cut takes a little there too: {first_fret_gap_bass} becomes "
             "{first_fret_gap_bass_after} bass, {first_fret_gap_treble} becomes {first_fret_gap_treble_after} "
             "treble. File the nut last."),
            ("min(nut_cut_bass, nut_cut_treble) <= -0.005",
             "A slot would have to be {nut_cut_bass} (bass), {nut_cut_treble} (treble) deeper; "
             "minus is too deep already: a new nut, or ask."),
            ("", "File {nut_cut_bass} off the bass slot and {nut_cut_treble} off the treble slot, "
             "a stroke at a time, at pitch."),
        ),
    ),
    Said(
        name="rule_words", label="Twice the difference",
        cases=(
            (STAY, "The rule of thumb says {twice_bass} and {twice_treble}: near enough, the action "
             "would miss by {rule_error}. The string is a little longer than twice the way to the "
             "12th."),
            ("", "The rule of thumb, {twice_bass} and {twice_treble}, knows nothing of rod and nut: "
             "the action would miss by {rule_error}."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (
    *_frets, *_bend, *_side("bass", "b"), *_side("treble", "t"), *_saddle, *_words,
)  # fmt: skip
