"""The bench's one table, in the terminal and on the page of figures."""

import json
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from .parts import PARTS, Part
from .records import PUBLISHED, ROOT

PAGE = ROOT / "docs" / "how-fast.md"
BEGIN, END = "<!-- figures: written by python -m tests.bench --page -->", "<!-- end of figures -->"


def in_terminal(measured: dict[str, Any], names: Iterable[str]) -> str:
    """The table of the parts named."""
    lines = []
    for name in names:
        part, made = PARTS[name], measured[name]["made"]
        lines.append(f"\n{part.title}  ({made['took_s']} s to measure, {made['date']})")
        for row in part.rows(measured[name]["figures"]):
            aim = f"   aim: {row.aim}, {row.verdict.strip('*')}" if row.aim else ""
            lines.append(f"  {row.what:75} {row.figure:>14}{aim}")
    return "\n".join(lines)


def on_page(text: str, measured: dict[str, Any]) -> str:
    """The page with the figures written anew between its markers."""
    head, _, rest = text.partition(BEGIN)
    _, end, tail = rest.partition(END)
    if not end:
        raise ValueError(f"the page has no {BEGIN} … {END}")
    return head + BEGIN + "\n\n" + "\n".join(_sections(measured)) + "\n" + END + tail


def _sections(measured: dict[str, Any]) -> Iterable[str]:
    for name, part in PARTS.items():
        if name in measured:
            yield from _section(name, part, measured[name])
    yield "## Measured on\n"
    yield "| Part | Machine | With | Commit | Day | Other work before |"
    yield "|---|---|---|---|---|---|"
    for name, part in PARTS.items():
        if name not in measured:
            continue
        made = measured[name]["made"]
        versions = ", ".join(f"{of} {which}" for of, which in made["versions"].items())
        yield (
            f"| {part.title} | {made['machine']} | {versions} | {made['commit']} | {made['date']} "
            f"| {made['load_before']} |"
        )
    yield ""


def _section(name: str, part: Part, measured: dict[str, Any]) -> Iterable[str]:
    yield f"## {part.title}\n"
    yield f"{part.about}\n"
    yield f"`python -m tests.bench {name}`\n"
    yield "| What | Figure | Aim | Met? |"
    yield "|---|---|---|---|"
    for row in part.rows(measured["figures"]):
        yield f"| {row.what} | {row.figure} | {row.aim} | {row.verdict} |"
    yield ""


def write_page(measured: dict[str, Any]) -> Path:
    """Writes the figures into the page; gives its path."""
    PAGE.write_text(on_page(PAGE.read_text("utf-8"), measured), "utf-8")
    return PAGE


def agrees() -> bool:
    """Whether the page says what the published figures say."""
    text = PAGE.read_text("utf-8")
    return on_page(text, json.loads(PUBLISHED.read_text("utf-8"))) == text


def commands(text: str) -> list[str]:
    """The parts that a page says how to measure."""
    return re.findall(r"^`python -m tests\.bench (\w+)`$", text, re.M)
