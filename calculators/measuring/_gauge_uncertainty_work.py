"""The worked steps of a reading's uncertainty, from the contributions to the verdict."""

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work
from ..laws.uncertainty_budget import GUM
from ._gauge_uncertainty_solved import add_up, cover, from_repeats, judged

RULES, JCGM_106 = "iso-14253-1", "jcgm-106"
ROWS, LISTED, TAKEN = "budget == 'rows'", "budget == 'listed'", "repeats == 'taken'"
LOW, HIGH, BOTH = "limits != 'high'", "limits != 'low'", "limits == 'both'"

CONSTANTS = (
    Constant(name="list_factor", label="The k of the gauge list", symbol="k_l", unit="1",
             decimals=0, value=2, source=RULES),
    Constant(name="whole", label="The whole, in per cent", symbol="", unit="%", decimals=0,
             value=100, source=GUM.id),
    Constant(name="narrow_factor", label="Guard band of the edition of 2017, in standard "
             "uncertainties", symbol="", unit="1", decimals=2, value=1.65, source=RULES),
)  # fmt: skip


def _step(
    name: str, label: str, symbol: str, formula: str, only_if: str = "", unit: str = "mm",
    decimals: int = 3, source: str = GUM.id,
) -> Step:  # fmt: skip
    return Step(name=name, label=label, symbol=symbol, unit=unit, decimals=decimals,
                formula=formula, only_if=only_if, source=source)  # fmt: skip


def _given(
    name: str, label: str, unit: str, decimals: int, symbol: str = "", text: bool = False
) -> Given:
    return Given(name=name, label=label, symbol=symbol, unit=unit, decimals=decimals, text=text)


# fmt: off
_budget: tuple[Work, ...] = (
    Limit(
        holds="limit_low < limit_high", blames="limit_high", only_if=BOTH, source=RULES,
        otherwise="The high limit is no higher than the low one; put them in order",
        allowed="more than {limit_low}",
    ),
    Solved(
        name="add_up", label="Standard uncertainty of what stands in the list", function=add_up,
        source=GUM.id, only_if=ROWS,
        gives=(
            Given(name="parts", label="Contributions", unit="1", decimals=0, many=True),
            _given("known_u", "of all of it", "mm", 4, "u_B"),
        ),
        method="Each half-width over the divisor of its shape (√3, √6, √2, 2 or 1), times how much "
        "it counts; then the root of the sum of squares.",
    ),
    _step("known_u", "Standard uncertainty of the gauge", "u_B", "gauge_uncertainty / list_factor",
          LISTED, decimals=4),
    Solved(
        name="from_repeats", label="The repeats", function=from_repeats, source=GUM.id,
        only_if=TAKEN,
        gives=(
            _given("repeat_mean", "Mean of the repeats", "mm", 3, "x̄"),
            _given("repeat_spread", "Spread of the repeats", "mm", 4, "s"),
            _given("repeat_count", "Repeats", "1", 0, "n"),
            _given("repeat_freedom", "Degrees of freedom, n - 1", "1", 0, "ν"),
        ),
        method="Mean and sample standard deviation with n - 1.",
    ),
    _step("repeat_u", "Scatter of a reading that is a mean of so many", "u_A",
          "repeat_spread / sqrt(averaged)", TAKEN, decimals=4),
    _step("combined_u", "Combined standard uncertainty", "u_c",
          "sqrt(known_u ** 2 + repeat_u ** 2)", TAKEN, decimals=4),
    _step("combined_u", "Combined standard uncertainty", "u_c", "known_u", "repeats == 'none'",
          decimals=4),
    Limit(
        holds="combined_u > 0", blames="budget", source=GUM.id,
        otherwise="Nothing here makes the reading uncertain, which no gauge can say of itself; "
        "give its step at least",
        allowed="at least one contribution above nought",
    ),
    _step("level", "Share to cover", "P", "whole * erf(list_factor / sqrt(2))",
          "coverage == 'usual'", unit="%", decimals=4),
    _step("level", "Share to cover", "P", "confidence", "coverage == 'own'", unit="%", decimals=4),
    Solved(
        name="cover", label="Degrees of freedom and coverage factor", function=cover,
        source=GUM.id,
        gives=(
            Given(name="budget_rows", label="Contributions", unit="1", decimals=0, many=True),
            _given("limited", "The freedom has a limit", "1", 0, text=True),
            _given("freedom_eff", "Effective degrees of freedom (0: no limit)", "1", 1, "ν_e"),
            _given("factor", "Coverage factor", "1", 3, "k"),
            _given("biggest", "Biggest contribution", "1", 0, text=True),
            _given("biggest_u", "its standard uncertainty", "mm", 4),
            _given("biggest_share", "its share of the squares", "%", 0),
        ),
        method="Welch-Satterthwaite: u_c⁴ over the sum of u_i⁴/ν_i, not cut to a whole number. The "
        "factor is Student's t for that freedom, or the normal curve's.",
    ),
    _step("expanded", "Expanded uncertainty", "U", "factor * combined_u"),
    _step("without_biggest", "U without the biggest contribution, same k, would be", "U_1",
          "factor * sqrt(max(0 * biggest_u ** 2, combined_u ** 2 - biggest_u ** 2))"),
)

_limits: tuple[Work, ...] = (
    Solved(
        name="judged", label="The decision", function=judged, source=RULES,
        gives=(
            _given("word", "Verdict", "1", 0, text=True),
            _given("side", "Limit concerned", "1", 0, text=True),
            _given("zone", "Some reading can be accepted", "1", 0, text=True),
            _given("coarse", "The gauge is coarse for these limits", "1", 0, text=True),
            _given("chance", "Chance that the true value is in", "%", 2, "p_c"),
        ),
        method="Accepted from the low limit plus U up to the high limit less U; rejected beyond a "
        "limit by more than U; between them the gauge cannot tell. The chance is that of a normal "
        "error with u_c.",
    ),
    _step("accept_low", "Accept from", "A_1", "limit_low + expanded", LOW, source=RULES),
    _step("accept_high", "Accept up to", "A_2", "limit_high - expanded", HIGH, source=RULES),
    _step("narrow_low", "By the edition of 2017, from", "A_3",
          "limit_low + narrow_factor * combined_u", LOW, decimals=4, source=RULES),
    _step("narrow_high", "By the edition of 2017, up to", "A_4",
          "limit_high - narrow_factor * combined_u", HIGH, decimals=4, source=RULES),
    _step("capability", "Room over four standard uncertainties", "C_m",
          "(limit_high - limit_low) / (4 * combined_u)", BOTH, unit="1", source=JCGM_106),
)

_words: tuple[Work, ...] = (
    Said(
        name="freedom_words", label="Degrees of freedom",
        cases=(
            ("limited == 'no'", "No limit: all of it is known well, so the factor is the normal "
             "curve's, {factor}."),
            ("", "{freedom_eff} in effect, so the factor is {factor}."),
        ),
    ),
    Said(
        name="verdict", label="This reading",
        cases=(
            ("word == 'accept'", "Accept {reading}: it is in, uncertainty and all."),
            ("word == 'reject' and side == 'low'", "Reject {reading}: it is too low."),
            ("word == 'reject'", "Reject {reading}: it is too high."),
            ("side == 'low' and chance >= 99.9",
             "Can't tell quite: {reading} lies within {expanded} of the low limit, most likely in."),
            ("side == 'low'", "Can't tell: {reading} lies within {expanded} of the low limit. It "
             "is in with a chance of {chance}. Measure with a finer gauge."),
            ("chance >= 99.9",
             "Can't tell quite: {reading} lies within {expanded} of the high limit, most likely "
             "in."),
            ("", "Can't tell: {reading} lies within {expanded} of the high limit. It is in with a "
             "chance of {chance}. Measure with a finer gauge."),
        ),
    ),
    Said(
        name="zone_words", label="Accept readings",
        cases=(
            ("zone == 'no'", "None: twice the uncertainty, {expanded}, is more than there is between "
             "the limits. Take a finer gauge."),
            (BOTH, "From {accept_low} to {accept_high}."),
            (HIGH, "Up to {accept_high}."),
            ("", "From {accept_low} up."),
        ),
    ),
    Said(
        name="fit_words", label="Does the gauge fit the limits",
        cases=(
            ("zone == 'no'", "No: it can accept nothing here."),
            ("coarse == 'yes'", "Coarse: half of the room or more goes to the gauge. The biggest part "
             "is: {biggest} ({biggest_share}). Without it U would be {without_biggest}."),
            ("limits == 'low'", "Yes: with a low limit alone the room is as wide as you like."),
            ("", "Yes: it leaves more than half of the room. The biggest part is: {biggest} "
             "({biggest_share})."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*_budget, *_limits, *_words)
