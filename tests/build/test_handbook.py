"""The handbook as objects: how limits read, what search entries hold, what exercises draw."""

from pathlib import Path

import pytest

from benchrule.generated_pages import generated_pages
from benchrule.handbook import Handbook, load_handbook
from benchrule.models import agreements, figures_for
from benchrule.references import BadReference, find_references, parse_reference
from benchrule.search_entries import Vocabulary, search_entries
from benchrule.station_parts import places_of

from .trees import TOLERANCE, read_tree, sound_tree

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def demo() -> Handbook:
    handbook, problems = load_handbook(ROOT, ROOT / "docs")
    assert problems == []
    return handbook


@pytest.mark.parametrize(
    ("fields", "metric", "inch"),
    [
        ("high: 0.1", "at most 0.10 mm", "at most 0.0039 in"),
        ("low: 3", "at least 3.00 mm", "at least 0.1181 in"),
        ("low: 0\n  high: 0.1", "at most 0.10 mm", "at most 0.0039 in"),
        ("low: 5.5\n  high: 6", "5.50 to 6.00 mm", "0.2165 to 0.2362 in"),
        ("low: 35.8\n  high: 36.2\n  target: 36", "36.00 ± 0.20 mm", "1.4173 ± 0.0079 in"),
        ("low: -0.1\n  high: 0.1\n  target: 0", "0.00 ± 0.10 mm", "0.0000 ± 0.0039 in"),
        ("low: 2\n  high: 2", "2.00 mm", "0.0787 in"),
    ],
)
def test_limits_read_as_people_say_them(
    fields: str, metric: str, inch: str, tmp_path: Path
) -> None:
    tree = sound_tree()
    tree["docs/data/tolerances/sanding.yml"] = "".join(
        TOLERANCE.format(number=number).replace("high: 0.1", fields) for number in range(1, 9)
    )
    handbook, problems = read_tree(tmp_path, tree)
    assert [one for one in problems if "can accept no reading" not in one] == []
    assert handbook.tolerances["flat-1"].limits() == metric
    assert handbook.tolerances["flat-1"].limits("inch") == inch


def test_temperatures_are_not_given_as_plus_minus_in_fahrenheit(tmp_path: Path) -> None:
    tree = sound_tree()
    path = "docs/data/tolerances/sanding.yml"
    tree[path] = tree[path].replace(
        "high: 0.1\n  unit: mm", "low: 60\n  high: 64\n  target: 62\n  unit: degC"
    )
    tree["docs/data/gauges.yml"] = tree["docs/data/gauges.yml"].replace("unit: mm", "unit: degC")
    handbook, _ = read_tree(tmp_path, tree)
    assert handbook.tolerances["flat-1"].limits() == "62.00 ± 2.00 °C"
    assert handbook.tolerances["flat-1"].limits("inch") == "140.00 to 147.20 °F"


def test_yaml_words_stay_words(tmp_path: Path) -> None:
    tree = sound_tree()
    path = "docs/data/tolerances/sanding.yml"
    tree[path] = tree[path].replace(
        "source: common-practice", "source: common-practice\n  decided: {by: no, on: 2026-01-02}"
    )
    handbook, problems = read_tree(tmp_path, tree)
    assert problems == []
    assert handbook.tolerances["flat-1"].field("decided") == {"by": "no", "on": "2026-01-02"}


@pytest.mark.parametrize("text", ["plain: 3 mm", "nonsense:x:y", "plain:|reason"])
def test_bad_references_say_what_would_do(text: str) -> None:
    with pytest.raises(BadReference, match=r"kind|reason"):
        parse_reference(text)


def test_references_in_code_are_left_alone() -> None:
    assert list(find_references("`[[a]]` [[b]]\n```\n[[c]]\n```\n")) == [(8, "b")]


def test_the_demo_shop_has_every_station(demo: Handbook) -> None:
    assert len(demo.stations) == 28
    assert next(name for name, _ in demo.lanes) == "Before the first cut"
    for station in demo.stations:
        assert 10 <= len(demo.tolerances_of(station.id)) <= 16


def test_the_way_through_the_shop_has_one_beginning_and_comes_to_every_station(
    demo: Handbook,
) -> None:
    reached = {"order-intake"}
    for _ in demo.stations:
        reached |= {one.id for one in demo.stations if set(demo.follows(one)) & reached}
    beside = {station.id for station in demo.stations if station.group == "beside"}
    assert reached | beside == {station.id for station in demo.stations}


def test_what_is_calculated_from_each_model_fits_its_own_tolerances(demo: Handbook) -> None:
    found = list(agreements(demo))
    assert [one for one in found if not one.holds] == []
    for model in demo.models:
        assert len({one.tolerance.id for one in found if one.model == model}) >= 12
        for calculator in demo.calculators.values():
            assert "refused" not in figures_for(demo, demo.models[model], calculator)


def test_a_model_has_its_own_figures_and_the_rest_have_the_general_ones(demo: Handbook) -> None:
    top = demo.tolerances["plate-top-thickness"]
    assert top.limits() == "2.8 ± 0.1 mm"
    assert top.for_model("ukulele").limits() == "1.9 ± 0.1 mm"
    assert top.for_model("fourteen") is top
    assert demo.general_models(top) == ["fourteen"]
    rod = demo.tolerances["rod-hung-weight"]
    assert rod.holds_for("twelve") and not rod.holds_for("ukulele")
    assert demo.general_models(demo.tolerances["fret-level"]) == []


def address_of(demo: Handbook) -> dict[str, str]:
    sources = [page.source for page in demo.pages] + list(generated_pages(demo))
    return {source: source.removesuffix(".md") + "/" for source in sources}


def test_search_entries_carry_the_words_of_newcomers(demo: Handbook) -> None:
    entries = {str(one["location"]): one for one in search_entries(demo, address_of(demo))}
    kinds = ("tolerances", "glossary", "hazards", "gauges", "materials", "models")
    rows = sum(len(demo.entries[kind]) for kind in kinds) + len(demo.calculators)
    parts = [one for one in places_of(demo) if one.kind != "section"]
    assert len(entries) == rows + len(parts) + len(demo.stations) * 3  # page, good, pass on
    lift = entries["stations/fretting/#tol-fret-crown-lift"]
    assert "0.05 mm" in str(lift["title"])
    assert isinstance(lift["words"], list) and "fret lifting in the middle" in lift["words"]
    fault = entries["stations/fretting/#a-fret-lifts-in-the-middle"]
    assert fault["kind"] == "fault" and "[[" not in str(fault["text"])
    assert lift["unit"] == "length" and lift["kind"] == "tolerance"


def test_a_text_that_mentions_a_thing_gets_its_other_words(tmp_path: Path) -> None:
    tree = sound_tree()
    tree["docs/data/glossary.yml"] = (
        "block: {term: Sanding block, meaning: x, other_words: [cork, paper holder]}\n"
    )
    handbook, _ = read_tree(tmp_path, tree)
    vocabulary = Vocabulary(handbook)
    assert vocabulary.other_words("Wrap the paper holder") == ["Sanding block", "cork"]
    assert vocabulary.other_words("Sanding blocks") == ["cork", "paper holder"]
    assert vocabulary.other_words("A recorkscrew") == []
