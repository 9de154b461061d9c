"""A shop's own handbook below another address, and under an author's hands."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from playwright.sync_api import Error, Playwright, expect

from calculators.engine import door
from tests.build.trees import sound_tree, write_tree

from ..conftest import ROOT, build_site
from .parts import (
    HELD,
    LONG,
    Server,
    assert_holds,
    look_for_newer,
    opened,
    saved,
    wait_for,
)

SMALL = """site_name: Test
site_url: !ENV [SITE_URL, "http://127.0.0.1:8000/"]
theme: {name: material, font: false, features: [navigation.instant]}
use_directory_urls: DIRECTORY
plugins: [search, benchrule]
markdown_extensions: [def_list, attr_list, toc]
"""


def small_handbook(folder: Path, directory_urls: bool) -> Path:
    """A handbook of one station, with the packed runtime of the demo handbook if that is at hand."""
    config = SMALL.replace("DIRECTORY", str(directory_urls).lower())
    root = write_tree(folder, sound_tree() | {"mkdocs.yml": config})
    for packed in (ROOT / ".cache/benchrule").glob("runtime-*"):
        shutil.copytree(packed, root / ".cache/benchrule" / packed.name)
    return root


def test_below_another_address_and_with_plain_page_names(
    playwright_running: Playwright, tmp_path: Path
) -> None:
    server = Server()
    address = f"{server.address}shop/handbook/"
    root = small_handbook(tmp_path / "shop", directory_urls=False)
    build_site(root, tmp_path / "host/shop/handbook", address)
    (tmp_path / "host/shop/prices.html").write_text("<title>Prices</title>")
    server.serve(tmp_path / "host")
    with opened(playwright_running, tmp_path / "profile") as context:
        page = context.new_page()
        page.goto(f"{address}index.html")
        expect(page.locator(f".br-offline{HELD}")).to_be_attached(timeout=LONG)
        server.end()
        for path in ("stations/sanding.html?h=flat#steps", "", "index.html"):
            response = page.goto(address + path)
            assert response and response.ok and response.from_service_worker, path
        page.goto(f"{address}calculators/fret-spacing.html")
        page.locator('[id="fret-spacing--scale_length"]').fill("650")
        wanted = door.answer("fret-spacing", {"scale_length": 650})["results"]["first_slot"][
            "shown"
        ]
        expect(page.locator('[data-result="first_slot"] dd').first).to_have_text(
            wanted, timeout=LONG
        )
        response = page.goto(f"{address}stations/nothing.html")
        assert response and response.status == 404
        with pytest.raises(Error, match="ERR_CONNECTION_REFUSED"):
            page.goto(f"{server.address}shop/prices.html")  # is not the handbook's


def test_an_author_sees_each_change_and_has_the_last_build_without_the_server(
    playwright_running: Playwright, tmp_path: Path
) -> None:
    root = small_handbook(tmp_path / "shop", directory_urls=True)
    server = Server()
    command = "from benchrule.cli import main; main()"
    running = subprocess.Popen(
        [sys.executable, "-c", command, "serve"], cwd=root,
        env={**os.environ, "BENCHRULE_ADDRESS": f"127.0.0.1:{server.port}", "SITE_URL": server.address},
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    try:
        wait_for(server.port, 120)  # it builds first
        with opened(playwright_running, tmp_path / "profile") as context:
            page = saved(context.new_page(), server)
            expect(page.locator("h1")).to_have_text(re.compile("^Home"))
            for turn in ("Once", "Twice"):
                (root / "docs/index.md").write_text(
                    f"# {turn} changed\n\n[Sanding](stations/sanding.md)\n"
                )
                expect(page.locator("h1")).to_have_text(
                    re.compile(f"^{turn} changed"), timeout=LONG
                )
                assert page.locator(".br-newer").count() == 0
            look_for_newer(page)
            assert_holds(page, root / "site", and_no_more=False)
            running.kill()
            running.wait()
            response = page.goto(server.address)
            assert response and response.from_service_worker
            expect(page.locator("h1")).to_have_text(re.compile("^Twice changed"))
    finally:
        running.kill()
        running.wait()
