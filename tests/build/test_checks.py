"""Each check shown failing once, on a handbook that is sound but for the one thing."""

from pathlib import Path

import pytest

from .trees import read_tree, sound_tree

STATION = "docs/stations/sanding.md"
TOLERANCES = "docs/data/tolerances/sanding.yml"


def test_the_sound_handbook_has_no_problem(tmp_path: Path) -> None:
    _, problems = read_tree(tmp_path, sound_tree())
    assert problems == []


BROKEN = {
    "loose number": (STATION, "Long strokes.\n\nKey", "Sand 5 mm off.\n\nKey",
                     "docs/stations/sanding.md:38: loose number '5 mm'; cite a tolerance"),
    "loose temperature": (STATION, "Wipe it.", "Wipe it at 20 °C.", "loose number '20 °C'"),
    "loose range": (STATION, "Wipe it.", "Wait 5 to 10 minutes.", "loose number '5 to 10 minutes'"),
    "unknown tolerance": (STATION, "Wipe it.", "Wipe [[flat-99]].", "unknown tol 'flat-99'"),
    "unknown term": (STATION, "Wipe it.", "Wipe [[term:rag]].", "unknown term 'rag'"),
    "unknown part": (STATION, "Wipe it.", "Wipe [[flat-1:target]].", "'flat-1' has no target"),
    "plain without reason": (STATION, "Wipe it.", "[[plain: 5 mm]]", "needs its reason"),
    "uncited tolerance": (STATION, "[[flat-8]]", "", "flat-8: no procedure cites it"),
    "unknown calculator": (STATION, "/// calculator | fret-spacing", "/// calculator | frets",
                           "unknown calculator 'frets'"),
    "no drawing": (STATION, "/// drawing | block", "/// drawing | brick", "no drawing 'docs/drawings/brick"),
    "no section": (STATION, "## Practice", "## Playtime", "no section 'Practice'"),
    "no reason": (STATION, "Reason\n:   Flat.\n", "", "'Sand it' has no reason"),
    "no mend": (STATION, "Mend\n:   Sand again.\n", "", "'It is not flat' has no mend"),
    "no hazards": (STATION, "hazards: [dust]", "hazards: []", "hazards:"),
    "unknown hazard": (STATION, "hazards: [dust]", "hazards: [dust, fire]", "unknown hazard 'fire'"),
    "front matter date": (STATION, "approved_on: 2026-01-02", "approved_on: yesterday",
                          "docs/stations/sanding.md:12: approved_on: 'yesterday' does not match"),
    "front matter field": (STATION, "revision: 1", "revison: 1", "'revison' was unexpected"),
    "dead link": ("docs/index.md", "sanding.md#steps", "sandng.md", "dead link 'stations/sandng.md'"),
    "dead anchor": ("docs/index.md", "#steps", "#stepps", "no heading '#stepps'"),
    "unit": (TOLERANCES, "unit: mm", "unit: furlong", "unknown unit 'furlong'"),
    "no source": (TOLERANCES, "  source: common-practice\n", "", "'source' is a required property"),
    "unknown source": (TOLERANCES, "common-practice", "hearsay", "unknown source 'hearsay'"),
    "shop decision": (TOLERANCES, "source: common-practice", "source: shop-decision",
                      "unknown source 'shop-decision'"),
    "unknown gauge": (TOLERANCES, "gauge: rule", "gauge: ruler", "unknown gauge 'ruler'"),
    "gauge of another kind": ("docs/data/gauges.yml", "unit: mm", "unit: s", "by a gauge that reads s"),
    "limits crossed": (TOLERANCES, "high: 0.1\n", "high: 0.1\n  low: 0.3\n", "low lies above high"),
    "target outside": (TOLERANCES, "high: 0.1\n", "high: 0.1\n  target: 4\n", "target lies outside"),
    "no limit": (TOLERANCES, "  high: 0.1\n", "", "flat-1: has neither low nor high"),
    "number as text": (TOLERANCES, "high: 0.1", "high: 0.1 mm", "'0.1 mm' is not of type 'number'"),
    "duplicate id": (TOLERANCES, "flat-2:", "flat-1:", "'flat-1' stands here twice; keep one"),
    "not yaml": (TOLERANCES, "flat-2:", "flat-2: [", "not YAML"),
    "term sees nothing": ("docs/data/glossary.yml", "wrapped round.}", "x, see: [rag]}",
                          "sees unknown term 'rag'"),
    "unused gauge": ("docs/data/gauges.yml", "rule:", "spare: {name: Spare, resolution: 1, unit: mm, "
                     "uncertainty: 1, source: common-practice}\nrule:", "spare: no tolerance is measured"),
    "hopeless gauge": ("docs/data/gauges.yml", "uncertainty: 0.02", "uncertainty: 0.2",
                       "flat-1: Rule can accept no reading"),
    "unknown model": (TOLERANCES, "high: 0.1\n", "high: 0.1\n  by_model: {tiny: {high: 0.2}}\n",
                      "unknown model 'tiny'"),
    "unknown model applies": (TOLERANCES, "high: 0.1\n", "high: 0.1\n  applies_to: [tiny]\n",
                              "unknown model 'tiny'"),
    "model limits crossed": (TOLERANCES, "high: 0.1\n",
                             "high: 0.1\n  by_model: {small: {low: 0.3, high: 0.2}}\n",
                             "small: low lies above high"),
    "model without limits": (TOLERANCES, "high: 0.1\n",
                             "high: 0.1\n  by_model: {small: {target: 0.2}}\n",
                             "small has neither low nor high"),
    "model target outside": (TOLERANCES, "high: 0.1\n",
                             "high: 0.1\n  by_model: {small: {high: 0.2, target: 3}}\n",
                             "small: the target lies outside"),
    "model value nobody asks": ("docs/data/models.yml", "scale_length: 640", "scale_lenght: 640",
                                "no calculator asks 'scale_lenght'"),
    "model value refused": ("docs/data/models.yml", "640 mm", "6 mm",
                            "fret-spacing refuses scale_length = 6 mm"),
    "disagreement": (TOLERANCES, "high: 0.1\n", "high: 500\n  low: 400\n  agrees_with: "
                     "{calculator: fret-spacing, result: scale_length}\n",
                     "for big fret-spacing works out scale_length = 640.00 mm, outside 400.00 to 500.00"),
    "agreement with nothing": (TOLERANCES, "high: 0.1\n", "high: 0.1\n  agrees_with: "
                               "{calculator: fret-spacing, result: weight}\n", "unknown figure fret-spacing.weight"),
    "agreement of other units": (TOLERANCES, "high: 0.1\n", "high: 0.1\n  agrees_with: "
                                 "{calculator: fret-spacing, result: divisor}\n", "another kind of unit"),
    "unknown group": (STATION, "order: 1\n", "order: 1\ngroup: box\n", "unknown group 'box'"),
    "follows nothing": (STATION, "order: 1\n", "order: 1\nfollows: [mill]\n",
                        "follows unknown station 'mill'"),
    "refused presets": (STATION, "/// calculator | fret-spacing\n",
                        "/// calculator | fret-spacing\n    presets: {frets: 90}\n",
                        "fret-spacing refuses frets"),
    "presets no yaml": (STATION, "/// calculator | fret-spacing\n",
                        "/// calculator | fret-spacing\n    presets: {frets\n", "not YAML"),
    "unused drawing": ("docs/drawings/spare.svg", "", "<svg></svg>", "no page shows this drawing"),
    "unused term": ("docs/data/glossary.yml", "term: Block", "term: Zymurgy", "no page uses the term"),
    "unused source": ("docs/data/sources.yml", "common-practice:",
                      "spare: {kind: published, title: A book}\ncommon-practice:",
                      "spare: nothing is taken from it"),
    "unused group": ("docs/data/groups.yml", "", "box: {name: The box, summary: x}\n",
                     "box: no station belongs to it"),
    "term without its drawing": ("docs/data/glossary.yml", "wrapped round.", "x, drawing: brick",
                                 "no drawing 'brick'"),
    "asked nowhere": ("docs/data/asked.yml", "", "'sanding#polish-it': [how do i polish]\n",
                      "sanding#polish-it: there is no such place"),
    "asked twice": ("docs/data/asked.yml", "", "'sanding#sand-it': [it is wavy]\n"
                    "'sanding#it-is-not-flat': [It is  wavy]\n", "also stands at sanding#sand-it"),
    "unused hazard": ("docs/data/hazards.yml", "dust:", "noise: {name: N, agent: noise, harm: Ears., "
                      "cautions: [Plugs.], defer: Law., source: common-practice}\ndust:",
                      "noise: no station has it"),
}  # fmt: skip


@pytest.mark.parametrize("name", BROKEN)
def test_a_broken_handbook_says_what_is_wrong(name: str, tmp_path: Path) -> None:
    file, old, new, said = BROKEN[name]
    tree = sound_tree()
    assert old in tree.setdefault(file, "")
    tree[file] = tree[file].replace(old, new, 1)
    _, problems = read_tree(tmp_path, tree)
    assert any(said in problem for problem in problems), problems
    for problem in problems:
        where, _, rest = problem.partition(": ")
        assert where.rpartition(":")[2].isdigit(), problem
        assert "; " in rest, f"no word on what to do: {problem}"


def test_all_problems_come_at_once_in_order(tmp_path: Path) -> None:
    tree = sound_tree()
    tree[STATION] = tree[STATION].replace("Wipe it.", "Wipe 3 mm, [[flat-77]], wait 9 s.")
    tree["docs/index.md"] += "\n[x](nowhere.md)\n"
    tree[TOLERANCES] = tree[TOLERANCES].replace("gauge: rule", "gauge: ruler", 2)
    _, problems = read_tree(tmp_path, tree)
    assert len(problems) == 6
    assert problems == sorted(problems, key=lambda line: line.split(":")[0])


def test_a_marked_number_and_code_are_let_through(tmp_path: Path) -> None:
    tree = sound_tree()
    tree[STATION] = tree[STATION].replace(
        "Wipe it.", "Wipe [[plain: 3 mm | an illustration]] and `4 mm`, and two weeks; 12 frets."
    )
    _, problems = read_tree(tmp_path, tree)
    assert problems == []
