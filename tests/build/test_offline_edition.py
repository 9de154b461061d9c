"""The list of an edition's files, its name and date, the worker's text, the icons."""

import base64
import hashlib
import io
import json
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from benchrule import offline_edition, shop_icons
from benchrule.offline_edition import address_of, edition_date, kept_files, write_offline

PAGES = {
    "index.html": "home", "404.html": "none", "stations/neck fit/index.html": "neck",
    "assets/a.css": "css", "assets/a.css.map": "map", "assets/javascripts/lunr/x.js": "lunr",
    "assets/javascripts/workers/search.1.min.js": "theirs", "sitemap.xml": "map",
    "sitemap.xml.gz": "gz", "templates/cut (1).dxf": "dxf", ".nojekyll": "", "_headers": "x",
    "CNAME": "x", "search/places.json": "[]",
}  # fmt: skip
KEPT = [
    "./", "404.html", "assets/a.css", "search/places.json", "sitemap.xml",
    "stations/neck%20fit/", "templates/cut%20(1).dxf",
]  # fmt: skip


def site(folder: Path, pages: dict[str, str] = PAGES) -> Path:
    for name, text in pages.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return folder


def written(folder: Path, **options: Any) -> dict[str, Any]:
    write_offline(folder, "The Shop", "About", **options)
    found = re.search(
        r"const EDITION = (\{.*?\}); //", (folder / "service-worker.js").read_text("utf-8")
    )
    assert found
    listed: dict[str, Any] = json.loads(found[1])
    return listed


def test_what_a_reader_needs_is_listed_and_nothing_else(tmp_path: Path) -> None:
    assert [file.address for file in kept_files(site(tmp_path))] == KEPT


def test_each_file_has_its_sum_and_size(tmp_path: Path) -> None:
    listed = written(site(tmp_path))
    by_address = {address: (sum, size) for address, sum, size in listed["files"]}
    digest = base64.b64encode(hashlib.sha256(b"neck").digest()).decode()
    assert by_address["stations/neck%20fit/"] == (digest, 4)
    assert listed["bytes"] == sum(size for _, size in by_address.values())
    assert "manifest.webmanifest" in by_address
    assert "assets/benchrule/edition.mjs" in by_address
    assert "service-worker.js" not in by_address


def test_pages_with_names_of_their_own_are_listed_by_them() -> None:
    assert address_of("stations/index.html", folders=False) == "stations/index.html"
    assert address_of("index.html") == "./"
    assert address_of("a/ü.html", folders=False) == "a/%C3%BC.html"


def test_a_site_of_plain_pages_is_noticed(tmp_path: Path) -> None:
    folder = site(tmp_path, {"index.html": "a", "stations/neck.html": "b"})
    assert [file.address for file in kept_files(folder)] == ["index.html", "stations/neck.html"]


def test_the_edition_names_what_every_file_says_and_not_when(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1767225600")
    first = written(site(tmp_path / "a"))
    worker = (tmp_path / "a/service-worker.js").read_bytes()
    assert written(tmp_path / "a")["id"] == first["id"]
    assert written(site(tmp_path / "b")) == first
    assert (tmp_path / "b/service-worker.js").read_bytes() == worker
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1767312000")
    later = written(tmp_path / "a")
    assert (later["id"], later["files"]) == (first["id"], first["files"])
    assert (first["date"], later["date"]) == ("2026-01-01", "2026-01-02")
    (tmp_path / "a/assets/a.css").write_text("other")
    assert written(tmp_path / "a")["id"] != first["id"]


def test_the_day_is_that_of_the_commit_unless_something_changed_since(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    today = edition_date(tmp_path / "nowhere")
    assert re.fullmatch(r"\d{4}-\d\d-\d\d", today)

    def git(*words: str) -> None:
        who = ["-c", "user.name=A", "-c", "user.email=a@example.org"]
        subprocess.run(["git", *who, *words], cwd=tmp_path, check=True, capture_output=True)

    monkeypatch.setenv("GIT_COMMITTER_DATE", "2025-03-04T12:00:00Z")
    (tmp_path / "page.md").write_text("one")
    git("init")
    git("add", ".")
    git("commit", "-m", "one")
    assert edition_date(tmp_path) == "2025-03-04"
    (tmp_path / "page.md").write_text("two")
    assert edition_date(tmp_path) >= today


def test_the_worker_carries_workbox_and_no_way_to_another_host(tmp_path: Path) -> None:
    written(site(tmp_path))
    text = (tmp_path / "service-worker.js").read_text("utf-8")
    for module in offline_edition.MODULES:
        assert f"workbox.{module}=" in text
    assert "EDITION_OF_THIS_BUILD" not in text
    assert "sourceMappingURL" not in text
    assert "importScripts" not in text
    subprocess.run(["node", "--check", str(tmp_path / "service-worker.js")], check=True)


def test_the_manifest_stands_on_its_own_folder(tmp_path: Path) -> None:
    written(site(tmp_path))
    manifest = json.loads((tmp_path / "manifest.webmanifest").read_text("utf-8"))
    assert (manifest["start_url"], manifest["scope"], manifest["display"]) == (
        "./",
        "./",
        "standalone",
    )
    assert manifest["name"] == manifest["short_name"] == "The Shop"
    for icon in manifest["icons"]:
        with Image.open(tmp_path / icon["src"]) as picture:
            assert f"{picture.width}x{picture.height}" == icon["sizes"]
    assert {icon["purpose"] for icon in manifest["icons"]} == {"any", "maskable"}


def test_a_long_name_gets_a_short_one(tmp_path: Path) -> None:
    write_offline(site(tmp_path), "The Shop of Many Instruments", "")
    manifest = json.loads((tmp_path / "manifest.webmanifest").read_text("utf-8"))
    assert manifest["short_name"] == "Handbook"


def test_a_shop_brings_its_own_icon(tmp_path: Path) -> None:
    own = tmp_path / "site/assets/icon.png"
    own.parent.mkdir(parents=True)
    Image.new("RGB", (600, 600), "#00ff00").save(own)
    made = shop_icons.icon_files(own, tmp_path / "cache")
    with Image.open(io.BytesIO(made["icon-192.png"])) as picture:
        assert picture.convert("RGB").getpixel((0, 0)) == (0, 255, 0)
    with Image.open(io.BytesIO(made["icon-cut-512.png"])) as picture:
        assert picture.getpixel((0, 0)) == (0x3A, 0x1C, 0x17)  # what may be cut away is ground
        assert picture.getpixel((256, 256)) == (0, 255, 0)
    kept = next((tmp_path / "cache").iterdir()) / "icon-192.png"
    kept.write_bytes(b"from the cache")
    assert shop_icons.icon_files(own, tmp_path / "cache")["icon-192.png"] == b"from the cache"
    assert shop_icons.icon_files(tmp_path / "none.png", tmp_path / "cache") != made


@pytest.mark.parametrize("size", [(600, 500), (128, 128)])
def test_an_icon_that_will_not_do_is_refused_with_the_mend(
    size: tuple[int, int], tmp_path: Path
) -> None:
    Image.new("RGB", size).save(tmp_path / "icon.png")
    with pytest.raises(shop_icons.IconUnusable, match="square and at least 512"):
        shop_icons.icon_files(tmp_path / "icon.png")


def test_an_icon_that_is_no_picture_is_refused(tmp_path: Path) -> None:
    (tmp_path / "icon.png").write_text("words")
    with pytest.raises(shop_icons.IconUnusable, match="not a picture"):
        shop_icons.icon_files(tmp_path / "icon.png")
