"""The handbook on a stick: what is put there, and what opens it."""

import ast
import contextlib
import http.client
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from benchrule.cli import main
from benchrule.stick import LAUNCHER, put_on_stick

OLDEST = (3, 8)
FILES = {
    "index.html": "home", "404.html": "not here", "assets/page.mjs": "export {};",
    "runtime/x/a.wasm": "wasm", "manifest.webmanifest": "{}", "stations/one/index.html": "one",
}  # fmt: skip


@pytest.fixture
def site(tmp_path: Path) -> Path:
    for name, text in FILES.items():
        path = tmp_path / "site" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return tmp_path / "site"


@contextlib.contextmanager
def opened(stick: Path) -> Iterator[http.client.HTTPConnection]:
    """Runs the launcher by a Python that knows nothing of ours."""
    process = subprocess.Popen(
        [sys.executable, "-I", str(stick / LAUNCHER), "--quiet"], cwd="/",
        stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    try:
        assert process.stdout is not None
        address = process.stdout.readline().split("http://", 1)[1].split("/")[0]
        with contextlib.closing(http.client.HTTPConnection(address, timeout=10)) as connection:
            yield connection
    finally:
        process.kill()
        process.wait()


def got(connection: http.client.HTTPConnection, path: str) -> tuple[int, str, str]:
    connection.request("GET", path)
    answer = connection.getresponse()
    return answer.status, answer.headers["Content-Type"], answer.read().decode()


def test_a_stick_opens_with_python_alone(site: Path, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    done = CliRunner().invoke(main, ["stick", str(stick), "--site", str(site)])
    assert done.exit_code == 0, done.output
    assert f"{len(FILES)} files" in done.output
    with opened(stick) as connection:
        assert got(connection, "/") == (200, "text/html; charset=utf-8", "home")
        assert got(connection, "/stations/one/")[2] == "one"
        assert got(connection, "/assets/page.mjs")[1] == "text/javascript; charset=utf-8"
        assert got(connection, "/runtime/x/a.wasm")[1] == "application/wasm"
        assert got(connection, "/manifest.webmanifest")[1] == "application/manifest+json"
        assert got(connection, "/nothing/") == (404, "text/html; charset=utf-8", "not here")


def test_two_sticks_can_be_open_at_once(site: Path, tmp_path: Path) -> None:
    put_on_stick(site, tmp_path / "one")
    put_on_stick(site, tmp_path / "two")
    with opened(tmp_path / "one") as first, opened(tmp_path / "two") as second:
        assert first.port != second.port
        assert got(second, "/")[2] == "home"


def test_a_new_edition_takes_the_place_of_the_old(site: Path, tmp_path: Path) -> None:
    put_on_stick(site, tmp_path / "stick")
    (site / "404.html").unlink()
    put_on_stick(site, tmp_path / "stick")
    assert not (tmp_path / "stick" / "handbook" / "404.html").exists()


def test_nothing_else_is_written_over(site: Path, tmp_path: Path) -> None:
    own = tmp_path / "stick" / "handbook"
    own.mkdir(parents=True)
    (own / "letters.txt").write_text("mine")
    with pytest.raises(click.ClickException, match="holds no handbook"):
        put_on_stick(site, tmp_path / "stick")
    assert (own / "letters.txt").read_text() == "mine"
    with pytest.raises(click.ClickException, match="in the site itself"):
        put_on_stick(site, site / "stick")
    with pytest.raises(click.ClickException, match="run benchrule build"):
        put_on_stick(tmp_path / "nowhere", tmp_path / "other")


def test_the_program_runs_on_an_old_python(site: Path, tmp_path: Path) -> None:
    put_on_stick(site, tmp_path / "stick")
    ast.parse((tmp_path / "stick" / LAUNCHER).read_text("utf-8"), feature_version=OLDEST)
