"""What a page may do: the policy in every page, in a browser that keeps to it, with every feature
used; what a host adds by headers; the runtime's hashes; a server that shows changes to an author."""

import functools
import html
import http.server
import os
import re
import shutil
import subprocess
import sys
import threading
from collections.abc import Iterator
from fnmatch import fnmatch
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from benchrule.page_policy import (
    PAGE_HEADERS,
    PAGE_POLICY,
    REFERRER,
    WORKER_FILES,
    WORKER_HEADERS,
    policy_line,
)
from benchrule.runtime import FROM_NPM
from calculators.learning.sheet import STYLE
from tests.build.trees import sound_tree, write_tree

from .conftest import ROOT, Site, free_port

KINDS = (
    "", "stations/fretting/", "stations/spraying/", "calculators/", "calculators/fret-spacing/",
    "calculators/how-we-know/", "tolerances/", "hazards/", "glossary/", "gauges/", "sources/", "models/",
    "materials/", "orders/", "revisions/", "learning/", "learning/set/", "learning/work/",
    "learning/mark/", "learning/sign-off/fretting/", "writing-procedures/",
)  # fmt: skip


class Head(HTMLParser):
    """What of a page the policy rules, in the order of the page."""

    def __init__(self) -> None:
        super().__init__()
        self.policies: list[str] = []
        self.before_policy: list[str] = []
        self.inline: list[str] = []
        self.amiss: list[str] = []
        self.loaded: list[tuple[str, str]] = []
        self.blank: list[dict[str, str | None]] = []
        self._script: str | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "meta" and given.get("http-equiv") == "Content-Security-Policy":
            self.policies.append(given["content"] or "")
        elif not self.policies:
            self.before_policy.append(tag)
        if tag == "script" and "src" not in given and given.get("type") != "application/json":
            self._script = ""
        for name, value in attrs:
            if name in ("src", "srcset", "data", "poster", "action") or (tag, name) == (
                "link",
                "href",
            ):
                self.loaded.append((tag, value or ""))
            if name == "style" or name.startswith("on") or "javascript:" in (value or ""):
                self.amiss.append(f'<{tag} {name}="{value}">')
        if tag in ("style", "iframe", "object", "embed", "base"):
            self.amiss.append(tag)
        if tag == "a" and given.get("target", "_self") != "_self":
            self.blank.append(given)

    def handle_data(self, data: str) -> None:
        if self._script is not None:
            self._script += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "script" and self._script is not None:
            self.inline.append(self._script)
            self._script = None


@pytest.fixture(scope="module")
def read(site: Site) -> dict[str, Head]:
    found = {}
    for path in sorted(site.folder.rglob("*.html")):
        head = found[path.relative_to(site.folder).as_posix()] = Head()
        head.feed(path.read_text("utf-8"))
    return found


def test_every_page_carries_one_and_the_same_policy_before_all_that_it_rules(
    site: Site, read: dict[str, Head]
) -> None:
    assert len(read) > 100
    assert "404.html" in read
    lines = set()
    for name, page in read.items():
        assert len(page.policies) == 1, name
        assert set(page.before_policy) <= {"html", "head", "meta"}, name
        text = (site.folder / name).read_text("utf-8")
        lines |= set(re.findall(rf"<meta http-equiv[^>]*>{re.escape(REFERRER)}", text))
        assert text.index('charset="utf-8"') < 1024, name
    assert len(lines) == 1


def test_the_policy_allows_no_text_to_be_run_and_no_other_host(read: dict[str, Head]) -> None:
    (policy,) = {page.policies[0] for page in read.values()}
    parts = dict(part.strip().split(" ", 1) for part in policy.split(";"))
    assert set(parts) == set(PAGE_POLICY)
    assert parts["default-src"] == parts["object-src"] == parts["base-uri"] == "'none'"
    for name, sources in parts.items():
        for source in sources.split():
            assert re.fullmatch(
                r"'(self|none|sha256-[\w+/]{43}=)'|'wasm-unsafe-eval'|data:", source
            )
            assert source != "data:" or name == "img-src"
            assert source != "'wasm-unsafe-eval'" or name == "script-src"


def test_what_stands_in_line_is_the_themes_and_the_same_on_every_page(
    read: dict[str, Head],
) -> None:
    (policy,) = {page.policies[0] for page in read.values()}
    scripts = {script for page in read.values() for script in page.inline}
    assert scripts == set(read["404.html"].inline)
    assert len(scripts) == 4  # what is kept; light or dark; tabs of content; a browser too old
    line = policy_line(sorted(script.encode() for script in scripts))
    assert html.unescape(line).count(policy) == 1
    assert [fault for page in read.values() for fault in page.amiss] == []


def test_pages_styles_and_scripts_load_from_this_site_alone(
    site: Site, read: dict[str, Head]
) -> None:
    for name, page in read.items():
        for tag, address in page.loaded:
            other = re.match(r"(?:[a-z][a-z0-9+.-]*:|//)", address, re.I)
            assert not other or address.startswith(site.address), (name, tag, address)
        for link in page.blank:
            assert "noopener" in (link.get("rel") or ""), (name, link)
    for path in site.folder.rglob("*"):
        if path.suffix == ".css":
            for address in re.findall(r"""url\(\s*["']?([^"')]+)""", path.read_text("utf-8")):
                assert not re.match(r"(?!data:)[a-z]+:|//", address), (path.name, address)
        if path.suffix in (".mjs", ".js") and "benchrule" in path.parts:
            asks = r"""(?:fetch|import|importScripts|Worker|URL|open)\(\s*["'`](https?:)?//"""
            assert not re.search(asks, path.read_text("utf-8")), path.name


@pytest.fixture
def violations(context: BrowserContext) -> Iterator[list[str]]:
    """What the browser refused by the policy in this test; at its end there must be none."""
    found: list[str] = []
    context.expose_function("violated", lambda what: found.append(what))
    context.add_init_script(
        "addEventListener('securitypolicyviolation', (e) =>"
        " violated(`${e.violatedDirective} ${e.blockedURI} ${e.sourceFile}:${e.lineNumber} ${e.sample}`))"
    )
    yield found
    assert found == []


def test_a_violation_is_noticed(browser: Browser, site: Site) -> None:
    context = browser.new_context()
    page = context.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.goto(site.address)
    page.evaluate(
        """async () => {
          window.refused = [];
          addEventListener('securitypolicyviolation', (e) => refused.push(e.effectiveDirective));
          document.body.insertAdjacentHTML('beforeend', '<p style="color: red" onclick="x = 1">x</p>');
          document.body.append(Object.assign(document.createElement('script'), { text: 'window.ran = 1' }));
          setTimeout(() => { try { new Function('window.ran = 2')() } catch {} });
          await fetch('https://example.invalid/').catch(() => {});
          await new Promise((done) => setTimeout(done, 100));
        }"""
    )
    found = set(page.evaluate("refused"))
    assert found == {
        "style-src-attr",
        "script-src-attr",
        "script-src-elem",
        "script-src",
        "connect-src",
    }
    assert page.evaluate("window.ran") is None
    assert any("Content Security Policy" in text for text in said)
    context.close()


def test_every_kind_of_page_keeps_to_the_policy(
    page: Page, site: Site, violations: list[str]
) -> None:
    for kind in KINDS:
        answer = page.goto(site.address + kind)
        assert answer is not None
        assert answer.status == 200, kind
        page.wait_for_load_state("networkidle")
        for details in page.locator("details:not([open]) > summary").all()[:3]:
            if details.is_visible():
                details.click()
    page.emulate_media(media="print")
    page.pdf()


def test_going_from_page_to_page_without_a_load_keeps_one_policy(
    page: Page, site: Site, violations: list[str]
) -> None:
    page.goto(site.address)
    page.evaluate("window.same = 1")
    for link in (
        "stations/fretting/",
        "calculators/fret-spacing/",
        "learning/sign-off/fretting/",
        "",
    ):
        page.evaluate(
            """(to) => {
              const link = document.createElement('a');
              link.href = to;
              document.querySelector('article').append(link);
              link.click();
            }""",
            site.address + link,
        )
        page.wait_for_url(site.address + link)
        expect(page.locator("article h1")).to_be_visible()
        policies = page.locator("meta[http-equiv='Content-Security-Policy']")
        expect(policies).to_have_count(1)
    assert page.evaluate("window.same") == 1, "a full load"


def test_searching_sharing_and_reading_on_dark_keep_to_the_policy(
    page: Page, site: Site, violations: list[str]
) -> None:
    page.goto(f"{site.address}stations/fretting/")
    page.get_by_title("Read on dark").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "bench-night")
    page.reload()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "bench-night")
    search = page.get_by_role("textbox", name="Search")
    search.click()
    search.press_sequentially("gap under the heel", delay=5)
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    page.locator(".md-search-result__link").first.click()
    page.wait_for_url(re.compile("#"))
    search.click()
    page.get_by_label("Share").click()


def test_sheets_to_print_are_styled_and_keep_to_the_policy(
    page: Page, site: Site, violations: list[str]
) -> None:
    page.goto(f"{site.address}learning/set/")
    expect(page.locator(".br-learn-station")).not_to_have_count(0)
    page.get_by_label("Title").fill("First week")
    page.get_by_label("Trainees").fill("1")
    place = page.locator(".br-learn-station").first
    place.locator("summary").click()
    place.locator("input[type=number], input[inputmode=numeric]").first.fill("2")
    page.get_by_role("button", name="Make the assignment").click()
    expect(page.locator(".br-learn-codes li")).to_have_count(1)
    expect(page.locator(".br-learn-qr")).to_be_visible()
    for button in ("Sheets to print", "Answer key"):
        with page.context.expect_page() as opened:
            page.get_by_role("button", name=button).click()
        sheet = opened.value
        sheet.wait_for_load_state()
        head = sheet.locator(".br-sheet-facts").first
        expect(head).to_have_css("display", "flex")
        sheet.close()


class WithHeaders(http.server.SimpleHTTPRequestHandler):
    """Sends what a host does well to send."""

    def end_headers(self) -> None:
        path = self.path.partition("?")[0]
        worker = any(fnmatch(path, pattern) for pattern in WORKER_FILES)
        for name, value in (WORKER_HEADERS if worker else PAGE_HEADERS).items():
            self.send_header(name, value)
        super().end_headers()

    def log_message(self, format: str, *args: Any) -> None:
        """Keeps quiet."""


def test_the_workers_do_their_work_under_the_policy_that_the_headers_give_them(
    browser: Browser, site: Site
) -> None:
    for pattern in WORKER_FILES:
        assert any(
            fnmatch(f"/{path.relative_to(site.folder).as_posix()}", pattern)
            for path in site.folder.rglob("*.*js")
        ), pattern
    handler = functools.partial(WithHeaders, directory=str(site.folder))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://127.0.0.1:{server.server_address[1]}/"
    context = browser.new_context(service_workers="allow")
    faults: list[str] = []
    try:
        page = context.new_page()
        page.on(
            "console", lambda m: faults.append(m.text) if m.type in ("error", "warning") else None
        )
        page.on("pageerror", lambda error: faults.append(str(error)))
        answer = page.goto(f"{address}calculators/fret-spacing/")
        assert answer is not None
        assert answer.header_value("x-content-type-options") == "nosniff"
        field = page.locator('[id="fret-spacing--scale_length"]')
        field.fill("640")
        expect(page.locator('[data-result="first_slot"] dd')).to_have_text(
            "35.920 mm"
        )
        page.get_by_role("textbox", name="Search").click()
        page.keyboard.type("gap under the heel", delay=5)
        expect(page.locator(".md-search-result__link").first).to_be_visible()
        page.wait_for_function(
            "navigator.serviceWorker.getRegistration().then((found) => found?.active?.state === 'activated')",
        )
    finally:
        context.close()
        server.shutdown()
    assert faults == []


def test_the_page_on_hosting_gives_the_headers_word_for_word() -> None:
    text = (ROOT / "docs" / "hosting.md").read_text("utf-8")
    for headers in (PAGE_HEADERS, WORKER_HEADERS):
        for name, value in headers.items():
            assert name in text, name
            assert value in text, f"{name}: {value}"


def damaged(site: Site, name: str, folder: Path) -> Path:
    """The site with the last byte of one file of its runtime changed."""
    shutil.copytree(site.folder, folder, copy_function=os.link)
    path = next((folder / "runtime").glob(f"*/{name}"))
    data = path.read_bytes()
    path.unlink()
    end = b"// changed\n" if name.endswith(".mjs") else b" " if name.endswith(".json") else b""
    path.write_bytes(data + end if end else data[:-1] + bytes([data[-1] ^ 1]))
    return folder


@pytest.mark.parametrize(
    "name", [*FROM_NPM, "python_stdlib.zip", "pyodide-lock.json", "parts.json",
             "benchrule_calculators_neck-*.whl"],
)  # fmt: skip
def test_a_changed_file_of_the_runtime_is_not_used(
    name: str, browser: Browser, site: Site, tmp_path: Path
) -> None:
    folder = damaged(site, name, tmp_path / "site")
    handler = functools.partial(WithHeaders, directory=str(folder))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    context = browser.new_context()
    try:
        page = context.new_page()
        page.goto(f"http://127.0.0.1:{server.server_address[1]}/404.html")
        said = page.evaluate(
            """(folder) => new Promise((done) => {
              const worker = new Worker(`${folder}worker.mjs`, { type: 'module' });
              worker.onerror = (event) => done(event.message);
              worker.postMessage({ id: 1, prepare: 'fret-spacing' });
              worker.onmessage = ({ data }) => { if (data.id === 1 || data.amiss) done(data); };
            })""",
            f"/runtime/{next((folder / 'runtime').iterdir()).name}/",
        )
        assert said["amiss"]["kind"] == "other", said
        assert "not the file that was packed" in said["amiss"]["why"]
    finally:
        context.close()
        server.shutdown()


def test_the_worker_holds_the_hash_of_every_file_beside_it(site: Site) -> None:
    import base64
    import hashlib
    import json

    (folder,) = (site.folder / "runtime").iterdir()
    found = re.search(
        r"^const HASHES = (\{.*\});$", (folder / "worker.mjs").read_text("utf-8"), re.M
    )
    assert found
    sums = {
        path.name: "sha256-" + base64.b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()
        for path in folder.iterdir()
        if path.name != "worker.mjs"
    }
    assert json.loads(found[1]) == sums


def test_an_author_sees_a_change_while_serving(browser: Browser, tmp_path: Path) -> None:
    tree = sound_tree()
    tree["mkdocs.yml"] = tree["mkdocs.yml"].replace("material", "material, font: false")
    root = write_tree(tmp_path, tree)
    address = f"127.0.0.1:{free_port()}"
    serving = subprocess.Popen(
        [sys.executable, "-c", "from benchrule.cli import main; main()", "serve", "-f", str(root / "mkdocs.yml")],
        cwd=root,
        env={**os.environ, "BENCHRULE_ADDRESS": address, "SITE_URL": f"http://{address}/"},
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
    )  # fmt: skip
    context = browser.new_context()
    faults: list[str] = []
    try:
        assert serving.stdout is not None
        said = next((line for line in serving.stdout if "The handbook is at" in line), None)
        assert said, serving.wait()
        page = context.new_page()
        page.on("console", lambda m: faults.append(m.text) if m.type == "error" else None)
        page.goto(f"http://{address}/")
        page.wait_for_timeout(1000)  # its first question to the server is on its way
        home = root / "docs" / "index.md"
        home.write_text(home.read_text("utf-8") + "\nA line that was not there.\n", "utf-8")
        expect(page.get_by_text("A line that was not there.")).to_be_visible()
    finally:
        context.close()
        serving.kill()
        serving.wait()
    assert [fault for fault in faults if "Security Policy" in fault] == []


def test_sheets_have_their_style_allowed() -> None:
    import base64
    import hashlib

    digest = base64.b64encode(hashlib.sha256(STYLE.encode()).digest()).decode()
    assert f"style-src 'self' 'sha256-{digest}'" in policy_line([])
