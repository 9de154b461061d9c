"""The worked steps of the string-spacing calculation."""

from ..engine.declaration import Given, Limit, Said, Solved, Step, Work
from ._string_spacing_rows import across, read_gauges, string_rows

GEOMETRY, PRACTICE = "plane-geometry", "common-practice"
NUT_GAPS, SADDLE_GAPS = "nut_rule == 'gaps'", "bridge_rule == 'gaps'"
LEAST_GAP_MM = 0.5


def _mm(
    name: str, label: str, symbol: str, formula: str, decimals: int = 2, only_if: str = ""
) -> Step:
    return Step(name=name, label=label, symbol=symbol, unit="mm", decimals=decimals,
                formula=formula, only_if=only_if, source=GEOMETRY)  # fmt: skip


def _given(name: str, label: str, symbol: str = "", decimals: int = 2) -> Given:
    return Given(name=name, label=label, symbol=symbol, unit="mm", decimals=decimals)


def _many(name: str, label: str) -> Given:
    return Given(name=name, label=label, unit="mm", decimals=3, many=True)


# fmt: off
_gauges: tuple[Work, ...] = (
    Solved(
        name="reading", label="The strings", function=read_gauges,
        gives=(
            _many("strings_mm", "Gauges, treble to bass"),
            Given(name="strings_count", label="Number of strings", symbol="n", unit="1",
                  decimals=0),
            _given("gauge_sum", "All gauges together", "Σd", 3),
            _given("gauge_treble", "Gauge of the treble string", "d_1", 3),
            _given("gauge_bass", "Gauge of the bass string", "d_n", 3),
            _given("graduation", "Graduation of the rule", "g", 4),
        ),
        method="Thousandths of an inch times 0.0254 mm, exactly; added up.", source=GEOMETRY,
    ),
    Limit(
        holds="fret_radius == 0 or fret_radius >= 100", blames="fret_radius", source=PRACTICE,
        otherwise="No board is rounded as tightly as that; give the radius across the frets",
        allowed="0 for a flat board, or 100 mm and more",
    ),
)

_places: tuple[Work, ...] = (
    _mm("nut_gap", "Gap between strings at the nut", "a_0",
        "(string_spread_nut - gauge_sum + (gauge_bass + gauge_treble) / 2) / (strings_count - 1)",
        only_if=NUT_GAPS),
    _mm("nut_pitch", "Middle to middle at the nut", "m_0",
        "string_spread_nut / (strings_count - 1)", only_if="nut_rule == 'centres'"),
    _mm("saddle_gap", "Gap between strings at the saddle", "a_s",
        "(string_spread_bridge - gauge_sum + (gauge_bass + gauge_treble) / 2) "
        "/ (strings_count - 1)", only_if=SADDLE_GAPS),
    _mm("saddle_pitch", "Middle to middle at the saddle", "m_s",
        "string_spread_bridge / (strings_count - 1)", only_if="bridge_rule == 'centres'"),
    Solved(
        name="side_by_side", label="The strings side by side", function=across,
        gives=(
            _many("nut_places", "Places at the nut, from the bass string"),
            _many("saddle_places", "Places at the saddle, from the bass string"),
            Given(name="fret_rows", label="Fret by fret", unit="1", decimals=0, many=True),
            _given("nut_gap_least", "Narrowest gap at the nut", "a_1"),
            _given("nut_gap_most", "Widest gap at the nut", "a_2"),
            _given("saddle_gap_least", "Narrowest gap at the saddle"),
            _given("saddle_gap_most", "Widest gap at the saddle"),
            _given("octave_gap_least", "Narrowest gap at the 12th fret", "b_1"),
            _given("octave_gap_most", "Widest gap at the 12th fret", "b_2"),
            _given("middles_gap_least", "With equal middles at the nut: narrowest gap"),
            _given("middles_gap_most", "With equal middles at the nut: widest gap"),
        ),
        method="From the bass string on: half its gauge, the gap, half the next gauge, or equal "
        "steps. Between nut and saddle strings and gaps run straight.",
        source=GEOMETRY,
    ),
    Limit(
        holds=f"nut_gap_least >= {LEAST_GAP_MM}", blames="string_spread_nut", source=PRACTICE,
        otherwise="The strings would not go in beside each other at the nut: narrowest gap "
        "{nut_gap_least}; a wider spread or fewer strings",
        allowed="a spread that leaves half a millimetre between neighbours",
    ),
    Limit(
        holds=f"saddle_gap_least >= {LEAST_GAP_MM}", blames="string_spread_bridge",
        source=PRACTICE,
        otherwise="The strings would not go in beside each other at the saddle: narrowest gap "
        "{saddle_gap_least}; a wider spread or fewer strings",
        allowed="a spread that leaves half a millimetre between neighbours",
    ),
    _mm("nut_width", "Width of board and nut there", "b",
        "string_spread_nut + 2 * edge_margin"),
    _mm("edge_shift", "The outer strings are moved towards the treble by", "v",
        "(gauge_bass - gauge_treble) / 4", 3, "edge_rule == 'sides'"),
    _mm("bass_edge", "Middle of the bass string to its edge", "e_b", "edge_margin",
        only_if="edge_rule == 'centres'"),
    _mm("bass_edge", "Middle of the bass string to its edge", "e_b", "edge_margin + edge_shift",
        only_if="edge_rule == 'sides'"),
    _mm("treble_edge", "Middle of the treble string to its edge", "e_t",
        "nut_width - string_spread_nut - bass_edge"),
    _mm("bass_outside", "Board outside the bass string", "u_b", "bass_edge - gauge_bass / 2"),
    _mm("treble_outside", "Board outside the treble string", "u_t",
        "treble_edge - gauge_treble / 2"),
    Limit(
        holds="min(bass_outside, treble_outside) >= 0", blames="edge_margin", source=GEOMETRY,
        otherwise="An outer string would hang over the edge of the board; more margin",
        allowed="at least half the gauge of the string",
    ),
)

_slots: tuple[Work, ...] = (
    Solved(
        name="nut_slots", label="The nut, string by string", function=string_rows,
        gives=(
            Given(name="nut_rows", label="String by string", unit="1", decimals=0, many=True),
            _given("mark_difference", "Marks on this rule: widest less narrowest gap", "δ"),
            _given("highest_top", "Highest place of the nut's top over its shelf", "H"),
            _given("lowest_top", "Lowest place under a string", "H_1"),
        ),
        method="Place from the bass edge, rounded to a graduation. Floor: fret height and the leaf, "
        "on an even step from treble to bass. Top over the shelf: board, less its fall so far from "
        "the middle (sagitta of the radius), floor, and the string's share in the bone.",
        source=GEOMETRY,
    ),
    _mm("blank_height", "Nut blank at least so high", "H_0", "highest_top + blank_spare", 1),
    _mm("floor_treble", "Leaves on the board, treble string", "l_t", "fret_height + nut_height"),
    _mm("floor_bass", "Leaves on the board, bass string", "l_b",
        "fret_height + nut_height_bass"),
)

_words: tuple[Work, ...] = (
    Said(
        name="verdict", label="At the nut",
        cases=(
            (NUT_GAPS, "{nut_gap} from string to string, {strings_count} strings. The bass string's "
             "middle lies {bass_edge} from its edge."),
            ("", "{nut_pitch} middle to middle. The gaps then run from {nut_gap_least} to "
             "{nut_gap_most}."),
        ),
    ),
    Said(
        name="rule_words", label="Gaps or middles",
        cases=(
            ("middles_gap_most - middles_gap_least < 0.005",
             "Equal gaps and equal middles come to the same here."),
            (NUT_GAPS, "Set by equal middles, the gaps would run from {middles_gap_least} to "
             "{middles_gap_most}: the thick strings crowd."),
            ("", "Equal gaps would all be the same; equal middles differ by as much as the gauges "
             "do."),
        ),
    ),
    Said(
        name="mark_words", label="With the rule in hand",
        cases=(
            ("mark_difference - (nut_gap_most - nut_gap_least) > 0.2",
             "Rounded to its marks the gaps differ by {mark_difference}: too coarse. Take a finer "
             "rule, or a spacing rule."),
            ("", "Rounded to its marks the gaps differ by {mark_difference}."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*_gauges, *_places, *_slots, *_words)
