"""Building again while serving: whatever is changed, the site is that of a whole build, byte by byte.

The edits are made one after the other in one session, as an author makes them, so that what one
leaves behind would be seen in those that follow.
"""

import inspect
import logging
import os
import shutil
from collections.abc import Callable
from functools import cached_property
from pathlib import Path

import pytest
from mkdocs.exceptions import Abort

from benchrule import plugin, serving
from benchrule.checks import CHECKS
from benchrule.handbook import Handbook, load_handbook
from benchrule.kept import Kept
from benchrule.rebuild import Session
from benchrule.unchanged import Unchanged
from benchrule.watched import Sums, Watched
from tests.build.trees import STATION, TOLERANCE, sound_tree, write_tree

CONFIG = """site_name: Test
site_url: http://127.0.0.1:9000/
strict: true
plugins:
  - search
  - benchrule:
      only: [fret-spacing]
      least_tolerances: 1
theme:
  name: material
  font: false
  features: [navigation.tabs, navigation.prune]
markdown_extensions: [attr_list, def_list, tables, toc]
validation: {links: {anchors: warn, not_found: warn}, nav: {omitted_files: warn}}
"""
SANDING, SPRAYING = "docs/stations/sanding.md", "docs/stations/spraying.md"
LIMITS = "docs/data/tolerances/sanding.yml"


def tree() -> dict[str, str]:
    """Two stations, a page of plain words, an order."""
    made = sound_tree()
    second = STATION.replace("Sanding", "Spraying").replace("sanding", "spraying")
    second = second.replace("order: 1", "order: 2").replace("[[flat-", "[[wet-")
    made |= {
        "mkdocs.yml": CONFIG,
        SPRAYING: second.replace("Wipe it.", "Wipe it as at [[station:sanding]], [[flat-3]]."),
        "docs/data/tolerances/spraying.yml": "".join(
            TOLERANCE.replace("flat-", "wet-").format(number=number) for number in range(1, 9)
        ),
        "docs/shop.md": "---\ntitle: The shop\n---\n\n# The shop\n\nBegin at [sanding]"
        "(stations/sanding.md#steps) with a block; [[flat-2]] there.\n",
        "docs/rest.md": "---\ntitle: Rest\n---\n\n# Rest\n\nA word on rest.\n\n## Noon\n\nEat.\n",
        "docs/assets/note.txt": "A note.",
    }
    return made


@pytest.fixture(scope="module")
def runtime(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A stand-in for the packed runtime, which no edit here concerns."""
    folder = tmp_path_factory.mktemp("runtime") / "runtime-0123456789ab"
    folder.mkdir()
    (folder / "worker.mjs").write_text("// runtime\n")
    (folder / "manifest.json").write_text("{}")
    return folder


@pytest.fixture
def shop(tmp_path: Path, runtime: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The handbook's folder."""
    monkeypatch.setattr(plugin, "runtime_folder", lambda cache, packages: runtime)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    return write_tree(tmp_path / "shop", tree())


def build(shop: Path, site: Path, session: Session) -> None:
    """One build of ``shop`` into ``site``, as serving does it."""
    config = serving.mkdocs_config(str(shop / "mkdocs.yml"))
    config.site_dir = str(site)
    serving._build_again(config, session)


def files_of(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file()
    }


def changed(path: str, old: str, new: str) -> Callable[[Path], None]:
    """An edit: one text in the place of another."""

    def edit(shop: Path) -> None:
        text = (shop / path).read_text("utf-8")
        assert old in text
        (shop / path).write_text(text.replace(old, new, 1), "utf-8")

    return edit


def written(path: str, text: str) -> Callable[[Path], None]:
    """An edit: a file of these words."""

    def edit(shop: Path) -> None:
        write_tree(shop, {path: text})

    return edit


def older(path: str, text: str) -> Callable[[Path], None]:
    """An edit: a file of these words that says it is of long ago, as one copied from elsewhere."""

    def edit(shop: Path) -> None:
        write_tree(shop, {path: text})
        os.utime(shop / path, (1, 1))

    return edit


def removed(path: str) -> Callable[[Path], None]:
    """An edit: a file less."""
    return lambda shop: (shop / path).unlink()


STEP = "### Look at it\n\nHold it to the lamp.\n\nKey point\n:   Low light.\n\nReason\n:   It shows.\n\nCheck\n:   No lines.\n\n"
ORDER = """A-1:
  name: For a friend
  summary: As usual, a shade shorter.
  model: big
  ordered: 2026-11-01
  due: 2026-12-01
  values: {scale_length: 636 mm}
"""
EDITS: dict[str, Callable[[Path], None]] = {
    "nothing": lambda shop: None,
    "a word in a procedure": changed(SANDING, "Long strokes.", "Even strokes."),
    "a word in a plain page": changed("docs/rest.md", "A word on rest.", "A block to sit on."),
    "an order": written("docs/data/orders.yml", ORDER),
    "an order's value": changed("docs/data/orders.yml", "636 mm", "634 mm"),
    "a step more": changed(SANDING, "## What goes wrong", STEP + "## What goes wrong"),
    "a tolerance's figure": changed(LIMITS, "high: 0.1\n", "high: 0.3\n"),
    "a tolerance that other pages show": changed(
        LIMITS, "flat-3:\n  feature: Gap under a rule, place 3\n  part: body\n  high: 0.1",
        "flat-3:\n  feature: Gap under a rule, place 3\n  part: body\n  high: 0.25",
    ),
    "a station's title": changed(SANDING, "title: Sanding", "title: Flat sanding"),
    "a station's summary": changed(SANDING, "sanded flat", "sanded flat and fair"),
    "a term more": changed(
        "docs/data/glossary.yml", "block:", "strokes: {term: Strokes, meaning: To and fro.}\nblock:"
    ),
    "a term's meaning": changed("docs/data/glossary.yml", "To and fro.", "There and back."),
    "another word for a term": changed(
        "docs/data/glossary.yml", "What paper is wrapped round.",
        "What paper is wrapped round., other_words: [cork, flat]",
    ),
    "what people ask with": written(
        "docs/data/asked.yml", "sanding#sand-it: [how do i sand]\nflat-2: [a gap I can see]\n"
    ),
    "other words to ask with": changed("docs/data/asked.yml", "how do i sand", "how to go about it"),
    "a hazard's words": changed("docs/data/hazards.yml", "Extract.", "Extract, and wear a mask."),
    "a gauge's name": changed("docs/data/gauges.yml", "name: Rule", "name: Steel rule"),
    "how finely a gauge reads": changed("docs/data/gauges.yml", "resolution: 0.01", "resolution: 0.05"),
    "a gauge's uncertainty": changed("docs/data/gauges.yml", "uncertainty: 0.02", "uncertainty: 0.04"),
    "what to do when it is out": changed(LIMITS, "when_out: Sand again.", "when_out: See [[flat-4]]."),
    "a figure that is read there": changed(
        LIMITS, "place 4\n  part: body\n  high: 0.1", "place 4\n  part: body\n  high: 0.15"
    ),
    "a model's own limits": changed(
        LIMITS, "place 5\n  part: body\n", "place 5\n  part: body\n  by_model: {big: {high: 0.2}}\n"
    ),
    "a model's name": changed("docs/data/models.yml", "The Big", "The Great"),
    "a drawing": written(
        "docs/drawings/block.svg", "<svg xmlns='http://www.w3.org/2000/svg'><g/></svg>"
    ),
    "a model's value": changed("docs/data/models.yml", "380 mm", "381 mm"),
    "a file beside the pages": written("docs/assets/note.txt", "Another note."),
    "a file with an older date": older("docs/assets/note.txt", "A third note."),
    "a page more": written("docs/new.md", "---\ntitle: New\n---\n\n# New\n\n[Rest](rest.md#noon)\n"),
    "a heading that others link to": changed("docs/rest.md", "## Noon", "## Noon {#noon}\n\n## Night"),
    "a page less": removed("docs/new.md"),
    "a station's place in the order": changed(SPRAYING, "order: 2", "order: 0"),
    "the settings": changed("mkdocs.yml", "site_name: Test", "site_name: Another"),
    "the theme's features": changed("mkdocs.yml", "navigation.tabs, ", ""),
    "a word after all this": changed(SPRAYING, "Long strokes.", "Thin coats."),
}  # fmt: skip


def test_after_each_edit_the_site_is_that_of_a_whole_build(shop: Path, tmp_path: Path) -> None:
    session, site = Session(), tmp_path / "served"
    build(shop, site, session)
    for name, edit in EDITS.items():
        edit(shop)
        build(shop, site, session)
        whole = tmp_path / "whole"
        cache = shop / ".cache"
        shutil.move(cache, tmp_path / "cache")  # nothing kept may help
        build(shop, whole, Session())
        shutil.rmtree(cache)
        shutil.move(tmp_path / "cache", cache)
        found, wanted = files_of(site), files_of(whole)
        assert found.keys() == wanted.keys(), name
        assert [one for one in wanted if found[one] != wanted[one]] == [], name
        shutil.rmtree(whole)
    assert session.going_on


def test_a_word_is_written_to_its_own_page_only(shop: Path, tmp_path: Path) -> None:
    session, site = Session(), tmp_path / "served"
    build(shop, site, session)
    EDITS["nothing"](shop)
    build(shop, site, session)
    assert session.going_on and session.written == []
    assert session.said(0.84) == "Built again in 0.8 s: no page has changed"
    EDITS["a word in a procedure"](shop)
    build(shop, site, session)
    assert session.written == ["stations/sanding/"]
    assert session.said(0.84) == "Built again in 0.8 s: stations/sanding/"


def test_a_figure_reaches_every_page_that_shows_it_and_no_other(shop: Path, tmp_path: Path) -> None:
    session, site = Session(), tmp_path / "served"
    build(shop, site, session)
    EDITS["a tolerance that other pages show"](shop)
    build(shop, site, session)
    assert sorted(session.written) == [
        "learning/sign-off/sanding/", "stations/sanding/", "stations/spraying/", "tolerances/",
    ]  # fmt: skip
    for page in session.written:
        assert "0.25 mm" in (site / page / "index.html").read_text("utf-8"), page


def test_a_figure_reaches_a_build_that_keeps_what_it_made(shop: Path, tmp_path: Path) -> None:
    build(shop, tmp_path / "first", Session())
    EDITS["a tolerance that other pages show"](shop)
    session = Session()
    build(shop, tmp_path / "again", session)
    assert session.unchanged is not None
    pages = {name for name in session.unchanged.made if name.startswith("page ")}
    assert "page stations/spraying.md" in pages and "page rest.md" not in pages
    shutil.rmtree(shop / ".cache")
    build(shop, tmp_path / "whole", Session())
    assert files_of(tmp_path / "again") == files_of(tmp_path / "whole")


def test_a_link_that_comes_to_lead_nowhere_is_said_though_its_page_is_as_it_was(
    shop: Path, tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    session, site = Session(), tmp_path / "served"
    write_tree(shop, {"docs/shop.md": "---\ntitle: S\n---\n\n# S\n\n<a href='rest.md#noon'>x</a> "
                                      "[Noon][n]\n\n[n]: rest.md#noon\n"})  # fmt: skip
    build(shop, site, session)
    changed("docs/rest.md", "## Noon", "## Midday")(shop)
    with caplog.at_level(logging.WARNING), pytest.raises(Abort):
        build(shop, site, session)
    assert "rest.md#noon" in caplog.text
    changed("docs/rest.md", "## Midday", "## Noon")(shop)
    build(shop, site, session)
    assert not session.going_on, "after a build that failed, the next is a whole one"


FAULTS: dict[str, tuple[Callable[[Path], None], Callable[[Path], None], str]] = {
    "data": (
        changed(LIMITS, "gauge: rule", "gauge: ruler"),
        changed(LIMITS, "gauge: ruler", "gauge: rule"), "unknown gauge 'ruler'",
    ),
    "data, where a drawing is gone": (
        changed("docs/data/glossary.yml", "wrapped round.", "wrapped round., drawing: cork"),
        written("docs/drawings/cork.svg", "<svg xmlns='http://www.w3.org/2000/svg'/>"),
        "no drawing 'cork'",
    ),
    "references": (
        changed(SANDING, "[[flat-1]]", "[[flat-0]] [[flat-1]]"),
        changed(SANDING, "[[flat-0]] ", ""), "unknown tol 'flat-0'",
    ),
    "references, of an entry that is gone": (
        changed("docs/data/tolerances/spraying.yml", "wet-8:", "wet-9:"),
        changed("docs/data/tolerances/spraying.yml", "wet-9:", "wet-8:"), "unknown tol 'wet-8'",
    ),
    "unused": (
        changed(SPRAYING, "[[wet-8]]", ""), changed(SPRAYING, "[[wet-7]]", "[[wet-7]] [[wet-8]]"),
        "no procedure cites it",
    ),
    "numbers": (
        changed(SANDING, "Long strokes.", "Strokes of 300 mm."),
        changed(SANDING, "Strokes of 300 mm.", "Long strokes."), "loose number '300 mm'",
    ),
    "stations": (
        changed(SANDING, "Reason\n:   Flat.\n", ""),
        changed(SANDING, "Check\n:   Look.", "Reason\n:   Flat.\n\nCheck\n:   Look."),
        "'Sand it' has no reason",
    ),
    "links": (
        removed("docs/rest.md"), written("docs/rest.md", "---\ntitle: R\n---\n\n# R\n\n## Noon\n"),
        "dead link 'rest.md#noon'",
    ),
    "links to a heading": (
        changed("docs/rest.md", "## Noon", "## Midday"),
        changed("docs/rest.md", "## Midday", "## Noon"), "no heading '#noon'",
    ),
    "models": (
        changed("docs/data/models.yml", "scale_length: 640 mm", "scale_length: 9 mm"),
        changed("docs/data/models.yml", "scale_length: 9 mm", "scale_length: 640 mm"),
        "refuses scale_length",
    ),
    "calculators": (
        changed(SANDING, "/// calculator | fret-spacing\n", "/// calculator | fret-spacing\n"
                "    presets: {scale_length: 2 mm}\n"),
        changed(SANDING, "    presets: {scale_length: 2 mm}\n", ""), "fret-spacing refuses",
    ),
    "asked": (
        changed(SANDING, "### Sand it", "### Sand it well"),
        changed(SANDING, "### Sand it well", "### Sand it"), "there is no such place",
    ),
    "orders": (
        changed("docs/data/orders.yml", "636 mm", "7 mm"),
        changed("docs/data/orders.yml", "7 mm", "636 mm"), "fret-spacing refuses scale_length",
    ),
}  # fmt: skip


def test_what_was_sound_and_is_not_any_more_stops_the_build_whatever_is_kept(
    shop: Path, tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    """Each check in turn: sound when first built, faulty after an edit, sound again when mended."""
    write_tree(shop, {
        "docs/data/orders.yml": ORDER, "docs/data/asked.yml": "sanding#sand-it: [how do i sand]\n",
        "docs/shop.md": "---\ntitle: S\n---\n\n# S\n\n[Noon](rest.md#noon), [[flat-2]].\n",
    })  # fmt: skip
    session, site = Session(), tmp_path / "served"
    build(shop, site, session)
    for name, (spoil, mend, said) in FAULTS.items():
        spoil(shop)
        for going_on in (session, Session()):  # from memory, then from what is kept on the disk
            caplog.clear()
            with caplog.at_level(logging.WARNING), pytest.raises(Abort):
                build(shop, site, going_on)
            assert said in caplog.text, name
        mend(shop)
        build(shop, site, session)
    assert {name.partition(",")[0].partition(" ")[0] for name in FAULTS} == {
        check.__name__.rpartition(".")[2] for check in CHECKS
    }


def test_with_plugins_or_a_theme_folder_of_its_own_each_build_is_a_whole_one(
    shop: Path, tmp_path: Path
) -> None:
    (shop / "mine").mkdir()
    changed("mkdocs.yml", "  name: material\n", "  name: material\n  custom_dir: mine\n")(shop)
    session, site = Session(), tmp_path / "served"
    build(shop, site, session)
    build(shop, site, session)
    assert not session.going_on


def test_a_piece_written_by_halves_is_made_again(shop: Path, tmp_path: Path) -> None:
    build(shop, tmp_path / "first", Session())
    for piece in (shop / ".cache/benchrule/pieces").iterdir():
        piece.write_bytes(piece.read_bytes()[:-7])
    build(shop, tmp_path / "again", Session())
    assert files_of(tmp_path / "again") == files_of(tmp_path / "first")


def test_no_build_changes_the_pieces_that_the_next_is_given(shop: Path, tmp_path: Path) -> None:
    session = Session()
    for edit in ("an order", "a word in a procedure", "nothing"):
        EDITS[edit](shop)
        build(shop, tmp_path / "served", session)
    kept = session.unchanged
    assert kept is not None
    written = Unchanged(shop / ".cache/benchrule/pieces")  # as they were when they were made
    assert {"page rest.md", "search sanding", "exercises sanding", "check orders"} <= set(
        kept._pieces
    )
    for name, piece in kept._pieces.items():
        found = written._read(name, piece.own)
        assert found is not None and found.value == piece.value, name


def test_what_a_kept_part_has_read_the_whole_has_read(shop: Path) -> None:
    def figure(book: Handbook) -> str:
        return book.tolerances["flat-1"].limits()

    def whole(book: Handbook) -> str:
        return f"{kept.get('part', '', figure)}, and no more"

    kept = Unchanged()
    kept.begin(load_handbook(shop, shop / "docs")[0], "")
    assert kept.get("part", "", figure) == "at most 0.10 mm"
    assert kept.get("whole", "", whole) == "at most 0.10 mm, and no more"
    assert kept.made == ["part", "whole"]
    EDITS["a tolerance's figure"](shop)
    kept.begin(load_handbook(shop, shop / "docs")[0], "")
    assert kept.get("whole", "", whole) == "at most 0.30 mm, and no more"


def test_a_changed_calculator_starts_the_session_again(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Python that is loaded cannot be loaded anew for certain: the process is."""
    write_tree(shop, {"ours/__init__.py": '"""Ours: calculators of the shop."""\n'})
    changed("mkdocs.yml", "least_tolerances: 1", "calculators: [ours]")(shop)
    monkeypatch.setenv("BENCHRULE_STARTED_AGAIN", "")
    started: list[list[str]] = []

    def start(program: str, words: list[str]) -> None:
        started.append(words)
        raise KeyboardInterrupt

    class Server:
        def __init__(self, builder: Callable[[], None], **_: object) -> None:
            self.builder = builder

        def watch(self, path: str) -> None:
            """Everything is looked at when it is built."""

        def shutdown(self) -> None:
            """Nothing to end."""

        def serve(self, **_: object) -> None:
            self.builder()
            assert started == []
            (shop / "ours" / "__init__.py").write_text('"""Ours: other ones."""\n')
            self.builder()

    monkeypatch.setattr(serving.os, "execv", start)
    monkeypatch.setattr(serving, "_live_server", lambda: Server)
    serving.serve(lambda: serving.mkdocs_config(str(shop / "mkdocs.yml")))
    assert len(started) == 1


def test_whatever_is_read_of_a_handbook_is_noted() -> None:
    """What a handbook works out once and keeps must not be handed on without a note."""
    plain = {"general_models", "groups", "models", "orders", "records", "units"}  # by way of others
    public = {
        name
        for name, value in inspect.getmembers(Handbook)
        if not name.startswith("_")
        and (callable(value) or isinstance(value, property | cached_property))
    }
    own = {name for name in vars(Watched) if not name.startswith("_")}
    assert public - own - plain == set()
    assert set(Handbook.__dataclass_fields__) <= own


def test_the_notes_name_what_was_read(shop: Path) -> None:
    handbook, problems = load_handbook(shop, shop / "docs", kept=Kept())
    assert problems == []
    watched, sums = Watched(handbook), Sums(handbook)
    assert watched.tolerances["flat-1"].limits() == "at most 0.10 mm"
    assert watched.seen == {"entry/tolerances/flat-1"}
    assert "gone" not in watched.models and watched.models.get("gone") is None
    assert "entry/models/gone" in watched.seen
    station = watched.station("sanding")
    assert station is not None and "body/stations/sanding.md" not in watched.seen
    assert station.page.body and "body/stations/sanding.md" in watched.seen
    assert len(watched.lanes) == 1 and list(watched.entries["gauges"]) == ["rule"]
    assert {"fronts", "kind/groups", "kind/gauges"} <= watched.seen
    for name in (*watched.seen, "pages", "drawings", "units", "of/sanding", "neighbours/sanding"):
        assert sums.of(name) == Sums(handbook).of(name)


def test_sums_are_taken_over_of_what_has_not_changed_alone(shop: Path) -> None:
    kept = Kept()
    before = Sums(load_handbook(shop, shop / "docs", kept=kept)[0])
    names = [f"entry/tolerances/{id}" for id in before.book.tolerances]
    former = {name: before.of(name) for name in names}
    limits = shop / LIMITS
    limits.write_text(limits.read_text("utf-8").replace("high: 0.1", "high: 0.2", 1), "utf-8")
    now = Sums(load_handbook(shop, shop / "docs", kept=kept)[0], before)
    assert {name for name in names if now._known.get(name) == former[name]} == {
        name for name in names if "/wet-" in name
    }
    alone = Sums(now.book)
    assert {name: now.of(name) for name in names} == {name: alone.of(name) for name in names}
    [other] = [name for name in names if now.of(name) != former[name]]
    assert "/flat-" in other
