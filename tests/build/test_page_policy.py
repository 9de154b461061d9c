"""The policy of a site's pages, whatever stood there before."""

import re
import time
from pathlib import Path

import pytest

from benchrule.faces import shop_map
from benchrule.page_policy import policy_line, set_policy

ROOT = Path(__file__).parents[2]
PAGE = (
    '<!doctype html>\n<html><head>\n<meta charset="utf-8">\n<title>A page</title>\n'
    "<script>var theme = 1</script>\n</head><body>{}</body></html>\n"
)
STYLE_WARNING = "a style attribute has no effect; use a class, and a file in extra_css"


def site(folder: Path, **pages: str) -> Path:
    for name, text in {"404": PAGE.format(""), **pages}.items():
        (folder / f"{name}.html").write_text(text, "utf-8")
    return folder


def texts(folder: Path) -> dict[str, str]:
    return {path.name: path.read_text("utf-8") for path in folder.glob("*.html")}


def test_the_policy_stands_right_after_the_charset_on_every_page(tmp_path: Path) -> None:
    assert set_policy(site(tmp_path, index=PAGE.format("<p>Home</p>"))) == []
    line = policy_line([b"var theme = 1"])
    for text in texts(tmp_path).values():
        assert text.count(line) == 1
        assert f'<meta charset="utf-8">{line}\n<title>' in text


def test_a_second_time_nothing_is_written(tmp_path: Path) -> None:
    set_policy(site(tmp_path))
    first = texts(tmp_path)
    before = (tmp_path / "404.html").stat().st_mtime_ns
    time.sleep(0.01)
    assert set_policy(tmp_path) == []
    assert texts(tmp_path) == first
    assert (tmp_path / "404.html").stat().st_mtime_ns == before


def test_another_policy_is_replaced_and_leaves_no_trace(tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    (tmp_path / "b").mkdir()
    set_policy(site(tmp_path / "a", index=PAGE.format("")))
    old = PAGE.replace("theme", "former_theme").format("")
    set_policy(site(tmp_path / "b", **{"404": old, "index": old}))
    for path in (tmp_path / "b").glob("*.html"):  # as where a page was not written again
        path.write_text(path.read_text("utf-8").replace("former_theme", "theme"), "utf-8")
    set_policy(tmp_path / "b")
    assert texts(tmp_path / "a") == texts(tmp_path / "b")


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ("<script>alert(1)</script>", "a script in line will not run; name a file in extra_javascript"),
        ('<p style="color: red">x</p>', STYLE_WARNING),
        ("<p onclick='x()'>x</p>", "onclick= will not run; listen from a script in a file"),
        ("<style>p { color: red }</style>", "a style element has no effect; name a file in extra_css"),
        ('<a href=" JavaScript:x()">x</a>'.lower(), "a javascript: link does nothing; use a script in a file"),
    ],
)  # fmt: skip
def test_what_the_policy_forbids_is_named_and_not_allowed(
    body: str, said: str, tmp_path: Path
) -> None:
    assert set_policy(site(tmp_path, index=PAGE.format(body))) == [f"index.html: {said}"]
    assert "sha256" in texts(tmp_path)["index.html"]
    assert len({re.findall("<meta http[^>]*>", text)[0] for text in texts(tmp_path).values()}) == 1
    assert policy_line([b"var theme = 1"]) in texts(tmp_path)["index.html"]


@pytest.mark.parametrize(
    "body",
    [
        "<p>put style= on it, on top = 3, javascript: is a word</p>",
        '<p title="turn on=1 style=x">x</p>',
        "<pre>&lt;p style=&quot;x&quot; onclick=&quot;y&quot;&gt;</pre>",
        '<script type="application/json">{"a": 1}</script><script src="x.js"></script>',
    ],
)
def test_what_only_looks_forbidden_is_not_named(body: str, tmp_path: Path) -> None:
    assert set_policy(site(tmp_path, index=PAGE.format(body))) == []


def test_a_page_without_a_charset_or_a_head(tmp_path: Path) -> None:
    set_policy(site(tmp_path, bare="<html><head><title>x</title></head></html>", part="<p>x</p>"))
    assert texts(tmp_path)["bare.html"].startswith("<html><head><meta http-equiv=")
    assert texts(tmp_path)["part.html"] == "<p>x</p>"


def test_the_plates_of_the_map_lie_by_the_measures_of_the_drawing() -> None:
    css = (ROOT / "build/benchrule/theme/assets/book.css").read_text("utf-8")
    rules = dict(re.findall(r"(\.br-way-(?:rows|row|plate)) \{ ([^}]*)\}", css))
    gap = shop_map.PITCH - shop_map.PLATE
    assert f"100cqw / {shop_map.WIDTH}" in rules[".br-way-rows"]
    assert f"calc({shop_map.TOP} * var(--unit)) 0 0 calc({shop_map.LEFT} * var(--unit))" in rules[".br-way-rows"]  # fmt: skip
    assert f"gap: calc({gap} *" in rules[".br-way-row"]
    assert f"height: calc({shop_map.LANE} *" in rules[".br-way-row"]
    assert f"width: calc({shop_map.PLATE} *" in rules[".br-way-plate"]
    assert f"height: calc({shop_map.TALL} *" in rules[".br-way-plate"]
