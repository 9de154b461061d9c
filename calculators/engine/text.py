"""Escapes text for HTML and SVG. The library's own module costs the browser a slow import."""

from functools import lru_cache


@lru_cache(maxsize=4096)
def escape(text: object) -> str:
    """``text`` with the five characters of markup replaced, safe in elements and attributes."""
    return (
        str(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace('"', "&quot;")
        .replace("'", "&#39;")
    )
