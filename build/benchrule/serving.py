"""Builds a handbook with MkDocs; serves it, and builds again what changes."""

import gc
import logging
import os
import re
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from mkdocs.commands.build import build as build_site
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort

from .own_calculators import make_importable
from .plugin import BenchrulePlugin, sources_key
from .rebuild import Session
from .site_keys import site_key

log = logging.getLogger("mkdocs.plugins.benchrule")


def mkdocs_config(file: str) -> MkDocsConfig:
    """The configuration of a handbook; a fault in it ends the command with MkDocs' own words."""
    return load_config(config_file=file)


def mkdocs_build(config: MkDocsConfig) -> None:
    """One build into the site folder."""
    config.plugins.on_startup(command="build", dirty=False)
    try:
        build_site(config)
    finally:
        config.plugins.on_shutdown()


def _build_again(config: MkDocsConfig, session: Session, sources: str = "") -> None:
    """A build while serving: the whole site at first, then what has changed."""
    plugin = config.plugins["benchrule"]
    assert isinstance(plugin, BenchrulePlugin)
    session.sources = sources or _sources(config)
    key = site_key(config, session.sources)
    plugin.session = session
    going_on = session.begin(key, Path(config.site_dir))
    config.plugins.on_startup(command="serve", dirty=False)
    logger = logging.getLogger("mkdocs.commands.build")
    logger.addFilter(_not_of_dirty)
    try:
        build_site(config, dirty=going_on)
        session.end(key)
    finally:
        logger.removeFilter(_not_of_dirty)
        config.plugins.on_shutdown()


def _sources(config: MkDocsConfig) -> str:
    """A key over every source of Python that the handbook uses."""
    root = Path(config.config_file_path).resolve().parent
    named = config.plugins["benchrule"].config.calculators
    return sources_key(tuple(one for one in named if make_importable(root, one)))


def _not_of_dirty(record: logging.LogRecord) -> bool:
    """Passes over the warning that pages may be left as they were: here it is seen to."""
    return not record.getMessage().startswith("A 'dirty' build")


def _live_server() -> type[Any]:
    """MkDocs' own server, with its script as a file: the pages' policy lets none stand in line."""
    from mkdocs.livereload import _SCRIPT_TEMPLATE, LiveReloadServer

    class Server(LiveReloadServer):
        def _inject_js_into_html(self, content: bytes, epoch: int) -> bytes:
            request = round(time.monotonic() * 1000)
            script = b'<script src="/livereload/%d/%d.js"></script></body>' % (epoch, request)
            return content.replace(b"</body>", script)

        def _serve_request(self, environ: Any, start_response: Any) -> Any:
            asked = re.fullmatch(r"/livereload/(\d+)/(\d+)\.js", environ["PATH_INFO"])
            if asked is None:
                return super()._serve_request(environ, start_response)
            start_response("200 OK", [("Content-Type", "application/javascript")])
            return [_SCRIPT_TEMPLATE.substitute(epoch=asked[1], request_id=asked[2]).encode()]

    return Server


STARTED_AGAIN = "BENCHRULE_STARTED_AGAIN"
LOOK_S = 0.25  # between two looks at the files; MkDocs takes twice as long
TIDY_AFTER_S = 0.5  # the browser has been told by then


def _tidy_up_soon() -> None:
    """Frees what a build leaves behind, while nobody waits: a later build would stop to do it."""
    timer = threading.Timer(TIDY_AFTER_S, gc.collect)
    timer.daemon = True
    timer.start()


def serve(read: Callable[[], MkDocsConfig]) -> None:
    """Builds into the site folder, serves it, and builds again when a file changes."""
    session = Session()
    config = read()
    sources = _sources(config)
    try:
        _build_again(config, session, sources)
    except Abort:
        if not os.environ.get(STARTED_AGAIN):
            raise
        log.error("It is built again when this is mended.")
    _tidy_up_soon()
    host, port = os.environ.get("BENCHRULE_ADDRESS", "127.0.0.1:8000").rsplit(":", 1)

    def again() -> None:
        began = time.monotonic()
        fresh = read()
        if (found := _sources(fresh)) != sources:
            print("A calculator has changed: starting again", flush=True)
            sys.stderr.flush()
            os.environ[STARTED_AGAIN] = "1"
            os.execv(sys.executable, [sys.executable, *sys.orig_argv[1:]])
        _build_again(fresh, session, found)
        print(session.said(time.monotonic() - began), flush=True)
        _tidy_up_soon()

    server = _live_server()(
        builder=again, host=host, port=int(port), root=config.site_dir, mount_path="/",
        polling_interval=LOOK_S,
    )  # fmt: skip
    server.watch(str(config.config_file_path))
    root = Path(config.config_file_path).resolve().parent
    shops_own = [root / one for one in config.plugins["benchrule"].config.calculators]
    for folder in (config.docs_dir, *shops_own, *config.watch):
        if Path(folder).exists():
            server.watch(str(folder))
    try:
        print(f"The handbook is at http://{host}:{port}/ (Ctrl-C ends it)", flush=True)
        server.serve(open_in_browser=False)
    except KeyboardInterrupt:
        server.shutdown()
    except OSError as error:
        raise Abort(
            f"Cannot serve at {host}:{port} ({error.strerror}); end what uses it, or choose another: "
            "BENCHRULE_ADDRESS=127.0.0.1:8001"
        ) from None
