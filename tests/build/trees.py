"""Small handbooks for one test: a dictionary of paths and texts, written to a folder."""

from pathlib import Path

from benchrule.checks import find_problems
from benchrule.handbook import Handbook, load_handbook

STATION = """---
title: Sanding
station: sanding
order: 1
summary: The body is sanded flat.
comes_from: Binding
goes_to: Spraying
hazards: [dust]
tools: [Block]
calculators: [fret-spacing]
revision: 1
approved_on: 2026-01-02
approved_by: Lead sander
changed: First issue.
---
## Purpose

Flat: [[flat-1]] [[flat-2]] [[flat-3]] [[flat-4]] [[flat-5]] [[flat-6]] [[flat-7]] [[flat-8]].

## What good looks like

/// drawing | block
A block.
///

## Before you start

/// tools
///

/// hazards
///

## Steps

### Sand it

Long strokes.

Key point
:   Long strokes.

Reason
:   Flat.

Check
:   Look.

## What goes wrong

### It is not flat

Sign
:   Light under the rule.

Likely cause
:   Short strokes.

Mend
:   Sand again.

Stop and ask
:   If the binding is thin.

## Tolerances

/// tolerances
///

## Calculator

/// calculator | fret-spacing
///

## Before you pass it on

Wipe it.

## Practice

/// practice
///
"""
TOLERANCE = """flat-{number}:
  feature: Gap under a rule, place {number}
  part: body
  high: 0.1
  unit: mm
  decimals: 2
  measure: Lay the rule across.
  gauge: rule
  reason: Lacquer shows it.
  when_out: Sand again.
  source: common-practice
"""


MODELS = """big: {name: The Big, summary: Large., source: common-practice, values: {scale_length: 640 mm}}
small: {name: The Small, summary: Little., source: common-practice, values: {scale_length: 380 mm}}
"""


def sound_tree() -> dict[str, str]:
    """A handbook without a problem: one station, and all that it refers to."""
    return {
        "mkdocs.yml": "site_name: Test\nplugins: [benchrule]\ntheme: {name: material}\n",
        "docs/index.md": "# Home\n\n[Sanding](stations/sanding.md#steps)\n",
        "docs/stations/sanding.md": STATION,
        "docs/drawings/block.svg": "<svg xmlns='http://www.w3.org/2000/svg'></svg>",
        "docs/data/tolerances/sanding.yml": "".join(
            TOLERANCE.format(number=number) for number in range(1, 9)
        ),
        "docs/data/gauges.yml": "rule: {name: Rule, resolution: 0.01, unit: mm, uncertainty: 0.02, "
        "source: common-practice}\n",
        "docs/data/hazards.yml": "dust: {name: Dust, agent: dust, harm: Lungs., cautions: [Extract.], "
        "defer: Follow your local code., source: common-practice}\n",
        "docs/data/glossary.yml": "block: {term: Block, meaning: What paper is wrapped round.}\n",
        "docs/data/models.yml": MODELS,
        "docs/data/sources.yml": "common-practice: {kind: practice, title: Common practice}\n",
    }


def write_tree(folder: Path, tree: dict[str, str]) -> Path:
    """Writes the files; returns the folder."""
    for name, text in tree.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return folder


def read_tree(folder: Path, tree: dict[str, str]) -> tuple[Handbook, list[str]]:
    """The handbook of a tree, and its problems as lines."""
    root = write_tree(folder, tree)
    handbook, problems = load_handbook(root, root / "docs")
    return handbook, [str(problem) for problem in problems or find_problems(handbook)]
