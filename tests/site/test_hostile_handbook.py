"""A handbook whose every word of data is hostile: nothing of it becomes markup, in no page.

The fields are found by walking the schemas, so that one that comes later is tried as well.
"""

import json
import re
import shutil
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, expect

from benchrule.data import KINDS

from .conftest import ROOT, Site, build_site, free_port, served

SCHEMAS = ROOT / "build" / "benchrule" / "schemas"
HOSTILE = (
    "{mark}<br-canary canary=1></br-canary>\"'><img src=x onerror=canary()>]]>--></template></script>"
    "</style></textarea></title><script>canary()</script><a href=javascript:canary()>x</a>&lt;&#60;{{{{7*7}}}}"
)
LINK = "javascript:canary()"
# What is read as something else than words: a unit, a name of something, a value, a file.
NOT_WORDS = {
    "*.unit", "agrees_with.result", "values.*", "calculators.*.*", "*.value", "year", "icon", "template",
}  # fmt: skip
MARK = re.compile(r"MARK\d{4}X")


def free_texts(
    schema: Any, value: Any, defs: Any, path: str = ""
) -> Iterator[tuple[Any, Any, str]]:
    """Where in a value any words may stand: what holds them, under which key, by which path."""
    if "$ref" in schema:
        schema = defs[schema["$ref"].rpartition("/")[2]] | schema
    for choice in (one for word in ("anyOf", "oneOf", "allOf") for one in schema.get(word, [])):
        yield from free_texts(choice, value, defs, path)
    if isinstance(value, dict):
        named = schema.get("properties", {})
        rest = [*schema.get("patternProperties", {}).values(), schema.get("additionalProperties")]
        for key, inner in value.items():
            for one in [named[key]] if key in named else [r for r in rest if isinstance(r, dict)]:
                below = f"{path}.{key if key in named else '*'}".lstrip(".")
                if _is_words(one, defs) and isinstance(inner, str):
                    yield value, key, below
                yield from free_texts(one, inner, defs, below)
    if isinstance(value, list) and isinstance(schema.get("items"), dict):
        for place, inner in enumerate(value):
            below = f"{path}.[]".lstrip(".")
            if _is_words(schema["items"], defs) and isinstance(inner, str):
                yield value, place, below
            yield from free_texts(schema["items"], inner, defs, below)


def _is_words(schema: Any, defs: Any) -> bool:
    if "$ref" in schema:
        schema = defs[schema["$ref"].rpartition("/")[2]] | schema
    kinds = schema.get("type", [])
    return "string" in ([kinds] if isinstance(kinds, str) else kinds) and not (
        schema.keys() & {"pattern", "enum", "const", "format"}
    )


def _is_left(path: str) -> bool:
    ends = path.rpartition(".")[2]
    return path in NOT_WORDS or f"*.{ends}" in NOT_WORDS


class Marks:
    """Gives every field a mark of its own, and remembers which."""

    def __init__(self) -> None:
        self.fields: dict[str, str] = {}

    def spoil(self, kind: str, schema: Any, value: Any) -> None:
        for holder, key, path in list(free_texts(schema, value, schema.get("$defs", {}))):
            if _is_left(path) or MARK.search(holder[key]):
                continue
            mark = f"MARK{len(self.fields):04}X"
            self.fields[mark] = f"{kind}: {path}"
            most = 20 if (kind, path) == ("records", "*.by") else None
            text = f"{holder[key]} {HOSTILE.format(mark=mark)}"
            holder[key] = f"{mark}<b x>'\""[:most] if most else text


def spoilt(folder: Path) -> Marks:
    """Writes the demo handbook with hostile words in every field of its data and front matter."""
    shutil.copytree(ROOT / "docs", folder / "docs")
    shutil.copy(ROOT / "mkdocs.yml", folder)
    marks = Marks()
    for kind in KINDS:
        schema = json.loads((SCHEMAS / f"{kind}.schema.json").read_text("utf-8"))
        data = folder / "docs" / "data"
        for path in [data / f"{kind}.yml", *sorted((data / kind).glob("*.yml"))]:
            if path.exists():
                entries = yaml.safe_load(path.read_text("utf-8"))
                terms = {
                    id: [entry["term"], *entry.get("other_words", [])]
                    for id, entry in entries.items()
                    if "term" in entry
                }
                for id, entry in entries.items():
                    entries[id] = entry = _dates_as_text(entry)
                    marks.spoil(kind, schema, entry)
                    if kind == "glossary":  # pages use the terms as they were
                        entry.setdefault("other_words", []).extend(terms[id])
                    if kind == "sources" and "link" in entry:
                        entry["link"] = f"https://{LINK}/\"onmouseover='canary()'"
                path.write_text(_yaml(entries), "utf-8")
    schema = json.loads((SCHEMAS / "station.schema.json").read_text("utf-8"))
    for path in sorted((folder / "docs" / "stations").glob("*.md")):
        _, front, body = path.read_text("utf-8").split("---\n", 2)
        fields = _dates_as_text(yaml.safe_load(front))
        marks.spoil("station", schema, fields)
        path.write_text(f"---\n{_yaml(fields)}---\n{body}", "utf-8")
    return marks


def _dates_as_text(value: Any) -> Any:
    if isinstance(value, dict):
        return {("on" if key is True else key): _dates_as_text(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_dates_as_text(one) for one in value]
    return value.isoformat() if hasattr(value, "isoformat") else value


def _yaml(value: Any) -> str:
    return str(yaml.safe_dump(value, allow_unicode=True, sort_keys=False, width=10_000))


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Site, Marks]]:
    root = tmp_path_factory.mktemp("hostile")
    marks = spoilt(root)
    port = free_port()
    site = Site(root / "site", f"http://127.0.0.1:{port}/")
    build_site(root, site.folder, site.address)
    with served(site.folder, port):
        yield site, marks


class Strange(HTMLParser):
    """Looks for elements and attributes that came out of data."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "br-canary":
            self.found.append(tag)
        for name, value in attrs:
            if name in ("canary", "onerror", "onmouseover") or (value or "").strip().startswith(
                LINK
            ):
                self.found.append(f"{tag} {name}={value}")


def test_no_element_and_no_attribute_comes_from_data(hostile: tuple[Site, Marks]) -> None:
    site, marks = hostile
    assert len(marks.fields) > 1000
    seen: set[str] = set()
    for path in site.folder.rglob("*.html"):
        text = path.read_text("utf-8")
        strange = Strange()
        strange.feed(text)
        assert strange.found == [], path.relative_to(site.folder)
        assert "canary()>" not in text.replace("canary()&gt;", ""), path.relative_to(site.folder)
        seen |= set(MARK.findall(text))
    for path in site.folder.rglob("*.json"):
        seen |= set(MARK.findall(path.read_text("utf-8")))
    shown = {marks.fields[mark] for mark in seen}
    fields = set(marks.fields.values())
    assert len(fields) > 40
    # What no page shows: words to be found by, and who measured.
    unseen = {field for field in fields - shown if not field.endswith("other_words.[]")}
    assert unseen <= {"records: *.by", "groups: summary", "station: no_calculator"}, unseen


def test_a_parser_that_finds_nothing_would_be_noticed() -> None:
    strange = Strange()
    strange.feed(HOSTILE.format(mark="MARK0000X"))
    assert strange.found == ["br-canary", "br-canary canary=1", "img onerror=canary()", "a href=javascript:canary()"]  # fmt: skip


def test_nothing_of_it_comes_to_life_in_a_browser(
    hostile: tuple[Site, Marks], browser: Browser
) -> None:
    site, _ = hostile
    context = browser.new_context()
    faults: list[str] = []
    alive = "document.querySelectorAll('br-canary, [canary], [onerror], [onmouseover], [href^=javascript]').length"
    try:
        page = context.new_page()
        page.on("console", lambda m: faults.append(m.text) if m.type == "error" else None)
        page.on("pageerror", lambda error: faults.append(str(error)))
        places = ("", "stations/fretting/", "tolerances/", "hazards/", "glossary/", "gauges/", "sources/", "models/",
                  "materials/", "orders/", "revisions/", "learning/", "calculators/fret-spacing/")  # fmt: skip
        for place in places:
            page.goto(site.address + place)
            page.wait_for_load_state("networkidle")
            assert page.evaluate(alive) == 0, place
        page.goto(f"{site.address}stations/fretting/")
        page.get_by_role("textbox", name="Search").click()
        page.keyboard.type("canary", delay=5)
        expect(page.locator(".md-search-result__link").first).to_be_visible()
        assert page.evaluate(alive) == 0, "search"
        page.goto(f"{site.address}learning/set/")
        expect(page.locator(".br-learn-station")).not_to_have_count(0)
        assert page.evaluate(alive) == 0, "setting"
        page.goto(f"{site.address}stations/fretting/#practice")
        page.locator("[data-exercises] button").first.click()
        expect(page.locator("[data-exercises]")).to_contain_text("MARK")
        assert page.evaluate(alive) == 0, "practice"
    finally:
        context.close()
    assert faults == []
